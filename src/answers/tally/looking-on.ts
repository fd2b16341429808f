/** Looks on from a mark to the next that tells what it means. */
import type { Mark } from './mark.js';

/** True where, looking on from `at`, a name or "queen" comes before any break: the article there counts. */
export function articleCounts(marks: readonly Mark[], at: number): boolean {
  // "and a worker", "a worker on the lilac"
  const behind = marks[at + 2]?.kind ?? 'break';
  if (marks[at + 1]?.kind === 'worker' && (behind === 'break' || behind === 'preposition')) return true;
  for (let next = at + 1; next < marks.length; next++) {
    const mark = marks[next]!;
    switch (mark.kind) {
      case 'bee':
      case 'insect':
      case 'queens':
      case 'cannot-tell':
        return true;
      case 'worker':
      case 'doubtful':
      case 'unknown':
        continue;
      default:
        return false;
    }
  }
  return false;
}

/** The next mark that is no article, thing or unknown word. */
export function nextMeaning(marks: readonly Mark[], at: number): Mark | undefined {
  return marks
    .slice(at + 1, at + 6)
    .find((mark) => !(mark.kind === 'count' && mark.count.article) && mark.kind !== 'unknown');
}

/** "mostly impatiens: 7", "mostly impatiens, 7 of them": the bee next has its number behind it. */
export function isCountedBehind(marks: readonly Mark[], at: number): boolean {
  const bee = marks.findIndex(({ kind }, later) => later > at && kind === 'bee');
  const [gap, count, ofThem] = marks.slice(bee + 1, bee + 4);
  if (bee === -1 || gap?.kind !== 'break' || count?.kind !== 'count') return false;
  return gap.strength === 'colon' || ofThem?.kind === 'of-them';
}
