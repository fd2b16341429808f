/** A reminder goes the way of all timers: a row, a message when it is due, a reply, and the next row. */
import { expect, test } from 'vitest';
import { openTimers } from '../../src/exchange/index.js';
import { keepPerson, keepThread, personOf, type Store } from '../../src/store/index.js';
import { survey } from '../demo-survey.js';
import { consented, exchangeWithDialog, text } from '../bench/measures/talking.js';
import { uuid } from '../store/sample.js';
import Database from 'better-sqlite3';
import { newThread } from '../../src/dialog/index.js';
import { openScratch, scratchPath } from '../store/scratch.js';

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

function remindersIn(store: Store) {
  const exchange = exchangeWithDialog(store);
  const timers = openTimers({ store, survey: survey.settings.key, exchange });
  return {
    exchange,
    /** Until nine and ten seconds on that day; gives who was reminded. */
    async on(day: string): Promise<string[]> {
      const told = await timers.runDue(`${day}T14:00:10Z`);
      expect(told.flatMap(({ failures }) => failures)).toEqual([]);
      return told.filter(({ replies }) => replies.length > 0).map(({ person }) => person);
    },
  };
}

test('at most one a week for a person, in however many threads they write', async () => {
  const store = await openScratch();
  store.writing((transaction) => {
    for (const thread of ['phone', 'desk']) keepPerson(transaction, consented(thread, uuid(1)));
    keepPerson(transaction, consented('lark', uuid(2)));
  });
  const { exchange, on } = remindersIn(store);
  for (const person of ['phone', 'lark']) await exchange.receive(text(person, 'remind me'));
  expect((await on('2026-05-09')).sort()).toEqual(['lark', 'phone']);
  // on the same Saturday, in the other thread; the settings have Sundays too
  const said = await exchange.receive(text('desk', 'remind me'), '2026-05-09T16:00:00Z');
  expect(said.replies[0]?.text).toContain('first on Sat, May 16');
  expect(await on('2026-05-10')).toEqual([]);
  expect((await on('2026-05-16')).sort()).toEqual(['desk', 'lark']);
});

test('a watch that is being told in another thread of theirs holds it back, and the next one comes', async () => {
  const store = await openScratch();
  store.writing((transaction) => {
    for (const thread of ['phone', 'desk']) keepPerson(transaction, consented(thread, uuid(1)));
  });
  const { exchange, on } = remindersIn(store);
  await exchange.receive(text('phone', 'remind me'));
  await exchange.receive(text('desk', 'today 2:10 to 2:25 pm'));
  expect(await on('2026-05-09')).toEqual([]);
  await exchange.receive(text('desk', 'throw away'));
  await exchange.receive(text('desk', 'yes'));
  expect(await on('2026-05-10')).toEqual(['phone']);
});

test('a database that kept the day of the last reminder in each thread keeps it with the person', async () => {
  const path = scratchPath();
  const before = await openScratch(path);
  const days = { phone: '2026-05-02', desk: '2026-05-09', lark: null } as const;
  before.writing((transaction) => {
    for (const person of ['phone', 'desk', 'lark'] as const) {
      const row = consented(person, uuid(person === 'lark' ? 2 : 1));
      keepPerson(transaction, row);
      const state = { ...newThread(survey), ...(days[person] && { remindedOn: days[person] }) };
      keepThread(transaction, text(person, ''), state, '2026-05-09T16:00:00Z');
    }
  });
  before.close();
  const database = new Database(path);
  database.exec(`alter table persons drop column remindedOn;
    drop index inboxComing; alter table inbox drop column file;
    delete from kysely_migration where name >= '0008'`);
  database.close();

  const after = await openScratch(path);
  const of = (person: string) => personOf(after, consented(person, ''))?.remindedOn;
  expect([of('phone'), of('desk'), of('lark')]).toEqual(['2026-05-09', '2026-05-09', undefined]);
  expect(after.prepared(`select state from threads`).all().join()).not.toContain('remindedOn');
});
