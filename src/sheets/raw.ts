/** A watch as its cells stand in a sheet, before they are read: what both layouts come to. */
import type { SheetColumn, WatchColumn } from '../../shared/words/sheets.js';
import type { Words } from '../../shared/words.js';
import { fold } from '../answers/index.js';
import { EMPTY, type Sheet, type SheetRow } from './cell.js';
import type { Complaint } from './complaint.js';
import type { Heading } from './headings.js';
import { told, type Told } from './told.js';

/** One bee on one plant; no bee and no count: a plant watched with none seen. */
export type RawRow = {
  readonly [Column in Exclude<SheetColumn, WatchColumn>]: Told | null;
} & { readonly line: number };

export interface RawWatch {
  readonly file: string;
  readonly sheet: string | null;
  /** Where it begins. */
  readonly line: number;
  readonly told: ReadonlyMap<WatchColumn, readonly Told[]>;
  /** What the sheet has a heading or a label for. */
  readonly columns: ReadonlySet<SheetColumn>;
  /** Its rows were found by what they say of day, times, observer and place: one misread may belong to another watch. */
  readonly foundBy: 'cells' | 'number' | 'sheet';
  readonly rows: readonly RawRow[];
}

export interface Layout {
  readonly watches: readonly RawWatch[];
  readonly complaints: readonly Complaint[];
  /** What was passed over, as whole sentences. */
  readonly notices: readonly string[];
}

export const saysNothing = (text: string, words: Words): boolean =>
  text === '' || words.sheets.nothing.includes(fold(text).trim());

export const isOneOf = (text: string, phrases: readonly string[]): boolean =>
  phrases.includes(
    fold(text)
      .replace(/[\s:]+/g, ' ')
      .trim(),
  );

/** The cell under a known heading; null where it says nothing. */
export function toldAt(
  sheet: Sheet,
  row: SheetRow,
  index: number,
  { column, unit, heading }: { readonly column: SheetColumn; readonly unit: string | null; readonly heading: string },
  words: Words,
): Told | null {
  const cell = row.cells[index] ?? EMPTY;
  const where = { file: sheet.file, sheet: sheet.name, line: row.line, column: index };
  const one = told({ column, heading, unit, cell, where, merged: row.merged.has(index) });
  return cell.kind !== 'broken' && saysNothing(one.text, words) ? null : one;
}

/** What is wrong with the sheet as a whole, or with a heading of it. */
export const ofSheet = (
  { file, name }: Pick<Sheet, 'file' | 'name'>,
  what: string,
  at: Partial<Pick<Complaint, 'about' | 'line' | 'column' | 'value'>> = {},
): Complaint => ({
  about: at.about ?? null,
  file,
  sheet: name,
  line: at.line ?? null,
  column: at.column ?? null,
  heading: null,
  value: at.value ?? null,
  what,
});

/** Why a heading that should be known is not. */
export function headingProblem(heading: Exclude<Heading, { state: 'known' | 'unknown' }>, words: Words): string {
  if (heading.state === 'slip') return `is no heading that is known; if “${heading.near}” is meant, write that`;
  const [name = ''] = words.sheets.headings[heading.column];
  return `has a unit that is not known here; write it like “${name} (${heading.known[0] ?? ''})”; known: ${heading.known.join(', ')}`;
}

/** Without one of each group no watch can be told; the first of the group is what one is asked to add. */
const NEEDED: readonly (readonly SheetColumn[])[] = [
  ['observer'],
  ['date', 'start'],
  ['start', 'times', 'date'],
  ['end', 'times', 'minutes'],
  ['plant'],
  ['bee'],
  ['count'],
];

/** What the sheet has neither a heading nor a label for, though every watch needs it. */
export const missingColumns = (columns: ReadonlySet<SheetColumn>): SheetColumn[] =>
  NEEDED.filter((group) => !group.some((column) => columns.has(column))).flatMap((group) => group[0] ?? []);
