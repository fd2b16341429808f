/** Brings a database's tables up to date. */
import type Database from 'better-sqlite3';
import { Kysely, Migrator, SqliteDialect } from 'kysely';
import { MIGRATIONS } from './migrations/index.js';

/** Names of the migrations that the database has had, sorted. */
function migrationsOf(database: Database.Database): string[] {
  const known = database
    .prepare(`select 1 from sqlite_master where type = 'table' and name = 'kysely_migration'`)
    .get();
  if (known === undefined) return [];
  return database.prepare('select name from kysely_migration order by name').pluck().all().map(String);
}

/**
 * Runs what the database has not had yet, all or nothing. Nothing is locked where there is nothing to do. Where two
 * programs open a new database at once the second waits for the first. Throws where the database is newer than the
 * program, or older and `readonly`.
 */
export async function migrate(
  database: Database.Database,
  { readonly }: { readonly readonly: boolean },
): Promise<void> {
  const wanted = Object.keys(MIGRATIONS);
  const missing = () => wanted.filter((name) => !migrationsOf(database).includes(name));

  const unknown = migrationsOf(database).filter((name) => !wanted.includes(name));
  if (unknown.length > 0) throw new Error(`a newer version of this program wrote it (${unknown.join(', ')})`);
  if (missing().length === 0) return;
  if (readonly)
    throw new Error(
      `its tables are of an older version (without ${missing().join(', ')}); “queenpost talk” brings them up to date as it starts`,
    );

  // Our own transaction around Kysely's migrator, since its own begins without the write lock.
  database.exec('begin immediate');
  try {
    const kysely = new Kysely<unknown>({ dialect: new SqliteDialect({ database }) });
    const provider = { getMigrations: async () => ({ ...MIGRATIONS }) };
    const { error } = await new Migrator({ db: kysely, provider, disableTransactions: true }).migrateToLatest();
    if (error !== undefined) {
      throw error instanceof Error ? error : new Error('its tables could not be made', { cause: error });
    }
    database.exec('commit');
  } catch (error) {
    if (database.inTransaction) database.exec('rollback');
    throw error;
  }
}
