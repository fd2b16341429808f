/** Removes from the data folder what belongs to somebody who asked to be forgotten. */
import { existsSync, readdirSync, rmSync, statSync } from 'node:fs';
import { join, parse } from 'node:path';
import { filesToRemove, keptFiles, removed, type Store } from '../store/index.js';

/** Folders of the data folder. */
export const MAILS = 'mail';
export const PHOTOGRAPHS = 'photos';
/** Files that people asked for, at a terminal; their pictures in a folder of their key. */
export const HANDED_OUT = 'my-data';

const filesIn = (folder: string): string[] => (existsSync(folder) ? readdirSync(folder) : []);

/** A picture is written before its message is: one younger than this may still get its message. */
const GRACE_MILLISECONDS = 60 * 60 * 1000;

/**
 * Mails, pictures and handed-out files that the database knows of no more are removed; the database's log is emptied.
 * Done after somebody was erased, once their photographs have no metadata, and at each start: a program that was killed
 * in between leaves nothing behind.
 */
export function sweep(store: Store, data: string): void {
  const kept = keptFiles(store);
  const unwanted = filesToRemove(store);
  const mayBeOnItsWay = (path: string, hash: string): boolean =>
    !unwanted.has(hash) && Date.now() - statSync(path).mtimeMs < GRACE_MILLISECONDS;
  const isKept: readonly [folder: string, kept: (name: string, path: string) => boolean][] = [
    [MAILS, (id) => kept.mails.has(id)],
    [HANDED_OUT, (key) => kept.persons.has(key)],
    [PHOTOGRAPHS, (hash, path) => kept.photograph(hash) || mayBeOnItsWay(path, hash)],
  ];
  for (const [name, keeps] of isKept) {
    const folder = join(data, name);
    for (const file of filesIn(folder)) {
      const path = join(folder, file);
      if (!keeps(parse(file).name, path)) rmSync(path, { force: true, recursive: true });
    }
  }
  if (unwanted.size > 0) {
    store.writing((transaction) => {
      for (const hash of unwanted) removed(transaction, hash);
    });
  }
  store.checkpoint();
}
