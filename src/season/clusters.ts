/**
 * What belongs together: watches by one observer, and watches at one site, are more alike than others, so intervals
 * treat each as one. Sums are kept by combination of observer and site, from which both can be told.
 */
import type { WatchCounts } from '../../shared/watch-counts.js';
import { at } from './sums.js';

export const CLUSTERINGS = ['observer', 'site'] as const;
export type Clustering = (typeof CLUSTERINGS)[number];

/** A position to about a hundred metres: gardens next door to each other are one spot. */
const DECIMALS_OF_SPOT = 3;

/** The survey's site; else the spot; else, where a place has words only, this observer's place of that name. */
function siteOf({ observer, place }: WatchCounts): string {
  if (place === null) return `observer ${observer}`;
  if (place.site !== null) return `site ${place.site}`;
  const { latitude, longitude } = place;
  return latitude === null || longitude === null
    ? `place ${observer} ${place.words.trim().toLowerCase()}`
    : `spot ${latitude.toFixed(DECIMALS_OF_SPOT)} ${longitude.toFixed(DECIMALS_OF_SPOT)}`;
}

export type ClusterKeys = Readonly<Record<Clustering, string>>;
export const clusterKeys = (watch: WatchCounts): ClusterKeys => ({ observer: watch.observer, site: siteOf(watch) });

/** A sum for each combination of observer and site, by its number. */
export type ByCombination = Map<number, number>;

/** The observers, or the sites, of all combinations. */
export interface Clusters {
  readonly count: number;
  /** Of each combination, which cluster it is in: its place in the order of their keys. */
  readonly of: Uint32Array;
}

/** Gives each combination of observer and site a number, from 0 in the order in which they come. */
export class Combinations {
  readonly #numbers = new Map<string, Map<string, number>>();
  readonly #keys: ClusterKeys[] = [];

  numberOf(keys: ClusterKeys): number {
    const bySite = at(this.#numbers, keys.observer, () => new Map<string, number>());
    return at(bySite, keys.site, () => this.#keys.push(keys) - 1);
  }

  /** In the order of their keys, not of the watches: sums must come out the same whichever came first. */
  clusters(by: Clustering): Clusters {
    const sorted = [...new Set(this.#keys.map((keys) => keys[by]))].sort();
    const place = new Map(sorted.map((key, index) => [key, index]));
    return { count: sorted.length, of: Uint32Array.from(this.#keys, (keys) => place.get(keys[by]) ?? 0) };
  }
}
