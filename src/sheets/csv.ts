/** A CSV text as a sheet: comma, semicolon or tab between cells, whichever its first lines use. */
import { CsvError, parse } from 'csv-parse/sync';
import { EMPTY, type Cell, type Sheet } from './cell.js';
import type { Complaint } from './complaint.js';

const DELIMITERS = [',', ';', '\t'] as const;
/** Lines that are looked at to see what parts the cells. */
const LINES_LOOKED_AT = 40;
const LETTERS_LOOKED_AT = 100_000;
const QUOTED = /"(?:[^"]|"")*"/g;

const WHY_NOT_CSV: Readonly<Record<string, string>> = {
  CSV_QUOTE_NOT_CLOSED: 'a quote (") is opened and never closed',
  CSV_INVALID_CLOSING_QUOTE:
    'after the closing quote (") of a cell comes more; double a quote that belongs to the text',
  INVALID_OPENING_QUOTE: 'a quote (") stands within a cell; put the cell into quotes and double that quote',
};

/** What parts the cells: the sign found on most of the first lines; a comma where none is. */
function delimiterOf(text: string): string {
  const lines = text.slice(0, LETTERS_LOOKED_AT).replaceAll(QUOTED, '').split('\n', LINES_LOOKED_AT);
  const found = DELIMITERS.map((delimiter) => ({
    delimiter,
    lines: lines.filter((line) => line.includes(delimiter)).length,
    signs: lines.reduce((sum, line) => sum + line.split(delimiter).length - 1, 0),
  }));
  // a comma within words is on some lines ("sunny, calm"), what parts cells is on all
  found.sort((a, b) => b.lines - a.lines || b.signs - a.signs);
  return found[0]?.signs === 0 ? ',' : (found[0]?.delimiter ?? ',');
}

/** "2026-05-02 10:40", with seconds or a T: exact, as programs write it. One with a zone is no local time and stays words. */
const MOMENT =
  /^(?<date>\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\d|3[01]))[T ](?<time>(?:[01]\d|2[0-3]):[0-5]\d)(?::\d\d(?:\.\d+)?)?$/;

function cellOf(text: string): Cell {
  const trimmed = text.trim();
  if (trimmed === '') return EMPTY;
  const { date, time } = MOMENT.exec(trimmed)?.groups ?? {};
  if (date !== undefined && time !== undefined) return { kind: 'moment', date, time };
  return { kind: 'words', text: trimmed };
}

/** The sheet of a text, or why it is none. */
export function csvSheet(file: string, text: string): Sheet | Complaint {
  const plain = text.replace(/^\uFEFF/, '').replaceAll(/\r\n?/g, '\n');
  // the first line that some spreadsheet programs write and read: "sep=;"
  const told = /^sep=(.)\n/i.exec(plain);
  const body = told ? plain.slice(told[0].length) : plain;
  try {
    const records = parse(body, { delimiter: told?.[1] ?? delimiterOf(body), relax_column_count: true, info: true });
    let line = told ? 1 : 0;
    const rows = (records as unknown as { record: string[]; info: { lines: number } }[]).map(({ record, info }) => {
      const first = line + 1;
      line = info.lines + (told ? 1 : 0);
      return { line: first, cells: record.map(cellOf), merged: new Set<number>() };
    });
    return { file, name: null, rows };
  } catch (cause) {
    if (!(cause instanceof CsvError)) throw cause;
    const line = typeof cause['lines'] === 'number' ? cause['lines'] : null;
    const what = WHY_NOT_CSV[cause.code] ?? `this is not CSV (${cause.message})`;
    return { about: null, file, sheet: null, line, column: null, heading: null, value: null, what };
  }
}
