/** Whether a person asked to be reminded. */
import { sql, type Kysely } from 'kysely';

export async function up(database: Kysely<unknown>): Promise<void> {
  await sql.raw(`alter table persons add column reminders integer not null default 0`).execute(database);
}
