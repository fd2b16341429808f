/** Long rows: a line of headings, then one row for each bee on each plant, what is of the whole watch repeated. */
import { ROW_COLUMNS, WATCH_COLUMNS, type SheetColumn, type WatchColumn } from '../../shared/words/sheets.js';
import { fold, type Context } from '../answers/index.js';
import { EMPTY, letterOf, textOf, type Sheet, type SheetRow } from './cell.js';
import { quoted, type Complaint } from './complaint.js';
import { readHeading } from './headings.js';
import { readLabels, type Labels } from './labels.js';
import {
  headingProblem,
  isOneOf,
  missingColumns,
  ofSheet,
  saysNothing,
  toldAt,
  type Layout,
  type RawRow,
  type RawWatch,
} from './raw.js';
import { wrong, type Told } from './told.js';

/** Headings stand on one of the first rows. */
const ROWS_LOOKED_AT = 40;
const LEAST_HEADINGS = 3;
const LEAST_OF_OTHER_TABLE = 4;
const MOST_LISTED = 10;

interface Column {
  readonly index: number;
  readonly column: SheetColumn;
  readonly unit: string | null;
  readonly heading: string;
}

interface Header {
  /** Index among the sheet's rows. */
  readonly at: number;
  readonly columns: readonly Column[];
}

function headerIn(row: SheetRow, at: number, words: Context['words']): Header {
  const columns = row.cells.flatMap((cell, index): Column[] => {
    if (cell.kind !== 'words' || row.merged.has(index)) return [];
    const heading = readHeading(cell.text, words);
    if (heading.state !== 'known') return [];
    return [{ index, column: heading.column, unit: heading.unit, heading: cell.text.trim() }];
  });
  return { at, columns };
}

/** The line of headings: it names a plant, a bee or a count, and something else; or nothing but what is known. */
export function headerOf(sheet: Sheet, words: Context['words']): Header | null {
  for (const [at, row] of sheet.rows.slice(0, ROWS_LOOKED_AT).entries()) {
    const header = headerIn(row, at, words);
    const names = new Set(header.columns.map(({ column }) => column));
    if (names.size >= LEAST_HEADINGS && names.has('plant') && (names.has('bee') || names.has('count'))) return header;
    // a table of something else, such as of watches alone: what it lacks is told; labels have their values between them
    if (names.size >= LEAST_OF_OTHER_TABLE && names.size === row.cells.filter((cell) => textOf(cell) !== '').length) {
      return header;
    }
  }
  return null;
}

/** Above a table may stand what several columns have in common ("Weather", "Bees"): no label with its value. */
function isNoBand({ cells }: SheetRow): boolean {
  const texts = cells.map(textOf).filter((text) => text !== '');
  return texts.length <= 2 || texts.some((text) => text.includes(':'));
}

const isEmpty = ({ cells }: SheetRow): boolean => cells.every((cell) => textOf(cell) === '');

/** Headings that are nearly known, stand twice, or hide a column that is not empty. */
function headerComplaints(sheet: Sheet, header: Header, words: Context['words']): Complaint[] {
  const row = sheet.rows[header.at]!;
  const data = sheet.rows.slice(header.at + 1);
  const width = Math.max(0, ...data.map(({ cells }) => cells.length));
  const complaints: Complaint[] = [];
  for (let index = 0; index < width || index < row.cells.length; index++) {
    const cell = row.merged.has(index) ? EMPTY : (row.cells[index] ?? EMPTY);
    const value = textOf(cell);
    const at = { line: row.line, column: index };
    if (value === '') {
      const filled = data.find(({ cells, merged }) => !merged.has(index) && textOf(cells[index] ?? EMPTY) !== '');
      if (filled === undefined) continue;
      const what = 'stands under no heading; give the column one, or put a cell that holds a comma into quotes';
      const text = textOf(filled.cells[index] ?? EMPTY);
      complaints.push(ofSheet(sheet, what, { line: filled.line, column: index, value: text }));
      continue;
    }
    const heading = readHeading(value, words);
    if (heading.state === 'slip' || heading.state === 'unit') {
      complaints.push(ofSheet(sheet, headingProblem(heading, words), { ...at, value }));
    }
  }
  for (const [at, { column, index, heading }] of header.columns.entries()) {
    const first = header.columns.findIndex((other) => other.column === column);
    if (first === at || column === 'remark') continue;
    const what = `means the same as “${header.columns[first]!.heading}” in column ${letterOf(header.columns[first]!.index)}; leave one out`;
    complaints.push(ofSheet(sheet, what, { line: row.line, column: index, value: heading }));
  }
  return complaints;
}

/** Columns that mean nothing here, each by its name. */
function passedOver(sheet: Sheet, header: Header, words: Context['words']): string[] {
  const row = sheet.rows[header.at]!;
  const unknown = row.cells.flatMap((cell, index) => {
    const text = textOf(cell);
    return text !== '' && readHeading(text, words).state === 'unknown' ? [`${letterOf(index)} ${quoted(text)}`] : [];
  });
  if (unknown.length === 0) return [];
  const more = unknown.length > MOST_LISTED ? ` and ${unknown.length - MOST_LISTED} more` : '';
  const named = `${unknown.slice(0, MOST_LISTED).join(', ')}${more}`;
  return [`${whole(sheet)}: not read, since no such heading is known: column ${named}.`];
}

const whole = ({ file, name }: Sheet): string => (name === null ? file : `${file}, sheet ${quoted(name)}`);

/** One row of the table, taken apart. */
interface ReadRow {
  readonly line: number;
  readonly watch: ReadonlyMap<WatchColumn, readonly Told[]>;
  readonly row: RawRow;
  readonly saysBee: boolean;
}

const isOfRow = (column: SheetColumn): column is (typeof ROW_COLUMNS)[number] =>
  ROW_COLUMNS.some((name) => name === column);
const isOfWatch = (column: SheetColumn): column is WatchColumn => WATCH_COLUMNS.some((name) => name === column);

function takeApart(sheet: Sheet, header: Header, row: SheetRow, words: Context['words']): ReadRow {
  const watch = new Map<WatchColumn, Told[]>();
  const cells: Partial<Record<(typeof ROW_COLUMNS)[number], Told>> = {};
  for (const one of header.columns) {
    const told = toldAt(sheet, row, one.index, one, words);
    if (told === null) continue;
    if (isOfRow(one.column)) cells[one.column] ??= told;
    else if (isOfWatch(one.column)) watch.set(one.column, [...(watch.get(one.column) ?? []), told]);
  }
  const of = (column: (typeof ROW_COLUMNS)[number]): Told | null => cells[column] ?? null;
  const raw: RawRow = {
    line: row.line,
    plant: of('plant'),
    flowers: of('flowers'),
    bee: of('bee'),
    count: of('count'),
    seenBefore: of('seenBefore'),
    withPollen: of('withPollen'),
    caste: of('caste'),
    doubt: of('doubt'),
  };
  return { line: row.line, watch, row: raw, saysBee: Object.keys(cells).length > 0 };
}

/** A row of sums under the table: "Total" where a bee or a plant would stand, and no name of either. */
function isTotal(row: SheetRow, { row: { plant, bee } }: ReadRow, words: Context['words']): boolean {
  const { totals } = words.sheets;
  const isSum = (told: Told | null): boolean => told === null || isOneOf(told.text, totals);
  return isSum(plant) && isSum(bee) && row.cells.some((cell) => cell.kind === 'words' && isOneOf(cell.text, totals));
}

/** What tells one watch from another where nothing numbers them. */
const KEY: readonly WatchColumn[] = ['observer', 'date', 'start', 'times', 'place', 'site', 'latitude', 'longitude'];

/** What rows of one watch have in common; null where the row does not say which watch it is of. */
function keyOf({ watch }: ReadRow, numbered: boolean, dayOf: (told: Told) => string): string | null {
  if (numbered) return watch.get('watch')?.[0]?.text ?? null;
  const parts = KEY.map((column) => {
    const told = watch.get(column)?.[0];
    if (told === undefined) return '';
    return column === 'date' ? dayOf(told) : fold(told.text).replace(/\s+/g, ' ');
  });
  return JSON.stringify(parts);
}

/** The watches of a sheet of long rows. `dayOf` makes a day the same however it is written. */
export function readRows(sheet: Sheet, header: Header, context: Context, dayOf: (told: Told) => string): Layout {
  const { words } = context;
  const labels = readLabels(sheet, sheet.rows.slice(0, header.at).filter(isNoBand), words);
  const complaints = [...labels.complaints, ...headerComplaints(sheet, header, words)];
  const notices = passedOver(sheet, header, words);
  const columns = new Set<SheetColumn>([...labels.columns, ...header.columns.map(({ column }) => column)]);
  for (const column of missingColumns(columns)) {
    complaints.push(ofSheet(sheet, `no column is headed “${words.sheets.headings[column][0]}”; add it`));
  }
  // without it each row would be told to be wrong
  if (missingColumns(columns).length > 0) return { watches: [], complaints, notices };

  const numbered = header.columns.some(({ column }) => column === 'watch');
  const ofWatch = header.columns.some(({ column }) => isOfWatch(column));
  const groups = new Map<string, ReadRow[]>();
  const continued: number[] = [];
  const repeated: number[] = [];
  const seen = new Set<string>();
  let above: ReadRow[] | null = null;
  for (const row of sheet.rows.slice(header.at + 1)) {
    if (isEmpty(row)) {
      above = null;
      continue;
    }
    const read = takeApart(sheet, header, row, words);
    if (isTotal(row, read, words)) {
      notices.push(`${whole(sheet)}: line ${row.line} is a sum and was passed over.`);
      continue;
    }
    const all = JSON.stringify(row.cells.map(textOf));
    if (seen.has(all) && read.row.bee !== null) repeated.push(row.line);
    seen.add(all);
    if (read.watch.size === 0 && !read.saysBee) continue; // only in columns that are passed over
    for (const told of Object.values(read.row)) {
      if (typeof told === 'object' && told !== null && told.merged && isNumberOf(told)) {
        complaints.push(wrong(told, 'is one cell for several rows; split it, and give each row its own number'));
      }
    }
    if (read.watch.size === 0 && ofWatch) {
      if (above === null)
        complaints.push(ofSheet(sheet, 'the row does not say of which watch it is', { line: row.line }));
      else {
        above.push(read);
        continued.push(row.line);
      }
      continue;
    }
    const key = keyOf(read, numbered, dayOf);
    if (key === null) {
      complaints.push(ofSheet(sheet, 'the row has no number of its watch, as other rows have', { line: row.line }));
      continue;
    }
    above = groups.get(key) ?? [];
    groups.set(key, above);
    above.push(read);
  }
  const lines = (heading: string, all: readonly number[]): void => {
    if (all.length === 0) return;
    const more = all.length > MOST_LISTED ? ` and ${all.length - MOST_LISTED} more` : '';
    notices.push(`${whole(sheet)}: ${heading}: line ${all.slice(0, MOST_LISTED).join(', ')}${more}.`);
  };
  lines('rows that say nothing of a watch belong to the one above them', continued);
  // each row may be one bee; but it may be a block that was pasted twice
  lines('rows that are the same as one above are counted with it', repeated);
  const foundBy = numbered ? 'number' : ofWatch ? 'cells' : 'sheet';
  const watches = [...groups.values()].map((rows) => watchOf(sheet, rows, labels, columns, foundBy));
  return { watches, complaints, notices };
}

/** Repeated in each row of a merged block they would add up. */
const isNumberOf = ({ column }: Told): boolean => ['count', 'seenBefore', 'withPollen'].includes(column);

function watchOf(
  sheet: Sheet,
  rows: readonly ReadRow[],
  labels: Labels,
  columns: ReadonlySet<SheetColumn>,
  foundBy: RawWatch['foundBy'],
): RawWatch {
  const all = new Map<WatchColumn, readonly Told[]>(labels.told);
  for (const column of WATCH_COLUMNS) {
    const told = rows.flatMap(({ watch }) => watch.get(column) ?? []);
    if (told.length > 0) all.set(column, told);
  }
  const { file, name } = sheet;
  // a row may tell something of the watch alone
  const ofBees = rows.filter(({ saysBee }) => saysBee).map(({ row }) => row);
  return { file, sheet: name, line: rows[0]!.line, told: all, columns, foundBy, rows: ofBees };
}

/** Whether a sheet has anything that is no blank. */
export const saysAnything = (sheet: Sheet, words: Context['words']): boolean =>
  sheet.rows.some(({ cells }) => cells.some((cell) => !saysNothing(textOf(cell), words)));
