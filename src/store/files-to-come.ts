/** Messages that are kept and wait for their picture or file, which the channel fetches. */
import { sql } from 'kysely';
import type { Content } from '../../shared/message.js';
import type { Connection, Transaction } from './connection.js';
import type { MessageKey, ThreadKey } from './inbox.js';
import { query } from './query.js';

/** A message whose file is to be fetched now: all before it in its thread is taken. */
export interface MessageToCome extends ThreadKey, MessageKey {
  /** What the channel fetches it by. */
  readonly file: string;
}

const selectToCome = query((database, place: { survey: string; channel: string; most: number }) =>
  database
    .selectFrom('inbox')
    .select(['survey', 'channel', 'person', 'id', 'file'])
    .where('survey', '=', place.survey)
    .where('channel', '=', place.channel)
    .where('file', 'is not', null)
    .where(({ not, exists, selectFrom }) =>
      not(
        exists(
          selectFrom('inbox as earlier')
            .select('earlier.sequence')
            .whereRef('earlier.survey', '=', 'inbox.survey')
            .whereRef('earlier.channel', '=', 'inbox.channel')
            .whereRef('earlier.person', '=', 'inbox.person')
            .where('earlier.state', '=', 'waiting')
            .whereRef('earlier.sequence', '<', 'inbox.sequence'),
        ),
      ),
    )
    .orderBy('sequence')
    .limit(place.most),
);

/** Of each thread of the channel at most one, the one that waits longest first. */
export function messagesToCome(
  connection: Connection,
  place: { readonly survey: string; readonly channel: string; readonly most: number },
): MessageToCome[] {
  return selectToCome.all(connection, place).flatMap(({ file, ...row }) => (file === null ? [] : [{ ...row, file }]));
}

const updateContent = query((database, place: MessageKey & { what: string }) =>
  database
    .updateTable('inbox')
    .set({ message: sql<string>`json_set(message, '$.what', json(${place.what}))`, file: null })
    .where('survey', '=', place.survey)
    .where('channel', '=', place.channel)
    .where('id', '=', place.id)
    .where('file', 'is not', null),
);

/**
 * A message gets the content that its file came to, and waits for its turn as any other. `false` where no such message
 * waits for a file: its sender was forgotten meanwhile.
 */
export function contentCame(transaction: Transaction, { survey, channel, id }: MessageKey, what: Content): boolean {
  return updateContent.run(transaction, { survey, channel, id, what: JSON.stringify(what) }) === 1;
}
