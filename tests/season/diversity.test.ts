import { describe, expect, test } from 'vitest';
import type { Watch } from '../../shared/record.js';
import { seasonFigures } from '../../src/season/index.js';
import { missChance } from '../../src/season/choose.js';
import { plantWatched, queensRow, watch } from '../a-watch.js';
import { survey } from '../demo-survey.js';

const diversityOf = (watches: Watch[]) => seasonFigures(watches, { survey, protocolOnly: false, seed: 1 }).diversity;
/** A watch of one plant with these queens, by the bee's place in the alphabet. */
const seen = (counts: Record<string, number>, more: Partial<Parameters<typeof queensRow>[3]> = {}): Watch =>
  watch({
    plants: [plantWatched(1, 'Malus', 100)],
    queens: Object.entries(counts).map(([bee, count], index) =>
      queensRow(1, bee === 'genus' ? 'Bombus' : `Bombus ${bee}`, count, { row: index + 1, ...more }),
    ),
  });

describe('seven queens of four bees: 3, 2, 1, 1, in three watches of four', () => {
  const figures = diversityOf([seen({ a: 2, b: 1 }), seen({ a: 1, b: 1, c: 1, genus: 5 }), seen({ d: 1 }), seen({})]);

  test('indices', () => {
    expect(figures?.richness).toBe(4);
    // −(3/7 ln 3/7 + 2/7 ln 2/7 + 2 · 1/7 ln 1/7)
    expect(figures?.shannon).toBeCloseTo(1.27703425946614, 12);
    expect(figures?.simpson).toBeCloseTo(1 - 15 / 49, 12);
    expect(figures?.hill.q0).toBe(4);
    expect(figures?.hill.q1).toBeCloseTo(Math.exp(1.27703425946614), 11);
    expect(figures?.hill.q2).toBeCloseTo(49 / 15, 12);
  });

  test('what is unseen', () => {
    // f1 = 2, f2 = 1: 4 + 2 · 1 / (2 · 2); d1 = 7/4, d2 = 3/4, d3 = 1: variance 7.6875 − 5.25² / 4.5 = 1.5625
    expect(figures?.chao1.estimate).toBeCloseTo(4.5, 12);
    expect(figures?.chao1.se).toBeCloseTo(1.25, 12);
    expect(figures?.coverage).toBeCloseTo(1 - (2 / 7) * (12 / 14), 12);
  });

  test('rarefaction', () => {
    const points = figures?.rarefaction ?? [];
    expect(points.map(({ n }) => n)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14]);
    expect(points[0]?.expected).toBeCloseTo(1, 12);
    expect(points[0]?.se).toBeCloseTo(0, 6);
    // Two of seven are of one bee with chance (3 + 1) / 21.
    expect(points[1]?.expected).toBeCloseTo(38 / 21, 12);
    expect(points[1]?.se).toBeCloseTo(Math.sqrt((4 / 21) * (17 / 21)), 9);
    // Standard deviation over all 35 ways to draw four.
    expect(points[3]?.se).toBeCloseTo(0.608779307218929, 9);
    expect(points[6]?.expected).toBeCloseTo(4, 12);
    expect(points[6]?.se).toBeCloseTo(0, 6);
  });

  test('extrapolation to twice as many', () => {
    // f0 = 6/7 · 2² / 2 = 12/7; f1 / (n f0 + f1) = 2/14
    const points = figures?.rarefaction ?? [];
    expect(points[7]).toEqual({ n: 8, expected: expect.closeTo(4 + (12 / 7) * (1 / 7), 12) as number, se: null });
    expect(points[13]?.expected).toBeCloseTo(4 + (12 / 7) * (1 - (6 / 7) ** 7), 12);
  });

  test('by watches, the one without queens among them', () => {
    // a and b were in 2 of 4 watches, c and d in 1.
    const expected = [2 * (1 / 2) + 2 * (1 / 4), 2 * (1 - 1 / 6) + 2 * (1 / 2), 2 + 2 * (3 / 4), 4];
    expect(figures?.byWatches.map(({ watches }) => watches)).toEqual([1, 2, 3, 4]);
    figures?.byWatches.forEach((point, index) => expect(point.expected).toBeCloseTo(expected[index] ?? NaN, 12));
  });

  test('nothing was determined', () => {
    expect(figures?.determinedOnly).toBeNull();
  });
});

test('a queen seen on two plants is one', () => {
  const twice = watch({
    plants: [plantWatched(1, 'Malus', 100), plantWatched(2, 'Viola', 10)],
    queens: [queensRow(1, 'Bombus a', 1), queensRow(2, 'Bombus a', 1, { row: 2, seenBefore: 1 })],
  });
  expect(diversityOf([twice])?.rarefaction.map(({ n }) => n)).toEqual([1, 2]);
});

test('determined queens alone', () => {
  const determination = {
    taxa: ['Bombus b'],
    qualifier: null,
    count: 2,
    caste: null,
    by: 'ines',
    role: 'coordinator' as const,
    at: '2026-05-03T12:00:00Z',
    from: 'photograph' as const,
  };
  const figures = diversityOf([seen({ a: 5 }, { determinations: [determination] })]);
  expect(figures?.richness).toBe(2);
  expect(figures?.determinedOnly?.richness).toBe(1);
  expect(figures?.determinedOnly?.shannon).toBe(0);
  expect(figures?.determinedOnly?.simpson).toBe(0);
});

test('without singles nothing is unseen', () => {
  const figures = diversityOf([seen({ a: 4, b: 2 })]);
  expect(figures?.chao1).toEqual({ estimate: 2, se: 0 });
  expect(figures?.coverage).toBe(1);
  expect(figures?.rarefaction.at(-1)).toEqual({ n: 12, expected: 2, se: null });
});

test('singles without pairs', () => {
  // f1 = 2, f2 = 0, n = 5: coverage 1 − 2/5 · (4 · 1) / (4 · 1 + 2)
  expect(diversityOf([seen({ a: 3, b: 1, c: 1 })])?.coverage).toBeCloseTo(1 - (2 / 5) * (4 / 6), 12);
});

test('twenty points at most, the queens seen among them', () => {
  const points = diversityOf([seen({ a: 40, b: 16, c: 1 })])?.rarefaction ?? [];
  expect(points.map(({ n }) => n)).toEqual([
    6, 11, 17, 23, 29, 34, 40, 46, 51, 57, 63, 68, 74, 80, 86, 91, 97, 103, 108, 114,
  ]);
});

test('no queen known to its species: no diversity', () => {
  expect(diversityOf([seen({}), seen({ genus: 3 })])).toBeNull();
  expect(diversityOf([])).toBeNull();
});

const chances: [n: number, x: number, m: number, chance: number][] = [
  [7, 3, 2, 6 / 21],
  [7, 7, 1, 0],
  [7, 0, 7, 1],
  [7, 3, 4, 1 / 35],
  [7, 3, 5, 0],
  [100_000, 1, 50_000, 0.5],
  [100_000, 2, 50_000, (0.5 * 49_999) / 99_999],
];
test.each(chances)('of %d, %d are missed by %d drawn with chance %d', (n, x, m, chance) => {
  expect(missChance(n)(x, m)).toBeCloseTo(chance, 9);
});
