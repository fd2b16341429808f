/** Photographs of who was forgotten: their watches go on with copies without metadata, whatever happens in between. */
import { expect, test } from 'vitest';
import { openBaring, type Copy } from '../../src/exchange/index.js';
import {
  filesToRemove,
  keepPerson,
  keepWatch,
  threadsToBare,
  waitingReplies,
  watchByNumber,
  type Store,
} from '../../src/store/index.js';
import { survey } from '../demo-survey.js';
import { consented, exchangeWithDialog, NOW, text } from '../bench/measures/talking.js';
import { sampleWatch, SURVEY, uuid } from '../store/sample.js';
import { openScratch, scratchPath } from '../store/scratch.js';

const photograph = (sha256: string, queensRow: number | null = null) => ({
  sha256,
  type: 'image/heic',
  takenAt: '2026-05-04T18:12:30Z',
  queensRow,
  licence: 'CC0-1.0' as const,
});

/** Wren with two watches, and Lark, who has one of the same files. */
async function twoPeople(path = scratchPath()): Promise<Store> {
  const store = await openScratch(path);
  store.writing((transaction) => {
    keepPerson(transaction, consented('wren', uuid(1)));
    keepPerson(transaction, consented('lark', uuid(2)));
    const [wren, lark] = [{ observer: uuid(1) }, { observer: uuid(2) }];
    const [first, second, third] = [photograph('shared', 1), photograph('second'), photograph('third')];
    keepWatch(transaction, sampleWatch({ number: 1, ...wren, photographs: [first, second] }));
    keepWatch(transaction, sampleWatch({ number: 2, ...wren, photographs: [third] }));
    keepWatch(transaction, sampleWatch({ number: 3, ...lark, photographs: [photograph('shared')] }));
  });
  return store;
}

async function forget(store: Store, person: string): Promise<void> {
  const exchange = exchangeWithDialog(store);
  for (const said of ['forget me', 'yes'])
    expect(await exchange.receive(text(person, said))).toMatchObject({ failures: [], waiting: false });
}

const baring = (store: Store, bare: (sha256: string) => Promise<Copy | null>) => {
  let ids = 0;
  return openBaring({ store, survey, bare, newId: () => uuid(900 + ids++) });
};
const copy = (sha256: string): Promise<Copy> => Promise.resolve({ sha256: `${sha256} bare`, type: 'image/jpeg' });
const of = (store: Store, number: number) => watchByNumber(store, SURVEY, number)?.photographs;
const saidTo = (store: Store): string[] =>
  waitingReplies(store, { survey: SURVEY, channel: 'bench', now: '2027-01-01T00:00:00Z', most: 99 }).map(
    ({ reply }) => reply.text,
  );

test('each watch keeps its photographs, as copies; somebody else’s stay as they are', async () => {
  const store = await twoPeople();
  await forget(store, 'wren');
  expect(of(store, 1)).toMatchObject([{ sha256: 'shared', takenAt: null }, { takenAt: null }]);
  const bare = baring(store, copy);
  expect(bare.waits()).toBe(true);
  await bare.runDue(NOW);
  const left = { type: 'image/jpeg', takenAt: null, licence: 'CC0-1.0' };
  expect(of(store, 1)).toEqual([
    { ...left, sha256: 'shared bare', queensRow: 1 },
    { ...left, sha256: 'second bare', queensRow: null },
  ]);
  expect(of(store, 2)).toEqual([{ ...left, sha256: 'third bare', queensRow: null }]);
  expect(of(store, 3)).toEqual([photograph('shared')]);
  expect(bare.waits()).toBe(false);
  expect([...filesToRemove(store)].sort()).toEqual(['second', 'shared', 'third']);
});

test('who had the same file is forgotten too: both refer to the same copy', async () => {
  const store = await twoPeople();
  await forget(store, 'wren');
  await forget(store, 'lark');
  const asked: string[] = [];
  await baring(store, (sha256) => {
    asked.push(sha256);
    return copy(sha256);
  }).runDue(NOW);
  expect([of(store, 1)?.[0]?.sha256, of(store, 3)?.[0]?.sha256]).toEqual(['shared bare', 'shared bare']);
  expect(asked.sort()).toEqual(['second', 'shared', 'shared', 'third']); // once for each of the two
});

test('one of which no copy can be made is dropped, and that is said once, to be erased when it was', async () => {
  const store = await twoPeople();
  await forget(store, 'wren');
  await baring(store, (sha256) => (sha256 === 'third' ? copy(sha256) : Promise.resolve(null))).runDue(NOW);
  expect([of(store, 1), of(store, 2)?.length]).toEqual([[], 1]);
  const outbox = store.prepared(`select reply from outbox where channel = 'bench' and answers = 'forgotten'`).all() as {
    reply: string;
  }[];
  expect(outbox.map(({ reply }) => JSON.parse(reply) as unknown)).toMatchObject([
    { text: expect.stringMatching(/^2 of your pictures could not be freed .* I removed them/) as string, erase: true },
  ]);
  expect(saidTo(store)).toEqual([
    'I have forgotten you. Thank you for your watches; you are welcome back at any time.',
  ]);
});

test('a program that ends before, while or after it works is followed by one that goes on', async () => {
  const path = scratchPath();
  await forget(await twoPeople(path), 'wren');

  const second = await openScratch(path);
  let made = 0;
  const failing = baring(second, (sha256) => (++made === 2 ? Promise.reject(new Error('disk full')) : copy(sha256)));
  await expect(failing.runDue(NOW)).rejects.toThrow('disk full');
  // nothing of it is to be seen: what was made is made again
  expect(of(second, 1)?.map(({ sha256 }) => sha256)).toEqual(['shared', 'second']);

  const third = await openScratch(path);
  const beside = baring(await openScratch(path), copy);
  await Promise.all([baring(third, copy).runDue(NOW), beside.runDue(NOW)]); // two programs at once
  expect(of(third, 1)?.map(({ sha256 }) => sha256)).toEqual(['shared bare', 'second bare']);
  expect(of(third, 2)?.map(({ sha256 }) => sha256)).toEqual(['third bare']);
  expect(threadsToBare(third, SURVEY)).toEqual([]);

  const fourth = await openScratch(path);
  expect([...filesToRemove(fourth)].sort()).toEqual(['second', 'shared', 'third']);
});
