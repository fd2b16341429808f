/**
 * How much the exchange costs over the bare database: messages through `receive` with a conversation that does
 * nothing, against the same rows written by hand with better-sqlite3, and against a bare fsync. Run from the top folder:
 * `node --import ./tests/run-typescript.mjs tests/bench/receive.ts [rounds]`.
 *
 * A disk can change its speed tenfold by itself, so slices of each kind take turns, and only ratios within a round are
 * worth quoting.
 */
import { closeSync, fsyncSync, mkdtempSync, openSync, rmSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { v7 } from 'uuid';
import type { Message, Reply } from '../../shared/message.js';
import { openExchange } from '../../src/exchange/index.js';
import { openStore } from '../../src/store/index.js';
import { survey } from '../demo-survey.js';

const SLICE_MILLISECONDS = 400;
const PEOPLE = 100;
const NOW = '2026-05-06T23:30:00.000Z';
const rounds = Number(process.argv[2] ?? 10);

const folder = mkdtempSync(join(tmpdir(), 'queenpost-bench-'));
const reply: Reply = { text: 'Thank you.', choices: [], silent: false, report: null, revision: 0 };

let count = 0;
function nextMessage(): Message {
  count += 1;
  return {
    survey: survey.settings.key,
    channel: 'bench',
    person: `person-${count % PEOPLE}`,
    id: `m${count}`,
    at: NOW,
    replyTo: null,
    edits: null,
    manner: 'one',
    proven: true,
    what: { kind: 'text', text: 'low 70s, mostly sunny, light breeze' },
  };
}

const store = await openStore(join(folder, 'exchange.db'));
const exchange = openExchange<{ taken: number }>({
  store,
  survey,
  conversation: {
    newThread: () => ({ taken: 0 }),
    dayAndPlaceOf: () => null,
    step: (thread) => ({ thread: { taken: thread.taken + 1 }, replies: [reply], effects: [] }),
  },
  now: () => NOW,
  newId: () => v7(),
});

(await openStore(join(folder, 'bare.db'))).close();
const bare = new Database(join(folder, 'bare.db'));
bare.pragma('synchronous = FULL');
const insertMessage = bare.prepare(`insert into inbox values
  (@survey, (select coalesce(max(sequence), 0) + 1 from inbox where survey = @survey), @channel, @id, @person,
   @message, 'done', 0, @now)`);
const upsertThread = bare.prepare(`insert into threads values (@survey, @channel, @person, @state, @manner, 1, @now)
  on conflict do update set state = excluded.state, changedAt = excluded.changedAt`);
const insertReply = bare.prepare(`insert into outbox values
  (@survey, (select coalesce(max(sequence), 0) + 1 from outbox where survey = @survey), @reply_id, @channel, @person,
   @id, @reply, 'waiting', 0, @now, null, @now, null)`);
const writeBare = bare.transaction((messages: readonly Message[]) => {
  for (const message of messages) {
    const { survey, channel, id, person, manner } = message;
    insertMessage.run({ survey, channel, id, person, message: JSON.stringify(message), now: NOW });
    upsertThread.run({ survey, channel, person, state: '{"taken":1}', manner, now: NOW });
    insertReply.run({ survey, channel, person, id, reply_id: v7(), reply: JSON.stringify(reply), now: NOW });
  }
});

const file = openSync(join(folder, 'synced'), 'a');
const page = Buffer.alloc(4096);

/** Units of work a second over one slice. */
async function speed(unit: () => Promise<number> | number): Promise<number> {
  const start = performance.now();
  let done = 0;
  while (performance.now() - start < SLICE_MILLISECONDS) done += await unit();
  return (done / (performance.now() - start)) * 1000;
}

const batch = (size: number) => Array.from({ length: size }, nextMessage);
const kinds: Record<string, () => Promise<number> | number> = {
  'receive, one a commit': async () => (await Promise.all(batch(1).map((message) => exchange.receive(message)))).length,
  'bare, one a commit': () => {
    writeBare.immediate(batch(1));
    return 1;
  },
  'receive, fifty a commit': async () =>
    (await Promise.all(batch(50).map((message) => exchange.receive(message)))).length,
  'bare, fifty a commit': () => {
    writeBare.immediate(batch(50));
    return 50;
  },
  'bare fsync of 4 KiB': () => {
    writeSync(file, page);
    fsyncSync(file);
    return 1;
  },
};

const median = (numbers: readonly number[]) => [...numbers].sort((a, b) => a - b)[Math.floor(numbers.length / 2)]!;
const measured: Record<string, number[]> = Object.fromEntries(Object.keys(kinds).map((kind) => [kind, []]));
for (let round = -1; round < rounds; round += 1) {
  for (const [kind, unit] of Object.entries(kinds)) {
    const now = await speed(unit);
    if (round >= 0) measured[kind]!.push(now); // the first round only warms up
  }
}

for (const [kind, speeds] of Object.entries(measured)) {
  const [low, middle, high] = [Math.min(...speeds), median(speeds), Math.max(...speeds)].map(Math.round);
  console.log(`${kind}: ${middle}/s (${low}-${high})`);
}
const ratio = (one: string, other: string) =>
  median(measured[one]!.map((value, round) => value / measured[other]![round]!)).toFixed(2);
console.log(`receive / bare, one a commit: ${ratio('receive, one a commit', 'bare, one a commit')}`);
console.log(`receive / bare, fifty a commit: ${ratio('receive, fifty a commit', 'bare, fifty a commit')}`);
console.log(`receive, one a commit / bare fsync: ${ratio('receive, one a commit', 'bare fsync of 4 KiB')}`);

closeSync(file);
bare.close();
store.close();
rmSync(folder, { recursive: true });
