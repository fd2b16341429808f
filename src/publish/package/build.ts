/** Rows that are right as watches. What the files cannot hold is empty; what they leave out has the told value. */
import { Temporal } from 'temporal-polyfill';
import type { DETERMINATIONS, FINDINGS, Layout, PLANTS, QUEENS, Row, WATCHES } from '../../../shared/columns.js';
import type { Determination, Place, PlantWatched, QueensRow, Watch } from '../../../shared/record.js';
import type { Survey } from '../../../shared/survey.js';
import { taxaOf } from './agree.js';
import type { KnownNames } from './names.js';
import type { Tables } from './references.js';
import type { Table } from './table.js';

/** What a package cannot know. */
export interface Surroundings {
  readonly survey: Survey;
  /** An instant: it stamps the watches as stored now. */
  readonly now: string;
  readonly newId: () => string;
  /** The survey's site a place belongs to; asked where the file has no column for it. */
  readonly siteOf: (place: Omit<Place, 'site' | 'private'>) => string | null;
}

/** The rows by their watch, in the order of the file. Every cell is there: nobody builds from what was not read. */
function byWatch<Of extends Layout>({ rows }: Table<Of>): (watch: number) => readonly Row<Of>[] {
  const lists = new Map<unknown, Row<Of>[]>();
  for (const { cells } of rows ?? []) {
    const whole = cells as Row<Of>;
    const watch: unknown = whole['watch'];
    const list = lists.get(watch);
    if (list) list.push(whole);
    else lists.set(watch, [whole]);
  }
  return (watch) => lists.get(watch) ?? [];
}

function placeOf(cells: Row<typeof WATCHES>, hasSite: boolean, { siteOf }: Surroundings): Place | null {
  const { place: words, site, private: isPrivate, latitude, longitude, uncertainty_m: uncertaintyMetres } = cells;
  if ([words, site, isPrivate, latitude, longitude, uncertaintyMetres].every((cell) => cell === null)) return null;
  const place = { latitude, longitude, uncertaintyMetres, words: words ?? '' };
  return { ...place, site: hasSite ? site : siteOf(place), private: isPrivate ?? false };
}

/** Who wrote only a day meant all of it: it begins so in the time zone of the watch. */
const momentOf = (on: string, timeZone: string): string =>
  on.includes('T') ? on : Temporal.PlainDate.from(on).toZonedDateTime(timeZone).toInstant().toString();

function plantOf(cells: Row<typeof PLANTS>, index: number, names: KnownNames): PlantWatched {
  const { plant, rank, as_typed: asTyped, unit, flowers, flowers_low: low, flowers_high: high } = cells;
  // Where only the observer's words stand, nobody has named it yet.
  const named = names.isPlant(plant) || rank !== null || (asTyped !== null && asTyped !== plant);
  return {
    plant: index + 1,
    name: named ? plant : null,
    rank,
    asTyped: asTyped ?? (named ? '' : plant),
    unit: unit ?? names.unitOf(plant),
    flowers: { value: flowers, low, high, about: cells.flowers_about, asTyped: '' },
  };
}

const determinationOf = (cells: Row<typeof DETERMINATIONS>, timeZone: string): Determination => ({
  taxa: taxaOf(cells.taxa),
  qualifier: cells.qualifier,
  count: cells.count,
  caste: cells.caste,
  by: cells.by,
  role: cells.role,
  at: momentOf(cells.on, timeZone),
  from: cells.from,
});

/** The watches of tables in which nothing is wrong, by number. */
export function watchesFrom(tables: Tables, names: KnownNames, surroundings: Surroundings): Watch[] {
  const { survey, now, newId } = surroundings;
  const plantsOf = byWatch<typeof PLANTS>(tables.plants);
  const queensOf = byWatch<typeof QUEENS>(tables.queens);
  const determinationsOf = byWatch<typeof DETERMINATIONS>(tables.determinations);
  const findingsOf = byWatch<typeof FINDINGS>(tables.findings);
  const hasSite = tables.watches.columns.has('site');

  const watchOf = (cells: Row<typeof WATCHES>): Watch => {
    const { watch: number, time_zone: timeZone, cloud, rain } = cells;
    const plantRows = plantsOf(number);
    const determinations = determinationsOf(number);
    const queens = queensOf(number).map((row, index): QueensRow => ({
      row: row.row ?? index + 1,
      plant: plantRows.findIndex(({ plant }) => plant === row.plant) + 1,
      bee: row.bee,
      rank: row.rank,
      asTyped: row.as_typed ?? '',
      count: row.count,
      seenBefore: row.seen_before ?? 0,
      withPollen: row.with_pollen,
      caste: row.caste,
      doubt: row.doubt,
      determinations: determinations
        .filter((determination) => determination.row === row.row)
        .map((determination) => determinationOf(determination, timeZone)),
    }));
    return {
      id: newId(),
      number,
      survey: survey.settings.key,
      dialog: survey.dialog.name,
      dialogVersion: survey.dialog.version,
      observer: cells.observer,
      via: 'import',
      status: cells.status,
      statusReason: null,
      date: cells.date,
      times: { start: cells.start, end: cells.end },
      timeZone,
      minutes: cells.minutes,
      place: placeOf(cells, hasSite, surroundings),
      temperature: cells.temperature_c === null ? null : { celsius: cells.temperature_c },
      sky: cloud === null || rain === null ? null : { cloud, rain },
      wind: cells.wind_beaufort === null ? null : { beaufort: cells.wind_beaufort },
      patch:
        cells.patch_m2 === null
          ? null
          : {
              squareMetres: cells.patch_m2,
              shape: 'area',
              lengthMetres: null,
              widthMetres: null,
              diameterMetres: null,
            },
      habitat: cells.habitat,
      remark: cells.remark,
      watchers: cells.watchers ?? 1,
      more: {},
      asTyped: {},
      plants: plantRows.map((row, index) => plantOf(row, index, names)),
      total: queens.reduce((sum, row) => sum + row.count - row.seenBefore, 0),
      queens,
      photographs: [],
      findings: findingsOf(number).map(({ check, weight, values, reply }) => ({
        check,
        weight,
        values: values ?? {},
        reply,
        at: now,
      })),
      queries: [],
      history: [],
      storedAt: now,
      changedAt: now,
    };
  };
  const rows = (tables.watches.rows ?? []).map(({ cells }) => cells as Row<typeof WATCHES>);
  return rows.map(watchOf).sort((a, b) => a.number - b.number);
}
