/** Sheets for tests, as CSV text, and what they came to on few lines. */
import { siteOf } from '../../src/dialog/index.js';
import {
  csvSheet,
  readSheets,
  sayComplaint,
  type Cell,
  type Sheet,
  type SheetsRead,
  type SheetWatch,
} from '../../src/sheets/index.js';
import { demo, survey } from '../demo-survey.js';

export function sheetOf(text: string): Sheet {
  const sheet = csvSheet('t.csv', text);
  if (!('rows' in sheet)) throw new Error(sayComplaint(sheet));
  return sheet;
}

export const readAll = (...sheets: readonly Sheet[]): SheetsRead =>
  readSheets(sheets, demo, (place) => siteOf(place, survey));

export const read = (text: string): SheetsRead => readAll(sheetOf(text));

/** A sheet of cells as a workbook has them; texts become words. */
export const cells = (rows: readonly (readonly (Cell | string)[])[], name: string | null = null): Sheet => ({
  file: 't.xlsx',
  name,
  rows: rows.map((row, at) => ({
    line: at + 1,
    merged: new Set<number>(),
    cells: row.map((cell): Cell =>
      typeof cell !== 'string' ? cell : cell === '' ? { kind: 'empty' } : { kind: 'words', text: cell },
    ),
  })),
});

/** Every complaint as it is said, of the sheets first. */
export const complaintsOf = (read: SheetsRead): string[] =>
  [...read.complaints, ...read.watches.flatMap(({ complaints }) => complaints)].map(sayComplaint);

/** `2026-05-02 10:40–10:55 Wren @Fen Boardwalk | dandelion 14 | 2 Bombus impatiens on 1`. */
export function brief({ date, times, observer, place, plants, queens }: SheetWatch): string {
  const when = `${date ?? '?'} ${times === null ? '?' : `${times.start}–${times.end}`}`;
  const flowers = plants.map(({ asTyped, flowers }) => `${asTyped} ${flowers.asTyped === '' ? '?' : flowers.value}`);
  const seen = queens.map(({ count, bee, plant }) => `${count} ${bee ?? '?'} on ${plant}`);
  return `${when} ${observer ?? '?'} @${place?.words ?? ''} | ${flowers.join(', ')} | ${seen.join(', ')}`;
}
