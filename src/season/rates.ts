/**
 * Queens in a quarter of an hour: of all bees and each bee over all watches; on a plant over the watches in which that
 * plant was watched. Three intervals, each under its own assumption: every watch alike (Poisson), observers differ
 * (clustered), and the headline, for which observers or sites differ, whichever are fewer.
 */
import { Combinations, type ByCombination, type Clustering, type Clusters } from './clusters.js';
import { sortedNames, type Figure } from './figure.js';
import { addTo, at, sum } from './sums.js';
import { garwood, studentFor, type Interval } from './intervals.js';
import { LEAST_CLUSTERS, seOfLogRate } from './jackknife.js';

export interface Rate {
  /** Null for all bees. */
  readonly bee: string | null;
  /** Null for all plants. */
  readonly plant: string | null;
  /** Each once in a watch; on a plant: visits. */
  readonly queens: number;
  readonly watches: number;
  readonly minutes: number;
  /** Null where no minute was watched. */
  readonly per15min: number | null;
  readonly poisson: Interval | null;
  /** Null below ten observers. */
  readonly clustered: (Interval & { readonly se: number }) | null;
  /** The headline; null below ten clusters, and where all queens were seen in one of them. */
  readonly interval: (Interval & { readonly clusters: number; readonly by: Clustering }) | null;
}

const MINUTES = 15;

/** What was watched: of the whole season, or of one plant. */
interface Exposure {
  watches: number;
  readonly minutes: ByCombination;
}

const unwatched = (): Exposure => ({ watches: 0, minutes: new Map() });

/** The clusters that watched, in order, and how long each did. */
interface Watched {
  readonly clusters: Uint32Array;
  readonly minutes: Float64Array;
  /** Of Student's t, for so many clusters. */
  readonly quantile: number;
}

/** An exposure by observer and by site. */
interface SpreadExposure {
  readonly watches: number;
  readonly minutes: number;
  readonly by: Readonly<Record<Clustering, Watched>>;
}

/** Sums of combinations as sums of all clusters. */
function spread(sums: ByCombination, { count, of }: Clusters): Float64Array {
  const byCluster = new Float64Array(count);
  for (const [combination, value] of sums) byCluster[of[combination] ?? 0]! += value;
  return byCluster;
}

function watchedBy(minutes: ByCombination, clusters: Clusters): Watched {
  const byCluster = spread(minutes, clusters);
  // a cluster that watched for no minute did watch
  const whose = Uint32Array.from(
    new Set([...minutes.keys()].map((combination) => clusters.of[combination] ?? 0)),
  ).sort();
  return {
    clusters: whose,
    minutes: Float64Array.from(whose, (cluster) => byCluster[cluster] ?? 0),
    quantile: studentFor(whose.length),
  };
}

/** Cochran's ratio estimator with whole observers drawn: Var = G/(G−1) Σ (Y_g − R X_g)² / X², t with G − 1 degrees. */
function clusteredOf(queens: Float64Array, { minutes, quantile }: Watched): Rate['clustered'] {
  const count = minutes.length;
  const watched = sum(minutes);
  if (count < LEAST_CLUSTERS || watched === 0) return null;
  const ratio = sum(queens) / watched;
  const squares = sum(minutes.map((time, cluster) => ((queens[cluster] ?? 0) - ratio * time) ** 2));
  const se = Math.sqrt((count / (count - 1)) * squares) / watched;
  const reach = quantile * se;
  return {
    se: se * MINUTES,
    low95: Math.max(0, ratio - reach) * MINUTES,
    high95: (ratio + reach) * MINUTES,
  };
}

/**
 * Delete-one-cluster jackknife of the logarithm of the rate; both lists are by cluster. Null where a rate without a
 * cluster would be none at all.
 */
export function jackknife(
  queens: ArrayLike<number>,
  minutes: ArrayLike<number>,
  quantile = studentFor(minutes.length),
): Interval | null {
  const se = seOfLogRate(queens, minutes);
  if (se === null) return null;
  const reach = quantile * se;
  const rate = sum(queens) / sum(minutes);
  return { low95: rate * Math.exp(-reach) * MINUTES, high95: rate * Math.exp(reach) * MINUTES };
}

/** How rates are told once all combinations are known. */
function teller(combinations: Combinations) {
  const all = { observer: combinations.clusters('observer'), site: combinations.clusters('site') };
  const exposed = ({ watches, minutes }: Exposure): SpreadExposure => ({
    watches,
    minutes: sum([...minutes.values()]),
    by: { observer: watchedBy(minutes, all.observer), site: watchedBy(minutes, all.site) },
  });
  const rateOf = (bee: string | null, plant: string | null, queens: ByCombination, exposure: SpreadExposure): Rate => {
    const { watches, minutes, by } = exposure;
    const queensOf = (clustering: Clustering): Float64Array => {
      const byCluster = spread(queens, all[clustering]);
      return Float64Array.from(by[clustering].clusters, (cluster) => byCluster[cluster] ?? 0);
    };
    const counted = sum([...queens.values()]);
    // observers where there are as many of both
    const coarser = by.site.clusters.length < by.observer.clusters.length ? 'site' : 'observer';
    const byObserver = queensOf('observer');
    const interval = jackknife(
      coarser === 'observer' ? byObserver : queensOf(coarser),
      by[coarser].minutes,
      by[coarser].quantile,
    );
    return {
      bee,
      plant,
      queens: counted,
      watches,
      minutes,
      per15min: minutes > 0 ? (counted / minutes) * MINUTES : null,
      poisson: minutes > 0 ? garwood(counted, MINUTES / minutes) : null,
      clustered: clusteredOf(byObserver, by.observer),
      interval: interval && { ...interval, clusters: by[coarser].clusters.length, by: coarser },
    };
  };
  return { exposed, rateOf };
}

const noCombinations = (): ByCombination => new Map();

/** Sums of several things as one. */
function together(all: Iterable<ByCombination>): ByCombination {
  const sums = noCombinations();
  for (const one of all) for (const [combination, value] of one) addTo(sums, combination, value);
  return sums;
}

export function rates(): Figure<Rate[] | null> {
  const combinations = new Combinations();
  const whole = unwatched();
  const watched = new Map<string, Exposure>();
  /** Queens, and on a plant visits: the sums of all bees follow from these. */
  const byBee = new Map<string, ByCombination>();
  const byPlant = new Map<string, Map<string, ByCombination>>();

  return {
    add({ watch, clusters, plants, queens }) {
      const combination = combinations.numberOf(clusters);
      const watchOf = (exposure: Exposure): void => {
        exposure.watches += 1;
        addTo(exposure.minutes, combination, watch.minutes);
      };
      watchOf(whole);
      // a plant may stand twice in a watch, the pink and the white: its minutes are the same
      plants.forEach(({ name }, index) => {
        if (plants.findIndex((plant) => plant.name === name) === index) watchOf(at(watched, name, unwatched));
      });
      for (const seen of queens) {
        addTo(at(byBee, seen.bee, noCombinations), combination, seen.queens);
        const onPlant = at(byPlant, seen.plant, () => new Map<string, ByCombination>());
        addTo(at(onPlant, seen.bee, noCombinations), combination, seen.visits);
      }
    },
    result() {
      if (whole.watches === 0) return null;
      const { exposed, rateOf } = teller(combinations);
      const bees = sortedNames(byBee.keys());
      const ofAll = exposed(whole);
      const plants = sortedNames(watched.keys()).map((name) => ({
        name,
        exposure: exposed(watched.get(name) ?? unwatched()),
        visits: byPlant.get(name) ?? new Map<string, ByCombination>(),
      }));
      return [
        rateOf(null, null, together(byBee.values()), ofAll),
        ...bees.map((bee) => rateOf(bee, null, byBee.get(bee) ?? noCombinations(), ofAll)),
        ...plants.map(({ name, exposure, visits }) => rateOf(null, name, together(visits.values()), exposure)),
        ...bees.flatMap((bee) =>
          plants.map(({ name, exposure, visits }) => rateOf(bee, name, visits.get(bee) ?? noCombinations(), exposure)),
        ),
      ];
    },
  };
}
