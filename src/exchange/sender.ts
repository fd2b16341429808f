/** Empties the outbox. */
import type { Reply } from '../../shared/message.js';
import {
  nextReplyDue,
  replyFailed,
  replyLater,
  replySent,
  waitingReplies,
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
  /** What a sending function gave for the last reply of the same slot: to be changed instead of sending anew. */
  readonly handle: string | null;
}

/**
 * A channel's sending function: done when the channel has taken the reply over. What it gives is its own id of what was
 * sent, kept where the reply has a slot, or is about a report or a watch. Any error is tried again.
 */
export type Send = (outgoing: Outgoing) => Promise<string | void>;

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
/** Read from the outbox at a time, each of another thread. */
const MOST_AT_ONCE = 50;
/** Threads of one channel that are sent to side by side: a slow answer holds up its own thread and no other. */
const SIDE_BY_SIDE = 20;
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

/** How one reply ended. */
type End =
  | { readonly as: 'sent'; readonly handle: string | null }
  | { readonly as: 'later' | 'failed'; readonly error: unknown };

function errorText(error: unknown): string {
  const text = error instanceof Error ? `${error.name}: ${error.message}` : String(error);
  return text.slice(0, MOST_ERROR_LETTERS);
}

/** Another reply may take its place, or somebody may reply to what it says of a report or a watch. */
const isLookedUp = ({ slot, report, watch }: Reply): boolean =>
  slot !== undefined || report !== null || watch !== undefined;

async function trySending(send: Send, outgoing: Outgoing): Promise<End> {
  try {
    const handle = (await send(outgoing)) ?? null;
    return { as: 'sent', handle: isLookedUp(outgoing.reply) ? handle : null };
  } catch (error) {
    return { as: error instanceof SendNever ? 'failed' : 'later', error };
  }
}

/**
 * One sender serves a survey: a second one, in this program or another, would send everything twice. Replies of a
 * channel that is not in `channels` wait for a run of the program that has it. Once `stop` is given nothing new is
 * begun, and a run ends with what is in hand.
 */
export function openSender({
  store,
  survey,
  channels,
  stop,
}: {
  readonly store: Store;
  /** The survey's key. */
  readonly survey: string;
  readonly channels: ReadonlyMap<string, Send>;
  readonly stop?: AbortSignal;
}): Sender {
  /**
   * Gone out, but the database would not say so. Until it does nothing more is sent: on a full disk the same reply
   * would otherwise go out at every run.
   */
  const unmarked = new Map<number, { readonly handle: string | null; readonly at: string }>();

  function markSent(transaction: Transaction): void {
    for (const [sequence, sent] of unmarked) replySent(transaction, { survey, sequence }, sent);
  }

  interface Ended {
    readonly waiting: WaitingReply;
    readonly end: End;
    readonly now: string;
    readonly noted: () => void;
    readonly refused: (error: unknown) => void;
  }
  const ended: Ended[] = [];

  /** Notes how replies ended; those that end before the program next waits share a commit. */
  function noteEnded(): void {
    const batch = ended.splice(0);
    for (const { waiting, end, now } of batch) {
      if (end.as === 'sent') unmarked.set(waiting.sequence, { handle: end.handle, at: now });
    }
    try {
      store.writing((transaction) => {
        markSent(transaction);
        for (const { waiting, end, now } of batch) {
          if (end.as === 'sent') continue;
          const error = errorText(end.error);
          if (end.as === 'failed') replyFailed(transaction, waiting, { error, at: now });
          else replyLater(transaction, waiting, { error, due: after(now, waitSeconds(waiting.tries, end.error)) });
        }
      });
      unmarked.clear();
      for (const { noted } of batch) noted();
    } catch (error) {
      for (const { refused } of batch) refused(error);
    }
  }

  async function sendOne(send: Send, waiting: WaitingReply, now: string): Promise<keyof SenderRun> {
    const { channel, person, id, answers, reply, handle } = waiting;
    const end = await trySending(send, { survey, channel, person, id, answers, reply, handle });
    await new Promise<void>((noted, refused) => {
      ended.push({ waiting, end, now, noted, refused });
      if (ended.length === 1) setImmediate(noteEnded);
    });
    return end.as;
  }

  async function empty(
    channel: string,
    send: Send,
    now: string,
    count: Record<keyof SenderRun, number>,
  ): Promise<void> {
    const inHand = new Map<number, Promise<void>>();
    const errors: unknown[] = [];
    const goesOn = () => errors.length === 0 && stop?.aborted !== true;

    const start = (waiting: WaitingReply): void => {
      const noted = sendOne(send, waiting, now)
        .then(
          (as) => void (count[as] += 1),
          (error: unknown) => void errors.push(error),
        )
        .finally(() => inHand.delete(waiting.sequence));
      inHand.set(waiting.sequence, noted);
    };
    const due = (): WaitingReply[] => {
      try {
        const waiting = waitingReplies(store, { survey, channel, now, most: MOST_AT_ONCE });
        return waiting.filter(({ sequence }) => !inHand.has(sequence));
      } catch (error) {
        errors.push(error);
        return [];
      }
    };

    let next: WaitingReply[] = [];
    for (;;) {
      if (next.length === 0 && goesOn()) next = due();
      while (next.length > 0 && inHand.size < SIDE_BY_SIDE && goesOn()) start(next.shift()!);
      // All are waited for: what still runs when a run ends would be sent again by the next.
      if (inHand.size === 0) break;
      await Promise.race(inHand.values());
    }
    if (errors.length > 0) throw errors[0];
  }

  async function run(now: string): Promise<SenderRun> {
    if (unmarked.size > 0) {
      store.writing(markSent);
      unmarked.clear();
    }
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
