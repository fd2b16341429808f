/** Two threads of one person become one observer: whose watches they are, and what is kept of the person. */
import type { Person } from './person.js';
import type { Watch } from './record.js';

/** The watch as that of another key of the same person, and the change in its history. */
export function movedTo(
  watch: Watch,
  into: string,
  { at, through }: { readonly at: string; readonly through: string },
): Watch {
  const { observer } = watch;
  if (observer === into) return watch;
  return {
    ...watch,
    observer: into,
    history: [
      ...watch.history.map((change) => (change.by === observer ? { ...change, by: into } : change)),
      { at, by: into, role: 'observer', through, path: '/observer', from: observer, to: into, why: null },
    ],
    changedAt: at,
  };
}

/** In `declined`: whether their photographs may be published was asked. */
export const ASKED_LICENCE = 'licence';

/** Of two answers the one that publishes less: who was asked in either thread and gave no licence keeps them back. */
function licenceOf(own: Person, other: Person): Person['photographLicence'] {
  const keepsBack = [own, other].some(
    ({ photographLicence, declined }) => photographLicence === null && declined.includes(ASKED_LICENCE),
  );
  return keepsBack ? null : (other.photographLicence ?? own.photographLicence);
}

/** In `declined`: whether their name may be published was asked. */
export const ASKED_NAME_SHOWN = 'name-shown';

/** Of two answers the one that publishes less; and a yes was to one name, so it holds only where that name stands. */
function nameShownOf(own: Person, other: Person): boolean {
  const people = [own, other];
  const keepsBack = people.some(({ nameShown, declined }) => !nameShown && declined.includes(ASKED_NAME_SHOWN));
  const standing = other.name ?? own.name;
  return !keepsBack && people.some(({ nameShown, name }) => nameShown && name === standing);
}

/** The later of two days, as what is kept of a person; nothing where there is none. */
function lastReminded(own: Person, other: Person): Pick<Person, 'remindedOn'> {
  const remindedOn = [own, other]
    .flatMap((person) => person.remindedOn ?? [])
    .sort()
    .at(-1);
  return remindedOn === undefined ? {} : { remindedOn };
}

/** The person of this thread, once they are the other observer too; name and address are the other's, who came first. */
export function joinedPerson(own: Person, other: Person): Person {
  return {
    ...own,
    key: other.key,
    name: other.name ?? own.name,
    mail: other.mail,
    mailProven: true,
    declined: [...new Set([...other.declined, ...own.declined])],
    photographLicence: licenceOf(own, other),
    nameShown: nameShownOf(own, other),
    reminders: own.reminders || other.reminders,
    ...lastReminded(own, other),
  };
}
