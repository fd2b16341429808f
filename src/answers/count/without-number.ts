/** Answers without a number: "none", "didn't see any", "a queen", "a few", "lots", "no idea". */
import type { Count } from '../../../shared/record.js';
import { none, sure, unsure, type Context, type Reading, type Span } from '../reading.js';
import { exactly } from './mentions.js';
import { REACH, type CountPhrases } from './phrases.js';

/** The words that say that nothing was there: "none", "no queens", "didn't see any". */
export function noneSaid(folded: string, context: Context, phrases: CountPhrases): readonly Span[] {
  const text = folded.replace(phrases.notZero, (found) => ' '.repeat(found.length));
  const patterns = [phrases.zero, phrases.sawNone];
  if (context.of !== 'flowers') patterns.push(phrases.noQueens);
  if (context.of !== 'queens') patterns.push(phrases.noFlowers);
  const first = patterns.flatMap((pattern): Span[] => {
    const match = pattern.exec(text);
    return match ? [[match.index, match.index + match[0].length]] : [];
  });
  // "Zip. Zero. Not a one."
  const again = [...text.matchAll(phrases.zeros)].map((match): Span => [match.index, match.index + match[0].length]);
  return [...first, ...again];
}

/** `empty`: the words say that nothing was there. */
export function readWithoutNumber(
  folded: string,
  empty: boolean,
  context: Context,
  phrases: CountPhrases,
): Reading<Count> {
  const all: Span[] = [[0, folded.length]];
  const doubted = phrases.doubts.test(folded);
  const counted = (value: number): Reading<Count> =>
    doubted ? unsure([exactly(value)], 'count-doubt', all) : sure(exactly(value), all);

  // "no" may answer another question; "o" is a letter as well
  if (phrases.zeroLike.test(folded)) return unsure([exactly(0)], 'count-doubt', all);
  if (empty && !(doubted && phrases.unknown.test(folded))) return counted(0);
  if (phrases.one.test(folded)) return counted(1);

  const few = phrases.few.exec(folded);
  const vague = phrases.vague.exec(folded);
  const vagueFirst = vague && (!few || (vague.index <= few.index && vague[0].length > few[0].length));
  if (few && !vagueFirst) return unsure([{ value: 3, low: 3, high: 3, about: true }], 'count-few', all);
  if (vague) return none(context.of === 'flowers' ? 'count-vague-flowers' : 'count-vague');
  if (phrases.unknown.test(folded)) return none('count-unknown');
  // "how do I know it's a queen"
  if (phrases.questions.test(folded)) return none('count-no-number');
  if (phrases.articleAndThing.test(folded)) {
    if (doubted) return none('count-no-number');
    return folded.length > REACH ? unsure([exactly(1)], 'count-doubt', all) : counted(1);
  }
  if (phrases.articleAndWords.test(folded)) return unsure([exactly(1)], 'count-doubt', all);
  return none('count-no-number');
}
