/** Writes files so that each is whole or not there: what stood there before stands until all are written. */
import { closeSync, fsyncSync, openSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { CommandError } from './command.js';

/** A file stands under this ending until all are whole. */
export const UNFINISHED = '.part';

export interface Piece<File extends string> {
  readonly file: File;
  readonly text: string | Buffer;
}

/**
 * Writes the pieces, in order, to their files in the folder that `ready` has prepared; `mode` is that of new files.
 * Throws `CommandError` where the folder cannot be used, or one of `ready`.
 */
export function writeWhole<File extends string>(
  folder: string,
  files: readonly File[],
  pieces: Iterable<Piece<File>>,
  { mode, ready }: { readonly mode: number; readonly ready: () => void },
): void {
  const unfinished = files.map((file) => ({ file, path: join(folder, `${file}${UNFINISHED}`) }));
  const clear = (): void => unfinished.forEach(({ path }) => rmSync(path, { force: true }));
  try {
    ready();
    clear();
    try {
      writeAll(unfinished, pieces, mode);
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
  pieces: Iterable<Piece<File>>,
  mode: number,
): void {
  const open = new Map(unfinished.map(({ file, path }) => [file, openSync(path, 'wx', mode)]));
  try {
    for (const { file, text } of pieces) writeFileSync(open.get(file)!, text);
    // a rename can reach the disk before what it names
    for (const descriptor of open.values()) fsyncSync(descriptor);
  } finally {
    for (const descriptor of open.values()) closeSync(descriptor);
  }
}
