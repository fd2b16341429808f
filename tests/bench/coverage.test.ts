/** The recorded coverage is what the seed gives. Each row has a seed of its own, so a few are drawn again here, whole. */
import { expect, test } from 'vitest';
import { COVERAGE } from '../../src/season/coverage.js';
import { DESIGNS, seedOf } from './coverage/designs.js';
import { coverageOf } from './coverage/simulated.js';

test('a row for each design', () => {
  expect(COVERAGE.rows.map(({ observers, sites, spread }) => ({ observers, sites, spread }))).toEqual(DESIGNS);
});

test.each([0, 5, 8])('row %d comes out the same', (row) => {
  const again = coverageOf(DESIGNS[row]!, { rounds: COVERAGE.rounds, seed: seedOf(row) });
  expect(again).toEqual(COVERAGE.rows[row]);
});

test('where all are alike, an exact interval holds what it promises', () => {
  const alike = COVERAGE.rows.filter(({ spread }) => spread === 0);
  expect(alike.length).toBe(4);
  // of 2,000 seasons the share of 95 % has a standard error of 0.5
  for (const { poisson } of alike) expect(Math.abs((poisson ?? 0) - 95)).toBeLessThan(1.5);
});
