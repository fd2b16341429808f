/** How many flowers or queens. */
import { z } from 'zod';
import { valued, words } from './kinds.js';

/** How many flowers or queens: `src/answers/count.ts`. */
export const countSection = z.strictObject({
  /** "none", "nothing": 0. */
  zero: words,
  /** Look like zero and are not: "none of your business". */
  notZero: words,
  /** A whole answer that may be zero, and may be something else: "no". */
  zeroLike: words,
  /** Before a number below zero. */
  negative: words,
  /** Before a number that was not meant: "not 50". */
  denied: words,
  /** At the beginning, before the whole of which the next number is a part: "of the 50 there, 42 were open". */
  partOf: words,
  /** "no", "not a single": 0 before one of `flowers` or `queens`. */
  noBefore: words,
  /** "didn't", "never": 0 before one of `seeing` and one of `anything`. */
  negations: words,
  seeing: words,
  anything: words,
  /** A whole answer that means 1: "a", "just the one". */
  one: words,
  /** Before "one" they make it no number: "this one". */
  beforePronounOne: words,
  flowers: words,
  queens: words,
  /** Taken for queens where nobody says "queen": "bees", "visits". */
  bees: words,
  /** Bees and others that are no queens: "workers", "flies". */
  notQueens: words,
  /** Flowers that are not open: "buds", "wilted". */
  notOpen: words,
  open: words,
  /** One count for all that were asked about: "60 each", "both about 75". */
  forEach: words,
  /** What bears flowers and is not counted: "stems". */
  bearers: words,
  /** Before a number, after a number. */
  about: words,
  aboutAfter: words,
  /** "over 200": 200 or more. */
  atLeast: words,
  atLeastAfter: words,
  /** "up to 20": 20 or fewer. */
  atMost: words,
  atMostAfter: words,
  /** Before "one", which then stands for what was told and counts nothing: "the first", "the same". */
  beforePronoun: words,
  /** Before a number they say nothing of it: "only", "i saw". */
  passedOver: words,
  /** Between the ends of a range: "to". */
  ranges: words,
  /** "between" 40 "and" 50. */
  between: words,
  plusOrMinus: words,
  /** Between two numbers of which one is meant: "or". */
  either: words,
  /** Between numbers that belong together: "and", "plus". */
  together: words,
  totals: words,
  /** Only before a number: "=". */
  totalsBefore: words,
  /** Between two numbers that are multiplied: "3 clumps of 20". */
  multiplying: words,
  /** After a number that only compares: "20 more than last time". */
  relative: words,
  each: words,
  /** "couple": about two, where it multiplies another word. */
  loose: words,
  /** "a few": 3, unsure. */
  few: words,
  /** No number at all: "several", "lots". */
  vague: words,
  /** Others than those counted: "the rest" in bud. */
  others: words,
  /** Where a number's own words end: "but". */
  breaks: words,
  /** One more, without a number: "and another". */
  more: words,
  /** After "none" they make it none there only: "none on the plum". */
  where: words,
  /** Make a number unsure: "can't read my writing". */
  doubts: words,
  /** Not counted at all: "didn't count". */
  unknown: words,
  /** Before a number that counts nothing here: "patch", "age", months. */
  otherBefore: words,
  /** After a number that counts nothing here: "minutes", "feet". */
  otherAfter: words,
  /** Before a clock time, where another number is told as well: "at 3 I had counted 40". */
  clockBefore: words,
  /** What was seen was one queen: "two visits, same queen". */
  same: words,
  /** Numbers told for different moments do not add up: "then", "yesterday". */
  moments: words,
  /** How numbers sound: "for" is 4 where nothing else is counted. */
  byEar: valued,
  /** Numbers by other names: "a baker's dozen". */
  sayings: valued,
  /** After a number they make it a part of the one before: "26, 2 of them chewed". */
  ofThem: words,
  /** Between two counts, the second of which is meant: "recounted". */
  correcting: words,
});
