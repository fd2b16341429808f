/** What tests write is gone after them, also after a run that was killed. */
import { existsSync, mkdirSync, mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test, vi } from 'vitest';
import { setup } from './temporary-folder.js';

/** Linux gives numbers up to 4,194,304 (proc(5), pid_max). */
const NOBODY = 4_194_305;

test('a run has a folder of its own, which goes at its end with all that is in it, as do those of runs that were killed', () => {
  const parent = mkdtempSync(join(tmpdir(), 'parent-'));
  for (const variable of ['TMPDIR', 'TMP', 'TEMP']) vi.stubEnv(variable, parent);
  const [killed, running, other] = [
    `queenpost-tests-${NOBODY}-aBcDeF`,
    `queenpost-tests-${process.pid}-aBcDeF`,
    'somebody-elses',
  ].map((name) => join(parent, name)) as [string, string, string];
  for (const folder of [killed, running, other]) mkdirSync(join(folder, 'data'), { recursive: true });

  const remove = setup();
  const own = tmpdir();
  expect(own.startsWith(join(parent, `queenpost-tests-${process.pid}-`))).toBe(true);
  expect([killed, running, other].map((folder) => existsSync(folder))).toEqual([false, true, true]);
  writeFileSync(join(mkdtempSync(join(own, 'queenpost-')), 'queenpost.sqlite'), '');
  remove();
  expect(existsSync(own)).toBe(false);
  vi.unstubAllEnvs();
});
