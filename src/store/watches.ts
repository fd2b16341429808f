/** Reads watches. */
import { sql, type NotNull } from 'kysely';
import type { NearbyWatch } from '../../shared/history.js';
import type { Watch } from '../../shared/record.js';
import type { Connection } from './connection.js';
import { query } from './query.js';
import type { Tables } from './tables.js';
import { toWatch } from './watch-rows.js';

/** How many watches are read in one go by `watchesOf`. */
const CHUNK = 200;

/** Watches by id. `ids` is a JSON array, so that one prepared statement serves any number of them. */
interface OfWatches {
  survey: string;
  ids: string;
}

const among = (place: OfWatches) => sql<string>`(select value from json_each(${place.ids}))`;

type Part = 'plants' | 'queens' | 'determinations' | 'photographs' | 'findings' | 'queries' | 'changes';

const partsIn = <Table extends Part>(table: Table) =>
  query<OfWatches, Tables[Table]>((database, place) =>
    database
      .selectFrom<Part>(table)
      .selectAll()
      .where('survey', '=', place.survey)
      .where('watch', 'in', among(place))
      .orderBy('watch')
      .orderBy('position'),
  );
const selectPlants = partsIn('plants');
const selectQueens = partsIn('queens');
const selectDeterminations = partsIn('determinations');
const selectPhotographs = partsIn('photographs');
const selectFindings = partsIn('findings');
const selectQueries = partsIn('queries');
const selectChanges = partsIn('changes');

function byWatch<Row extends { watch: string }>(rows: readonly Row[]): (id: string) => readonly Row[] {
  const lists = new Map<string, Row[]>();
  for (const row of rows) {
    const list = lists.get(row.watch);
    if (list) list.push(row);
    else lists.set(row.watch, [row]);
  }
  return (id) => lists.get(id) ?? [];
}

/** The watches of these rows, in the order given, with all their parts. */
function withParts(connection: Connection, survey: string, watches: readonly Tables['watches'][]): Watch[] {
  if (watches.length === 0) return [];
  const these = { survey, ids: JSON.stringify(watches.map((watch) => watch.id)) };
  const plants = byWatch(selectPlants.all(connection, these));
  const queens = byWatch(selectQueens.all(connection, these));
  const determinations = byWatch(selectDeterminations.all(connection, these));
  const photographs = byWatch(selectPhotographs.all(connection, these));
  const findings = byWatch(selectFindings.all(connection, these));
  const queries = byWatch(selectQueries.all(connection, these));
  const changes = byWatch(selectChanges.all(connection, these));
  return watches.map((watch) =>
    toWatch({
      watch,
      plants: plants(watch.id),
      queens: queens(watch.id),
      determinations: determinations(watch.id),
      photographs: photographs(watch.id),
      findings: findings(watch.id),
      queries: queries(watch.id),
      changes: changes(watch.id),
    }),
  );
}

const selectByNumber = query((database, place: { survey: string; number: number }) =>
  database.selectFrom('watches').selectAll().where('survey', '=', place.survey).where('number', '=', place.number),
);

/** Null where no watch of the survey has that number. */
export function watchByNumber(connection: Connection, survey: string, number: number): Watch | null {
  return withParts(connection, survey, selectByNumber.all(connection, { survey, number }))[0] ?? null;
}

const selectById = query((database, place: { survey: string; id: string }) =>
  database.selectFrom('watches').selectAll().where('survey', '=', place.survey).where('id', '=', place.id),
);

/** Null where no watch of the survey has that id. */
export function watchById(connection: Connection, survey: string, id: string): Watch | null {
  return withParts(connection, survey, selectById.all(connection, { survey, id }))[0] ?? null;
}

const selectAfter = query((database, place: { survey: string; after: number; most: number }) =>
  database
    .selectFrom('watches')
    .selectAll()
    .where('survey', '=', place.survey)
    .where('number', '>', place.after)
    .orderBy('number')
    .limit(place.most),
);

/**
 * All watches of the survey, of every status, by number; few are in memory at a time. Within `Store.reading` they are
 * those of one moment, outside it a watch changed meanwhile may be seen as it is now.
 */
export function* watchesOf(connection: Connection, survey: string): Generator<Watch, void, undefined> {
  let after = 0;
  for (;;) {
    const rows = selectAfter.all(connection, { survey, after, most: CHUNK });
    yield* withParts(connection, survey, rows);
    const last = rows.at(-1);
    if (!last || rows.length < CHUNK) return;
    after = last.number;
  }
}

const selectLastOf = query((database, place: { survey: string; observer: string; most: number }) =>
  database
    .selectFrom('watches')
    .selectAll()
    .where('survey', '=', place.survey)
    .where('observer', '=', place.observer)
    .orderBy('number', 'desc')
    .limit(place.most),
);

/** An observer's last watches of any status, the newest first, `most` at most. */
export function lastWatchesOf(
  connection: Connection,
  { survey, observer, most }: { readonly survey: string; readonly observer: string; readonly most: number },
): Watch[] {
  return withParts(connection, survey, selectLastOf.all(connection, { survey, observer, most }));
}

const selectOnDay = query((database, place: { survey: string; date: string; south: number; north: number }) =>
  database
    .selectFrom('watches')
    .select(['number', 'observer', 'start', 'end', 'latitude', 'longitude'])
    .where('survey', '=', place.survey)
    .where('date', '=', place.date)
    .where('latitude', '>=', place.south)
    .where('latitude', '<=', place.north)
    .where('status', 'in', ['confirmed', 'unconfirmed'])
    .orderBy('number')
    .$narrowType<{ latitude: NotNull; longitude: NotNull }>(),
);

/** Mean Earth radius R1 of GRS 80 in metres (Moritz 2000). */
const EARTH_RADIUS_METRES = 6_371_008.8;
const radians = (degrees: number) => (degrees * Math.PI) / 180;

/** Great-circle distance by the haversine formula, good to 0.5 %. */
function metresBetween(
  one: { readonly latitude: number; readonly longitude: number },
  other: { readonly latitude: number; readonly longitude: number },
): number {
  const northward = Math.sin(radians(other.latitude - one.latitude) / 2);
  const eastward = Math.sin(radians(other.longitude - one.longitude) / 2);
  const haversine =
    northward ** 2 + Math.cos(radians(one.latitude)) * Math.cos(radians(other.latitude)) * eastward ** 2;
  return 2 * EARTH_RADIUS_METRES * Math.asin(Math.min(1, Math.sqrt(haversine)));
}

/**
 * Watches by anybody on that day within `metres` of the place, the nearest first, `most` at most; confirmed and
 * unconfirmed ones, since practice and what was set aside say nothing of the day. A band of latitude is read, and the
 * distance decides: so it holds across the 180th meridian too.
 */
export function watchesNearOn(
  connection: Connection,
  where: {
    readonly survey: string;
    readonly date: string;
    readonly latitude: number;
    readonly longitude: number;
    readonly metres: number;
    readonly most: number;
  },
): NearbyWatch[] {
  const { survey, date, latitude, metres, most } = where;
  // A little wider than the distance, so that rounding loses nothing at its edge.
  const band = (metres / EARTH_RADIUS_METRES) * (180 / Math.PI) * 1.01;
  return selectOnDay
    .all(connection, { survey, date, south: latitude - band, north: latitude + band })
    .map((watch) => ({ watch, away: metresBetween(where, watch) }))
    .filter(({ away }) => away <= metres)
    .sort((one, other) => one.away - other.away)
    .slice(0, most)
    .map(({ watch }) => watch);
}

const selectLastNumber = query((database, place: { survey: string }) =>
  database
    .selectFrom('watches')
    .select((watches) => watches.fn.max('number').as('number'))
    .where('survey', '=', place.survey),
);

/**
 * The number of the next new watch: 1, 2, 3 … without a gap. It is free only within the transaction it was asked in,
 * so the watch must be kept in the same one.
 */
export function nextWatchNumber(connection: Connection, survey: string): number {
  return (selectLastNumber.first(connection, { survey })?.number ?? 0) + 1;
}

const countConfirmed = query((database, place: { survey: string; observer: string; from: string; to: string }) =>
  database
    .selectFrom('watches')
    .select((watches) => watches.fn.countAll<number>().as('watches'))
    .where('survey', '=', place.survey)
    .where('observer', '=', place.observer)
    .where('status', '=', 'confirmed')
    .where('date', '>=', place.from)
    .where('date', '<=', place.to),
);

/** How many confirmed watches an observer has from one local day to another, both included. */
export function progressOf(
  connection: Connection,
  { survey, observer, from, to }: { survey: string; observer: string; from: string; to: string },
): number {
  return countConfirmed.first(connection, { survey, observer, from, to })?.watches ?? 0;
}
