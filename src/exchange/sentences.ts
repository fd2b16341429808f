/** What people are told when something fails on our side. */
import type { Reply } from '../../shared/message.js';
import type { Survey } from '../../shared/survey.js';
import { say } from '../../shared/wording.js';

/** A reply of nothing but its words. */
export const plain = (text: string): Reply => ({ text, choices: [], silent: false, report: null, revision: 0 });

/**
 * For a channel whose `receive` was refused with a `StoreError`: the message is not stored. Only where the channel
 * will not deliver it again by itself, else the person would send it twice.
 */
export function notStored(survey: Survey): Reply {
  return plain(say(survey.wording, 'not-stored'));
}

/** A message was given up; the coordinator has it. */
export function givenUp(survey: Survey): Reply {
  return plain(say(survey.wording, 'given-up', { coordinator: survey.settings.coordinator.name }));
}
