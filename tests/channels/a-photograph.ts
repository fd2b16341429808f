/** A JPEG file that is nothing but its EXIF data, by the EXIF and TIFF specifications; enough for what reads those. */

/** An entry of a directory: ASCII, one long number, or fractions (TIFF 6.0, section 2, types 2, 4 and 5). */
interface Entry {
  readonly tag: number;
  readonly type: 2 | 4 | 5;
  readonly value: Buffer;
}

const COMPONENT_BYTES = { 2: 1, 4: 4, 5: 8 } as const;

const ascii = (tag: number, text: string): Entry => ({ tag, type: 2, value: Buffer.from(`${text}\0`, 'latin1') });
const long = (tag: number, number: number): Entry => {
  const value = Buffer.alloc(4);
  value.writeUInt32LE(number);
  return { tag, type: 4, value };
};
const fractions = (tag: number, numbers: readonly number[]): Entry => {
  const value = Buffer.alloc(numbers.length * 8);
  numbers.forEach((number, at) => {
    value.writeUInt32LE(Math.round(number * 1_000_000), at * 8);
    value.writeUInt32LE(1_000_000, at * 8 + 4);
  });
  return { tag, type: 5, value };
};

/** A directory that begins at `start`, with its longer values behind it. Values of four bytes stand in their entries. */
function directory(start: number, entries: readonly Entry[]): Buffer {
  const head = Buffer.alloc(2 + entries.length * 12 + 4);
  const values: Buffer[] = [];
  let valueAt = start + head.length;
  head.writeUInt16LE(entries.length);
  entries.forEach(({ tag, type, value }, index) => {
    const at = 2 + index * 12;
    head.writeUInt16LE(tag, at);
    head.writeUInt16LE(type, at + 2);
    head.writeUInt32LE(value.length / COMPONENT_BYTES[type], at + 4);
    if (value.length <= 4) value.copy(head, at + 8);
    else {
      head.writeUInt32LE(valueAt, at + 8);
      values.push(value);
      valueAt += value.length;
    }
  });
  return Buffer.concat([head, ...values]);
}

/** Degrees, minutes and seconds. */
const sexagesimal = (degrees: number): number[] => {
  const whole = Math.floor(degrees);
  const minutes = Math.floor((degrees - whole) * 60);
  return [whole, minutes, (degrees - whole) * 3600 - minutes * 60];
};

/** By the EXIF 2.32 specification, section 4.6.6 (GPS). */
function gpsEntries({ latitude, longitude, errorMetres }: TakenAt): Entry[] {
  return [
    ascii(0x01, latitude < 0 ? 'S' : 'N'),
    fractions(0x02, sexagesimal(Math.abs(latitude))),
    ascii(0x03, longitude < 0 ? 'W' : 'E'),
    fractions(0x04, sexagesimal(Math.abs(longitude))),
    ...(errorMetres === undefined ? [] : [fractions(0x1f, [errorMetres])]),
  ];
}

interface TakenAt {
  readonly latitude: number;
  readonly longitude: number;
  readonly errorMetres?: number;
}

/** `taken` like "2026:04:22 11:36:12"; `offset` like "-05:00". */
export function photograph(told: { readonly taken?: string; readonly offset?: string; readonly at?: TakenAt }): Buffer {
  const exif = [
    ...(told.taken === undefined ? [] : [ascii(0x9003, told.taken)]),
    ...(told.offset === undefined ? [] : [ascii(0x9011, told.offset)]),
  ];
  const pointers = told.at === undefined ? 1 : 2;
  const exifAt = 8 + 2 + pointers * 12 + 4;
  const exifDirectory = directory(exifAt, exif);
  const gpsAt = exifAt + exifDirectory.length;
  const header = Buffer.from('II*\0\x08\0\0\0', 'latin1');
  const tiff = Buffer.concat([
    header,
    directory(8, [long(0x8769, exifAt), ...(told.at === undefined ? [] : [long(0x8825, gpsAt)])]),
    exifDirectory,
    ...(told.at === undefined ? [] : [directory(gpsAt, gpsEntries(told.at))]),
  ]);
  const body = Buffer.concat([Buffer.from('Exif\0\0', 'latin1'), tiff]);
  const segment = Buffer.from([0xff, 0xe1, (body.length + 2) >> 8, (body.length + 2) & 0xff]);
  return Buffer.concat([Buffer.from([0xff, 0xd8]), segment, body, Buffer.from([0xff, 0xd9])]);
}
