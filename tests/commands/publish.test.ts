/** `publish` as people run it: what it says, what it writes, and what it refuses. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { ROOT } from '../../src/settings/index.js';
import { newFolder, run } from './program.js';

const DEMO = join(ROOT, 'demo', 'season');

describe('the demo season', () => {
  test('is published whole, and its own words are not', async () => {
    const [data, folder] = [newFolder(), newFolder()];
    await run(['import', DEMO, '--data', data]);
    const said = await run(['publish', folder, '--data', data]);
    expect(said).toMatchObject({ stderr: '', code: 0 });
    expect(said.stdout).toMatch(/^Published 220 confirmed watches of Kestrel Fen Spring Queen Survey in /);
    expect(readdirSync(folder).sort()).toEqual([
      'columns.csv',
      'darwin-core.zip',
      'plants.csv',
      'queens.csv',
      'report.html',
      'season.xlsx',
      'watches.csv',
    ]);
    const watches = readFileSync(join(folder, 'watches.csv'), 'utf8');
    expect(watches.split('\n')).toHaveLength(222); // header, 220 rows, the end of the last
    for (const words of ['my front yard', 'our garden', 'kf-2']) expect(watches).not.toContain(words);
  });
});

test('without a watch it says how to get one, and writes nothing', async () => {
  const folder = join(newFolder(), 'new');
  const said = await run(['publish', folder, '--data', newFolder()]);
  expect(said.code).toBe(1);
  expect(said.stderr).toMatch(/^No watches are stored in .*; report one with "queenpost talk/);
});

test('without a folder it shows how it is used', async () => {
  const said = await run(['publish']);
  expect(said).toMatchObject({ stdout: '', code: 1 });
  expect(said.stderr).toContain('Usage: queenpost publish DIR');
});
