/** Writes watches as the rows of the five files, watch by watch. */
import { stringify } from 'csv-stringify/sync';
import {
  LAYOUTS,
  TAXA_JOIN,
  type DETERMINATIONS,
  type FileName,
  type FINDINGS,
  type Layout,
  type PLANTS,
  type QUEENS,
  type Row,
  type WATCHES,
} from '../../../shared/columns.js';
import type { PlantWatched, QueensRow, Watch } from '../../../shared/record.js';
import { writeCell, type CellValue } from './cells.js';

/** Text to be added to a file. */
export interface Piece {
  readonly file: FileName;
  readonly text: string;
}

interface Rows {
  readonly 'watches.csv': readonly Row<typeof WATCHES>[];
  readonly 'plants.csv': readonly Row<typeof PLANTS>[];
  readonly 'queens.csv': readonly Row<typeof QUEENS>[];
  readonly 'determinations.csv': readonly Row<typeof DETERMINATIONS>[];
  readonly 'findings.csv': readonly Row<typeof FINDINGS>[];
}

const labelOf = ({ name, asTyped }: PlantWatched): string => name ?? asTyped;

/** Throws where a row of queens names a plant that the watch does not have: such a watch cannot have been stored. */
function plantOf(watch: Watch, { row, plant }: QueensRow): string {
  const found = watch.plants.find((one) => one.plant === plant);
  if (found) return labelOf(found);
  const known = watch.plants.map((one) => one.plant).join(', ');
  throw new Error(`Watch ${watch.number}, row ${row} of its queens names plant ${plant}. Its plants: ${known}.`);
}

function rowOf(watch: Watch): Row<typeof WATCHES> {
  const { place, sky } = watch;
  return {
    watch: watch.number,
    observer: watch.observer,
    date: watch.date,
    start: watch.times.start,
    end: watch.times.end,
    time_zone: watch.timeZone,
    minutes: watch.minutes,
    place: place?.words ?? null,
    site: place?.site ?? null,
    private: place?.private ?? null,
    latitude: place?.latitude ?? null,
    longitude: place?.longitude ?? null,
    uncertainty_m: place?.uncertaintyMetres ?? null,
    temperature_c: watch.temperature?.celsius ?? null,
    cloud: sky?.cloud ?? null,
    rain: sky?.rain ?? null,
    wind_beaufort: watch.wind?.beaufort ?? null,
    patch_m2: watch.patch?.squareMetres ?? null,
    habitat: watch.habitat,
    watchers: watch.watchers,
    status: watch.status,
    remark: watch.remark,
  };
}

function rowsOf(watch: Watch): Rows {
  const { number } = watch;
  return {
    'watches.csv': [rowOf(watch)],
    'plants.csv': watch.plants.map((plant) => ({
      watch: number,
      plant: labelOf(plant),
      rank: plant.rank,
      as_typed: plant.asTyped,
      unit: plant.unit,
      flowers: plant.flowers.value,
      flowers_low: plant.flowers.low,
      flowers_high: plant.flowers.high,
      flowers_about: plant.flowers.about,
    })),
    'queens.csv': watch.queens.map((row) => ({
      watch: number,
      row: row.row,
      plant: plantOf(watch, row),
      bee: row.bee,
      rank: row.rank,
      as_typed: row.asTyped,
      count: row.count,
      seen_before: row.seenBefore,
      with_pollen: row.withPollen,
      caste: row.caste,
      doubt: row.doubt,
    })),
    'determinations.csv': watch.queens.flatMap(({ row, determinations }) =>
      determinations.map(({ taxa, qualifier, count, caste, by, role, at, from }) => ({
        watch: number,
        row,
        taxa: taxa.join(TAXA_JOIN),
        qualifier,
        count,
        caste,
        by,
        role,
        on: at,
        from,
      })),
    ),
    'findings.csv': watch.findings.map(({ check, weight, values, reply }) => ({
      watch: number,
      check,
      weight,
      values,
      reply,
    })),
  };
}

const cellsOf = (layout: Layout, row: Readonly<Record<string, CellValue>>): string[] =>
  Object.keys(layout.columns).map((name) => writeCell(row[name] ?? null));

/** How many watches are made into text in one go. */
const CHUNK = 100;

function* inChunks(watches: Iterable<Watch>): Generator<Watch[]> {
  let chunk: Watch[] = [];
  for (const watch of watches) {
    chunk.push(watch);
    if (chunk.length < CHUNK) continue;
    yield chunk;
    chunk = [];
  }
  if (chunk.length > 0) yield chunk;
}

/** The text of the five files, piece by piece: first each header, then the watches in the order given. */
export function* writePackage(watches: Iterable<Watch>): Generator<Piece, void, undefined> {
  for (const { file, columns } of LAYOUTS) yield { file, text: stringify([Object.keys(columns)]) };
  for (const chunk of inChunks(watches)) {
    const rows = chunk.map(rowsOf);
    for (const layout of LAYOUTS) {
      const cells = rows.flatMap((row) => row[layout.file].map((one) => cellsOf(layout, one)));
      if (cells.length > 0) yield { file: layout.file, text: stringify(cells) };
    }
  }
}
