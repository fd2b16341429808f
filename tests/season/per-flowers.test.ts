/** Visits to a hundred open flowers, worked by hand; the interval by Garwood's table (0: 0 to 3.689; 3: 0.619 to 8.767). */
import { expect, test } from 'vitest';
import type { Watch } from '../../shared/record.js';
import { seasonFigures } from '../../src/season/index.js';
import { plantWatched, queensRow, watch } from '../a-watch.js';
import { survey } from '../demo-survey.js';

const figuresOf = (watches: Watch[]) => seasonFigures(watches, { survey, protocolOnly: false, seed: 1 }).perFlowers;

const willow = plantWatched(1, 'Salix', 50);

test('visits, minutes and flowers of every watch of the plant, those without queens too', () => {
  // 3 visits in 15 min × 50 + 15 min × 250 = 4,500 flower minutes: 3 × 1,500 / 4,500 = 1
  const found = figuresOf([
    watch({ number: 1, plants: [willow], queens: [queensRow(1, 'Bombus impatiens', 3)] }),
    watch({ number: 2, plants: [plantWatched(1, 'Salix', 250)], queens: [] }),
  ]);
  expect(
    found.map(({ bee, visits, flowerMinutes, per15minPer100 }) => [bee, visits, flowerMinutes, per15minPer100]),
  ).toEqual([
    [null, 3, 4500, 1],
    ['Bombus impatiens', 3, 4500, 1],
  ]);
  expect(found[0]?.poisson?.low95).toBeCloseTo(0.619 / 3, 3);
  expect(found[0]?.poisson?.high95).toBeCloseTo(8.767 / 3, 3);
});

test('a plant that nobody visited has a rate of 0 with an upper end', () => {
  const [row] = figuresOf([watch({ plants: [willow], queens: [] })]); // 15 × 50 = 750 flower minutes: times 2
  expect(row).toMatchObject({ bee: null, visits: 0, per15minPer100: 0 });
  expect(row?.poisson?.low95).toBe(0);
  expect(row?.poisson?.high95).toBeCloseTo(3.689 * 2, 2);
});

test('a watch of no open flower is counted and left out, with what was seen in it', () => {
  const [row] = figuresOf([
    watch({ plants: [plantWatched(1, 'Salix', 0)], queens: [queensRow(1, 'Bombus impatiens', 1)] }),
  ]);
  expect(row).toMatchObject({ visits: 0, flowerMinutes: 0, withoutFlowers: 1, per15minPer100: null, poisson: null });
});

test('counting units are kept apart, and workers are no queens', () => {
  const found = figuresOf([
    watch({ number: 1, plants: [willow], queens: [queensRow(1, 'Bombus impatiens', 2, { caste: 'worker' })] }),
    watch({ number: 2, plants: [{ ...willow, unit: 'cluster' }], queens: [queensRow(1, 'Bombus impatiens', 1)] }),
  ]);
  expect(found.filter(({ bee }) => bee === null).map(({ unit, visits }) => [unit, visits])).toEqual([
    ['cluster', 1],
    ['flower', 0],
  ]);
});

test('a plant that stands twice in a watch, the pink and the white, has each visit once', () => {
  // 2 on the pink, 1 on the white, in 15 min × (50 + 100) = 2,250 flower minutes: 3 × 1,500 / 2,250 = 2
  const [row] = figuresOf([
    watch({
      plants: [willow, plantWatched(2, 'Salix', 100)],
      queens: [queensRow(1, 'Bombus impatiens', 2), queensRow(2, 'Bombus impatiens', 1, { row: 2 })],
    }),
  ]);
  expect(row).toMatchObject({ bee: null, visits: 3, flowerMinutes: 2250, per15minPer100: 2 });
});

test('where it stands in two counting units, each has the visits to its own flowers', () => {
  const found = figuresOf([
    watch({
      plants: [willow, plantWatched(2, 'Salix', 10, { unit: 'catkin' })],
      queens: [queensRow(1, 'Bombus impatiens', 2), queensRow(2, 'Bombus impatiens', 1, { row: 2 })],
    }),
  ]);
  expect(found.filter(({ bee }) => bee === null).map(({ unit, visits }) => [unit, visits])).toEqual([
    ['catkin', 1],
    ['flower', 2],
  ]);
});
