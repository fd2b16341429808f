/** A correction without a no: "the temp should be 70", "5 queens not 4", "sorry, it was 3:20". */
import { findNumbers } from '../numbers.js';
import type { Context } from '../reading.js';
import { skip, type YesNoPhrases } from './phrases.js';

/** True where the words by themselves say that something shown is wrong. */
export function isCorrection(folded: string, phrases: YesNoPhrases, context: Context): boolean {
  const begin = skip(folded, 0);
  if (folded.includes('?') || phrases.futures.in(folded) || phrases.questions.at(folded, begin)) return false;
  const end = folded.length;
  if (phrases.wrongLater.in(folded) || phrases.fixing.at(folded, begin) || phrases.denying.at(folded, begin))
    return true;
  const tells = (from: number, to: number): boolean => {
    const said = folded.slice(from, to);
    return phrases.topics.in(said) !== null || /\d/u.test(said) || findNumbers(said, context.words).length > 0;
  };
  // "sorry, it was 3:20"
  const excuse = phrases.corrections.at(folded, begin);
  if (excuse && tells(begin + excuse.length, end)) return true;
  // "5 queens not 4"
  const not = phrases.insteadOf.in(folded);
  return not !== null && tells(0, not[0]) && tells(not[1], end);
}
