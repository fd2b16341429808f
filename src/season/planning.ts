/**
 * How many watches next year would show a stated change, if counts vary as they did this season. What two seasons can
 * show is that they differ: a decline is not told from the weather of one of them by any number of watches.
 */
import { CLUSTERINGS, type Clustering } from './clusters.js';
import { dispersion } from './dispersion.js';
import type { Figure } from './figure.js';
import { sum } from './sums.js';
import { LEAST_CLUSTERS } from './jackknife.js';
import { powerOf, type CountModel } from './power.js';

export interface Planning {
  readonly changePercent: number;
  /** The share of years in which a change of that size should show. */
  readonly aimedPower: number;
  /** Next year's, in two digits; null where `powerAt` ends below the aim: this season is too small to compare with. */
  readonly watches: number | null;
  /** For rising numbers of watches next year, up to the first that reaches the aim. */
  readonly powerAt: readonly { readonly watches: number; readonly power: number }[];
  /** What was drawn from: the coarser of observers and sites, and the variance of the factor that each has of its own. */
  readonly by: Clustering;
  readonly clusters: number;
  readonly betweenClusters: number;
  /** Variance of the factor of each watch, from the negative binomial's 1/θ less what clusters explain. */
  readonly withinClusters: number;
  readonly per15min: number;
  readonly rounds: number;
}

const MINUTES = 15;
const AIMED_POWER = 0.8;
/** A share of 0.8 is known to 0.9 percent. */
const ROUNDS = 2000;
/** Of this season's watches. Beyond the last nobody could plan. */
const TIMES_AS_MANY = [1 / 8, 1 / 4, 1 / 2, 1, 2, 4, 8, 16] as const;

/** Sums over a cluster's watches, of queens y and minutes x. */
interface Cluster {
  watches: number;
  y: number;
  x: number;
  yy: number;
  xy: number;
  xx: number;
}

/**
 * Variance of the clusters' factors by moments: two watches of one cluster vary together by μ₁μ₂ times it, so it is the
 * sum of products of residuals over all such pairs, over the sum of products of means. 0 where it would be negative.
 */
function varianceBetween(clusters: readonly Cluster[], rate: number): number {
  const together = sum(
    clusters.map(({ y, x, yy, xy, xx }) => (y - rate * x) ** 2 - (yy - 2 * rate * xy + rate ** 2 * xx)),
  );
  const means = sum(clusters.map(({ x, xx }) => rate ** 2 * (x ** 2 - xx)));
  return means > 0 ? Math.max(0, together / means) : 0;
}

/** Two digits, upwards: more would be chance. */
function roundedUp(watches: number): number {
  const step = 10 ** Math.max(0, Math.floor(Math.log10(watches)) - 1);
  return Math.ceil(watches / step) * step;
}

function planFor(model: CountModel, changePercent: number, seed: number): Pick<Planning, 'watches' | 'powerAt'> {
  const season = sum(model.sizes);
  const powerAt: { watches: number; power: number }[] = [];
  for (const times of TIMES_AS_MANY) {
    const watches = Math.ceil(season * times);
    const power = powerOf(model, { watches, changePercent }, { rounds: ROUNDS, seed });
    const before = powerAt.at(-1);
    powerAt.push({ watches, power });
    if (power < AIMED_POWER) continue;
    if (before === undefined) return { watches: roundedUp(watches), powerAt };
    // along the logarithm of watches power is nearly straight
    const share = (AIMED_POWER - before.power) / (power - before.power);
    return { watches: roundedUp(before.watches * (watches / before.watches) ** share), powerAt };
  }
  return { watches: null, powerAt };
}

/**
 * Null below ten clusters and without a queen. `changePercent` is above −100 and not 0; watches are taken as long as this
 * season's mean.
 */
export function planning(changePercent: number, seed: number): Figure<Planning | null> {
  const spread = dispersion();
  const clusters: Record<Clustering, Map<string, Cluster>> = { observer: new Map(), site: new Map() };
  return {
    add(counted) {
      const { watch, clusters: keys, queens } = counted;
      if (watch.minutes <= 0) return;
      spread.add(counted);
      const [y, x] = [sum(queens.map((one) => one.queens)), watch.minutes];
      for (const clustering of CLUSTERINGS) {
        const own = clusters[clustering].get(keys[clustering]) ?? { watches: 0, y: 0, x: 0, yy: 0, xy: 0, xx: 0 };
        clusters[clustering].set(keys[clustering], own);
        own.watches += 1;
        own.y += y;
        own.x += x;
        own.yy += y * y;
        own.xy += x * y;
        own.xx += x * x;
      }
    },
    result() {
      const by: Clustering = clusters.site.size < clusters.observer.size ? 'site' : 'observer';
      // in one order, so that the draws are the same whatever the order of the watches
      const all = [...clusters[by].entries()].sort(([one], [other]) => (one < other ? -1 : 1)).map(([, own]) => own);
      const fitted = spread.result();
      if (all.length < LEAST_CLUSTERS || fitted === null) return null;
      const sizes = all.map(({ watches }) => watches);
      const minutes = sum(all.map(({ x }) => x));
      const rate = sum(all.map(({ y }) => y)) / minutes;
      const betweenClusters = varianceBetween(all, rate);
      const { theta } = fitted.negativeBinomial;
      const both = theta === null ? 0 : 1 / theta;
      const withinClusters = Math.max(0, (1 + both) / (1 + betweenClusters) - 1);
      const model = { queensPerWatch: (rate * minutes) / sum(sizes), betweenClusters, withinClusters, sizes };
      return {
        changePercent,
        aimedPower: AIMED_POWER,
        ...planFor(model, changePercent, seed),
        by,
        clusters: all.length,
        betweenClusters,
        withinClusters,
        per15min: rate * MINUTES,
        rounds: ROUNDS,
      };
    },
  };
}
