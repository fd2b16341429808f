/**
 * Words that are of queens while these are asked for: the "zero" of "zero. windy as heck" is no wind, the "second" of "2 on
 * the first, nothing on the second" no day.
 */
import type { Words } from '../../../shared/words.js';
import { anyOf } from '../any-of.js';
import type { Span } from '../reading.js';
import { madeOnce } from '../text.js';

const patternsOf = madeOnce(({ note, place, tally }: Words) => ({
  // "none at all.", not "no wind."
  zeroAlone: new RegExp(
    `^\\s*(?:${anyOf(tally.zero.filter((phrase) => phrase !== 'no'))}\\s*){1,3}(?:(?!${anyOf(note.labels.sky, note.labels.wind)})\\p{L}{1,5}\\s*){0,2}(?=[.,;!\\n])`,
    'u',
  ),
  inOrder: new RegExp(
    `${anyOf(place.determiners)}\\s+${anyOf(note.ordinals)}(?!\\s+(?:${anyOf(note.watchNouns)}))`,
    'gu',
  ),
}));

export function ofQueensIn(folded: string, words: Words): Span[] {
  const { zeroAlone, inOrder } = patternsOf(words);
  const zero = zeroAlone.exec(folded);
  const ordinals = [...folded.matchAll(inOrder)];
  // one alone may be the day: "2 impatiens, it was the second"
  const spans = ordinals.length > 1 ? ordinals.map(({ index, 0: said }): Span => [index, index + said.length]) : [];
  return zero ? [[0, zero[0].length], ...spans] : spans;
}
