/** Takes a `.csv` or `.xlsx` file apart into sheets of cells, or says in one sentence why it cannot. */
import { isUtf8 } from 'node:buffer';
import { readFileSync, statSync } from 'node:fs';
import { basename, extname } from 'node:path';
import { csvSheet, sayComplaint, type Sheet } from '../sheets/index.js';
import { CommandError } from './command.js';
import { refusalOf } from './unpacked.js';
import { sheetsOf } from './workbook.js';

/** A season of a thousand observers is a tenth of this. */
const MOST_BYTES = 20_000_000;
const MOST_ROWS = 50_000;

const KINDS = ['.csv', '.xlsx'];
export const isSheetFile = (path: string): boolean => KINDS.includes(extname(path).toLowerCase());

export interface SheetFile {
  readonly file: string;
  readonly sheets: readonly Sheet[];
  readonly notices: readonly string[];
}

/** Old workbooks and those under a password are files of another kind. [MS-CFB], section 2.2: the first bytes of one. */
const COMPOUND_FILE = Buffer.from('d0cf11e0a1b11ae1', 'hex');
const UTF16 = [Buffer.from('fffe', 'hex'), Buffer.from('feff', 'hex')];

function bytesOf(path: string): Buffer {
  try {
    const { size } = statSync(path);
    if (size > MOST_BYTES) {
      throw new CommandError(
        `${path} has ${Math.ceil(size / 1e6)} MB; the most is ${MOST_BYTES / 1e6} MB. Split it, for example by month.`,
      );
    }
    return readFileSync(path);
  } catch (cause) {
    if (cause instanceof CommandError) throw cause;
    throw new CommandError(`${path} cannot be read: ${(cause as Error).message}.`, { cause });
  }
}

/** UTF-8 only: an ö of another encoding would be stored as another letter. */
function textOf(bytes: Buffer, path: string): string {
  if (UTF16.some((mark) => bytes.subarray(0, mark.length).equals(mark))) {
    throw new CommandError(`${path} is UTF-16; save it as “CSV UTF-8”, or as .xlsx.`);
  }
  if (isUtf8(bytes) && !bytes.includes(0)) return bytes.toString('utf8');
  // Latin-1 has a letter for every byte, so that the lines can be told apart and taken back
  const lines = bytes.toString('latin1').split('\n');
  const first = lines.findIndex((line) => line.includes('\0') || !isUtf8(Buffer.from(line, 'latin1')));
  throw new CommandError(`${path}, line ${first + 1}, is not UTF-8 text; save the file as “CSV UTF-8”, or as .xlsx.`);
}

async function readWorkbook(bytes: Buffer, path: string): Promise<SheetFile> {
  if (bytes.subarray(0, COMPOUND_FILE.length).equals(COMPOUND_FILE)) {
    throw new CommandError(
      `${path} is under a password, or of an old format; save it as .xlsx without one, or as .csv.`,
    );
  }
  const refusal = refusalOf(bytes);
  if (refusal === 'too-large') {
    throw new CommandError(
      `${path} unpacks to more than can be read. Copy the watches alone into a new file, and split it if it is a long one.`,
    );
  }
  if (refusal !== null)
    throw new CommandError(`${path} is no .xlsx workbook, whatever its name says; save it again as one, or as .csv.`);
  const file = basename(path);
  try {
    const { sheets, hidden } = await sheetsOf(bytes, file);
    return { file, sheets, notices: hidden.map((name) => `${file}: sheet “${name}” is hidden and was passed over.`) };
  } catch (cause) {
    throw new CommandError(
      `${path} cannot be read as a workbook (${(cause as Error).message}); save it again, or as .csv.`,
      { cause },
    );
  }
}

/** Throws `CommandError`. */
export async function readSheetFile(path: string): Promise<SheetFile> {
  const bytes = bytesOf(path);
  const file = basename(path);
  let read: SheetFile;
  if (extname(path).toLowerCase() === '.xlsx') read = await readWorkbook(bytes, path);
  else {
    const sheet = csvSheet(file, textOf(bytes, path));
    if (!('rows' in sheet)) throw new CommandError(sayComplaint(sheet));
    read = { file, sheets: [sheet], notices: [] };
  }
  const rows = read.sheets.reduce((sum, sheet) => sum + sheet.rows.length, 0);
  if (rows > MOST_ROWS)
    throw new CommandError(`${path} has ${rows} rows; the most is ${MOST_ROWS}. Split it, for example by month.`);
  return read;
}
