/** What is still to be done with the photographs of somebody who was forgotten: a program may be killed in between. */
import { sql, type Kysely } from 'kysely';

const STATEMENTS = [
  `create table toBare (
    survey text not null,
    channel text not null,
    person text not null,
    watch integer not null,
    sha256 text not null,
    primary key (survey, channel, person, watch, sha256)
  ) strict, without rowid`,
  `create table toRemove (
    survey text not null,
    sha256 text not null,
    primary key (survey, sha256)
  ) strict, without rowid`,
];

export async function up(database: Kysely<unknown>): Promise<void> {
  for (const statement of STATEMENTS) await sql.raw(statement).execute(database);
}
