/** Files that messages wait for: what fails is tried again, and what nobody waits for any more is removed. */
import { expect, test, vi } from 'vitest';
import type { Content } from '../../shared/message.js';
import { openExchange, openFetching, type Fetch } from '../../src/exchange/index.js';
import { filesToRemove, keepPerson, threadOf, type Store } from '../../src/store/index.js';
import { survey } from '../demo-survey.js';
import { SURVEY, uuid } from '../store/sample.js';
import { openScratch } from '../store/scratch.js';
import { echo, NOW, said } from './echo.js';

const NOT_YET: Content = { kind: 'file', name: 'photo', problem: 'not-fetched' };
const SHA256 = 'a'.repeat(64);
const PHOTO: Content = { kind: 'photo', sha256: SHA256, type: 'image/jpeg', takenAt: null };

async function open(agreed: readonly string[]) {
  const store = await openScratch();
  let ids = 0;
  const newId = () => uuid((ids += 1));
  const parts = { store, survey, conversation: echo(), now: () => NOW, newId, newCode: () => '000000' };
  store.writing((transaction) => {
    for (const person of agreed) {
      keepPerson(transaction, {
        survey: SURVEY,
        key: newId(),
        channel: 'terminal',
        person,
        name: null,
        mail: null,
        consent: { at: NOW, wordingVersion: 1 },
        declined: [],
        photographLicence: null,
        nameShown: false,
        reminders: false,
      });
    }
  });
  return { store, exchange: openExchange(parts) };
}

const heard = (store: Store, person: string) =>
  (threadOf(store, { survey: SURVEY, channel: 'terminal', person })?.state as { heard: string[] } | undefined)?.heard ??
  [];

test('a fetch that fails is told and tried again; all else of the thread waits, and nothing else', async () => {
  const { store, exchange } = await open(['wren', 'lark']);
  const failures: unknown[] = [];
  const asked: string[] = [];
  const fetch: Fetch = (file) => {
    asked.push(file);
    return asked.length === 1 ? Promise.reject(new Error('the disk is full')) : Promise.resolve(PHOTO);
  };
  const fetching = openFetching({
    store,
    survey: SURVEY,
    exchange,
    channels: new Map([['terminal', fetch]]),
    stop: new AbortController().signal,
    took: () => undefined,
    failed: (error) => failures.push(error),
  });
  const received = await exchange.receive(said('p', '', 'wren', { what: NOT_YET }), NOW, { file: 'one' });
  expect(received).toMatchObject({ waiting: true, replies: [] });
  await exchange.receive(said('t', 'after it', 'wren'));
  await exchange.receive(said('l', 'hello', 'lark'));
  expect(exchange.receiveWaiting()).toEqual({ received: [], waiting: 0 });
  expect([heard(store, 'wren'), heard(store, 'lark')]).toEqual([[], ['hello']]);
  fetching.begin();
  await fetching.ended();
  expect(asked).toEqual(['one', 'one']);
  expect(failures).toEqual([new Error('the disk is full')]);
  expect(heard(store, 'wren')).toEqual(['photo', 'after it']);
}, 20_000);

test('of somebody who has not agreed nothing is fetched', async () => {
  const { store, exchange } = await open([]);
  const fetch = vi.fn<Fetch>();
  const fetching = openFetching({
    store,
    survey: SURVEY,
    exchange,
    channels: new Map([['terminal', fetch]]),
    stop: new AbortController().signal,
    took: () => undefined,
    failed: () => undefined,
  });
  for (const id of ['p', 'q']) await exchange.receive(said(id, '', 'wren', { what: NOT_YET }), NOW, { file: id });
  fetching.begin();
  await fetching.ended();
  expect(heard(store, 'wren')).toEqual(['file', 'file']);
  expect(fetch).not.toHaveBeenCalled();
});

test('the picture of somebody who was forgotten meanwhile is taken by nobody, and is to be removed', async () => {
  const { store, exchange } = await open(['wren']);
  const message = said('p', '', 'wren', { what: NOT_YET });
  await exchange.receive(message, NOW, { file: 'one' });
  store.writing((transaction) => transaction.prepared('delete from inbox').run());
  expect(exchange.fileCame(message, PHOTO)).toMatchObject({ duplicate: true, forgotten: true });
  expect(filesToRemove(store)).toEqual(new Set([SHA256]));
  expect(heard(store, 'wren')).toEqual([]);
});

test('a second copy of its content changes nothing', async () => {
  const { store, exchange } = await open(['wren']);
  const message = said('p', '', 'wren', { what: NOT_YET });
  await exchange.receive(message, NOW, { file: 'one' });
  expect(await exchange.receive(message, NOW, { file: 'one' })).toMatchObject({ duplicate: true });
  expect(exchange.fileCame(message, NOT_YET).duplicate).toBe(false);
  expect(exchange.fileCame(message, NOT_YET).duplicate).toBe(true);
  expect(heard(store, 'wren')).toEqual(['file']);
});
