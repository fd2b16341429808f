/** A tiny conversation for tests: it does what its messages tell it to. */
import type { History } from '../../shared/history.js';
import type { Message, Reply } from '../../shared/message.js';
import type { Person } from '../../shared/person.js';
import type { Conversation, Effect } from '../../src/exchange/index.js';
import { sampleWatch, SURVEY } from '../store/sample.js';

export interface EchoThread {
  /** Texts and timers, in the order in which they were taken. */
  readonly heard: readonly string[];
}

const reply = (text: string): Reply => ({ text, choices: [], silent: false, report: null, revision: 0 });

const personFor = (message: Message, history: History): Person =>
  history.person ?? {
    survey: message.survey,
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
  };

/**
 * Texts: `boom` throws; `watch` stores a watch of the sender, `long` one with a remark of 50 kB; `half` asks for a
 * person to be kept and then for a watch that cannot be; `timer KEY DUE` and `clear KEY` set and clear; anything else
 * is only said back. `told` is called with what each step was given.
 */
export function echo(
  told: (message: Message, history: History, now: string) => void = () => {},
): Conversation<EchoThread> {
  return {
    newThread: () => ({ heard: [] }),
    dayAndPlaceOf: () => ({ date: '2026-05-04', latitude: 43.0512, longitude: -89.4021 }),
    step(thread, message, history, _survey, now) {
      told(message, history, now);
      const { what } = message;
      const text = what.kind === 'text' ? what.text : what.kind === 'time' ? `time ${what.key}` : what.kind;
      const [word, key = '', due = ''] = text.split(' ');
      if (word === 'boom') throw new Error('boom');

      const person = personFor(message, history);
      const watch = sampleWatch({
        id: history.fresh.report,
        number: history.fresh.watchNumber,
        survey: message.survey,
        observer: person.key,
      });
      const effects: Record<string, readonly Effect[]> = {
        watch: [
          { do: 'keep-person', person },
          { do: 'keep-watch', watch },
        ],
        long: [
          { do: 'keep-person', person },
          { do: 'keep-watch', watch: { ...watch, remark: 'long '.repeat(10_000) } },
        ],
        half: [
          { do: 'keep-person', person },
          { do: 'keep-watch', watch: { ...watch, minutes: -1 } },
        ],
        timer: [{ do: 'set-timer', key, report: 'r', due }],
        clear: [{ do: 'clear-timer', key }],
      };
      return {
        thread: { heard: [...thread.heard, text] },
        replies: [reply(`heard ${text}`)],
        effects: effects[word ?? ''] ?? [],
      };
    },
  };
}

export const NOW = '2026-05-06T23:30:00Z';

/** A text of that id from that person, over the terminal. */
export const said = (id: string, text: string, person = 'wren', changes: Partial<Message> = {}): Message => ({
  survey: SURVEY,
  channel: 'terminal',
  person,
  id,
  at: NOW,
  replyTo: null,
  edits: null,
  manner: 'one',
  proven: true,
  what: { kind: 'text', text },
  ...changes,
});
