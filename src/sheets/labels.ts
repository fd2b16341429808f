/** Lines of a label and its value above a table or a grid: "Date:", "5/2/2026"; several on a line; "Observer: Wren". */
import { WATCH_COLUMNS, type WatchColumn } from '../../shared/words/sheets.js';
import type { Words } from '../../shared/words.js';
import { EMPTY, textOf, type Sheet, type SheetRow } from './cell.js';
import type { Complaint } from './complaint.js';
import { readHeading } from './headings.js';
import { headingProblem, ofSheet, saysNothing, toldAt } from './raw.js';
import { told, type Told } from './told.js';

export interface Labels {
  readonly told: ReadonlyMap<WatchColumn, readonly Told[]>;
  /** Labels whose value is empty among them. */
  readonly columns: ReadonlySet<WatchColumn>;
  readonly complaints: readonly Complaint[];
}

const isWatchColumn = (column: string): column is WatchColumn => WATCH_COLUMNS.some((name) => name === column);

interface Label {
  readonly column: WatchColumn;
  readonly unit: string | null;
  readonly heading: string;
  /** Behind the colon, in the same cell. */
  readonly inside: string | null;
}

/** The label that a cell is, or begins with. */
function labelIn(text: string, words: Words): Label | null {
  const whole = readHeading(text, words);
  if (whole.state === 'known' && isWatchColumn(whole.column)) {
    return { column: whole.column, unit: whole.unit, heading: text.replace(/:\s*$/, ''), inside: null };
  }
  const colon = text.indexOf(':');
  if (colon < 0) return null;
  const before = readHeading(text.slice(0, colon), words);
  if (before.state !== 'known' || !isWatchColumn(before.column)) return null;
  const { column, unit } = before;
  return { column, unit, heading: text.slice(0, colon), inside: text.slice(colon + 1).trim() };
}

const textAt = ({ cells, merged }: SheetRow, index: number): string =>
  merged.has(index) ? '' : textOf(cells[index] ?? EMPTY);

/** Whether the first cell that says something is a label. */
export function isLabelRow(row: SheetRow, words: Words): boolean {
  const first = row.cells.findIndex((_cell, index) => textAt(row, index) !== '');
  return first >= 0 && labelIn(textAt(row, first), words) !== null;
}

/** What the label lines among these rows tell; other lines, such as a title, are passed over unless they seem a label. */
export function readLabels(sheet: Sheet, rows: readonly SheetRow[], words: Words): Labels {
  const found = new Map<WatchColumn, Told[]>();
  const columns = new Set<WatchColumn>();
  const complaints: Complaint[] = [];
  const add = (one: Told, column: WatchColumn): void => {
    found.set(column, [...(found.get(column) ?? []), one]);
  };
  for (const row of rows) {
    const filled = row.cells.flatMap((_cell, index) => (textAt(row, index) === '' ? [] : [index]));
    for (let at = 0; at < filled.length; at++) {
      const index = filled[at]!;
      const text = textAt(row, index);
      const label = labelIn(text, words);
      if (label === null) {
        const problem = labelProblem(text, filled.length, words);
        if (problem !== null) complaints.push(ofSheet(sheet, problem, { line: row.line, column: index, value: text }));
        // behind a label that is not known stands its value
        if (problem !== null && !text.includes(':')) at++;
        continue;
      }
      columns.add(label.column);
      const where = { file: sheet.file, sheet: sheet.name, line: row.line, column: index };
      if (label.inside !== null && label.inside !== '') {
        if (saysNothing(label.inside, words)) continue;
        const { column, unit, heading, inside } = label;
        add(told({ column, unit, heading, cell: { kind: 'words', text: inside }, where, merged: false }), column);
        continue;
      }
      const next = filled[at + 1];
      if (next === undefined || labelIn(textAt(row, next), words) !== null) continue; // an empty field of a form
      const one = toldAt(sheet, row, next, label, words);
      if (one !== null) add(one, label.column);
      at++;
    }
  }
  return { told: found, columns, complaints };
}

/** A line of one cell is a title; a cell with a colon, or with a neighbour, would be told and lost. */
function labelProblem(text: string, filled: number, words: Words): string | null {
  const name = /^[^:]*/.exec(text)?.[0] ?? text;
  const heading = readHeading(name, words);
  if (heading.state === 'unit' || heading.state === 'slip') return headingProblem(heading, words);
  const isTitle = filled === 1 && !/:\s*\S/.test(text);
  return isTitle ? null : 'is no label that is known here; take it out, or write it as a remark';
}
