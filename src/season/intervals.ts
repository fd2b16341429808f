/** Intervals for counts and rates, 95 % unless it is said otherwise. */
import chisquare from '@stdlib/stats-base-dists-chisquare-quantile';
import student from '@stdlib/stats-base-dists-t-quantile';

export interface Interval {
  readonly low95: number;
  readonly high95: number;
}

/** Left out at either end of a two-sided 95 % interval. */
const TAIL = 0.025;

/** Remembers what was computed: a season asks for the limits of the same few counts hundreds of times. */
function remembered(compute: (of: number) => number): (of: number) => number {
  const known = new Map<number, number>();
  return (of) => {
    const found = known.get(of) ?? compute(of);
    known.set(of, found);
    return found;
  };
}

const lowest = remembered((count) => (count === 0 ? 0 : chisquare(TAIL, 2 * count) / 2));
const highest = remembered((count) => chisquare(1 - TAIL, 2 * count + 2) / 2);

/**
 * The exact interval of a Poisson count (Garwood 1936): χ²(α/2; 2x)/2 to χ²(1 − α/2; 2x + 2)/2, from 0 where x is 0.
 * `per` scales both ends, as from a count to a rate.
 */
export const garwood = (count: number, per = 1): Interval => ({
  low95: lowest(count) * per,
  high95: highest(count) * per,
});

/** The quantile by which a standard error is multiplied, for so many clusters; need not be a whole number. */
export const studentFor = (clusters: number): number => student(1 - TAIL, clusters - 1);
