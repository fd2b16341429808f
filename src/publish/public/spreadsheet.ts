/**
 * The public dataset as a spreadsheet: each table a sheet, and the season's bees by plants. Written row by row, so that
 * a long season needs no more memory than its rows. Words stay words: nothing in it is a formula.
 */
import { PassThrough } from 'node:stream';
import { buffer } from 'node:stream/consumers';
import type { PublicTable } from './tables.js';
import { UNNAMED_PLANT, type PublicWatch } from './watch.js';

/** Visits by bee and plant; workers are not among them, and a plant on no list stands in one column. */
function beesByPlants(watches: readonly PublicWatch[]): { columns: string[]; rows: (string | number)[][] } {
  const visits = new Map<string, Map<string, number>>();
  const plants = new Set<string>();
  for (const watch of watches) {
    const named = new Map(watch.plants.map(({ plant, name }) => [plant, name ?? UNNAMED_PLANT]));
    for (const name of named.values()) plants.add(name);
    for (const { bee, plant, visits: count, caste } of watch.queens) {
      if (caste === 'worker') continue;
      const row = visits.get(bee) ?? new Map<string, number>();
      const on = named.get(plant) ?? UNNAMED_PLANT;
      row.set(on, (row.get(on) ?? 0) + count);
      visits.set(bee, row);
    }
  }
  const columns = [...plants].sort();
  const rows = [...visits.keys()]
    .sort()
    .map((bee) => [bee, ...columns.map((plant) => visits.get(bee)?.get(plant) ?? 0)]);
  return { columns: ['bee', ...columns], rows };
}

/** The file's bytes. `published` is a local day and stands as the day of its making. */
export async function spreadsheet(
  tables: readonly PublicTable[],
  watches: readonly PublicWatch[],
  published: string,
): Promise<Buffer> {
  // half a second to load, and no other command needs it
  const { default: Excel } = await import('exceljs');
  const stream = new PassThrough();
  const bytes = buffer(stream);
  const workbook = new Excel.stream.xlsx.WorkbookWriter({ stream, useStyles: true, useSharedStrings: false });
  workbook.created = new Date(`${published}T00:00:00Z`);
  const sheets = [...tables, { name: 'bees by plants', ...beesByPlants(watches) }];
  for (const { name, columns, rows } of sheets) {
    const sheet = workbook.addWorksheet(name, { views: [{ state: 'frozen', ySplit: 1, xSplit: 1 }] });
    const header = sheet.addRow(columns);
    header.font = { bold: true };
    header.commit();
    for (const row of rows) sheet.addRow(row).commit();
    sheet.commit();
  }
  await workbook.commit();
  return bytes;
}
