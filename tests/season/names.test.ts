import { expect, test } from 'vitest';
import type { Determination, Watch } from '../../shared/record.js';
import { seasonFigures } from '../../src/season/index.js';
import { PRIOR_QUEENS } from '../../src/season/names.js';
import { plantWatched, queensRow, watch } from '../a-watch.js';
import { survey } from '../demo-survey.js';

const namesOf = (watches: Watch[]) => seasonFigures(watches, { survey, protocolOnly: false, seed: 1 }).names;

const determined = (taxa: string[], count: number): Determination => ({
  taxa,
  qualifier: null,
  count,
  caste: null,
  by: 'Ines',
  role: 'coordinator',
  at: '2026-05-03T12:00:00Z',
  from: 'photograph',
});

/** A watch by an observer who reported so many of a bee; experts named some of them. */
const reported = (observer: string, bee: string, count: number, ...experts: [name: string, count: number][]): Watch =>
  watch({
    observer,
    plants: [plantWatched(1, 'A', 10)],
    queens: [queensRow(1, bee, count, { determinations: experts.map(([name, queens]) => determined([name], queens)) })],
  });

test('what was reported, what experts looked at, and how often they agreed', () => {
  const found = namesOf([reported('a', 'Bombus x', 4, ['Bombus x', 2], ['Bombus y', 1]), reported('b', 'Bombus y', 3)]);
  expect(found).toMatchObject({ reported: 7, determined: 3, agree: 2 });
});

test('without a determination nothing is corrected', () => {
  expect(namesOf([reported('a', 'Bombus x', 4)])).toEqual({ reported: 4, determined: 0, agree: 0, corrected: null });
  expect(namesOf([])).toEqual({ reported: 0, determined: 0, agree: 0, corrected: null });
});

test('undetermined queens are shared out by what their name has meant, worked by hand', () => {
  // of 10 reported as x and determined, 6 were x and 4 were y; 20 more reported as x were not looked at.
  // With a prior of one queen: x 6 + 20 × (6 + 1)/11, y 4 + 20 × 4/11
  expect(PRIOR_QUEENS).toBe(1);
  const found = namesOf([
    reported('a', 'Bombus x', 10, ['Bombus x', 6], ['Bombus y', 4]),
    reported('b', 'Bombus x', 20),
  ]);
  const corrected = Object.fromEntries((found.corrected ?? []).map((one) => [one.bee, one]));
  expect(corrected['Bombus x']).toMatchObject({ counted: 26 });
  expect(corrected['Bombus x']?.corrected).toBeCloseTo(6 + (20 * 7) / 11, 10);
  expect(corrected['Bombus y']).toMatchObject({ counted: 4 });
  expect(corrected['Bombus y']?.corrected).toBeCloseTo(4 + (20 * 4) / 11, 10);
});

test('queens are neither made nor lost', () => {
  const found = namesOf([
    reported('a', 'Bombus x', 10, ['Bombus x', 6], ['Bombus y', 4]),
    reported('b', 'Bombus y', 7, ['Bombus z', 2]),
    reported('c', 'Bombus', 3),
  ]);
  expect((found.corrected ?? []).reduce((all, one) => all + one.corrected, 0)).toBeCloseTo(20, 10);
});

test('where experts always agreed, nothing changes, and the interval is about the count', () => {
  const found = namesOf(
    Array.from({ length: 12 }, (_, at) => reported(`observer-${at}`, 'Bombus x', 4, ['Bombus x', 2])),
  );
  expect(found.corrected).toEqual([{ bee: 'Bombus x', counted: 48, corrected: 48, low95: 48, high95: 48 }]);
});

test('the interval holds the estimate and is the same at each run', () => {
  const season = Array.from({ length: 15 }, (_, at) =>
    reported(`observer-${at}`, 'Bombus x', 6, ['Bombus x', 1 + (at % 3)], ['Bombus y', at % 2]),
  );
  const found = namesOf(season);
  for (const { low95, corrected, high95 } of found.corrected ?? []) {
    expect(low95).toBeLessThan(corrected);
    expect(high95).toBeGreaterThan(corrected);
  }
  expect(namesOf(season)).toEqual(found);
});
