/** People and their saved places: private, apart from the records. */
import { personSchema, savedPlaceSchema, type Person, type SavedPlace } from '../../shared/person.js';
import type { Connection, Transaction } from './connection.js';
import { readable } from './errors.js';
import type { ThreadKey } from './inbox.js';
import { fromJson } from './json.js';
import { query } from './query.js';
import type { Tables } from './tables.js';

const selectPerson = query((database, place: ThreadKey) =>
  database
    .selectFrom('persons')
    .selectAll()
    .where('survey', '=', place.survey)
    .where('channel', '=', place.channel)
    .where('person', '=', place.person),
);

const selectPeople = query((database, place: { survey: string }) =>
  database.selectFrom('persons').selectAll().where('survey', '=', place.survey).orderBy('channel').orderBy('person'),
);

/** Everybody of a survey: to find whose a name is. */
export const peopleOf = (connection: Connection, survey: string): Person[] =>
  selectPeople.all(connection, { survey }).map(toPerson);

/** Null before their first message. */
export function personOf(connection: Connection, { survey, channel, person }: ThreadKey): Person | null {
  const row = selectPerson.first(connection, { survey, channel, person });
  return row ? toPerson(row) : null;
}

function toPerson(row: Tables['persons']): Person {
  const { consentAt, consentWordingVersion, ...rest } = row;
  return readable(`The person of key ${row.key}`, personSchema, () => ({
    ...rest,
    consent: consentAt === null ? null : { at: consentAt, wordingVersion: consentWordingVersion },
    declined: fromJson(row.declined),
    reminders: row.reminders === 1,
  }));
}

const upsertPerson = query((database, place: Tables['persons']) =>
  database
    .insertInto('persons')
    .values({
      survey: place.survey,
      channel: place.channel,
      person: place.person,
      key: place.key,
      name: place.name,
      mail: place.mail,
      consentAt: place.consentAt,
      consentWordingVersion: place.consentWordingVersion,
      declined: place.declined,
      photographLicence: place.photographLicence,
      reminders: place.reminders,
    } satisfies Tables['persons'])
    .onConflict((same) =>
      same.columns(['survey', 'channel', 'person']).doUpdateSet((row) => ({
        key: row.ref('excluded.key'),
        name: row.ref('excluded.name'),
        mail: row.ref('excluded.mail'),
        consentAt: row.ref('excluded.consentAt'),
        consentWordingVersion: row.ref('excluded.consentWordingVersion'),
        declined: row.ref('excluded.declined'),
        photographLicence: row.ref('excluded.photographLicence'),
        reminders: row.ref('excluded.reminders'),
      })),
    ),
);

/** Keeps a person whole; what was known of them before is replaced. */
export function keepPerson(transaction: Transaction, person: Person): void {
  const { consent, declined, ...rest } = person;
  upsertPerson.run(transaction, {
    ...rest,
    consentAt: consent?.at ?? null,
    consentWordingVersion: consent?.wordingVersion ?? null,
    declined: JSON.stringify(declined),
    reminders: person.reminders ? 1 : 0,
  });
}

const selectPlaces = query((database, place: { survey: string; observer: string; most: number }) =>
  database
    .selectFrom('places')
    .selectAll()
    .where('survey', '=', place.survey)
    .where('observer', '=', place.observer)
    .orderBy('lastUsed', 'desc')
    .orderBy('key')
    .limit(place.most),
);

/** An observer's saved places, the last used first, `most` at most. */
export function placesOf(
  connection: Connection,
  { survey, observer, most }: { readonly survey: string; readonly observer: string; readonly most: number },
): SavedPlace[] {
  return selectPlaces
    .all(connection, { survey, observer, most })
    .map((row) =>
      readable(`A saved place of ${observer}`, savedPlaceSchema, () => ({ ...row, private: row.private === 1 })),
    );
}

const upsertPlace = query((database, place: Tables['places']) =>
  database
    .insertInto('places')
    .values({
      survey: place.survey,
      observer: place.observer,
      key: place.key,
      words: place.words,
      latitude: place.latitude,
      longitude: place.longitude,
      uncertaintyMetres: place.uncertaintyMetres,
      site: place.site,
      private: place.private,
      lastUsed: place.lastUsed,
    } satisfies Tables['places'])
    .onConflict((same) =>
      same.columns(['survey', 'observer', 'key']).doUpdateSet((row) => ({
        words: row.ref('excluded.words'),
        latitude: row.ref('excluded.latitude'),
        longitude: row.ref('excluded.longitude'),
        uncertaintyMetres: row.ref('excluded.uncertaintyMetres'),
        site: row.ref('excluded.site'),
        private: row.ref('excluded.private'),
        lastUsed: row.ref('excluded.lastUsed'),
      })),
    ),
);

/** Keeps a saved place; one of the same key is replaced. */
export function keepPlace(transaction: Transaction, place: SavedPlace): void {
  upsertPlace.run(transaction, { ...place, private: place.private ? 1 : 0 });
}
