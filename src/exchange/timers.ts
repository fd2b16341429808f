/** Turns timers that came due into messages. */
import type { Message } from '../../shared/message.js';
import { dueTimers, nextTimerDue, type Store, type StoredTimer } from '../store/index.js';
import type { Exchange, Received } from './exchange.js';

const MOST_AT_ONCE = 50;
/** Of one run. A conversation whose timers always set another one in the past would keep the program busy for ever. */
const MOST_IN_ONE_RUN = 1000;

/** The message of a timer. Its id names the thread's person too, since two people may have the same key and moment. */
function messageOf({ survey, channel, person, key, report, due, manner, proven }: StoredTimer): Message {
  return {
    survey,
    channel,
    person,
    id: `time:${person}:${key}:${due}`,
    at: due,
    replyTo: null,
    edits: null,
    manner,
    proven,
    what: { kind: 'time', key, report },
  };
}

/** The first of each thread: its step may clear or replace those after it. */
function firstOfEach(timers: readonly StoredTimer[]): StoredTimer[] {
  const seen = new Set<string>();
  return timers.filter(({ channel, person }) => {
    const thread = JSON.stringify([channel, person]);
    if (seen.has(thread)) return false;
    seen.add(thread);
    return true;
  });
}

export interface Timers<Thread> {
  /**
   * Feeds all timers due by `now` to the exchange, in order of due within a thread, and gives what was committed.
   * Rejected with a `StoreError` where the database fails; what was not taken is due again.
   */
  runDue(now: string): Promise<Received<Thread>[]>;
  /** When the next one is due, a UTC instant; null when none is set. */
  nextDue(): string | null;
}

export function openTimers<Thread>({
  store,
  survey,
  exchange,
}: {
  readonly store: Store;
  /** The survey's key. */
  readonly survey: string;
  readonly exchange: Exchange<Thread>;
}): Timers<Thread> {
  return {
    async runDue(now) {
      const received: Received<Thread>[] = [];
      while (received.length < MOST_IN_ONE_RUN) {
        const due = firstOfEach(dueTimers(store, { survey, now, most: MOST_AT_ONCE }));
        if (due.length === 0) break;
        received.push(...(await Promise.all(due.map((timer) => exchange.receive(messageOf(timer), now)))));
      }
      return received;
    },
    nextDue: () => nextTimerDue(store, survey),
  };
}
