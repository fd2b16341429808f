/** People who talk to the real dialog through the exchange. */
import { v7 } from 'uuid';
import type { Content, Message } from '../../../shared/message.js';
import { dayAndPlaceOf, isTelling, newThread, step, type Thread } from '../../../src/dialog/index.js';
import { openExchange, type Exchange } from '../../../src/exchange/index.js';
import type { Store } from '../../../src/store/index.js';
import { survey } from '../../demo-survey.js';

export const NOW = '2026-05-06T23:30:00.000Z';

/** One watch, from the first answer to the yes that stores it. */
export const ANSWERS = [
  'today 2:10 to 2:25 pm',
  'garden at 43.0731, -89.4012',
  'no',
  '19 C, sunny, calm',
  '12 by 8 feet',
  'Virginia bluebells, dandelion 15',
  'about 120',
  '3',
  '2 bimaculatus on the bluebells',
  '1 impatiens on the dandelion',
  'yes',
] as const;

let messages = 0;

export function messageOf(person: string, what: Content): Message {
  messages += 1;
  return {
    survey: survey.settings.key,
    channel: 'bench',
    person,
    id: `m${messages}`,
    at: NOW,
    replyTo: null,
    edits: null,
    manner: 'one',
    proven: true,
    what,
  };
}

export const text = (person: string, said: string): Message => messageOf(person, { kind: 'text', text: said });

export function exchangeWithDialog(store: Store): Exchange<Thread> {
  const conversation = { newThread, step, dayAndPlaceOf, isTelling };
  return openExchange({ store, survey, conversation, now: () => NOW, newId: () => v7(), newCode: () => '000000' });
}

/** Somebody who has said yes to taking part, as the row of `persons`. */
export const consented = (person: string, observer: string) => ({
  survey: survey.settings.key,
  key: observer,
  channel: 'bench',
  person,
  name: 'Wren',
  mail: null,
  consent: { at: NOW, wordingVersion: survey.wording.version },
  declined: ['mail'],
  photographLicence: null,
  nameShown: false,
  reminders: false,
});
