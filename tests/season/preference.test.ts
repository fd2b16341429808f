import { expect, test } from 'vitest';
import type { Watch } from '../../shared/record.js';
import { seasonFigures } from '../../src/season/index.js';
import { plantWatched, queensRow, watch } from '../a-watch.js';
import { survey } from '../demo-survey.js';

const preferenceOf = (watches: Watch[]) => seasonFigures(watches, { survey, protocolOnly: false, seed: 1 }).preference;
/** A watch of plants with their open flowers and the visits of one bee to each. */
const chosen = (plants: [name: string, flowers: number, visits: number][], bee = 'Bombus a'): Watch =>
  watch({
    plants: plants.map(([name, flowers], index) => plantWatched(index + 1, name, flowers)),
    queens: plants.flatMap(([, , visits], index) => (visits === 0 ? [] : [queensRow(index + 1, bee, visits)])),
  });

test('one choice set: the moose of Neu, Byers and Peek 1974', () => {
  const found = preferenceOf([
    chosen([
      ['A', 340, 25],
      ['B', 101, 22],
      ['C', 104, 30],
      ['D', 455, 40],
    ]),
  ]);
  const expected: [used: number, expected: number, ratio: number, se: number, standardised: number][] = [
    [25, 39.78, 0.628457, 0.111457, 0.11012],
    [22, 11.817, 1.861725, 0.357662, 0.326215],
    [30, 12.168, 2.465483, 0.388158, 0.432006],
    [40, 53.235, 0.751386, 0.09638, 0.131659],
  ];
  found?.forEach((one, index) => {
    const [used, visits, ratio, se, standardised] = expected[index] ?? [];
    expect(one.used).toBe(used);
    expect(one.expected).toBeCloseTo(visits ?? NaN, 9);
    expect(one.ratio).toBeCloseTo(ratio ?? NaN, 5);
    expect(one.se).toBeCloseTo(se ?? NaN, 5);
    expect(one.standardised).toBeCloseTo(standardised ?? NaN, 5);
  });
  expect(found).toHaveLength(4);
});

test('a choice set for each watch: visits expected add up over watches', () => {
  // 4 visits where A has half of the flowers, 2 where it has a tenth; the third watch had no choice, the fourth no bee.
  const found = preferenceOf([
    chosen([
      ['A', 50, 3],
      ['B', 50, 1],
    ]),
    chosen([
      ['A', 10, 0],
      ['C', 90, 2],
    ]),
    chosen([['A', 500, 7]]),
    chosen([
      ['A', 10, 0],
      ['B', 990, 0],
    ]),
  ]);
  expect(found?.map(({ plant, used, expected }) => [plant, used, expected])).toEqual([
    ['A', 3, expect.closeTo(2.2, 12)],
    ['B', 1, 2],
    ['C', 2, expect.closeTo(1.8, 12)],
  ]);
  const [a] = found ?? [];
  expect(a?.ratio).toBeCloseTo(3 / 2.2, 12);
  // o = 1/2, π = 2.2/6
  expect(a?.jacobs).toBeCloseTo((0.5 - 2.2 / 6) / (0.5 + 2.2 / 6 - 2.2 / 6), 12);
  expect(a?.ivlev).toBeCloseTo((0.5 - 2.2 / 6) / (0.5 + 2.2 / 6), 12);
});

test('several choice sets: observers drawn anew spread as their ratios do', () => {
  // twelve observers, half with a ratio of 2 and half of 0 for A at the same effort: the ratio of a draw is 2k/12 with k
  // binomial (12, 1/2), so its standard deviation is 2 √(12/4) / 12 = 0.289
  const found = preferenceOf(
    Array.from({ length: 12 }, (_, at) => ({
      ...chosen([
        ['A', at % 2 === 0 ? 50 : 51, at % 2 === 0 ? 0 : 10],
        ['B', at % 2 === 0 ? 50 : 49, at % 2 === 0 ? 10 : 0],
      ]),
      observer: `observer-${at}`,
      number: at + 1,
    })),
  );
  const [a] = found ?? [];
  expect(a?.ratio).toBeCloseTo(60 / 60.6, 10);
  expect(a?.se).toBeGreaterThan(0.27);
  expect(a?.se).toBeLessThan(0.31);
  expect(a?.low95).toBeLessThan(1 - 1.96 * 0.25);
  expect(a?.high95).toBeGreaterThan(1 + 1.96 * 0.25);
});

test('a plant that was not used', () => {
  const found = preferenceOf([
    chosen([
      ['A', 50, 4],
      ['B', 50, 0],
    ]),
  ]);
  expect(found?.[1]).toEqual({
    bee: 'Bombus a',
    plant: 'B',
    used: 0,
    expected: 2,
    ratio: 0,
    se: null,
    low95: null,
    high95: null,
    standardised: 0,
    jacobs: -1,
    ivlev: -1,
  });
});

test('a plant visited without an open flower counted has no ratio', () => {
  const found = preferenceOf([
    chosen([
      ['A', 50, 1],
      ['B', 0, 1],
    ]),
  ]);
  expect(found?.[1]).toMatchObject({ plant: 'B', used: 1, expected: 0, ratio: null, se: null, standardised: null });
});

test('a plant that stands twice, by colour, is one choice', () => {
  const found = preferenceOf([
    chosen([
      ['A', 20, 1],
      ['A', 30, 1],
      ['B', 50, 2],
    ]),
  ]);
  expect(found?.map(({ plant, used, expected }) => [plant, used, expected])).toEqual([
    ['A', 2, 2],
    ['B', 2, 2],
  ]);
});

const noChoice: [what: string, watch: Watch][] = [
  ['one plant', chosen([['A', 50, 3]])],
  [
    'one plant in two colours',
    chosen([
      ['A', 50, 3],
      ['A', 10, 0],
    ]),
  ],
  [
    'no open flower',
    chosen([
      ['A', 0, 3],
      ['B', 0, 0],
    ]),
  ],
  [
    'the genus alone',
    chosen(
      [
        ['A', 50, 3],
        ['B', 50, 0],
      ],
      'Bombus',
    ),
  ],
  [
    'flowers and heads do not compare',
    watch({
      plants: [plantWatched(1, 'A', 50), plantWatched(2, 'B', 50, { unit: 'head' })],
      queens: [queensRow(1, 'Bombus a', 3)],
    }),
  ],
];
test.each(noChoice)('%s says nothing of preference', (_what, one) => {
  expect(preferenceOf([one])).toBeNull();
});
