/** The licence under which a person lets their photographs be published; null: not at all. */
import { sql, type Kysely } from 'kysely';

export async function up(database: Kysely<unknown>): Promise<void> {
  await sql.raw(`alter table persons add column photographLicence text`).execute(database);
}
