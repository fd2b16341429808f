/** Fetches a picture or file that somebody sent. */
import { GrammyError, type Api } from 'grammy';
import { setTimeout as sleep } from 'node:timers/promises';
import { z } from 'zod';
import type { Content } from '../../../shared/message.js';
import type { Fetch } from '../../exchange/index.js';
import { keepPhotograph } from '../photographs.js';
import { following, signalOf } from './api.js';

/** Telegram hands out files of up to 20 MB. */
const MOST_BYTES = 20 * 1024 * 1024;
const PATIENCE_MILLISECONDS = 20_000;
const WAITS_SECONDS = [0, 1, 2] as const;

export interface FetchParts {
  readonly api: Api;
  readonly token: string;
  readonly apiRoot: string;
  /** Where photographs are kept. */
  readonly folder: string;
  readonly timeZone: string;
}

const sentFileSchema = z.strictObject({
  fileId: z.string(),
  name: z.string(),
  /** Telegram does not always know. */
  bytes: z.number().optional(),
  /** Sent as a picture and not as a file. */
  compressed: z.literal(true).optional(),
});
/** A picture or file as a message names it; kept with the message as JSON until it is fetched. */
export type SentFile = z.infer<typeof sentFileSchema>;

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

async function download(
  { api, token, apiRoot }: FetchParts,
  fileId: string,
  stop: AbortSignal,
): Promise<Buffer | null> {
  const { file_path } = await api.getFile(fileId, signalOf(stop));
  const response = await fetch(`${apiRoot}/file/bot${token}/${file_path ?? ''}`, {
    signal: AbortSignal.any([stop, AbortSignal.timeout(PATIENCE_MILLISECONDS)]),
  });
  if (!response.ok) {
    await response.body?.cancel();
    throw new Error(`the file was answered with ${response.status}`);
  }
  return bodyOf(response);
}

/**
 * The fetching function: keeps the file, and gives its content for a message, a photograph or why it is none. One that
 * cannot be fetched at the third try is given up, and its sender asked to send it once more. Rejected where the data folder
 * cannot be written, and when told to stop.
 */
export function fetchBy(parts: FetchParts): Fetch {
  const fetchUntil = async (text: string, stop: AbortSignal): Promise<Content> => {
    const { fileId, name, bytes, compressed } = sentFileSchema.parse(JSON.parse(text));
    if (bytes !== undefined && bytes > MOST_BYTES) return notTaken(name, 'too-big');
    for (const seconds of WAITS_SECONDS) {
      await sleep(seconds * 1000, undefined, { signal: stop });
      let body: Buffer | null;
      try {
        body = await download(parts, fileId, stop);
      } catch (error) {
        stop.throwIfAborted();
        if (isTooBig(error)) return notTaken(name, 'too-big');
        continue;
      }
      if (body === null) return notTaken(name, 'too-big');
      const kept = await keepPhotograph(body, parts);
      if (kept === null) return notTaken(name, null);
      return compressed === true && kept.kind === 'photo' ? { ...kept, compressed } : kept;
    }
    return notTaken(name, 'not-fetched');
  };
  return (text, stop) => following(stop, (own) => fetchUntil(text, own));
}
