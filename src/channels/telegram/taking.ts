/** Takes updates: each becomes messages for the exchange; they are done when all of them are on the disk. */
import type { Api } from 'grammy';
import type { Update, UserFromGetMe } from 'grammy/types';
import type { Message } from '../../../shared/message.js';
import type { Survey } from '../../../shared/survey.js';
import { say } from '../../../shared/wording.js';
import type { How } from '../../exchange/index.js';
import { Floods } from './floods.js';
import { readUpdate, type Heard, type Reading } from './updates.js';

export interface TakingParts {
  readonly api: Api;
  readonly me: UserFromGetMe;
  readonly survey: Survey;
  readonly now: () => string;
  /** Done when the message is on the disk; `how` keeps it there until its turn, or until its file is fetched. */
  readonly receive: (message: Message, how: How) => Promise<void>;
  /** A line for whoever runs the program; never a word or a name of a person. */
  readonly report: (line: string) => void;
}

export interface Taking {
  /** Done when all are on the disk; rejected where one is not: then all must come again. */
  take(updates: readonly Update[]): Promise<void>;
  /** Waits for small courtesies still on their way, such as a button that stops glowing. */
  finish(): Promise<void>;
}

/** A picture is kept as one that is not there yet. */
function kept({ what, ...message }: Heard, held: boolean): [Message, How] {
  if (!('fileId' in what)) return [{ ...message, what }, { held }];
  const { name } = what;
  return [
    { ...message, what: { kind: 'file', name, problem: 'not-fetched' } },
    { held, file: JSON.stringify(what) },
  ];
}

export function taking({ api, me, survey, now, receive, report }: TakingParts): Taking {
  const floods = new Floods();
  /** What is being taken for each chat: its messages are taken in the order in which they came. */
  const busy = new Map<number, Promise<unknown>>();
  const courtesies = new Set<Promise<unknown>>();

  /** What nobody misses where it fails, and nothing waits for. */
  function courtesy(call: Promise<unknown>): void {
    const over = call.catch(() => undefined).finally(() => courtesies.delete(over));
    courtesies.add(over);
  }

  function read(update: Update): Reading {
    try {
      return readUpdate(update, { survey: survey.settings.key, me, now: now() });
    } catch (error) {
      // a mistake of ours, or of theirs, that would be the same at each delivery
      report(`An update could not be read and is passed over (${error instanceof Error ? error.name : 'no error'}).`);
      return { kind: 'nothing' };
    }
  }

  /** Begun in order, waited for together: what comes at once shares a commit. */
  function takeReading(reading: Reading, received: Promise<void>[]): void {
    if (reading.kind === 'group') {
      if (floods.paceOf(`group ${reading.chat}`, Date.parse(now())) !== 'fine') return;
      const reply = { reply_parameters: { message_id: reading.message, allow_sending_without_reply: true } };
      courtesy(api.sendMessage(reading.chat, say(survey.wording, 'write-privately'), reply));
    }
    if (reading.kind !== 'private') return;
    for (const message of reading.messages) {
      const pace = floods.paceOf(message.person, Date.parse(now()));
      if (pace === 'slowed-now') courtesy(api.sendMessage(reading.chat, say(survey.wording, 'slowed')));
      received.push(receive(...kept(message, pace !== 'fine')));
    }
  }

  async function takeOne(readings: readonly Reading[]): Promise<void> {
    const received: Promise<void>[] = [];
    for (const reading of readings) takeReading(reading, received);
    const ends = await Promise.allSettled(received);
    const refused = ends.find((end) => end.status === 'rejected');
    if (refused) throw refused.reason;
  }

  /** After what is being taken for that chat already: a webhook may bring the same update twice at a time. */
  function takeInOrder(chat: number, readings: readonly Reading[]): Promise<void> {
    const before = busy.get(chat) ?? Promise.resolve();
    const taken = before.then(() => takeOne(readings));
    const settled = taken
      .catch(() => undefined)
      .finally(() => {
        if (busy.get(chat) === settled) busy.delete(chat);
      });
    busy.set(chat, settled);
    return taken;
  }

  return {
    async take(updates) {
      const byChat = new Map<number, Reading[]>();
      for (const update of updates) {
        const reading = read(update);
        if (reading.kind === 'nothing') continue;
        byChat.set(reading.chat, [...(byChat.get(reading.chat) ?? []), reading]);
      }
      const ends = await Promise.allSettled([...byChat].map(([chat, readings]) => takeInOrder(chat, readings)));
      const refused = ends.find((end) => end.status === 'rejected');
      if (refused) throw refused.reason;
      // always, or the button glows on: also where it was stale, and where it is none of ours
      for (const { callback_query: press } of updates) if (press) courtesy(api.answerCallbackQuery(press.id));
    },
    async finish() {
      await Promise.all(courtesies);
    },
  };
}
