/** The person who writes, as the step knows them. */
import type { Person } from '../../../shared/person.js';
import type { Scene } from '../types.js';

/** The person as they are after this message; made on their first. */
export function personOf(scene: Scene): Person {
  const { history, message, survey } = scene;
  return (
    history.person ?? {
      survey: survey.settings.key,
      key: history.fresh.observer,
      channel: message.channel,
      person: message.person,
      name: null,
      mail: null,
      consent: null,
      declined: [],
      photographLicence: null,
      nameShown: false,
      reminders: false,
    }
  );
}
