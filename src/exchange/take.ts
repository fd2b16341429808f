/** Takes one message: reads, steps, writes. */
import { movedTo } from '../../shared/joining.js';
import { licensed } from '../../shared/licence.js';
import type { Message, Reply } from '../../shared/message.js';
import { MAIL } from '../../shared/receipt.js';
import type { Survey } from '../../shared/survey.js';
import { say } from '../../shared/wording.js';
import {
  addReply,
  bareLater,
  clearTimer,
  codeSpent,
  erasePerson,
  everythingOf,
  joinPersons,
  keepPerson,
  keepPlace,
  keepThread,
  keepWatch,
  lastWatchesOf,
  personOf,
  picturesOf,
  removeLater,
  setTimer,
  threadsOfObserver,
  threadOf,
  type Store,
  type ThreadKey,
  type Transaction,
} from '../store/index.js';
import { joiningFor, mailCode, noteWrongCode } from './codes.js';
import type { AddReply, Conversation, Effect } from './conversation.js';
import { tellOfWatch } from './desk.js';
import { withoutObserver } from './forget.js';
import { historyFor } from './history.js';
import { plain } from './sentences.js';

export interface ExchangeParts<Thread> {
  readonly store: Store;
  readonly survey: Survey;
  readonly conversation: Conversation<Thread>;
  /** The present moment, a UTC instant. */
  readonly now: () => string;
  /** A new UUIDv7. */
  readonly newId: () => string;
  /** Six digits by chance that nobody can foresee. */
  readonly newCode: () => string;
}

/** What taking a message came to. */
export interface Taken<Thread> {
  readonly thread: Thread;
  readonly replies: readonly Reply[];
  /** The number of the watch that was stored with the observer's yes, practice included. */
  readonly stored: number | null;
  /** The sender, or a photograph of theirs, was erased: what lies outside the database must follow. */
  readonly forgotten: boolean;
}

/** More than anybody has. */
const ALL_WATCHES = 1_000_000;

interface Work {
  readonly transaction: Transaction;
  readonly survey: Survey;
  readonly message: Message;
  readonly addTo: AddReply;
  readonly newId: () => string;
  readonly now: string;
  /** The observer's key of the sender. */
  readonly observer: string;
}

/** Of "image/jpeg" and its like. */
const endingOf = (type: string): string => (type === 'image/jpeg' ? 'jpg' : (type.split('/')[1] ?? 'bin'));

/** All that is kept of the sender, in a reply to them; each of their pictures in one more. */
function giveData({ transaction, survey, message, addTo }: Work): void {
  const text = `${JSON.stringify(everythingOf(transaction, message), null, 2)}\n`;
  // by the observer's key: a file name says nothing of a person
  const observer = personOf(transaction, message)?.key ?? 'nobody';
  const pictures = picturesOf(transaction, message);
  const said = plain(say(survey.wording, 'given-data', { pictures: pictures.length }));
  addTo(message, { ...said, file: { name: `${observer}.json`, text } });
  for (const { sha256, type, watch } of pictures) {
    // the file of all data tells pictures by their hashes
    const name = `${watch === null ? 'picture' : `watch-${watch}`}-${sha256.slice(0, 8)}.${endingOf(type)}`;
    addTo(message, { ...plain(''), picture: { sha256, name, observer } });
  }
}

/**
 * Erases the sender; their watches stay under a key that nobody knows. Files come after the commit: their photographs lose
 * their metadata (`bare.ts`), and those of no watch are removed.
 */
function forget({ transaction, message, newId }: Work): void {
  const observer = personOf(transaction, message)?.key;
  if (observer !== undefined) {
    const key = newId();
    const place = { survey: message.survey, observer, most: ALL_WATCHES };
    for (const watch of lastWatchesOf(transaction, place)) {
      keepWatch(transaction, withoutObserver(watch, key));
      for (const { sha256 } of watch.photographs) {
        bareLater(transaction, message, { watch: watch.number, sha256 });
        removeLater(transaction, message.survey, sha256);
      }
    }
  }
  for (const sha256 of erasePerson(transaction, message)) removeLater(transaction, message.survey, sha256);
}

/** Sets the licence on every photograph of the observer, however long ago it was sent. */
function license(
  { transaction, message, now }: Work,
  { observer, licence }: Effect & { do: 'license-photographs' },
): void {
  const place = { survey: message.survey, observer, most: ALL_WATCHES };
  for (const watch of lastWatchesOf(transaction, place)) {
    const next = licensed(watch, licence, { at: now, through: message.channel });
    if (next !== watch) keepWatch(transaction, next);
  }
}

/** All that is one observer's becomes another's, whose threads are told. */
function join(
  { transaction, message, now, addTo }: Work,
  { from, into, said }: Effect & { do: 'join-observers' },
): void {
  const { survey, channel } = message;
  const told = threadsOfObserver(transaction, { survey, key: into });
  for (const watch of lastWatchesOf(transaction, { survey, observer: from, most: ALL_WATCHES }))
    keepWatch(transaction, movedTo(watch, into, { at: now, through: channel }));
  joinPersons(transaction, { survey, from, into });
  const mail = personOf(transaction, message)?.mail ?? null;
  if (mail !== null) codeSpent(transaction, { survey, mail });
  for (const thread of told) addTo(thread, plain(said));
}

/** In this thread, and where it shall be the only one in no other of the same person. */
function set({ transaction, message, observer }: Work, timer: Effect & { do: 'set-timer' }): void {
  const { survey } = message;
  const threads = timer.alone === true ? threadsOfObserver(transaction, { survey, key: observer }) : [];
  for (const thread of threads) clearTimer(transaction, thread, timer.key);
  setTimer(transaction, message, timer);
}

function carryOut(work: Work, effect: Effect): void {
  const { transaction, message, addTo } = work;
  switch (effect.do) {
    case 'keep-watch':
      keepWatch(transaction, effect.watch);
      return tellOfWatch(effect.watch, work);
    case 'keep-person':
      return keepPerson(transaction, effect.person);
    case 'license-photographs':
      return license(work, effect);
    case 'keep-place':
      return keepPlace(transaction, effect.place);
    case 'send-receipt': {
      const { survey } = message;
      return addTo({ survey, channel: MAIL, person: effect.to }, { ...plain(''), receipt: effect.receipt });
    }
    case 'give-data':
      return giveData(work);
    case 'forget-person':
      return forget(work);
    case 'remove-photograph':
      return removeLater(transaction, message.survey, effect.sha256);
    case 'mail-code': {
      const asking = { survey: message.survey, key: work.observer };
      return mailCode(transaction, asking, effect, work);
    }
    case 'join-observers':
      return join(work, effect);
    case 'set-timer':
      return set(work, effect);
    case 'clear-timer':
      return clearTimer(transaction, message, effect.key);
    default:
      return unreachable(effect);
  }
}

function unreachable(effect: never): never {
  throw new TypeError(`The step wants ${JSON.stringify(effect)}, which is no effect.`);
}

function storedIn(effects: readonly Effect[]): number | null {
  const kept = effects.flatMap((effect) => (effect.do === 'keep-watch' ? [effect.watch] : []));
  return kept.findLast(({ status }) => status === 'confirmed' || status === 'practice')?.number ?? null;
}

/**
 * Runs the step for a message and writes all that it wants, replies to the outbox included. Expects the open
 * transaction. A throw is a mistake of ours in this one message, but for a `StoreError`; what was written until then
 * is the caller's to undo.
 */
export function take<Thread>(
  transaction: Transaction,
  { survey, conversation, newId, newCode }: Omit<ExchangeParts<Thread>, 'store' | 'now'>,
  message: Message,
  now: string,
): Taken<Thread> {
  const stored = threadOf(transaction, message);
  // The conversation wrote it, so it has the conversation's shape; an older one is for the step to bring up to date.
  const before = stored === null ? conversation.newThread(survey, message) : (stored.state as Thread);
  const code = conversation.codeSaid?.(message, survey) ?? null;
  const history = historyFor(transaction, message, conversation.dayAndPlaceOf(before), {
    survey,
    newId,
    joiningOf: (person) => joiningFor(transaction, person, code, { survey, newCode, now }),
    isTelling: (state) => conversation.isTelling?.(state as Thread) ?? false,
  });
  // whatever the step makes of it
  if (history.joining?.typed === 'wrong' && history.person !== null) noteWrongCode(transaction, history.person);
  const { thread, replies, effects } = conversation.step(before, message, history, survey, now);

  keepThread(transaction, message, thread, now);
  // what is said to somebody who was forgotten is forgotten once it was said
  const forgets = effects.some((effect) => effect.do === 'forget-person');
  const forgotten = forgets || effects.some((effect) => effect.do === 'remove-photograph');
  const added: Reply[] = [];
  const addTo = (to: ThreadKey, given: Reply): void => {
    const reply = forgets ? { ...given, erase: true } : given;
    addReply(transaction, to, { id: newId(), answers: message.id, reply, at: now });
    if (to.channel === message.channel && to.person === message.person) added.push(reply);
  };
  const observer = history.person?.key ?? history.fresh.observer;
  const work: Work = { transaction, survey, message, addTo, newId, now, observer };
  for (const effect of effects) carryOut(work, effect);
  for (const reply of replies) addTo(message, reply);
  return { thread, replies: added, stored: storedIn(effects), forgotten };
}
