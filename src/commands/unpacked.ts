/**
 * Looks into a workbook before it is read: how large its parts are once unpacked, and how many cells they name. The
 * library reads whatever it is given, so a small file that unpacks to gigabytes, or merges a million columns, would
 * take all memory. No package that unpacks with a limit is among ours, and Node's own zlib has one.
 */
import { inflateRawSync } from 'node:zlib';

/** Ordinary files of a season stay under a twentieth of this; all of it takes the library about a gigabyte. */
const MOST_UNPACKED = 40_000_000;
const MOST_CELLS = 600_000;
/** Cells of merged ranges and of names for ranges: each is made one by one. */
const MOST_NAMED = 200_000;

// PKWARE's APPNOTE, sections 4.3.7, 4.3.12 and 4.3.16: signatures, and where sizes and names stand
const END = 0x06054b50;
const END_BYTES = 22;
const ENTRY = 0x02014b50;
const ENTRY_BYTES = 46;
const LOCAL_BYTES = 30;
const STORED = 0;
const DEFLATED = 8;

export type Refusal = 'no-workbook' | 'too-large';

interface Part {
  readonly name: string;
  readonly method: number;
  readonly packed: Buffer;
}

/** The parts of a zip file; null where it is none. */
function partsOf(bytes: Buffer): Part[] | null {
  const end = bytes.lastIndexOf(Buffer.from('PK\u0005\u0006', 'latin1'));
  if (end < 0 || end + END_BYTES > bytes.length || bytes.readUInt32LE(end) !== END) return null;
  const count = bytes.readUInt16LE(end + 10);
  let at = bytes.readUInt32LE(end + 16);
  const parts: Part[] = [];
  for (let index = 0; index < count; index++) {
    if (at + ENTRY_BYTES > bytes.length || bytes.readUInt32LE(at) !== ENTRY) return null;
    const [method, size, local] = [
      bytes.readUInt16LE(at + 10),
      bytes.readUInt32LE(at + 20),
      bytes.readUInt32LE(at + 42),
    ];
    const nameBytes = bytes.readUInt16LE(at + 28);
    const name = bytes.toString('utf8', at + ENTRY_BYTES, at + ENTRY_BYTES + nameBytes);
    if (local + LOCAL_BYTES > bytes.length) return null;
    const from = local + LOCAL_BYTES + bytes.readUInt16LE(local + 26) + bytes.readUInt16LE(local + 28);
    parts.push({ name, method, packed: bytes.subarray(from, from + size) });
    at += ENTRY_BYTES + nameBytes + bytes.readUInt16LE(at + 30) + bytes.readUInt16LE(at + 32);
  }
  return parts;
}

const columnOf = (letters: string): number =>
  [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 'A'.charCodeAt(0) + 1, 0);

const RANGE = /\$?(?<left>[A-Z]{1,3})\$?(?<top>\d{1,7}):\$?(?<right>[A-Z]{1,3})\$?(?<bottom>\d{1,7})/g;

/** How many cells the ranges of a text cover. */
const cellsIn = (text: string): number =>
  [...text.matchAll(RANGE)].reduce((sum, { groups }) => {
    const { left = 'A', right = 'A', top, bottom } = groups ?? {};
    return sum + (Math.abs(columnOf(right) - columnOf(left)) + 1) * (Math.abs(Number(bottom) - Number(top)) + 1);
  }, 0);

const timesIn = (text: string, part: RegExp): number => [...text.matchAll(part)].length;

/** Null for a workbook that can be read. */
export function refusalOf(bytes: Buffer): Refusal | null {
  const parts = partsOf(bytes);
  if (parts === null || !parts.some(({ name }) => name === 'xl/workbook.xml')) return 'no-workbook';
  let [room, cells, named] = [MOST_UNPACKED, 0, 0];
  for (const { name, method, packed } of parts) {
    if (method !== STORED && method !== DEFLATED) return 'no-workbook';
    let text: Buffer;
    try {
      text = method === STORED ? packed : inflateRawSync(packed, { maxOutputLength: Math.max(1, room) });
    } catch (cause) {
      return (cause as NodeJS.ErrnoException).code === 'ERR_BUFFER_TOO_LARGE' ? 'too-large' : 'no-workbook';
    }
    room -= text.length;
    if (room < 0) return 'too-large';
    if (!name.endsWith('.xml')) continue;
    const xml = text.toString('latin1');
    cells += timesIn(xml, /<(?:\w{1,20}:)?c[ >]/g);
    for (const [merged] of xml.matchAll(/<(?:\w{1,20}:)?(?:mergeCell|definedName)\b[^<>]*>[^<]*/g))
      named += cellsIn(merged);
    if (cells > MOST_CELLS || named > MOST_NAMED) return 'too-large';
  }
  return null;
}
