/** A database file of its own for a test; all are removed when the file's tests are over. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll } from 'vitest';
import { openStore, type OpenOptions, type Store } from '../../src/store/index.js';

const folders: string[] = [];
const stores: Store[] = [];

afterAll(() => {
  for (const store of stores.splice(0)) store.close();
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true });
});

/** The path of a database that does not exist yet, in a folder that does not either. */
export function scratchPath(): string {
  const folder = mkdtempSync(join(tmpdir(), 'queenpost-store-'));
  folders.push(folder);
  return join(folder, 'data', 'queenpost.db');
}

export async function openScratch(path = scratchPath(), options: OpenOptions = {}): Promise<Store> {
  const store = await openStore(path, options);
  stores.push(store);
  return store;
}
