/** What is removed from the data folder, and what must not be: a picture whose message is still on its way. */
import { mkdirSync, mkdtempSync, readdirSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { sweep } from '../../src/commands/sweep.js';
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

  sweep(store, data, ['forgotten']);
  expect(readdirSync(photos)).toEqual(['fresh']);
});

test('a mail that the outbox does not know is removed', async () => {
  const store = await openScratch();
  const data = mkdtempSync(join(tmpdir(), 'queenpost-'));
  mkdirSync(join(data, 'mail'));
  writeFileSync(join(data, 'mail', 'unknown.eml'), '');
  sweep(store, data);
  expect(readdirSync(join(data, 'mail'))).toEqual([]);
});
