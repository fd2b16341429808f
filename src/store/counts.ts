/** Counters that a step may ask for at each message, so that no message counts through all watches. */
import type { Connection, Transaction } from './connection.js';
import { query } from './query.js';

/** Confirmed watches by their total of queens. */
const WATCHES_BY_TOTAL = 'watches-by-total';

const add = query((database, place: { survey: string; name: string; key: number; by: number }) =>
  database
    .insertInto('counts')
    .values({ survey: place.survey, name: place.name, key: place.key, value: place.by })
    .onConflict((same) =>
      same.columns(['survey', 'name', 'key']).doUpdateSet((row) => ({
        value: row('counts.value', '+', row.ref('excluded.value')),
      })),
    ),
);

/** Counts a confirmed watch of so many queens in (`by` 1), or out again (`by` −1). */
export function countWatch(transaction: Transaction, survey: string, total: number, by: 1 | -1): void {
  add.run(transaction, { survey, name: WATCHES_BY_TOTAL, key: total, by });
}

const select = query((database, place: { survey: string; name: string }) =>
  database
    .selectFrom('counts')
    .select(['key as queens', 'value as watches'])
    .where('survey', '=', place.survey)
    .where('name', '=', place.name)
    .where('value', '>', 0)
    .orderBy('key'),
);

/** How many confirmed watches of the survey had how many queens, fewest queens first. */
export function queensPerWatch(connection: Connection, survey: string): { queens: number; watches: number }[] {
  return select.all(connection, { survey, name: WATCHES_BY_TOTAL });
}
