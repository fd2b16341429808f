/** Chance from a seed, with what a made season asks of it beside the plain draws. */
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { drawsFrom, type Draws } from '../../../src/season/chance.js';

export interface Chance extends Omit<Draws, 'gamma'> {
  yes(probability: number): boolean;
  between(from: number, to: number): number;
  /** A whole number, both ends included. */
  whole(from: number, to: number): number;
  /** Log-normal with median 1: how many times more or less than usual. */
  times(spread: number): number;
  one<Item>(of: readonly Item[]): Item;
  /** The place of one of the weights, which add up to `total`. */
  placeIn(weights: ArrayLike<number>, total: number): number;
  /** Eight hexadecimal digits. */
  hex(): string;
}

/** Each byte in hexadecimal. */
const BYTES = Array.from({ length: 256 }, (_, byte) => byte.toString(16).padStart(2, '0'));

export function chanceOf(seed: number): Chance {
  const generator = xoroshiro128plus(seed);
  const { share, normal, poisson } = drawsFrom(generator);

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
