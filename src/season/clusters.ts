/**
 * What belongs together: watches by one observer, and watches at one site, are more alike than others, so intervals
 * treat each as one.
 */
import type { WatchCounts } from '../../shared/watch-counts.js';
import { addTo, type Sums } from './figure.js';

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

/** A sum, and how it is made up by observer and by site. */
export class Clustered {
  total = 0;
  readonly by: Readonly<Record<Clustering, Sums>> = { observer: new Map(), site: new Map() };

  add(value: number, keys: ClusterKeys): void {
    this.total += value;
    for (const clustering of CLUSTERINGS) addTo(this.by[clustering], keys[clustering], value);
  }
}
