/** What must agree within one row: no cell is wrong alone, but together they cannot be. */
import { DETERMINATIONS, PLANTS, QUEENS, TAXA_JOIN, WATCHES, type Layout, type Row } from '../../../shared/columns.js';
import type { KnownNames } from './names.js';
import { shown, type Problem } from './problem.js';
import type { ReadRow, Table } from './table.js';

type Cells<Of extends Layout> = Partial<Row<Of>>;
type Odd = readonly [column: string, what: string];

/** Blames the empty one of two columns that are given together. */
function together<Of extends Layout>(cells: Cells<Of>, one: keyof Cells<Of> & string, two: keyof Cells<Of> & string) {
  const odd: Odd[] = [];
  if (cells[one] === null && cells[two] !== null && cells[two] !== undefined) {
    odd.push([one, `is empty, but ${two} is not; give both or neither`]);
  }
  if (cells[two] === null && cells[one] !== null && cells[one] !== undefined) {
    odd.push([two, `is empty, but ${one} is not; give both or neither`]);
  }
  return odd;
}

/** Blames a part that is more than its whole. */
function withinWhole(part: number | null | undefined, column: string, whole: number | undefined, name: string): Odd[] {
  if (part === null || part === undefined || whole === undefined || part <= whole) return [];
  return [[column, `${part} is more than ${name}, ${whole}`]];
}

function isTimeZone(name: string): boolean {
  try {
    new Intl.DateTimeFormat('en', { timeZone: name });
    return true;
  } catch {
    return false;
  }
}

function inWatch(cells: Cells<typeof WATCHES>, isZone: (name: string) => boolean): Odd[] {
  const { start, end, time_zone: zone } = cells;
  const odd: Odd[] = [];
  if (start !== undefined && end !== undefined && end < start) {
    odd.push(['end', `${shown(end)} is before the start, ${shown(start)}; a watch ends on the day on which it began`]);
  }
  if (zone !== undefined && !isZone(zone)) {
    odd.push(['time_zone', `${shown(zone)} is no time zone; write an IANA name like America/Chicago`]);
  }
  return [...odd, ...together(cells, 'latitude', 'longitude'), ...together(cells, 'cloud', 'rain')];
}

function inPlant({ flowers, flowers_low: low, flowers_high: high }: Cells<typeof PLANTS>): Odd[] {
  return [
    ...withinWhole(low, 'flowers_low', flowers, 'flowers'),
    ...withinWhole(flowers, 'flowers', high ?? undefined, 'flowers_high'),
  ];
}

function inQueens(cells: Cells<typeof QUEENS>, names: KnownNames): Odd[] {
  const { bee, count } = cells;
  const problem = bee === null || bee === undefined ? null : names.beeProblem(bee);
  return [
    ...(problem === null ? [] : [['bee', problem] as const]),
    ...withinWhole(cells.seen_before, 'seen_before', count, 'count'),
    ...withinWhole(cells.with_pollen, 'with_pollen', count, 'count'),
  ];
}

/** The names of a determination. */
export const taxaOf = (cell: string | null): string[] => (cell === null ? [] : cell.split(TAXA_JOIN));

function inDetermination({ taxa }: Cells<typeof DETERMINATIONS>, names: KnownNames): Odd[] {
  const all = taxaOf(taxa ?? null);
  if (all.length > 2) {
    return [['taxa', `${shown(all.join(TAXA_JOIN))} is more than a pair; write one name, two, or none`]];
  }
  return all.flatMap((name) => {
    const problem = names.taxonProblem(name);
    return problem === null ? [] : [['taxa', problem] as const];
  });
}

/** Everything that does not agree within a row of these tables. */
export function disagreements(
  tables: {
    readonly watches: Table<typeof WATCHES>;
    readonly plants: Table<typeof PLANTS>;
    readonly queens: Table<typeof QUEENS>;
    readonly determinations: Table<typeof DETERMINATIONS>;
  },
  names: KnownNames,
): Problem[] {
  const zones = new Map<string, boolean>();
  const isZone = (name: string): boolean => {
    const known = zones.get(name) ?? isTimeZone(name); // asking costs more than all else of a row
    zones.set(name, known);
    return known;
  };
  const within = <Of extends Layout>(layout: Of, table: Table<Of>, odd: (cells: Cells<Of>) => readonly Odd[]) =>
    (table.rows ?? []).flatMap(({ line, cells }: ReadRow<Of>) =>
      odd(cells).map(([column, what]): Problem => ({ file: layout.file, line, column, what })),
    );
  return [
    ...within(WATCHES, tables.watches, (cells) => inWatch(cells, isZone)),
    ...within(PLANTS, tables.plants, inPlant),
    ...within(QUEENS, tables.queens, (cells) => inQueens(cells, names)),
    ...within(DETERMINATIONS, tables.determinations, (cells) => inDetermination(cells, names)),
  ];
}
