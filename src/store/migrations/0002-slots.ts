/**
 * Replies that take the place of an earlier one: `slot` names the place within a thread, `handle` is the channel's own
 * id of what was sent, so that the next reply of the slot can change it.
 */
import { sql, type Kysely } from 'kysely';

const STATEMENTS = [
  `alter table outbox add column slot text`,
  `alter table outbox add column handle text`,
  `create index outboxSlots on outbox (survey, channel, person, slot, sequence) where handle is not null`,
];

export async function up(database: Kysely<unknown>): Promise<void> {
  for (const statement of STATEMENTS) await sql.raw(statement).execute(database);
  // As the first tables did: what the index will hold once a season runs, so that it is taken at once.
  await sql`insert into sqlite_stat1 (tbl, idx, stat) values ('outbox', 'outboxSlots', '500 500 500 10 5 1')`.execute(
    database,
  );
  await sql`analyze sqlite_schema`.execute(database);
}
