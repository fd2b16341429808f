/**
 * All words that the program understands: the shape of `dialogs/LANGUAGE/words.yaml`. One section for each reader,
 * and the sections that several share. Words are written in small letters with straight quotes; how they are read is
 * code in `src/answers`.
 */
import { z } from 'zod';

const words = z.array(z.string().min(1));
/** A word and the number it stands for. */
const valued = z.record(z.string(), z.number());

const numbersSection = z.strictObject({
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
  /** "half", "quarter", "third": fractions. */
  fractions: valued,
  /** "and" inside a number: "two hundred and five". */
  joins: words,
});

const hedgesSection = z.strictObject({
  /** Stay sure: "I think", "about", "around". */
  soft: words,
  /** Make a value unsure, a name doubtful: "maybe", "not sure but", "?". */
  doubting: words,
  /** What comes after replaces what came before: "sorry", "no wait", "I mean". */
  correcting: words,
});

export const wordsSchema = z.strictObject({
  numbers: numbersSection,
  hedges: hedgesSection,
  // Sections of the readers follow, one each: date, times, temperature, sky, wind, patch, place, count, names, tally,
  // yesNo, note; then `wishes`, what people ask of the conversation itself.
});

export type Words = z.infer<typeof wordsSchema>;
