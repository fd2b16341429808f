/**
 * How far volunteers' names can be trusted, and what the season holds once their errors are allowed for. From queens
 * with a determination: the chance that one reported as r is truly t, with a weak prior towards agreement; carried into
 * the queens that nobody determined. It takes determined queens as a fair sample of the reports of that name.
 */
import { quantileOf, resampled } from './bootstrap.js';
import { sortedNames, type Figure } from './figure.js';
import { addTo, at, noSums, type Sums } from './sums.js';

export interface Names {
  /** Queens as reported, determined ones among them. */
  readonly reported: number;
  readonly determined: number;
  /** Determined queens whose reported name was right. */
  readonly agree: number;
  /** Null where nothing was determined. */
  readonly corrected:
    | readonly {
        readonly bee: string;
        /** Under the names that stand. */
        readonly counted: number;
        readonly corrected: number;
        readonly low95: number;
        readonly high95: number;
      }[]
    | null;
}

/** Queens of each reported name that the prior adds as rightly named: weak, so that ten determinations outweigh it. */
export const PRIOR_QUEENS = 1;

/** Queens under one reported name, by observer: those found to be `bee`, or with null those that nobody determined. */
interface Cell {
  readonly reported: number;
  readonly bee: number | null;
  readonly observers: number[];
  readonly queens: number[];
}

/** One observer's queens, each drawn as often as that observer. */
function drawn({ observers, queens }: Cell, draws: ArrayLike<number>): number {
  let total = 0;
  for (let at = 0; at < observers.length; at++) total += queens[at]! * draws[observers[at]!]!;
  return total;
}

/**
 * Expected queens of each of so many bees: those determined, and the undetermined ones shared out by what their name
 * has meant. Cells with `bee` null stand last, when all is known of the names.
 */
function correctedBy(bees: number, cells: readonly Cell[], draws: ArrayLike<number>): Float64Array {
  const expected = new Float64Array(bees);
  const determined = new Float64Array(bees);
  const known: { readonly reported: number; readonly bee: number; readonly queens: number }[] = [];
  const open: { readonly reported: number; readonly queens: number }[] = [];
  for (const cell of cells) {
    const { reported, bee } = cell;
    const queens = drawn(cell, draws);
    if (queens === 0) continue;
    if (bee === null) {
      open.push({ reported, queens });
      continue;
    }
    known.push({ reported, bee, queens });
    expected[bee]! += queens;
    determined[reported]! += queens;
  }
  const share = new Float64Array(bees);
  for (const { reported, queens } of open) {
    share[reported] = queens / (determined[reported]! + PRIOR_QUEENS);
    expected[reported]! += share[reported] * PRIOR_QUEENS;
  }
  for (const { reported, bee, queens } of known) expected[bee]! += share[reported]! * queens;
  return expected;
}

/** `seed` is that of the resampling. */
export function names(seed: number): Figure<Names> {
  /** Queens by observer, within a reported name and what it turned out to be. */
  const determinedAs = new Map<string, Map<string, Sums>>();
  const open = new Map<string, Sums>();
  const observers = new Set<string>();
  const counted: Sums = new Map();
  let [reported, determined, agree] = [0, 0, 0];
  return {
    add({ watch, queens }) {
      for (const seen of queens) {
        if (seen.queens === 0) continue;
        reported += seen.queens;
        observers.add(watch.observer);
        addTo(counted, seen.bee, seen.queens);
        if (!seen.determined) {
          addTo(at(open, seen.reported, noSums), watch.observer, seen.queens);
          continue;
        }
        determined += seen.queens;
        if (seen.bee === seen.reported) agree += seen.queens;
        const byBee = at(determinedAs, seen.reported, () => new Map<string, Sums>());
        addTo(at(byBee, seen.bee, noSums), watch.observer, seen.queens);
      }
    },
    result() {
      if (determined === 0) return { reported, determined, agree, corrected: null };
      // in the order of their keys: the order in which watches came must not matter
      const rank = new Map([...observers].sort().map((observer, place) => [observer, place]));
      const bees = sortedNames([...counted.keys(), ...determinedAs.keys(), ...open.keys()]);
      const place = new Map(bees.map((bee, index) => [bee, index]));
      const cellOf = (name: string, bee: string | null, byObserver: Sums): Cell => ({
        reported: place.get(name)!,
        bee: bee === null ? null : place.get(bee)!,
        observers: [...byObserver.keys()].map((observer) => rank.get(observer)!),
        queens: [...byObserver.values()],
      });
      const cells = [
        ...[...determinedAs].flatMap(([name, byBee]) =>
          [...byBee].map(([bee, byObserver]) => cellOf(name, bee, byObserver)),
        ),
        ...[...open].map(([name, byObserver]) => cellOf(name, null, byObserver)),
      ];
      const best = correctedBy(bees.length, cells, new Uint16Array(rank.size).fill(1));
      const rounds = resampled(rank.size, seed, (draws) => correctedBy(bees.length, cells, draws));
      return {
        reported,
        determined,
        agree,
        corrected: bees
          .map((bee, index) => {
            const values = rounds.map((round) => round[index]!);
            return {
              bee,
              counted: counted.get(bee) ?? 0,
              corrected: best[index]!,
              low95: quantileOf(values, 0.025),
              high95: quantileOf(values, 0.975),
            };
          })
          .filter(({ counted: seen, corrected }) => seen > 0 || corrected > 0),
      };
    },
  };
}
