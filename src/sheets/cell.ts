/** A spreadsheet as cells: what a CSV file or a workbook holds, before anything in it is understood. */

export type Cell =
  | { readonly kind: 'empty' }
  | { readonly kind: 'words'; readonly text: string }
  | {
      readonly kind: 'number';
      readonly number: number;
      /** Shown with a percent sign: 0.4 is 40 %. */ readonly percent: boolean;
    }
  /** A real date or time. No `date`: a time of day alone, or a length; no `time`: a day alone. */
  | { readonly kind: 'moment'; readonly date: string | null; readonly time: string | null }
  | { readonly kind: 'truth'; readonly truth: boolean }
  /** What cannot be taken as it is, such as a formula that was never computed; `what` ends the sentence that says so. */
  | { readonly kind: 'broken'; readonly text: string; readonly what: string };

export const EMPTY: Cell = { kind: 'empty' };

export interface SheetRow {
  /** The line of the text, or the number of the row, from 1. */
  readonly line: number;
  readonly cells: readonly Cell[];
  /** Cells, by index, that are merged with one before them and hold what that one holds. */
  readonly merged: ReadonlySet<number>;
}

export interface Sheet {
  readonly file: string;
  /** Null where the file is the only sheet. */
  readonly name: string | null;
  readonly rows: readonly SheetRow[];
}

/** Spreadsheets show fifteen figures: 43.5121000000000002 is 43.5121 there. */
const FIGURES = 15;

export const plain = (number: number): string => String(Number(number.toPrecision(FIGURES)));

/** A cell as it would be typed. Dates as `2026-05-02`, times as `13:05`. */
export function textOf(cell: Cell): string {
  switch (cell.kind) {
    case 'empty':
      return '';
    case 'words':
    case 'broken':
      return cell.text.trim();
    case 'number':
      return cell.percent ? `${plain(cell.number * 100)}%` : plain(cell.number);
    case 'moment':
      return [cell.date, cell.time].filter((part) => part !== null).join(' ');
    case 'truth':
      return String(cell.truth);
  }
}

const LETTERS = 26;

/** The letters over a column, by its index: A, B … Z, AA. */
export function letterOf(index: number): string {
  const before = Math.floor(index / LETTERS);
  return (before > 0 ? letterOf(before - 1) : '') + String.fromCharCode('A'.charCodeAt(0) + (index % LETTERS));
}
