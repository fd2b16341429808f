/** Empties the outbox. */
import type { Reply } from '../../shared/message.js';
import {
  nextReplyDue,
  replyFailed,
  replyLater,
  replySent,
  waitingReplies,
  type OutboxKey,
  type Store,
  type Transaction,
  type WaitingReply,
} from '../store/index.js';

/** A reply on its way to a person. */
export interface Outgoing {
  readonly survey: string;
  readonly channel: string;
  readonly person: string;
  /** The same at each try, so that a mail can keep its Message-ID. */
  readonly id: string;
  /** The id of the message that it answers. */
  readonly answers: string;
  readonly reply: Reply;
}

/** A channel's sending function: done when the channel has taken the reply over. Any error is tried again. */
export type Send = (outgoing: Outgoing) => Promise<void>;

/** Thrown by a sending function that was told how long to wait. */
export class SendLater extends Error {
  override readonly name = 'SendLater';
  constructor(
    readonly retryAfterSeconds: number,
    options?: ErrorOptions,
  ) {
    super(`to be tried again after ${retryAfterSeconds} s`, options);
  }
}

/** Thrown by a sending function for a reply that can never go out: "blocked by the user", "no such address". */
export class SendNever extends Error {
  override readonly name = 'SendNever';
}

const FIRST_WAIT_SECONDS = 1;
const LONGEST_WAIT_SECONDS = 3600;
const MOST_AT_ONCE = 50;
/** Threads of one channel that are sent to side by side, so that one slow mail server does not hold up all others. */
const SIDE_BY_SIDE = 5;
const MOST_ERROR_LETTERS = 500;

/** 1 s, 2 s, 4 s … up to an hour; what the channel was told, where it was told. */
export function waitSeconds(tries: number, error: unknown): number {
  if (error instanceof SendLater && Number.isFinite(error.retryAfterSeconds)) {
    return Math.max(FIRST_WAIT_SECONDS, error.retryAfterSeconds);
  }
  return Math.min(LONGEST_WAIT_SECONDS, FIRST_WAIT_SECONDS * 2 ** tries);
}

const after = (now: string, seconds: number) => new Date(Date.parse(now) + seconds * 1000).toISOString();

/** How many replies went out, were put off, and were given up. */
export interface SenderRun {
  readonly sent: number;
  readonly later: number;
  readonly failed: number;
}

export interface Sender {
  /**
   * Sends what is due by `now`, in order within a thread; a reply that fails holds those after it. A call during a
   * run joins that run. Rejected with a `StoreError` where the database fails.
   */
  runDue(now: string): Promise<SenderRun>;
  /** When the next reply is due, a UTC instant; null when none waits. */
  nextDue(): string | null;
}

/**
 * One sender serves a survey: a second one, in this program or another, would send everything twice. Replies of a
 * channel that is not in `channels` wait for a run of the program that has it.
 */
export function openSender({
  store,
  survey,
  channels,
}: {
  readonly store: Store;
  /** The survey's key. */
  readonly survey: string;
  readonly channels: ReadonlyMap<string, Send>;
}): Sender {
  /**
   * Gone out, but the database would not say so. Until it does nothing more is sent: on a full disk the same reply
   * would otherwise go out at every run.
   */
  const unmarked = new Map<number, { readonly key: OutboxKey; readonly at: string }>();

  function markSent(): void {
    if (unmarked.size === 0) return;
    store.writing((transaction) => {
      for (const { key, at } of unmarked.values()) replySent(transaction, key, at);
    });
    unmarked.clear();
  }

  async function sendOne(send: Send, waiting: WaitingReply, now: string): Promise<keyof SenderRun> {
    const { channel, person, id, answers, reply, sequence, tries } = waiting;
    const write = (mark: (transaction: Transaction) => void) => store.writing(mark);
    try {
      await send({ survey, channel, person, id, answers, reply });
    } catch (error) {
      const text = (error instanceof Error ? `${error.name}: ${error.message}` : String(error)).slice(
        0,
        MOST_ERROR_LETTERS,
      );
      if (error instanceof SendNever) {
        write((transaction) => replyFailed(transaction, waiting, { error: text, at: now }));
        return 'failed';
      }
      const due = after(now, waitSeconds(tries, error));
      write((transaction) => replyLater(transaction, waiting, { error: text, due }));
      return 'later';
    }
    unmarked.set(sequence, { key: { survey, sequence }, at: now });
    markSent();
    return 'sent';
  }

  async function empty(
    channel: string,
    send: Send,
    now: string,
    count: Record<keyof SenderRun, number>,
  ): Promise<void> {
    for (;;) {
      const waiting = waitingReplies(store, { survey, channel, now, most: MOST_AT_ONCE });
      if (waiting.length === 0) return;
      for (let from = 0; from < waiting.length; from += SIDE_BY_SIDE) {
        const group = waiting.slice(from, from + SIDE_BY_SIDE);
        // All are waited for: what still runs when a run ends would be sent again by the next.
        const ends = await Promise.allSettled(group.map((reply) => sendOne(send, reply, now)));
        for (const end of ends) if (end.status === 'fulfilled') count[end.value] += 1;
        const broken = ends.find((end) => end.status === 'rejected');
        if (broken) throw broken.reason;
      }
    }
  }

  async function run(now: string): Promise<SenderRun> {
    markSent();
    const count = { sent: 0, later: 0, failed: 0 };
    const ends = await Promise.allSettled([...channels].map(([channel, send]) => empty(channel, send, now, count)));
    const broken = ends.find((end) => end.status === 'rejected');
    if (broken) throw broken.reason;
    return count;
  }

  let running: Promise<SenderRun> | null = null;
  return {
    runDue(now) {
      running ??= run(now).finally(() => {
        running = null;
      });
      return running;
    },
    nextDue() {
      const dues = [...channels.keys()].flatMap((channel) => nextReplyDue(store, survey, channel) ?? []);
      return dues.sort()[0] ?? null;
    },
  };
}
