/** A JPEG file that is nothing but its EXIF data, by the EXIF and TIFF specifications; enough for what reads those. */

/** ASCII entries of an EXIF directory, in order of their tags. */
const TAGS = { taken: 0x9003, offset: 0x9011 } as const;

/** `taken` like "2026:04:22 11:36:12"; `offset` like "-05:00". */
export function photograph(told: { readonly taken?: string; readonly offset?: string }): Buffer {
  const entries = (['taken', 'offset'] as const).flatMap((name) => {
    const text = told[name];
    return text === undefined ? [] : [{ tag: TAGS[name], text: Buffer.from(`${text}\0`, 'latin1') }];
  });
  const exifAt = 26;
  let textAt = exifAt + 2 + entries.length * 12 + 4;
  const tiff = Buffer.alloc(textAt);
  tiff.write('II*\0', 'latin1');
  tiff.writeUInt32LE(8, 4);
  const entry = (at: number, tag: number, type: number, count: number, value: number): void => {
    tiff.writeUInt16LE(tag, at);
    tiff.writeUInt16LE(type, at + 2);
    tiff.writeUInt32LE(count, at + 4);
    tiff.writeUInt32LE(value, at + 8);
  };
  tiff.writeUInt16LE(1, 8);
  entry(10, 0x8769, 4, 1, exifAt);
  tiff.writeUInt16LE(entries.length, exifAt);
  entries.forEach(({ tag, text }, index) => {
    entry(exifAt + 2 + index * 12, tag, 2, text.length, textAt);
    textAt += text.length;
  });
  const exif = Buffer.concat([Buffer.from('Exif\0\0', 'latin1'), tiff, ...entries.map(({ text }) => text)]);
  const segment = Buffer.from([0xff, 0xe1, (exif.length + 2) >> 8, (exif.length + 2) & 0xff]);
  return Buffer.concat([Buffer.from([0xff, 0xd8]), segment, exif, Buffer.from([0xff, 0xd9])]);
}
