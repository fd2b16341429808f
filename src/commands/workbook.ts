/** An `.xlsx` workbook as sheets of cells. */
import type { Cell as ExcelCell, CellValue, Workbook } from 'exceljs';
import { EMPTY, type Cell, type Sheet } from '../sheets/index.js';

/** What a workbook has besides its cells; some of it makes the library slow, or stops it. */
const IGNORED = [
  'dataValidations',
  'conditionalFormatting',
  'hyperlinks',
  'drawing',
  'legacyDrawing',
  'picture',
  'tableParts',
  'sheetViews',
  'sheetProtection',
  'autoFilter',
  'pageSetup',
  'printOptions',
  'headerFooter',
  'rowBreaks',
  'extLst',
];

const NO_RESULT =
  'is a formula whose result is not in the file; open it in a spreadsheet program and save it again, or write the value';

/** Serial days begin here; a time of day alone is on the first of them. 1904 is how old Macintosh files count. */
const FIRST_DAYS = ['1899-12-30', '1904-01-01'];
const HALF_A_SECOND = 500;

/** A date cell. The library gives it as if its clock were UTC. */
function momentOf(date: Date): Cell {
  if (Number.isNaN(date.getTime())) return { kind: 'broken', text: '', what: 'is no date that exists' };
  // a time is a share of a day, and falls a thousandth of a second beside its minute
  const said = new Date(date.getTime() + HALF_A_SECOND).toISOString();
  const [day, time] = [said.slice(0, 10), said.slice(11, 16)];
  if (FIRST_DAYS.includes(day)) return { kind: 'moment', date: null, time };
  return { kind: 'moment', date: day, time: time === '00:00' ? null : time };
}

function cellOf(value: CellValue | undefined, numberFormat: string): Cell {
  if (value === null || value === undefined) return EMPTY;
  if (value instanceof Date) return momentOf(value);
  if (typeof value === 'number') return { kind: 'number', number: value, percent: numberFormat.includes('%') };
  if (typeof value === 'boolean') return { kind: 'truth', truth: value };
  if (typeof value === 'string') return value.trim() === '' ? EMPTY : { kind: 'words', text: value.trim() };
  if ('error' in value) {
    return { kind: 'broken', text: value.error, what: 'is an error of the spreadsheet; write the value' };
  }
  if ('richText' in value) return cellOf(value.richText.map(({ text }) => text).join(''), numberFormat);
  if ('hyperlink' in value) return cellOf(typeof value.text === 'string' ? value.text : null, numberFormat);
  const formula = 'formula' in value ? value.formula : value.sharedFormula;
  if (value.result === undefined) return { kind: 'broken', text: `=${formula}`, what: NO_RESULT };
  return cellOf(value.result, numberFormat);
}

/** One cell of the sheet. Of cells merged side by side the first alone has the value, of those below one another all. */
function readCell(cell: ExcelCell): { cell: Cell; merged: boolean } {
  const isPart = cell.isMerged && cell.master.address !== cell.address;
  if (!isPart) return { cell: cellOf(cell.value, cell.numFmt ?? ''), merged: false };
  const { master } = cell;
  // columns are numbers here, though the types of the library say letters
  if (String(master.col) !== String(cell.col)) return { cell: EMPTY, merged: true };
  return { cell: cellOf(master.value, master.numFmt ?? ''), merged: true };
}

/** A workbook that was looked into before (`refusalOf`). Throws what the library throws. Hidden sheets are named apart. */
export async function sheetsOf(bytes: Buffer, file: string): Promise<{ sheets: Sheet[]; hidden: string[] }> {
  // half a second to load, and few commands need it
  const { default: Excel } = await import('exceljs');
  const workbook: Workbook = new Excel.Workbook();
  // the types name another Buffer than Node's
  await workbook.xlsx.load(bytes as never, { ignoreNodes: IGNORED });
  const isShown = ({ state }: { state: string }): boolean => state === 'visible';
  const hidden = workbook.worksheets.filter((sheet) => !isShown(sheet)).map(({ name }) => name);
  const sheets = workbook.worksheets.filter(isShown).map((sheet): Sheet => {
    const rows: Sheet['rows'][number][] = [];
    sheet.eachRow((row, line) => {
      const cells: Cell[] = [];
      const merged = new Set<number>();
      row.eachCell((cell, column) => {
        const read = readCell(cell);
        while (cells.length < column - 1) cells.push(EMPTY);
        cells.push(read.cell);
        if (read.merged) merged.add(column - 1);
      });
      // blank rows part what stands above from what stands below
      const last = rows.at(-1);
      if (last !== undefined && last.line < line - 1) rows.push({ line: line - 1, cells: [], merged: new Set() });
      rows.push({ line, cells, merged });
    });
    return { file, name: sheet.name, rows };
  });
  return { sheets, hidden };
}
