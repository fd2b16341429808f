/**
 * Messages whose picture or file is still to be fetched: kept at once, so that one person's slow file holds up nobody
 * else. `file` is what the channel fetches it by, until its content is there.
 */
import { sql, type Kysely } from 'kysely';

const STATEMENTS = [
  `alter table inbox add column file text`,
  // Holds the few rows whose file is to come; all but empty, as the index of those that wait.
  `create index inboxComing on inbox (survey, channel, person, sequence) where file is not null`,
  `insert into sqlite_stat1 (tbl, idx, stat) values ('inbox', 'inboxComing', '10 10 5 2 1')`,
  `analyze sqlite_schema`,
];

export async function up(database: Kysely<unknown>): Promise<void> {
  for (const statement of STATEMENTS) await sql.raw(statement).execute(database);
}
