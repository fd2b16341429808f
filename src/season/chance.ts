/**
 * Draws from a generator that the caller seeded. Only logarithm, exponential and square root are used on it, which Node
 * computes alike on every machine and in every version; sine, cosine and powers it does not, and the same seed must give
 * the same everywhere.
 */
import { uniformFloat32 } from 'pure-rand/distribution/uniformFloat32';
import type { RandomGenerator } from 'pure-rand/types/RandomGenerator';

export interface Draws {
  /** From 0 to below 1. */
  share(): number;
  /** Mean 0, standard deviation 1. */
  normal(): number;
  poisson(mean: number): number;
  /** Mean 1, variance 1/shape. */
  gamma(shape: number): number;
}

/** Above this a Poisson draw is taken from the normal curve: the product of so many shares would be too small. */
const MANY = 200;

export function drawsFrom(generator: RandomGenerator): Draws {
  const share = (): number => uniformFloat32(generator);

  /** The polar method (Marsaglia & Bray 1964) makes two at a time; the second waits here. */
  let spare: number | null = null;
  const normal = (): number => {
    if (spare !== null) {
      const kept = spare;
      spare = null;
      return kept;
    }
    for (;;) {
      const [one, other] = [2 * share() - 1, 2 * share() - 1];
      const square = one * one + other * other;
      if (square === 0 || square >= 1) continue;
      const stretch = Math.sqrt((-2 * Math.log(square)) / square);
      spare = other * stretch;
      return one * stretch;
    }
  };

  /** By products of shares (Knuth). */
  const poisson = (mean: number): number => {
    if (mean > MANY) return Math.max(0, Math.round(mean + Math.sqrt(mean) * normal()));
    const least = Math.exp(-mean);
    let count = 0;
    for (let product = share(); product > least; product *= share()) count++;
    return count;
  };

  /** Of shape 1 or more, not yet divided by it: by squeezing a normal (Marsaglia & Tsang 2000). */
  const steepGamma = (shape: number): number => {
    const d = shape - 1 / 3;
    const c = 1 / Math.sqrt(9 * d);
    for (;;) {
      const x = normal();
      const root = 1 + c * x;
      if (root <= 0) continue;
      const v = root * root * root;
      if (Math.log(1 - share()) < 0.5 * x * x + d - d * v + d * Math.log(v)) return d * v;
    }
  };

  return {
    share,
    normal,
    poisson,
    // a shape below 1 is one more, times a share to the power of 1/shape (same paper)
    gamma: (shape) =>
      (shape >= 1 ? steepGamma(shape) : steepGamma(shape + 1) * Math.exp(Math.log(1 - share()) / shape)) / shape,
  };
}
