/** Reads a list of names (`shared/names/*.csv`); lines that begin with `#` say what the columns are. */
import { parse } from 'csv-parse/sync';
import type { z } from 'zod';
import { SettingsError } from './errors.js';
import { fileName, readText } from './yaml-file.js';

export function readNames<Row extends z.ZodType>(path: string, row: Row): z.infer<Row>[] {
  let records: { record: Record<string, string>; info: { lines: number } }[];
  try {
    records = parse(readText(path), { columns: true, comment: '#', comment_no_infix: true, info: true, trim: true });
  } catch (cause) {
    if (cause instanceof SettingsError) throw cause;
    throw new SettingsError(fileName(path), null, '', `is not CSV: ${(cause as Error).message}`, { cause });
  }
  return records.map(({ record, info }) => {
    const result = row.safeParse(record);
    if (result.success) return result.data;
    const issue = result.error.issues[0]!;
    const column = issue.path.map(String)[0] ?? '';
    throw new SettingsError(
      fileName(path),
      info.lines,
      column,
      `${issue.message} (it is ${JSON.stringify(record[column] ?? null)})`,
    );
  });
}
