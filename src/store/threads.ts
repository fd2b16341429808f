/** Where each conversation stands. */
import { z } from 'zod';
import { messageSchema, type Message } from '../../shared/message.js';
import type { Connection, Transaction } from './connection.js';
import { readable } from './errors.js';
import type { ThreadKey } from './inbox.js';
import { fromJson } from './json.js';
import { query } from './query.js';

const storedThread = z.strictObject({ state: z.unknown(), manner: messageSchema.shape.manner, proven: z.boolean() });

/** `state` is the dialog's own plain data, and opaque here. Manner and proof are those of the last message. */
export type StoredThread = z.infer<typeof storedThread>;

const selectThread = query((database, place: ThreadKey) =>
  database
    .selectFrom('threads')
    .select(['state', 'manner', 'proven'])
    .where('survey', '=', place.survey)
    .where('channel', '=', place.channel)
    .where('person', '=', place.person),
);

/** Null before the first message. */
export function threadOf(connection: Connection, thread: ThreadKey): StoredThread | null {
  const { survey, channel, person } = thread;
  const row = selectThread.first(connection, { survey, channel, person });
  if (!row) return null;
  return readable(`The thread with "${person}" over ${channel}`, storedThread, () => ({
    state: fromJson(row.state),
    manner: row.manner,
    proven: row.proven === 1,
  }));
}

const upsertThread = query(
  (database, place: ThreadKey & { state: string; manner: string; proven: number; changedAt: string }) =>
    database
      .insertInto('threads')
      .values({
        survey: place.survey,
        channel: place.channel,
        person: place.person,
        state: place.state,
        manner: place.manner,
        proven: place.proven,
        changedAt: place.changedAt,
      })
      .onConflict((same) =>
        same.columns(['survey', 'channel', 'person']).doUpdateSet((row) => ({
          state: row.ref('excluded.state'),
          manner: row.ref('excluded.manner'),
          proven: row.ref('excluded.proven'),
          changedAt: row.ref('excluded.changedAt'),
        })),
      ),
);

/** Keeps what the step made of the thread of this message. */
export function keepThread(transaction: Transaction, message: Message, state: unknown, changedAt: string): void {
  const { survey, channel, person, manner, proven } = message;
  const values = { survey, channel, person, state: JSON.stringify(state), manner, proven: proven ? 1 : 0, changedAt };
  upsertThread.run(transaction, values);
}
