/** What was not understood, or cannot be: where it stands, what stands there, and what would do. */
import type { SheetColumn } from '../../shared/words/sheets.js';
import { letterOf } from './cell.js';

export interface Complaint {
  /** What it is about; null where no one column is. */
  readonly about: SheetColumn | null;
  readonly file: string;
  readonly sheet: string | null;
  /** Null speaks of the whole sheet. */
  readonly line: number | null;
  /** Index of the column. */
  readonly column: number | null;
  readonly heading: string | null;
  /** The cell as it stands; null where there is none. */
  readonly value: string | null;
  /** The rest of the sentence, such as `is not understood; write it like 68 F`. */
  readonly what: string;
}

const LONGEST_SHOWN = 60;

/** In quotes, on one line, cut where it is long. */
export function quoted(text: string): string {
  const letters = [...text.replaceAll(/\s+/g, ' ').trim()];
  return `“${letters.length <= LONGEST_SHOWN ? letters.join('') : `${letters.slice(0, LONGEST_SHOWN).join('')}…`}”`;
}

/** `season.xlsx, sheet “May”, line 4, column F “Temp”: “hot” is not understood; write it like 68 F.` */
export function sayComplaint({ file, sheet, line, column, heading, value, what }: Complaint): string {
  const name = heading === null || heading.trim() === '' ? '' : ` ${quoted(heading)}`;
  const where = [
    file,
    sheet === null ? '' : `sheet ${quoted(sheet)}`,
    line === null ? '' : `line ${line}`,
    column === null ? '' : `column ${letterOf(column)}${name}`,
  ];
  const said = value === null ? what : `${quoted(value)} ${what}`;
  return `${where.filter((part) => part !== '').join(', ')}: ${said}.`;
}

/** `sheet, line and column` of one file, as one would go through it; what speaks of a whole sheet comes first. */
export const inOrder = (complaints: readonly Complaint[], sheets: readonly (string | null)[]): Complaint[] =>
  [...complaints].sort(
    (a, b) =>
      sheets.indexOf(a.sheet) - sheets.indexOf(b.sheet) ||
      (a.line ?? 0) - (b.line ?? 0) ||
      (a.column ?? 0) - (b.column ?? 0),
  );
