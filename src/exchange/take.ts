/** Takes one message: reads, steps, writes. */
import type { Message, Reply } from '../../shared/message.js';
import { MAIL } from '../../shared/receipt.js';
import type { Survey } from '../../shared/survey.js';
import {
  addReply,
  clearTimer,
  keepPerson,
  keepPlace,
  keepThread,
  keepWatch,
  setTimer,
  threadOf,
  type Store,
  type ThreadKey,
  type Transaction,
} from '../store/index.js';
import type { Conversation, Effect } from './conversation.js';
import { historyFor } from './history.js';

export interface ExchangeParts<Thread> {
  readonly store: Store;
  readonly survey: Survey;
  readonly conversation: Conversation<Thread>;
  /** The present moment, a UTC instant. */
  readonly now: () => string;
  /** A new UUIDv7. */
  readonly newId: () => string;
}

/** What taking a message came to. */
export interface Taken<Thread> {
  readonly thread: Thread;
  readonly replies: readonly Reply[];
  /** The number of the watch that was stored with the observer's yes, practice included. */
  readonly stored: number | null;
}

/** Puts a reply to the message at the end of a thread's outbox. */
type AddReply = (to: ThreadKey, reply: Reply) => void;

function carryOut(transaction: Transaction, message: Message, effect: Effect, addTo: AddReply): void {
  switch (effect.do) {
    case 'keep-watch':
      return keepWatch(transaction, effect.watch);
    case 'keep-person':
      return keepPerson(transaction, effect.person);
    case 'keep-place':
      return keepPlace(transaction, effect.place);
    case 'send-receipt': {
      const { survey } = message;
      const reply = { text: '', choices: [], silent: false, report: null, revision: 0, receipt: effect.receipt };
      return addTo({ survey, channel: MAIL, person: effect.to }, reply);
    }
    case 'set-timer':
      return setTimer(transaction, message, effect);
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
  { survey, conversation, newId }: Omit<ExchangeParts<Thread>, 'store' | 'now'>,
  message: Message,
  now: string,
): Taken<Thread> {
  const stored = threadOf(transaction, message);
  // The conversation wrote it, so it has the conversation's shape; an older one is for the step to bring up to date.
  const before = stored === null ? conversation.newThread(survey, message) : (stored.state as Thread);
  const history = historyFor(transaction, message, conversation.dayAndPlaceOf(before), { survey, newId });
  const { thread, replies, effects } = conversation.step(before, message, history, survey, now);

  keepThread(transaction, message, thread, now);
  const addTo = (to: ThreadKey, reply: Reply): void =>
    addReply(transaction, to, { id: newId(), answers: message.id, reply, at: now });
  for (const effect of effects) carryOut(transaction, message, effect, addTo);
  for (const reply of replies) addTo(message, reply);
  return { thread, replies, stored: storedIn(effects) };
}
