/** Numbers the rows of queens. A file tells the number of every row, or of none: then it is 1, 2, 3 … in each watch. */
import { QUEENS } from '../../../shared/columns.js';
import type { Problem } from './problem.js';
import type { ReadRow, Table } from './table.js';

type Queens = Table<typeof QUEENS>;

export function numbered(queens: Queens): Queens {
  if (queens.rows === null) return queens;
  return queens.columns.has('row') ? withGapsTold(queens, queens.rows) : { ...queens, rows: counted(queens.rows) };
}

function counted(rows: readonly ReadRow<typeof QUEENS>[]): ReadRow<typeof QUEENS>[] {
  const last = new Map<unknown, number>();
  return rows.map(({ line, cells }) => {
    const row = (last.get(cells.watch) ?? 0) + 1;
    last.set(cells.watch, row);
    return { line, cells: { ...cells, row } };
  });
}

/** Of a row without a number nobody can say which it is: as if it could not be read. */
function withGapsTold(queens: Queens, rows: readonly ReadRow<typeof QUEENS>[]): Queens {
  const gaps = rows.filter(({ cells }) => cells.row === null);
  if (gaps.length === 0) return queens;
  const what = 'is empty; number all rows, or leave the column out';
  return {
    ...queens,
    rows: rows.map((given) => {
      const { row, ...cells } = given.cells;
      return row === null ? { line: given.line, cells } : given;
    }),
    problems: [
      ...queens.problems,
      ...gaps.map(({ line }): Problem => ({ file: QUEENS.file, line, column: 'row', what })),
    ],
  };
}
