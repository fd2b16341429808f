import { expect, test } from 'vitest';
import type { Watch } from '../../shared/record.js';
import { seasonFigures, type Rate } from '../../src/season/index.js';
import { garwood, studentFor } from '../../src/season/intervals.js';
import { jackknife } from '../../src/season/rates.js';
import { plantWatched, queensRow, watch } from '../a-watch.js';
import { survey } from '../demo-survey.js';

const ratesOf = (watches: Watch[]): readonly Rate[] =>
  seasonFigures(watches, { survey, protocolOnly: false, seed: 1 }).rates ?? [];
const rate = (watches: Watch[], bee: string | null = null, plant: string | null = null): Rate => {
  const found = ratesOf(watches).find((one) => one.bee === bee && one.plant === plant);
  if (!found) throw new Error(`No rate of ${bee} on ${plant}.`);
  return found;
};

// Garwood 1936, as printed in tables of exact Poisson limits (Pearson & Hartley, Biometrika Tables for Statisticians,
// vol. 1, table 40), from memory
test.each([
  [0, 0, 3.689],
  [1, 0.0253, 5.572],
  [2, 0.242, 7.225],
  [5, 1.623, 11.668],
  [10, 4.795, 18.39],
  [20, 12.217, 30.888],
  [50, 37.11, 65.92],
])('of %d counted the exact limits are %d and %d', (count, low, high) => {
  const limits = garwood(count);
  expect(limits.low95).toBeCloseTo(low, count < 2 ? 3 : 2);
  expect(limits.high95).toBeCloseTo(high, 2);
});

// tables of Student's t, two-sided 95 %
test.each([
  [10, 2.262],
  [21, 2.086],
  [31, 2.042],
])('t of %d clusters is %d', (clusters, quantile) => {
  expect(studentFor(clusters)).toBeCloseTo(quantile, 3);
});

/** One watch by each observer: so many queens of bee a on plant A. */
const byObservers = (queens: readonly number[], minutes = 15): Watch[] =>
  queens.map((count, at) =>
    watch({
      observer: `observer-${at}`,
      minutes,
      plants: [plantWatched(1, 'A', 10)],
      queens: count === 0 ? [] : [queensRow(1, 'Bombus a', count)],
    }),
  );

test('a rate is of all watches for a bee, of its own watches for a plant', () => {
  const watches = [
    watch({ minutes: 15, plants: [plantWatched(1, 'A', 10)], queens: [queensRow(1, 'Bombus a', 3)] }),
    watch({ minutes: 30, plants: [plantWatched(1, 'B', 10)], queens: [] }),
  ];
  expect(rate(watches)).toMatchObject({ queens: 3, watches: 2, minutes: 45, per15min: 1 });
  expect(rate(watches, 'Bombus a')).toMatchObject({ queens: 3, watches: 2, minutes: 45, per15min: 1 });
  expect(rate(watches, null, 'A')).toMatchObject({ queens: 3, watches: 1, minutes: 15, per15min: 3 });
  expect(rate(watches, 'Bombus a', 'A')).toMatchObject({ queens: 3, minutes: 15, per15min: 3 });
  // a zero is a rate too
  const zero = rate(watches, 'Bombus a', 'B');
  expect(zero).toMatchObject({ queens: 0, minutes: 30, per15min: 0 });
  expect(zero.poisson?.low95).toBe(0);
  expect(zero.poisson?.high95).toBeCloseTo(3.689 / 2, 3);
  expect(ratesOf(watches).map(({ bee, plant }) => [bee, plant])).toEqual([
    [null, null],
    ['Bombus a', null],
    [null, 'A'],
    [null, 'B'],
    ['Bombus a', 'A'],
    ['Bombus a', 'B'],
  ]);
});

test('a queen seen on two plants is one queen and two visits', () => {
  const watches = [
    watch({
      minutes: 15,
      plants: [plantWatched(1, 'A', 10), plantWatched(2, 'B', 10)],
      queens: [queensRow(1, 'Bombus a', 1), { ...queensRow(2, 'Bombus a', 1), row: 2, seenBefore: 1 }],
    }),
  ];
  expect([rate(watches).queens, rate(watches, null, 'A').queens, rate(watches, null, 'B').queens]).toEqual([1, 1, 1]);
});

test('below ten observers only the interval that takes every watch alike is given', () => {
  const few = rate(byObservers([1, 2, 3, 0, 1, 2, 0, 1, 4]));
  expect(few.clustered).toBeNull();
  expect(few.interval).toBeNull();
  expect(few.poisson?.low95).toBeCloseTo(7.65 / 9, 2); // Garwood's 14: 7.65 to 23.49
  expect(few.poisson?.high95).toBeCloseTo(23.49 / 9, 2);
});

test('the clustered interval, worked by hand', () => {
  // ten observers, one watch of 15 minutes each: R = 2 a watch; Σ (y − 2)² = 4+1+0+0+1+4+0+9+1+0 = 20;
  // Var = 10/9 × 20 / 100 = 0.2222, se = 0.4714; t9 = 2.262
  const found = rate(byObservers([0, 1, 2, 2, 3, 4, 2, 5, 1, 0]));
  expect(found.queens).toBe(20);
  const squares = [0, 1, 2, 2, 3, 4, 2, 5, 1, 0].reduce((all, y) => all + (y - 2) ** 2, 0);
  const se = Math.sqrt(((10 / 9) * squares) / 100);
  expect(found.clustered?.se).toBeCloseTo(se, 10);
  expect(found.clustered?.low95).toBeCloseTo(2 - 2.2622 * se, 3);
  expect(found.clustered?.high95).toBeCloseTo(2 + 2.2622 * se, 3);
});

test('two watches of one observer are one cluster', () => {
  const twice = [...byObservers([0, 1, 2, 2, 3, 4, 2, 5, 1, 0]), ...byObservers([1, 1, 1, 1, 1, 1, 1, 1, 1, 1])];
  const once = byObservers([1, 2, 3, 3, 4, 5, 3, 6, 2, 1], 30);
  expect(rate(twice).clustered).toEqual(rate(once).clustered);
});

test('the lower end is not below nothing', () => {
  expect(rate(byObservers([0, 0, 0, 0, 0, 0, 0, 0, 0, 9])).clustered?.low95).toBe(0);
});

test('the jackknife of the logarithm, worked by hand', () => {
  // equal effort, so ln of a rate without one is ln((20 − y)/9): the spread of these, times 9/10 of its sum
  const counts = [0, 1, 2, 2, 3, 4, 2, 5, 1, 0];
  const logs = counts.map((y) => Math.log((20 - y) / 9));
  const mean = logs.reduce((all, log) => all + log, 0) / 10;
  const se = Math.sqrt(0.9 * logs.reduce((all, log) => all + (log - mean) ** 2, 0));
  const found = rate(byObservers(counts));
  expect(found.interval).toMatchObject({ clusters: 10, by: 'observer' });
  expect(found.interval?.low95).toBeCloseTo(2 * Math.exp(-2.2622 * se), 3);
  expect(found.interval?.high95).toBeCloseTo(2 * Math.exp(2.2622 * se), 3);
});

test('where there are fewer sites than observers, sites are the clusters', () => {
  const place = (site: string) => ({
    latitude: null,
    longitude: null,
    uncertaintyMetres: null,
    words: '',
    site,
    private: false,
  });
  const watches = byObservers(Array.from({ length: 22 }, (_, at) => at % 4)).map((one, at) => ({
    ...one,
    place: place(`site-${at % 11}`),
  }));
  expect(rate(watches).interval).toMatchObject({ clusters: 11, by: 'site' });
});

test('no headline where all queens were seen in one cluster: what the others hold cannot be told', () => {
  expect(jackknife([5, 0, 0, 0, 0, 0, 0, 0, 0, 0], new Array<number>(10).fill(15))).toBeNull();
});

test('no minute watched: no rate, rather than an infinite one', () => {
  expect(rate([watch({ minutes: 0, plants: [plantWatched(1, 'A', 10)], queens: [] })])).toMatchObject({
    per15min: null,
    poisson: null,
    clustered: null,
    interval: null,
  });
});
