/** How sure a rate is that is summed over clusters, when each cluster may be unlike the others. */
import { sum } from './sums.js';

/** Below this many, how they differ cannot be told. */
export const LEAST_CLUSTERS = 10;

/**
 * Standard error of the logarithm of Σ counts / Σ efforts by leaving out one cluster at a time; both lists are by cluster.
 * Null below ten clusters, and where a rate without one of them would be none at all.
 */
export function seOfLogRate(counts: ArrayLike<number>, efforts: ArrayLike<number>): number | null {
  const clusters = efforts.length;
  const [count, effort] = [sum(counts), sum(efforts)];
  if (clusters < LEAST_CLUSTERS || count === 0) return null;
  const logs = Float64Array.from(efforts, (own, at) => Math.log((count - (counts[at] ?? 0)) / (effort - own)));
  if (logs.some((log) => !Number.isFinite(log))) return null;
  const mean = sum(logs) / clusters;
  return Math.sqrt(((clusters - 1) / clusters) * sum(logs.map((log) => (log - mean) ** 2)));
}
