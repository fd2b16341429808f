/** `npm run bench` runs, with sizes too small to mean anything, and prints a row for all that it promises. */
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { ROOT } from '../../src/settings/index.js';
import { CHILD_TIMEOUT } from '../child-program.js';

const ROWS = [
  'talk: from its start to its first reply',
  'exchange / bare better-sqlite3, one by one',
  'exchange, fifty waiting / bare one by one',
  'exchange, fifty waiting / bare fifty a commit',
  'with the dialog / bare, one by one',
  'with the dialog, fifty waiting / bare one by one',
  'with the dialog, fifty waiting / bare fifty a commit',
  'bare better-sqlite3 one by one / bare fsync of 4 KiB',
  'with the dialog, one by one / bare fsync of 4 KiB',
  'a message beside 50 stored watches',
  'a message beside 100 stored watches',
  'a message beside 200 stored watches',
  'the dearest of these / the cheapest',
  'memory with 20 open reports',
];

test(
  'the bench prints one table with every row measured',
  () => {
    const args = ['--import', './tests/run-typescript.mjs', join('tests', 'bench', 'bench.ts'), '--small'];
    const { stdout, stderr, status } = spawnSync(process.execPath, args, { cwd: ROOT, encoding: 'utf8' });
    expect({ status, stderr }).toEqual({ status: 0, stderr: expect.stringContaining('done') as string });
    const [header, rule, ...rows] = stdout.trimEnd().split('\n');
    expect([header, rule]).toEqual(['|  | measured | goal |', '| --- | --- | --- |']);
    const cells = rows.map((row) => row.split('|').map((cell) => cell.trim()));
    expect(cells.map(([, what]) => what)).toEqual(ROWS);
    for (const [, what, measured] of cells) expect([what, measured]).toEqual([what, expect.stringMatching(/^\d/)]);
    expect(stdout).not.toContain('NaN');
  },
  CHILD_TIMEOUT,
);
