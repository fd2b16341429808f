/** A photograph without its metadata: nothing of the file is left but the picture, and the picture is the same. */
import exifr from 'exifr';
import { createHash } from 'node:crypto';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { afterAll, expect, test } from 'vitest';
import { bareCopy, barePhotograph } from '../../src/channels/bare-photograph.js';
import { heic, jpeg, jpegWithThumbnail, NAME, pixels, png, sidewaysJpeg, webp } from './telling-photographs.js';

const folder = mkdtempSync(join(tmpdir(), 'queenpost-bare-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** Every kind that exifr reads; it reads no WebP. What the picture itself needs (its size) is no metadata. */
async function told(bytes: Buffer): Promise<unknown> {
  const all = { tiff: true, exif: true, gps: true, xmp: true, iptc: true, icc: true, jfif: false, ihdr: false };
  return (await exifr.parse(bytes, { ...all, ifd1: true, mergeOutput: false })) as unknown;
}

const decoded = (bytes: Buffer): Promise<Buffer> => sharp(bytes).removeAlpha().raw().toBuffer();

/** Of each colour of each pixel, out of 255. */
function meanDifference(one: Buffer, other: Buffer): number {
  expect(one.length).toBe(other.length);
  return one.reduce((sum, value, at) => sum + Math.abs(value - other[at]!), 0) / one.length;
}

const table: [what: string, make: () => Buffer | Promise<Buffer>, telling: string, type: string, most: number][] = [
  ['JPEG', jpeg, 'exif gps ifd0 iptc photoshop', 'image/jpeg', 0.5], // XMP under the name of its vocabulary
  ['JPEG with a thumbnail', jpegWithThumbnail, 'ifd1', 'image/jpeg', 0.5],
  ['PNG', png, 'exif gps ifd0', 'image/png', 0],
  ['HEIC', heic, 'exif gps ifd0', 'image/jpeg', 3], // against what it was made of, with a quality of 60
];
test.each(table)('%s', async (what, make, telling, type, most) => {
  const bytes = await make();
  // the check would find it
  expect(bytes.includes(NAME)).toBe(true);
  expect(Object.keys((await told(bytes)) as object)).toEqual(expect.arrayContaining(telling.split(' ')));

  const bare = await barePhotograph(bytes);
  expect(bare?.type).toBe(type);
  expect(bare!.bytes.includes('Wrenna')).toBe(false);
  expect(bare!.bytes.toString('latin1')).not.toMatch(/Exif|adobe|photoshop|8BIM|tEXt|camera 9|2026:05/i);
  expect(await told(bare!.bytes)).toBeUndefined();
  expect(await exifr.thumbnail(bare!.bytes)).toBeUndefined();
  const original = what === 'HEIC' ? pixels() : await decoded(bytes); // nothing else here reads HEIC
  expect(meanDifference(await decoded(bare!.bytes), original)).toBeLessThanOrEqual(most);
});

test('WebP, which another reader looks through', async () => {
  const bytes = await webp();
  const before = await sharp(bytes).metadata();
  expect(before.exif?.includes(NAME)).toBe(true);
  expect(before.xmp?.includes(NAME)).toBe(true);
  const bare = await barePhotograph(bytes);
  const after = await sharp(bare!.bytes).metadata();
  expect(after).toMatchObject({ format: 'webp', width: 96, height: 64 });
  expect([after.exif, after.xmp, after.iptc, after.icc, after.comments]).toEqual(Array(5).fill(undefined));
  // the chunks of the container (RFC 9649, section 2.7): the picture's alone
  expect(bare!.bytes.toString('latin1')).not.toMatch(/Wrenna|EXIF|XMP |ICCP/);
  expect(meanDifference(await decoded(bare!.bytes), await decoded(bytes))).toBeLessThanOrEqual(1);
});

test('one that lies on its side stands upright, since what said so is gone', async () => {
  const bare = await barePhotograph(await sidewaysJpeg());
  const { data, info } = await sharp(bare!.bytes).raw().toBuffer({ resolveWithObject: true });
  expect([info.width, info.height]).toEqual([64, 96]);
  const redAt = (x: number, y: number): number => data[(y * info.width + x) * 3]!;
  // EXIF 2.32, 4.6.4: with 6 the first row is the right side, so the red quarter comes up right
  expect(redAt(60, 4)).toBeGreaterThan(180);
  expect(redAt(4, 4)).toBeLessThan(90);
});

test('none is made of what cannot be decoded', async () => {
  const whole = [await jpeg(), await png(), await webp(), heic()];
  for (const bytes of whole) {
    expect(await barePhotograph(bytes.subarray(0, 30)), 'its beginning').toBeNull();
    expect(await barePhotograph(bytes.subarray(0, bytes.length >> 1)), 'its first half').toBeNull();
  }
  expect(await barePhotograph(Buffer.from(`<html>${NAME}`))).toBeNull();
  expect(await barePhotograph(Buffer.alloc(0))).toBeNull();
});

test('a copy stands beside the photograph, by its own hash; the same again, whoever sent it', async () => {
  const bytes = await jpeg();
  const sha256 = createHash('sha256').update(bytes).digest('hex');
  writeFileSync(join(folder, sha256), bytes);
  const copy = await bareCopy(folder, sha256);
  expect(copy?.sha256).not.toBe(sha256);
  const kept = readFileSync(join(folder, copy!.sha256));
  expect(createHash('sha256').update(kept).digest('hex')).toBe(copy!.sha256);
  expect(await bareCopy(folder, sha256)).toEqual(copy);
  expect(readdirSync(folder).sort()).toEqual([sha256, copy!.sha256].sort());
  expect(await bareCopy(folder, 'f'.repeat(64)), 'a file that is gone').toBeNull();
});
