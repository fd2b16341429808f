import { expect, test } from 'vitest';
import type { Watch } from '../../shared/record.js';
import { seasonFigures } from '../../src/season/index.js';
import { queensRow, watch } from '../a-watch.js';
import { survey } from '../demo-survey.js';

const phenologyOf = (watches: Watch[]) => seasonFigures(watches, { survey, protocolOnly: false, seed: 1 }).phenology;
const on = (date: string, minutes: number, count: number, bee = 'Bombus impatiens'): Watch =>
  watch({ date, minutes, queens: count === 0 ? [] : [queensRow(1, bee, count)] });

/** Garwood's limits of a count, as tables print them, in queens in 15 minutes. */
const exact = (low: number, high: number, per: number) => ({
  low95: expect.closeTo(low * per, 2) as number,
  high95: expect.closeTo(high * per, 2) as number,
});

// 20 April 2026 is the Monday of week 17. Nobody watched in week 18.
const season = [on('2026-05-05', 30, 2), on('2026-04-22', 15, 1), on('2026-04-20', 15, 3), on('2026-05-14', 15, 0)];

test('weekly rates of all bees and of each, for weeks with a watch', () => {
  const week = (bee: string | null) => [
    { bee, week: '2026-W17', watches: 2, minutes: 30, queens: 4, per15min: 2, poisson: exact(1.09, 10.242, 0.5) },
    { bee, week: '2026-W19', watches: 1, minutes: 30, queens: 2, per15min: 1, poisson: exact(0.242, 7.225, 0.5) },
    { bee, week: '2026-W20', watches: 1, minutes: 15, queens: 0, per15min: 0, poisson: exact(0, 3.689, 1) },
  ];
  expect(phenologyOf(season)?.weeks).toEqual([...week(null), ...week('Bombus impatiens')]);
});

test('dates by individuals: of six queens 0.6, 3 and 5.4', () => {
  expect(phenologyOf(season)?.dates).toEqual([
    {
      bee: 'Bombus impatiens',
      first: '2026-04-20',
      p10: '2026-04-20',
      p50: '2026-04-20',
      p90: '2026-05-05',
      last: '2026-05-05',
    },
  ]);
});

test('dates by effort: two thirds of the rate in week 17, a third in week 19', () => {
  // 0.1 / (2/3) · 7 = 1.05, the second day; 0.5 / (2/3) · 7 = 5.25, the sixth; (0.9 − 2/3) / (1/3) · 7 = 4.9, the fifth
  expect(phenologyOf(season)?.datesByEffort).toEqual([
    {
      bee: 'Bombus impatiens',
      first: '2026-04-20',
      p10: '2026-04-21',
      p50: '2026-04-25',
      p90: '2026-05-08',
      last: '2026-05-05',
    },
  ]);
});

test('a share that is just met is met', () => {
  // Ten queens on ten days: the first, the fifth and the ninth.
  const days = Array.from({ length: 10 }, (_, day) => on(`2026-05-${String(day + 1).padStart(2, '0')}`, 15, 1));
  expect(phenologyOf(days)?.dates[0]).toMatchObject({ p10: '2026-05-01', p50: '2026-05-05', p90: '2026-05-09' });
  // Equal rates in two weeks: half is met on the Sunday of the first.
  const weeks = [on('2026-05-04', 15, 1), on('2026-05-11', 15, 1)];
  expect(phenologyOf(weeks)?.datesByEffort[0]).toMatchObject({
    p10: '2026-05-05',
    p50: '2026-05-10',
    p90: '2026-05-16',
  });
});

const weekNames: [date: string, week: string][] = [
  ['2026-01-01', '2026-W01'],
  ['2027-01-01', '2026-W53'], // a Friday
  ['2027-01-03', '2026-W53'],
  ['2027-01-04', '2027-W01'],
  ['2026-04-26', '2026-W17'],
  ['2026-04-27', '2026-W18'],
];
test.each(weekNames)('%s is in week %s', (date, week) => {
  expect(phenologyOf([on(date, 15, 0)])?.weeks[0]?.week).toBe(week);
});

test('queens without a minute have a day, but no rate', () => {
  const phenology = phenologyOf([on('2026-05-04', 0, 1)]);
  expect(phenology?.weeks[0]?.per15min).toBeNull();
  expect(phenology?.dates).toHaveLength(1);
  expect(phenology?.datesByEffort).toEqual([]);
});

test('watches without queens have rates of 0 and no dates; no watch has neither', () => {
  expect(phenologyOf([on('2026-05-04', 15, 0)])).toEqual({
    weeks: [
      { bee: null, week: '2026-W19', watches: 1, minutes: 15, queens: 0, per15min: 0, poisson: exact(0, 3.689, 1) },
    ],
    dates: [],
    datesByEffort: [],
  });
  expect(phenologyOf([])).toBeNull();
});
