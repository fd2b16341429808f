/** Resampling whole clusters with a seed: the same season gives the same intervals on every machine. */
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/** Enough for the far ends that many plants at once ask for. */
export const ROUNDS = 2000;

/**
 * The statistics of each round: as many clusters as there are, drawn with replacement. `statistic` gets how often each
 * cluster was drawn, in the clusters' order, and gives one number for each thing it measures.
 */
export function resampled(
  clusters: number,
  seed: number,
  statistic: (draws: Uint16Array) => ArrayLike<number>,
): ArrayLike<number>[] {
  const generator = xoroshiro128plus(seed);
  return Array.from({ length: ROUNDS }, () => {
    const draws = new Uint16Array(clusters);
    for (let drawn = 0; drawn < clusters; drawn++) draws[uniformInt(generator, 0, clusters - 1)]! += 1;
    return statistic(draws);
  });
}

/** The value below which so large a share lies, between its neighbours (Hyndman & Fan 1996, type 7). */
export function quantileOf(values: readonly number[], share: number): number {
  const sorted = Float64Array.from(values).sort();
  const place = share * (sorted.length - 1);
  const [below, above] = [sorted[Math.floor(place)] ?? NaN, sorted[Math.ceil(place)] ?? NaN];
  return below + (above - below) * (place - Math.floor(place));
}

export function standardDeviation(values: readonly number[]): number {
  const mean = values.reduce((all, value) => all + value, 0) / values.length;
  return Math.sqrt(values.reduce((all, value) => all + (value - mean) ** 2, 0) / (values.length - 1));
}
