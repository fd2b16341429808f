/**
 * The network of bees and plants, by visits; bees known to the genus alone are left out, and so are bees and plants
 * without a visit. Natural logarithms.
 */
import { sortedNames, type Figure } from './figure.js';
import { addTo, sum, type Sums } from './sums.js';
import { columnTotals, entropy, mostConcentrated, mostEven, type Matrix } from './extremes.js';
import { GENUS } from './standing.js';

export interface Network {
  /** Links made of all that could be. */
  readonly connectance: number;
  /** Nestedness, 0 to 100 (Almeida-Neto et al. 2008); null with one bee and one plant. */
  readonly nodf: number | null;
  readonly shannon: number;
  /** Of the links, by all that could be; null with one bee and one plant. */
  readonly evenness: number | null;
  /** Specialisation of the whole, 0 to 1 (Blüthgen, Menzel & Blüthgen 2006); null where the totals leave no choice. */
  readonly h2: number | null;
  /** Specialisation of each, 0 to 1; null where its and the others' totals leave it no choice. */
  readonly d: {
    readonly bees: Readonly<Record<string, number | null>>;
    readonly plants: Readonly<Record<string, number | null>>;
  };
}

const transposed = (matrix: Matrix): number[][] =>
  (matrix[0] ?? []).map((_, column) => matrix.map((row) => row[column] ?? 0));

/** Shared links of each pair of rows by those of the row with fewer, in per cent; 0 where they have as many. */
function pairs(matrix: Matrix): number[] {
  const linked = matrix.map((row) => row.map((value) => value > 0));
  const degrees = linked.map((row) => row.filter(Boolean).length);
  return linked.flatMap((row, i) =>
    linked.slice(0, i).map((other, j) => {
      const [one, two] = [degrees[i] ?? 0, degrees[j] ?? 0];
      if (one === two) return 0;
      const shared = row.filter((link, column) => link && other[column]).length;
      return (100 * shared) / Math.min(one, two);
    }),
  );
}

function nodf(matrix: Matrix): number | null {
  const all = [...pairs(matrix), ...pairs(transposed(matrix))];
  return all.length === 0 ? null : sum(all) / all.length;
}

/** Where a share lies between two ends; null where they are one. */
const between = (value: number, from: number, to: number): number | null =>
  Math.abs(to - from) < 1e-12 ? null : (value - from) / (to - from);

function h2(matrix: Matrix): number | null {
  const value = entropy(matrix);
  // The matrix itself has its totals, so neither extreme can lie on its far side.
  const most = Math.max(value, entropy(mostEven(matrix)));
  const least = Math.min(value, entropy(mostConcentrated(matrix)));
  return between(value, most, least);
}

/** Σ p ln(p / q) of a row: how far its shares are from those of all. */
const distance = (row: readonly number[], shares: readonly number[]): number => {
  const total = sum(row);
  return sum(
    row.map((value, column) => (value === 0 ? 0 : (value / total) * Math.log(value / total / (shares[column] ?? 0)))),
  );
};

/**
 * The whole-number row of that total nearest to the shares of all, with no more in a column than it has. The distance
 * is a sum over columns of convex terms, so giving visit by visit to the cheapest column is exact.
 */
function nearestRow(total: number, byColumn: readonly number[], shares: readonly number[]): number[] {
  const row = byColumn.map(() => 0);
  const term = (value: number, column: number): number =>
    value === 0 ? 0 : (value / total) * Math.log(value / total / (shares[column] ?? 0));
  const costs = byColumn.map((_, column) => term(1, column));
  for (let given = 0; given < total; given++) {
    let cheapest = -1;
    costs.forEach((cost, column) => {
      const room = (row[column] ?? 0) < (byColumn[column] ?? 0);
      if (room && (cheapest < 0 || cost < (costs[cheapest] ?? 0))) cheapest = column;
    });
    const value = (row[cheapest] ?? 0) + 1;
    row[cheapest] = value;
    costs[cheapest] = term(value + 1, cheapest) - term(value, cheapest);
  }
  return row;
}

/** d′ of each row. */
function specialisation(matrix: Matrix): (number | null)[] {
  const byColumn = columnTotals(matrix);
  const all = sum(byColumn);
  const shares = byColumn.map((column) => column / all);
  return matrix.map((row) => {
    const total = sum(row);
    const value = distance(row, shares);
    const least = distance(nearestRow(total, byColumn, shares), shares);
    return between(value, Math.min(value, least), Math.log(all / total));
  });
}

const byName = (names: readonly string[], values: readonly (number | null)[]): Record<string, number | null> =>
  Object.fromEntries(names.map((name, index) => [name, values[index] ?? null]));

export function network(): Figure<Network | null> {
  const visits = new Map<string, Sums>();
  return {
    add({ queens }) {
      for (const seen of queens.filter(({ bee }) => bee !== GENUS)) {
        const byPlant = visits.get(seen.bee) ?? new Map<string, number>();
        visits.set(seen.bee, byPlant);
        addTo(byPlant, seen.plant, seen.visits);
      }
    },
    result() {
      if (visits.size === 0) return null;
      const bees = sortedNames(visits.keys());
      const plants = sortedNames([...visits.values()].flatMap((byPlant) => [...byPlant.keys()]));
      const matrix = bees.map((bee) => plants.map((plant) => visits.get(bee)?.get(plant) ?? 0));
      const possible = bees.length * plants.length;
      const links = matrix.flat().filter((value) => value > 0).length;
      const shannon = entropy(matrix);
      return {
        connectance: links / possible,
        nodf: nodf(matrix),
        shannon,
        evenness: possible === 1 ? null : shannon / Math.log(possible),
        h2: h2(matrix),
        d: {
          bees: byName(bees, specialisation(matrix)),
          plants: byName(plants, specialisation(transposed(matrix))),
        },
      };
    },
  };
}
