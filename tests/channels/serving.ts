/** A survey served over an emulated Bot API, in this process. */
import { mkdtempSync, rmSync } from 'node:fs';
import { createServer, type AddressInfo } from 'node:net';
import { once } from 'node:events';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach } from 'vitest';
import type { Watch } from '../../shared/record.js';
import type { SurveySettings } from '../../shared/survey.js';
import { serveSurvey } from '../../src/commands/serving.js';
import { openStore, watchesOf } from '../../src/store/index.js';
import { survey as demo } from '../demo-survey.js';
import { BotApi } from '../servers/bot-api.js';

const folders: string[] = [];
const open: { close(): Promise<unknown> }[] = [];
afterEach(async () => {
  await Promise.all(open.splice(0).map((one) => one.close()));
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
});

export function newData(): string {
  const folder = mkdtempSync(join(tmpdir(), 'queenpost-serve-'));
  folders.push(folder);
  return join(folder, 'data');
}

export async function newBot(): Promise<BotApi> {
  const bot = await new BotApi().listen();
  open.push(bot);
  return bot;
}

export async function freePort(): Promise<number> {
  const server = createServer().listen(0, '127.0.0.1');
  await once(server, 'listening');
  const { port } = server.address() as AddressInfo;
  server.close();
  await once(server, 'close');
  return port;
}

export interface Serving {
  readonly data: string;
  /** Lines for whoever runs it. */
  readonly reported: string[];
  /** Kept when it has ended; rejected where it gave up. */
  readonly ended: Promise<void>;
  close(): Promise<void>;
}

export async function serve(
  bot: BotApi,
  { data = newData(), token = bot.token, mail = demo.settings.mail, ...telegram }: ServeParts = {},
): Promise<Serving> {
  const stop = new AbortController();
  const reported: string[] = [];
  const settings: SurveySettings = {
    ...demo.settings,
    ...(mail === undefined ? {} : { mail }),
    telegram: { apiRoot: bot.url, ...telegram },
  };
  let isReady = (): void => undefined;
  const ready = new Promise<void>((done) => (isReady = done));
  const survey = { ...demo, settings };
  const report = (line: string): void => void reported.push(line);
  const ended = serveSurvey({ survey, data, token, stop, report, ready: isReady });
  const serving = {
    data,
    reported,
    ended,
    async close() {
      stop.abort();
      await ended;
    },
  };
  open.push({ close: () => serving.close().catch(() => undefined) });
  await Promise.race([ready, ended]);
  return serving;
}
type ServeParts = { data?: string; token?: string; mail?: SurveySettings['mail'] } & NonNullable<
  SurveySettings['telegram']
>;

/** All stored watches, read beside the program that serves. */
export async function storedIn(data: string): Promise<Watch[]> {
  const store = await openStore(join(data, 'queenpost.sqlite'), { readonly: true });
  try {
    return [...watchesOf(store, demo.settings.key)];
  } finally {
    store.close();
  }
}
