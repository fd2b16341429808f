/**
 * Messages a second with a durable commit: through the exchange with the dialog, through the exchange with a
 * conversation that only says thank you, and the rows of each written by bare better-sqlite3. Slices of each kind take
 * turns within a round, and what is told is the median of the rounds' ratios.
 */
import { closeSync, fsyncSync, openSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { v7 } from 'uuid';
import type { Message, Reply } from '../../../shared/message.js';
import { openExchange } from '../../../src/exchange/index.js';
import { Connection, openStore, type Store } from '../../../src/store/index.js';
import { survey } from '../../demo-survey.js';
import { median, speed } from './numbers.js';
import { ANSWERS, exchangeWithDialog, NOW, text } from './talking.js';

export interface MessagesWish {
  readonly folder: string;
  readonly rounds: number;
  readonly sliceMilliseconds: number;
}

/** A statement that wrote, with its values by name. */
interface Written {
  readonly sql: string;
  readonly values: Readonly<Record<string, unknown>>;
}

type Receive = (message: Message) => Promise<unknown>;
interface Measured {
  readonly exchange: (store: Store) => { receive: Receive };
  readonly texts: readonly string[];
}

const thanks: Reply = { text: 'Thank you.', choices: [], silent: false, report: null, revision: 0 };

const MEASURED: Readonly<Record<'dialog' | 'thanks', Measured>> = {
  dialog: { exchange: exchangeWithDialog, texts: ['hello', 'yes', ...ANSWERS] },
  thanks: {
    exchange: (store) =>
      openExchange<{ taken: number }>({
        store,
        survey,
        conversation: {
          newThread: () => ({ taken: 0 }),
          dayAndPlaceOf: () => null,
          step: (thread) => ({ thread: { taken: thread.taken + 1 }, replies: [thanks], effects: [] }),
        },
        now: () => NOW,
        newId: () => v7(),
        newCode: () => '000000',
      }),
    texts: ['low 70s, mostly sunny, light breeze'],
  },
};

/** What is written for each text of one conversation, statement by statement. */
async function rehearse({ exchange, texts }: Measured, store: Store): Promise<Written[][]> {
  const { receive } = exchange(store);
  const { prepared } = Connection.prototype;
  let written: Written[] = [];
  Connection.prototype.prepared = function (this: Connection, sql: string) {
    const statement = prepared.call(this, sql);
    if (statement.reader || !/^(?:insert|update|delete)/i.test(sql)) return statement;
    const run = (values: Record<string, unknown>) => {
      written.push({ sql, values });
      return statement.run(values);
    };
    return Object.assign(Object.create(statement) as typeof statement, { run });
  };
  const all: Written[][] = [];
  try {
    for (const said of texts) {
      written = [];
      await receive(text('rehearsed', said));
      all.push(written);
    }
  } finally {
    Connection.prototype.prepared = prepared;
  }
  return all;
}

/** Writes rehearsed rows again and again, each conversation as a survey of its own: `survey` is in every key. */
function bareWriter(path: string, rehearsed: readonly (readonly Written[])[]) {
  const database = new Database(path);
  database.pragma('synchronous = FULL');
  database.pragma('foreign_keys = ON');
  const prepared = rehearsed.map((written) =>
    written.map(({ sql, values }) => ({ statement: database.prepare(sql), values })),
  );
  let at = 0;
  const write = database.transaction((count: number) => {
    for (let done = 0; done < count; done++, at++) {
      const survey = `bare-${Math.floor(at / prepared.length)}`;
      for (const { statement, values } of prepared[at % prepared.length]!) statement.run({ ...values, survey });
    }
  });
  return { write: (count: number) => (write.immediate(count), count), close: () => database.close() };
}

/** People in turn, each of them going through the whole conversation; `side` of them at the same time. */
function talkers(kind: string, { texts }: Measured, receive: Receive, side: number): () => Promise<number> {
  let at = 0;
  return async () => {
    const said = texts[at % texts.length]!;
    const round = Math.floor(at / texts.length);
    at += 1;
    const people = Array.from({ length: side }, (_, index) => `${kind}-${side}-${round}-${index}`);
    await Promise.all(people.map((person) => receive(text(person, said))));
    return side;
  };
}

const SIDE_BY_SIDE = 50;

/** By what was measured, messages a second in each round. */
export async function measureMessages({ folder, rounds, sliceMilliseconds }: MessagesWish) {
  const kinds: Record<string, () => Promise<number> | number> = {};
  const closing: (() => void)[] = [];
  for (const [kind, measured] of Object.entries(MEASURED)) {
    const store = await openStore(join(folder, `${kind}.sqlite`));
    const rehearsed = await rehearse(measured, store);
    const { receive } = measured.exchange(store);
    const path = join(folder, `bare-${kind}.sqlite`);
    (await openStore(path)).close();
    const bare = bareWriter(path, rehearsed);
    closing.push(() => store.close(), bare.close);
    for (const side of [1, SIDE_BY_SIDE]) {
      kinds[`${kind} ${side}`] = talkers(kind, measured, receive, side);
      kinds[`bare ${kind} ${side}`] = () => bare.write(side);
    }
  }
  const file = openSync(join(folder, 'synced'), 'a');
  const page = Buffer.alloc(4096);
  kinds['fsync'] = () => {
    writeSync(file, page);
    fsyncSync(file);
    return 1;
  };

  const measured: Record<string, number[]> = {};
  for (let round = -1; round < rounds; round++) {
    for (const [kind, unit] of Object.entries(kinds)) {
      // the first round only warms up, and a dialog takes long to get warm
      const perSecond = await speed(round < 0 ? 4 * sliceMilliseconds : sliceMilliseconds, unit);
      if (round >= 0) (measured[kind] ??= []).push(perSecond);
    }
  }
  closeSync(file);
  for (const close of closing) close();

  const ratio = (one: string, other: string): number =>
    median((measured[one] ?? []).map((value, round) => value / measured[other]![round]!));
  return { perSecond: (kind: string): number => median(measured[kind] ?? []), ratio };
}
