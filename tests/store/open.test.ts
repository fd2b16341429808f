/** Opening a database: new, again, twice at once, by the wrong program. */
import { existsSync, mkdirSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import { expect, test } from 'vitest';
import { keepWatch, openStore, watchByNumber } from '../../src/store/index.js';
import { MIGRATIONS } from '../../src/store/migrations/index.js';
import { CHILD_TIMEOUT, startChild } from '../child-program.js';
import { openScratch, scratchPath } from './scratch.js';
import { sampleWatch, SURVEY } from './sample.js';

const tablesOf = (path: string) => {
  const database = new Database(path, { readonly: true });
  const tables = database.prepare('select name, sql from sqlite_master order by name').all();
  const had = database.prepare('select * from kysely_migration').all();
  database.close();
  return { tables, had };
};

test('a new database is made with its folder, for its owner alone', async () => {
  const path = scratchPath();
  await openScratch(path);
  expect(existsSync(path)).toBe(true);
  expect(statSync(dirname(path)).mode & 0o777).toBe(0o700);
});

test('opening again changes no table and loses nothing', async () => {
  const path = scratchPath();
  const first = await openStore(path);
  first.writing((transaction) => keepWatch(transaction, sampleWatch()));
  first.close();
  const before = tablesOf(path);
  const second = await openScratch(path);
  expect(tablesOf(path)).toEqual(before);
  expect(watchByNumber(second, SURVEY, 1)).toEqual(sampleWatch());
});

test(
  'where several programs open a new database at once, each gets it whole',
  async () => {
    const path = scratchPath();
    const signal = `${dirname(path)}-go`;
    const program = join(import.meta.dirname, 'opens-at-once.ts');
    const programs = [1, 2].map(() => startChild(program, [path, signal]));
    await Promise.all(programs.map(({ printed }) => printed(1)));
    writeFileSync(signal, '');
    expect(await Promise.all(programs.map(({ ended }) => ended))).toEqual([0, 0]);
    expect(programs.map(({ lines }) => lines)).toEqual(programs.map(() => ['ready', 'opened']));
    expect(tablesOf(path).had).toHaveLength(Object.keys(MIGRATIONS).length);
  },
  CHILD_TIMEOUT,
);

test('commits are on the disk when they return, and keys of other tables are held', async () => {
  const store = await openScratch();
  const pragma = (name: string) => Object.values(store.prepared(`pragma ${name}`).get() as object)[0] as unknown;
  expect(pragma('journal_mode')).toBe('wal');
  expect(pragma('synchronous')).toBe(2); // FULL
  expect(pragma('foreign_keys')).toBe(1);
  expect(pragma('busy_timeout')).toBe(5000);
});

test('every key begins with the survey', async () => {
  const path = scratchPath();
  await openScratch(path);
  const database = new Database(path, { readonly: true });
  const tables = database
    .prepare(
      `select name from sqlite_master where type = 'table' and name not like 'kysely%' and name not like 'sqlite%'`,
    )
    .pluck()
    .all()
    .map(String);
  const first = (table: string) =>
    database.prepare(`select name from pragma_table_info(?) where pk = 1`).pluck().get(table);
  expect(tables.map((table) => [table, first(table)])).toEqual(tables.map((table) => [table, 'survey']));
  expect(tables).toHaveLength(19);
  database.close();
});

test('a database of a newer program is left alone', async () => {
  const path = scratchPath();
  (await openStore(path)).close();
  const database = new Database(path);
  database.prepare(`insert into kysely_migration values ('0099-later', '2027-01-01T00:00:00.000Z')`).run();
  database.close();
  await expect(openStore(path)).rejects.toThrow(/newer version of this program wrote it \(0099-later\)/);
  await expect(openStore(path)).rejects.toMatchObject({ name: 'StoreError', kind: 'broken' });
});

test('a file that is no database is refused, and left as it is', async () => {
  const path = scratchPath();
  mkdirSync(dirname(path));
  writeFileSync(path, 'a letter to the coordinator\n'.repeat(100));
  await expect(openStore(path)).rejects.toMatchObject({ name: 'StoreError', kind: 'broken' });
  expect(statSync(path).size).toBe(2800);
});

test('reading alone needs a database that is there, with tables of this version', async () => {
  const path = scratchPath();
  await expect(openStore(path, { readonly: true })).rejects.toMatchObject({ kind: 'broken' });
  expect(existsSync(path)).toBe(false);
  mkdirSync(dirname(path));
  new Database(path).exec('create table other (a)').close();
  await expect(openStore(path, { readonly: true })).rejects.toThrow(
    /older version \(without 0001-start, 0002-slots, 0003-photograph-licence, 0004-reminders, 0005-codes, 0006-name-shown, 0007-bare-photographs, 0008-reminded-on, 0009-files-to-come\)/,
  );
});
