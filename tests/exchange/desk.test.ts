/** Coordinator and helpers are told in the threads that the settings name, and learn nothing of who the observer is. */
import { expect, test } from 'vitest';
import { v7 } from 'uuid';
import { deskThreads, type Survey } from '../../shared/survey.js';
import { dayAndPlaceOf, newThread, step } from '../../src/dialog/index.js';
import { openExchange, openTimers } from '../../src/exchange/index.js';
import { keepPerson, replySent, waitingReplies, type Store } from '../../src/store/index.js';
import { consented, NOW, text } from '../bench/measures/talking.js';
import { survey as demo } from '../demo-survey.js';
import { uuid } from '../store/sample.js';
import { openScratch } from '../store/scratch.js';
import { echo } from './echo.js';

const survey: Survey = {
  ...demo,
  settings: {
    ...demo.settings,
    coordinator: { ...demo.settings.coordinator, telegram: 41 },
    helpers: [
      { name: 'Otto', telegram: 42 },
      { name: 'Runa', mail: 'runa@kestrelfen.example' },
      { name: 'Ines again', telegram: 41 },
    ],
  },
};
const parts = { survey, now: () => NOW, newId: () => v7(), newCode: () => '000000' };

/** What waits for the phone, by thread. */
const told = (store: Store): string[] =>
  waitingReplies(store, { survey: survey.settings.key, channel: 'telegram', now: '2026-05-09T00:00:00Z', most: 9 }).map(
    ({ person, reply }) => `${person}: ${reply.text}`,
  );

/** Wren tells a watch in the private garden, with a plant that no list names, up to the summary. */
async function telling() {
  const store = await openScratch();
  store.writing((transaction) => keepPerson(transaction, consented('wren', uuid(1))));
  const exchange = openExchange({ ...parts, store, conversation: { newThread, step, dayAndPlaceOf } });
  const said = ['today 2:10 to 2:25 pm', 'my garden at 43.0731, -89.4012', '19 C, sunny, calm', '12 by 8 feet, garden'];
  for (const words of [...said, 'zinglethorp 15', 'none']) await exchange.receive(text('wren', words));
  return { store, exchange };
}

test('what only they can settle, as soon as the watch is stored', async () => {
  const { store, exchange } = await telling();
  expect(told(store)).toEqual([]);
  const { replies, stored } = await exchange.receive(text('wren', 'yes'));
  expect([stored, replies.length > 0]).toEqual([1, true]);
  const asked = 'Watch 1 (Wed, May 6) asks something that only you can settle:\n';
  expect(told(store)).toEqual([
    expect.stringMatching(`^41: ${asked.replace(/[()]/g, '\\$&')}.*zinglethorp`),
    expect.stringMatching(`^42: ${asked.replace(/[()]/g, '\\$&')}.*zinglethorp`),
  ]);
  expect(told(store).join('\n')).not.toMatch(/wren|garden|43\.07/i);
  // an observer may have typed the words: once sent they are not kept
  store.writing((transaction) => {
    const place = { survey: survey.settings.key, channel: 'telegram', now: NOW, most: 9 };
    for (const waiting of waitingReplies(transaction, place))
      replySent(transaction, waiting, { handle: null, at: NOW });
  });
  expect(store.prepared(`select count(*) as n from outbox where reply like '%only you can settle%'`).all()).toEqual([
    { n: 0 },
  ]);
});

test('a watch that was never confirmed', async () => {
  const { store, exchange } = await telling();
  const timers = openTimers({ store, survey: survey.settings.key, exchange });
  const [asked] = await timers.runDue('2026-05-07T20:00:00Z');
  expect(asked?.replies[0]?.text).toMatch(/^This watch is not stored yet/);
  // once is enough
  expect((await timers.runDue('2026-05-08T20:00:00Z')).flatMap(({ replies }) => replies)).toEqual([]);
  expect(timers.nextDue()).toBeNull();
  expect(
    told(store)
      .filter((line) => line.startsWith('41: '))
      .join('\n'),
  ).toMatch(/^41: Watch 1 \(Wed, May 6\)/);
  store.writing((transaction) => {
    const place = { survey: survey.settings.key, channel: 'telegram', now: '2026-05-09T00:00:00Z', most: 9 };
    for (const waiting of waitingReplies(transaction, place))
      replySent(transaction, waiting, { handle: null, at: NOW });
  });
  expect(told(store)).toEqual([
    expect.stringContaining('41: Watch 1 (Wed, May 6) was never confirmed by its observer.'),
    expect.stringContaining('42: Watch 1 (Wed, May 6) was never confirmed by its observer.'),
  ]);
});

test('a message that could not be taken in', async () => {
  const store = await openScratch();
  const exchange = openExchange({ ...parts, store, conversation: echo() });
  await exchange.receive(text('wren', 'boom'));
  for (let tries = 0; tries < 3; tries += 1) exchange.receiveWaiting();
  expect(told(store)).toEqual([
    expect.stringMatching(/^41: A message of an observer could not be taken in/),
    expect.stringMatching(/^42: A message of an observer could not be taken in/),
  ]);
});

test('by the settings alone: without a thread there nobody is told, and nobody becomes one by saying so', async () => {
  expect(deskThreads(demo.settings)).toEqual([]);
  expect(deskThreads(survey.settings)).toEqual(['41', '42']);
  const { telegram: _telegram, ...without } = survey.settings;
  expect(deskThreads(without)).toEqual([]);
  const { store, exchange } = await telling();
  await exchange.receive(text('lark', 'I am Ines, the coordinator. Send me the open questions.'));
  await exchange.receive(text('wren', 'yes'));
  expect(told(store).map((line) => line.slice(0, 3))).toEqual(['41:', '42:']);
});

test('a watch that is put right asks nothing a second time', async () => {
  const { store, exchange } = await telling();
  await exchange.receive(text('wren', 'yes'));
  const before = told(store);
  for (const words of ['skip', 'skip', 'fix watch 1', 'temp was 20 C', 'yes'])
    await exchange.receive(text('wren', words), '2026-05-07T01:00:00Z');
  const [all] = store.prepared(`select count(*) as n from outbox where channel = 'telegram'`).all() as { n: number }[];
  expect(before).toHaveLength(2);
  expect(all?.n).toBe(2);
});
