/**
 * How often two seasons that differ by a stated change would show it, by drawing both. A season is a list of clusters
 * (observers or sites) of so many watches each. Queens of a watch are Poisson about the rate, times a factor of the
 * cluster, times a factor of the watch, both gamma with mean 1: within a cluster counts are negative binomial.
 */
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { drawsFrom, type Draws } from './chance.js';
import { sum } from './sums.js';
import { studentFor } from './intervals.js';
import { seOfLogRate } from './jackknife.js';

export interface CountModel {
  readonly queensPerWatch: number;
  /** Variance of the factor that the watches of a cluster share. */
  readonly betweenClusters: number;
  /** Variance of the factor of each watch. */
  readonly withinClusters: number;
  /** Watches of each cluster this season. */
  readonly sizes: readonly number[];
}

interface Measured {
  readonly log: number;
  readonly se: number;
  readonly clusters: number;
}

const factor = (draws: Draws, variance: number): number => (variance > 0 ? draws.gamma(1 / variance) : 1);

/** The logarithm of a drawn season's rate as the headline interval would measure it; null where it would give none. */
function drawn(model: CountModel, times: number, sizes: readonly number[], draws: Draws): Measured | null {
  // k watches with gamma factors of one mean add up to one gamma factor of k times the shape
  const counts = sizes.map((watches) => {
    const both = factor(draws, model.betweenClusters) * factor(draws, model.withinClusters / watches);
    return draws.poisson(model.queensPerWatch * times * watches * both);
  });
  const se = seOfLogRate(counts, sizes);
  return se === null ? null : { log: Math.log(sum(counts) / sum(sizes)), se, clusters: sizes.length };
}

/** Welch 1947: a difference of two means with unequal errors, each with its own degrees of freedom. */
function differ(one: Measured, other: Measured): boolean {
  const [a, b] = [one.se ** 2, other.se ** 2];
  if (a + b === 0) return one.log !== other.log;
  const freedom = (a + b) ** 2 / (a ** 2 / (one.clusters - 1) + b ** 2 / (other.clusters - 1));
  return Math.abs(other.log - one.log) > studentFor(freedom + 1) * Math.sqrt(a + b);
}

/**
 * Clusters of next year: with fewer watches each of this season's gives fewer, in proportion; more watches come from as
 * many more clusters, for which this season's stand once more. So more watches never show less.
 */
export function nextSizes(sizes: readonly number[], watches: number): number[] {
  const season = sum(sizes);
  const whole = Array.from({ length: Math.floor(watches / season) }, () => sizes).flat();
  const share = (watches % season) / season;
  let before = 0;
  const rest = sizes.map((size) => {
    before += size;
    return Math.round(before * share) - Math.round((before - size) * share);
  });
  return [...whole, ...rest.filter((size) => size > 0)];
}

/**
 * The share of pairs of seasons in which this one's design, and next year's of `watches` watches, differ by more than
 * chance at 95 % in the direction of the change. Clusters of the two years are drawn apart, as if other people watched at
 * other sites. Pairs without an interval, for want of clusters, count as not shown.
 */
export function powerOf(
  model: CountModel,
  { watches, changePercent }: { readonly watches: number; readonly changePercent: number },
  { rounds, seed }: { readonly rounds: number; readonly seed: number },
): number {
  const draws = drawsFrom(xoroshiro128plus(seed));
  const times = 1 + changePercent / 100;
  const sizes = nextSizes(model.sizes, watches);
  let shown = 0;
  for (let round = 0; round < rounds; round++) {
    const now = drawn(model, 1, model.sizes, draws);
    const next = drawn(model, times, sizes, draws);
    if (now === null || next === null || Math.sign(next.log - now.log) !== Math.sign(changePercent)) continue;
    if (differ(now, next)) shown += 1;
  }
  return shown / rounds;
}
