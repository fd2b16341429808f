/**
 * `demo/season/` is an invented season of 240 watches by 40 observers, as the data package that `export` writes and
 * `import` takes. It is made, not kept by hand: after a change of the generator or of the columns, write it anew from
 * the top folder with
 *
 *   QUEENPOST_WRITE_DEMO=1 npx vitest run --config tests/vitest.config.ts tests/demo/season.test.ts
 */
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { LAYOUTS } from '../../shared/columns.js';
import { descriptorOf, readPackage, sayProblem, writePackage } from '../../src/publish/package/index.js';
import { seasonFigures } from '../../src/season/index.js';
import { madeSeason } from '../bench/made-season.js';
import { survey } from '../demo-survey.js';

const FOLDER = join(import.meta.dirname, '..', '..', 'demo', 'season');
const watches = [...madeSeason({ seed: 18, observers: 40, watches: 240, survey })];

function madeFiles(): Map<string, string> {
  const files = new Map([['datapackage.json', descriptorOf(survey.settings)]]);
  for (const { file, text } of writePackage(watches)) files.set(file, (files.get(file) ?? '') + text);
  return files;
}

const made = madeFiles();
if (process.env['QUEENPOST_WRITE_DEMO'] === '1') {
  mkdirSync(FOLDER, { recursive: true });
  for (const [file, text] of made) writeFileSync(join(FOLDER, file), text);
}
const kept = (file: string): string => readFileSync(join(FOLDER, file), 'utf8');

test.each([...made.keys()])('%s is as it is made', (file) => {
  expect(kept(file) === made.get(file), `${file} is not what the generator makes; see the top of this test`).toBe(true);
});

test('nothing else lies there', () => {
  expect(readdirSync(FOLDER).sort()).toEqual([...made.keys()].sort());
});

test('it can be imported: the same figures come out', () => {
  const { watches: taken, problems } = readPackage(Object.fromEntries(LAYOUTS.map(({ file }) => [file, kept(file)])), {
    survey,
    now: '2026-07-01T12:00:00Z',
    newId: () => '019f0000-0000-7000-8000-000000000000',
    siteOf: () => null,
  });
  expect(problems.map(sayProblem)).toEqual([]);
  const figures = (of: typeof taken) => seasonFigures(of, { survey, protocolOnly: false, seed: 1 });
  expect(figures(taken)).toEqual(figures(watches));
});
