/** What is asked or said of the person once a watch is stored: name, mail, licence of photographs, reminders. */
import { ASKED_LICENCE } from '../../shared/joining.js';
import type { History } from '../../shared/history.js';
import type { Person } from '../../shared/person.js';
import { say } from '../../shared/wording.js';
import { offered, wantsOffer } from './reminders.js';
import type { Asking, Effect, Scene, Thread } from './types.js';

/** Whether it is still to be asked, now that a watch with a photograph is stored. */
export const wantsLicence = (person: Person): boolean =>
  person.photographLicence === null && !person.declined.includes(ASKED_LICENCE);

/** The person once it was asked: whatever they answer, or do not, it is not asked again. */
export const askedLicence = (person: Person): Person => ({ ...person, declined: [...person.declined, ASKED_LICENCE] });

export interface Afterwards {
  /** Null: nothing more is asked. */
  readonly asking: Asking | null;
  /** What they are told, where nothing is asked. */
  readonly said: readonly string[];
  /** Keeps the person, now that this is said; empty where it changes nothing. */
  readonly effects: readonly Effect[];
}

/**
 * Name and mail are asked until they are given or declined; the licence once, and only of who sent a photograph; at the
 * end they are told once that they can be reminded. `person` is who they are by now, `progress` counts the watch too.
 */
export function afterwards(
  person: Person,
  { photographed, progress }: { readonly photographed: boolean; readonly progress: History['progress'] },
  thread: Thread,
  scene: Scene,
): Afterwards {
  for (const field of ['name', 'mail'] as const) {
    if (person[field] === null && !person.declined.includes(field))
      return { asking: { kind: 'person', field }, said: [], effects: [] };
  }
  if (photographed && wantsLicence(person))
    return { asking: { kind: 'licence' }, said: [], effects: [{ do: 'keep-person', person: askedLicence(person) }] };
  if (wantsOffer(person, progress, thread, scene))
    return {
      asking: null,
      said: [say(scene.survey.wording, 'reminders-offer', { target: progress.target })],
      effects: [{ do: 'keep-person', person: offered(person) }],
    };
  return { asking: null, said: [], effects: [] };
}
