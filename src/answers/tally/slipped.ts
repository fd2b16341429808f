/** Misspelled words for "none" and for all plants: "nthing on eihter", "nobdy on both". */
import { distance } from 'fastest-levenshtein';
import { slipsOf } from '../slips.js';
import { madeOnce } from '../text.js';
import { withVowels } from '../vowels.js';
import type { Mark } from './mark.js';
import type { TallyWords } from './vocabulary.js';

/** Of shorter words one wrong letter makes too many others. */
const SHORTEST_MISTYPED = 6;

const meantBy = madeOnce(({ slipsFrom, shortSlips }: TallyWords): ((typed: string) => string | undefined) => {
  const slips = new Map(slipsFrom.flatMap((word) => slipsOf(word).map((slip) => [slip, word] as const)));
  for (const [slip, word] of Object.entries(shortSlips)) slips.set(slip, word);
  const clipped = withVowels(
    slipsFrom.map((word) => [word, word] as const),
    new Set(),
  );
  const long = slipsFrom.filter((word) => word.length >= SHORTEST_MISTYPED);
  return (typed) =>
    slips.get(typed) ??
    clipped(typed) ??
    long.find((word) => word[0] === typed[0] && word.length === typed.length && distance(word, typed) === 1);
});

const parts = (mark: Mark | undefined): boolean => mark === undefined || mark.kind === 'break';
const isPlant = (mark: Mark | undefined): boolean => mark?.kind === 'plant' || mark?.kind === 'plants';

/**
 * `marks` with such words read where nothing else can be meant: at the head of a clause or behind a plant, with an "on …"
 * or nothing behind it; and for all plants, behind an "on". "Noting two on the plum" says no none.
 */
export function withSlips(marks: readonly Mark[], folded: string, words: TallyWords): Mark[] {
  const meant = meantBy(words);
  const zeros: ReadonlySet<string> = new Set(words.zero);
  const all: ReadonlySet<string> = new Set(words.allPlants);
  return marks.map((mark, at): Mark => {
    const word = mark.kind === 'unknown' ? meant(folded.slice(...mark.span)) : undefined;
    if (word === undefined) return mark;
    const [before, next] = [marks[at - 1], marks[at + 1]];
    if (before?.kind === 'preposition')
      return all.has(word) && parts(next) ? { kind: 'plants', which: 'all', each: false, span: mark.span } : mark;
    const heads = parts(before) || isPlant(before);
    const stands = parts(next) || next?.kind === 'preposition';
    return zeros.has(word) && heads && stands ? { kind: 'zero', span: mark.span } : mark;
  });
}
