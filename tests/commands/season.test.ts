/** `season --plan` as people run it, on the demo season. */
import { join } from 'node:path';
import { beforeAll, expect, test } from 'vitest';
import { ROOT } from '../../src/settings/index.js';
import { newFolder, run } from './program.js';

const data = newFolder();
beforeAll(async () => {
  await run(['import', join(ROOT, 'demo', 'season'), '--data', data]);
});
const season = (...args: string[]) => run(['season', ...args, '--data', data]);
const oneLine = (text: string): string => text.replaceAll('\n', ' ');
const TWO_YEARS = 'Two seasons cannot tell a decline from the weather';

test('a change too small for the season is said to be under the table, and two years are said to be too few', async () => {
  const { stdout, stderr, code } = await season('--plan', '-10');
  expect({ stderr, code }).toEqual({ stderr: '', code: 0 });
  expect(oneLine(stdout)).toContain('A change of -10% cannot be shown four times in five');
  expect(oneLine(stdout)).toContain(TWO_YEARS);
});

test('a greater change is shown by a number of watches, and percent may be said', async () => {
  const { stdout } = await season('--plan', '-30 %');
  expect(oneLine(stdout)).toMatch(/About [\d,]+ watches next year would show a change of -30% four times in five/);
});

test('the key is there for programs only where it was asked for', async () => {
  const [asked, plain] = [await season('--json', '--plan', '50'), await season('--json')];
  expect(JSON.parse(asked.stdout)).toMatchObject({ planning: { changePercent: 50, aimedPower: 0.8 } });
  expect(JSON.parse(plain.stdout)).not.toHaveProperty('planning');
});

test('without the wish nothing is said of next year', async () => {
  expect(oneLine((await season()).stdout)).not.toContain(TWO_YEARS);
});

test.each(['x', '0', '-100', '', '1001'])('"%s" is no change, and it says what is', async (change) => {
  const { stdout, stderr, code } = await season(`--plan=${change}`);
  expect({ stdout, code }).toEqual({ stdout: '', code: 1 });
  expect(stderr).toContain('season --plan -30');
});
