/** Power by drawing, against formulas where there are some; planning from a season worked by hand. */
import { expect, test } from 'vitest';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import type { Watch } from '../../shared/record.js';
import { drawsFrom } from '../../src/season/chance.js';
import { seasonFigures } from '../../src/season/index.js';
import { nextSizes, powerOf, type CountModel } from '../../src/season/power.js';
import { plantWatched, queensRow, watch } from '../a-watch.js';
import { survey } from '../demo-survey.js';

const ones = (count: number): number[] => Array.from({ length: count }, () => 1);
const alike = { queensPerWatch: 1, betweenClusters: 0, withinClusters: 0, sizes: ones(150) } satisfies CountModel;
const CHANCE = { rounds: 4000, seed: 1 };
const power = (model: CountModel, watches: number, changePercent = -30): number =>
  powerOf(model, { watches, changePercent }, CHANCE);

// Two Poisson counts: se² of ln R₂/R₁ is 1/(Nμ) + 1/(0.7 nμ); power Φ(|ln 0.7|/se − 1.96), Φ from a printed table. A share of
// 0.8 of 4,000 has a standard error of 0.006.
test.each([
  [150, 0.8], // √(1/150 + 1/105) = 0.1272: Φ(0.843)
  [50, 0.476], // √(1/150 + 1/35) = 0.1877: Φ(−0.060)
  [600, 0.963], // √(1/150 + 1/420) = 0.0951: Φ(1.79)
])('where all watches are alike, %d of them next year beside 150 have the power of two Poisson counts, %d', (n, of) => {
  expect(Math.abs(power(alike, n) - of)).toBeLessThan(0.03);
});

test('overdispersion counts as so many queens fewer: negative binomial of θ = 1', () => {
  // se² = (1/μ + 1/θ)/N + (1/(0.7 μ) + 1/θ)/n = 2/300 + 2.4286/300 = 0.014762, se 0.1215: Φ(2.936 − 1.96) = Φ(0.976) = 0.835
  expect(Math.abs(power({ ...alike, withinClusters: 1, sizes: ones(300) }, 300) - 0.835)).toBeLessThan(0.03);
});

test('clusters that differ: many watches of few people are little more than few watches', () => {
  // 60 clusters of 5, μ = 1, variance between 0.5: se² = (1/5 + 0.5)/60 + (1/3.5 + 0.5)/60 = 0.02476, se 0.1574: Φ(2.267 − 1.98) = 0.613
  const people = { ...alike, betweenClusters: 0.5, sizes: Array.from({ length: 60 }, () => 5) };
  expect(Math.abs(power(people, 300) - 0.613)).toBeLessThan(0.035);
});

test('without a true change it is shown in the wrong: a fortieth in one direction', () => {
  expect(power(alike, 150, -0.0001)).toBeGreaterThan(0.015);
  expect(power(alike, 150, -0.0001)).toBeLessThan(0.035);
});

test('power rises with watches', () => {
  const sizes = Array.from({ length: 40 }, (_, at) => 1 + (at % 8));
  const found = [20, 90, 180, 360, 720].map((watches) =>
    power({ queensPerWatch: 2, betweenClusters: 0.1, withinClusters: 0.5, sizes }, watches),
  );
  expect(found).toEqual([...found].sort((one, other) => one - other));
  expect(new Set(found).size).toBe(found.length);
});

test('fewer than ten clusters show nothing', () => {
  expect(power(alike, 9)).toBe(0);
  expect(power({ ...alike, queensPerWatch: 1000, sizes: ones(9) }, 900)).toBe(0);
});

test.each([
  [[4, 2, 2], 8, [4, 2, 2]],
  [[4, 2, 2], 4, [2, 1, 1]],
  [[4, 2, 2], 20, [4, 2, 2, 4, 2, 2, 2, 1, 1]],
  [[1, 1, 1, 1], 2, [1, 1]],
])('clusters of %j make %d watches by %j', (sizes, watches, expected) => {
  expect(nextSizes(sizes, watches)).toEqual(expected);
});

test.each([0.4, 1, 7])('gamma draws of shape %d have mean 1 and variance 1/shape', (shape) => {
  const draws = drawsFrom(xoroshiro128plus(3));
  const values = Array.from({ length: 40_000 }, () => draws.gamma(shape));
  const mean = values.reduce((all, value) => all + value, 0) / values.length;
  const variance = values.reduce((all, value) => all + (value - mean) ** 2, 0) / values.length;
  expect(Math.abs(mean - 1)).toBeLessThan(0.03);
  expect(Math.abs(variance * shape - 1)).toBeLessThan(0.08);
});

/** Each list is an observer's watches, with so many queens. */
const seasonOf = (observers: readonly (readonly number[])[]): Watch[] =>
  observers.flatMap((counts, at) =>
    counts.map((count) =>
      watch({
        observer: `observer ${at}`,
        plants: [plantWatched(1, 'A', 10)],
        queens: count === 0 ? [] : [queensRow(1, 'Bombus a', count)],
      }),
    ),
  );
const planOf = (watches: Watch[], planFor: number, seed = 1) =>
  seasonFigures(watches, { survey, protocolOnly: false, seed, planFor }).planning;

/** Six people see 4 in each of two watches, six see none. */
const apart = seasonOf([...Array<number[]>(6).fill([4, 4]), ...Array<number[]>(6).fill([0, 0])]);

test('what is fitted: watches of one observer that agree in full have nothing of their own', () => {
  // R = 2 a watch; a pair's residuals are 2·2 or −2·−2: 4 over 2·2, so the variance between is 1
  const plan = planOf(apart, -30);
  expect(plan).toMatchObject({ changePercent: -30, aimedPower: 0.8, by: 'observer', clusters: 12, per15min: 2 });
  expect(plan?.betweenClusters).toBeCloseTo(1, 12);
});

test('residuals that go apart within observers leave nothing between them', () => {
  const plan = planOf(seasonOf(Array<number[]>(12).fill([0, 4])), -30);
  expect(plan?.betweenClusters).toBe(0);
  expect(plan?.withinClusters).toBeGreaterThan(0);
});

test('a season too small to compare with: no number, and the powers that show why', () => {
  const plan = planOf(apart, -30);
  expect(plan?.watches).toBeNull();
  expect(plan?.powerAt.map(({ watches }) => watches)).toEqual([3, 6, 12, 24, 48, 96, 192, 384]);
  expect(plan?.powerAt.at(-1)?.power).toBeLessThan(0.8);
});

test('a number of watches lies between the last that does not show it and the first that does', () => {
  const plan = planOf(seasonOf(Array<number[]>(40).fill([3, 2, 1, 2])), -30);
  const [before, first] = plan?.powerAt.slice(-2) ?? [];
  expect(before?.power).toBeLessThan(0.8);
  expect(first?.power).toBeGreaterThanOrEqual(0.8);
  expect(plan?.watches).toBeGreaterThan(before?.watches ?? NaN);
  expect(plan?.watches).toBeLessThanOrEqual(first?.watches ?? NaN);
});

test('the same seed gives the same, in whatever order the watches come; another seed gives another', () => {
  expect(planOf([...apart].reverse(), -30)).toEqual(planOf(apart, -30));
  expect(planOf(apart, -30, 2)?.powerAt).not.toEqual(planOf(apart, -30)?.powerAt);
});

test('too little to plan from: nine observers, no queen', () => {
  expect(planOf(seasonOf(Array<number[]>(9).fill([2, 1])), -30)).toBeNull();
  expect(planOf(seasonOf(Array<number[]>(12).fill([0, 0])), -30)).toBeNull();
  expect(planOf([], -30)).toBeNull();
});

test('no planning unless it is asked for', () => {
  expect(seasonFigures(apart, { survey, protocolOnly: false, seed: 1 })).not.toHaveProperty('planning');
});
