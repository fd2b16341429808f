/** Replies go out in order within a thread, at least once, with growing waits; what cannot go out holds only its own. */
import Database from 'better-sqlite3';
import { expect, test } from 'vitest';
import type { Reply } from '../../shared/message.js';
import { openSender, SendLater, SendNever, type Outgoing, type Send } from '../../src/exchange/index.js';
import { waitSeconds } from '../../src/exchange/sender.js';
import { addReply, failedReplies, type Store } from '../../src/store/index.js';
import { SURVEY, uuid } from '../store/sample.js';
import { openScratch, scratchPath } from '../store/scratch.js';

const NOW = '2026-05-06T23:30:00.000Z';
const seconds = (after: number) => new Date(Date.parse(NOW) + after * 1000).toISOString();
const reply = (text: string): Reply => ({ text, choices: [], silent: false, report: null, revision: 0 });

/** Puts replies into the outbox, each `person: text`, all over that channel. */
let ids = 0;
const write = (store: Store, lines: readonly string[], channel = 'chat') =>
  store.writing((transaction) => {
    for (const line of lines) {
      const [person = '', text = ''] = line.split(': ');
      const thread = { survey: SURVEY, channel, person };
      addReply(transaction, thread, { id: uuid((ids += 1)), answers: 'm', reply: reply(text), at: NOW });
    }
  });

/** A channel that notes what it was given, and fails where `fails` gives an error. */
function channel(fails: (outgoing: Outgoing) => unknown = () => null): Send & { sent: string[]; tried: Outgoing[] } {
  const sent: string[] = [];
  const tried: Outgoing[] = [];
  const send = async (outgoing: Outgoing) => {
    tried.push(outgoing);
    await new Promise((later) => setImmediate(later));
    const error = fails(outgoing);
    if (error instanceof Error) throw error;
    sent.push(`${outgoing.person}: ${outgoing.reply.text}`);
  };
  return Object.assign(send, { sent, tried });
}
const over = (store: Store, chat: Send, more: [string, Send][] = []) =>
  openSender({ store, survey: SURVEY, channels: new Map([['chat', chat], ...more]) });

test('what waits goes out once, in order within each thread', async () => {
  const store = await openScratch();
  const lines = Array.from({ length: 120 }, (_, index) => `p${index % 7}: ${index}`);
  write(store, lines);
  const chat = channel();
  const sender = over(store, chat);
  expect(sender.nextDue()).toBe(NOW);
  expect(await sender.runDue(NOW)).toEqual({ sent: 120, later: 0, failed: 0 });
  for (let person = 0; person < 7; person += 1) {
    const own = (line: string) => line.startsWith(`p${person}: `);
    expect(chat.sent.filter(own)).toEqual(lines.filter(own));
  }
  expect(sender.nextDue()).toBeNull();
  expect(await sender.runDue(seconds(9999))).toEqual({ sent: 0, later: 0, failed: 0 });
  expect(chat.sent).toHaveLength(120);
});

test('a channel is given the whole reply, with an id that stays the same at each try', async () => {
  const store = await openScratch();
  write(store, ['wren: hello']);
  let down = true;
  const chat = channel(() => down && new Error('down'));
  const sender = over(store, chat);
  await sender.runDue(NOW);
  down = false;
  await sender.runDue(seconds(1));
  const outgoing = {
    survey: SURVEY,
    channel: 'chat',
    person: 'wren',
    id: uuid(ids),
    answers: 'm',
    reply: reply('hello'),
    handle: null,
  };
  expect(chat.tried).toEqual([outgoing, outgoing]);
});

test('a reply that fails holds those after it in its thread, and no other thread', async () => {
  const store = await openScratch();
  write(store, ['wren: one', 'lark: one', 'wren: two', 'lark: two']);
  let down = true;
  const chat = channel(({ person }) => down && person === 'wren' && new Error('down'));
  const sender = over(store, chat);
  expect(await sender.runDue(NOW)).toEqual({ sent: 2, later: 1, failed: 0 });
  expect(chat.sent).toEqual(['lark: one', 'lark: two']);
  expect(sender.nextDue()).toBe(seconds(1));
  down = false;
  expect(await sender.runDue(seconds(0.999))).toEqual({ sent: 0, later: 0, failed: 0 });
  expect(await sender.runDue(seconds(1))).toEqual({ sent: 2, later: 0, failed: 0 });
  expect(chat.sent.slice(2)).toEqual(['wren: one', 'wren: two']);
});

test('the waits grow from a second to an hour', async () => {
  const store = await openScratch();
  write(store, ['wren: one']);
  const sender = over(
    store,
    channel(() => new Error('down')),
  );
  const waits: number[] = [];
  for (let now = NOW; waits.length < 15;) {
    await sender.runDue(now);
    const next = sender.nextDue()!;
    waits.push((Date.parse(next) - Date.parse(now)) / 1000);
    now = next;
  }
  expect(waits).toEqual([1, 2, 4, 8, 16, 32, 64, 128, 256, 512, 1024, 2048, 3600, 3600, 3600]);
});

const waits: [tries: number, error: unknown, seconds: number][] = [
  [0, new Error('x'), 1],
  [11, new Error('x'), 2048],
  [12, new Error('x'), 3600],
  [5000, new Error('x'), 3600],
  [0, new SendLater(37), 37],
  [9, new SendLater(37), 37], // what the channel was told wins, shorter or longer
  [0, new SendLater(7200), 7200],
  [0, new SendLater(0), 1],
  [0, new SendLater(-5), 1],
  [3, new SendLater(NaN), 8],
  [0, 'no error at all', 1],
];
test.each(waits)('after %d tries and %s the wait is %d s', (tries, error, expected) => {
  expect(waitSeconds(tries, error)).toBe(expected);
});

test('a wait that the channel was told is kept', async () => {
  const store = await openScratch();
  write(store, ['wren: one']);
  const chat = channel(() => new SendLater(37));
  const sender = over(store, chat);
  await sender.runDue(NOW);
  expect(sender.nextDue()).toBe(seconds(37));
  await sender.runDue(seconds(36.9));
  expect(chat.tried).toHaveLength(1);
  await sender.runDue(seconds(37));
  expect(chat.tried).toHaveLength(2);
});

test('a reply that can never go out is given up and listed, and the next has its turn', async () => {
  const store = await openScratch();
  write(store, ['wren: one', 'wren: two']);
  const chat = channel(({ reply: { text } }) => text === 'one' && new SendNever('blocked by the user'));
  const sender = over(store, chat);
  expect(await sender.runDue(NOW)).toEqual({ sent: 1, later: 0, failed: 1 });
  expect(chat.sent).toEqual(['wren: two']);
  expect(failedReplies(store, SURVEY)).toMatchObject([
    { channel: 'chat', person: 'wren', error: 'SendNever: blocked by the user', settledAt: NOW },
  ]);
  expect(sender.nextDue()).toBeNull();
});

test('a reply of a channel that this program does not run waits for one that does', async () => {
  const store = await openScratch();
  write(store, ['wren: one'], 'email');
  const chat = channel();
  const sender = over(store, chat);
  expect(await sender.runDue(NOW)).toEqual({ sent: 0, later: 0, failed: 0 });
  expect(sender.nextDue()).toBeNull();
  const mail = channel();
  await over(store, chat, [['email', mail]]).runDue(NOW);
  expect(mail.sent).toEqual(['wren: one']);
});

test('a channel that hangs does not hold up another', async () => {
  const store = await openScratch();
  write(store, ['wren: one'], 'email');
  write(store, ['wren: one']);
  const chat = channel();
  let answer = () => {};
  const hanging: Send = () => new Promise((done) => (answer = done));
  const sender = over(store, chat, [['email', hanging]]);
  const run = sender.runDue(NOW);
  while (chat.sent.length === 0) await new Promise((later) => setImmediate(later));
  answer();
  expect(await run).toEqual({ sent: 2, later: 0, failed: 0 });
});

test('a run that is called while one runs is that run', async () => {
  const store = await openScratch();
  write(store, ['wren: one']);
  const chat = channel();
  const sender = over(store, chat);
  await Promise.all([sender.runDue(NOW), sender.runDue(NOW)]);
  expect(chat.sent).toEqual(['wren: one']);
  write(store, ['wren: two']);
  await sender.runDue(NOW);
  expect(chat.sent).toEqual(['wren: one', 'wren: two']);
});

test('a reply of a slot is handed what the channel gave for the last one of its thread and slot', async () => {
  const store = await openScratch();
  const tally = (person: string, text: string, slot?: string) =>
    store.writing((transaction) =>
      addReply(
        transaction,
        { survey: SURVEY, channel: 'chat', person },
        {
          id: uuid((ids += 1)),
          answers: 'm',
          reply: { ...reply(text), ...(slot === undefined ? {} : { slot }) },
          at: NOW,
        },
      ),
    );
  const handed: string[] = [];
  const chat: Send = async ({ person, reply: { text }, handle }) => {
    handed.push(`${person} ${text}: ${handle}`);
    return text === 'unsaid' ? undefined : (handle ?? `h-${person}-${text}`);
  };
  tally('wren', 'one', 'live');
  tally('wren', 'question');
  tally('wren', 'two', 'live');
  tally('wren', 'other', 'live-2');
  tally('lark', 'one', 'live');
  await over(store, chat).runDue(NOW);
  tally('wren', 'unsaid', 'live'); // a channel that gives nothing leaves the last handle standing
  tally('wren', 'three', 'live');
  await over(store, chat).runDue(NOW);
  expect(handed.filter((line) => line.startsWith('wren'))).toEqual([
    'wren one: null',
    'wren question: null',
    'wren two: h-wren-one',
    'wren other: null',
    'wren unsaid: h-wren-one',
    'wren three: h-wren-one',
  ]);
  expect(handed).toContain('lark one: null');
});

test('one that is told to stop ends with what is in hand', async () => {
  const store = await openScratch();
  write(store, ['wren: one', 'wren: two']);
  const stop = new AbortController();
  const sent: string[] = [];
  const send: Send = async ({ reply: { text } }) => {
    stop.abort();
    await new Promise((later) => setImmediate(later));
    sent.push(text);
  };
  const channels = new Map([['chat', send]]);
  const run = openSender({ store, survey: SURVEY, channels, stop: stop.signal }).runDue(NOW);
  expect(await run).toEqual({ sent: 1, later: 0, failed: 0 });
  expect(sent).toEqual(['one']);
});

test('after a crash between sending and noting it the same reply goes out again, under the same id', async () => {
  const path = scratchPath();
  const store = await openScratch(path);
  write(store, ['wren: one']);
  const sent: string[] = [];
  const crash: Send = async ({ id }) => {
    sent.push(id);
    await new Promise(() => {}); // the program ends here
  };
  void over(store, crash).runDue(NOW);
  await new Promise((later) => setImmediate(later));
  await over(await openScratch(path), async ({ id }) => void sent.push(id)).runDue(NOW);
  expect(sent).toEqual([uuid(ids), uuid(ids)]);
});

test('where the database cannot note what was sent, it is not sent over and over', async () => {
  const path = scratchPath();
  const store = await openScratch(path, { busyMilliseconds: 10 });
  write(store, ['wren: one', 'wren: two']);
  const chat = channel();
  const sender = over(store, chat);
  const other = new Database(path);
  other.exec('begin immediate');
  await expect(sender.runDue(NOW)).rejects.toMatchObject({ name: 'StoreError', kind: 'locked' });
  await expect(sender.runDue(seconds(5))).rejects.toMatchObject({ kind: 'locked' });
  expect(chat.sent).toEqual(['wren: one']);
  other.close();
  expect(await sender.runDue(seconds(10))).toEqual({ sent: 1, later: 0, failed: 0 });
  expect(chat.sent).toEqual(['wren: one', 'wren: two']);
});
