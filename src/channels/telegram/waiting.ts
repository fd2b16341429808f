/** Tries again and again, with growing waits, and says once that it does. */
import { setTimeout as sleep } from 'node:timers/promises';
import { refusal, retryAfterSeconds } from './api.js';

const FIRST_WAIT_SECONDS = 1;
const LONGEST_WAIT_SECONDS = 60;

/** Waits; at once over when told to stop. */
export async function pause(seconds: number, stop: AbortSignal): Promise<void> {
  await sleep(seconds * 1000, undefined, { signal: stop }).catch(() => undefined);
}

export interface Trying {
  readonly stop: AbortSignal;
  /** A line for whoever runs the program. */
  readonly report: (line: string) => void;
}

/** One error after another: how long to wait, and whether it was said. */
export class Patience {
  #wait = FIRST_WAIT_SECONDS;
  #said = false;
  constructor(readonly trying: Trying) {}

  /** It went well. */
  calm(): void {
    if (this.#said) this.trying.report('Telegram: goes on.');
    this.#said = false;
    this.#wait = FIRST_WAIT_SECONDS;
  }

  /** Waits before the next try. Throws `TelegramRefused` where another try would not help. */
  async after(error: unknown): Promise<void> {
    const refused = refusal(error);
    if (refused) throw refused;
    if (!this.#said) {
      const why = error instanceof Error ? `${error.name}: ${error.message}` : String(error);
      this.trying.report(`Telegram: ${why.replace(/\.$/, '')}. Trying again until it works.`);
    }
    this.#said = true;
    await pause(retryAfterSeconds(error) ?? this.#wait, this.trying.stop);
    this.#wait = Math.min(LONGEST_WAIT_SECONDS, this.#wait * 2);
  }
}

/** The call's result; null when told to stop. Throws `TelegramRefused` where another try would not help. */
export async function untilDone<Result>(call: () => Promise<Result>, trying: Trying): Promise<Result | null> {
  const patience = new Patience(trying);
  while (!trying.stop.aborted) {
    try {
      const result = await call();
      patience.calm();
      return result;
    } catch (error) {
      if (!trying.stop.aborted) await patience.after(error);
    }
  }
  return null;
}
