/** Fetches a picture or file that somebody sent. */
import { GrammyError, type Api } from 'grammy';
import { setTimeout as sleep } from 'node:timers/promises';
import type { Content } from '../../../shared/message.js';
import { keepPhotograph } from '../photographs.js';

/** Telegram hands out files of up to 20 MB. */
const MOST_BYTES = 20 * 1024 * 1024;
const PATIENCE_MILLISECONDS = 20_000;
const WAITS_SECONDS = [0, 1, 2] as const;
/** At a time, so that a hundred pictures that come at once do not fill the memory. */
const SIDE_BY_SIDE = 4;

export interface FetchParts {
  readonly api: Api;
  readonly token: string;
  readonly apiRoot: string;
  /** Where photographs are kept. */
  readonly folder: string;
  readonly timeZone: string;
}

export interface SentFile {
  readonly fileId: string;
  readonly name: string;
  /** Telegram does not always know. */
  readonly bytes: number | undefined;
}

const notTaken = (name: string, problem: 'too-big' | 'not-fetched' | null): Content => ({
  kind: 'file',
  name,
  problem,
});

const isTooBig = (error: unknown): boolean =>
  error instanceof GrammyError && error.error_code === 400 && error.description.includes('file is too big');

/** Null where it is more than we take. */
async function bodyOf(response: Response): Promise<Buffer | null> {
  const parts: Uint8Array[] = [];
  let bytes = 0;
  for await (const part of (response.body ?? []) as AsyncIterable<Uint8Array>) {
    bytes += part.length;
    if (bytes > MOST_BYTES) return null;
    parts.push(part);
  }
  return Buffer.concat(parts);
}

async function download({ api, token, apiRoot }: FetchParts, fileId: string): Promise<Buffer | null> {
  const { file_path } = await api.getFile(fileId);
  const response = await fetch(`${apiRoot}/file/bot${token}/${file_path ?? ''}`, {
    signal: AbortSignal.timeout(PATIENCE_MILLISECONDS),
  });
  if (!response.ok) {
    await response.body?.cancel();
    throw new Error(`the file was answered with ${response.status}`);
  }
  return bodyOf(response);
}

/** Lets so many work at a time; the others wait their turn. */
function turns(most: number): <Result>(work: () => Promise<Result>) => Promise<Result> {
  let free = most;
  const waiting: (() => void)[] = [];
  return async (work) => {
    if (free === 0) await new Promise<void>((turn) => waiting.push(turn));
    else free -= 1;
    try {
      return await work();
    } finally {
      const next = waiting.shift();
      if (next) next();
      else free += 1;
    }
  };
}

/**
 * Gives a function that fetches a file and keeps it: its content for a message, a photograph or why it is none. A file
 * that cannot be fetched at the third try is given up, and its sender asked to send it once more: it must not hold up
 * everybody. Rejected where the data folder cannot be written.
 */
export function fetcher(parts: FetchParts): (file: SentFile) => Promise<Content> {
  const inTurn = turns(SIDE_BY_SIDE);
  return ({ fileId, name, bytes }) =>
    inTurn(async () => {
      if (bytes !== undefined && bytes > MOST_BYTES) return notTaken(name, 'too-big');
      for (const seconds of WAITS_SECONDS) {
        await sleep(seconds * 1000);
        let body: Buffer | null;
        try {
          body = await download(parts, fileId);
        } catch (error) {
          if (isTooBig(error)) return notTaken(name, 'too-big');
          continue;
        }
        if (body === null) return notTaken(name, 'too-big');
        return (await keepPhotograph(body, parts)) ?? notTaken(name, null);
      }
      return notTaken(name, 'not-fetched');
    });
}
