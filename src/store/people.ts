/** People and their saved places: private, apart from the records. */
import { sql } from 'kysely';
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

function toPerson({ consentAt, consentWordingVersion, mailProven, remindedOn, ...row }: Tables['persons']): Person {
  return readable(`The person of key ${row.key}`, personSchema, () => ({
    ...row,
    ...(mailProven === 1 ? { mailProven: true } : {}),
    ...(remindedOn === null ? {} : { remindedOn }),
    consent: consentAt === null ? null : { at: consentAt, wordingVersion: consentWordingVersion },
    declined: fromJson(row.declined),
    nameShown: row.nameShown === 1,
    reminders: row.reminders === 1,
  }));
}

/** Null before their first message. */
export function personOf(connection: Connection, { survey, channel, person }: ThreadKey): Person | null {
  const row = selectPerson.first(connection, { survey, channel, person });
  return row === undefined ? null : toPerson(row);
}

const selectOfObserver = query((database, place: { survey: string; key: string }) =>
  database
    .selectFrom('persons')
    .select(['survey', 'channel', 'person'])
    .where('survey', '=', place.survey)
    .where('key', '=', place.key),
);

/** The threads of an observer: one, or several that were joined. */
export const threadsOfObserver = (
  connection: Connection,
  { survey, key }: { readonly survey: string; readonly key: string },
): ThreadKey[] => selectOfObserver.all(connection, { survey, key });

const selectByMail = query((database, place: { survey: string; mail: string }) =>
  database
    .selectFrom('persons')
    .selectAll()
    .where('survey', '=', place.survey)
    .where('mail', 'is not', null)
    .where(sql`lower(mail)`, '=', place.mail)
    .orderBy('key')
    .orderBy('channel'),
);

/** Everybody who gave that mail address; anybody may claim one, `mailProven` tells who reads it. */
export const personsByMail = (
  connection: Connection,
  { survey, mail }: { readonly survey: string; readonly mail: string },
): Person[] => selectByMail.all(connection, { survey, mail: mail.toLowerCase() }).map(toPerson);

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
      nameShown: place.nameShown,
      reminders: place.reminders,
      mailProven: place.mailProven,
      remindedOn: place.remindedOn,
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
        nameShown: row.ref('excluded.nameShown'),
        reminders: row.ref('excluded.reminders'),
        mailProven: row.ref('excluded.mailProven'),
        remindedOn: row.ref('excluded.remindedOn'),
      })),
    ),
);

/** What is the observer's rather than the thread's; a consent is given in each thread. */
const updateOthers = query(
  (
    database,
    place: Pick<
      Tables['persons'],
      | 'survey'
      | 'key'
      | 'name'
      | 'mail'
      | 'declined'
      | 'photographLicence'
      | 'nameShown'
      | 'reminders'
      | 'mailProven'
      | 'remindedOn'
    >,
  ) =>
    database
      .updateTable('persons')
      .set({
        name: place.name,
        mail: place.mail,
        declined: place.declined,
        photographLicence: place.photographLicence,
        nameShown: place.nameShown,
        reminders: place.reminders,
        mailProven: place.mailProven,
        remindedOn: place.remindedOn,
      })
      .where('survey', '=', place.survey)
      .where('key', '=', place.key),
);

/** Keeps a person whole, in all threads of the observer; what was known of them before is replaced. */
export function keepPerson(transaction: Transaction, person: Person): void {
  const { consent, survey, key, channel, name, mail, photographLicence } = person;
  const shared = {
    survey,
    key,
    name,
    mail,
    photographLicence,
    declined: JSON.stringify(person.declined),
    nameShown: person.nameShown ? 1 : 0,
    reminders: person.reminders ? 1 : 0,
    mailProven: person.mailProven === true ? 1 : 0,
    remindedOn: person.remindedOn ?? null,
  };
  upsertPerson.run(transaction, {
    ...shared,
    channel,
    person: person.person,
    consentAt: consent?.at ?? null,
    consentWordingVersion: consent?.wordingVersion ?? null,
  });
  updateOthers.run(transaction, shared);
}

const updateKey = query((database, place: { survey: string; from: string; into: string }) =>
  database
    .updateTable('persons')
    .set({ key: place.into })
    .where('survey', '=', place.survey)
    .where('key', '=', place.from),
);

const selectNamesShown = query((database, place: { survey: string }) =>
  database
    .selectFrom('persons')
    .select(['key', 'name'])
    .where('survey', '=', place.survey)
    .where('nameShown', '=', 1)
    .orderBy('channel')
    .orderBy('person'),
);

/** Names that may be published, by the observer's key: of those who said so, and of nobody else. */
export function namesShown(connection: Connection, survey: string): Map<string, string> {
  const names = new Map<string, string>();
  for (const { key, name } of selectNamesShown.all(connection, { survey })) if (name !== null) names.set(key, name);
  return names;
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

const deletePlacesOf = query((database, place: { survey: string; observer: string }) =>
  database.deleteFrom('places').where('survey', '=', place.survey).where('observer', '=', place.observer),
);

/** Erases an observer's saved places. */
export function erasePlaces(
  transaction: Transaction,
  { survey, observer }: { survey: string; observer: string },
): void {
  deletePlacesOf.run(transaction, { survey, observer });
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

/** More than anybody has. */
const ALL_PLACES = 1_000_000;

/**
 * Makes the threads and places of one observer those of another; of places that both saved the one used last stays. Their
 * watches are the caller's.
 */
export function joinPersons(
  transaction: Transaction,
  { survey, from, into }: { readonly survey: string; readonly from: string; readonly into: string },
): void {
  updateKey.run(transaction, { survey, from, into });
  const known = new Map(
    placesOf(transaction, { survey, observer: into, most: ALL_PLACES }).map((place) => [place.key, place]),
  );
  for (const place of placesOf(transaction, { survey, observer: from, most: ALL_PLACES })) {
    const other = known.get(place.key);
    if (other === undefined || other.lastUsed < place.lastUsed) keepPlace(transaction, { ...place, observer: into });
  }
  erasePlaces(transaction, { survey, observer: from });
}
