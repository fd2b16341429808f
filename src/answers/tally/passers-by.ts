/** Bees that only passed by or were only heard: beside a "none" they are told as an aside, and visited nothing. */
import { anyOf } from '../any-of.js';
import { madeOnce } from '../text.js';
import type { Words } from '../../../shared/words.js';
import type { Mark } from './mark.js';

const passing = madeOnce((tally: Words['tally']) => new RegExp(anyOf(tally.passedBy), 'u'));

const opensClause = ({ kind }: Mark): boolean => kind === 'break';

/** "none", "0" */
const saysNone = (mark: Mark): boolean =>
  mark.kind === 'zero' || (mark.kind === 'count' && mark.count.values.every((value) => value === 0));

/** What such a clause may hold besides the passing: how many, "bumble bee", and words that tell nothing of flowers. */
const MAY_STAND: ReadonlySet<Mark['kind']> = new Set([
  'count',
  'another',
  'queens',
  'thing',
  'insect',
  'unknown',
  'unsettling',
  'preposition',
  'break',
]);

/**
 * "None. One bumble bee flew over but did not land": the clauses behind a "none" that name no bee and no plant and tell
 * of one that passed are left out. Behind bees that were counted the same words stay: they may take one of them away.
 */
export function withoutPassersBy(marks: readonly Mark[], folded: string, tally: Words['tally']): readonly Mark[] {
  const first = marks.find(({ kind }) => kind !== 'break' && kind !== 'unknown');
  if (first === undefined || !saysNone(first) || !passing(tally).test(folded)) return marks;
  const clauses: Mark[][] = [[]];
  for (const mark of marks) {
    if (opensClause(mark) && clauses.at(-1)!.length > 0) clauses.push([]);
    clauses.at(-1)!.push(mark);
  }
  const saidIn = (at: number): string =>
    folded.slice(clauses[at]![0]!.span[0], clauses[at + 1]?.[0]?.span[0] ?? folded.length);
  return clauses.flatMap((clause, at) => {
    const isAside = clause.every(({ kind }) => MAY_STAND.has(kind)) && passing(tally).test(saidIn(at));
    return isAside && !clause.includes(first) ? [] : clause;
  });
}
