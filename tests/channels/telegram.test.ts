/** The phone thread against an emulated Bot API: what people see, what is stored, and what failures leave of it. */
import { createHash } from 'node:crypto';
import { once } from 'node:events';
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { connect } from 'node:net';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { Update } from 'grammy/types';
import { failedReplies, openStore } from '../../src/store/index.js';
import { survey } from '../demo-survey.js';
import type { BotApi, Person } from '../servers/bot-api.js';
import { photograph } from './a-photograph.js';
import { freePort, newBot, newData, serve, storedIn } from './serving.js';

/** A whole watch, one answer after another; the date is long ago and asked back, whenever the tests run. */
const answers = ({ fahrenheit = 66, flowers = 20, queens = 'none' } = {}): string[] => [
  'hi',
  'yes',
  '4/22/2026 11:30 to 11:45 am',
  'yes',
  'heron bend landing',
  `${fahrenheit}f sunny calm`,
  '10x10 ft, meadow',
  `dandelion ${flowers}`,
  queens,
  'yes',
];

/** Says each, after the bot has answered what was said before. */
async function tell(bot: BotApi, person: Person, texts: readonly string[]): Promise<void> {
  for (const text of texts) {
    const before = bot.said(person.chat).length;
    person.say(text);
    await bot.until(() => bot.said(person.chat).length > before, `an answer to "${text}"`);
  }
}
const last = (bot: BotApi, person: Person): string => bot.said(person.chat).at(-1) ?? '';

describe('a conversation', () => {
  test('leads to a record, with buttons that are as good as words', async () => {
    const bot = await newBot();
    const { data, close } = await serve(bot);
    const wren = bot.person(7);
    const press = async (words: string, message?: number): Promise<void> => {
      const before = bot.said(7).length;
      wren.press(words, message);
      await bot.until(() => bot.said(7).length > before, `an answer to the button "${words}"`);
    };
    await tell(bot, wren, ['/start']);
    expect(bot.seen(7).at(-1)?.buttons).toEqual([['yes', 'no']]);
    await press('yes');
    await tell(bot, wren, answers({ queens: '2 impatiens' }).slice(2, -1));
    const summary = bot.seen(7).at(-1);
    expect(summary?.text).toMatch(/^Here is your watch.*\n1\. Date: .*\n2\. Time: /);
    expect(summary?.buttons).toEqual([['yes', 'change']]);
    await press('yes');
    expect(last(bot, wren)).toMatch(/Stored as watch 1/);
    expect(await storedIn(data)).toMatchObject([
      { number: 1, date: '2026-04-22', times: { start: '11:30', end: '11:45' }, total: 2, via: 'telegram' },
    ]);
    // the summary's button is of a watch that is stored: pressing it once more changes nothing, and says so
    await press('yes', summary?.id);
    expect(last(bot, wren)).toMatch(/That button belongs to an earlier question/);
    await close();
    expect(await storedIn(data)).toHaveLength(1);
    expect(bot.pressesAnswered).toHaveLength(3);
  });

  test('a “yes” of the summary is stale once something else is asked', async () => {
    const bot = await newBot();
    const { data } = await serve(bot);
    const wren = bot.person(7);
    await tell(bot, wren, answers().slice(0, -1));
    const summary = bot.seen(7).at(-1)!;
    await tell(bot, wren, ['throw it away']);
    const before = bot.said(7).length;
    wren.press('yes', summary.id);
    await bot.until(() => bot.said(7).length > before);
    expect(last(bot, wren)).toMatch(/That button belongs to an earlier question/);
    await tell(bot, wren, ['no']);
    expect(last(bot, wren)).toMatch(/^I kept it/);
    await tell(bot, wren, ['yes']);
    expect(await storedIn(data)).toHaveLength(1);
  });

  test('a changed message is read again, also the second time', async () => {
    const bot = await newBot();
    const { data } = await serve(bot);
    const wren = bot.person(7);
    await tell(bot, wren, answers().slice(0, 5));
    const weather = wren.say('66f sunny calm');
    await bot.until(() => /How big/.test(last(bot, wren)));
    for (const [text, said] of [
      ['68f sunny calm', /68 °F/],
      ['71f overcast calm', /71 °F · overcast/],
    ] as const) {
      const before = bot.said(7).length;
      wren.edit(weather, text);
      await bot.until(() => bot.said(7).length > before);
      expect(last(bot, wren)).toMatch(/I read your changed message again/);
      expect(last(bot, wren)).toMatch(said);
    }
    await new Promise((later) => setTimeout(later, 1100)); // what is sent has a time in seconds
    await tell(bot, wren, answers().slice(6));
    expect(await storedIn(data)).toMatchObject([{ temperature: { celsius: 21.7 }, sky: { cloud: 'overcast' } }]);
    // the watch is stored: nothing of it is open, and the old answer begins no other
    const before = bot.said(7).length;
    wren.edit(weather, '50f overcast calm');
    await bot.until(() => bot.said(7).length > before);
    expect(last(bot, wren)).toMatch(/not sure what that changed message should change/);
  });

  test('a sent position is the place', async () => {
    const bot = await newBot();
    const { data } = await serve(bot);
    const wren = bot.person(7);
    await tell(bot, wren, answers().slice(0, 4));
    const before = bot.said(7).length;
    wren.send({ location: { latitude: 43.5121, longitude: -90.6402, horizontal_accuracy: 12 } });
    await bot.until(() => bot.said(7).length > before);
    await tell(bot, wren, answers().slice(5));
    expect(await storedIn(data)).toMatchObject([{ place: { latitude: 43.5121, uncertaintyMetres: 12 } }]);
  });

  test('words of people are shown as they are, whatever is in them', async () => {
    const bot = await newBot();
    await serve(bot);
    const wren = bot.person(7);
    const nasty = 'the <b>*_old_* [barn](x)</b> & `gate` meadow';
    await tell(bot, wren, [...answers().slice(0, 4), nasty]);
    await tell(bot, wren, ['no']);
    await tell(bot, wren, ['what have you got']);
    expect(last(bot, wren)).toContain(nasty);
    expect(bot.calls.some(({ parameters }) => 'parse_mode' in parameters)).toBe(false);
  });

  test('what is kept of somebody is sent to them as a file', async () => {
    const bot = await newBot();
    await serve(bot);
    const wren = bot.person(7);
    await tell(bot, wren, [...answers(), 'Wren', 'wren@kestrelfen.example', 'what do you keep about me']);
    wren.press('yes');
    await bot.until(() => bot.documents.length > 0);
    expect(bot.documents).toMatchObject([
      { chat: 7, text: expect.stringContaining('wren@kestrelfen.example') as string },
    ]);
  });

  test('their pictures come with it, as they were sent', async () => {
    const bot = await newBot();
    const { data } = await serve(bot);
    const wren = bot.person(7);
    const pictures = ['2026:05:06 14:12:30', '2026:05:06 14:13:00'].map((taken) => photograph({ taken }));
    await tell(bot, wren, answers().slice(0, -1));
    const before = bot.said(7).length;
    for (const [at, bytes] of pictures.entries()) wren.document(bytes, `IMG_${at}.jpg`, 'image/jpeg');
    await bot.until(() => bot.said(7).length >= before + 2);
    await tell(bot, wren, ['yes', 'skip', 'skip', 'what do you keep about me']);
    wren.press('yes');
    await bot.until(() => bot.documents.length >= 3);
    const [told, ...given] = bot.documents;
    expect(bot.said(7).some((text) => text.endsWith('Your 2 pictures follow, as they came.'))).toBe(true);
    expect(given.map(({ bytes }) => bytes.toString('base64')).sort()).toEqual(
      pictures.map((bytes) => bytes.toString('base64')).sort(),
    );
    // the file of all data names them by their hashes
    for (const { bytes } of given) expect(told?.text).toContain(createHash('sha256').update(bytes).digest('hex'));
    expect(await storedIn(data)).toHaveLength(1);
  });

  test('what cannot be taken is answered', async () => {
    const bot = await newBot();
    await serve(bot);
    const wren = bot.person(7);
    await tell(bot, wren, ['hi', 'yes']);
    const before = bot.said(7).length;
    wren.send({ sticker: { file_id: 's', file_unique_id: 's' } });
    await bot.until(() => bot.said(7).length > before);
    expect(last(bot, wren)).toMatch(/I can take photographs, but no other files/);
  });
});

describe('photographs', () => {
  const jpeg = photograph({ taken: '2026:04:22 11:36:12' });
  const SHA256 = createHash('sha256').update(jpeg).digest('hex');

  test('are kept by what they hold, for the owner alone, with the time they were taken', async () => {
    const bot = await newBot();
    const { data } = await serve(bot);
    const wren = bot.person(7);
    await tell(bot, wren, answers().slice(0, -1));
    const before = bot.said(7).length;
    wren.document(jpeg, 'IMG_1.jpg', 'image/jpeg');
    wren.photo(jpeg);
    await bot.until(() => bot.said(7).length >= before + 2);
    await tell(bot, wren, ['yes']);
    expect(await storedIn(data)).toMatchObject([
      { photographs: [{ sha256: SHA256, type: 'image/jpeg', takenAt: '2026-04-22T16:36:12Z' }] },
    ]);
    const kept = join(data, 'photos', SHA256);
    expect(readdirSync(join(data, 'photos'))).toEqual([SHA256]);
    expect(readFileSync(kept).equals(jpeg)).toBe(true);
    expect(statSync(kept).mode & 0o777).toBe(0o600);
  });

  test('sent as a file it offers its place, and only a yes keeps that', async () => {
    const bot = await newBot();
    const { data, reported, close } = await serve(bot);
    const wren = bot.person(7);
    await tell(bot, wren, answers().slice(0, 4));
    const before = bot.said(7).length;
    const at = { latitude: 43.61234, longitude: -90.71234 };
    wren.document(photograph({ at }), 'IMG_1.jpg', 'image/jpeg');
    await bot.until(() => bot.said(7).length > before);
    expect(last(bot, wren)).toContain('Your picture says 43.61234, -90.71234: is that where you watched?');
    await tell(bot, wren, ['no', ...answers().slice(4)]);
    expect(await storedIn(data)).toMatchObject([{ place: { site: 'heron-bend' }, photographs: [{}] }]);
    await close();
    expect(reported.join()).not.toContain('43.6');
    const database = readdirSync(data).filter((name) => name.startsWith('queenpost.sqlite'));
    for (const name of database) expect(readFileSync(join(data, name)).toString('latin1')).not.toContain('43.61234');
  });

  test('a file that is none, one that is too big and one that cannot be fetched are answered', async () => {
    const bot = await newBot();
    const { data } = await serve(bot);
    const wren = bot.person(7);
    await tell(bot, wren, ['hi', 'yes']);
    const sent = async (send: () => void): Promise<string> => {
      const before = bot.said(7).length;
      send();
      await bot.until(() => bot.said(7).length > before);
      return last(bot, wren);
    };
    expect(await sent(() => wren.document(Buffer.from('<svg/>'), 'bee.jpg', 'image/jpeg'))).toMatch(/no other files/);
    expect(await sent(() => wren.document(jpeg, 'bee.jpg', 'image/jpeg', 21 * 1024 * 1024))).toMatch(/20 MB at most/);
    bot.order('download', { kind: '502' }, 3);
    expect(await sent(() => wren.photo(jpeg))).toMatch(/could not fetch that photograph/);
    bot.order('download', { kind: '502' }, 2);
    expect(await sent(() => wren.photo(jpeg))).toMatch(/Thank you, the photograph/);
    expect(existsSync(join(data, 'photos', SHA256))).toBe(true);
  });
});

describe('a live watch', () => {
  test('is acknowledged in one message that changes, without a sound', async () => {
    const bot = await newBot();
    const { data } = await serve(bot);
    const wren = bot.person(7);
    await tell(bot, wren, ['hi', 'yes', 'start']);
    const started = bot.seen(7).length;
    const acknowledged = () =>
      bot
        .seen(7)
        .slice(started)
        .filter(({ fromBot }) => fromBot);
    const tally = async (text: string, edits: number): Promise<number> => {
      const id = wren.say(text);
      await bot.until(() => acknowledged().at(-1)?.edits === edits, `an acknowledgement of "${text}"`);
      return id;
    };
    await tally('1 imp on dandelion', 0);
    const second = await tally('2 imp on dandelion', 1);
    await tally('+1', 2);
    expect(acknowledged()).toMatchObject([{ silent: true, text: expect.stringMatching(/4/) as string }]);
    // a tally that was mistyped and changed counts once
    wren.edit(second, '1 imp on dandelion');
    await bot.until(() => acknowledged().at(-1)?.edits === 3);
    expect(acknowledged()).toMatchObject([{ text: expect.stringMatching(/3/) as string }]);
    // somebody deletes the message: the next acknowledgement is a new one, and goes on being changed
    wren.deleteMessage(acknowledged()[0]!.id);
    await tally('+1', 0);
    await tally('undo', 1);
    expect(acknowledged()).toHaveLength(1);
    wren.photo(photograph({ taken: '2026:04:22 11:36:05' }));
    await bot.until(() => acknowledged().at(-1)?.edits === 2, 'an acknowledgement of the picture');
    wren.send({ sticker: { file_id: 'f', file_unique_id: 'u' } });
    await bot.until(() => acknowledged().at(-1)?.edits === 3, 'an acknowledgement of the sticker');
    expect(acknowledged()).toMatchObject([
      { silent: true, text: expect.stringMatching(/^I can take photographs/) as string },
    ]);
    await tell(bot, wren, ['stop']);
    expect(bot.seen(7).at(-1)).toMatchObject({ fromBot: true, silent: false });
    expect(await storedIn(data)).toEqual([]);
  });
});

test('a live watch is counted with buttons, in one message that changes without a sound', async () => {
  const bot = await newBot();
  const { data } = await serve(bot);
  const wren = bot.person(7);
  await tell(bot, wren, ['hi', 'yes', 'start']);
  expect(bot.seen(7).at(-1)?.buttons).toEqual([['pause']]);
  const started = bot.seen(7).length;
  const acknowledged = () =>
    bot
      .seen(7)
      .slice(started)
      .filter(({ fromBot }) => fromBot);
  const afterEdits = (edits: number): Promise<void> =>
    bot.until(() => acknowledged().at(-1)?.edits === edits, `acknowledgement ${edits}`);
  wren.say('bluebells, phlox');
  await afterEdits(0);
  wren.say('1 imp on phlox');
  await afterEdits(1);
  expect(acknowledged().at(-1)?.buttons).toEqual([
    ['common eastern on Virginia bluebells'],
    ['common eastern on phlox'],
    ['same one on Virginia bluebells'],
    ['undo', 'pause'],
  ]);
  const presses = ['common eastern on phlox', 'same one on Virginia bluebells', 'undo', 'pause'];
  for (const [at, words] of presses.entries()) {
    wren.press(words);
    await afterEdits(at + 2);
  }
  expect(acknowledged()).toMatchObject([{ silent: true, text: 'Clock stopped. “Go on” starts it again.' }]);
  expect(acknowledged().at(-1)?.buttons).toEqual([['go on', 'stop']]);
  wren.press('stop');
  await bot.until(() => /^Time\./.test(last(bot, wren)));
  expect(last(bot, wren)).toContain('2 queens');
  await bot.until(() => bot.pressesAnswered.length === presses.length + 1);
  expect(await storedIn(data)).toEqual([]);
});

test('ten people in ten interleaved conversations get each their own record', async () => {
  const bot = await newBot();
  const { data, close } = await serve(bot);
  const people = Array.from({ length: 10 }, (_, index) => index);
  await Promise.all(
    people.map((index) =>
      tell(
        bot,
        bot.person(100 + index),
        answers({ fahrenheit: 60 + index, flowers: 20 + index, queens: `${index + 1} impatiens` }),
      ),
    ),
  );
  await close();
  const stored = (await storedIn(data)).map(({ temperature, plants, total }) => [
    temperature?.celsius,
    plants[0]?.flowers.value,
    total,
  ]);
  const expected = people.map((index) => [Math.round(((28 + index) / 1.8) * 10) / 10, 20 + index, index + 1]);
  expect(stored.sort((a, b) => a[2]! - b[2]!)).toEqual(expected);
});

describe('messages that come', () => {
  test('again, in the same update or another, change nothing', async () => {
    const bot = await newBot();
    const { data } = await serve(bot);
    const wren = bot.person(7);
    await tell(bot, wren, ['hi', 'yes']);
    const sent: Update[] = [];
    const push = bot.push.bind(bot);
    bot.push = (content, id) => {
      const update_id = push(content, id);
      sent.push({ update_id, ...content });
      return update_id;
    };
    await tell(bot, wren, answers({ queens: '2 impatiens' }).slice(2));
    const before = bot.said(7);
    for (const { update_id: _id, ...content } of [...sent, ...sent]) push(content);
    await bot.until(() => bot.pending === 0);
    await tell(bot, wren, ['skip']);
    expect(bot.said(7)).toHaveLength(before.length + 1);
    expect(await storedIn(data)).toMatchObject([{ number: 1, total: 2 }]);
  });

  test('in a poll whose answer is lost come again, and are taken once', async () => {
    const bot = await newBot();
    const { data, reported } = await serve(bot);
    const wren = bot.person(7);
    await tell(bot, wren, ['hi']);
    bot.order('getUpdates', { kind: 'drop-after' });
    bot.order('getUpdates', { kind: '502' });
    bot.order('getUpdates', { kind: '429', retryAfter: 1 });
    await tell(bot, wren, answers({ queens: '2 impatiens' }).slice(1));
    expect(await storedIn(data)).toMatchObject([{ number: 1, total: 2 }]);
    expect(reported.join('\n')).toMatch(/^Telegram: .*Trying again until it works\.\nTelegram: goes on\.$/);
    expect(reported.join('\n')).not.toContain(bot.token);
  });

  test('all at once, the next before the last was answered, are taken in their order', async () => {
    const bot = await newBot();
    const { data } = await serve(bot);
    const wren = bot.person(7);
    await tell(bot, wren, ['hi']);
    const rest = answers({ queens: '2 impatiens' }).slice(1);
    await bot.atOnce(() => rest.forEach((text) => wren.say(text)));
    await bot.until(() => bot.said(7).length > rest.length);
    expect(bot.said(7)).toHaveLength(1 + rest.length);
    expect(await storedIn(data)).toMatchObject([{ number: 1, total: 2 }]);
  });

  test('as a flood are slowed with one notice, are all kept, and slow nobody else', async () => {
    const bot = await newBot();
    const { data } = await serve(bot);
    const [wren, lark] = [bot.person(7), bot.person(8)];
    await tell(bot, wren, ['hi', 'yes']);
    await tell(bot, lark, ['hi']);
    await bot.atOnce(() => {
      for (let count = 0; count < 90; count += 1) wren.say('help');
      lark.say('yes');
    });
    await bot.until(() => bot.said(8).length === 2, 'an answer to the other');
    await bot.until(() => bot.said(7).length >= 61);
    expect(bot.said(7).filter((text) => /That is a lot at once/.test(text))).toHaveLength(1);
    expect(bot.said(7).length).toBeLessThan(70);
    await bot.until(() => bot.pending === 0);
    const store = await openStore(join(data, 'queenpost.sqlite'), { readonly: true });
    expect(store.prepared(`select count(*) from inbox where person = '7'`).all()).toEqual([{ 'count(*)': 92 }]);
    store.close();
    // and they are taken, one after another
    const before = bot.said(7).length;
    await bot.until(() => bot.said(7).length > before);
  });

  test('in a group are answered only when they are for the bot, with one sentence and nothing personal', async () => {
    const bot = await newBot();
    await serve(bot);
    const wren = bot.person(7, 'Wren');
    await tell(bot, wren, ['hi']);
    bot.sayInGroup(-5, 7, 'who saw queens today?');
    bot.sayInGroup(-5, 7, `@${bot.me.username} what have you got?`);
    await bot.until(() => bot.said(-5).length > 0);
    await tell(bot, wren, ['yes']);
    expect(bot.said(-5)).toEqual([survey.wording.phrases['write-privately']]);
  });
});

describe('replies', () => {
  /** The times at which the method was called with that text, in seconds. */
  const triesOf = (bot: BotApi, text: RegExp): number[] =>
    bot.calls.flatMap(({ method, parameters, at }) =>
      method === 'sendMessage' && text.test(String(parameters['text'])) ? [at / 1000] : [],
    );
  const CONSENT = /^/;

  const table: [fault: Parameters<BotApi['order']>[1], times: number, seconds: number][] = [
    [{ kind: '429', retryAfter: 2 }, 1, 2],
    [{ kind: '502' }, 1, 1],
    [{ kind: '500' }, 1, 1],
    [{ kind: 'drop-before' }, 1, 1],
  ];
  test.each(table)('after %j go out once, %d times later by %d s', async (fault, times, wait) => {
    const bot = await newBot();
    await serve(bot);
    const wren = bot.person(7);
    bot.order('sendMessage', fault, times);
    wren.say('hi');
    await bot.until(() => bot.said(7).length > 0);
    const [first, second] = triesOf(bot, CONSENT);
    expect(second! - first!).toBeGreaterThan(wait - 0.05);
    expect(second! - first!).toBeLessThan(wait + 5);
    await tell(bot, wren, ['yes']);
    expect(bot.said(7)).toHaveLength(2);
  });

  test('whose answer was lost go out again: at least once, and in order', async () => {
    const bot = await newBot();
    await serve(bot);
    const wren = bot.person(7);
    bot.order('sendMessage', { kind: 'drop-after' });
    wren.say('hi');
    await bot.until(() => bot.said(7).length === 2);
    expect(bot.said(7)[0]).toBe(bot.said(7)[1]);
    await tell(bot, wren, ['yes']);
    expect(bot.said(7)).toHaveLength(3);
  });

  test('to somebody who blocked the bot are given up, and the thread goes on when they are back', async () => {
    const bot = await newBot();
    const { data } = await serve(bot);
    const [wren, lark] = [bot.person(7), bot.person(8)];
    wren.block();
    wren.say('hi');
    await tell(bot, lark, ['hi']);
    await bot.until(() => bot.calls.some(({ parameters }) => parameters['chat_id'] === 7));
    wren.unblock();
    await tell(bot, wren, ['yes']);
    expect(last(bot, wren)).toMatch(/When did you watch/);
    const store = await openStore(join(data, 'queenpost.sqlite'), { readonly: true });
    expect(failedReplies(store, survey.settings.key)).toMatchObject([
      { person: '7', error: 'SendNever: Forbidden: bot was blocked by the user' },
    ]);
    store.close();
  });
});

describe('a webhook', () => {
  async function hooked(bot: BotApi) {
    const port = await freePort();
    const url = `http://127.0.0.1:${port}/updates`;
    const serving = await serve(bot, { webhook: { url, port, path: '/updates' } });
    await bot.until(() => bot.webhook !== null);
    return { ...serving, url };
  }

  test('brings what polls would have', async () => {
    const bot = await newBot();
    const { data, close } = await hooked(bot);
    await tell(bot, bot.person(7), answers({ queens: '2 impatiens' }));
    await close();
    expect(await storedIn(data)).toMatchObject([{ number: 1, total: 2 }]);
    expect(bot.calls.some(({ method }) => method === 'getUpdates')).toBe(false);
    expect(new Set(bot.deliveries)).toEqual(new Set([200]));
  });

  test('ends when told to, though somebody holds a connection and brings nothing', async () => {
    const bot = await newBot();
    const { close, url } = await hooked(bot);
    const idle = connect(Number(new URL(url).port), '127.0.0.1');
    idle.on('error', () => undefined);
    await once(idle, 'connect');
    const begun = performance.now();
    await close();
    expect(performance.now() - begun).toBeLessThan(6000);
    idle.destroy();
  });

  test('refuses a wrong secret, another path and what is no update, and takes nothing from them', async () => {
    const bot = await newBot();
    const { data, url } = await hooked(bot);
    const secret = bot.webhook?.secret ?? '';
    expect(secret).toMatch(/^[\w-]{32,256}$/);
    expect(secret).not.toContain(bot.token);
    const message = { message_id: 1, date: 1, chat: { id: 7, type: 'private' }, from: { id: 7 }, text: 'hi' };
    const update = { update_id: 1, message } as unknown as Update;
    expect(await bot.deliver(update, `${secret}x`)).toBe(401);
    expect(await bot.deliver(update, undefined)).toBe(200); // the right one stands in for none given
    const post = (to: string, body: string, headers: Record<string, string>) =>
      fetch(to, { method: 'POST', body, headers }).then(({ status }) => status);
    const right = { 'x-telegram-bot-api-secret-token': secret };
    expect(await post(url, JSON.stringify(update), {})).toBe(401);
    expect(await post(`${url}/x`, JSON.stringify(update), right)).toBe(404);
    expect(await post(url, 'no update', right)).toBe(400);
    expect(await post(url, '"x"'.repeat(1_000_000), right)).toBe(400);
    const store = await openStore(join(data, 'queenpost.sqlite'), { readonly: true });
    expect(store.prepared('select count(*) from inbox').all()).toEqual([{ 'count(*)': 1 }]);
    store.close();
  });

  test('that is brought the same again, or in another order, keeps each message once', async () => {
    const bot = await newBot();
    const { data } = await hooked(bot);
    bot.person(7);
    const of = (update_id: number, text: string): Update => ({
      update_id,
      message: {
        message_id: update_id,
        date: Math.floor(Date.now() / 1000),
        chat: { id: 7, type: 'private', first_name: 'Wren' },
        from: { id: 7, is_bot: false, first_name: 'Wren' },
        text,
      },
    });
    const [one, two] = [of(1, 'hi'), of(2, 'hello')];
    const statuses = await Promise.all([two, one, two, one, two].map((update) => bot.deliver(update)));
    expect(statuses).toEqual([200, 200, 200, 200, 200]);
    const store = await openStore(join(data, 'queenpost.sqlite'), { readonly: true });
    expect(store.prepared('select id from inbox order by id').all()).toEqual([
      { id: 'message:7:1' },
      { id: 'message:7:2' },
    ]);
    store.close();
  });
});

describe('who may not serve', () => {
  test('a second program that asks for the same messages ends one of the two, with a reason', async () => {
    const bot = await newBot();
    const first = await serve(bot);
    first.ended.catch(() => undefined);
    await bot.until(() => bot.calls.some(({ method }) => method === 'getUpdates'));
    await serve(bot, { data: newData() });
    await expect(first.ended).rejects.toThrow(/Another program takes this bot's messages; stop it first/);
  });

  test('a wrong token', async () => {
    const bot = await newBot();
    await expect(serve(bot, { token: '1:wrong' })).rejects.toThrow(/Telegram does not know this token/);
  });
});
