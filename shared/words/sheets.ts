/** Headings and labels of spreadsheets, and the few cells that are read here alone. */
import { z } from 'zod';
import { CASTES, STATUSES } from '../vocabularies.js';
import { words } from './kinds.js';

/** What a column, or a label with its value beside it, can tell of a whole watch. */
export const WATCH_COLUMNS = [
  'watch',
  'observer',
  'date',
  'start',
  'end',
  'times',
  'minutes',
  'timeZone',
  'place',
  'site',
  'latitude',
  'longitude',
  'uncertainty',
  'private',
  'temperature',
  'sky',
  'rain',
  'wind',
  'patch',
  'patchLength',
  'patchWidth',
  'habitat',
  'watchers',
  'status',
  'remark',
] as const;

/** What a column can tell of one bee on one plant. */
export const ROW_COLUMNS = ['plant', 'flowers', 'bee', 'count', 'seenBefore', 'withPollen', 'caste', 'doubt'] as const;

export const SHEET_COLUMNS = [...WATCH_COLUMNS, ...ROW_COLUMNS] as const;
export type WatchColumn = (typeof WATCH_COLUMNS)[number];
export type SheetColumn = (typeof SHEET_COLUMNS)[number];

export const sheetsSection = z.strictObject({
  /** The first of each is the one that is said. */
  headings: z.record(z.enum(SHEET_COLUMNS), words),
  /** Units of a heading, and how each is written behind a number: "°c": C. Of a date the order of its parts. */
  units: z.partialRecord(z.enum(SHEET_COLUMNS), z.record(z.string(), z.string())),
  /** In brackets behind a heading, saying nothing about its unit: "optional". */
  besides: words,
  /** Above the bees of a bees-by-plants sheet. */
  corners: words,
  /** A cell that says nothing: "n/a". */
  nothing: words,
  /** In the place of a bee: nobody came. */
  noBee: words,
  totals: words,
  castes: z.record(z.string(), z.enum(CASTES)),
  statuses: z.record(z.string(), z.enum(STATUSES)),
});
