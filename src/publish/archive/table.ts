/** A table of the archive: a file, what its rows are, and its columns, each a published term. */
import { stringify } from 'csv-stringify/sync';

/** Darwin Core, Dublin Core, and the Humboldt Extension of Biodiversity Information Standards (TDWG). */
export const DWC = 'http://rs.tdwg.org/dwc/terms/';
export const DCTERMS = 'http://purl.org/dc/terms/';
export const ECO = 'http://rs.tdwg.org/eco/terms/';

export type Cell = string | number | boolean | null;

/** Before the terms stands a column of ids: the event that the row is, or belongs to. */
export interface ArchiveTable {
  readonly file: string;
  readonly rowType: string;
  readonly terms: readonly string[];
  /** By row, in the order of `terms`; its event first. */
  readonly rows: readonly (readonly Cell[])[];
}

/** Builds a table from rows by term; what a row lacks stays empty. */
export function tableOf(
  file: string,
  rowType: string,
  terms: readonly string[],
  rows: readonly { readonly event: string; readonly values: Readonly<Record<string, Cell>> }[],
): ArchiveTable {
  return {
    file,
    rowType,
    terms,
    rows: rows.map(({ event, values }) => {
      const unknown = Object.keys(values).find((term) => !terms.includes(term));
      if (unknown !== undefined) throw new Error(`${file} has no column ${unknown}. Its columns: ${terms.join(', ')}.`);
      return [event, ...terms.map((term) => values[term] ?? null)];
    }),
  };
}

/** CSV with a header of the terms' local names; UTF-8, comma, LF. */
export const csvOf = ({ terms, rows }: ArchiveTable): string =>
  stringify([
    ['id', ...terms.map((term) => term.slice(term.lastIndexOf('/') + 1))],
    ...rows.map((row) => row.map((cell) => (cell === null ? '' : String(cell)))),
  ]);
