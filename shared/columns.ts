/**
 * The five CSV files of the exact copy: their columns in order, what each holds and what it refuses. This is the only
 * definition; `datapackage.json`, the writer and the reader are all derived from it. Units stand in the names.
 */
import type { Finding } from './record.js';
import { CASTES, CLOUDS, COUNTING_UNITS, ROLES, STATUSES, WEIGHTS } from './vocabularies.js';

/** Types of the Frictionless Table Schema, and what a cell of each is here. */
interface Types {
  integer: number;
  number: number;
  boolean: boolean;
  string: string;
  /** A day, `2026-05-02`. */
  date: string;
  /** A wall-clock time, `13:05`. */
  time: string;
  /** An instant in UTC; a day is read too. */
  datetime: string;
  object: Finding['values'];
}

export interface Column {
  readonly type: keyof Types;
  readonly means: string;
  /** Never empty in an export; empty in an import it is refused, unless `mayBeMissing`. */
  readonly required?: true;
  /** An import can do without the column, or the cell: it then has the value that `means` tells. */
  readonly mayBeMissing?: true;
  /** The only words it takes. */
  readonly words?: readonly string[];
  readonly least?: number;
  readonly most?: number;
  /** It must be greater than this. */
  readonly above?: number;
  /** A cell that would do, for those who got it wrong; else the usual one of its type. */
  readonly example?: string;
}

export type FileName = 'watches.csv' | 'plants.csv' | 'queens.csv' | 'determinations.csv' | 'findings.csv';

export interface Layout {
  readonly file: FileName;
  readonly title: string;
  readonly columns: Readonly<Record<string, Column>>;
  /** What tells a row from all others; empty: all its columns together. */
  readonly key: readonly string[];
  /** Columns that must be found under the same names in another file: the watch, or something of that watch. */
  readonly refersTo: readonly {
    readonly file: FileName;
    readonly columns: readonly ['watch'] | readonly ['watch', string];
  }[];
  readonly mayBeMissing?: true;
}

type Value<Of extends Column> = Of extends { readonly words: readonly (infer Word)[] } ? Word : Types[Of['type']];
type Cell<Of extends Column> = Of extends { readonly required: true }
  ? Of extends { readonly mayBeMissing: true }
    ? Value<Of> | null
    : Value<Of>
  : Value<Of> | null;

/** A row of a file, by column. */
export type Row<Of extends Layout> = { readonly [Name in keyof Of['columns']]: Cell<Of['columns'][Name]> };

const watch = { type: 'integer', required: true, least: 1, means: 'Number of the watch within its survey.' } as const;

export const WATCHES = {
  file: 'watches.csv',
  title: 'Watches: one row for each timed observation of one patch of flowers',
  key: ['watch'],
  refersTo: [],
  columns: {
    watch,
    observer: { type: 'string', required: true, means: "The observer's key: it names nobody.", example: 'observer-7' },
    date: { type: 'date', required: true, means: 'Local day.' },
    start: { type: 'time', required: true, means: 'Local time at which it began.', example: '13:00' },
    end: { type: 'time', required: true, means: 'Local time at which it ended.', example: '13:15' },
    time_zone: {
      type: 'string',
      required: true,
      means: 'IANA name of the time zone of date, start and end.',
      example: 'America/Chicago',
    },
    minutes: { type: 'number', required: true, least: 0, means: 'Minutes watched, pauses out.', example: '15' },
    place: { type: 'string', means: 'The place in words.' },
    site: {
      type: 'string',
      mayBeMissing: true,
      means: 'Key of the site. Without the column: the site of the survey that is there, by position or name.',
    },
    private: {
      type: 'boolean',
      mayBeMissing: true,
      means: 'Whether the place is private; empty where no place was given. Without the column: false.',
    },
    latitude: { type: 'number', least: -90, most: 90, means: 'WGS 84, degrees north.', example: '43.0512' },
    longitude: { type: 'number', least: -180, most: 180, means: 'WGS 84, degrees east.', example: '-89.4021' },
    uncertainty_m: { type: 'number', above: 0, means: 'How far off the position may be, metres.', example: '12' },
    temperature_c: { type: 'number', means: 'Air temperature, °C.' },
    cloud: { type: 'string', words: CLOUDS, means: 'Cloud cover: 0, 1–2, 3–4, 5–7 or 8 eighths of the sky.' },
    rain: { type: 'boolean', means: 'Whether it rained; empty where cloud is.' },
    wind_beaufort: { type: 'integer', least: 0, most: 12, means: 'Wind on the Beaufort scale.', example: '2' },
    patch_m2: { type: 'number', above: 0, means: 'Area of the part watched, square metres.', example: '11.1' },
    habitat: { type: 'string', means: 'What kind of place it is, in words.' },
    watchers: {
      type: 'integer',
      required: true,
      mayBeMissing: true,
      least: 1,
      means: 'People who watched together; 1 where not told.',
      example: '1',
    },
    status: { type: 'string', required: true, words: STATUSES, means: 'Only confirmed watches count in figures.' },
    remark: { type: 'string', means: 'What the observer added.' },
  },
} as const satisfies Layout;

export const PLANTS = {
  file: 'plants.csv',
  title: 'Plants: one row for each plant watched, queens or none',
  // Two plants that went by two names can turn out to be one.
  key: ['watch', 'plant', 'as_typed'],
  refersTo: [{ file: 'watches.csv', columns: ['watch'] }],
  columns: {
    watch,
    plant: {
      type: 'string',
      required: true,
      means: 'Accepted scientific name; for a plant not on the list its words as typed.',
      example: 'Mertensia virginica',
    },
    rank: { type: 'string', means: 'Rank of the name; empty where it is words as typed.' },
    as_typed: { type: 'string', means: "The observer's words for it." },
    unit: {
      type: 'string',
      required: true,
      mayBeMissing: true,
      words: COUNTING_UNITS,
      means: "What counts as one open flower. Where not told: the unit of the list of plants, else 'flower'.",
    },
    flowers: { type: 'integer', required: true, least: 0, means: 'Open flowers, in units.', example: '80' },
    flowers_low: { type: 'integer', least: 0, means: 'At least so many; empty where not told.', example: '70' },
    flowers_high: { type: 'integer', least: 0, means: 'At most so many; empty where not told.', example: '90' },
    flowers_about: { type: 'boolean', required: true, means: 'Whether the count is a rough one.' },
  },
} as const satisfies Layout;

export const QUEENS = {
  file: 'queens.csv',
  title: 'Queens: one row for each kind of bee on each plant; a watch without a row saw none',
  key: ['watch', 'row'],
  refersTo: [
    { file: 'watches.csv', columns: ['watch'] },
    { file: 'plants.csv', columns: ['watch', 'plant'] },
  ],
  columns: {
    watch,
    row: {
      type: 'integer',
      required: true,
      mayBeMissing: true,
      least: 1,
      means: 'Number of the row within its watch. Without the column: 1, 2, 3 … in the order of the file.',
      example: '1',
    },
    plant: {
      type: 'string',
      required: true,
      means: 'One of the plants of the watch, as it is written in plants.csv.',
      example: 'Mertensia virginica',
    },
    bee: { type: 'string', means: 'Accepted scientific name, or Bombus where the observer could not tell.' },
    rank: { type: 'string', means: 'Rank of the name.' },
    as_typed: { type: 'string', means: "The observer's words." },
    count: { type: 'integer', required: true, least: 1, means: 'Visits: bees seen on this plant.', example: '1' },
    seen_before: {
      type: 'integer',
      required: true,
      mayBeMissing: true,
      least: 0,
      means: 'How many of count were counted on another plant already; 0 where not told.',
      example: '0',
    },
    with_pollen: {
      type: 'integer',
      mayBeMissing: true,
      least: 0,
      means: 'How many of count carried pollen; empty where not told.',
      example: '0',
    },
    caste: { type: 'string', mayBeMissing: true, words: CASTES, means: 'Empty where not told.' },
    doubt: { type: 'boolean', required: true, means: 'Whether the observer was unsure of the name.' },
  },
} as const satisfies Layout;

export const DETERMINATIONS = {
  file: 'determinations.csv',
  title: 'Determinations: names that experts gave to rows of queens, in the order in which they were given',
  key: [],
  refersTo: [
    { file: 'watches.csv', columns: ['watch'] },
    { file: 'queens.csv', columns: ['watch', 'row'] },
  ],
  mayBeMissing: true,
  columns: {
    watch,
    row: { type: 'integer', required: true, least: 1, means: 'Number of the row in queens.csv.', example: '1' },
    taxa: {
      type: 'string',
      means: "One name; two that cannot be told apart, joined by ' / '; empty: it cannot be told.",
    },
    qualifier: { type: 'string', means: "How sure the name is, such as 'cf.'." },
    count: {
      type: 'integer',
      required: true,
      least: 1,
      means: "For how many of the row's bees it speaks.",
      example: '1',
    },
    caste: { type: 'string', mayBeMissing: true, words: CASTES, means: 'Empty where not told.' },
    by: { type: 'string', required: true, means: 'Key of the person who determined.', example: 'ines' },
    role: { type: 'string', required: true, words: ROLES, means: "A coordinator's goes before a helper's." },
    on: {
      type: 'datetime',
      required: true,
      means: 'When, in UTC; a day alone is read as its beginning in the time zone of the watch.',
    },
    from: { type: 'string', required: true, words: ['photograph', 'description'], means: 'What it was made from.' },
  },
} as const satisfies Layout;

export const FINDINGS = {
  file: 'findings.csv',
  title: 'Findings: what the checks noticed',
  key: [],
  refersTo: [{ file: 'watches.csv', columns: ['watch'] }],
  mayBeMissing: true,
  columns: {
    watch,
    check: { type: 'string', required: true, means: 'Name of the check.', example: 'temperature' },
    weight: { type: 'string', required: true, words: WEIGHTS, means: 'Kept, asked of the observer, or queried.' },
    values: { type: 'object', means: 'What the check saw, units in the names.' },
    reply: { type: 'string', means: 'What the observer said to it.' },
  },
} as const satisfies Layout;

/** In the order in which one file refers to another. */
export const LAYOUTS = [WATCHES, PLANTS, QUEENS, DETERMINATIONS, FINDINGS] as const;

/** Joins the names of bees that cannot be told apart. */
export const TAXA_JOIN = ' / ';
