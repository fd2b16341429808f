/** What must agree between rows: none stands there twice, and each refers to rows that are there. */
import {
  LAYOUTS,
  type DETERMINATIONS,
  type FileName,
  type FINDINGS,
  type Layout,
  type PLANTS,
  type QUEENS,
  type WATCHES,
} from '../../../shared/columns.js';
import { shown, type Problem } from './problem.js';
import type { Table } from './table.js';

interface AnyRow {
  readonly line: number;
  readonly cells: Readonly<Record<string, unknown>>;
}
type AnyTables = Readonly<Record<FileName, { readonly rows: readonly AnyRow[] | null }>>;

/** Whether one of these cells could not be read. */
const lacks = ({ cells }: AnyRow, columns: readonly string[]): boolean =>
  columns.some((column) => cells[column] === undefined);

/** The row's values in some columns as one text. */
const keyOf = ({ cells }: AnyRow, columns: readonly string[]): string =>
  JSON.stringify(columns.map((column) => cells[column]));

/** What two rows of these columns have in common: `the same watch and plant`. */
function nameOf(columns: readonly string[]): string {
  const last = columns.at(-1) ?? '';
  return columns.length === 1 ? last : `${columns.slice(0, -1).join(', ')} and ${last}`;
}

/** Rows that stand there twice. */
function repeated(layout: Layout, rows: readonly AnyRow[]): Problem[] {
  const columns = layout.key.length > 0 ? layout.key : Object.keys(layout.columns);
  const same = layout.key.length > 0 ? `has the same ${nameOf(columns)} as` : 'is the same as';
  const first = new Map<string, number>();
  const problems: Problem[] = [];
  for (const row of rows) {
    if (lacks(row, columns)) continue;
    const key = keyOf(row, columns);
    const before = first.get(key);
    if (before === undefined) first.set(key, row.line);
    else {
      const column = layout.key.length === 1 ? columns[0]! : null;
      const what = column === null ? `this row ${same}` : `${printed(row.cells[column])} stands in`;
      problems.push({ file: layout.file, line: row.line, column, what: `${what} line ${before}; leave one out` });
    }
  }
  return problems;
}

const MOST_LISTED = 8;

/** What of a watch can be referred to: `it has "Cercis canadensis", "Viola sororia"`. */
function listed(values: ReadonlySet<unknown> | undefined): string {
  const all = [...(values ?? [])];
  if (all.length === 0) return 'it has none there';
  return `it has ${all.slice(0, MOST_LISTED).map(printed).join(', ')}${all.length > MOST_LISTED ? ' …' : ''}`;
}

const printed = (value: unknown): string => (typeof value === 'string' ? shown(value) : String(value));

/** Rows that refer to what is not there. By a file with rows that could not be read nobody is judged. */
function dangling(layout: Layout, rows: readonly AnyRow[], tables: AnyTables): Problem[] {
  return layout.refersTo.flatMap(({ file, columns }) => {
    const target = tables[file].rows;
    if (target === null || target.some((row) => lacks(row, columns))) return [];
    const [, column] = columns;
    const there = new Map<unknown, Set<unknown>>();
    for (const { cells } of target) {
      const values = there.get(cells['watch']) ?? new Set();
      there.set(cells['watch'], values);
      if (column !== undefined) values.add(cells[column]);
    }
    const watches = tables['watches.csv'].rows?.map(({ cells }) => cells['watch']) ?? [];
    const known = new Set(watches);
    return rows.flatMap(({ line, cells }): Problem[] => {
      const { watch } = cells;
      const problem = (name: string, what: string): Problem[] => [{ file: layout.file, line, column: name, what }];
      if (watch === undefined) return [];
      if (column === undefined)
        return there.has(watch) ? [] : problem('watch', `watch ${printed(watch)} is not in ${file}`);
      // a watch that is not there is told once, by its own column
      if (!known.has(watch) || cells[column] === undefined || there.get(watch)?.has(cells[column])) return [];
      const what = `watch ${printed(watch)} has no ${column} ${printed(cells[column])} in ${file}; ${listed(there.get(watch))}`;
      return problem(column, what);
    });
  });
}

/** A determination speaks for no more bees than its row has. */
function beyondRow(determinations: Table<typeof DETERMINATIONS>, queens: Table<typeof QUEENS>): Problem[] {
  const counts = new Map<string, number>();
  for (const row of queens.rows ?? []) {
    if (row.cells.count !== undefined) counts.set(keyOf(row, ['watch', 'row']), row.cells.count);
  }
  return (determinations.rows ?? []).flatMap((row): Problem[] => {
    const of = counts.get(keyOf(row, ['watch', 'row']));
    const { count } = row.cells;
    if (of === undefined || count === undefined || count <= of) return [];
    const what = `${count} is more than the row has in queens.csv, ${of}`;
    return [{ file: 'determinations.csv', line: row.line, column: 'count', what }];
  });
}

export interface Tables {
  readonly watches: Table<typeof WATCHES>;
  readonly plants: Table<typeof PLANTS>;
  readonly queens: Table<typeof QUEENS>;
  readonly determinations: Table<typeof DETERMINATIONS>;
  readonly findings: Table<typeof FINDINGS>;
}

/** Everything that does not agree between the rows of these tables. */
export function mismatches(tables: Tables): Problem[] {
  const byFile: AnyTables = {
    'watches.csv': tables.watches,
    'plants.csv': tables.plants,
    'queens.csv': tables.queens,
    'determinations.csv': tables.determinations,
    'findings.csv': tables.findings,
  };
  const perFile = LAYOUTS.flatMap((layout) => {
    const { rows } = byFile[layout.file];
    return rows === null ? [] : [...repeated(layout, rows), ...dangling(layout, rows, byFile)];
  });
  return [...perFile, ...beyondRow(tables.determinations, tables.queens)];
}
