/** What is removed from the data folder, and what must not be: a picture whose message is still on its way. */
import { mkdirSync, mkdtempSync, readdirSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { sweep } from '../../src/commands/sweep.js';
import { bared, bareLater, filesToRemove, keepWatch, removeLater } from '../../src/store/index.js';
import { sampleWatch, SURVEY } from '../store/sample.js';
import { openScratch } from '../store/scratch.js';

const HOUR_SECONDS = 3600;

test('a picture that nobody knows of is removed once no message can bring it, at once if it was somebody forgotten', async () => {
  const store = await openScratch();
  const data = mkdtempSync(join(tmpdir(), 'queenpost-'));
  const photos = join(data, 'photos');
  mkdirSync(photos);
  for (const name of ['fresh', 'forgotten', 'old']) writeFileSync(join(photos, name), name);
  const before = Date.now() / 1000 - 2 * HOUR_SECONDS;
  utimesSync(join(photos, 'old'), before, before);

  store.writing((transaction) => removeLater(transaction, SURVEY, 'forgotten'));
  sweep(store, data);
  expect(readdirSync(photos)).toEqual(['fresh']);
  expect(filesToRemove(store).size).toBe(0);
});

test('a photograph of somebody forgotten goes when its copy is there, and stays where it is somebody else’s too', async () => {
  const store = await openScratch();
  const data = mkdtempSync(join(tmpdir(), 'queenpost-'));
  const photos = join(data, 'photos');
  mkdirSync(photos);
  for (const name of ['own', 'shared']) writeFileSync(join(photos, name), name);
  const photograph = (sha256: string) => ({
    sha256,
    type: 'image/png',
    takenAt: null,
    queensRow: null,
    licence: null,
  });
  const thread = { survey: SURVEY, channel: 'terminal', person: 'wren' };
  store.writing((transaction) => {
    keepWatch(transaction, sampleWatch({ number: 1, photographs: [photograph('own'), photograph('shared')] }));
    keepWatch(transaction, sampleWatch({ number: 2, photographs: [photograph('shared')] }));
    for (const sha256 of ['own', 'shared']) {
      bareLater(transaction, thread, { watch: 1, sha256 });
      removeLater(transaction, SURVEY, sha256);
    }
  });
  sweep(store, data);
  expect(readdirSync(photos).sort()).toEqual(['own', 'shared']);
  expect([...filesToRemove(store)].sort()).toEqual(['own', 'shared']);

  store.writing((transaction) => {
    keepWatch(transaction, sampleWatch({ number: 1, photographs: [photograph('bare')] }));
    for (const sha256 of ['own', 'shared']) bared(transaction, thread, { watch: 1, sha256 });
  });
  sweep(store, data);
  expect(readdirSync(photos)).toEqual(['shared']);
  expect(filesToRemove(store).size).toBe(0);
});

test('a mail that the outbox does not know is removed', async () => {
  const store = await openScratch();
  const data = mkdtempSync(join(tmpdir(), 'queenpost-'));
  mkdirSync(join(data, 'mail'));
  writeFileSync(join(data, 'mail', 'unknown.eml'), '');
  sweep(store, data);
  expect(readdirSync(join(data, 'mail'))).toEqual([]);
});
