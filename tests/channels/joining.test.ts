/** The same person on two phones, joined by a code that a real mail server took; then forgotten in both. */
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { BotApi, Person } from '../servers/bot-api.js';
import { mailServer } from '../servers/mail-server.js';
import { newBot, serve, storedIn } from './serving.js';

const MAIL = 'wren@kestrelfen.example';
const watch = (time: string): string[] => [
  'hi',
  'yes',
  `4/22/2026 ${time}`,
  'yes',
  'heron bend landing',
  '66f sunny calm',
  '10x10 ft, meadow',
  'dandelion 20',
  'none',
  'yes',
];

const last = (bot: BotApi, { chat }: Person): string => bot.said(chat).at(-1) ?? '';
async function tell(bot: BotApi, person: Person, texts: readonly string[]): Promise<void> {
  for (const text of texts) {
    const before = bot.said(person.chat).length;
    person.say(text);
    await bot.until(() => bot.said(person.chat).length > before, `an answer to "${text}"`);
  }
}

const files = (folder: string): string[] =>
  readdirSync(folder).flatMap((name) => {
    const path = join(folder, name);
    return statSync(path).isDirectory() ? files(path) : [path];
  });
/** Files that hold the words. */
const traces = (data: string, words: string): string[] =>
  files(data).filter((path) => readFileSync(path).toString('latin1').includes(words));

test('two phones become one observer, and are forgotten as one', async () => {
  const server = await mailServer();
  const bot = await newBot();
  const mail = {
    from: 'queenpost@kestrelfen.example',
    server: { host: '127.0.0.1', port: server.port, security: 'none' },
  } as const;
  const { data, reported, close } = await serve(bot, { mail });
  const [old, fresh] = [bot.person(7), bot.person(8)];
  await tell(bot, old, [...watch('11:30 to 11:45 am'), 'Wren', MAIL]);
  await tell(bot, fresh, [...watch('2:30 to 2:45 pm'), 'Wren', MAIL]);
  // the same words as for an address that nobody has
  expect(last(bot, fresh)).toBe(last(bot, old));
  const codeIn = (text: string): string | undefined => /write (\d{6})\s/.exec(text.replace(/=\r\n/g, ''))?.[1];
  await bot.until(() => server.taken.some((text) => codeIn(text) !== undefined), 'the mail with the code');
  const code = server.taken.map(codeIn).find((found) => found !== undefined)!;
  expect(server.recipients.every((address) => address === MAIL)).toBe(true);

  await tell(bot, fresh, [code]);
  expect(last(bot, fresh)).toMatch(/^That is the code\. Now write it in your other thread too/);
  await tell(bot, old, [code]);
  expect(last(bot, old)).toMatch(/^Your two threads are one now/);
  await bot.until(() => /is one with this one now/.test(last(bot, fresh)), 'word to the other thread');
  const [first, second] = await storedIn(data);
  expect(first?.observer).toBe(second?.observer);
  await tell(bot, fresh, ['what have you got']);
  expect(last(bot, fresh)).toMatch(/You have 2 stored watches this season/);
  // the mail is out, so the code stands nowhere but in what they typed
  expect(JSON.stringify(reported)).not.toContain(MAIL);

  await tell(bot, old, ['forget me', 'yes']);
  await bot.until(() => traces(data, MAIL).length === 0 && traces(data, code).length === 0, 'no trace of either');
  await tell(bot, fresh, ['hello']);
  expect(last(bot, fresh)).toMatch(/May I keep your answers/);
  const left = await storedIn(data);
  expect(left.map(({ number }) => number)).toEqual([1, 2]);
  expect(left.some(({ observer }) => observer === first?.observer)).toBe(false);
  await close();
  await server.close();
});
