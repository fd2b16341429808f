/** Words that several readers share: numbers, hedges, corrections. */
import { z } from 'zod';
import { valued, words } from './kinds.js';

export const numbersSection = z.strictObject({
  /** "one" to "nineteen", "zero". */
  units: valued,
  /** "twenty" to "ninety". */
  tens: valued,
  /** "hundred", "thousand", "k": multiply what stands before them. */
  scales: valued,
  /** "a", "an": one, but only before a scale or as a whole answer. */
  articles: words,
  /** "dozen" 12, "couple" 2, "pair" 2: take an article or a number before them. */
  groups: valued,
  /** "dozens" 12: only after a number. */
  manyGroups: valued,
  /** "of" between a group and what it counts: "a couple of hundred". */
  groupJoins: words,
  /** "half", "quarter", "third": fractions. */
  fractions: valued,
  /** "and" inside a number: "two hundred and five". */
  joins: words,
  /** Grown together with a number: the "ish" of "fiftyish". */
  endings: words,
  /** Near to a number's word, and another word: "there". */
  notSlips: words,
});

export const hedgesSection = z.strictObject({
  /** Stay sure: "I think", "about", "around". */
  soft: words,
  /** Make a value unsure, a name doubtful: "maybe", "not sure but", "?". */
  doubting: words,
  /** What comes after replaces what came before: "sorry", "no wait", "I mean". */
  correcting: words,
});
