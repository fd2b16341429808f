/** The public dataset as three tables: watches, the plants in them, and the queens on those. */
import { stringify } from 'csv-stringify/sync';
import { MEANINGS } from './meanings.js';
import type { PublicWatch } from './watch.js';

type Cell = string | number | boolean | null;
type Columns<Row> = Readonly<Record<string, (row: Row) => Cell>>;

const watches: Columns<PublicWatch> = {
  watch: ({ number }) => number,
  observer: ({ observer }) => observer,
  observer_name: ({ observerName }) => observerName,
  date: ({ date }) => date,
  start: ({ start }) => start,
  end: ({ end }) => end,
  time_zone: ({ timeZone }) => timeZone,
  minutes: ({ minutes }) => minutes,
  watchers: ({ watchers }) => watchers,
  site: ({ place }) => place?.site ?? null,
  latitude: ({ place }) => place?.latitude ?? null,
  longitude: ({ place }) => place?.longitude ?? null,
  uncertainty_m: ({ place }) => place?.uncertaintyMetres ?? null,
  generalized: ({ place }) => place?.generalized ?? null,
  temperature_c: ({ temperatureCelsius }) => temperatureCelsius,
  cloud: ({ cloud }) => cloud,
  rain: ({ rain }) => rain,
  wind_beaufort: ({ windBeaufort }) => windBeaufort,
  patch_m2: ({ squareMetres }) => squareMetres,
  within_protocol: ({ withinProtocol }) => withinProtocol,
};

const plants: Columns<{ watch: PublicWatch; plant: PublicWatch['plants'][number] }> = {
  watch: ({ watch }) => watch.number,
  plant: ({ plant }) => plant.plant,
  name: ({ plant }) => plant.name,
  rank: ({ plant }) => plant.rank,
  flowers: ({ plant }) => plant.flowers.value,
  flowers_low: ({ plant }) => plant.flowers.low,
  flowers_high: ({ plant }) => plant.flowers.high,
  flowers_about: ({ plant }) => plant.about,
  unit: ({ plant }) => plant.unit,
};

const queens: Columns<{ watch: PublicWatch; queens: PublicWatch['queens'][number] }> = {
  watch: ({ watch }) => watch.number,
  plant: (row) => row.queens.plant,
  row: (row) => row.queens.row,
  part: (row) => row.queens.part,
  bee: (row) => row.queens.bee,
  visits: (row) => row.queens.visits,
  queens: (row) => row.queens.queens,
  caste: (row) => row.queens.publicCaste,
  reported: (row) => row.queens.reported,
  doubt: (row) => row.queens.doubt,
  determined: (row) => row.queens.determined,
  determined_from: (row) => row.queens.by?.from ?? null,
};

export interface PublicTable {
  readonly name: 'watches' | 'plants' | 'queens' | 'columns';
  readonly columns: readonly string[];
  readonly rows: readonly (readonly Cell[])[];
}

const tableOf = <Row>(name: PublicTable['name'], columns: Columns<Row>, rows: readonly Row[]): PublicTable => ({
  name,
  columns: Object.keys(columns),
  rows: rows.map((row) => Object.values(columns).map((cellOf) => cellOf(row))),
});

export const publicTables = (all: readonly PublicWatch[]): readonly PublicTable[] => [
  tableOf('watches', watches, all),
  tableOf(
    'plants',
    plants,
    all.flatMap((watch) => watch.plants.map((plant) => ({ watch, plant }))),
  ),
  tableOf(
    'queens',
    queens,
    all.flatMap((watch) => watch.queens.map((one) => ({ watch, queens: one }))),
  ),
];

/** What the columns of the tables mean, as a table. */
export const columnsTable = (tables: readonly PublicTable[]): PublicTable => ({
  name: 'columns',
  columns: ['table', 'column', 'meaning'],
  rows: tables.flatMap(({ name, columns }) =>
    columns.map((column) => [name, column, MEANINGS[name]?.[column] ?? null]),
  ),
});

/** UTF-8, comma, header, LF. */
export const csvOf = ({ columns, rows }: PublicTable): string =>
  stringify([columns, ...rows.map((row) => row.map((cell) => (cell === null ? '' : String(cell))))]);
