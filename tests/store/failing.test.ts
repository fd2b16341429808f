/** A database that is locked, full or read-only says which, keeps nothing of the transaction, and works again later. */
import Database from 'better-sqlite3';
import { expect, test } from 'vitest';
import {
  keepWatch,
  nextWatchNumber,
  openStore,
  StoreError,
  watchByNumber,
  watchesOf,
  type Store,
} from '../../src/store/index.js';
import { openScratch, scratchPath } from './scratch.js';
import { sampleWatch, SURVEY } from './sample.js';

const keep = (store: Store, number: number, remark: string | null = null) =>
  store.writing((transaction) => keepWatch(transaction, sampleWatch({ number, remark })));

function failureOf(work: () => void): StoreError {
  try {
    work();
  } catch (error) {
    if (error instanceof StoreError) return error;
    throw error;
  }
  throw new Error('It did not fail.');
}

test('locked: another program writes', async () => {
  const path = scratchPath();
  const store = await openScratch(path, { busyMilliseconds: 50 });
  keep(store, 1);
  const other = new Database(path);
  other.exec('begin immediate');
  expect(failureOf(() => keep(store, 2)).kind).toBe('locked');
  expect(watchByNumber(store, SURVEY, 1)).not.toBeNull(); // readers are not held up
  other.exec('rollback');
  other.close();
  keep(store, 2);
  expect([...watchesOf(store, SURVEY)]).toHaveLength(2);
});

test('locked: it cannot be opened while its tables are being made', async () => {
  const path = scratchPath();
  (await openStore(path)).close();
  const other = new Database(path);
  other.exec(`delete from kysely_migration; begin exclusive`);
  await expect(openStore(path, { busyMilliseconds: 50 })).rejects.toMatchObject({ kind: 'locked' });
  other.close();
});

test('full: the database cannot grow', async () => {
  const store = await openScratch();
  keep(store, 1);
  const pages = store.prepared('pragma page_count').pluck().get() as number;
  store.prepared(`pragma max_page_count = ${pages}`).get();
  const failure = failureOf(() => keep(store, 2, 'long '.repeat(10_000)));
  expect(failure.kind).toBe('full');
  expect(failure.cause).toMatchObject({ code: 'SQLITE_FULL' });
  expect([...watchesOf(store, SURVEY)].map(({ number }) => number)).toEqual([1]);
  store.prepared(`pragma max_page_count = ${pages + 100}`).get();
  keep(store, 2, 'long '.repeat(10_000));
  expect([...watchesOf(store, SURVEY)]).toHaveLength(2);
});

test('full inside a savepoint: the whole transaction is given up', async () => {
  const store = await openScratch();
  const pages = store.prepared('pragma page_count').pluck().get() as number;
  store.prepared(`pragma max_page_count = ${pages}`).get();
  const long = 'long '.repeat(10_000);
  const failure = failureOf(() =>
    store.writing((transaction) => {
      keepWatch(transaction, sampleWatch({ number: 1 }));
      transaction.attempt(() => keepWatch(transaction, sampleWatch({ number: 2, remark: long })));
    }),
  );
  expect(failure.kind).toBe('full');
  expect([...watchesOf(store, SURVEY)]).toEqual([]);
  keep(store, 1);
});

test('read-only: opened for reading', async () => {
  const path = scratchPath();
  keep(await openScratch(path), 1);
  const reader = await openScratch(path, { readonly: true });
  expect(watchByNumber(reader, SURVEY, 1)).toEqual(sampleWatch());
  expect(failureOf(() => keep(reader, 2)).kind).toBe('read-only');
});

test('what fails says so in one plain sentence', async () => {
  const path = scratchPath();
  keep(await openScratch(path), 1);
  const reader = await openScratch(path, { readonly: true });
  expect(failureOf(() => keep(reader, 2)).message).toBe('The database cannot be written: it is read-only.');
});

test('a broken row is no broken database', async () => {
  const path = scratchPath();
  const store = await openScratch(path);
  keep(store, 1);
  keep(store, 2);
  new Database(path).exec(`update watches set more = 'no JSON' where number = 1`).close();
  expect(() => watchByNumber(store, SURVEY, 1)).toThrow(/^Watch 1 does not fit its schema: /);
  expect(watchByNumber(store, SURVEY, 2)).toEqual(sampleWatch({ number: 2 }));
});

test('a savepoint takes back its own work only', async () => {
  const store = await openScratch();
  store.writing((transaction) => {
    keepWatch(transaction, sampleWatch({ number: 1 }));
    expect(() =>
      transaction.attempt(() => {
        keepWatch(transaction, sampleWatch({ number: 2 }));
        throw new Error('not this one');
      }),
    ).toThrow('not this one');
    transaction.attempt(() => keepWatch(transaction, sampleWatch({ number: 3 })));
  });
  expect([...watchesOf(store, SURVEY)].map(({ number }) => number)).toEqual([1, 3]);
});

test('what a transaction has read stays true until it has written', async () => {
  const path = scratchPath();
  const store = await openScratch(path);
  const other = await openScratch(path, { busyMilliseconds: 20 });
  store.writing((transaction) => {
    expect(nextWatchNumber(transaction, SURVEY)).toBe(1);
    expect(failureOf(() => keep(other, 1)).kind).toBe('locked');
    keepWatch(transaction, sampleWatch({ number: 1 }));
  });
  expect(nextWatchNumber(other, SURVEY)).toBe(2);
});

test('the work of a transaction cannot wait', async () => {
  const store = await openScratch();
  expect(() =>
    store.writing(async (transaction) => {
      keepWatch(transaction, sampleWatch());
    }),
  ).toThrow(/cannot wait/);
  expect([...watchesOf(store, SURVEY)]).toEqual([]);
});
