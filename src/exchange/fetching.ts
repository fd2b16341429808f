/**
 * Fetches what people sent beside words, while everybody else is answered. The message is on the disk by then and holds
 * its own thread, so a program that is killed begins the fetch anew.
 */
import { setTimeout as sleep } from 'node:timers/promises';
import type { Content } from '../../shared/message.js';
import { messagesToCome, personOf, type MessageToCome, type Store } from '../store/index.js';
import type { Exchange, Received } from './exchange.js';

/**
 * A channel's fetching function: the content that a file came to, by what the channel gave to fetch it by. Any error,
 * such as a full disk, is tried again. Given up when `stop` is given.
 */
export type Fetch = (file: string, stop: AbortSignal) => Promise<Content>;

/** Each of another person; a hundred files of 20 MB would fill the memory. */
const SIDE_BY_SIDE = 8;
/** After an error of the disk or the database. */
const TROUBLE_SECONDS = 5;

/** What stands for the file of somebody who has not agreed: nothing of it may be kept, so it is not even fetched. */
const NOT_AGREED: Content = { kind: 'file', name: 'photo', problem: 'not-agreed' };

export interface FetchingParts<Thread> {
  readonly store: Store;
  /** The survey's key. */
  readonly survey: string;
  readonly exchange: Pick<Exchange<Thread>, 'fileCame'>;
  readonly channels: ReadonlyMap<string, Fetch>;
  /** Nothing new is begun then, and what is in hand is given up: the next run fetches it. */
  readonly stop: AbortSignal;
  /** Told what was taken once a file was there. */
  readonly took: (received: Received<Thread>) => void;
  readonly failed: (error: unknown) => void;
}

export interface Fetching {
  /** Begins what can be begun; to be called whenever something may have come. Throws `StoreError`. */
  begin(): void;
  /** Kept when nothing is in hand. */
  ended(): Promise<void>;
}

export function openFetching<Thread>(parts: FetchingParts<Thread>): Fetching {
  const { store, survey, exchange, channels, stop, took, failed } = parts;
  /** By message: of each thread one at a time. */
  const inHand = new Map<string, Promise<void>>();
  const nameOf = ({ channel, id }: MessageToCome): string => JSON.stringify([channel, id]);

  async function fetchOne(message: MessageToCome, fetch: Fetch): Promise<void> {
    try {
      const hasAgreed = personOf(store, message)?.consent != null;
      const what = hasAgreed ? await fetch(message.file, stop) : NOT_AGREED;
      took(exchange.fileCame(message, what));
    } catch (error) {
      if (stop.aborted) return;
      failed(error);
      await sleep(TROUBLE_SECONDS * 1000, undefined, { signal: stop }).catch(() => undefined);
    }
  }

  /** After it what waited for a free hand, or behind it in its thread. */
  function goOn(): void {
    try {
      begin();
    } catch (error) {
      failed(error);
    }
  }

  function begin(): void {
    for (const [channel, fetch] of channels) {
      if (stop.aborted || inHand.size >= SIDE_BY_SIDE) return;
      const heads = messagesToCome(store, { survey, channel, most: 2 * SIDE_BY_SIDE });
      const next = heads.filter((message) => !inHand.has(nameOf(message))).slice(0, SIDE_BY_SIDE - inHand.size);
      for (const message of next) {
        const name = nameOf(message);
        // later, not within the call that told of it
        const done = Promise.resolve()
          .then(() => fetchOne(message, fetch))
          .finally(() => {
            inHand.delete(name);
            goOn();
          });
        inHand.set(name, done);
      }
    }
  }

  return {
    begin,
    async ended() {
      while (inHand.size > 0) await Promise.all(inHand.values());
    },
  };
}
