/** Whether a person's name may stand with their watches in what is published. */
import { sql, type Kysely } from 'kysely';

export async function up(database: Kysely<unknown>): Promise<void> {
  await sql.raw(`alter table persons add column nameShown integer not null default 0`).execute(database);
}
