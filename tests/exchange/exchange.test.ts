/** One message in, one transaction, replies out: nothing twice, nothing lost, nothing by halves, all in order. */
import Database from 'better-sqlite3';
import { expect, test, vi } from 'vitest';
import type { History } from '../../shared/history.js';
import type { Message } from '../../shared/message.js';
import { notStored, openExchange, type Conversation, type Exchange } from '../../src/exchange/index.js';
import {
  addReply,
  keepMessage,
  keepPerson,
  keepPlace,
  keepWatch,
  personOf,
  replySent,
  settleStuck,
  stuckMessages,
  threadOf,
  waitingReplies,
  watchesOf,
  type Store,
} from '../../src/store/index.js';
import { survey } from '../demo-survey.js';
import { sampleWatch, SURVEY, uuid } from '../store/sample.js';
import { openScratch, scratchPath } from '../store/scratch.js';
import { echo, NOW, said, type EchoThread } from './echo.js';

/** An exchange over `store` whose ids count upwards. */
function exchangeOver(store: Store, conversation: Conversation<EchoThread> = echo()): Exchange<EchoThread> {
  let ids = 0;
  const newId = () => uuid((ids += 1) + 500_000);
  return openExchange({ store, survey, conversation, now: () => NOW, newId, newCode: () => '000000' });
}

const heard = (store: Store, person = 'wren') =>
  threadOf(store, { survey: SURVEY, channel: 'terminal', person })?.state ?? null;
const outbox = (store: Store) =>
  store
    .prepared(`select person, json_extract(reply, '$.text') as text from outbox order by sequence`)
    .all()
    .map((row) => Object.values(row as object).join(': '));
/** All that the database holds. */
const dump = (store: Store) => {
  const tables = store.prepared(`select name from sqlite_master where type = 'table'`).all() as { name: string }[];
  return tables.map(({ name }) => [name, store.prepared(`select * from ${name}`).all()]);
};

test('a message is taken, and what was committed comes back', async () => {
  const store = await openScratch();
  const received = await exchangeOver(store).receive(said('1', 'hello'));
  expect(received).toEqual({
    channel: 'terminal',
    person: 'wren',
    id: '1',
    replies: [{ text: 'heard hello', choices: [], silent: false, report: null, revision: 0 }],
    thread: { heard: ['hello'] },
    stored: null,
    forgotten: false,
    duplicate: false,
    waiting: false,
    failures: [],
  });
  expect(heard(store)).toEqual({ heard: ['hello'] });
  expect(outbox(store)).toEqual(['wren: heard hello']);
});

test('a second copy changes nothing and gets no second reply', async () => {
  const path = scratchPath();
  const store = await openScratch(path);
  await exchangeOver(store).receive(said('1', 'watch'));
  const before = dump(store);
  const [again, other] = await Promise.all([
    exchangeOver(store).receive(said('1', 'watch')),
    exchangeOver(await openScratch(path)).receive(said('1', 'watch')), // another program, another connection
  ]);
  for (const received of [again, other]) {
    expect(received).toMatchObject({ duplicate: true, replies: [], stored: null, waiting: false });
  }
  expect(dump(store)).toEqual(before);
});

test('two copies that come at once are one', async () => {
  const store = await openScratch();
  const exchange = exchangeOver(store);
  const both = await Promise.all([exchange.receive(said('1', 'watch')), exchange.receive(said('1', 'watch'))]);
  expect(both.map(({ duplicate }) => duplicate)).toEqual([false, true]);
  expect([...watchesOf(store, SURVEY)]).toHaveLength(1);
});

test('the same id over another channel is another message, and another thread', async () => {
  const store = await openScratch();
  const exchange = exchangeOver(store);
  await exchange.receive(said('1', 'one'));
  const received = await exchange.receive(said('1', 'two', 'wren', { channel: 'email' }));
  expect(received).toMatchObject({ duplicate: false, thread: { heard: ['two'] } });
});

test('messages that come together share a commit, fifty at most', async () => {
  const store = await openScratch();
  const writing = vi.spyOn(store, 'writing');
  const exchange = exchangeOver(store);
  const received = await Promise.all(
    Array.from({ length: 120 }, (_, index) => exchange.receive(said(String(index), `m${index}`))),
  );
  expect(writing).toHaveBeenCalledTimes(3); // 50, 50, 20
  expect(received.every(({ waiting }) => !waiting)).toBe(true);
  expect(received.at(-1)?.thread?.heard).toEqual(Array.from({ length: 120 }, (_, index) => `m${index}`));
});

test('a step that fails takes back its own writing only, and its message waits', async () => {
  const store = await openScratch();
  const exchange = exchangeOver(store);
  const [before, half, after] = await Promise.all([
    exchange.receive(said('1', 'watch', 'wren')),
    exchange.receive(said('2', 'half', 'lark')),
    exchange.receive(said('3', 'watch', 'finch')),
  ]);
  expect([before, after].map((received) => received.stored)).toEqual([1, 2]);
  expect(half).toMatchObject({ waiting: true, duplicate: false, replies: [], thread: null, stored: null });
  expect(half.failures).toMatchObject([{ id: '2', tries: 1, stuck: false }]);
  expect(heard(store, 'lark')).toBeNull();
  expect(personOf(store, said('', '', 'lark'))).toBeNull();
  expect(outbox(store)).toEqual(['wren: heard watch', 'finch: heard watch']);
  expect([...watchesOf(store, SURVEY)].map(({ number }) => number)).toEqual([1, 2]);
});

test('a waiting message holds its thread, and no other', async () => {
  const store = await openScratch();
  let broken = true;
  const { step, ...rest } = echo();
  const exchange = exchangeOver(store, {
    ...rest,
    step: (thread, message, ...others) => {
      if (broken && message.id === '2') throw new Error('not now');
      return step(thread, message, ...others);
    },
  });
  const received = await Promise.all([
    exchange.receive(said('1', 'one')),
    exchange.receive(said('2', 'two')),
    exchange.receive(said('3', 'three')),
    exchange.receive(said('4', 'four', 'lark')),
  ]);
  expect(received.map(({ waiting }) => waiting)).toEqual([false, true, true, false]);
  expect(heard(store)).toEqual({ heard: ['one'] });
  broken = false;
  const later = exchange.receiveWaiting();
  expect(later.received.map(({ id, waiting }) => [id, waiting])).toEqual([
    ['2', false],
    ['3', false],
  ]);
  expect(later.waiting).toBe(0);
  expect(heard(store)).toEqual({ heard: ['one', 'two', 'three'] });
  expect(outbox(store)).toEqual(['wren: heard one', 'lark: heard four', 'wren: heard two', 'wren: heard three']);
});

test('after three tries a message is stuck: both are told, and the thread goes on', async () => {
  const store = await openScratch();
  const exchange = exchangeOver(store);
  await exchange.receive(said('1', 'one'));
  const tries = [
    await exchange.receive(said('2', 'boom')),
    await exchange.receive(said('3', 'three')), // tries 2 again first
    await exchange.receive(said('4', 'four')),
  ];
  expect(tries.map(({ waiting }) => waiting)).toEqual([true, true, false]);
  expect(tries.flatMap(({ failures }) => failures.map(({ id, tries, stuck }) => [id, tries, stuck]))).toEqual([
    ['2', 1, false],
    ['2', 2, false],
    ['2', 3, true],
  ]);
  const sorry = tries[2]!.replies[0]!.text;
  expect(sorry).toContain(survey.settings.coordinator.name);
  expect(tries[2]).toMatchObject({
    replies: [{ text: sorry }, { text: 'heard three' }, { text: 'heard four' }],
    thread: { heard: ['one', 'three', 'four'] },
  });
  expect(outbox(store)).toEqual(['wren: heard one', `wren: ${sorry}`, 'wren: heard three', 'wren: heard four']);

  const [stuck, ...none] = stuckMessages(store, SURVEY);
  expect(none).toEqual([]);
  expect(stuck).toMatchObject({ channel: 'terminal', person: 'wren', id: '2', at: NOW });
  expect(stuck?.error).toMatch(/^Error: boom\n/);
  expect(JSON.parse(stuck!.body)).toEqual(said('2', 'boom'));
  const states = store.prepared('select id, state from inbox order by sequence').raw().all();
  expect(states).toEqual([
    ['1', 'done'],
    ['2', 'stuck'],
    ['3', 'done'],
    ['4', 'done'],
  ]);
  // Another copy of it is still only a copy.
  expect(await exchange.receive(said('2', 'boom'))).toMatchObject({ duplicate: true, replies: [] });
  const key = { survey: SURVEY, channel: 'terminal', id: '2' };
  expect(store.writing((transaction) => settleStuck(transaction, key, NOW))).toBe(true);
  expect(store.writing((transaction) => settleStuck(transaction, key, NOW))).toBe(false);
  expect(stuckMessages(store, SURVEY)).toEqual([]);
});

test('a long queue in one thread does not starve another', async () => {
  const store = await openScratch();
  const exchange = exchangeOver(store);
  const queue = Array.from({ length: 60 }, (_, index) => said(`w${index}`, index === 0 ? 'boom' : `m${index}`));
  store.writing((transaction) => {
    for (const message of [...queue, said('l', 'mine', 'lark')]) {
      keepMessage(transaction, message, { state: 'waiting', receivedAt: NOW });
    }
  });
  // The first of wren's fails, so lark has a turn; when it is given up, fifty are tried in the commit, then the rest.
  const runs = [1, 2, 3, 4].map(() => exchange.receiveWaiting());
  expect(runs.map(({ received, waiting }) => [received.length, waiting])).toEqual([
    [2, 60],
    [1, 60],
    [50, 10],
    [10, 0],
  ]);
  expect(runs[0]?.received.map(({ person, waiting }) => [person, waiting])).toEqual([
    ['wren', true],
    ['lark', false],
  ]);
  expect(heard(store)).toEqual({ heard: queue.slice(1).map((_, index) => `m${index + 1}`) });
});

test('ten threads at once each go as they would alone', async () => {
  const people = Array.from({ length: 10 }, (_, index) => `person-${index}`);
  const lines = ['hello', 'watch', 'half', 'one', 'watch', 'boom', 'two', 'three', 'four', 'watch', 'five'];
  const messagesOf = (person: string) => lines.map((line, index) => said(`${person}-${index}`, line, person));

  const together = await openScratch();
  const exchange = exchangeOver(together);
  const received: Promise<unknown>[] = [];
  for (const index of lines.keys()) {
    for (const person of people) received.push(exchange.receive(messagesOf(person)[index]!));
  }
  await Promise.all(received);
  while (exchange.receiveWaiting().waiting > 0);

  const alone = await openScratch();
  const own = exchangeOver(alone);
  for (const message of messagesOf('person-0')) await own.receive(message);
  while (own.receiveWaiting().waiting > 0);

  const expected = lines.filter((line) => line !== 'half' && line !== 'boom');
  expect(heard(alone, 'person-0')).toEqual({ heard: expected });
  for (const person of people) {
    expect(heard(together, person)).toEqual({ heard: expected });
    const said = outbox(together).filter((line) => line.startsWith(`${person}: `));
    expect(said.map((line) => line.slice(person.length))).toEqual(
      outbox(alone).map((line) => line.slice('person-0'.length)),
    );
  }
  // Numbers without a gap, although steps failed in between.
  expect([...watchesOf(together, SURVEY)].map(({ number }) => number)).toEqual(
    Array.from({ length: 30 }, (_, index) => index + 1),
  );
});

test('a broken row of one person stops neither the others nor, in the end, them', async () => {
  const path = scratchPath();
  const store = await openScratch(path);
  const exchange = exchangeOver(store);
  await exchange.receive(said('1', 'one'));
  new Database(path).exec(`update threads set state = 'no JSON' where person = 'wren'`).close();
  const [wren, lark] = await Promise.all([
    exchange.receive(said('2', 'two')),
    exchange.receive(said('3', 'x', 'lark')),
  ]);
  expect(wren).toMatchObject({ waiting: true, failures: [{ tries: 1, error: { name: 'UnreadableRecord' } }] });
  expect(lark.waiting).toBe(false);
});

test('a message that does not fit its schema, or is for another survey, is a mistake of the caller', async () => {
  const store = await openScratch();
  const exchange = exchangeOver(store);
  await expect(exchange.receive(said('1', 'x', 'wren', { at: 'yesterday' }))).rejects.toThrow(/ISO datetime/);
  await expect(exchange.receive(said('1', 'x', 'wren', { survey: 'other-fen' }))).rejects.toThrow(
    'A message for the survey "other-fen"; this exchange is that of "kestrel-fen".',
  );
  expect(await exchange.receive(said('1', 'x'))).toMatchObject({ duplicate: false });
});

test('the step is told the past of its sender, and no more', async () => {
  const store = await openScratch();
  let told: History | undefined;
  const exchange = exchangeOver(
    store,
    echo((_, history) => (told = history)),
  );
  await exchange.receive(said('1', 'hello'));
  expect(told).toEqual({
    person: null,
    places: [],
    lastWatches: [],
    sameDayNearby: [],
    tellsElsewhere: false,
    progress: { watches: 0, target: survey.settings.target },
    fresh: { observer: uuid(500_001), report: uuid(500_002), watchNumber: 1 },
  });

  const observer = uuid(1);
  const { survey: key, channel, person } = said('', '');
  const garden = {
    words: 'garden',
    latitude: null,
    longitude: null,
    uncertaintyMetres: null,
    site: null,
    private: true,
  };
  store.writing((transaction) => {
    const wren = {
      survey: key,
      key: observer,
      channel,
      person,
      name: 'Wren',
      mail: null,
      consent: null,
      declined: [],
      photographLicence: null,
      nameShown: false,
      reminders: false,
    };
    keepPerson(transaction, wren);
    for (let number = 1; number <= 22; number += 1) {
      const date = number === 5 ? '2026-05-04' : '2026-05-03';
      keepWatch(transaction, sampleWatch({ number, date, observer: number === 5 ? uuid(2) : observer }));
    }
    keepPlace(transaction, { survey: key, observer, key: 'garden', ...garden, lastUsed: NOW });
  });
  await exchange.receive(said('2', 'again'));
  expect(told?.person).toMatchObject({ key: observer, name: 'Wren' });
  expect(told?.places).toMatchObject([{ key: 'garden', private: true }]);
  expect(told?.lastWatches.map(({ number }) => number)).toEqual([
    22, 21, 20, 19, 18, 17, 16, 15, 14, 13, 12, 11, 10, 9, 8, 7, 6, 4, 3, 2,
  ]);
  expect(told?.sameDayNearby.map(({ number, observer }) => [number, observer])).toEqual([[5, uuid(2)]]);
  expect(told?.progress.watches).toBe(21);
  expect(told?.fresh.watchNumber).toBe(23);
});

// a thread that changed hands, or whose person was forgotten, may hold a reply about a watch that is not theirs any more
test.each([
  ['their own watch', uuid(1), true],
  ["somebody else's watch", uuid(2), false],
])('a reply to what was said of %s is about that watch: %s', async (_, observer, isAbout) => {
  const store = await openScratch();
  let told: History | undefined;
  const exchange = exchangeOver(
    store,
    echo((_message, history) => (told = history)),
  );
  const { survey: key, channel, person } = said('', '');
  const stored = sampleWatch({ number: 7, observer });
  store.writing((transaction) => {
    keepPerson(transaction, {
      ...{ survey: key, key: uuid(1), channel, person, name: 'Wren', mail: null, consent: null, declined: [] },
      ...{ photographLicence: null, nameShown: false, reminders: false },
    });
    keepWatch(transaction, stored);
    const reply = { text: 'Stored as watch 7.', choices: [], silent: false, report: stored.id, revision: 3 };
    addReply(transaction, { survey: key, channel, person }, { id: uuid(9), answers: '0', reply, at: NOW });
    const [waiting] = waitingReplies(transaction, { survey: key, channel, now: NOW, most: 1 });
    replySent(transaction, waiting!, { handle: 'm70', at: NOW });
  });
  await exchange.receive(said('1', 'that one', 'wren', { replyTo: 'm70' }));
  expect(told?.repliedTo).toMatchObject({ report: stored.id, revision: 3 });
  expect(told?.repliedTo?.watch?.number).toBe(isAbout ? 7 : undefined);
});

test('watches that the step does not look at are not read, so one that cannot be read holds up nothing else', async () => {
  const store = await openScratch();
  const observer = uuid(1);
  const { survey: key, channel, person } = said('', '');
  store.writing((transaction) => {
    keepPerson(transaction, {
      survey: key,
      key: observer,
      channel,
      person,
      name: 'Wren',
      mail: null,
      consent: null,
      declined: [],
      photographLicence: null,
      nameShown: false,
      reminders: false,
    });
    keepWatch(transaction, sampleWatch({ number: 1, observer }));
    transaction.prepared(`update watches set asTyped = '[]'`).run();
  });
  const looking = exchangeOver(
    store,
    echo((message, history) => (message.id === '1' ? history.person : history.lastWatches)),
  );
  expect(await looking.receive(said('1', 'hello'))).toMatchObject({ waiting: false, failures: [] });
  expect(await looking.receive(said('2', 'hello'))).toMatchObject({ waiting: true, failures: [{ id: '2' }] });
});

/** What makes the database fail, and what lets it work again. */
const failing: [kind: string, fail: (store: Store, path: string) => () => void][] = [
  [
    'locked',
    (_, path) => {
      const other = new Database(path);
      other.exec('begin immediate');
      return () => void other.close();
    },
  ],
  [
    'full',
    (store) => {
      const pages = store.prepared('pragma page_count').pluck().get() as number;
      store.prepared(`pragma max_page_count = ${pages}`).get();
      return () => void store.prepared('pragma max_page_count = 1000000').get();
    },
  ],
  [
    'read-only',
    (store) => {
      store.prepared('pragma query_only = on').run();
      return () => void store.prepared('pragma query_only = off').run();
    },
  ],
];
test.each(failing)(
  'a database that is %s: nothing is kept, the channel is told, and later it is taken',
  async (kind, fail) => {
    const path = scratchPath();
    const store = await openScratch(path, { busyMilliseconds: 20 });
    const exchange = exchangeOver(store);
    await exchange.receive(said('1', 'one'));
    const before = dump(store);

    const mend = fail(store, path);
    const messages = [said('2', 'two'), said('3', 'long'), said('4', 'four', 'lark')];
    const refused = await Promise.allSettled(messages.map((message) => exchange.receive(message)));
    mend();

    for (const result of refused) {
      expect(result).toMatchObject({ status: 'rejected', reason: { name: 'StoreError', kind } });
    }
    expect(dump(store)).toEqual(before);
    const again = await Promise.all(messages.map((message: Message) => exchange.receive(message)));
    expect(again.map(({ duplicate, waiting }) => [duplicate, waiting])).toEqual(messages.map(() => [false, false]));
    expect(waitingReplies(store, { survey: SURVEY, channel: 'terminal', now: NOW, most: 9 })).toHaveLength(2);
  },
);

test('the sentence for a person whose message was not stored says so, and what to do', () => {
  expect(notStored(survey).text).toMatch(/not stored.*again/);
});
