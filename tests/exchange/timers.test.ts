/** A timer comes due once, in order, unless it was cleared or set anew. */
import { expect, test } from 'vitest';
import type { Message } from '../../shared/message.js';
import { openExchange, openTimers, type Exchange, type Timers } from '../../src/exchange/index.js';
import { clearTimer, dueTimers, setTimer, stuckMessages, threadOf, type Store } from '../../src/store/index.js';
import { survey } from '../demo-survey.js';
import { SURVEY, uuid } from '../store/sample.js';
import { openScratch } from '../store/scratch.js';
import { echo, NOW, said, type EchoThread } from './echo.js';

/** Instants of the day, by hour and minute. */
const at = (time: string) => `2026-05-07T${time}:00Z`;

interface Scene {
  readonly store: Store;
  readonly exchange: Exchange<EchoThread>;
  readonly timers: Timers<EchoThread>;
  /** Messages of timers, and the moment that their step was told. */
  readonly taken: (Message & { now: string })[];
}

async function scene(): Promise<Scene> {
  const store = await openScratch();
  const taken: Scene['taken'] = [];
  const conversation = echo((message, _, now) => {
    if (message.what.kind === 'time') taken.push({ ...message, now });
  });
  let ids = 0;
  const newId = () => uuid((ids += 1) + 500_000);
  const exchange = openExchange({ store, survey, conversation, now: () => NOW, newId, newCode: () => '000000' });
  return { store, exchange, timers: openTimers({ store, survey: SURVEY, exchange }), taken };
}
const heard = (store: Store, person = 'wren') =>
  (threadOf(store, { survey: SURVEY, channel: 'terminal', person })?.state as EchoThread).heard;
const keys = (taken: Scene['taken']) => taken.map(({ what }) => (what.kind === 'time' ? what.key : what.kind));

test('a timer becomes a message of its thread when it is due, and not before', async () => {
  const { store, exchange, timers, taken } = await scene();
  expect(timers.nextDue()).toBeNull();
  await exchange.receive(said('1', `timer time-up ${at('10:00')}`, 'wren', { manner: 'all', proven: false }));
  expect(timers.nextDue()).toBe('2026-05-07T10:00:00.000Z');
  expect(await timers.runDue('2026-05-07T09:59:59.999Z')).toEqual([]);
  expect(await timers.runDue(at('10:00'))).toMatchObject([
    { person: 'wren', replies: [{ text: 'heard time time-up' }] },
  ]);
  expect(taken).toEqual([
    {
      survey: SURVEY,
      channel: 'terminal',
      person: 'wren',
      id: 'time:wren:time-up:2026-05-07T10:00:00.000Z',
      at: '2026-05-07T10:00:00.000Z',
      replyTo: null,
      edits: null,
      manner: 'all',
      proven: false,
      what: { kind: 'time', key: 'time-up', report: 'r' },
      now: at('10:00'),
    },
  ]);
  expect(timers.nextDue()).toBeNull();
  expect(await timers.runDue(at('11:00'))).toEqual([]);
  expect(heard(store)).toHaveLength(2);
});

test('timers of one thread come in order of due, whatever their number and the order of setting', async () => {
  const { exchange, timers, taken } = await scene();
  for (const minute of ['30', '10', '50', '20', '40']) {
    await exchange.receive(said(minute, `timer t${minute} ${at(`10:${minute}`)}`));
  }
  await timers.runDue(at('10:40'));
  expect(keys(taken)).toEqual(['t10', 't20', 't30', 't40']);
  expect(timers.nextDue()).toBe('2026-05-07T10:50:00.000Z');
});

test('moments with and without fractions of a second are compared as moments', async () => {
  const { exchange, timers, taken } = await scene();
  await exchange.receive(said('1', 'timer late 2026-05-07T10:00:00.500Z'));
  await exchange.receive(said('2', 'timer early 2026-05-07T10:00:00Z'));
  await timers.runDue('2026-05-07T10:00:00Z');
  expect(keys(taken)).toEqual(['early']);
  await timers.runDue('2026-05-07T10:00:01Z');
  expect(keys(taken)).toEqual(['early', 'late']);
});

test('two people may have the same key at the same moment', async () => {
  const { exchange, timers, taken } = await scene();
  await exchange.receive(said('1', `timer remind ${at('10:00')}`, 'wren'));
  await exchange.receive(said('2', `timer remind ${at('10:00')}`, 'lark'));
  await timers.runDue(at('10:00'));
  expect(taken.map(({ person }) => person).sort()).toEqual(['lark', 'wren']);
});

test('setting a timer again replaces it, clearing it ends it', async () => {
  const { exchange, timers, taken } = await scene();
  await exchange.receive(said('1', `timer remind ${at('10:00')}`));
  await exchange.receive(said('2', `timer remind ${at('12:00')}`));
  await timers.runDue(at('11:00'));
  expect(taken).toEqual([]);
  await exchange.receive(said('3', 'clear remind'));
  await exchange.receive(said('4', 'clear remind')); // not set: no mistake
  await timers.runDue(at('13:00'));
  expect(taken).toEqual([]);
  expect(timers.nextDue()).toBeNull();
});

test('a timer that was cleared or set anew does not come, even where it was read before', async () => {
  const { store, timers, taken, exchange } = await scene();
  const wren = said('', '');
  await exchange.receive(said('1', 'hello'));
  store.writing((transaction) => {
    // The echo does what a time message's text says, which is "time" and the key.
    setTimer(transaction, wren, { key: 'first', report: 'r', due: at('10:00') });
    setTimer(transaction, wren, { key: 'second', report: 'r', due: at('10:05') });
  });
  const stale = dueTimers(store, { survey: SURVEY, now: at('10:10'), most: 9 });
  expect(stale.map(({ key }) => key)).toEqual(['first', 'second']);
  store.writing((transaction) => clearTimer(transaction, wren, 'second'));
  await timers.runDue(at('10:10'));
  expect(keys(taken)).toEqual(['first']);
  // And one that was read before it was cleared is told apart when it is taken.
  const message = {
    ...taken[0]!,
    id: 'x',
    at: stale[1]!.due,
    what: { kind: 'time' as const, key: 'second', report: 'r' },
  };
  const { now: _, ...late } = message;
  expect(await exchange.receive(late)).toMatchObject({ duplicate: true, replies: [] });
  expect(keys(taken)).toEqual(['first']);
  // So is one that was set anew, and the new one stays.
  store.writing((transaction) => setTimer(transaction, wren, { key: 'second', report: 'r', due: at('12:00') }));
  expect(await exchange.receive(late)).toMatchObject({ duplicate: true, replies: [] });
  expect(timers.nextDue()).toBe('2026-05-07T12:00:00.000Z');
});

test('a timer that an earlier one of the same run sets has its turn before those due later', async () => {
  const store = await openScratch();
  const { step, ...rest } = echo();
  const conversation = {
    ...rest,
    step: (...[thread, message, ...others]: Parameters<typeof step>) => {
      const taken = step(thread, message, ...others);
      if (message.what.kind !== 'time' || message.what.key !== 'first') return taken;
      return { ...taken, effects: [{ do: 'set-timer' as const, key: 'between', report: 'r', due: at('10:02') }] };
    },
  };
  const exchange = openExchange({
    store,
    survey,
    conversation,
    now: () => NOW,
    newId: newIds(),
    newCode: () => '000000',
  });
  const timers = openTimers({ store, survey: SURVEY, exchange });
  await exchange.receive(said('1', `timer first ${at('10:00')}`));
  await exchange.receive(said('2', `timer last ${at('10:05')}`));
  await timers.runDue(at('10:10'));
  expect(heard(store).slice(2)).toEqual(['time first', 'time between', 'time last']);
});

test('a timer whose step fails is given up like a message, but nobody is told of words they never wrote', async () => {
  const store = await openScratch();
  const { step, ...rest } = echo();
  const conversation = {
    ...rest,
    step: (...[thread, message, ...others]: Parameters<typeof step>) => {
      if (message.what.kind === 'time') throw new Error('boom');
      return step(thread, message, ...others);
    },
  };
  const exchange = openExchange({
    store,
    survey,
    conversation,
    now: () => NOW,
    newId: newIds(),
    newCode: () => '000000',
  });
  const timers = openTimers({ store, survey: SURVEY, exchange });
  await exchange.receive(said('1', `timer remind ${at('10:00')}`));
  expect(await timers.runDue(at('10:00'))).toMatchObject([{ waiting: true }]);
  expect(exchange.receiveWaiting()).toMatchObject({ waiting: 1 });
  expect(exchange.receiveWaiting()).toMatchObject({ received: [{ replies: [] }], waiting: 0 });
  expect(stuckMessages(store, SURVEY)).toMatchObject([{ id: `time:wren:remind:2026-05-07T10:00:00.000Z` }]);
  expect(heard(store)).toHaveLength(1);
});

function newIds() {
  let ids = 0;
  return () => uuid((ids += 1) + 500_000);
}

test('a conversation that sets a timer in the past at every timer does not keep the program for ever', async () => {
  const store = await openScratch();
  const { step, ...rest } = echo();
  let minute = 0;
  const conversation = {
    ...rest,
    step: (...[, message, ...others]: Parameters<typeof step>) => {
      minute += 1;
      const due = new Date(Date.parse(at('00:00')) + minute * 1000).toISOString();
      return {
        ...step({ heard: [] }, message, ...others),
        effects: [{ do: 'set-timer' as const, key: 'again', report: 'r', due }],
      };
    },
  };
  const exchange = openExchange({
    store,
    survey,
    conversation,
    now: () => NOW,
    newId: newIds(),
    newCode: () => '000000',
  });
  const timers = openTimers({ store, survey: SURVEY, exchange });
  await exchange.receive(said('1', 'hello'));
  expect(await timers.runDue(at('23:00'))).toHaveLength(1000);
  expect(timers.nextDue()).not.toBeNull();
});
