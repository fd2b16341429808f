/** Words by which what was told is put right: queens while a live watch runs, and every line of the summary. */
import { z } from 'zod';
import { words } from './kinds.js';

export const putRightSection = z.strictObject({
  /** In a live watch, alone: one more of what was said last. */
  oneMore: words,
  /** In a live watch, beside a number that means so many more of what was said last: "two more of them". */
  besideMore: words,
  /** They are about what was told last: "that was", "wrong plant". The first stands for all. */
  tellsLast: words,
  /** With a comma behind them they take back what was told last: "no, an imp". */
  saysNo: words,
  /** Before a start or end that is told by itself: "I" of "I ended at 2:30". */
  ofTimes: words,
  /** Before a correction, and nothing of it: "hmm", "i said". */
  leads: words,
  /** Behind the name of a line: "the habitat one". */
  lineNouns: words,
  /** Said of a line whose new value is not told yet. */
  isWrong: words,
  /** Right before a bee they count one. */
  one: words,
  /** "One of the two-spotted": not all of them. */
  someOf: words,
  /** Between a plant and the number it should have. */
  shouldHave: words,
  /** Around a plant that is told anew: "swap the redbud for crabapple". */
  swaps: words,
  swappedFor: words,
  /** Before what something is. */
  itIs: words,
  /** The queens of a row that is told otherwise: "the one on the redbud". */
  theOne: words,
  /** More queens of a row: "one more". */
  furtherOf: words,
  /** Between a plant and its flowers, which are then about so many. */
  moreLike: words,
  /** Between a count of flowers and its plant: "120 for the redbud". */
  countedOf: words,
  /** What all the flowers' counts together are called, and that they are not exact. */
  flowerCounts: words,
  rough: words,
  /** Said of a bee told before: its name is not sure after all, or it is. */
  doubts: words,
  sure: words,
  /** Around a plant that was not in the patch: "no redbud there". */
  notThere: z.strictObject({ before: words, after: words }),
  /** Before a thing that is named: "the", "those". */
  articles: words,
  /** All that a correction leaves as it is, beside the other plants: "everything". */
  theRest: words,
  /** Between what is left as it is and that it is right. */
  isAre: words,
  isRight: words,
  /** Words that stand for the queens told. */
  them: z.strictObject({
    /** All of them; a number may follow: "all three". */
    all: words,
    two: words,
    one: words,
    /** None of them, where pollen follows. */
    neither: words,
    /** Behind a number: "one of them", besides `someOf` and a bee's name. */
    ofThem: words,
    being: words,
    had: words,
    adverbs: words,
    /** Before a number that is one of queens. */
    saw: words,
    /** Before a number that may be one of anything. */
    amount: words,
  }),
  /** Queens that come besides those told: "forgot", "also". */
  tellsMore: words,
});
