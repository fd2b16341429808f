import { describe, expect, test } from 'vitest';
import { columnTotals, entropy, mostConcentrated, mostEven, rowTotals } from '../../src/season/extremes.js';
import { seasonFigures } from '../../src/season/index.js';
import { plantWatched, queensRow, watch } from '../a-watch.js';
import { survey } from '../demo-survey.js';

/** The network of a matrix of visits: bees a, b, … down, plants A, B, … across, in one watch. */
function networkOf(matrix: number[][]) {
  const plants = (matrix[0] ?? []).map((_, column) => plantWatched(column + 1, String.fromCharCode(65 + column), 10));
  const queens = matrix.flatMap((row, bee) =>
    row.flatMap((count, column) =>
      count === 0 ? [] : [queensRow(column + 1, `Bombus ${String.fromCharCode(97 + bee)}`, count)],
    ),
  );
  return seasonFigures([watch({ plants, queens })], { survey, protocolOnly: false, seed: 1 }).network;
}

test('each bee its own plant', () => {
  const network = networkOf([
    [2, 0],
    [0, 2],
  ]);
  expect(network).toEqual({
    connectance: 0.5,
    nodf: 0,
    shannon: expect.closeTo(Math.LN2, 12) as number,
    evenness: expect.closeTo(0.5, 12) as number,
    h2: expect.closeTo(1, 9) as number,
    d: {
      bees: { 'Bombus a': expect.closeTo(1, 9) as number, 'Bombus b': expect.closeTo(1, 9) as number },
      plants: { A: expect.closeTo(1, 9) as number, B: expect.closeTo(1, 9) as number },
    },
  });
});

test('all bees alike', () => {
  const network = networkOf([
    [2, 4, 6],
    [1, 2, 3],
  ]);
  expect(network?.connectance).toBe(1);
  expect(network?.h2).toBeCloseTo(0, 9);
  expect(Object.values(network?.d.bees ?? {})).toEqual([expect.closeTo(0, 9), expect.closeTo(0, 9)]);
  expect(network?.nodf).toBe(0);
});

test('between the two', () => {
  const network = networkOf([
    [3, 1],
    [1, 3],
  ]);
  // H2 = −(3/4 ln 3/8 + 1/4 ln 1/8), between ln 4 and ln 2
  const entropyOfIt = -(0.75 * Math.log(0.375) + 0.25 * Math.log(0.125));
  expect(network?.shannon).toBeCloseTo(entropyOfIt, 12);
  expect(network?.evenness).toBeCloseTo(entropyOfIt / Math.log(4), 12);
  expect(network?.h2).toBeCloseTo((Math.log(4) - entropyOfIt) / Math.LN2, 9);
  // d = 3/4 ln 3/2 + 1/4 ln 1/2; dmin 0; dmax ln 2
  const d = (0.75 * Math.log(1.5) + 0.25 * Math.log(0.5)) / Math.LN2;
  expect(network?.d.bees['Bombus a']).toBeCloseTo(d, 9);
  expect(network?.d.plants['B']).toBeCloseTo(d, 9);
});

test('d′ where whole numbers cannot meet the shares', () => {
  // One visit by a, shares 2/5 and 3/5: the nearest row is [0, 1] with ln 5/3; all that can be is ln 5.
  const network = networkOf([
    [1, 0],
    [1, 3],
  ]);
  const [least, most, value] = [Math.log(5 / 3), Math.log(5), Math.log(5 / 2)];
  expect(network?.d.bees['Bombus a']).toBeCloseTo((value - least) / (most - least), 9);
});

const nested: [what: string, matrix: number[][], nodf: number][] = [
  [
    'each within the next',
    [
      [1, 1, 1],
      [1, 1, 0],
      [1, 0, 0],
    ],
    100,
  ],
  [
    'full',
    [
      [1, 1],
      [1, 1],
    ],
    0,
  ],
  // Rows 3, 1, 2 links: 100, 100, 0; columns 2, 2, 2 links: 0, 0, 0.
  [
    'in part',
    [
      [1, 1, 1],
      [1, 0, 0],
      [0, 1, 1],
    ],
    200 / 6,
  ],
];
test.each(nested)('nestedness, %s', (_what, matrix, nodf) => {
  expect(networkOf(matrix)?.nodf).toBeCloseTo(nodf, 12);
});

test('one bee on one plant leaves no choice', () => {
  expect(networkOf([[4]])).toEqual({
    connectance: 1,
    nodf: null,
    shannon: 0,
    evenness: null,
    h2: null,
    d: { bees: { 'Bombus a': null }, plants: { A: null } },
  });
});

test('one bee on two plants has no network to specialise in', () => {
  const network = networkOf([[4, 1]]);
  expect(network?.h2).toBeNull();
  expect(network?.nodf).toBe(0);
});

test('the genus alone, and a plant without a visit, are left out', () => {
  const plants = [plantWatched(1, 'A', 10), plantWatched(2, 'B', 10), plantWatched(3, 'C', 10)];
  const queens = [queensRow(1, 'Bombus a', 1), queensRow(2, 'Bombus', 3, { row: 2 })];
  const season = seasonFigures([watch({ plants, queens })], { survey, protocolOnly: false, seed: 1 });
  expect(season.network?.d).toEqual({ bees: { 'Bombus a': null }, plants: { A: null } });
  const none = [watch({ plants, queens: [queensRow(2, 'Bombus', 3)] })];
  expect(seasonFigures(none, { survey, protocolOnly: false, seed: 1 }).network).toBeNull();
});

describe('the extremes, against every matrix there is', () => {
  const xLogX = (x: number): number => (x === 0 ? 0 : x * Math.log(x));

  /** Least and greatest sum of x ln x over all whole-number matrices of these totals. */
  function tryAll(byRow: number[], byColumn: number[]): [number, number] {
    const [total, ...rest] = byRow;
    if (total === undefined) return [0, 0];
    let [least, most] = [Infinity, -Infinity];
    const fill = (column: number, left: number, sum: number, after: number[]): void => {
      const room = byColumn[column];
      if (room === undefined) {
        if (left > 0) return;
        const [low, high] = tryAll(rest, after);
        [least, most] = [Math.min(least, sum + low), Math.max(most, sum + high)];
        return;
      }
      for (let value = 0; value <= Math.min(left, room); value++) {
        fill(column + 1, left - value, sum + xLogX(value), [...after, room - value]);
      }
    };
    fill(0, total, 0, []);
    return [least, most];
  }

  /** The same numbers in every run: a linear congruential generator (constants of ANSI C). */
  function numbers(seed: number): () => number {
    let state = seed;
    return () => {
      state = (state * 1_103_515_245 + 12_345) % 2 ** 31;
      return state / 2 ** 31;
    };
  }

  test('within 0.005 of H2′ for 200 small matrices', () => {
    const next = numbers(2026);
    let tried = 0;
    while (tried < 200) {
      const [rows, columns] = [2 + Math.floor(next() * 2), 2 + Math.floor(next() * 3)];
      const matrix = Array.from({ length: rows }, () =>
        Array.from({ length: columns }, () => Math.floor(next() ** 3 * 6)),
      );
      const [byRow, byColumn] = [rowTotals(matrix), columnTotals(matrix)];
      if ([...byRow, ...byColumn].includes(0)) continue;
      const total = byRow.reduce((sum, value) => sum + value, 0);
      const [even, most] = tryAll(byRow, byColumn);
      const [low, high] = [Math.log(total) - even / total, Math.log(total) - most / total];
      if (low - high < 1e-9) continue;
      tried += 1;
      const found = { even: mostEven(matrix), concentrated: mostConcentrated(matrix) };
      for (const one of Object.values(found)) {
        expect([rowTotals(one), columnTotals(one)]).toEqual([byRow, byColumn]);
      }
      const h2 = (from: number, to: number) => (from - entropy(matrix)) / (from - to);
      const shown = JSON.stringify(matrix);
      expect(Math.abs(h2(low, high) - h2(entropy(found.even), entropy(found.concentrated))), shown).toBeLessThan(0.005);
    }
  });
});
