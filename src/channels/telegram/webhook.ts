/**
 * Lets Telegram bring updates. It listens on this machine alone, behind a web server that has the certificate. An
 * update is answered when it is on the disk; Telegram brings again what was not answered with 200.
 */
import { createHash, createHmac, timingSafeEqual } from 'node:crypto';
import { once } from 'node:events';
import { createServer, type IncomingMessage } from 'node:http';
import type { Api } from 'grammy';
import type { Update } from 'grammy/types';
import { signalOf } from './api.js';
import { WANTED_UPDATES } from './updates.js';
import { pause, untilDone, type Trying } from './waiting.js';

export interface Webhook extends Trying {
  readonly api: Api;
  readonly token: string;
  /** Where Telegram brings updates, and where the web server in front passes them on to. */
  readonly url: string;
  readonly port: number;
  readonly path: string;
  readonly take: (updates: readonly Update[]) => Promise<void>;
}

/** An update is a few kilobytes; pictures are fetched, not brought. */
const MOST_BYTES = 1024 * 1024;

/** For updates that are being brought when the program is told to stop: an unanswered one is brought again. */
const LAST_WORDS_MILLISECONDS = 2000;

/** The same at every start, so that what was on its way during a restart is not refused; tells nothing of the token. */
export const secretFor = (token: string, url: string): string =>
  createHmac('sha256', token).update(`webhook ${url}`).digest('hex');

const digest = (text: string): Buffer => createHash('sha256').update(text).digest();

async function bodyOf(request: IncomingMessage): Promise<string | null> {
  const parts: Buffer[] = [];
  let bytes = 0;
  for await (const part of request as AsyncIterable<Buffer>) {
    bytes += part.length;
    if (bytes > MOST_BYTES) return null;
    parts.push(part);
  }
  return Buffer.concat(parts).toString('utf8');
}

function updateIn(body: string): Update | null {
  try {
    const update = JSON.parse(body) as Update | null;
    return typeof update?.update_id === 'number' ? update : null;
  } catch {
    return null;
  }
}

/** Runs until told to stop; what came before is answered first. Throws where the port cannot be listened at. */
export async function listen({ api, token, url, port, path, take, ...trying }: Webhook): Promise<void> {
  const secret = secretFor(token, url);

  /** The status to answer with. */
  async function answerTo(request: IncomingMessage): Promise<number> {
    if (request.method !== 'POST' || request.url !== path) return 404;
    const given = request.headers['x-telegram-bot-api-secret-token'];
    // digests, since the comparison takes the same time only for texts of one length
    if (typeof given !== 'string' || !timingSafeEqual(digest(given), digest(secret))) return 401;
    const body = await bodyOf(request);
    const update = body === null ? null : updateIn(body);
    if (update === null) return 400;
    try {
      await take([update]);
      return 200;
    } catch (error) {
      trying.report(`An update was not stored (${error instanceof Error ? error.message : String(error)}).`);
      return 503;
    }
  }

  const server = createServer((request, response) => {
    answerTo(request).then(
      (status) => response.writeHead(status, { connection: 'close' }).end(),
      () => response.destroy(), // the connection broke while it was read
    );
  });
  server.listen(port, '127.0.0.1');
  await once(server, 'listening');
  try {
    const wanted = { secret_token: secret, allowed_updates: WANTED_UPDATES };
    await untilDone(() => api.setWebhook(url, wanted, signalOf(trying.stop)), trying);
    while (!trying.stop.aborted) await pause(3600, trying.stop);
  } finally {
    server.close();
    // one that brings nothing would hold the end up for ever; what is answered by then has closed
    const late = setTimeout(() => server.closeAllConnections(), LAST_WORDS_MILLISECONDS);
    await once(server, 'close');
    clearTimeout(late);
  }
}
