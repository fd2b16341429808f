/** The Bot API through grammY's typed calls, with errors that hold no secret. */
import { Api, GrammyError, HttpError } from 'grammy';

export const TELEGRAM = 'telegram';

/** How long a poll waits for news. */
export const POLL_SECONDS = 25;
/** A call that has no answer for this long has failed; a poll's own wait is well within. */
const PATIENCE_SECONDS = 45;

/** The Bot API's server cannot be reached, or does not answer as it should. Holds no address: that has the token in it. */
export class TelegramUnreachable extends Error {
  override readonly name = 'TelegramUnreachable';
  constructor(method: string, why: string) {
    super(`${method}: ${why}`);
  }
}

/** Telegram will not serve this program: a wrong token, or another program that takes the same bot's messages. */
export class TelegramRefused extends Error {
  override readonly name = 'TelegramRefused';
}

/** The code of a failed connection ("ECONNREFUSED"), which says enough and is no secret. */
function codeOf(error: unknown): string {
  const inner = error instanceof HttpError ? error.error : error;
  const code = inner instanceof Error && 'code' in inner ? inner.code : undefined;
  return typeof code === 'string' ? code : 'no proper answer';
}

/**
 * Does some work with a signal of its own that follows the given one. What is given to grammY keeps a listener for good,
 * and the signal that stops the program would gather one at each call.
 */
export async function following<Result>(
  signal: AbortSignal,
  work: (own: AbortSignal) => Promise<Result>,
): Promise<Result> {
  const own = new AbortController();
  const follow = (): void => own.abort(signal.reason);
  if (signal.aborted) follow();
  signal.addEventListener('abort', follow, { once: true });
  try {
    return await work(own.signal);
  } finally {
    signal.removeEventListener('abort', follow);
  }
}

/** Calls to the Bot API at `apiRoot` (Telegram's own where it is left out). */
export function openApi(token: string, apiRoot?: string): Api {
  const api = new Api(token, { ...(apiRoot === undefined ? {} : { apiRoot }), timeoutSeconds: PATIENCE_SECONDS });
  api.config.use(async (call, method, payload, signal) => {
    try {
      if (signal === undefined) return await call(method, payload);
      return await following(signal as AbortSignal, (own) => call(method, payload, signalOf(own)));
    } catch (error) {
      throw new TelegramUnreachable(method, codeOf(error));
    }
  });
  return api;
}

/** grammY's own type of a signal; Node's does all that it asks. */
export const signalOf = (signal: AbortSignal): NonNullable<Parameters<Api['getMe']>[0]> =>
  signal as unknown as NonNullable<Parameters<Api['getMe']>[0]>;

/** Where trying again will not help, the error that says so. */
export function refusal(error: unknown): TelegramRefused | null {
  if (!(error instanceof GrammyError)) return null;
  switch (error.error_code) {
    case 401:
    case 404:
      return new TelegramRefused('Telegram does not know this token; BotFather shows the right one.', { cause: error });
    case 409:
      return new TelegramRefused("Another program takes this bot's messages; stop it first, then start this one.", {
        cause: error,
      });
    default:
      return null;
  }
}

/** How long Telegram asked us to wait, in seconds; null where it did not. */
export const retryAfterSeconds = (error: unknown): number | null =>
  error instanceof GrammyError && error.error_code === 429 ? (error.parameters.retry_after ?? 1) : null;
