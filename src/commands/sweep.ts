/** Removes from the data folder what belongs to somebody who asked to be forgotten. */
import { existsSync, readdirSync, rmSync } from 'node:fs';
import { join, parse } from 'node:path';
import { keptFiles, type Store } from '../store/index.js';

/** Folders of the data folder. */
export const MAILS = 'mail';
export const PHOTOGRAPHS = 'photos';
/** Files that people asked for, at a terminal. */
export const HANDED_OUT = 'my-data';

const filesIn = (folder: string): string[] => (existsSync(folder) ? readdirSync(folder) : []);

/**
 * Mails, pictures and handed-out files that the database knows of no more are removed; the database's log is emptied.
 * Done after somebody was erased, and at each start: a program that was killed in between leaves nothing behind.
 */
export function sweep(store: Store, data: string): void {
  const kept = keptFiles(store);
  const isKept: readonly [folder: string, kept: (file: string) => boolean][] = [
    [MAILS, (file) => kept.mails.has(parse(file).name)],
    [HANDED_OUT, (file) => kept.persons.has(parse(file).name)],
    [PHOTOGRAPHS, (file) => kept.photograph(parse(file).name)],
  ];
  for (const [name, keeps] of isKept) {
    const folder = join(data, name);
    for (const file of filesIn(folder)) if (!keeps(file)) rmSync(join(folder, file), { force: true });
  }
  store.checkpoint();
}
