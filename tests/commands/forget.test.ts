/** What people may ask about their own data: all of it as a file, and to be forgotten without a trace. */
import { readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { Watch } from '../../shared/record.js';
import { v7 } from 'uuid';
import { newThread, dayAndPlaceOf, step } from '../../src/dialog/index.js';
import { openExchange } from '../../src/exchange/index.js';
import { openStore } from '../../src/store/index.js';
import { heic, jpeg, NAME, png } from '../channels/telling-photographs.js';
import { survey } from '../demo-survey.js';
import { newFolder, run, type Said } from './program.js';

const NOW = ['--now', '2026-05-06T18:30'];
/** Begins as a JPEG does, and is none. */
const BROKEN = Buffer.concat([Buffer.from([0xff, 0xd8, 0xff, 0xe0]), Buffer.from(NAME)]);

/** Words that lead to Wren and to nobody else. */
const PERSONAL = [
  'Wrenna',
  'wrenna@kestrelfen.example',
  'Marlgate',
  '43.51234',
  '90.64321',
  'kitchen window',
  'wrenna-thread',
];

const watchOf = (place: string): string[] => [
  'today 2:10 to 2:25 pm',
  place,
  '66 F, sunny, calm',
  '12 by 8 feet, meadow',
  'phlox 40',
  '2 impatiens',
];

const SAID = [
  'yes',
  ...watchOf('43.51234, -90.64321 my garden in Marlgate').flatMap((text, at) => (at === 1 ? [text, 'yes'] : [text])),
  'note: seen from the kitchen window',
  'yes',
  'Wrenna',
  'wrenna@kestrelfen.example',
];

async function talk(data: string, person: string, inputs: readonly object[]): Promise<Said[]> {
  const input = inputs.map((one) => JSON.stringify(one)).join('\n');
  const { stdout, stderr, code } = await run(
    ['talk', '--jsonl', ...NOW, '--person', person, '--data', data],
    `${input}\n`,
  );
  expect({ stderr, code }).toEqual({ stderr: '', code: 0 });
  return stdout
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line) as Said);
}

/** Every file below a folder. */
const files = (folder: string): string[] =>
  readdirSync(folder).flatMap((name) => {
    const path = join(folder, name);
    return statSync(path).isDirectory() ? files(path) : [path];
  });

/** Which of the words stand in which file, its name included. */
const traces = (data: string, words: readonly string[]): string[] =>
  files(data).flatMap((path) => {
    const text = `${path.slice(data.length)}\n${readFileSync(path).toString('latin1')}`;
    return words.filter((word) => text.includes(word)).map((word) => `${word} in ${path.slice(data.length)}`);
  });

const watchesIn = async (data: string): Promise<Watch[]> =>
  JSON.parse((await run(['watches', '--json', '--data', data])).stdout) as Watch[];

test('who asks to be forgotten leaves no word behind, and the watch stays', async () => {
  const data = newFolder();
  const picture = join(newFolder(), 'queen.jpg');
  writeFileSync(picture, await jpeg()); // which says her name, the day and the place
  const texts = SAID.map((text) => ({ text }));
  await talk(data, 'wrenna-thread', [...texts, { photo: picture }, { text: 'yes' }]);
  const [before] = await watchesIn(data);
  expect(before).toMatchObject({
    status: 'confirmed',
    remark: 'seen from the kitchen window',
    place: { private: true },
  });
  for (const word of PERSONAL) expect(traces(data, [word]), word).not.toEqual([]);
  expect(readdirSync(join(data, 'mail'))).toHaveLength(1);

  const said = await talk(data, 'wrenna-thread', [{ text: 'forget me' }, { text: 'yes' }]);
  expect(said.at(-1)?.replies).toEqual([
    'I have forgotten you. Thank you for your watches; you are welcome back at any time.',
  ]);
  expect(traces(data, [...PERSONAL, before!.observer])).toEqual([]);
  expect(readdirSync(join(data, 'mail'))).toEqual([]);
  const [photograph, ...others] = readdirSync(join(data, 'photos'));
  expect(others).toEqual([]);

  const [after] = await watchesIn(data);
  expect(after).toMatchObject({
    number: 1,
    status: 'confirmed',
    date: '2026-05-06',
    temperature: { celsius: 18.9 },
    total: 2,
    remark: null,
    asTyped: {},
    // the centre of its tenth of a degree
    place: { latitude: 43.55, longitude: -90.65, words: '', private: true },
    queens: [{ bee: 'Bombus impatiens', count: 2 }],
    photographs: [{ sha256: photograph, type: 'image/jpeg', takenAt: null }],
  });
  expect(photograph).not.toBe(before?.photographs[0]?.sha256);
  expect(after?.place?.uncertaintyMetres).toBeGreaterThan(6000);
});

test('who does not agree leaves nothing behind: no word, no place, no picture, nobody', async () => {
  const data = newFolder();
  const picture = join(newFolder(), 'queen.jpg');
  writeFileSync(picture, await jpeg());
  const position = { latitude: 43.99887, longitude: -90.11223, uncertaintyMetres: 8 };
  const told = [{ text: 'hi, I am Wrenna from Marlgate, today 2:10 to 2:25 pm' }, { place: position }];
  const words = ['wrenna-thread', 'Wrenna', 'Marlgate', '43.99887', '90.11223'];
  await talk(data, 'wrenna-thread', told);
  for (const word of words) expect(traces(data, [word]), word).not.toEqual([]);

  const said = await talk(data, 'wrenna-thread', [{ photo: picture }, { text: 'no' }]);
  expect(said.at(-2)?.replies[0]).toMatch(/^I keep no photograph before your yes/);
  expect(readdirSync(join(data, 'photos'))).toEqual([]);
  expect(said.at(-1)?.replies).toEqual([
    'That is fine: I keep nothing about you, and what you wrote or sent is erased. If you change your mind, just write to me again.',
  ]);
  expect(traces(data, [...words, NAME])).toEqual([]);
});

test('a picture that came before the consent is gone before any answer to it', async () => {
  const data = newFolder();
  const picture = join(newFolder(), 'queen.jpg');
  writeFileSync(picture, await jpeg());
  await talk(data, 'wrenna-thread', [{ photo: picture }]);
  expect(readdirSync(join(data, 'photos'))).toEqual([]);
  // another person's watch has the same picture: it stays
  await photographed(data, [await jpeg()], 'ansel');
  await talk(data, 'lark', [{ photo: picture }, { text: 'no' }]);
  expect(readdirSync(join(data, 'photos'))).toHaveLength(1);
});

test('somebody who was forgotten is a stranger again, and others are not touched', async () => {
  const data = newFolder();
  const other = [...SAID.slice(0, -2), 'Ansel', 'ansel@kestrelfen.example'];
  await talk(
    data,
    'ansel',
    other.map((text) => ({ text })),
  );
  await talk(
    data,
    'wrenna-thread',
    [...SAID, 'forget me', 'yes'].map((text) => ({ text })),
  );
  const said = await talk(data, 'wrenna-thread', [{ text: 'hello' }]);
  expect(said.at(-1)?.asking?.fields).toEqual(['consent']);
  const watches = await watchesIn(data);
  expect(watches.map(({ place }) => place?.latitude)).toEqual([43.51234, 43.55]);
  expect(traces(data, ['ansel@kestrelfen.example'])).not.toEqual([]);
  expect(readdirSync(join(data, 'mail'))).toHaveLength(1);
});

test('anything but a yes leaves all as it is', async () => {
  const data = newFolder();
  const said = await talk(
    data,
    'wrenna-thread',
    [...SAID, 'forget me', 'wait, no'].map((text) => ({ text })),
  );
  expect(said.at(-1)?.replies[0]).toContain('Then I leave everything as it is.');
  expect(traces(data, ['wrenna@kestrelfen.example'])).not.toEqual([]);
});

test('all that is kept comes as a file, after a second yes', async () => {
  const data = newFolder();
  const said = await talk(
    data,
    'wrenna-thread',
    [...SAID, 'what do you keep about me?', 'yes'].map((text) => ({ text })),
  );
  expect(said.at(-2)?.replies[0]).toMatch(/Yes or no\.$/);
  const [sentence, path] = said.at(-1)?.replies ?? [];
  expect(sentence).toBe('Here is everything I keep about you. It is for you alone.');
  expect(statSync(path!).mode & 0o777).toBe(0o600);
  const all = JSON.parse(readFileSync(path!, 'utf8')) as Record<string, unknown[]>;
  expect(Object.keys(all)).toEqual(['person', 'places', 'watches', 'messages', 'replies', 'conversation']);
  expect(all['person']).toMatchObject({ name: 'Wrenna', mail: 'wrenna@kestrelfen.example' });
  expect(all['places']).toHaveLength(1);
  expect(all['watches']).toHaveLength(1);
  expect(all['messages']?.length).toBeGreaterThan(SAID.length);
  expect(JSON.stringify(all['replies'])).toContain('Is something wrong?'); // the receipt

  // it goes with everything else
  await talk(data, 'wrenna-thread', [{ text: 'forget me' }, { text: 'yes' }]);
  expect(traces(data, PERSONAL)).toEqual([]);
});

test('an address that two people gave leads to the mails of neither for the other', async () => {
  const data = newFolder();
  await talk(
    data,
    'wrenna-thread',
    SAID.map((text) => ({ text })),
  );
  // claims the same address, and asks for everything
  const claims = [...SAID.slice(0, -2), 'Ansel', 'wrenna@kestrelfen.example', 'my data', 'yes'];
  const said = await talk(
    data,
    'ansel',
    claims.map((text) => ({ text: text.replace('Marlgate', 'Otterby') })),
  );
  const given = readFileSync(said.at(-1)!.replies[1]!, 'utf8');
  expect(given).toContain('Otterby');
  expect(given).not.toMatch(/Wrenna|Marlgate/);

  await talk(data, 'ansel', [{ text: 'forget me' }, { text: 'yes' }]);
  expect(traces(data, ['Otterby', 'Ansel'])).toEqual([]);
  const [left, ...others] = readdirSync(join(data, 'mail'));
  expect(others).toEqual([]);
  expect(readFileSync(join(data, 'mail', left!), 'utf8')).toContain('Wrenna');
});

/** The same two messages, taken by a program that ends as soon as they are on the disk. */
async function forgetAndEnd(data: string): Promise<void> {
  const store = await openStore(join(data, 'queenpost.sqlite'));
  const now = (): string => '2026-05-06T23:40:00Z';
  const conversation = { newThread, step, dayAndPlaceOf };
  const exchange = openExchange({ store, survey, conversation, now, newId: () => v7(), newCode: () => '000000' });
  for (const said of ['forget me', 'yes']) {
    const what = { kind: 'text' as const, text: said };
    const from = { survey: survey.settings.key, channel: 'terminal', person: 'wrenna-thread' };
    const how = { replyTo: null, edits: null, manner: 'one' as const, proven: true };
    await exchange.receive({ ...from, ...how, id: v7(), at: now(), what });
  }
  store.close();
}

const photographed = async (data: string, pictures: readonly Buffer[], person = 'wrenna-thread'): Promise<void> => {
  const paths = pictures.map((bytes) => {
    const path = join(newFolder(), 'queen');
    writeFileSync(path, bytes);
    return { photo: path };
  });
  const texts = SAID.map((text) => ({ text }));
  await talk(data, person, [...texts.slice(0, -3), ...paths, ...texts.slice(-3)]);
};

test('pictures come beside the file of all that is kept, and go with it', async () => {
  const data = newFolder();
  const pictures = [await jpeg(), await png()];
  await photographed(data, pictures);
  const said = await talk(data, 'wrenna-thread', [{ text: 'what do you keep about me?' }, { text: 'yes' }]);
  const [sentence, ...others] = said.at(-1)?.replies ?? [];
  const paths = others.filter((reply) => /watch-\d+-[0-9a-f]{8}\.(?:jpg|png)$/.test(reply));
  expect(sentence).toMatch(/Your 2 pictures follow, as they came\.$/);
  const asOne = (all: readonly Buffer[]): string[] => all.map((bytes) => bytes.toString('base64')).sort();
  expect(asOne(paths.map((path) => readFileSync(path)))).toEqual(asOne(pictures));
  expect(paths.map((path) => statSync(path).mode & 0o077)).toEqual([0, 0]);

  await talk(data, 'wrenna-thread', [{ text: 'forget me' }, { text: 'yes' }]);
  expect(readdirSync(join(data, 'my-data'))).toEqual([]);
  expect(traces(data, [NAME])).toEqual([]);
});

test('a program that was killed after a person was forgotten leaves it to the next start to finish', async () => {
  const data = newFolder();
  await photographed(data, [await jpeg(), await png(), heic()]);
  await forgetAndEnd(data);
  expect(traces(data, [NAME])).toHaveLength(3); // the files are as they were

  await talk(data, 'somebody-else', []);
  // what is left is whom “I have forgotten you” still goes to
  expect(traces(data, [...PERSONAL, NAME])).toEqual(['wrenna-thread in /queenpost.sqlite']);
  const [watch] = await watchesIn(data);
  expect(watch?.photographs.map(({ type }) => type)).toEqual(['image/jpeg', 'image/png', 'image/jpeg']);
  expect(watch?.photographs.map(({ sha256 }) => sha256).sort()).toEqual(readdirSync(join(data, 'photos')).sort());
});

test('a picture that cannot be freed of its metadata is dropped, and that is said at once', async () => {
  const data = newFolder();
  await photographed(data, [BROKEN, await jpeg()]);
  const said = await talk(data, 'wrenna-thread', [{ text: 'forget me' }, { text: 'yes' }]);
  expect(said.at(-1)?.replies).toEqual([
    'I have forgotten you. Thank you for your watches; you are welcome back at any time.',
    'One of your pictures could not be freed of what its file may say of you, so I removed it altogether.',
  ]);
  expect(traces(data, [...PERSONAL, NAME])).toEqual([]);
  expect((await watchesIn(data))[0]?.photographs).toHaveLength(1);
  expect(readdirSync(join(data, 'photos'))).toHaveLength(1);
});

test('a file that two people sent is freed of what it says when both are forgotten', async () => {
  const data = newFolder();
  const picture = await jpeg();
  await photographed(data, [picture]);
  await photographed(data, [picture], 'ansel');
  await talk(data, 'wrenna-thread', [{ text: 'forget me' }, { text: 'yes' }]);
  // the other's stays as they sent it
  expect(readdirSync(join(data, 'photos'))).toHaveLength(2);
  expect((await watchesIn(data))[1]?.photographs[0]?.takenAt).not.toBeNull();

  await talk(data, 'ansel', [{ text: 'forget me' }, { text: 'yes' }]);
  expect(traces(data, [NAME])).toEqual([]);
  const [first, second] = await watchesIn(data);
  expect(first?.photographs).toEqual(second?.photographs);
  expect(readdirSync(join(data, 'photos'))).toEqual([first?.photographs[0]?.sha256]);
});

test('no photograph, and nothing that one tells, leaves the data folder', async () => {
  const data = newFolder();
  const picture = await jpeg();
  await photographed(data, [picture]);
  const said = await talk(data, 'wrenna-thread', [{ text: 'my photos: CC BY' }, { text: 'my data' }, { text: 'yes' }]);
  const [published, exported] = [join(newFolder(), 'public'), join(newFolder(), 'exact')];
  for (const args of [
    ['publish', published],
    ['export', exported],
  ])
    expect(await run([...args, '--data', data])).toMatchObject({ code: 0, stderr: '' });
  const left = [...files(published), ...files(exported), ...files(join(data, 'mail')), said.at(-1)!.replies[1]!];
  expect(left.length).toBeGreaterThan(10);
  for (const path of left) {
    const bytes = readFileSync(path);
    // the picture's coded bytes, as they are and as a mail would carry them; entries of a zip have their names in plain
    const coded = picture.subarray(picture.length >> 1, (picture.length >> 1) + 60);
    expect(bytes.includes(coded), path).toBe(false);
    expect(bytes.toString('latin1'), path).not.toMatch(/camera 9|\.(jpe?g|png|webp|heic)\b|image\/png/i);
    expect(bytes.includes(picture.toString('base64').slice(1000, 1060)), path).toBe(false);
  }
});
