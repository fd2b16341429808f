/** Replies on their way out. */
import { sql } from 'kysely';
import { replySchema, type Reply } from '../../shared/message.js';
import type { Connection, Transaction } from './connection.js';
import { readable } from './errors.js';
import { sortable } from './instant.js';
import type { ThreadKey } from './inbox.js';
import { fromJson } from './json.js';
import { query } from './query.js';

/** A reply that waits. Its `id` stays the same at each try: a mail keeps its Message-ID. */
export interface WaitingReply extends ThreadKey {
  readonly sequence: number;
  readonly id: string;
  /** The id of the message that it answers. */
  readonly answers: string;
  /** How often sending it has failed. */
  readonly tries: number;
  readonly reply: Reply;
  /** The channel's own id of the last reply sent in its slot; null where there is none to change. */
  readonly handle: string | null;
}

/** One reply of the outbox. */
export interface OutboxKey {
  readonly survey: string;
  readonly sequence: number;
}

const insertReply = query(
  (
    database,
    place: ThreadKey & {
      id: string;
      answers: string;
      reply: string;
      slot: string | null;
      due: string;
      writtenAt: string;
    },
  ) =>
    database.insertInto('outbox').values({
      survey: place.survey,
      sequence: sql<number>`(select coalesce(max(sequence), 0) + 1 from outbox where survey = ${place.survey})`,
      id: place.id,
      channel: place.channel,
      person: place.person,
      answers: place.answers,
      reply: place.reply,
      state: 'waiting',
      tries: 0,
      due: place.due,
      error: null,
      writtenAt: place.writtenAt,
      settledAt: null,
      slot: place.slot,
      handle: null,
    }),
);

/** Puts a reply at the end of its thread's queue, due at once. */
export function addReply(
  transaction: Transaction,
  { survey, channel, person }: ThreadKey,
  {
    id,
    answers,
    reply,
    at,
  }: { readonly id: string; readonly answers: string; readonly reply: Reply; readonly at: string },
): void {
  const values = { survey, channel, person, id, answers, reply: JSON.stringify(reply), slot: reply.slot ?? null };
  insertReply.run(transaction, { ...values, due: sortable(at), writtenAt: at });
}

const selectWaitingReplies = query((database, place: { survey: string; channel: string; now: string; most: number }) =>
  database
    .selectFrom('outbox')
    .select(['survey', 'sequence', 'id', 'channel', 'person', 'answers', 'tries', 'reply', 'slot'])
    .where('survey', '=', place.survey)
    .where('channel', '=', place.channel)
    .where('state', '=', 'waiting')
    .where('due', '<=', place.now)
    .where(({ not, exists, selectFrom }) =>
      not(
        exists(
          selectFrom('outbox as earlier')
            .select('earlier.sequence')
            .whereRef('earlier.survey', '=', 'outbox.survey')
            .whereRef('earlier.channel', '=', 'outbox.channel')
            .whereRef('earlier.person', '=', 'outbox.person')
            .where('earlier.state', '=', 'waiting')
            .whereRef('earlier.sequence', '<', 'outbox.sequence'),
        ),
      ),
    )
    .orderBy('sequence')
    .limit(place.most),
);

const selectHandle = query((database, place: ThreadKey & { slot: string }) =>
  database
    .selectFrom('outbox')
    .select('handle')
    .where('survey', '=', place.survey)
    .where('channel', '=', place.channel)
    .where('person', '=', place.person)
    .where('slot', '=', place.slot)
    .where('handle', 'is not', null)
    .orderBy('sequence', 'desc')
    .limit(1),
);

function handleOf(connection: Connection, { survey, channel, person }: ThreadKey, slot: string): string | null {
  return selectHandle.first(connection, { survey, channel, person, slot })?.handle ?? null;
}

/** Replies that a channel may send now: of each thread the first that waits, where it is due. */
export function waitingReplies(
  connection: Connection,
  { survey, channel, now, most }: { survey: string; channel: string; now: string; most: number },
): WaitingReply[] {
  return selectWaitingReplies
    .all(connection, { survey, channel, now: sortable(now), most })
    .map(({ slot, ...row }) => ({
      ...row,
      reply: readable(`Reply ${row.sequence} of the outbox`, replySchema, () => fromJson(row.reply)),
      handle: slot === null ? null : handleOf(connection, row, slot),
    }));
}

const selectAbout = query((database, place: ThreadKey & { message: string }) =>
  database
    .selectFrom('outbox')
    .select('reply')
    .where('survey', '=', place.survey)
    .where('channel', '=', place.channel)
    .where('person', '=', place.person)
    .where('handle', 'is not', null)
    .where((outbox) => outbox.or([outbox('handle', '=', place.message), outbox('answers', '=', place.message)]))
    .orderBy('sequence', 'desc')
    .limit(1),
);

/**
 * A reply of this thread that went out: by the channel's own id of it, or by the message that it answered. Null where none
 * is known by its id: only of those that may be looked up it is kept.
 */
export function replySaid(
  connection: Connection,
  { survey, channel, person }: ThreadKey,
  message: string,
): Reply | null {
  const row = selectAbout.first(connection, { survey, channel, person, message });
  return row === undefined ? null : readable('A reply of the outbox', replySchema, () => fromJson(row.reply));
}

const selectNextDue = query((database, place: { survey: string; channel: string }) =>
  database
    .selectFrom(
      database
        .selectFrom('outbox')
        // With a lone min() SQLite takes the other columns from the row that has it (sqlite.org/lang_select.html#bareagg).
        .select((outbox) => ['due', outbox.fn.min('sequence').as('first')])
        .where('survey', '=', place.survey)
        .where('channel', '=', place.channel)
        .where('state', '=', 'waiting')
        .groupBy('person')
        .as('heads'),
    )
    .select((heads) => heads.fn.min('due').as('due')),
);

/** When the next reply of a channel is due; null when none waits. */
export function nextReplyDue(connection: Connection, survey: string, channel: string): string | null {
  return selectNextDue.first(connection, { survey, channel })?.due ?? null;
}

const updateSettled = query(
  (
    database,
    place: OutboxKey & { state: 'sent' | 'failed'; error: string | null; handle: string | null; at: string },
  ) =>
    database
      .updateTable('outbox')
      .set({ state: place.state, error: place.error, handle: place.handle, settledAt: place.at })
      .where('survey', '=', place.survey)
      .where('sequence', '=', place.sequence),
);

const deleteErased = query((database, place: OutboxKey) =>
  database
    .deleteFrom('outbox')
    .where('survey', '=', place.survey)
    .where('sequence', '=', place.sequence)
    .where(sql`json_extract(reply, '$.erase')`, '=', sql.lit(1)),
);

/**
 * The channel has taken it over; `handle` is the channel's own id of it, where a later reply may
 * change it. One that is to be erased is kept no longer.
 */
export function replySent(
  transaction: Transaction,
  { survey, sequence }: OutboxKey,
  { handle, at }: { readonly handle: string | null; readonly at: string },
): void {
  updateSettled.run(transaction, { survey, sequence, state: 'sent', error: null, handle, at });
  deleteErased.run(transaction, { survey, sequence });
}

/**
 * It will never go out ("blocked by the user"); the thread's next reply has its turn. One that is to be erased is kept no
 * longer.
 */
export function replyFailed(
  transaction: Transaction,
  { survey, sequence }: OutboxKey,
  { error, at }: { readonly error: string; readonly at: string },
): void {
  updateSettled.run(transaction, { survey, sequence, state: 'failed', error, handle: null, at });
  deleteErased.run(transaction, { survey, sequence });
}

const updateLater = query((database, place: OutboxKey & { due: string; error: string }) =>
  database
    .updateTable('outbox')
    .set((outbox) => ({ due: place.due, error: place.error, tries: outbox('tries', '+', 1) }))
    .where('survey', '=', place.survey)
    .where('sequence', '=', place.sequence),
);

/** Sending failed; it is tried again when due, and the thread waits for it. */
export function replyLater(
  transaction: Transaction,
  { survey, sequence }: OutboxKey,
  { error, due }: { readonly error: string; readonly due: string },
): void {
  updateLater.run(transaction, { survey, sequence, error, due: sortable(due) });
}

const selectFailed = query((database, place: { survey: string }) =>
  database
    .selectFrom('outbox')
    .select(['sequence', 'channel', 'person', 'error', 'settledAt'])
    .where('survey', '=', place.survey)
    .where('state', '=', 'failed')
    .orderBy('sequence'),
);

/** Replies that will never go out, for the coordinator. */
export function failedReplies(connection: Connection, survey: string) {
  return selectFailed.all(connection, { survey });
}
