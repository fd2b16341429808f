/** Tells a "no" that takes back what was said from one that counts no queens. */
import { ends, isArticle, type Mark } from './mark.js';

/** "2 imp on the redbud no 3": behind the "no" nothing but another number of the same queens. */
function tellsNumberAgain(marks: readonly Mark[], at: number): boolean {
  const from = ends(marks[at + 1], 'comma') ? at + 2 : at + 1;
  const [number, end] = marks.slice(from, from + 2);
  const before = marks.slice(0, ends(marks[at - 1], 'comma') ? at - 1 : at);
  const told = before.some((mark) => mark.kind === 'count' && !mark.count.article);
  // "chives 1 imp redbud no 3": the "no" may be of the redbud
  const [bee, placing, plant] = before.slice(-3);
  if (plant?.kind === 'plant' && (placing?.kind !== 'preposition' || bee?.kind === 'break')) return false;
  const isNumber = number?.kind === 'count' && !number.count.article && number.count.values.length > 0;
  return told && isNumber && (end === undefined || ends(end, 'stop', 'line'));
}

/** "2 imp. No, 3 imp" and "goldenrod... no, golden alexanders: 2 imp" take back; "phlox: no, plum: 2 imp" does not. */
export function withNoAsCorrection(marks: readonly Mark[], folded: string): Mark[] {
  return marks.map((mark, at): Mark => {
    if (mark.kind !== 'zero' || !/^(?:no|nope|no no)$/.test(folded.slice(...mark.span))) return mark;
    const before = marks[at - 1];
    const isBreak = before?.kind === 'break';
    const last = marks.slice(0, at).findLast(({ kind }) => kind !== 'break' && kind !== 'unknown');
    if (last === undefined) return mark;
    if (tellsNumberAgain(marks, at)) return { kind: 'takes-back', span: mark.span };
    if (!ends(marks[at + 1], 'comma')) return mark;
    const next = marks.slice(at + 2, at + 5).find((other) => !isArticle(other) && other.kind !== 'unknown');
    const saysAgain =
      next?.kind === 'count' || next?.kind === 'bee' || (next?.kind === 'plant' && last.kind === 'plant');
    const apart = !isBreak || ends(before, 'stop', 'comma', 'line');
    // "phlox no, plum 2": the phlox had none
    const none = last.kind === 'plant' && !ends(before, 'stop');
    return saysAgain && apart && !none ? { kind: 'takes-back', span: mark.span } : mark;
  });
}
