/** Opens the database of a program run. */
import { mkdirSync } from 'node:fs';
import { dirname } from 'node:path';
import Database from 'better-sqlite3';
import { Store } from './connection.js';
import { asStoreError, StoreError } from './errors.js';
import { migrate } from './migrate.js';

export interface OpenOptions {
  /** Opens an existing database for reading; each write is refused with a `StoreError` of kind `read-only`. */
  readonly readonly?: boolean;
  /** How long a write waits for another program's transaction. The whole program waits with it. */
  readonly busyMilliseconds?: number;
}

/**
 * Opens the database file, makes it and its folder where they do not exist (a folder for its owner alone: it will hold
 * names and addresses), and brings its tables up to date. Throws `StoreError` where it cannot be used.
 */
export async function openStore(path: string, options: OpenOptions = {}): Promise<Store> {
  const { readonly = false, busyMilliseconds = 5000 } = options;
  let database: Database.Database | undefined;
  try {
    if (!readonly) mkdirSync(dirname(path), { recursive: true, mode: 0o700 });
    database = new Database(path, { readonly, fileMustExist: readonly, timeout: busyMilliseconds });
    if (!readonly) database.pragma('journal_mode = WAL');
    // In WAL only FULL has a commit on the disk before the channel says that the message arrived.
    database.pragma('synchronous = FULL');
    database.pragma('foreign_keys = ON');
    // who asks to be forgotten is overwritten, not only unlinked
    if (!readonly) database.pragma('secure_delete = ON');
    await migrate(database, { readonly });
    return new Store(database);
  } catch (cause) {
    database?.close();
    const error = asStoreError(cause);
    throw error instanceof StoreError ? error : new StoreError('broken', { cause });
  }
}
