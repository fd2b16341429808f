/**
 * A sheet for each watch: labels with their values on top, then a grid whose headings are plants, perhaps a row of their
 * open flowers, and a row for each bee with its counts. Several watches may follow one another in a sheet.
 */
import type { SheetColumn, WatchColumn } from '../../shared/words/sheets.js';
import type { Words } from '../../shared/words.js';
import { EMPTY, textOf, type Sheet, type SheetRow } from './cell.js';
import { quoted, type Complaint } from './complaint.js';
import { readHeading } from './headings.js';
import { isLabelRow, readLabels } from './labels.js';
import { isOneOf, missingColumns, ofSheet, toldAt, type Layout, type RawRow, type RawWatch } from './raw.js';
import { wrong, type Told } from './told.js';

interface Header {
  readonly row: SheetRow;
  /** Index of the column that names the bees. */
  readonly bees: number;
  readonly plants: readonly number[];
}

/** The rows of one watch, in their order. */
interface Block {
  readonly labels: SheetRow[];
  header: Header | null;
  readonly rows: SheetRow[];
}

const textAt = ({ cells, merged }: SheetRow, index: number): string =>
  merged.has(index) ? '' : textOf(cells[index] ?? EMPTY);

const filledIn = (row: SheetRow): number[] => row.cells.flatMap((_cell, at) => (textAt(row, at) === '' ? [] : [at]));

const isCorner = (text: string, words: Words): boolean => {
  const heading = readHeading(text, words);
  const isBee = heading.state === 'known' && (heading.column === 'bee' || heading.column === 'count');
  return isBee || isOneOf(text.replace(/[\\/&→>-]+/g, ' '), words.sheets.corners);
};

/** The line of plants: its first cell is empty, or says that bees stand below. */
function headerOf(row: SheetRow, next: SheetRow | undefined, words: Words): Header | null {
  const filled = filledIn(row);
  const [first, ...others] = filled;
  if (first === undefined || isLabelRow(row, words)) return null;
  if (isCorner(textAt(row, first), words)) return others.length > 0 ? { row, bees: first, plants: others } : null;
  // a title that does not stand on the left has no names of bees below it
  if (first === 0 || next === undefined || isLabelRow(next, words) || textAt(next, first - 1) === '') return null;
  return { row, bees: first - 1, plants: filled };
}

function blocksOf(sheet: Sheet, words: Words): Block[] {
  const fresh = (): Block => ({ labels: [], header: null, rows: [] });
  const blocks: Block[] = [];
  let block = fresh();
  const rows = sheet.rows.filter((row) => filledIn(row).length > 0);
  const begins = (row: SheetRow): boolean => {
    const again = new Set(readLabels(sheet, [row], words).columns);
    const known = readLabels(sheet, block.labels, words).columns;
    return [...again].some((column) => known.has(column) && column !== 'remark');
  };
  for (const [at, row] of rows.entries()) {
    if (isLabelRow(row, words)) {
      if (block.header !== null && begins(row)) {
        blocks.push(block);
        block = fresh();
      }
      block.labels.push(row);
    } else if (block.header === null) {
      block.header = headerOf(row, rows[at + 1], words);
      if (block.header === null) block.labels.push(row);
    } else block.rows.push(row);
  }
  return [...blocks, block];
}

/** Whether a sheet may be of this kind: it has a label with a value or a line of plants, whatever else is wrong with it. */
export const looksLikeGrid = (sheet: Sheet, words: Words): boolean => {
  const told = readLabels(
    sheet,
    sheet.rows.filter((row) => isLabelRow(row, words)),
    words,
  ).columns;
  return told.has('date') || told.has('observer') || told.has('start') || told.has('times');
};

/** What a block's grid comes to. */
interface Grid {
  readonly rows: readonly RawRow[];
  readonly complaints: readonly Complaint[];
  readonly notices: readonly string[];
  readonly hasFlowers: boolean;
}

function readGrid(sheet: Sheet, header: Header, rows: readonly SheetRow[], words: Words): Grid {
  const complaints: Complaint[] = [];
  const notices: string[] = [];
  const heading = (row: SheetRow, index: number, column: SheetColumn, said: string): Told | null =>
    toldAt(sheet, row, index, { column, unit: null, heading: said }, words);
  const cornerSaid = textAt(header.row, header.bees);

  const totalColumn = header.plants.find((index) => isOneOf(textAt(header.row, index), words.sheets.totals));
  const plants = header.plants.filter((index) => index !== totalColumn);
  const flowers = new Map<number, Told>();
  const counts: { bee: Told; at: number; count: Told }[] = [];
  let hasFlowers = false;
  for (const row of rows) {
    const outside = filledIn(row).filter((at) => at !== header.bees && at !== totalColumn && !plants.includes(at));
    for (const at of outside) {
      const what = 'stands under no plant; name the plant above it';
      complaints.push(ofSheet(sheet, what, { line: row.line, column: at, value: textAt(row, at) }));
    }
    const label = textAt(row, header.bees);
    const read = readHeading(label, words);
    if (read.state === 'known' && read.column === 'flowers') {
      hasFlowers = true;
      for (const at of plants) {
        const told = heading(row, at, 'flowers', textAt(header.row, at));
        if (told !== null) flowers.set(at, told);
      }
      continue;
    }
    const cells = plants.flatMap((at) => {
      const told = heading(row, at, 'count', textAt(header.row, at));
      return told === null ? [] : [{ at, told }];
    });
    if (isOneOf(label, words.sheets.totals)) {
      for (const { at, told } of cells) {
        const ofPlant = counts.filter((one) => one.at === at).map(({ count }) => count);
        complaints.push(...sumProblem(told, ofPlant));
      }
      continue;
    }
    if (cells.length === 0) {
      // a bee that was printed on the form, or a line of text
      if (label !== '' && outside.length === 0) notices.push(...nothingIn(sheet, row, label));
      continue;
    }
    const bee = heading(row, header.bees, 'bee', cornerSaid);
    for (const { at, told } of cells) {
      if (told.merged) complaints.push(wrong(told, 'is one cell for several; split it, and give each its own number'));
      else if (bee === null) complaints.push(wrong(told, 'stands beside no bee; name the bee in front of it'));
      else counts.push({ bee, at, count: told });
    }
    const total =
      totalColumn === undefined ? null : heading(row, totalColumn, 'count', textAt(header.row, totalColumn));
    if (total !== null)
      complaints.push(
        ...sumProblem(
          total,
          cells.map(({ told }) => told),
        ),
      );
  }

  const nothing = { seenBefore: null, withPollen: null, caste: null, doubt: null };
  const raw = plants.flatMap((at): RawRow[] => {
    const plant = heading(header.row, at, 'plant', '');
    const own = flowers.get(at) ?? null;
    const seen = counts.filter((one) => one.at === at);
    if (plant !== null && own === null && flowers.size > 0 && seen.length === 0 && !/\d/.test(plant.text)) {
      const what = 'has neither open flowers nor bees, though other plants have; write how many, or take the plant out';
      complaints.push(wrong(plant, what));
    }
    const row = { ...nothing, plant, flowers: own };
    if (seen.length === 0) return [{ ...row, bee: null, count: null, line: header.row.line }];
    return seen.map(({ bee, count }) => ({ ...row, bee, count, line: count.where.line }));
  });
  return { rows: raw, complaints, notices, hasFlowers };
}

/** A sum that stands there is held against what it sums up, where all of it is plain numbers. */
function sumProblem(total: Told, parts: readonly Told[]): Complaint[] {
  const numbers = [total, ...parts].map(({ text }) => (/^\d+$/.test(text) ? Number(text) : NaN));
  const [said = NaN, ...counted] = numbers;
  const sum = counted.reduce((all, one) => all + one, 0);
  if (Number.isNaN(said) || Number.isNaN(sum) || said === sum) return [];
  return [wrong(total, `is no sum of its counts, which come to ${sum}; put right what is wrong`)];
}

function nothingIn(sheet: Sheet, row: SheetRow, label: string): string[] {
  const isShort = label.length <= LONGEST_NAME;
  if (isShort) return [];
  const of = sheet.name === null ? sheet.file : `${sheet.file}, sheet ${quoted(sheet.name)}`;
  return [`${of}: line ${row.line} has no counts and was passed over: ${quoted(label)}.`];
}

/** A bee's name is no longer; what is, may be a remark without its label. */
const LONGEST_NAME = 40;

/** The watches of a sheet of this kind. */
export function readGrids(sheet: Sheet, words: Words): Layout {
  const watches: RawWatch[] = [];
  const complaints: Complaint[] = [];
  const notices: string[] = [];
  for (const block of blocksOf(sheet, words)) {
    const labels = readLabels(sheet, block.labels, words);
    complaints.push(...labels.complaints);
    const line = block.labels[0]?.line ?? block.header?.row.line ?? 1;
    if (block.header === null) {
      complaints.push(
        ofSheet(sheet, 'no line of plants was found; put them above the counts, the bees in front', { line }),
      );
      continue;
    }
    const grid = readGrid(sheet, block.header, block.rows, words);
    complaints.push(...grid.complaints);
    notices.push(...grid.notices);
    const columns = new Set<SheetColumn>([...labels.columns, 'plant', 'bee', 'count']);
    if (grid.hasFlowers) columns.add('flowers');
    for (const column of missingColumns(columns)) {
      complaints.push(
        ofSheet(sheet, `no label “${words.sheets.headings[column][0]}” was found; add it with its value`, { line }),
      );
    }
    complaints.push(...toldTwice(labels.told));
    const { file, name } = sheet;
    watches.push({ file, sheet: name, line, told: labels.told, columns, foundBy: 'sheet', rows: grid.rows });
  }
  return { watches, complaints, notices };
}

/** The same label with another value. */
function toldTwice(told: ReadonlyMap<WatchColumn, readonly Told[]>): Complaint[] {
  return [...told].flatMap(([column, [first, ...others]]) =>
    column === 'remark' || first === undefined
      ? []
      : others
          .filter(({ text }) => text !== first.text)
          .map((other) =>
            wrong(other, `is another value than ${quoted(first.text)} in line ${first.where.line}; leave one out`),
          ),
  );
}
