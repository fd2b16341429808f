/**
 * Reads of watches only what the season's figures are made of. The lists of a watch come as JSON in its own row and rows
 * as arrays: so a million watches are read in a fifteenth of the time that whole records take, by one query.
 */
import { sql } from 'kysely';
import { watchCountsSchema, type WatchCounts } from '../../shared/watch-counts.js';
import type { Connection } from './connection.js';
import { readable } from './errors.js';
import { fromJson } from './json.js';
import { query } from './query.js';

/** How many watches are read in one go. */
const CHUNK = 500;

// Of each list a JSON array of rows, each an array of columns: keys would be more than half of the text. Only of
// determinations does the order say anything; to sort the others too would take a tenth of the time.
const plants = sql<string>`(
  select json_group_array(json_array(plant, name, asTyped, unit, flowers))
  from plants where plants.survey = watches.survey and plants.watch = watches.id)`;

const queens = sql<string>`(
  select json_group_array(json_array(position, row, plant, bee, count, seenBefore, caste))
  from queens where queens.survey = watches.survey and queens.watch = watches.id)`;

const determinations = sql<string>`(
  select json_group_array(
    json_array(queensPosition, json(taxa), count, caste, role, at) order by queensPosition, position)
  from determinations where determinations.survey = watches.survey and determinations.watch = watches.id)`;

const selectConfirmed = query((database, place: { survey: string; after: string; most: number }) =>
  database
    .selectFrom('watches')
    .select(['id', 'number', 'observer', 'status', 'date', 'minutes'])
    .select(['placeWords', 'latitude', 'longitude', 'site', 'celsius', 'beaufort'])
    .select([plants.as('plants'), queens.as('queens'), determinations.as('determinations')])
    .where('survey', '=', place.survey)
    .where('id', '>', place.after)
    .where('status', '=', 'confirmed')
    .orderBy('id')
    .limit(place.most),
);

/** The rows of a list, which SQLite wrote. */
const listed = (text: unknown): unknown[][] => (text === '[]' ? [] : (fromJson(text as string) as unknown[][]));

/** From the columns in the order in which they are selected. Throws `UnreadableRecord` where they do not make a watch. */
function countsFrom(columns: readonly unknown[]): WatchCounts {
  const [, number, observer, status, date, minutes, words, latitude, longitude, site, celsius, beaufort] = columns;
  const [plantRows, queensRows, determinationRows] = columns.slice(-3).map(listed);
  return readable(`Watch ${String(number)}`, watchCountsSchema, () => ({
    number,
    observer,
    status,
    date,
    minutes,
    place: words === null ? null : { words, latitude, longitude, site },
    temperature: celsius === null ? null : { celsius },
    wind: beaufort === null ? null : { beaufort },
    plants: plantRows?.map(([plant, name, asTyped, unit, value]) => ({
      plant,
      name,
      asTyped,
      unit,
      flowers: { value },
    })),
    queens: queensRows?.map(([position, row, plant, bee, count, seenBefore, caste]) => ({
      row,
      plant,
      bee,
      count,
      seenBefore,
      caste,
      determinations: determinationRows
        ?.filter(([queensPosition]) => queensPosition === position)
        .map(([, taxa, of, as, role, at]) => ({ taxa, count: of, caste: as, role, at })),
    })),
  }));
}

/**
 * The survey's confirmed watches, in the order of their ids; few are in memory at a time. Within `Store.reading` they are
 * those of one moment. Throws `UnreadableRecord` where the rows do not make a watch.
 */
export function* confirmedCountsOf(connection: Connection, survey: string): Generator<WatchCounts, void, undefined> {
  let after = '';
  for (;;) {
    const rows = selectConfirmed.arrays(connection, { survey, after, most: CHUNK });
    yield* rows.map(countsFrom);
    const last = rows.at(-1);
    if (!last || rows.length < CHUNK) return;
    after = String(last[0]);
  }
}
