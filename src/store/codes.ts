/** Codes mailed to an address: one at a time for each address, whoever asked for it. */
import { sql } from 'kysely';
import type { Connection, Transaction } from './connection.js';
import { query } from './query.js';
import type { Tables } from './tables.js';

/** An address of a survey; capitals do not tell addresses apart. */
export interface MailKey {
  readonly survey: string;
  readonly mail: string;
}

export interface StoredCode {
  /** What is kept of the code: its hash, and what was mixed into it. */
  readonly kept: string;
  /** Until when it is good, a UTC instant. */
  readonly until: string;
  readonly triesLeft: number;
  /** The local day on which it was mailed, and how many were mailed on that day. */
  readonly day: string;
  readonly sent: number;
}

const keyOf = ({ survey, mail }: MailKey): MailKey => ({ survey, mail: mail.toLowerCase() });

const selectCode = query((database, place: MailKey) =>
  database
    .selectFrom('codes')
    .select(['kept', 'until', 'triesLeft', 'day', 'sent'])
    .where('survey', '=', place.survey)
    .where('mail', '=', place.mail),
);

/** The last code mailed to the address, good or not; null where there is none. */
export const codeOf = (connection: Connection, address: MailKey): StoredCode | null =>
  selectCode.first(connection, keyOf(address)) ?? null;

const upsertCode = query((database, place: Tables['codes']) =>
  database
    .insertInto('codes')
    .values({
      survey: place.survey,
      mail: place.mail,
      kept: place.kept,
      until: place.until,
      triesLeft: place.triesLeft,
      day: place.day,
      sent: place.sent,
    } satisfies Tables['codes'])
    .onConflict((same) =>
      same.columns(['survey', 'mail']).doUpdateSet((row) => ({
        kept: row.ref('excluded.kept'),
        until: row.ref('excluded.until'),
        triesLeft: row.ref('excluded.triesLeft'),
        day: row.ref('excluded.day'),
        sent: row.ref('excluded.sent'),
      })),
    ),
);

/** Keeps a code in the place of the one before. */
export function keepCode(transaction: Transaction, address: MailKey, code: StoredCode): void {
  upsertCode.run(transaction, { ...keyOf(address), ...code });
}

const updateTried = query((database, place: MailKey) =>
  database
    .updateTable('codes')
    .set((codes) => ({ triesLeft: codes('triesLeft', '-', 1) }))
    .where('survey', '=', place.survey)
    .where('mail', '=', place.mail)
    .where('triesLeft', '>', 0),
);

/** A wrong one was typed. */
export function codeTried(transaction: Transaction, address: MailKey): void {
  updateTried.run(transaction, keyOf(address));
}

const updateSpent = query((database, place: MailKey) =>
  database.updateTable('codes').set({ triesLeft: 0 }).where('survey', '=', place.survey).where('mail', '=', place.mail),
);

/** It has done its work, and is good no more. */
export function codeSpent(transaction: Transaction, address: MailKey): void {
  updateSpent.run(transaction, keyOf(address));
}

const deleteUnclaimed = query((database, place: { survey: string }) =>
  database
    .deleteFrom('codes')
    .where('survey', '=', place.survey)
    .where(({ not, exists, selectFrom }) =>
      not(
        exists(
          selectFrom('persons')
            .select('person')
            .whereRef('persons.survey', '=', 'codes.survey')
            .where('persons.mail', 'is not', null)
            .where(sql`lower(persons.mail)`, '=', sql.ref('codes.mail')),
        ),
      ),
    ),
);

/**
 * Erases codes of addresses that are nobody's any more. Those of an address that somebody else still gives stay: who
 * could empty them by asking to be forgotten would have as many tries as they like.
 */
export function eraseUnclaimedCodes(transaction: Transaction, survey: string): void {
  deleteUnclaimed.run(transaction, { survey });
}
