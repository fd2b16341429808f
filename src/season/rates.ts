/**
 * Queens in a quarter of an hour: of all bees and each bee over all watches; on a plant over the watches in which that
 * plant was watched. Three intervals, each under its own assumption: every watch alike (Poisson), observers differ
 * (clustered), and the headline, for which observers or sites differ, whichever are fewer.
 */
import { Clustered, clusterKeys, CLUSTERINGS, type Clustering } from './clusters.js';
import { at, sortedNames, sum, type Figure, type Sums } from './figure.js';
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
class Exposure {
  watches = 0;
  readonly minutes = new Clustered();
}

/** Cochran's ratio estimator with whole observers drawn: Var = G/(G−1) Σ (Y_g − R X_g)² / X², t with G − 1 degrees. */
function clusteredOf(queens: Clustered, { minutes }: Exposure): Rate['clustered'] {
  const clusters = minutes.by.observer;
  const count = clusters.size;
  if (count < LEAST_CLUSTERS || minutes.total === 0) return null;
  const ratio = queens.total / minutes.total;
  const squares = [...clusters].map(([key, time]) => ((queens.by.observer.get(key) ?? 0) - ratio * time) ** 2);
  const se = Math.sqrt((count / (count - 1)) * sum(squares)) / minutes.total;
  const reach = studentFor(count) * se;
  return {
    se: se * MINUTES,
    low95: Math.max(0, ratio - reach) * MINUTES,
    high95: (ratio + reach) * MINUTES,
  };
}

/** Delete-one-cluster jackknife of the logarithm of the rate; null where a rate without a cluster would be none at all. */
export function jackknife(queens: Sums, minutes: Sums): Interval | null {
  const counts = [...minutes.keys()].map((key) => queens.get(key) ?? 0);
  const efforts = [...minutes.values()];
  const se = seOfLogRate(counts, efforts);
  if (se === null) return null;
  const reach = studentFor(minutes.size) * se;
  const rate = sum(counts) / sum(efforts);
  return { low95: rate * Math.exp(-reach) * MINUTES, high95: rate * Math.exp(reach) * MINUTES };
}

function headlineOf(queens: Clustered, { minutes }: Exposure): Rate['interval'] {
  // observers where there are as many of both
  const [by] = [...CLUSTERINGS].sort((one, other) => minutes.by[one].size - minutes.by[other].size);
  if (by === undefined) return null;
  const interval = jackknife(queens.by[by], minutes.by[by]);
  return interval === null ? null : { ...interval, clusters: minutes.by[by].size, by };
}

const NONE = new Clustered();

function rateOf(bee: string | null, plant: string | null, queens: Clustered, exposure: Exposure): Rate {
  const minutes = exposure.minutes.total;
  const watched = minutes > 0;
  return {
    bee,
    plant,
    queens: queens.total,
    watches: exposure.watches,
    minutes,
    per15min: watched ? (queens.total / minutes) * MINUTES : null,
    poisson: watched ? garwood(queens.total, MINUTES / minutes) : null,
    clustered: clusteredOf(queens, exposure),
    interval: headlineOf(queens, exposure),
  };
}

export function rates(): Figure<Rate[] | null> {
  const whole = new Exposure();
  const watched = new Map<string, Exposure>();
  const all = new Clustered();
  const byBee = new Map<string, Clustered>();
  const byPlant = new Map<string, Clustered>();
  const byPair = new Map<string, Map<string, Clustered>>();
  const clustered = (): Clustered => new Clustered();

  return {
    add({ watch, plants, queens }) {
      const keys = clusterKeys(watch);
      const watchOf = (exposure: Exposure): void => {
        exposure.watches += 1;
        exposure.minutes.add(watch.minutes, keys);
      };
      watchOf(whole);
      // a plant may stand twice in a watch, the pink and the white: its minutes are the same
      for (const name of new Set(plants.map((plant) => plant.name))) watchOf(at(watched, name, () => new Exposure()));
      for (const seen of queens) {
        all.add(seen.queens, keys);
        at(byBee, seen.bee, clustered).add(seen.queens, keys);
        at(byPlant, seen.plant, clustered).add(seen.visits, keys);
        at(
          at(byPair, seen.bee, () => new Map<string, Clustered>()),
          seen.plant,
          clustered,
        ).add(seen.visits, keys);
      }
    },
    result() {
      if (whole.watches === 0) return null;
      const bees = sortedNames(byBee.keys());
      const plants = sortedNames(watched.keys());
      const onPlant = (plant: string): Exposure => watched.get(plant) ?? new Exposure();
      return [
        rateOf(null, null, all, whole),
        ...bees.map((bee) => rateOf(bee, null, byBee.get(bee) ?? NONE, whole)),
        ...plants.map((plant) => rateOf(null, plant, byPlant.get(plant) ?? NONE, onPlant(plant))),
        ...bees.flatMap((bee) =>
          plants.map((plant) => rateOf(bee, plant, byPair.get(bee)?.get(plant) ?? NONE, onPlant(plant))),
        ),
      ];
    },
  };
}
