/** Runs a survey's channels, what sends replies and mails, and the timers, side by side until they are told to stop. */
import { setMaxListeners } from 'node:events';
import { Temporal } from 'temporal-polyfill';
import type { Survey } from '../../shared/survey.js';
import { openTelegram, TELEGRAM } from '../channels/telegram/index.js';
import { openFetching, type Fetch, type How } from '../exchange/index.js';
import { openConversation, type Running } from './conversation.js';
import { photographsIn } from './photograph.js';

const now = (): string => new Date().toISOString();

export interface ServingParts {
  readonly survey: Survey;
  readonly data: string;
  readonly token: string;
  readonly stop: AbortController;
  /** A line for whoever runs the program; never a word or a name of a person. */
  readonly report: (line: string) => void;
  /** Told the bot's name when it takes messages. */
  readonly ready: (bot: string) => void;
}

/** The longest wait without a look at the database: another program may have written into it. */
const LOOK_SECONDS = 30;
/** A message that waits for its turn, or for another try, is taken at this pace, one of each thread. */
const WAITING_SECONDS = 1;
/** After an error of the database. */
const TROUBLE_SECONDS = 5;

/** Work that is done whenever something is due, or there is news. */
class Worker {
  #hasNews = false;
  #wakeUp = (): void => undefined;
  constructor(
    readonly name: string,
    readonly work: () => Promise<unknown>,
    /** When the next is due, a UTC instant; null for no time that is known. */
    readonly nextDue: () => string | null,
    readonly report: (line: string) => void,
  ) {}

  /** Something new is there: do not wait. */
  readonly wake = (): void => {
    this.#hasNews = true;
    this.#wakeUp();
  };

  async run(stop: AbortSignal): Promise<void> {
    stop.addEventListener('abort', this.wake, { once: true });
    while (!stop.aborted) {
      this.#hasNews = false;
      let seconds: number;
      try {
        await this.work();
        seconds = this.#secondsToWait();
      } catch (error) {
        this.report(`${this.name}: ${error instanceof Error ? error.message : String(error)}`);
        seconds = TROUBLE_SECONDS;
      }
      await this.#wait(seconds);
    }
  }

  async #wait(seconds: number): Promise<void> {
    if (this.#hasNews) return;
    await new Promise<void>((done) => {
      const timer = setTimeout(done, seconds * 1000);
      this.#wakeUp = () => {
        clearTimeout(timer);
        done();
      };
    });
  }

  #secondsToWait(): number {
    const due = this.nextDue();
    if (due === null) return LOOK_SECONDS;
    return Math.min(LOOK_SECONDS, Math.max(0, (Date.parse(due) - Date.parse(now())) / 1000));
  }
}

/** The parts of a run that see to themselves, and the function that a channel gives its messages to. */
function workersFor(
  { store, exchange, timers, sender, mailer, baring }: Running,
  {
    survey,
    files,
    stop,
    report,
  }: {
    readonly survey: string;
    /** By channel, how a file is fetched. */
    readonly files: ReadonlyMap<string, Fetch>;
    readonly stop: AbortSignal;
    readonly report: (line: string) => void;
  },
) {
  let waiting = 1; // unknown until it was looked at
  const send = new Worker('Replies', () => sender.runDue(now()), sender.nextDue, report);
  const mail = new Worker('Mail', () => mailer.runDue(now()), mailer.nextDue, report);
  const later = (seconds: number): string => Temporal.Instant.from(now()).add({ seconds }).toString();

  type Received = Awaited<ReturnType<typeof exchange.receive>>;
  function note(received: readonly Received[]): void {
    for (const { failures, waiting: waits, forgotten } of received) {
      if (forgotten) bare.wake();
      if (waits && waiting === 0) {
        waiting = 1;
        wait.wake();
      }
      for (const { error, tries, stuck } of failures) {
        // the error's own words may hold somebody's: the coordinator finds them in the database
        const where = error instanceof Error ? `${error.name} ${error.stack?.match(/\n\s+(at .*)/)?.[1] ?? ''}` : '';
        report(`A message could not be taken (${where.trim()}), try ${tries}${stuck ? '; given up' : ''}.`);
      }
    }
    send.wake();
    mail.wake();
    time.wake();
    fetch.wake();
  }

  const time = new Worker(
    'Timers',
    async () => {
      const received = await timers.runDue(now());
      if (received.length > 0) note(received);
    },
    timers.nextDue,
    report,
  );
  const wait = new Worker(
    'Waiting messages',
    async () => {
      if (waiting === 0) return;
      const taken = exchange.receiveWaiting(1);
      waiting = taken.waiting;
      if (taken.received.length > 0) note(taken.received);
    },
    () => (waiting > 0 ? later(WAITING_SECONDS) : null),
    report,
  );

  const failed = (error: unknown): void =>
    report(`Pictures: ${error instanceof Error ? error.message : String(error)}`);
  const took = (received: Received): void => note([received]);
  const fetching = openFetching({ store, survey, exchange, channels: files, stop, took, failed });
  const fetch = new Worker(
    'Pictures',
    () => {
      fetching.begin();
      return Promise.resolve();
    },
    () => null,
    report,
  );

  const bare = new Worker(
    'Photographs of who was forgotten',
    async () => {
      if (!baring.waits()) return;
      await baring.runDue(now());
      send.wake(); // one that had to be dropped is told
    },
    () => null,
    report,
  );

  return {
    workers: [send, mail, time, wait, fetch, bare],
    async receive(message: Parameters<typeof exchange.receive>[0], how: How): Promise<void> {
      note([await exchange.receive(message, now(), how)]);
    },
    /** Kept when no file is in hand. */
    fetched: fetching.ended,
  };
}

/**
 * Serves until told to stop, and ends with what was in hand. Throws `TelegramRefused` where Telegram will not serve it,
 * `StoreError` where the database cannot be opened.
 */
export async function serveSurvey({ survey, data, token, stop, report, ready }: ServingParts): Promise<void> {
  const { signal } = stop;
  setMaxListeners(0, signal); // each part and each picture in hand has one
  const telegram = openTelegram({ survey, token, photographs: photographsIn(data), now, stop: signal, report });
  const channels = new Map([[TELEGRAM, telegram.send]]);
  const running = await openConversation({ survey, data, now, channels, stop: signal });
  try {
    const files = new Map([[TELEGRAM, telegram.fetch]]);
    const { key } = survey.settings;
    const { workers, receive, fetched } = workersFor(running, { survey: key, files, stop: signal, report });
    const work = workers.map((worker) => worker.run(signal));
    try {
      await telegram.run(receive, ready);
    } finally {
      stop.abort();
      await Promise.all(work);
      await fetched();
    }
  } finally {
    running.store.close();
  }
}
