/** Replies on the phone: what they are about is found by the ids of the messages that were sent and came. */
import { expect, test } from 'vitest';
import { join } from 'node:path';
import { openStore } from '../../src/store/index.js';
import type { BotApi, Person } from '../servers/bot-api.js';
import { photograph } from './a-photograph.js';
import { newBot, serve, storedIn } from './serving.js';

async function answered(bot: BotApi, chat: number, say: () => void): Promise<string> {
  const before = bot.said(chat).length;
  say();
  await bot.until(() => bot.said(chat).length > before, 'an answer');
  return bot.said(chat).at(-1) ?? '';
}
async function tell(bot: BotApi, person: Person, texts: readonly string[]): Promise<void> {
  for (const text of texts) await answered(bot, person.chat, () => person.say(text));
}
const watch = (from: string, to: string): string[] => [
  `4/22/2026 ${from} to ${to} am`,
  'yes',
  'heron bend landing',
  '66f sunny calm',
  '10x10 ft, meadow',
  'dandelion 20',
  'none',
  'yes',
];

test('a picture or words under an older message are about its watch, also after a restart', async () => {
  const bot = await newBot();
  const first = await serve(bot);
  const wren = bot.person(7);
  await tell(bot, wren, ['hi', 'yes', ...watch('10:30', '10:45'), 'skip', 'skip']);
  const told = bot.seen(7).find(({ text }) => text === 'dandelion 20')!.id;
  const summary = bot.seen(7).find(({ text }) => text.startsWith('Here is your watch'))!.id;
  const done = bot.seen(7).find(({ text }) => text.startsWith('Stored as watch 1'))!.id;
  await first.close();
  const { data } = await serve(bot, { data: first.data });
  await tell(bot, wren, [...watch('11:30', '11:45')]);

  const [a, b, c] = ['10', '11', '12'].map((second) => photograph({ taken: `2026:04:22 10:31:${second}` }));
  const joined = (bytes: Buffer, to: number): Promise<string> =>
    answered(bot, 7, () => wren.photo(bytes, undefined, bot.replyTo(7, to)));
  expect(await joined(a!, done)).toMatch(/^The photograph is with watch 1 now\./);
  expect(await joined(b!, summary)).toMatch(/^The photograph is with watch 1 now\./);
  expect(await joined(c!, told)).toMatch(/^The photograph is with watch 1 now\./); // their own message
  expect((await storedIn(data)).map(({ photographs }) => photographs.length)).toEqual([3, 0]);

  const opened = await answered(bot, 7, () => wren.say('it was 60 F', bot.replyTo(7, summary)));
  expect(opened).toMatch(/^I opened watch 1 again\.\n[^]*60 °F/);
  await tell(bot, wren, ['yes']);
  expect((await storedIn(data)).map(({ temperature }) => temperature?.celsius)).toEqual([15.6, 18.9]);
});

test('one to a message about a watch that somebody else has is about nothing of theirs', async () => {
  const bot = await newBot();
  const { data } = await serve(bot);
  const [wren, lark] = [bot.person(7), bot.person(8)];
  await tell(bot, wren, ['hi', 'yes', ...watch('10:30', '10:45')]);
  await tell(bot, lark, ['hi', 'yes', '4/22/2026 11:30 to 11:45 am']);
  const done = bot.seen(7).find(({ text }) => text.startsWith('Stored as watch 1'))!.id;
  // such a reply would be forged: the ids are those of another chat
  await answered(bot, 8, () =>
    lark.photo(photograph({ taken: '2026:04:22 10:31:10' }), undefined, bot.replyTo(7, done)),
  );
  expect((await storedIn(data)).map(({ photographs }) => photographs.length)).toEqual([0]);
});

test('of what was sent only what is about a report is kept with its id', async () => {
  const bot = await newBot();
  const { data, close } = await serve(bot);
  const wren = bot.person(7);
  await tell(bot, wren, ['hi', 'yes', 'how do I tell a queen?']);
  await close();
  const store = await openStore(join(data, 'queenpost.sqlite'), { readonly: true });
  const kept = store.prepared(`select handle is not null from outbox order by sequence`).pluck().all();
  store.close();
  expect(kept[0]).toBe(0); // the welcome
  expect(kept.at(-1)).toBe(1);
});
