/** `serve` as people run it: in a process of its own, which is stopped, killed and started again. */
import { spawn, type ChildProcess } from 'node:child_process';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, test } from 'vitest';
import type { Watch } from '../../shared/record.js';
import { DEMO_SURVEY, ROOT } from '../../src/settings/index.js';
import { photograph } from '../channels/a-photograph.js';
import { BotApi, type Person } from '../servers/bot-api.js';
import { newFolder, PROGRAM, run, type Ended } from './program.js';

const open: { stop(): unknown }[] = [];
afterEach(async () => {
  for (const one of open.splice(0).reverse()) await one.stop();
});

async function newBot(): Promise<BotApi> {
  const bot = await new BotApi('987654:a-secret-of-the-tests').listen();
  open.push({ stop: () => bot.close() });
  return bot;
}

/** The demo's survey, served by that bot; `minutes` a watch. */
function surveyFor(bot: BotApi, folder: string, minutes = 15): string {
  const path = join(folder, 'survey.yaml');
  const changed = readFileSync(DEMO_SURVEY, 'utf8')
    .replace(/^telegram: .*/m, `telegram: {apiRoot: '${bot.url}'}`)
    .replace(/^ {2}minutes: .*/m, `  minutes: ${minutes}`);
  writeFileSync(path, changed);
  return path;
}

/** A process that serves. */
class Serve {
  readonly #child: ChildProcess;
  stdout = '';
  stderr = '';
  readonly ended: Promise<Ended>;
  constructor(survey: string, data: string, token: string) {
    this.#child = spawn(process.execPath, [PROGRAM, 'serve', '--survey', survey, '--data', data], {
      cwd: ROOT,
      env: { ...process.env, QUEENPOST_TELEGRAM_TOKEN: token },
    });
    this.#child.stdout?.on('data', (text: Buffer) => (this.stdout += text.toString('utf8')));
    this.#child.stderr?.on('data', (text: Buffer) => (this.stderr += text.toString('utf8')));
    this.ended = new Promise((resolve) => {
      this.#child.on('close', (code) => resolve({ stdout: this.stdout, stderr: this.stderr, code }));
    });
    open.push({ stop: () => this.stop('SIGKILL') });
  }
  stop(signal: 'SIGINT' | 'SIGTERM' | 'SIGKILL'): Promise<Ended> {
    this.#child.kill(signal);
    return this.ended;
  }
}

const ANSWERS = [
  'hi',
  'yes',
  '4/22/2026 11:30 to 11:45 am',
  'yes',
  'heron bend landing',
  '66f sunny calm',
  '10x10 ft, meadow',
  'dandelion 20, redbud 400',
  '2 impatiens on dandelion, 1 bimaculatus on redbud',
  'yes',
  'Wren',
  'wren@kestrelfen.example',
];

async function tell(bot: BotApi, person: Person, text: string): Promise<void> {
  const before = bot.said(person.chat).length;
  person.say(text);
  await bot.until(() => bot.said(person.chat).length > before, `an answer to "${text}"`, 60_000);
}

async function storedIn(data: string): Promise<Watch[]> {
  const { stdout, code } = await run(['watches', '--json', '--data', data]);
  expect(code).toBe(0);
  return JSON.parse(stdout) as Watch[];
}

/** Two runs have ids and moments of their own; everything else must be the same. */
const comparable = (watches: readonly Watch[]): unknown =>
  watches.map(
    ({ id: _id, observer: _observer, storedAt: _stored, changedAt: _changed, history: _history, ...rest }) => rest,
  );

const filesIn = (folder: string): string[] =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name));

describe('serve', () => {
  test('says in one line what it runs, leads to a record and a receipt, stops when told, and tells no secret', async () => {
    const bot = await newBot();
    const data = newFolder();
    const serve = new Serve(surveyFor(bot, newFolder()), data, bot.token);
    const wren = bot.person(7);
    for (const text of ANSWERS) await tell(bot, wren, text);
    bot.order('sendMessage', { kind: '502' });
    bot.order('getUpdates', { kind: 'drop-before' });
    await tell(bot, wren, 'help');
    const { stdout, stderr, code } = await serve.stop('SIGTERM');
    expect(code).toBe(0);
    expect(stdout.trimEnd().split('\n')).toEqual([
      `Kestrel Fen Spring Queen Survey: Telegram as @${bot.me.username}, messages asked for; receipts written into ${data}/mail. Ctrl-C stops.`,
      'Stopped.',
    ]);
    expect(await storedIn(data)).toMatchObject([{ number: 1, total: 3, via: 'telegram' }]);
    expect(readdirSync(join(data, 'mail'))).toHaveLength(1);
    for (const text of [stdout, stderr, ...filesIn(data).map((file) => readFileSync(file, 'latin1'))]) {
      expect(text).not.toContain(bot.token);
    }
    for (const text of [stdout, stderr]) expect(text).not.toMatch(/wren|dandelion|heron/i);
  });

  test('killed at several points and started again, the record is that of the unbroken run', async () => {
    const bot = await newBot();
    const survey = surveyFor(bot, newFolder());
    const [whole, broken] = [newFolder(), newFolder()];
    const unbroken = new Serve(survey, whole, bot.token);
    for (const text of ANSWERS) await tell(bot, bot.person(7), text);
    await unbroken.stop('SIGINT');

    const lark = bot.person(8);
    let serve = new Serve(survey, broken, bot.token);
    for (const [at, text] of ANSWERS.entries()) {
      if (at % 4 === 1) {
        // while the message is on its way in, or its answer on its way out
        const polls = bot.calls.length;
        lark.say(text);
        if (at > 4) await bot.until(() => bot.calls.length > polls);
        await serve.stop('SIGKILL');
        serve = new Serve(survey, broken, bot.token);
        await bot.until(() => bot.pending === 0, 'the messages to be taken again', 60_000);
      } else await tell(bot, lark, text);
    }
    await bot.until(() => /Receipts will go/.test(bot.said(8).at(-1) ?? ''), 'the last answer', 60_000);
    await serve.stop('SIGTERM');
    const record = await storedIn(broken);
    expect(record).toHaveLength(1);
    expect(comparable(record)).toEqual(comparable(await storedIn(whole)));
  });

  test('killed while a picture is fetched, the next run fetches it, and takes what was said after it', async () => {
    const bot = await newBot();
    const data = newFolder();
    const survey = surveyFor(bot, newFolder());
    const wren = bot.person(7);
    const first = new Serve(survey, data, bot.token);
    for (const text of ANSWERS.slice(0, 2)) await tell(bot, wren, text);
    const before = bot.said(7).length;
    bot.order('getFile', { kind: 'delay', milliseconds: 4000 });
    wren.photo(photograph({ taken: '2026:04:22 11:36:12' }));
    wren.say('help');
    // acknowledged: Telegram would not bring them again
    await bot.until(() => bot.pending === 0 && bot.calls.some(({ method }) => method === 'getFile'));
    await first.stop('SIGKILL');
    expect(bot.said(7)).toHaveLength(before);
    const second = new Serve(survey, data, bot.token);
    await bot.until(() => bot.said(7).length === before + 2, 'both answers', 60_000);
    await second.stop('SIGTERM');
    expect(bot.said(7)[before]).toMatch(/^Thank you/);
    expect(readdirSync(join(data, 'photos'))).toHaveLength(1);
  });

  test('the end of a live watch is told though it came while the program was not running', async () => {
    const bot = await newBot();
    const data = newFolder();
    const survey = surveyFor(bot, newFolder(), 0.05);
    const wren = bot.person(7);
    const serve = new Serve(survey, data, bot.token);
    for (const text of ['hi', 'yes', 'start']) await tell(bot, wren, text);
    await serve.stop('SIGKILL');
    const before = bot.said(7).length;
    await new Promise((later) => setTimeout(later, 3000));
    expect(bot.said(7)).toHaveLength(before);
    new Serve(survey, data, bot.token);
    // what was sent right before the kill may be sent again first
    await bot.until(() => /^Time\. /.test(bot.said(7).at(-1) ?? ''), 'time up', 60_000);
  });

  test('of two for one bot, one ends with a reason', async () => {
    const bot = await newBot();
    const survey = surveyFor(bot, newFolder());
    const first = new Serve(survey, newFolder(), bot.token);
    await bot.until(() => bot.calls.some(({ method }) => method === 'getUpdates'), 'the first poll', 60_000);
    new Serve(survey, newFolder(), bot.token);
    const { stderr, code } = await first.ended;
    expect(stderr).toBe("Another program takes this bot's messages; stop it first, then start this one.\n");
    expect(code).toBe(1);
  });
});

describe('what cannot be served is one sentence', () => {
  const serveWith = async (token: string | undefined, change: (settings: string) => string): Promise<Ended> => {
    const path = join(newFolder(), 'survey.yaml');
    writeFileSync(path, change(readFileSync(DEMO_SURVEY, 'utf8')));
    const { QUEENPOST_TELEGRAM_TOKEN: _own, ...env } = process.env;
    const child = spawn(process.execPath, [PROGRAM, 'serve', '--survey', path, '--data', newFolder()], {
      cwd: ROOT,
      env: token === undefined ? env : { ...env, QUEENPOST_TELEGRAM_TOKEN: token },
    });
    let [stdout, stderr] = ['', ''];
    child.stdout.on('data', (text: Buffer) => (stdout += text.toString('utf8')));
    child.stderr.on('data', (text: Buffer) => (stderr += text.toString('utf8')));
    return new Promise((resolve) => child.on('close', (code) => resolve({ stdout, stderr, code })));
  };

  test('no token', async () => {
    const ended = await serveWith(undefined, (settings) => settings);
    expect(ended).toEqual({
      stdout: '',
      code: 1,
      stderr: expect.stringMatching(/^[^\n]*QUEENPOST_TELEGRAM_TOKEN[^\n]*\n$/) as string,
    });
  });
  test('no channel', async () => {
    const ended = await serveWith('1:x', (settings) => settings.replace(/^telegram: .*\n/m, ''));
    expect(ended).toEqual({
      stdout: '',
      code: 1,
      stderr: expect.stringMatching(/^[^\n]*names no channel to serve[^\n]*\n$/) as string,
    });
  });
  test('a wrong token', async () => {
    const bot = await newBot();
    const ended = await serveWith('1:wrong', (settings) =>
      settings.replace(/^telegram: .*/m, `telegram: {apiRoot: '${bot.url}'}`),
    );
    expect(ended).toEqual({
      stdout: '',
      code: 1,
      stderr: 'Telegram does not know this token; BotFather shows the right one.\n',
    });
  });
});
