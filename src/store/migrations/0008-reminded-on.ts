/** The local day of a person's last reminder: it was kept in each of their threads, and two threads made two in a week. */
import { sql, type Kysely } from 'kysely';

const STATEMENTS = [
  `alter table persons add column remindedOn text`,
  `update persons set remindedOn = (
    select max(json_extract(threads.state, '$.remindedOn'))
    from persons as own join threads using (survey, channel, person)
    where own.survey = persons.survey and own.key = persons.key
  )`,
  `update threads set state = json_remove(state, '$.remindedOn')
    where json_extract(state, '$.remindedOn') is not null`,
];

export async function up(database: Kysely<unknown>): Promise<void> {
  for (const statement of STATEMENTS) await sql.raw(statement).execute(database);
}
