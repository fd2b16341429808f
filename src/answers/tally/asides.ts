/** What a tally's text says beside the tally: questions to us, "that's all", "no, that's wrong". */
import type { Mark } from './mark.js';

/** A sentence: up to its sign, or the end of its line. */
const SENTENCE = /[^.?!\n]*(?:[.?!]+|\n|$)/gu;

/** Without the sentences that ask us something: "should I send a photo?" */
export function withoutQuestions(
  marks: readonly Mark[],
  folded: string,
  asksUs: (sentence: string) => boolean,
): readonly Mark[] {
  if (!folded.includes('?')) return marks;
  const questions = [...folded.matchAll(SENTENCE)]
    .filter(({ 0: typed }) => typed.trimEnd().endsWith('?') && asksUs(typed.trimStart()))
    .map(({ index, 0: typed }) => [index, index + typed.length] as const);
  return marks.filter(({ span }) => !questions.some(([from, to]) => span[0] >= from && span[1] <= to));
}

/** Without a "no" that answers something else: "no, I forgot to count". */
export function withoutIdleNo(marks: readonly Mark[], folded: string): readonly Mark[] {
  const tells = marks.some((mark) =>
    ['bee', 'queens', 'count', 'plant', 'plants', 'cannot-tell', 'insect'].includes(mark.kind),
  );
  return tells || !saysMore(marks, folded) ? marks : marks.filter((mark) => !isBareNo(mark, folded));
}

const isPlant = (mark: Mark | undefined): boolean => mark?.kind === 'plant' || mark?.kind === 'plants';

/** Without a "nothing yet" that is of no plant: it may answer anything. */
export function withoutIdleSoFar(marks: readonly Mark[], folded: string, zeroSoFar: ReadonlySet<string>): Mark[] {
  return marks.filter((mark, at) => {
    if (mark.kind !== 'zero' || !zeroSoFar.has(folded.slice(...mark.span))) return true;
    // "chives: nothing yet", "Chives, nothing yet"
    const [gap] = marks.slice(at - 1, at);
    const before = gap?.kind === 'break' && gap.strength !== 'stop' ? marks[at - 2] : gap;
    const next = marks.slice(at + 1).find(({ kind }) => kind !== 'unknown' && kind !== 'preposition');
    return isPlant(before) || isPlant(next);
  });
}

/** "Not sure about any of them" is of the bees; no queen was on each plant for it. */
export const withoutDoubtOfAll = (marks: readonly Mark[]): Mark[] =>
  marks.filter((mark, at) => {
    const ofAll = (plants: Mark | undefined, before: Mark | undefined, doubt: Mark | undefined): boolean =>
      plants?.kind === 'plants' && before?.kind === 'preposition' && doubt?.kind === 'cannot-tell';
    return !ofAll(mark, marks[at - 1], marks[at - 2]) && !ofAll(marks[at + 1], mark, marks[at - 1]);
  });

/** Beside other words "that's all" says nothing; alone, that there were no others. */
export function endsOnly(marks: readonly Mark[], folded: string): readonly Mark[] {
  const alone = marks.every((mark) => mark.kind === 'that-is-all' || mark.kind === 'break' || isBareNo(mark, folded));
  return marks.map((mark): Mark => (mark.kind === 'that-is-all' && alone ? { ...mark, kind: 'nothing-else' } : mark));
}

/** "No", which may answer a question instead of counting. */
export const isBareNo = (mark: Mark, folded: string): boolean =>
  mark.kind === 'zero' && /^(?:no|nope)$/.test(folded.slice(...mark.span));

/** More words than a "no": what they mean nobody knows. */
export const saysMore = (marks: readonly Mark[], folded: string): boolean =>
  marks.some((mark) => mark.kind === 'unknown') && marks.some((mark) => isBareNo(mark, folded));

/** Marks that stand beside insects without telling of queens. */
const BESIDE_INSECTS: ReadonlySet<Mark['kind']> = new Set([
  'insect',
  'count',
  'break',
  'plant',
  'plants',
  'preposition',
]);

const tellsOfOthers = (marks: readonly Mark[]): boolean =>
  marks.every(({ kind }) => BESIDE_INSECTS.has(kind) || kind === 'unknown' || kind === 'thing');

/** Marks from one comma, "and" or end of a sentence to the next; those that tell of nothing but insects go together. */
function clausesOf(marks: readonly Mark[]): Mark[][] {
  const clauses: Mark[][] = [[]];
  for (const mark of marks) {
    clauses.at(-1)!.push(mark);
    if (mark.kind === 'break' && mark.strength !== 'open' && mark.strength !== 'close' && mark.strength !== 'colon')
      clauses.push([]);
  }
  const joined: Mark[][] = [];
  for (const clause of clauses) {
    const before = joined.at(-1);
    const end = before?.at(-1);
    const goesOn = end?.kind === 'break' && end.strength !== 'stop' && end.strength !== 'line';
    const isOpen = before !== undefined && !before.some(({ kind }) => kind === 'plant' || kind === 'plants');
    if (goesOn && before && isOpen && tellsOfOthers(before) && tellsOfOthers(clause)) before.push(...clause);
    else joined.push(clause);
  }
  return joined;
}

/** "Only butterflies and a wasp" on the plum: no queen there. `saysOnly` is asked of the words of a clause. */
export function withNoneButOthers(
  marks: readonly Mark[],
  folded: string,
  saysOnly: (words: string) => boolean,
): readonly Mark[] {
  if (!saysOnly(folded) || !marks.some(({ kind }) => kind === 'insect')) return marks;
  if (tellsOfOthers(marks)) return withNoneIn(marks);
  let from = 0;
  return clausesOf(marks).flatMap((clause) => {
    const to = clause.at(-1)?.span[1] ?? from;
    const said = folded.slice(from, to);
    from = to;
    const placed = clause.some(({ kind }) => kind === 'plant' || kind === 'plants');
    return placed && tellsOfOthers(clause) && saysOnly(said) ? withNoneIn(clause) : clause;
  });
}

function withNoneIn(marks: readonly Mark[]): readonly Mark[] {
  const first = marks.find(({ kind }) => kind === 'insect');
  return marks.flatMap((mark): Mark[] => {
    if (mark === first) return [{ kind: 'zero', span: mark.span }];
    return (mark.kind === 'insect' || mark.kind === 'count') && first !== undefined ? [] : [mark];
  });
}
