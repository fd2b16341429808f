/** Opens the database of a program run. */
import { mkdirSync } from 'node:fs';
import { dirname } from 'node:path';
import { setTimeout } from 'node:timers/promises';
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

/** Between two tries to turn the log on. */
const PAUSE_MILLISECONDS = 20;

/**
 * Turns on the write-ahead log, which stays on once it is. Where another program opens the same new file, SQLite says
 * at once that it is locked instead of waiting its usual time; so it is tried again for that long.
 */
async function turnOnLog(database: Database.Database, busyMilliseconds: number): Promise<void> {
  const until = performance.now() + busyMilliseconds;
  for (;;) {
    try {
      database.pragma('journal_mode = WAL');
      return;
    } catch (cause) {
      const locked = cause instanceof Database.SqliteError && cause.code.startsWith('SQLITE_BUSY');
      if (!locked || performance.now() >= until) throw cause;
      await setTimeout(PAUSE_MILLISECONDS);
    }
  }
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
    if (!readonly) await turnOnLog(database, busyMilliseconds);
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
