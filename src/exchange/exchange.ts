/** One message in, one transaction, replies out. */
import { say } from '../../shared/wording.js';
import { messageSchema, type Content, type Message, type Reply } from '../../shared/message.js';
import {
  addReply,
  contentCame,
  firstWaiting,
  keepMessage,
  messageDone,
  messageFailed,
  messageStuck,
  readWaiting,
  removeLater,
  StoreError,
  takeTimer,
  waitingMessages,
  waitingThreads,
  type MessageKey,
  type ThreadKey,
  type Transaction,
} from '../store/index.js';
import { tellDesk } from './desk.js';
import { givenUp } from './sentences.js';
import { take, type ExchangeParts } from './take.js';

/** Messages that share one commit: to wait for the disk is most of the work, and it is the same for one or for fifty. */
const MOST_IN_ONE_COMMIT = 50;
const MOST_TRIES = 3;
/** Of an error's text; the coordinator reads it, and a database row is no place for a whole dump. */
const MOST_ERROR_LETTERS = 2000;

/** A step that threw: a mistake of ours. */
export interface Failure {
  /** The message's id. */
  readonly id: string;
  readonly tries: number;
  /** Given up: the thread goes on without it, the coordinator is shown it. */
  readonly stuck: boolean;
  readonly error: unknown;
}

/** What was committed for a message. */
export interface Received<Thread> {
  readonly channel: string;
  readonly person: string;
  readonly id: string;
  /** Replies put into the outbox of its thread: to this message, and to earlier ones that had waited. */
  readonly replies: readonly Reply[];
  /** The thread after it; null where no message was taken. */
  readonly thread: Thread | null;
  /** The number of the watch it stored. */
  readonly stored: number | null;
  /** Its sender, or a photograph of theirs, was erased: what lies outside the database must follow. */
  readonly forgotten: boolean;
  /** It was here already, or is a timer that was cleared meanwhile: nothing was changed, nothing is replied. */
  readonly duplicate: boolean;
  /** It is kept, and not taken yet. */
  readonly waiting: boolean;
  readonly failures: readonly Failure[];
}

/** How a message is taken. */
export interface How {
  /** It is kept and waits, and all later ones of its thread behind it, until `receiveWaiting` comes to it. */
  readonly held?: boolean;
  /** What the channel fetches its file by: it waits, and all later ones of its thread, until `fileCame`. */
  readonly file?: string | null;
}

export interface Exchange<Thread> {
  /**
   * Takes a message. The promise is kept when the message is on the disk: only then may the channel acknowledge it.
   * Rejected with a `StoreError` where the database fails: nothing is kept then, and the channel must deliver it
   * again. Messages that come at the same time share a commit. `now` is the present moment unless told.
   */
  receive(message: Message, now?: string, how?: How): Promise<Received<Thread>>;
  /**
   * The content that the file of a message came to: takes the message, and what waited behind it. Where it is not waited
   * for any more, nothing is taken, and a picture is to be removed. Throws `StoreError` where the database fails.
   */
  fileCame(message: ThreadKey & MessageKey, what: Content): Received<Thread>;
  /**
   * Takes waiting messages, up to fifty in one commit, of each thread at most `mostOfEach` (any number, unless told);
   * `waiting` is how many are left. Throws `StoreError` where the database fails.
   */
  receiveWaiting(mostOfEach?: number): { readonly received: readonly Received<Thread>[]; readonly waiting: number };
}

interface Queued<Thread> {
  readonly message: Message;
  readonly now: string;
  readonly how: How;
  readonly kept: (received: Received<Thread>) => void;
  readonly refused: (error: unknown) => void;
}

const nothing = ({ channel, person, id }: ThreadKey & MessageKey) => ({
  channel,
  person,
  id,
  replies: [],
  thread: null,
  stored: null,
  forgotten: false,
  duplicate: false,
  waiting: false,
  failures: [],
});

function errorText(error: unknown): string {
  const text = error instanceof Error ? (error.stack ?? `${error.name}: ${error.message}`) : String(error);
  return text.slice(0, MOST_ERROR_LETTERS);
}

/** The messages of one thread as one result, told as that of the message `id`. */
function together<Thread>(thread: ThreadKey & MessageKey, all: readonly Received<Thread>[]): Received<Thread> {
  return {
    ...nothing(thread),
    replies: all.flatMap((one) => one.replies),
    thread: all.findLast((one) => one.thread !== null)?.thread ?? null,
    stored: all.findLast((one) => one.stored !== null)?.stored ?? null,
    forgotten: all.some((one) => one.forgotten),
    waiting: !all.some((one) => one.id === thread.id && !one.waiting),
    failures: all.flatMap((one) => one.failures),
  };
}

export function openExchange<Thread>(parts: ExchangeParts<Thread>): Exchange<Thread> {
  const { store, survey } = parts;

  /** Takes one message in a savepoint. Where the step throws, the message is left waiting or, at last, is given up. */
  function attempt(
    transaction: Transaction,
    key: ThreadKey & MessageKey,
    read: () => Message,
    now: string,
  ): Received<Thread> {
    let message: Message | null = null;
    try {
      return {
        ...nothing(key),
        ...transaction.attempt(() => {
          message = read();
          return take(transaction, parts, message, now);
        }),
      };
    } catch (error) {
      if (error instanceof StoreError) throw error;
      const tries = messageFailed(transaction, key);
      const stuck = tries >= MOST_TRIES;
      const replies = stuck ? giveUp(transaction, key, message, error, now) : [];
      return { ...nothing(key), replies, waiting: !stuck, failures: [{ id: key.id, tries, stuck, error }] };
    }
  }

  /** Tells the coordinator, and the person; of a timer that failed the person knows nothing, and is told nothing. */
  function giveUp(
    transaction: Transaction,
    key: ThreadKey & MessageKey,
    message: Message | null,
    error: unknown,
    now: string,
  ): Reply[] {
    messageStuck(transaction, key, { error: errorText(error), at: now });
    if (message?.what.kind === 'time') return [];
    const reply = givenUp(survey);
    const addTo = (to: ThreadKey, given: Reply): void =>
      addReply(transaction, to, { id: parts.newId(), answers: key.id, reply: given, at: now });
    addTo(key, reply);
    tellDesk(survey, say(survey.wording, 'desk-given-up'), addTo);
    return [reply];
  }

  /** Takes what waits in a thread, in order, until one fails, one's file is still to come or `most` were tried. */
  function takeWaiting(transaction: Transaction, thread: ThreadKey, most: number, now: string): Received<Thread>[] {
    const all: Received<Thread>[] = [];
    while (all.length < most) {
      const waiting = firstWaiting(transaction, thread);
      if (!waiting || waiting.file !== null) break;
      const received = attempt(transaction, waiting, () => readWaiting(waiting), now);
      all.push(received);
      if (received.waiting) break;
      if (received.failures.length === 0) messageDone(transaction, waiting);
    }
    return all;
  }

  function takeNew(transaction: Transaction, message: Message, now: string, how: How): Received<Thread> {
    const { what } = message;
    if (what.kind === 'time' && !takeTimer(transaction, message, { key: what.key, due: message.at })) {
      return { ...nothing(message), duplicate: true };
    }
    const { held = false, file = null } = how;
    const waits = held || file !== null || firstWaiting(transaction, message) !== null;
    const kept = keepMessage(transaction, message, { state: waits ? 'waiting' : 'done', receivedAt: now, file });
    if (!kept) return { ...nothing(message), duplicate: true };
    if (held || file !== null) return { ...nothing(message), waiting: true };
    if (!waits) return attempt(transaction, message, () => message, now);
    return together(message, takeWaiting(transaction, message, MOST_IN_ONE_COMMIT, now));
  }

  const queue: Queued<Thread>[] = [];

  /** Takes what has come, in one commit; the callers hear of it after that. */
  function takeQueue(): void {
    const batch = queue.splice(0, MOST_IN_ONE_COMMIT);
    if (queue.length > 0) setImmediate(takeQueue);
    try {
      const received = store.writing((transaction) =>
        batch.map(({ message, now, how }) => takeNew(transaction, message, now, how)),
      );
      batch.forEach(({ kept }, index) => kept(received[index]!));
    } catch (error) {
      for (const { refused } of batch) refused(error);
    }
  }

  return {
    async receive(given, now = parts.now(), how = {}) {
      const message = messageSchema.parse(given);
      const { key } = survey.settings;
      if (message.survey !== key) {
        throw new TypeError(`A message for the survey "${message.survey}"; this exchange is that of "${key}".`);
      }
      return new Promise((kept, refused) => {
        queue.push({ message, now, how, kept, refused });
        // What else comes before the program next waits goes into the same commit.
        if (queue.length === 1) setImmediate(takeQueue);
      });
    },

    fileCame(message, what) {
      return store.writing((transaction) => {
        if (!contentCame(transaction, message, what)) {
          if (what.kind === 'photo') removeLater(transaction, message.survey, what.sha256);
          return { ...nothing(message), duplicate: true, forgotten: what.kind === 'photo' };
        }
        return together(message, takeWaiting(transaction, message, MOST_IN_ONE_COMMIT, parts.now()));
      });
    },

    receiveWaiting(mostOfEach = MOST_IN_ONE_COMMIT) {
      return store.writing((transaction) => {
        const { key } = survey.settings;
        const now = parts.now();
        const received: Received<Thread>[] = [];
        for (const thread of waitingThreads(transaction, key, MOST_IN_ONE_COMMIT)) {
          const most = Math.min(mostOfEach, MOST_IN_ONE_COMMIT - received.length);
          if (most <= 0) break;
          received.push(...takeWaiting(transaction, thread, most, now));
        }
        return { received, waiting: waitingMessages(transaction, key) };
      });
    },
  };
}
