/** "The other", "the rest": other queens than those told before, not the other plants. */
import type { CountSaid } from './counts.js';
import { nextMeaning } from './looking-on.js';
import { isArticle, namesBee, type Mark } from './mark.js';
import type { TallyPhrases } from './vocabulary.js';

export const isCounted = (mark: Mark): boolean =>
  mark.kind === 'bee' || mark.kind === 'count' || mark.kind === 'queens';

/** The word before another, where it is no break: "on the other", "nothing on the rest". */
const wordBefore = (marks: readonly Mark[], at: number): Mark | undefined => {
  const before = marks[at - 1];
  return isArticle(before) ? marks[at - 2] : before;
};

/**
 * "One was an imp, the other a bimac", "5 bees, 3 imps and the rest bimacs": other queens, not other plants, where a bee
 * follows, or where a plant follows that they were on.
 */
export function withTheOther(
  marks: readonly Mark[],
  folded: string,
  { theOther, remainder, otherNumbers }: TallyPhrases,
): Mark[] {
  return marks.map((mark, at) => {
    if (mark.kind !== 'plants' && mark.kind !== 'thing') return mark;
    const phrase = folded.slice(...mark.span);
    const isOther = theOther.has(phrase);
    const said = /^(?:the )?(?:other|remaining|last) (\S+)$/.exec(phrase)?.[1];
    const number = said === undefined ? undefined : otherNumbers[said];
    if (
      (!isOther && !remainder.has(phrase) && said === undefined) ||
      (number === undefined && !marks.slice(0, at).some(isCounted))
    )
      return mark;
    const before = wordBefore(marks, at);
    if (before?.kind === 'preposition' || before?.kind === 'zero') return mark;
    let next = nextMeaning(marks, at);
    if (next?.kind === 'doubtful' || next?.kind === 'all-bees') next = nextMeaning(marks, marks.indexOf(next));
    const onPlant = next?.kind === 'preposition' && nextMeaning(marks, marks.indexOf(next))?.kind === 'plant';
    if (!namesBee(next) && !onPlant && next?.kind !== 'queens') return mark;
    const count: CountSaid = {
      values: isOther ? [1] : number === undefined ? [] : [number],
      exact: true,
      article: false,
      ...(isOther || number !== undefined ? {} : { remainder: true as const }),
      span: mark.span,
    };
    return { kind: 'count', count, span: mark.span };
  });
}

/** "One of the imps was the same one": which of those counted it was, and where, is not told. */
export const withSameOfThem = (
  marks: readonly Mark[],
  folded: string,
  { endsWithSomeOf, saysReturned }: TallyPhrases,
): Mark[] =>
  marks.flatMap((mark, at): Mark[] => {
    const isOf = (count: Mark | undefined, bee: Mark | undefined, same: Mark | undefined): boolean =>
      count?.kind === 'count' &&
      bee?.kind === 'bee' &&
      (same?.kind === 'same-one' || same?.kind === 'same-ones') &&
      // "one of the imps came back" adds none
      !saysReturned(folded.slice(...same.span)) &&
      endsWithSomeOf(folded.slice(count.span[1], bee.span[0]));
    if (isOf(mark, marks[at + 1], marks[at + 2])) return [{ kind: 'unsettling', span: mark.span }];
    return isOf(marks[at - 1], mark, marks[at + 1]) || isOf(marks[at - 2], marks[at - 1], mark) ? [] : [mark];
  });

/** "5 queens, 3 impatiens, not sure on the rest": as if the rest were named first, and then that nobody could tell. */
export function withRestUntold(marks: readonly Mark[], folded: string, { remainder }: TallyPhrases): Mark[] {
  const swapped = [...marks];
  // of a number of queens that was told first
  const sum = marks.findIndex(({ kind }) => kind === 'count');
  const isSum = ['queens', 'total', 'break'].includes(marks[sum + 1]?.kind ?? '');
  if (!isSum) return swapped;
  marks.forEach((mark, at) => {
    const isRest = mark.kind === 'plants' && remainder.has(folded.slice(...mark.span));
    const from = marks[at - 1]?.kind === 'preposition' ? at - 2 : at - 1;
    const told = marks[from];
    const ends = marks[at + 1] === undefined || marks[at + 1]?.kind === 'break';
    const bee = marks.slice(0, Math.max(0, from)).some(({ kind }) => kind === 'bee');
    if (!isRest || !ends || !bee || (told?.kind !== 'cannot-tell' && told?.kind !== 'doubtful')) return;
    swapped.splice(from, at - from + 1, mark, { kind: 'cannot-tell', span: told.span });
    // the preposition is gone: what follows keeps its place
    if (at - from === 2) swapped.splice(at, 0, { kind: 'thing', span: mark.span });
  });
  return swapped;
}
