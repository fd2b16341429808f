/** How the database can fail, one class each; neither says anything of what it holds. */
import Database from 'better-sqlite3';
import type { z } from 'zod';

export type StoreFailure = 'locked' | 'full' | 'read-only' | 'broken';

const SENTENCES: Readonly<Record<StoreFailure, string>> = {
  locked: 'The database is locked by another program; try again in a moment.',
  full: 'The database cannot grow: the disk is full.',
  'read-only': 'The database cannot be written: it is read-only.',
  broken: 'The database cannot be used',
};

/** The database as a whole does not work. Nothing of the open transaction is kept. */
export class StoreError extends Error {
  override readonly name = 'StoreError';
  constructor(
    readonly kind: StoreFailure,
    options: { readonly cause: unknown },
  ) {
    const why = kind === 'broken' && options.cause instanceof Error ? `: ${options.cause.message}` : '';
    super(`${SENTENCES[kind]}${why}`, options);
  }
}

/** One stored row that does not fit its schema. All else can still be read, so this is not a `StoreError`. */
export class UnreadableRecord extends Error {
  override readonly name = 'UnreadableRecord';
  constructor(what: string, options: { readonly cause: unknown }) {
    super(`${what} does not fit its schema: ${options.cause instanceof Error ? options.cause.message : ''}`, options);
  }
}

/** Primary result codes of SQLite (sqlite.org/rescode.html); extended ones begin with them. */
const FAILURES: readonly (readonly [code: string, kind: StoreFailure])[] = [
  ['SQLITE_BUSY', 'locked'],
  ['SQLITE_LOCKED', 'locked'],
  ['SQLITE_FULL', 'full'],
  ['SQLITE_READONLY', 'read-only'],
  ['SQLITE_PERM', 'read-only'],
  ['SQLITE_IOERR', 'broken'],
  ['SQLITE_CORRUPT', 'broken'],
  ['SQLITE_NOTADB', 'broken'],
  ['SQLITE_CANTOPEN', 'broken'],
  ['SQLITE_PROTOCOL', 'broken'],
  ['SQLITE_NOMEM', 'broken'],
];

/**
 * The failure as a `StoreError`; any other error, a broken constraint among them, as it is: that is a mistake of ours
 * in one statement, not a database that fails.
 */
export function asStoreError(error: unknown): unknown {
  if (!(error instanceof Database.SqliteError)) return error;
  const failure = FAILURES.find(([code]) => error.code.startsWith(code));
  return failure ? new StoreError(failure[1], { cause: error }) : error;
}

/** What `make` gives, through the schema. Throws `UnreadableRecord` naming `what`. */
export function readable<Schema extends z.ZodType>(what: string, schema: Schema, make: () => unknown): z.infer<Schema> {
  try {
    return schema.parse(make());
  } catch (cause) {
    throw new UnreadableRecord(what, { cause });
  }
}
