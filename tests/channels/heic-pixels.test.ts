/** A HEIC photograph is decoded beside the loop that answers everybody, and what goes wrong there loses nothing. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { afterAll, expect, test } from 'vitest';
import { barePhotograph } from '../../src/channels/bare-photograph.js';
import { heicPixels } from '../../src/channels/heic-pixels.js';
import { heic } from './telling-photographs.js';

const mostPixels = 10_000;
const folder = mkdtempSync(join(tmpdir(), 'queenpost-heic-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** A thread that does this, in place of the decoder. */
function thread(does: string): string {
  const path = join(folder, `${does.length}.mjs`);
  writeFileSync(path, `import { parentPort } from 'node:worker_threads';\n${does}\n`);
  return path;
}
const SPINS = 'const end = Date.now() + 400; while (Date.now() < end);';

test('the loop never loads the decoder', async () => {
  expect((await barePhotograph(heic()))?.type).toBe('image/jpeg');
  const loaded = Object.keys(createRequire(import.meta.url).cache);
  expect(loaded.filter((path) => path.includes('libheif'))).toEqual([]);
});

test('the loop turns while a picture is decoded', async () => {
  const decoded = heicPixels(heic(), { mostPixels, thread: thread(`${SPINS} parentPort.postMessage(null);`) });
  let turns = 0;
  let isDone = false;
  const done = decoded.finally(() => (isDone = true));
  for (; !isDone; turns++) await wait(5);
  expect(await done).toBeNull();
  expect(turns).toBeGreaterThan(10);
});

test('red, green and blue of each pixel, and none of a picture that is too large', async () => {
  const pixels = await heicPixels(heic(), { mostPixels });
  expect([pixels?.width, pixels?.height, pixels?.data.length]).toEqual([96, 64, 96 * 64 * 3]);
  expect(await heicPixels(heic(), { mostPixels: 96 * 64 - 1 })).toBeNull();
});

const dying: [what: string, does: string, why: string][] = [
  ['throws', "throw new Error('no memory');", 'no memory'],
  ['ends without a word', 'process.exit(7);', 'its thread ended with code 7'],
  ['takes too long', 'setInterval(() => {}, 1000);', 'it took more than 0.3 seconds'],
  ['cannot load the library', "await import('./no-such-library.mjs');", 'no-such-library'],
];
test.each(dying)('a thread that %s says nothing of the picture', async (what, does, why) => {
  const mostSeconds = what === 'takes too long' ? 0.3 : 60;
  const refused = heicPixels(heic(), { mostPixels, mostSeconds, thread: thread(does) });
  await expect(refused).rejects.toThrow(/^A HEIC photograph could not be decoded \(.*it stays as it is and is tried/s);
  await expect(refused).rejects.toThrow(why);
});

const lasting: [when: string, does: string][] = [
  ['it is late', ''],
  ['it has answered', 'parentPort.postMessage(null);'],
];
test.each(lasting)('no thread is left when %s', async (_when, does) => {
  const lives = join(folder, 'lives');
  const beats = `const { appendFileSync } = await import('node:fs');
    setInterval(() => appendFileSync(${JSON.stringify(lives)}, '.'), 5);`;
  const result = heicPixels(heic(), { mostPixels, mostSeconds: 0.3, thread: thread(`${beats}\n${does}`) });
  await result.catch(() => undefined);
  writeFileSync(lives, '');
  await wait(100);
  expect(readFileSync(lives, 'utf8')).toBe('');
});
