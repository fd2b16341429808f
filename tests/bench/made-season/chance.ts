/**
 * Chance from a seed. Only logarithm, exponential and square root are used on it, which Node computes alike on every
 * machine and in every version; sine, cosine and powers it does not, and a made season must be the same everywhere.
 */
import { uniformFloat32 } from 'pure-rand/distribution/uniformFloat32';
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

export interface Chance {
  /** From 0 to below 1. */
  share(): number;
  yes(probability: number): boolean;
  between(from: number, to: number): number;
  /** A whole number, both ends included. */
  whole(from: number, to: number): number;
  /** Mean 0, standard deviation 1. */
  normal(): number;
  /** Log-normal with median 1: how many times more or less than usual. */
  times(spread: number): number;
  poisson(mean: number): number;
  one<Item>(of: readonly Item[]): Item;
  /** The place of one of the weights, which add up to `total`. */
  placeIn(weights: ArrayLike<number>, total: number): number;
  /** Eight hexadecimal digits. */
  hex(): string;
}

/** Each byte in hexadecimal. */
const BYTES = Array.from({ length: 256 }, (_, byte) => byte.toString(16).padStart(2, '0'));

/** Above this a Poisson draw is taken from the normal curve: the product of so many shares would be too small. */
const MANY = 200;

export function chanceOf(seed: number): Chance {
  const generator = xoroshiro128plus(seed);
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

  return {
    share,
    yes: (probability) => share() < probability,
    between: (from, to) => from + share() * (to - from),
    whole: (from, to) => uniformInt(generator, from, to),
    normal,
    times: (spread) => Math.exp(spread * normal()),
    poisson,
    one: (of) => {
      const item = of[Math.floor(share() * of.length)];
      if (item === undefined) throw new Error('There is nothing to choose from.');
      return item;
    },
    placeIn: (weights, total) => {
      let left = share() * total;
      for (let place = 0; place < weights.length; place++) {
        left -= weights[place] ?? 0;
        if (left < 0) return place;
      }
      return weights.length - 1;
    },
    hex: () => {
      const bits = generator.next();
      const byte = (shift: number): string => BYTES[(bits >>> shift) & 0xff] ?? '';
      return byte(24) + byte(16) + byte(8) + byte(0);
    },
  };
}
