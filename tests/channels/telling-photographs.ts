/**
 * Photographs whose files tell of Wrenna in every way that a file can: EXIF with place and thumbnail, XMP, IPTC, comments,
 * text, and bytes behind the picture's end. The picture: its upper left quarter red, the rest blue.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { crc32 } from 'node:zlib';
import sharp, { type Sharp } from 'sharp';

/** Stands in each of the files, in every part of it that is no picture. */
export const NAME = 'Wrenna of Marlgate';

const WIDTH = 96;
const HEIGHT = 64;
const RED = [200, 40, 40];
const BLUE = [60, 120, 200];

export const pixels = (): Buffer =>
  Buffer.from(
    Array.from({ length: WIDTH * HEIGHT }, (_, at) =>
      at % WIDTH < WIDTH / 2 && at < (WIDTH * HEIGHT) / 2 ? RED : BLUE,
    ).flat(),
  );

const picture = (): Sharp => sharp(pixels(), { raw: { width: WIDTH, height: HEIGHT, channels: 3 } });

const XMP = `<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
<rdf:Description rdf:about="" xmlns:photoshop="http://ns.adobe.com/photoshop/1.0/" photoshop:Credit="${NAME}"/>
</rdf:RDF></x:xmpmeta>`;

const told = (): Sharp =>
  picture()
    .withExif({
      IFD0: { Artist: NAME, Software: 'camera 9' },
      IFD2: { DateTimeOriginal: '2026:05:06 14:12:30', UserComment: NAME },
      IFD3: {
        GPSLatitudeRef: 'N',
        GPSLatitude: '43/1 30/1 44/1',
        GPSLongitudeRef: 'W',
        GPSLongitude: '90/1 38/1 35/1',
      },
    })
    .withXmp(XMP);

/** A segment of a JPEG file (ITU-T T.81, B.1.1.4): marker, length, body. */
function segment(marker: number, body: Buffer): Buffer {
  const head = Buffer.from([0xff, marker, 0, 0]);
  head.writeUInt16BE(body.length + 2, 2);
  return Buffer.concat([head, body]);
}

/** By-line (2:80) as IPTC-IIM 4.2 has it, in the resource 0x0404 that Photoshop's segment keeps it in. */
function iptc(): Buffer {
  const byLine = Buffer.concat([Buffer.from([0x1c, 2, 80, 0, NAME.length]), Buffer.from(NAME)]);
  const size = Buffer.alloc(4);
  size.writeUInt32BE(byLine.length);
  const padded = byLine.length % 2 === 0 ? byLine : Buffer.concat([byLine, Buffer.alloc(1)]);
  return Buffer.concat([Buffer.from('Photoshop 3.0\x008BIM\x04\x04\0\0', 'latin1'), size, padded]);
}

/** As its own segment after EXIF 2.32, 4.5.8 puts it: directory 1 points at a small JPEG, whose comment tells too. */
async function thumbnail(): Promise<Buffer> {
  const plain = await picture().resize(24, 16).jpeg().toBuffer();
  const small = Buffer.concat([plain.subarray(0, 2), segment(0xfe, Buffer.from(NAME)), plain.subarray(2)]);
  const tiff = Buffer.alloc(8 + 6 + 2 + 24 + 4);
  tiff.write('II*\0\x08\0\0\0', 'latin1');
  tiff.writeUInt32LE(14, 10); // directory 0 has no entry, the next is at 14
  tiff.writeUInt16LE(2, 14);
  for (const [at, tag, value] of [
    [16, 0x201, tiff.length],
    [28, 0x202, small.length],
  ] as const) {
    tiff.writeUInt16LE(tag, at);
    tiff.writeUInt16LE(4, at + 2);
    tiff.writeUInt32LE(1, at + 4);
    tiff.writeUInt32LE(value, at + 8);
  }
  return segment(0xe1, Buffer.concat([Buffer.from('Exif\0\0', 'latin1'), tiff, small]));
}

/** Everything before the picture: after the first two bytes, which begin the file. */
const withSegments = (jpeg: Buffer, segments: readonly Buffer[]): Buffer =>
  Buffer.concat([jpeg.subarray(0, 2), ...segments, jpeg.subarray(2), Buffer.from(`${NAME}, behind the end`)]);

export async function jpeg(): Promise<Buffer> {
  return withSegments(await told().jpeg().toBuffer(), [segment(0xed, iptc()), segment(0xfe, Buffer.from(NAME))]);
}

/** Has no other EXIF: that of the thumbnail would stand behind it. */
export async function jpegWithThumbnail(): Promise<Buffer> {
  return withSegments(await picture().jpeg().toBuffer(), [await thumbnail()]);
}

/** Lies on its side, and says so. */
export const sidewaysJpeg = (): Promise<Buffer> =>
  picture()
    .withExif({ IFD0: { Artist: NAME } })
    .withMetadata({ orientation: 6 })
    .jpeg()
    .toBuffer();

/** A tEXt chunk (PNG specification, 11.3.3.2) right after the header, which ends at byte 33. */
export async function png(): Promise<Buffer> {
  const plain = await told().png().toBuffer();
  const body = Buffer.from(`tEXtAuthor\0${NAME}`, 'latin1');
  const length = Buffer.alloc(4);
  length.writeUInt32BE(body.length - 4);
  const sum = Buffer.alloc(4);
  sum.writeUInt32BE(crc32(body));
  return Buffer.concat([plain.subarray(0, 33), length, body, sum, plain.subarray(33), Buffer.from(NAME)]);
}

export const webp = (): Promise<Buffer> => told().webp({ quality: 95 }).toBuffer();

/** Made by heif-enc 1.15.1 (with a thumbnail) and ExifTool 12.57: no library that we use writes HEIC. */
export const heic = (): Buffer => readFileSync(join(import.meta.dirname, 'telling.heic'));
