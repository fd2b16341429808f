/**
 * Diversity of the bees over the whole season: of queens, each once in a watch; those known to the genus alone are left
 * out. Definitions as in the R package vegan; natural logarithms.
 */
import { missChance } from './choose.js';
import type { CountedQueens } from './counted.js';
import type { Figure } from './figure.js';
import { addTo, sum, type Sums } from './sums.js';
import { GENUS } from './standing.js';

export interface DiversityFigures {
  readonly richness: number;
  readonly shannon: number;
  /** 1 − Σ p². */
  readonly simpson: number;
  readonly hill: { readonly q0: number; readonly q1: number; readonly q2: number };
  readonly chao1: { readonly estimate: number; readonly se: number };
  /** Of the sample, after Chao & Jost 2012. */
  readonly coverage: number;
  /** `n` queens: rarefied up to the queens seen, beyond them extrapolated up to twice as many, without an se. */
  readonly rarefaction: readonly { readonly n: number; readonly expected: number; readonly se: number | null }[];
  /** For 1 to all watches, those without queens among them; of many watches two hundred numbers evenly spaced. */
  readonly byWatches: readonly { readonly watches: number; readonly expected: number }[];
}

export interface Diversity extends DiversityFigures {
  /** The same of determined queens alone; null where none was. */
  readonly determinedOnly: DiversityFigures | null;
}

/** Half of the points of the rarefaction curve reach the queens seen, half go beyond. */
const POINTS_TO_N = 10;

/** Of the accumulation curve: more cannot be seen. */
const MOST_STEPS = 200;

/** 1 to `last`, or so many whole numbers evenly spaced up to it. */
const numbersTo = (last: number, most: number): number[] =>
  last <= most
    ? Array.from({ length: last }, (_, k) => k + 1)
    : Array.from({ length: most }, (_, k) => Math.round(((k + 1) * last) / most));

/** Small differences of nearly equal numbers can come out just below 0. */
const rootOf = (variance: number): number => Math.sqrt(Math.max(0, variance));

/** S + f1(f1 − 1) / (2(f2 + 1)), its standard error by the delta method. */
function chao1(counts: readonly number[], f1: number, f2: number): DiversityFigures['chao1'] {
  const estimate = counts.length + (f1 * (f1 - 1)) / (2 * (f2 + 1));
  const slope = (count: number): number => {
    if (count === 1) return 1 + (2 * f1 - 1) / (2 * (f2 + 1));
    if (count === 2) return 1 - (f1 * (f1 - 1)) / (2 * (f2 + 1) ** 2);
    return 1;
  };
  const slopes = counts.map(slope);
  return { estimate, se: rootOf(sum(slopes.map((d) => d ** 2)) - sum(slopes) ** 2 / estimate) };
}

/** Chao & Jost 2012. */
function coverage(n: number, f1: number, f2: number): number {
  if (f1 === 0) return 1;
  const unseen = f2 > 0 ? ((n - 1) * f1) / ((n - 1) * f1 + 2 * f2) : ((n - 1) * (f1 - 1)) / ((n - 1) * (f1 - 1) + 2);
  return 1 - (f1 / n) * unseen;
}

/** Hurlbert 1971; its standard error after Heck et al. 1975. */
function rarefied(counts: readonly number[], chance: (x: number, m: number) => number, m: number) {
  const missed = counts.map((x) => chance(x, m));
  const variance = sum(
    missed.map((qi, i) => {
      const together = missed.slice(0, i).map((qj, j) => chance((counts[i] ?? 0) + (counts[j] ?? 0), m) - qi * qj);
      return qi * (1 - qi) + 2 * sum(together);
    }),
  );
  return { n: m, expected: sum(missed.map((q) => 1 - q)), se: rootOf(variance) };
}

/** Chao et al. 2014: what n + more queens would show, by the species that singles and pairs say are unseen. */
function extrapolated(species: number, n: number, f1: number, f2: number, more: number) {
  const unseen = ((n - 1) / n) * (f2 > 0 ? f1 ** 2 / (2 * f2) : (f1 * (f1 - 1)) / 2);
  const found = unseen === 0 ? 0 : unseen * (1 - (1 - f1 / (n * unseen + f1)) ** more);
  return { n: n + more, expected: species + found, se: null };
}

function rarefaction(counts: readonly number[], n: number, f1: number, f2: number): DiversityFigures['rarefaction'] {
  const chance = missChance(n);
  const step = Math.max(1, n / POINTS_TO_N);
  const sizes = Array.from({ length: 2 * POINTS_TO_N }, (_, k) => Math.round((k + 1) * step));
  return sizes
    .filter((size) => size <= 2 * n)
    .map((size) => (size <= n ? rarefied(counts, chance, size) : extrapolated(counts.length, n, f1, f2, size - n)));
}

/** What is kept of the queens that a set of figures is about. */
interface Tally {
  readonly queensByBee: Sums;
  readonly watchesByBee: Sums;
}

const emptyTally = (): Tally => ({ queensByBee: new Map(), watchesByBee: new Map() });

function addWatch({ queensByBee, watchesByBee }: Tally, queens: readonly CountedQueens[]): void {
  const known = queens.filter(({ bee, queens: count }) => bee !== GENUS && count > 0);
  for (const seen of known) addTo(queensByBee, seen.bee, seen.queens);
  for (const bee of new Set(known.map((seen) => seen.bee))) addTo(watchesByBee, bee, 1);
}

/** Null where no queen is known to its species. */
function figuresOf({ queensByBee, watchesByBee }: Tally, watches: number): DiversityFigures | null {
  const counts = [...queensByBee.values()];
  if (counts.length === 0) return null;
  const n = sum(counts);
  const shares = counts.map((count) => count / n);
  const shannon = 0 - sum(shares.map((p) => p * Math.log(p)));
  const concentration = sum(shares.map((p) => p ** 2));
  const seenTimes = (times: number): number => counts.filter((count) => count === times).length;
  const [f1, f2] = [seenTimes(1), seenTimes(2)];
  const missed = missChance(watches);
  return {
    richness: counts.length,
    shannon,
    simpson: 1 - concentration,
    hill: { q0: counts.length, q1: Math.exp(shannon), q2: 1 / concentration },
    chao1: chao1(counts, f1, f2),
    coverage: coverage(n, f1, f2),
    rarefaction: rarefaction(counts, n, f1, f2),
    byWatches: numbersTo(watches, MOST_STEPS).map((k) => ({
      watches: k,
      expected: sum([...watchesByBee.values()].map((seen) => 1 - missed(seen, k))),
    })),
  };
}

export function diversity(): Figure<Diversity | null> {
  const [all, determined] = [emptyTally(), emptyTally()];
  let watches = 0;
  return {
    add({ queens }) {
      watches += 1;
      addWatch(all, queens);
      addWatch(
        determined,
        queens.filter((seen) => seen.determined),
      );
    },
    result() {
      const figures = figuresOf(all, watches);
      return figures && { ...figures, determinedOnly: figuresOf(determined, watches) };
    },
  };
}
