/**
 * Reads of watches only what the season's figures are made of. The lists of a watch come as JSON in its own row: so a
 * million watches are read in a twentieth of the time that whole records take, and one query is all there is to it.
 */
import { sql } from 'kysely';
import { watchCountsSchema, type WatchCounts } from '../../shared/watch-counts.js';
import type { Connection } from './connection.js';
import { readable } from './errors.js';
import { fromJson } from './json.js';
import { query } from './query.js';

/** How many watches are read in one go. */
const CHUNK = 500;

/** In the shape of the schema, so that a key that goes astray is said. */
const plants = sql<string>`(
  select json_group_array(
    json_object('plant', plant, 'name', name, 'asTyped', asTyped, 'unit', unit, 'flowers', json_object('value', flowers))
    order by position)
  from plants where plants.survey = watches.survey and plants.watch = watches.id)`;

const determinations = sql<string>`(
  select json_group_array(
    json_object('taxa', json(taxa), 'count', count, 'caste', caste, 'role', role, 'at', at)
    order by position)
  from determinations
  where determinations.survey = queens.survey and determinations.watch = queens.watch
    and determinations.queensPosition = queens.position)`;

const queens = sql<string>`(
  select json_group_array(
    json_object('row', row, 'plant', plant, 'bee', bee, 'count', count, 'seenBefore', seenBefore, 'caste', caste,
      'determinations', ${determinations})
    order by position)
  from queens where queens.survey = watches.survey and queens.watch = watches.id)`;

const selectConfirmed = query((database, place: { survey: string; after: string; most: number }) =>
  database
    .selectFrom('watches')
    .select(['id', 'number', 'observer', 'status', 'date', 'minutes'])
    .select(['placeWords', 'latitude', 'longitude', 'site', 'celsius', 'beaufort'])
    .select([plants.as('plants'), queens.as('queens')])
    .where('survey', '=', place.survey)
    .where('id', '>', place.after)
    .where('status', '=', 'confirmed')
    .orderBy('id')
    .limit(place.most),
);

/**
 * The survey's confirmed watches, in the order of their ids; few are in memory at a time. Within `Store.reading` they are
 * those of one moment. Throws `UnreadableRecord` where the rows do not make a watch.
 */
export function* confirmedCountsOf(connection: Connection, survey: string): Generator<WatchCounts, void, undefined> {
  let after = '';
  for (;;) {
    const rows = selectConfirmed.all(connection, { survey, after, most: CHUNK });
    for (const row of rows) {
      const { placeWords: words, latitude, longitude, site, celsius, beaufort } = row;
      yield readable(`Watch ${row.number}`, watchCountsSchema, () => ({
        number: row.number,
        observer: row.observer,
        status: row.status,
        date: row.date,
        minutes: row.minutes,
        place: words === null ? null : { words, latitude, longitude, site },
        temperature: celsius === null ? null : { celsius },
        wind: beaufort === null ? null : { beaufort },
        plants: fromJson(row.plants),
        queens: fromJson(row.queens),
      }));
    }
    const last = rows.at(-1);
    if (!last || rows.length < CHUNK) return;
    after = last.id;
  }
}
