/** A "none" that may not be of queens: "no other flowers", "none that I could name", "no bees yet". */
import type { Words } from '../../../shared/words.js';
import { madeOnce, saysAnyOf } from '../text.js';

const beeWords = madeOnce(({ count }: Words) => [...count.queens, ...count.bees]);

/** For a text that reads as zeros only. */
export function mayBeNoZero(folded: string, words: Words): boolean {
  const { zeroOfOthers, elsewise } = words.tally;
  if (saysAnyOf(folded, zeroOfOthers)) return true;
  // "sixty flowers on the bleeding heart and nothing else"
  const ofFlowers = saysAnyOf(folded, words.count.flowers) && !saysAnyOf(folded, beeWords(words));
  return ofFlowers && saysAnyOf(folded, elsewise);
}
