/** Writes files that are for their owner's eyes only: all of them, or none. */
import { chmodSync, existsSync, mkdirSync, readdirSync } from 'node:fs';
import { CommandError } from './command.js';
import { UNFINISHED, writeWhole, type Piece } from './whole-files.js';

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
  pieces: Iterable<Piece<File>>,
): void {
  writeWhole(folder, files, pieces, { mode: 0o600, ready: () => readyFolder(folder, files) });
}
