/**
 * The most evenly spread and the most concentrated whole-number matrices with given row and column totals: between
 * them lies the specialisation H2′ of a network. The first is exact; the second has no quick exact method, so many
 * starts are each improved as far as exchanges go. On small matrices, where every one can be tried, H2′ stays within
 * 0.005 of exact (the test tries some hundred).
 */
import { sum } from './sums.js';

export type Matrix = readonly (readonly number[])[];

export const rowTotals = (matrix: Matrix): number[] => matrix.map(sum);
export const columnTotals = (matrix: Matrix): number[] =>
  (matrix[0] ?? []).map((_, column) => sum(matrix.map((row) => row[column] ?? 0)));

/** x ln x, 0 at 0: the larger its sum over a matrix, the more concentrated the matrix. */
const xLogX = (x: number): number => (x === 0 ? 0 : x * Math.log(x));

/** Shannon's entropy of the shares of all cells, natural logarithm. */
export function entropy(matrix: Matrix): number {
  const total = sum(matrix.map(sum));
  return Math.log(total) - sum(matrix.map((row) => sum(row.map(xLogX)))) / total;
}

/** A matrix that is worked on: one flat list, so that trying an exchange costs four look-ups. */
interface Work {
  readonly rows: number;
  readonly columns: number;
  readonly cells: number[];
}

const toWork = (matrix: Matrix): Work => ({
  rows: matrix.length,
  columns: matrix[0]?.length ?? 0,
  cells: matrix.flat(),
});
const toMatrix = ({ rows, columns, cells }: Work): number[][] =>
  Array.from({ length: rows }, (_, row) => cells.slice(row * columns, (row + 1) * columns));

/** What the sum of x ln x gains when `by` is taken from two cells and given to two others. */
function gain(cells: readonly number[], from: readonly number[], to: readonly number[], by: number): number {
  const change = (cell: number, more: number): number => {
    const value = cells[cell] ?? 0;
    return xLogX(value + more) - xLogX(value);
  };
  return sum(from.map((cell) => change(cell, -by))) + sum(to.map((cell) => change(cell, by)));
}

function move(cells: number[], from: readonly number[], to: readonly number[], by: number): void {
  for (const cell of from) cells[cell] = (cells[cell] ?? 0) - by;
  for (const cell of to) cells[cell] = (cells[cell] ?? 0) + by;
}

/** Differences below this are the rounding of logarithms. */
const TINY = 1e-9;

/** As even as its totals allow: begins with the rounded-down products of the totals. */
export function mostEven(matrix: Matrix): number[][] {
  const [byRow, byColumn] = [rowTotals(matrix), columnTotals(matrix)];
  const total = sum(byRow);
  const expected = byRow.map((row) => byColumn.map((column) => (row * column) / total));
  const work = toWork(expected.map((row) => row.map(Math.floor)));
  const { columns, cells } = work;

  // What rounding down left over goes where most is missing.
  const left = toMatrix(work);
  const leftInRow = byRow.map((value, row) => value - sum(left[row] ?? []));
  const leftInColumn = columnTotals(left).map((value, column) => (byColumn[column] ?? 0) - value);
  const wanting = expected
    .flatMap((row, i) => row.map((value, j) => ({ i, j, missing: value - Math.floor(value) })))
    .sort((a, b) => b.missing - a.missing);
  while (leftInRow.some((value) => value > 0)) {
    for (const { i, j } of wanting) {
      if ((leftInRow[i] ?? 0) === 0 || (leftInColumn[j] ?? 0) === 0) continue;
      const cell = i * columns + j;
      cells[cell] = (cells[cell] ?? 0) + 1;
      leftInRow[i] = (leftInRow[i] ?? 0) - 1;
      leftInColumn[j] = (leftInColumn[j] ?? 0) - 1;
    }
  }

  for (let cycle = gainingCycle(work); cycle !== null; cycle = gainingCycle(work)) {
    move(cells, cycle.from, cycle.to, 1);
  }
  return toMatrix(work);
}

/**
 * A closed chain of cells along which moving one visit makes the matrix more even; null where there is none, and then
 * no other matrix of these totals is more even (the sum of x ln x is convex in each cell). Found as a negative cycle,
 * by Bellman and Ford: rows and columns are the nodes, giving a visit to a cell leads from its row to its column,
 * taking one leads back.
 */
function gainingCycle({ rows, columns, cells }: Work): { from: number[]; to: number[] } | null {
  const nodes = rows + columns;
  const reached = Array.from({ length: nodes }, () => 0);
  const before = Array.from({ length: nodes }, () => -1);
  const step = (value: number, more: number): number => xLogX(value + more) - xLogX(value);
  let last = -1;
  for (let round = 0; round < nodes; round++) {
    last = -1;
    const relax = (from: number, to: number, cost: number): void => {
      if ((reached[from] ?? 0) + cost >= (reached[to] ?? 0) - TINY) return;
      reached[to] = (reached[from] ?? 0) + cost;
      before[to] = from;
      last = to;
    };
    cells.forEach((value, cell) => {
      const [row, column] = [Math.floor(cell / columns), rows + (cell % columns)];
      relax(row, column, step(value, 1));
      if (value > 0) relax(column, row, step(value, -1));
    });
    if (last === -1) return null;
  }
  // Going back as many steps as there are nodes ends inside the cycle.
  for (let back = 0; back < nodes; back++) last = before[last] ?? 0;
  const [from, to]: [number[], number[]] = [[], []];
  let node = last;
  do {
    const previous = before[node] ?? 0;
    if (previous < rows) to.push(previous * columns + (node - rows));
    else from.push(node * columns + (previous - rows));
    node = previous;
  } while (node !== last);
  return { from, to };
}

/** Fills cell after cell with as much as its row and column still take, the fullest first. */
function filled(byRow: readonly number[], byColumn: readonly number[], first: readonly [number, number] | null): Work {
  const [inRow, inColumn] = [[...byRow], [...byColumn]];
  const columns = byColumn.length;
  const work: Work = { rows: byRow.length, columns, cells: byRow.flatMap(() => byColumn.map(() => 0)) };
  const fill = (i: number, j: number): void => {
    const amount = Math.min(inRow[i] ?? 0, inColumn[j] ?? 0);
    work.cells[i * columns + j] = (work.cells[i * columns + j] ?? 0) + amount;
    inRow[i] = (inRow[i] ?? 0) - amount;
    inColumn[j] = (inColumn[j] ?? 0) - amount;
  };
  if (first) fill(...first);
  while (inRow.some((value) => value > 0)) {
    let [bestRow, bestColumn, most, least] = [0, 0, 0, 0];
    inRow.forEach((row, i) => {
      inColumn.forEach((column, j) => {
        const amount = Math.min(row, column);
        // Of two that take as much, the one that leaves less behind.
        if (amount > most || (amount === most && row + column < least)) {
          [bestRow, bestColumn, most, least] = [i, j, amount, row + column];
        }
      });
    });
    fill(bestRow, bestColumn);
  }
  return work;
}

/**
 * Exchanges along cycles of two filled cells, and of three too where `three`, each as far as it goes, until none
 * concentrates more.
 */
function concentrate({ columns, cells }: Work, three: boolean): void {
  const rowOf = (cell: number): number => Math.floor(cell / columns);
  const apart = (one: number, other: number): boolean =>
    rowOf(one) !== rowOf(other) && one % columns !== other % columns;
  /** Each cell gives to the cell of its row in the column of the next. */
  const tryCycle = (from: readonly number[]): boolean => {
    const to = from.map((cell, index) => rowOf(cell) * columns + ((from[(index + 1) % from.length] ?? 0) % columns));
    const by = Math.min(...from.map((cell) => cells[cell] ?? 0));
    if (gain(cells, from, to, by) <= TINY) return false;
    move(cells, from, to, by);
    return true;
  };
  const tryThree = (full: readonly number[], a: number, b: number): boolean =>
    full.some((c) => c > b && apart(a, c) && apart(b, c) && (tryCycle([a, b, c]) || tryCycle([a, c, b])));

  let better = true;
  while (better) {
    const full = cells.flatMap((value, cell) => (value > 0 ? [cell] : []));
    const pairs = full.flatMap((a) => full.filter((b) => b > a && apart(a, b)).map((b) => [a, b] as const));
    better = pairs.some((pair) => tryCycle(pair)) || (three && pairs.some(([a, b]) => tryThree(full, a, b)));
  }
}

/** How many cells are tried as the first to be filled, and how many of the matrices found are worked on further. */
const STARTS = 40;
const FINALISTS = 3;

/** As concentrated as could be found. */
export function mostConcentrated(matrix: Matrix): number[][] {
  const [byRow, byColumn] = [rowTotals(matrix), columnTotals(matrix)];
  // Those that take most, before them those that use a row and a column up at once.
  const firsts = byRow
    .flatMap((row, i) => byColumn.map((column, j) => ({ place: [i, j] as const, row, column })))
    .sort((a, b) => {
      const [even, other] = [a.row === a.column, b.row === b.column];
      if (even !== other) return even ? -1 : 1;
      return Math.min(b.row, b.column) - Math.min(a.row, a.column);
    })
    .slice(0, STARTS);
  const concentration = ({ cells }: Work): number => sum(cells.map(xLogX));
  const found = [null, ...firsts.map(({ place }) => place)].map((first) => {
    const work = filled(byRow, byColumn, first);
    concentrate(work, false);
    return work;
  });
  const finalists = found.sort((a, b) => concentration(b) - concentration(a)).slice(0, FINALISTS);
  for (const work of finalists) concentrate(work, true);
  return toMatrix(finalists.reduce((best, other) => (concentration(other) > concentration(best) ? other : best)));
}
