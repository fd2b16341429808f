/** `npm run bench:season` runs, with seasons too small to mean anything, and prints a row for each with every cell measured. */
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { ROOT } from '../../src/settings/index.js';
import { openStore } from '../../src/store/index.js';
import { CHILD_TIMEOUT } from '../child-program.js';
import { scratchPath } from '../store/scratch.js';
import { SUBJECTS, subjects } from './measures/season-figures.js';
import { filled } from './measures/stored.js';

test(
  'the bench prints one table with every cell measured',
  () => {
    const args = ['--import', './tests/run-typescript.mjs', join('tests', 'bench', 'season.ts'), '--small'];
    const { stdout, stderr, status } = spawnSync(process.execPath, args, { cwd: ROOT, encoding: 'utf8' });
    expect({ status, stderr }).toEqual({ status: 0, stderr: expect.stringContaining('done') as string });
    const rows = stdout
      .trimEnd()
      .split('\n')
      .map((row) =>
        row
          .split('|')
          .map((cell) => cell.trim())
          .slice(1, -1),
      );
    expect(rows.map(([watches]) => watches)).toEqual(['watches', '---', '100', '400']);
    for (const row of rows.slice(2)) {
      expect(row).toEqual(rows[0]?.map(() => expect.stringMatching(/^\d[\d.,]*( s| MB)?$/) as string));
      for (const memory of row.filter((cell) => cell.endsWith('MB'))) expect(parseInt(memory, 10)).toBeGreaterThan(20);
    }
  },
  CHILD_TIMEOUT,
);

test('the query and the figures are about the same queens', async () => {
  const path = scratchPath();
  (await filled(path, 200, 100)).close();
  const store = await openStore(path, { readonly: true });
  const [query, table, all] = SUBJECTS.map((subject) => subjects[subject](store));
  store.close();
  // the query holds workers too, and table and rates count visits and queens both
  expect(query).toBeGreaterThan(50);
  expect(table! / query!).toBeGreaterThan(1.5);
  expect(table! / query!).toBeLessThan(2);
  expect(all).toBeGreaterThan(50);
});
