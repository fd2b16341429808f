/** What is asked or said of the person once a watch is stored: name, mail, licence, whether the name is shown, reminders. */
import { ASKED_LICENCE, ASKED_NAME_SHOWN } from '../../../shared/joining.js';
import type { History } from '../../../shared/history.js';
import type { Person } from '../../../shared/person.js';
import { offered, wantsOffer } from './reminders.js';
import type { Asking, Effect, Scene } from '../types.js';

/** Whether it is still to be asked, now that a watch with a photograph is stored. */
export const wantsLicence = (person: Person): boolean =>
  person.photographLicence === null && !person.declined.includes(ASKED_LICENCE);

/** The person once it was asked: whatever they answer, or do not, it is not asked again. */
export const askedLicence = (person: Person): Person => ({ ...person, declined: [...person.declined, ASKED_LICENCE] });

/** Letters, and what stands between them in names: what is published may be read by a spreadsheet, or as a page. */
const SHOWABLE = /^\p{L}[\p{L}\p{M} .'’-]*$/u;

export const canShowName = ({ name }: Person): boolean => name !== null && SHOWABLE.test(name);

const wantsToBeAsked = (person: Person): boolean =>
  canShowName(person) && !person.nameShown && !person.declined.includes(ASKED_NAME_SHOWN);

export interface Afterwards {
  /** Null: nothing more is asked. */
  readonly asking: Asking | null;
  /** What they are told, where nothing is asked. */
  readonly said: readonly string[];
  /** Keeps the person, now that this is said; empty where it changes nothing. */
  readonly effects: readonly Effect[];
}

/**
 * Name and mail are asked until they are given or declined; the licence once, and only of who sent a photograph; whether
 * the name may be shown once, and only of who gave one. At the end they are told once that they can be reminded. `person` is who they are by now, `progress` counts the watch too.
 */
export function afterwards(
  person: Person,
  { photographed, progress }: { readonly photographed: boolean; readonly progress: History['progress'] },
  scene: Scene,
): Afterwards {
  for (const field of ['name', 'mail'] as const) {
    if (person[field] === null && !person.declined.includes(field))
      return { asking: { kind: 'person', field }, said: [], effects: [] };
  }
  if (photographed && wantsLicence(person))
    return { asking: { kind: 'licence' }, said: [], effects: [{ do: 'keep-person', person: askedLicence(person) }] };
  if (wantsToBeAsked(person)) {
    const asked = { ...person, declined: [...person.declined, ASKED_NAME_SHOWN] };
    return { asking: { kind: 'name-shown' }, said: [], effects: [{ do: 'keep-person', person: asked }] };
  }
  if (wantsOffer(person, progress, scene))
    return {
      asking: { kind: 'remind' },
      said: [],
      effects: [{ do: 'keep-person', person: offered(person) }],
    };
  return { asking: null, said: [], effects: [] };
}
