/** What a bee looked like, told behind the count of another: "1 bimac on the phlox. She had that rusty patch." */
import { anyOf } from '../any-of.js';
import { madeOnce } from '../text.js';
import type { Words } from '../../../shared/words.js';
import { isArticle, type Mark } from './mark.js';

const looking = madeOnce(
  (tally: Words['tally']) =>
    new RegExp(`^\\s*${anyOf(tally.refers)}\\s+(?:\\p{L}+\\s+){0,2}?${anyOf(tally.looks)}`, 'u'),
);

/** A sentence with one of these counts something, or says where it was. */
const TELLS: ReadonlySet<Mark['kind']> = new Set([
  'zero',
  'another',
  'plant',
  'plants',
  'same',
  'same-one',
  'same-ones',
  'moved-on',
  'pollen',
  'takes-back',
  'denies',
]);

const names = (marks: readonly Mark[]): Set<string | undefined> =>
  new Set(marks.flatMap((mark) => (mark.kind === 'bee' ? [mark.bee.names[0]?.name] : [])));

/**
 * A sentence that describes the bees counted before it, by colours that are another one's, adds none: whether they were
 * counted under the right name is a doubt.
 */
export function withLooksAsDoubt(marks: readonly Mark[], folded: string, tally: Words['tally']): readonly Mark[] {
  const sentences: Mark[][] = [[]];
  for (const mark of marks) {
    sentences.at(-1)!.push(mark);
    if (mark.kind === 'break' && (mark.strength === 'stop' || mark.strength === 'line')) sentences.push([]);
  }
  const kept: Mark[] = [];
  let from = 0;
  for (const [at, sentence] of sentences.entries()) {
    const said = folded.slice(from, sentence.at(-1)?.span[1] ?? folded.length);
    from += said.length;
    const described = describes(sentence, said, sentences.slice(0, at).flat(), tally);
    if (described === null) kept.push(...sentence);
    else {
      // the doubt is about the row before, not about one of its own
      if (kept.at(-1)?.kind === 'break') kept.pop();
      // "she was a bimac" of a bimac tells nothing new
      if (!described.isKnown) kept.push({ kind: 'unsettling', span: described.bee.span });
      if (sentence.at(-1)?.kind === 'break') kept.push(sentence.at(-1)!);
    }
  }
  return kept;
}

/** A number of queens; the "one" of "the black and gold one" is none. */
const isNumber = (mark: Mark, before: Mark | undefined): boolean =>
  mark.kind === 'count' && !isArticle(mark) && before?.kind !== 'bee';

/** The first bee of a sentence that only describes those counted before it, and whether it is one of theirs; else null. */
function describes(
  sentence: readonly Mark[],
  said: string,
  before: readonly Mark[],
  tally: Words['tally'],
): { readonly bee: Mark; readonly isKnown: boolean } | null {
  const counts = before.some((mark, at) => isNumber(mark, before[at - 1]));
  const tells = sentence.some((mark, at) => TELLS.has(mark.kind) || isNumber(mark, sentence[at - 1]));
  const told = names(before);
  const bee = sentence.find(({ kind }) => kind === 'bee');
  if (!counts || told.size === 0 || bee === undefined || tells || !looking(tally).test(said)) return null;
  const described = [...names(sentence)];
  const isKnown = described.every((name) => told.has(name));
  return isKnown || !described.some((name) => told.has(name)) ? { bee, isKnown } : null;
}
