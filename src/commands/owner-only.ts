/** Writes files that are for their owner's eyes only: all of them, or none. */
import {
  chmodSync,
  closeSync,
  existsSync,
  fsyncSync,
  mkdirSync,
  openSync,
  readdirSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { CommandError } from './command.js';

/** A file stands under this ending until all are whole. */
const UNFINISHED = '.part';

/** How many others are named. */
const MOST_NAMED = 3;

/** Throws where the folder holds files that are not of `files`: what lies beside them would be taken for private too. */
function readyFolder(folder: string, files: readonly string[]): void {
  if (existsSync(folder)) {
    const own = new Set(files.flatMap((file) => [file, `${file}${UNFINISHED}`]));
    const others = readdirSync(folder).filter((name) => !own.has(name));
    if (others.length > 0) {
      const named = others.slice(0, MOST_NAMED).join(', ');
      const more = others.length > MOST_NAMED ? ' and more' : '';
      throw new CommandError(`${folder} holds other files (${named}${more}); give a new or empty folder.`);
    }
  }
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  chmodSync(folder, 0o700);
}

/**
 * Writes the pieces to their files in the folder, which nobody but the owner can open. What stood there before stands
 * until all files are whole. Throws `CommandError` where the folder cannot be used.
 */
export function writeOwnerOnly<File extends string>(
  folder: string,
  files: readonly File[],
  pieces: Iterable<{ readonly file: File; readonly text: string }>,
): void {
  const unfinished = files.map((file) => ({ file, path: join(folder, `${file}${UNFINISHED}`) }));
  const clear = (): void => unfinished.forEach(({ path }) => rmSync(path, { force: true }));
  try {
    readyFolder(folder, files);
    clear();
    try {
      writeAll(unfinished, pieces);
      for (const { file, path } of unfinished) renameSync(path, join(folder, file));
    } finally {
      clear();
    }
  } catch (cause) {
    if (!(cause instanceof Error) || !('syscall' in cause)) throw cause;
    throw new CommandError(`${folder} cannot be written: ${cause.message}.`, { cause });
  }
}

function writeAll<File extends string>(
  unfinished: readonly { readonly file: File; readonly path: string }[],
  pieces: Iterable<{ readonly file: File; readonly text: string }>,
): void {
  const open = new Map(unfinished.map(({ file, path }) => [file, openSync(path, 'wx', 0o600)]));
  try {
    for (const { file, text } of pieces) writeFileSync(open.get(file)!, text);
    // a rename can reach the disk before what it names
    for (const descriptor of open.values()) fsyncSync(descriptor);
  } finally {
    for (const descriptor of open.values()) closeSync(descriptor);
  }
}
