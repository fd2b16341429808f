/** What is still to be done with the photographs of somebody who was forgotten. */
import type { Connection, Transaction } from './connection.js';
import type { ThreadKey } from './inbox.js';
import { query } from './query.js';
import type { Tables } from './tables.js';

/** A photograph that shall lose its metadata, and the number of the watch that it stays with. */
export interface PhotographToBare {
  readonly watch: number;
  readonly sha256: string;
}

const insertToBare = query((database, place: Tables['toBare']) =>
  database
    .insertInto('toBare')
    .values({
      survey: place.survey,
      channel: place.channel,
      person: place.person,
      watch: place.watch,
      sha256: place.sha256,
    } satisfies Tables['toBare'])
    .onConflict((same) => same.doNothing()),
);

/** Notes a photograph; the thread is the one that is told where it cannot be done, and is not kept longer than that. */
export function bareLater(
  transaction: Transaction,
  { survey, channel, person }: ThreadKey,
  { watch, sha256 }: PhotographToBare,
): void {
  insertToBare.run(transaction, { survey, channel, person, watch, sha256 });
}

const selectThreads = query((database, place: { survey: string }) =>
  database.selectFrom('toBare').select(['survey', 'channel', 'person']).distinct().where('survey', '=', place.survey),
);

/** Threads of forgotten people whose photographs still have their metadata. */
export const threadsToBare = (connection: Connection, survey: string): ThreadKey[] =>
  selectThreads.all(connection, { survey });

const selectToBare = query((database, place: ThreadKey) =>
  database
    .selectFrom('toBare')
    .select(['watch', 'sha256'])
    .where('survey', '=', place.survey)
    .where('channel', '=', place.channel)
    .where('person', '=', place.person),
);

export const photographsToBare = (connection: Connection, { survey, channel, person }: ThreadKey): PhotographToBare[] =>
  selectToBare.all(connection, { survey, channel, person });

const deleteToBare = query((database, place: Tables['toBare']) =>
  database
    .deleteFrom('toBare')
    .where('survey', '=', place.survey)
    .where('channel', '=', place.channel)
    .where('person', '=', place.person)
    .where('watch', '=', place.watch)
    .where('sha256', '=', place.sha256),
);

/** It is done, or cannot be done: the watch no longer refers to it. */
export function bared(
  transaction: Transaction,
  { survey, channel, person }: ThreadKey,
  { watch, sha256 }: PhotographToBare,
): void {
  deleteToBare.run(transaction, { survey, channel, person, watch, sha256 });
}

const insertToRemove = query((database, place: Tables['toRemove']) =>
  database
    .insertInto('toRemove')
    .values({ survey: place.survey, sha256: place.sha256 } satisfies Tables['toRemove'])
    .onConflict((same) => same.doNothing()),
);

/** Notes that this file of the data folder goes as soon as nobody's watch or conversation refers to it. */
export function removeLater(transaction: Transaction, survey: string, sha256: string): void {
  insertToRemove.run(transaction, { survey, sha256 });
}

const selectToRemove = query((database, _place: object) => database.selectFrom('toRemove').select('sha256'));

/** Of all surveys: they share the data folder. */
export const filesToRemove = (connection: Connection): Set<string> =>
  new Set(selectToRemove.all(connection, {}).map(({ sha256 }) => sha256));

const deleteToRemove = query((database, place: { sha256: string }) =>
  database
    .deleteFrom('toRemove')
    .where('sha256', '=', place.sha256)
    // one that still waits for its copy without metadata is in use, and goes after that
    .where(({ not, exists, selectFrom }) =>
      not(exists(selectFrom('toBare').select('toBare.sha256').where('toBare.sha256', '=', place.sha256))),
    ),
);

/** The file is gone, or is somebody else's too and stays. */
export function removed(transaction: Transaction, sha256: string): void {
  deleteToRemove.run(transaction, { sha256 });
}
