/** A small season, worked by hand. */
import { expect, test } from 'vitest';
import type { Place, Watch } from '../../shared/record.js';
import { seasonFigures } from '../../src/season/index.js';
import { countedWatch } from '../../src/season/counted.js';
import { plantWatched, queensRow, watch } from '../a-watch.js';
import { survey } from '../demo-survey.js';

const at = (site: string | null): Place => ({
  latitude: 43.5,
  longitude: -90.6,
  uncertaintyMetres: 10,
  words: '',
  site,
  private: false,
});
const bluebells = 'Mertensia virginica';
const redbud = 'Cercis canadensis';
const unlisted = 'the small white ones by the gate';

const season: Watch[] = [
  // Wren at the fen: two impatiens on bluebells, one of them again on redbud, and a bee known to its genus.
  watch({
    observer: 'wren',
    place: at('fen'),
    plants: [plantWatched(1, bluebells, 80), plantWatched(2, redbud, 300)],
    queens: [
      queensRow(1, 'Bombus impatiens', 2),
      queensRow(2, 'Bombus impatiens', 1, { row: 2, seenBefore: 1 }),
      queensRow(2, 'Bombus', 1, { row: 3, rank: 'genus' }),
    ],
  }),
  // Wren again, too cold for the protocol: of two reported impatiens one was a bimaculatus.
  watch({
    observer: 'wren',
    place: at('fen'),
    temperature: { celsius: 15 },
    plants: [plantWatched(1, bluebells, 20)],
    queens: [
      queensRow(1, 'Bombus impatiens', 2, {
        determinations: [
          {
            taxa: ['Bombus bimaculatus'],
            qualifier: null,
            count: 1,
            caste: null,
            by: 'ines',
            role: 'coordinator',
            at: '2026-05-03T12:00:00Z',
            from: 'photograph',
          },
        ],
      }),
    ],
  }),
  // Robin: workers only, on a plant that no list has; 20 minutes.
  watch({
    observer: 'robin',
    place: at('oaks'),
    minutes: 20,
    plants: [plantWatched(1, bluebells, 10), { ...plantWatched(2, unlisted, 40), name: null, rank: null }],
    queens: [queensRow(1, 'Bombus impatiens', 4, { caste: 'worker' })],
  }),
  // Robin: nothing; the plant stands twice, by colour; wind not told.
  watch({
    observer: 'robin',
    wind: null,
    plants: [plantWatched(1, redbud, 50), plantWatched(2, redbud, 25)],
  }),
  watch({ observer: 'robin', place: at('oaks') }),
  // Never counted.
  ...(['practice', 'set-aside', 'unconfirmed'] as const).map((status) =>
    watch({ status, observer: 'jay', place: at('elsewhere'), queens: [queensRow(1, 'Bombus fervidus', 9)] }),
  ),
];
const figures = seasonFigures(season, { survey, protocolOnly: false, seed: 1 });

test('effort', () => {
  expect(figures.effort).toEqual({
    watches: 5,
    minutes: 80,
    observers: 2,
    sites: 2,
    zeroWatches: 3,
    withinProtocol: 2, // the first and the last: one is too cold, one too long, of one the wind is not known
  });
});

test('the table: visits by plant, queens by bee, the genus last, workers out', () => {
  expect(figures.table).toEqual({
    bees: ['Bombus bimaculatus', 'Bombus impatiens', 'Bombus'],
    plants: [redbud, bluebells, unlisted],
    counts: [
      [0, 1, 0],
      [1, 3, 0],
      [1, 0, 0],
    ],
    queens: [1, 3, 1],
    flowers: [375, 190, 40],
    watches: [2, 4, 1],
  });
});

test('participation', () => {
  expect(figures.participation).toEqual([
    { observer: 'robin', watches: 3, target: 3, reached: true },
    { observer: 'wren', watches: 2, target: 3, reached: false },
  ]);
});

test('inside the protocol only', () => {
  const { effort, table, participation } = seasonFigures(season, { survey, protocolOnly: true, seed: 1 });
  expect(effort).toEqual({ watches: 2, minutes: 30, observers: 2, sites: 2, zeroWatches: 1, withinProtocol: 2 });
  expect(table.bees).toEqual(['Bombus impatiens', 'Bombus']);
  expect(participation.map(({ watches }) => watches)).toEqual([1, 1]);
});

test('the order of the watches does not matter', () => {
  expect(seasonFigures([...season].reverse(), { survey, protocolOnly: false, seed: 1 })).toEqual(figures);
});

test('every key is there', () => {
  expect(Object.keys(figures)).toEqual([
    'effort',
    'table',
    'rates',
    'diversity',
    'preference',
    'network',
    'phenology',
    'names',
    'dispersion',
    'perFlowers',
    'participation',
  ]);
});

test('a season without a watch', () => {
  const empty = seasonFigures([], { survey, protocolOnly: false, seed: 1 });
  expect(empty.effort).toEqual({ watches: 0, minutes: 0, observers: 0, sites: 0, zeroWatches: 0, withinProtocol: 0 });
  expect(empty.table).toEqual({ bees: [], plants: [], counts: [], queens: [], flowers: [], watches: [] });
  expect(empty.participation).toEqual([]);
});

test('watches that name no site do not make it no site', () => {
  expect(seasonFigures([watch({ place: at(null) })], { survey, protocolOnly: false, seed: 1 }).effort.sites).toBeNull();
});

test('workers are counted apart', () => {
  expect(season.map((one) => countedWatch(one).workers)).toEqual([0, 0, 4, 0, 0, 0, 0, 0]);
});

test('queens on a plant that was not watched cannot be', () => {
  const broken = watch({ number: 12, queens: [queensRow(3, 'Bombus impatiens', 1)] });
  expect(() => countedWatch(broken)).toThrow('Watch 12, row 1 of its queens names plant 3. Its plants: 1.');
});
