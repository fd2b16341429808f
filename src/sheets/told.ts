/** A cell with all that tells what it means: its heading, its unit and where it stands. */
import type { SheetColumn } from '../../shared/words/sheets.js';
import { textOf, type Cell } from './cell.js';
import type { Complaint } from './complaint.js';

export interface Where {
  readonly file: string;
  readonly sheet: string | null;
  readonly line: number;
  /** Index, from 0. */
  readonly column: number;
}

export interface Told {
  readonly column: SheetColumn;
  /** As it stands in the sheet. */
  readonly heading: string;
  /** What the heading says of its unit, as it is written behind a number; null: nothing. */
  readonly unit: string | null;
  readonly cell: Cell;
  readonly text: string;
  readonly where: Where;
  /** Merged with a cell before it, whose value it holds. */
  readonly merged: boolean;
}

export const told = (told: Omit<Told, 'text'>): Told => ({ ...told, text: textOf(told.cell) });

/** What is wrong with a cell; `what` is the rest of the sentence behind its value. */
export const wrong = ({ column, heading, text, where }: Told, what: string): Complaint => ({
  about: column,
  file: where.file,
  sheet: where.sheet,
  line: where.line,
  column: where.column,
  heading,
  value: text,
  what,
});

/**
 * Number and unit as one would type them: 68 in a column "Temp (F)" is "68 F". Words stay as they are, and so does a
 * number that has a unit of its own, which readers put before the second.
 */
export function withUnit({ text, unit }: Pick<Told, 'text' | 'unit'>): string {
  if (unit === null || !/\d/.test(text) || text.endsWith(unit)) return text;
  return `${text}${/^\p{L}/u.test(unit) ? ' ' : ''}${unit}`;
}
