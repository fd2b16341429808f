/**
 * Codes that are mailed to an address, to prove that whoever types one reads its mail, and who has proven theirs. One
 * observer may have several threads, so people are also looked up by observer and by address.
 */
import { sql, type Kysely } from 'kysely';

const STATEMENTS = [
  `alter table persons add column mailProven integer not null default 0`,
  `create index personsOfObserver on persons (survey, "key")`,
  `create index personsByMail on persons (survey, lower(mail)) where mail is not null`,
  `create table codes (
    survey text not null,
    mail text not null,
    kept text not null,
    until text not null,
    triesLeft integer not null,
    day text not null,
    sent integer not null,
    primary key (survey, mail)
  ) strict, without rowid`,
];

/** As the first tables did: what the indexes will hold once a season runs, so that they are taken at once. */
const SPREAD: readonly (readonly [table: string, index: string, rows: string])[] = [
  ['persons', 'persons', '300 300 150 1'],
  ['persons', 'personsOfObserver', '300 300 1'],
  ['persons', 'personsByMail', '300 300 1'],
  ['codes', 'codes', '10 10 1'],
];

export async function up(database: Kysely<unknown>): Promise<void> {
  for (const statement of STATEMENTS) await sql.raw(statement).execute(database);
  for (const [table, index, rows] of SPREAD) {
    await sql`insert into sqlite_stat1 (tbl, idx, stat) values (${table}, ${index}, ${rows})`.execute(database);
  }
  await sql`analyze sqlite_schema`.execute(database);
}
