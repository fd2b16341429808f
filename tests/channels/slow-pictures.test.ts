/** Pictures are fetched beside the conversation: slow ones hold their own thread, a stop or a copy changes nothing. */
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { Update } from 'grammy/types';
import { openStore } from '../../src/store/index.js';
import type { BotApi, Person } from '../servers/bot-api.js';
import { photograph } from './a-photograph.js';
import { newBot, serve } from './serving.js';

async function tell(bot: BotApi, person: Person, texts: readonly string[]): Promise<void> {
  for (const text of texts) {
    const before = bot.said(person.chat).length;
    person.say(text);
    await bot.until(() => bot.said(person.chat).length > before, `an answer to "${text}"`);
  }
}

const pictures = (count: number): Buffer[] =>
  Array.from({ length: count }, (_, at) => photograph({ taken: `2026:04:22 11:36:1${at}` }));
const picturesIn = (data: string): number =>
  existsSync(join(data, 'photos')) ? readdirSync(join(data, 'photos')).length : 0;
const fetches = (bot: BotApi): number => bot.calls.filter(({ method }) => method === 'getFile').length;

describe('slow pictures', () => {
  test('are on the disk at once, and hold up only who sent them, in order', async () => {
    const bot = await newBot();
    const { data } = await serve(bot);
    const [wren, lark] = [bot.person(7), bot.person(8)];
    await tell(bot, wren, ['hi', 'yes']);
    const before = bot.said(7).length;
    bot.order('getFile', { kind: 'delay', milliseconds: 1500 }, 3);
    for (const bytes of pictures(3)) wren.photo(bytes);
    wren.say('how do I tell a queen?');
    await bot.until(() => bot.pending === 0, 'the messages to be acknowledged');
    expect(bot.said(7)).toHaveLength(before);
    expect(picturesIn(data)).toBe(0);
    await tell(bot, lark, ['hi', 'yes']);
    expect(bot.said(7)).toHaveLength(before);
    await bot.until(() => bot.said(7).length === before + 4, 'all answers');
    const answers = bot.said(7).slice(before);
    expect(answers.map((text) => /^Thank you, (the|I keep the) photograph/.test(text))).toEqual([
      true,
      true,
      true,
      false,
    ]);
    expect(picturesIn(data)).toBe(3);
    const store = await openStore(join(data, 'queenpost.sqlite'), { readonly: true });
    expect(store.prepared(`select count(*) from inbox where state <> 'done' or file is not null`).pluck().get()).toBe(
      0,
    );
    store.close();
  });

  test('of many people are fetched side by side', async () => {
    const bot = await newBot();
    await serve(bot);
    const people = [1, 2, 3, 4].map((index) => bot.person(index));
    await Promise.all(people.map((person) => tell(bot, person, ['hi', 'yes'])));
    bot.order('getFile', { kind: 'delay', milliseconds: 1500 }, 4);
    for (const person of people) person.photo(pictures(1)[0]!);
    await bot.until(() => fetches(bot) === 4, 'all to be begun', 1400);
    await bot.until(() => people.every(({ chat }) => /photograph/.test(bot.said(chat).at(-1) ?? '')), 'all answers');
  });

  test('that were being fetched when the program stopped are fetched by the next run', async () => {
    const bot = await newBot();
    const first = await serve(bot);
    const wren = bot.person(7);
    await tell(bot, wren, ['hi', 'yes']);
    const before = bot.said(7).length;
    bot.order('getFile', { kind: 'delay', milliseconds: 2500 }, 1);
    for (const bytes of pictures(2)) wren.photo(bytes);
    wren.say('help');
    await bot.until(() => bot.pending === 0 && fetches(bot) === 1);
    const begun = performance.now();
    await first.close();
    expect(performance.now() - begun).toBeLessThan(2000); // it does not wait for them
    expect(picturesIn(first.data)).toBe(0);
    const second = await serve(bot, { data: first.data });
    await bot.until(() => bot.said(7).length === before + 3, 'all answers');
    await second.close();
    expect(bot.said(7)).toHaveLength(before + 3);
    expect(
      bot
        .said(7)
        .slice(before)
        .filter((text) => /^Thank you/.test(text)),
    ).toHaveLength(2);
    expect(picturesIn(first.data)).toBe(2);
  });

  test('that come again meanwhile are fetched and answered once', async () => {
    const bot = await newBot();
    const { close } = await serve(bot);
    const wren = bot.person(7);
    await tell(bot, wren, ['hi', 'yes']);
    const before = bot.said(7).length;
    const sent: Omit<Update, 'update_id'>[] = [];
    const push = bot.push.bind(bot);
    bot.push = (content, id) => {
      sent.push(content);
      return push(content, id);
    };
    bot.order('getFile', { kind: 'delay', milliseconds: 800 }, 1);
    wren.photo(pictures(1)[0]!);
    await bot.until(() => fetches(bot) === 1);
    for (const content of [...sent]) push(content);
    await bot.until(() => bot.said(7).length > before);
    for (const content of [...sent]) push(content);
    await bot.until(() => bot.pending === 0);
    await tell(bot, wren, ['help']);
    await close();
    expect(bot.said(7)).toHaveLength(before + 2);
    expect(fetches(bot)).toBe(1);
  });
});

test('nothing is fetched from who has not agreed, and several pictures draw one welcome', async () => {
  const bot = await newBot();
  const { data, close } = await serve(bot);
  const wren = bot.person(7);
  for (const bytes of pictures(4)) wren.photo(bytes);
  wren.say('hello there');
  await bot.until(() => bot.said(7).length === 2);
  expect(bot.said(7)[0]).toMatch(
    /^Hello![^]*I keep no photograph before your yes, so please send it once more after that/,
  );
  expect(bot.seen(7).find(({ fromBot }) => fromBot)?.buttons).toEqual([['yes', 'no']]);
  await tell(bot, wren, ['yes']);
  expect(fetches(bot)).toBe(0);
  expect(picturesIn(data)).toBe(0);
  wren.photo(pictures(1)[0]!);
  await bot.until(() => /^Thank you.*photograph/.test(bot.said(7).at(-1) ?? ''));
  await close();
  expect(picturesIn(data)).toBe(1);
});
