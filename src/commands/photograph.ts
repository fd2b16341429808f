/** Takes a photograph from a file into the data folder, under the hash of its bytes. */
import { createHash } from 'node:crypto';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Content } from '../../shared/message.js';
import { CommandError } from './command.js';
import { PHOTOGRAPHS } from './sweep.js';

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

/** Throws `CommandError` where the file cannot be read or is no photograph. */
export function keepPhotograph(path: string, data: string): Content {
  let bytes: Buffer;
  try {
    bytes = readFileSync(path);
  } catch (cause) {
    throw new CommandError(`The photograph ${path} cannot be read.`, { cause });
  }
  const type = BEGINNINGS.find(([, begins]) => begins(bytes))?.[0];
  if (type === undefined) throw new CommandError(`${path} is no photograph I can take: JPEG, PNG, WebP or HEIC.`);
  const sha256 = createHash('sha256').update(bytes).digest('hex');
  const folder = join(data, PHOTOGRAPHS);
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  writeFileSync(join(folder, sha256), bytes, { mode: 0o600 });
  return { kind: 'photo', sha256, type, takenAt: null };
}
