/** Messages that came in, and those that wait or could not be taken. */
import { sql } from 'kysely';
import { messageSchema, type Message } from '../../shared/message.js';
import type { Connection, Transaction } from './connection.js';
import { readable } from './errors.js';
import { fromJson } from './json.js';
import { query } from './query.js';

/** One conversation: one person over one channel in one survey. */
export interface ThreadKey {
  readonly survey: string;
  readonly channel: string;
  readonly person: string;
}

/** A message by the channel's own id. */
export interface MessageKey {
  readonly survey: string;
  readonly channel: string;
  readonly id: string;
}

/** A message that is kept but not taken yet. */
export interface WaitingMessage extends ThreadKey, MessageKey {
  /** How often it was tried. */
  readonly tries: number;
  /** As it was kept; `readWaiting` gives the message. */
  readonly body: string;
  /** What its file is fetched by, where that is still to come; else null. */
  readonly file: string | null;
}

const insertMessage = query(
  (
    database,
    place: {
      survey: string;
      channel: string;
      id: string;
      person: string;
      message: string;
      state: 'done' | 'waiting';
      receivedAt: string;
      file: string | null;
    },
  ) =>
    database
      .insertInto('inbox')
      .values({
        survey: place.survey,
        sequence: sql<number>`(select coalesce(max(sequence), 0) + 1 from inbox where survey = ${place.survey})`,
        channel: place.channel,
        id: place.id,
        person: place.person,
        message: place.message,
        state: place.state,
        tries: 0,
        receivedAt: place.receivedAt,
        file: place.file,
      })
      .onConflict((same) => same.columns(['survey', 'channel', 'id']).doNothing()),
);

/** Where a picture was taken is offered to who sent it, and not kept here: only a yes keeps it, in their report. */
const withoutPlace = (message: Message): Message =>
  message.what.kind === 'photo' ? { ...message, what: { ...message.what, place: undefined } } : message;

/** The same, of a message that had to wait. */
const strippedOfPlace = sql<string>`json_remove(message, '$.what.place')`;

/**
 * Keeps a message that came in, once; `false` means it was here already. Channels deliver at least once (a poll cut
 * short is polled again), so the channel's own id decides. `waiting` is for a message that is not taken at once; `file`,
 * for one that waits for its picture or file, is what the channel fetches that by.
 */
export function keepMessage(
  transaction: Transaction,
  message: Message,
  {
    state,
    receivedAt,
    file = null,
  }: { readonly state: 'done' | 'waiting'; readonly receivedAt: string; readonly file?: string | null },
): boolean {
  const { survey, channel, id, person } = message;
  const kept = JSON.stringify(state === 'done' ? withoutPlace(message) : message);
  const values = { survey, channel, id, person, message: kept, state, receivedAt, file };
  return insertMessage.run(transaction, values) === 1;
}

const selectWaiting = query((database, place: ThreadKey) =>
  database
    .selectFrom('inbox')
    .select(['survey', 'channel', 'person', 'id', 'tries', 'message as body', 'file'])
    .where('survey', '=', place.survey)
    .where('channel', '=', place.channel)
    .where('person', '=', place.person)
    .where('state', '=', 'waiting')
    .orderBy('sequence')
    .limit(1),
);

/** The earliest waiting message of a thread: it holds all that came after it. */
export function firstWaiting(connection: Connection, thread: ThreadKey): WaitingMessage | null {
  const { survey, channel, person } = thread;
  return selectWaiting.first(connection, { survey, channel, person }) ?? null;
}

/** Throws `UnreadableRecord`, for example where another version of the program kept it. */
export function readWaiting(waiting: WaitingMessage): Message {
  return readable(`Message "${waiting.id}"`, messageSchema, () => fromJson(waiting.body));
}

/** Whether the file of that message, or of one before it in its thread, is still to come. */
const isHeldByFile = sql<boolean>`exists (
  select 1 from inbox as coming
  where coming.file is not null and coming.survey = inbox.survey and coming.channel = inbox.channel
    and coming.person = inbox.person and coming.sequence <= inbox.sequence
)`;

const selectWaitingThreads = query((database, place: { survey: string; most: number }) =>
  database
    .selectFrom('inbox')
    .select(['survey', 'channel', 'person'])
    .where('survey', '=', place.survey)
    .where('state', '=', 'waiting')
    .where(({ not }) => not(isHeldByFile))
    .groupBy(['survey', 'channel', 'person'])
    .orderBy((inbox) => inbox.fn.min('sequence'))
    .limit(place.most),
);

/** Threads with a waiting message that no file holds up, the one that waits longest first. */
export function waitingThreads(connection: Connection, survey: string, most: number): ThreadKey[] {
  return selectWaitingThreads.all(connection, { survey, most });
}

const countWaiting = query((database, place: { survey: string }) =>
  database
    .selectFrom('inbox')
    .select((inbox) => inbox.fn.countAll<number>().as('messages'))
    .where('survey', '=', place.survey)
    .where('state', '=', 'waiting')
    .where(({ not }) => not(isHeldByFile)),
);

/** How many messages wait for their turn; what waits for a file is not counted. */
export function waitingMessages(connection: Connection, survey: string): number {
  return countWaiting.first(connection, { survey })?.messages ?? 0;
}

const updateDone = query((database, place: MessageKey) =>
  database
    .updateTable('inbox')
    .set({ state: 'done', message: strippedOfPlace })
    .where('survey', '=', place.survey)
    .where('channel', '=', place.channel)
    .where('id', '=', place.id),
);

/** A waiting message was taken. */
export function messageDone(transaction: Transaction, { survey, channel, id }: MessageKey): void {
  updateDone.run(transaction, { survey, channel, id });
}

const updateFailed = query((database, place: MessageKey) =>
  database
    .updateTable('inbox')
    .set((inbox) => ({ state: 'waiting', tries: inbox('tries', '+', 1) }))
    .where('survey', '=', place.survey)
    .where('channel', '=', place.channel)
    .where('id', '=', place.id)
    .returning('tries'),
);

/** A message could not be taken: it waits. Gives the number of tries so far. */
export function messageFailed(transaction: Transaction, { survey, channel, id }: MessageKey): number {
  const failed = updateFailed.first(transaction, { survey, channel, id });
  if (!failed) throw new Error(`No message "${id}" of channel "${channel}" is kept.`);
  return failed.tries;
}

const updateStuck = query((database, place: MessageKey) =>
  database
    .updateTable('inbox')
    .set({ state: 'stuck', message: strippedOfPlace })
    .where('survey', '=', place.survey)
    .where('channel', '=', place.channel)
    .where('id', '=', place.id),
);

const insertStuck = query(
  (database, place: { survey: string; channel: string; id: string; person: string; error: string; at: string }) =>
    database.insertInto('stuck').values({
      survey: place.survey,
      channel: place.channel,
      id: place.id,
      person: place.person,
      error: place.error,
      at: place.at,
      settledAt: null,
    }),
);

/** A message is given up: its thread goes on, and the coordinator is shown it. */
export function messageStuck(
  transaction: Transaction,
  { survey, channel, id, person }: ThreadKey & MessageKey,
  { error, at }: { readonly error: string; readonly at: string },
): void {
  updateStuck.run(transaction, { survey, channel, id });
  insertStuck.run(transaction, { survey, channel, id, person, error, at });
}

const selectStuck = query((database, place: { survey: string }) =>
  database
    .selectFrom('stuck')
    .innerJoin('inbox', (join) =>
      join
        .onRef('inbox.survey', '=', 'stuck.survey')
        .onRef('inbox.channel', '=', 'stuck.channel')
        .onRef('inbox.id', '=', 'stuck.id'),
    )
    .select(['stuck.channel', 'stuck.id', 'stuck.person', 'stuck.error', 'stuck.at', 'inbox.message as body'])
    .where('stuck.survey', '=', place.survey)
    .where('stuck.settledAt', 'is', null)
    .orderBy('inbox.sequence'),
);

/** A message that was given up; `body` is the message as it was kept, JSON text. */
export interface StuckMessage {
  readonly channel: string;
  readonly id: string;
  readonly person: string;
  readonly error: string;
  readonly at: string;
  readonly body: string;
}

/** Messages given up that nobody has settled, in the order in which they came. */
export function stuckMessages(connection: Connection, survey: string): StuckMessage[] {
  return selectStuck.all(connection, { survey });
}

const updateSettled = query((database, place: MessageKey & { at: string }) =>
  database
    .updateTable('stuck')
    .set({ settledAt: place.at })
    .where('survey', '=', place.survey)
    .where('channel', '=', place.channel)
    .where('id', '=', place.id)
    .where('settledAt', 'is', null),
);

/** The coordinator has dealt with it; `false` where no such message is open. */
export function settleStuck(transaction: Transaction, { survey, channel, id }: MessageKey, at: string): boolean {
  return updateSettled.run(transaction, { survey, channel, id, at }) === 1;
}
