/** Reads one CSV file by its layout: columns by name, in any order; every cell that is wrong is told. */
import { CsvError, parse } from 'csv-parse/sync';
import type { Layout, Row } from '../../../shared/columns.js';
import { readCell, type CellValue } from './cells.js';
import { shown, type Problem } from './problem.js';

export interface ReadRow<Of extends Layout> {
  /** The line of the text at which it begins. */
  readonly line: number;
  /** A cell that could not be read is not there. */
  readonly cells: Partial<Row<Of>>;
}

export interface Table<Of extends Layout> {
  /** Null where the file as a whole cannot be read, so that what refers to it is not blamed. */
  readonly rows: readonly ReadRow<Of>[] | null;
  /** The columns it has. */
  readonly columns: ReadonlySet<string>;
  readonly problems: readonly Problem[];
}

interface Line {
  readonly line: number;
  readonly cells: readonly string[];
}

const WHY_NOT_CSV: Readonly<Record<string, string>> = {
  CSV_QUOTE_NOT_CLOSED: 'a quote (") is opened and never closed',
  CSV_INVALID_CLOSING_QUOTE:
    'after the closing quote (") of a cell comes more; double a quote that belongs to the text',
  INVALID_OPENING_QUOTE: 'a quote (") stands within a cell; put the cell into quotes and double that quote',
};

const QUOTE = '"'.charCodeAt(0);
const LINE_FEED = '\n'.charCodeAt(0);

/**
 * The line of the text at which each row begins. The library tells that too, but counts a line end of two characters
 * within quotes twice, and takes twice as long when asked.
 */
function firstLines(text: string): number[] {
  const first = [1];
  let line = 1;
  let quoted = false;
  for (let at = 0; at < text.length; at++) {
    const letter = text.charCodeAt(at);
    if (letter === QUOTE)
      quoted = !quoted; // a doubled one: out and in again
    else if (letter === LINE_FEED) {
      line++;
      if (!quoted) first.push(line);
    }
  }
  return first;
}

/** The rows of a text with their lines, empty ones passed over; or where and why it is not CSV. */
function linesOf(text: string): { lines: Line[] } | { line: number; broken: string } {
  const first = firstLines(text);
  try {
    const rows = parse(text, { bom: true, record_delimiter: ['\r\n', '\n'], relax_column_count: true });
    const lines = rows.map((cells, at) => ({ line: first[at] ?? 1, cells }));
    return { lines: lines.filter(({ cells }) => cells.some((cell) => cell !== '')) };
  } catch (cause) {
    if (!(cause instanceof CsvError)) throw cause;
    const rowsBefore = typeof cause['records'] === 'number' ? cause['records'] : 0;
    return { line: first[rowsBefore] ?? 1, broken: WHY_NOT_CSV[cause.code] ?? `this is not CSV (${cause.message})` };
  }
}

/** What is wrong with the names of the columns. */
function headerProblems(layout: Layout, { line, cells }: Line): Problem[] {
  const known = Object.keys(layout.columns);
  const problem = (column: string | null, what: string): Problem => ({ file: layout.file, line, column, what });
  const other = [';', '\t'].find((delimiter) => cells.length === 1 && cells[0]?.includes(delimiter));
  if (other !== undefined) {
    return [problem(null, `its columns are parted by ${JSON.stringify(other)}; save it with commas between them`)];
  }
  const unknown = cells.filter((name) => !known.includes(name));
  const twice = known.filter((name) => cells.filter((cell) => cell === name).length > 1);
  const missing = known.filter((name) => layout.columns[name]?.mayBeMissing !== true && !cells.includes(name));
  return [
    ...unknown.map((name) => problem(null, `no column is called ${shown(name)}. Known: ${known.join(', ')}`)),
    ...twice.map((name) => problem(name, 'stands there more than once')),
    ...missing.map((name) => problem(name, 'is missing')),
  ];
}

/** Reads a row and adds what is wrong in it to `problems`. One that does not match the header has no cell to trust. */
function readRow<Of extends Layout>(
  layout: Of,
  header: ReadonlyMap<string, number>,
  { line, cells }: Line,
  problems: Problem[],
): ReadRow<Of> {
  const { file } = layout;
  if (cells.length !== header.size) {
    const what = `has ${cells.length} cells where the header has ${header.size}; put a cell that holds a comma into quotes`;
    problems.push({ file, line, column: null, what });
    return { line, cells: {} };
  }
  const read: Record<string, CellValue> = {};
  for (const name in layout.columns) {
    const at = header.get(name);
    const cell = at === undefined ? { value: null } : readCell(layout.columns[name]!, cells[at] ?? '');
    if ('problem' in cell) problems.push({ file, line, column: name, what: cell.problem });
    else read[name] = cell.value;
  }
  return { line, cells: read as Partial<Row<Of>> };
}

const unreadable = (problems: readonly Problem[]) => ({ rows: null, columns: new Set<string>(), problems });

/** `text` is undefined where there is no such file. */
export function readTable<Of extends Layout>(layout: Of, text: string | undefined): Table<Of> {
  if (text === undefined) {
    if (layout.mayBeMissing) return { rows: [], columns: new Set(), problems: [] };
    return unreadable([{ file: layout.file, line: null, column: null, what: 'is missing' }]);
  }
  const problem = (line: number, what: string): Problem => ({ file: layout.file, line, column: null, what });
  const read = linesOf(text);
  if ('broken' in read) return unreadable([problem(read.line, read.broken)]);
  const [first, ...rest] = read.lines;
  if (first === undefined) {
    return unreadable([problem(1, `is empty; its first line is ${Object.keys(layout.columns).join(',')}`)]);
  }
  const header = first.cells.map((name) => name.trim());
  const ofHeader = headerProblems(layout, { line: first.line, cells: header });
  if (ofHeader.length > 0) return unreadable(ofHeader);

  const positions = new Map(header.map((name, at) => [name, at]));
  const problems: Problem[] = [];
  const rows = rest.map((line) => readRow(layout, positions, line, problems));
  return { rows, columns: new Set(header), problems };
}
