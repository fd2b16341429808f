/** How big the part watched was. */
import { z } from 'zod';
import { words } from './kinds.js';

/** How big the part watched: `src/answers/patch.ts`. */
export const patchSection = z.strictObject({
  /** Words for lengths, by their unit. */
  lengths: z.record(z.string(), z.enum(['in', 'ft', 'yd', 'mi', 'mm', 'cm', 'm', 'km'])),
  areas: z.record(z.string(), z.enum(['acre', 'hectare'])),
  /** "sqft": the square of a length in one word. */
  joinedAreas: z.record(z.string(), z.enum(['in', 'ft', 'yd', 'cm', 'm'])),
  /** Before a length they make an area, after it a square: "100 sq ft", "10 ft square". */
  square: words,
  /** Those that make a square after a length; "100 ft sq" may be either. */
  squareAfter: words,
  squared: words,
  by: words,
  /** The same, but only between two lengths with a unit each: "4 metres per 2 metres". */
  byWithUnits: words,
  /** After and before a length. */
  long: words,
  /** A side without a number in it: "10 feet one way, 8 the other". */
  oneWay: words,
  wide: words,
  lengthBefore: words,
  widthBefore: words,
  across: words,
  acrossBefore: words,
  radius: words,
  radiusBefore: words,
  around: words,
  aroundBefore: words,
  onASide: words,
  /** Anywhere in the answer: what shape one length belongs to. */
  round: words,
  squareShaped: words,
  /** Shapes that sides alone do not settle: "oval". */
  other: words,
  /** A length that is a height, or a way to somewhere. */
  tall: words,
  tallBefore: words,
  elsewhere: words,
  elsewhereBefore: words,
  ranges: words,
  /** Lengths that differ from person to person. */
  paces: words,
  /** Before such a word: it is a thing. "by the steps" */
  notPacesAfter: words,
  /** "two patches". */
  several: words,
  /** Stick to a number and say nothing: "10ish". */
  suffixes: words,
  each: words,
  /** Between two patches: "and". */
  additional: words,
  /** Say nothing about a length: "about". */
  soft: words,
  /** Before a patch in a longer text: "patch:". */
  labels: words,
  /** Several that were measured as one: "two beds pushed together". */
  joined: words,
  /** Behind a doubt: it is of something else. "hard to tell where it ends" */
  notDoubtedBefore: words,
  /** What an area in passing belongs to, if not to the patch: "a 40 acre farm". */
  notPatch: words,
});
