/** What is still wanted of the person once a watch is stored: name, mail, the licence of their photographs. */
import type { Person } from '../../shared/person.js';
import type { Asking } from './types.js';

/** In `declined`: it was asked. */
const ASKED = 'licence';

/** Whether it is still to be asked, now that a watch with a photograph is stored. */
export const wantsLicence = (person: Person): boolean =>
  person.photographLicence === null && !person.declined.includes(ASKED);

/** The person once it was asked: whatever they answer, or do not, it is not asked again. */
export const askedLicence = (person: Person): Person => ({ ...person, declined: [...person.declined, ASKED] });

export interface Afterwards {
  /** Null: nothing more is asked. */
  readonly asking: Asking | null;
  /** The person as they are to be kept, now that this is asked. */
  readonly person: Person;
}

/** Name and mail are asked until they are given or declined, the licence once and only of who sent a photograph. */
export function afterwards(person: Person, photographed: boolean): Afterwards {
  for (const field of ['name', 'mail'] as const) {
    if (person[field] === null && !person.declined.includes(field))
      return { asking: { kind: 'person', field }, person };
  }
  if (photographed && wantsLicence(person)) return { asking: { kind: 'licence' }, person: askedLicence(person) };
  return { asking: null, person };
}
