/** A reminder goes the way of all timers: a row, a message when it is due, a reply, and the next row. */
import { expect, test } from 'vitest';
import { openTimers } from '../../src/exchange/index.js';
import { keepPerson, personOf } from '../../src/store/index.js';
import { survey } from '../demo-survey.js';
import { consented, exchangeWithDialog, text } from '../bench/measures/talking.js';
import { uuid } from '../store/sample.js';
import { openScratch } from '../store/scratch.js';

test('asked for, it is stored, said when it is due, and set anew; ended, its row is gone', async () => {
  const store = await openScratch();
  const wren = consented('wren', uuid(1));
  store.writing((transaction) => keepPerson(transaction, wren));
  const exchange = exchangeWithDialog(store);
  const timers = openTimers({ store, survey: survey.settings.key, exchange });

  await exchange.receive(text('wren', 'remind me')); // on Wednesday, 2026-05-06
  expect(personOf(store, wren)?.reminders).toBe(true);
  expect(timers.nextDue()).toBe('2026-05-09T14:00:00.000Z'); // Saturday, 9 o'clock in Chicago
  expect(await timers.runDue('2026-05-09T13:59:59.999Z')).toEqual([]);
  const [told] = await timers.runDue('2026-05-09T14:00:10Z');
  expect(told).toMatchObject({ person: 'wren', failures: [] });
  expect(told?.replies.map((reply) => reply.text.split('?')[0])).toEqual(['A good day for a first watch']);
  expect(timers.nextDue()).toBe('2026-05-16T14:00:00.000Z');

  await exchange.receive(text('wren', 'no reminders'));
  expect(personOf(store, wren)?.reminders).toBe(false);
  expect(timers.nextDue()).toBeNull();
});
