/** Keeps photographs in the data folder, under the hash of their bytes. */
import { createHash } from 'node:crypto';
import { existsSync } from 'node:fs';
import { mkdir, open, rename } from 'node:fs/promises';
import { join } from 'node:path';
import exifr from 'exifr';
import { Temporal } from 'temporal-polyfill';
import type { Content } from '../../shared/message.js';

/** Types by the bytes a file begins with; its name proves nothing. From the formats' specifications, from memory. */
const BEGINNINGS: readonly (readonly [type: string, begins: (bytes: Buffer) => boolean])[] = [
  ['image/jpeg', (bytes) => bytes[0] === 0xff && bytes[1] === 0xd8 && bytes[2] === 0xff],
  ['image/png', (bytes) => bytes.subarray(0, 8).equals(Buffer.from('\x89PNG\r\n\x1a\n', 'latin1'))],
  ['image/webp', (bytes) => bytes.toString('latin1', 0, 4) === 'RIFF' && bytes.toString('latin1', 8, 12) === 'WEBP'],
  [
    'image/heic',
    (bytes) =>
      bytes.toString('latin1', 4, 8) === 'ftyp' && /^(heic|heix|mif1|heif)$/.test(bytes.toString('latin1', 8, 12)),
  ],
];

/** Null where the bytes begin as no photograph that we take. */
export const typeOfPicture = (bytes: Buffer): string | null =>
  BEGINNINGS.find(([, begins]) => begins(bytes))?.[0] ?? null;

/** A camera's clock: "2026:05:06 14:12:30". */
const CAMERA_TIME = /^(?<year>\d{4}):(?<month>\d\d):(?<day>\d\d) (?<time>\d\d:\d\d:\d\d)/;

/** What is read of a photograph's data: when it was taken, and where. */
const WANTED = [
  'DateTimeOriginal',
  'OffsetTimeOriginal',
  'GPSLatitude',
  'GPSLatitudeRef',
  'GPSLongitude',
  'GPSLongitudeRef',
  'GPSHPositioningError',
];

/** Null where it holds none that can be read: the photograph is welcome without. */
async function exifOf(bytes: Buffer): Promise<Record<string, unknown>> {
  try {
    const exif: unknown = await exifr.parse(bytes, { gps: true, pick: WANTED, reviveValues: false });
    return typeof exif === 'object' && exif !== null ? (exif as Record<string, unknown>) : {};
  } catch {
    return {};
  }
}

/** When it was taken, a UTC instant; null where no camera's clock says. One that gives no offset is taken to run on the survey's time. */
function takenAt(exif: Record<string, unknown>, timeZone: string): string | null {
  const { DateTimeOriginal: clock, OffsetTimeOriginal: offset } = exif;
  const read = CAMERA_TIME.exec(String(clock))?.groups;
  if (read === undefined) return null;
  const zone = /^[+-]\d\d:\d\d$/.test(String(offset)) ? String(offset) : timeZone;
  try {
    const local = Temporal.PlainDateTime.from(`${read['year']}-${read['month']}-${read['day']}T${read['time']}`);
    return local.toZonedDateTime(zone).toInstant().toString();
  } catch {
    return null; // a clock that was never set
  }
}

/** Where it was taken, with how far that may be off where the camera says so; null where it does not tell, or tells 0, 0. */
function takenWhere({ latitude, longitude, GPSHPositioningError: error }: Record<string, unknown>) {
  if (typeof latitude !== 'number' || typeof longitude !== 'number') return null;
  const isOnEarth = Math.abs(latitude) <= 90 && Math.abs(longitude) <= 180; // false for NaN
  if (!isOnEarth || (latitude === 0 && longitude === 0)) return null;
  return { latitude, longitude, uncertaintyMetres: typeof error === 'number' && error > 0 ? error : null };
}

/**
 * Keeps a file under the hash of its bytes, and gives it. Nobody else may look at it; it is whole or not there at all, and
 * on the disk before anything names it.
 */
export async function keepFile(folder: string, bytes: Buffer): Promise<string> {
  const sha256 = createHash('sha256').update(bytes).digest('hex');
  const path = join(folder, sha256);
  if (existsSync(path)) return sha256;
  await mkdir(folder, { recursive: true, mode: 0o700 });
  const unfinished = await open(`${path}.part`, 'w', 0o600);
  try {
    await unfinished.writeFile(bytes);
    await unfinished.sync();
  } finally {
    await unfinished.close();
  }
  await rename(`${path}.part`, path);
  return sha256;
}

/** Keeps a photograph and gives its content for a message; null where the bytes are none that we take. */
export async function keepPhotograph(
  bytes: Buffer,
  { folder, timeZone }: { readonly folder: string; readonly timeZone: string },
): Promise<Content | null> {
  const type = typeOfPicture(bytes);
  if (type === null) return null;
  const sha256 = await keepFile(folder, bytes);
  const exif = await exifOf(bytes);
  const place = takenWhere(exif);
  return { kind: 'photo', sha256, type, takenAt: takenAt(exif, timeZone), ...(place === null ? {} : { place }) };
}
