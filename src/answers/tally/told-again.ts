/** What says more of queens that were counted, and counts none: "a different one", "one was a worker", "couldn't tell". */
import { ends, isArticle, namesBee, type Mark } from './mark.js';
import type { TallyPhrases } from './vocabulary.js';

/** "1 two-spotted, a different one from the first": says more of that one. */
export function withoutAppositions(
  marks: readonly Mark[],
  folded: string,
  { differing, saysBeing, saysOrder }: TallyPhrases,
): Mark[] {
  const dropped = new Set<Mark>();
  marks.forEach((mark, at) => {
    if (mark.kind !== 'another' || !differing.has(folded.slice(...mark.span))) return;
    const [count, bee, comma] = marks.slice(Math.max(0, at - 3), at);
    const isBehind = count?.kind === 'count' && namesBee(bee) && ends(comma, 'comma', 'dash', 'open');
    // "1 half-black. The half-black was a new one for me"
    const named = comma?.kind === 'bee' && saysBeing(folded.slice(comma.span[1], mark.span[0])) ? comma : null;
    if (!isBehind && !named) return;
    const end = marks.findIndex((other, place) => place > at && other.kind === 'break');
    const more = marks.slice(at, end === -1 ? undefined : end);
    const places = more.filter(({ kind }) => kind === 'plant' || kind === 'plants');
    if (more.some(namesBee) || places.some(({ span }) => !saysOrder(folded.slice(...span)))) return;
    for (const each of more) dropped.add(each);
    if (named) dropped.add(named);
  });
  return marks.filter((mark) => !dropped.has(mark));
}

/** "1 half-black … the half-black was a new one for me": tells more of that one. */
export function withoutPredicates(marks: readonly Mark[], folded: string, { saysBeing }: TallyPhrases): Mark[] {
  const dropped = new Set<Mark>();
  marks.forEach((mark, at) => {
    const [bee, article] = marks.slice(Math.max(0, at - 2), at);
    // "one of the imps was a worker"
    if (mark.kind === 'worker' && bee?.kind === 'bee' && isArticle(article)) dropped.add(article!);
    if (mark.kind !== 'count' || bee?.kind !== 'bee' || !isArticle(article) || isArticle(mark)) return;
    const name = bee.bee.names[0]?.name;
    const told = marks.slice(0, at - 2).some((other) => other.kind === 'bee' && other.bee.names[0]?.name === name);
    if (!told || !saysBeing(folded.slice(bee.span[1], mark.span[0]))) return;
    for (const each of [bee, article!, mark]) dropped.add(each);
  });
  return marks.filter((mark) => !dropped.has(mark));
}

const TELLS_NOTHING: ReadonlySet<Mark['kind']> = new Set(['unknown', 'thing', 'preposition', 'break']);

/** "… and 2 American. I couldn't tell from where I was": a sentence of its own is a doubt, and no queen more. */
export function withAfterthoughts(marks: readonly Mark[], folded: string, { saysNameless }: TallyPhrases): Mark[] {
  const isEnd = (mark: Mark): boolean => ends(mark, 'stop', 'line');
  return marks.map((mark, at): Mark => {
    if (mark.kind !== 'cannot-tell' || saysNameless(folded.slice(...mark.span))) return mark;
    const from = marks.slice(0, at).findLastIndex(isEnd) + 1;
    const end = marks.findIndex((other, place) => place > at && isEnd(other));
    const others = marks
      .slice(from, end === -1 ? undefined : end)
      .filter((other) => other !== mark && !isArticle(other));
    const toldBefore = marks.slice(0, from).some((other) => other.kind === 'bee');
    const isAlone =
      others.every(({ kind }) => TELLS_NOTHING.has(kind)) && others.some(({ kind }) => kind === 'unknown');
    return isAlone && toldBefore ? { kind: 'doubtful', ofZero: false, behind: true, span: mark.span } : mark;
  });
}

/** "2 imps, one was a worker", "2 imps, one of them a worker": one of the two. */
export const withWorkersAmong = (marks: readonly Mark[], folded: string, { saysBeing }: TallyPhrases): Mark[] =>
  marks.flatMap((mark, at): Mark[] => {
    const count = marks.slice(0, at).findLast((other) => other.kind !== 'of-them' && !isArticle(other));
    if (mark.kind !== 'worker' || count?.kind !== 'count') return [mark];
    const being = marks[at - 1] !== count || saysBeing(folded.slice(count.span[1], mark.span[0]));
    const told = marks.slice(0, marks.indexOf(count)).some(namesBee);
    return being && told ? [{ kind: 'of-them', span: mark.span }, mark] : [mark];
  });

/** "3 brown-belted … one of the brown-belted ones had pollen", "one of the big girls": some of those that were counted. */
export function withSomeOf(marks: readonly Mark[], folded: string, { endsWithSomeOf }: TallyPhrases): Mark[] {
  return marks.flatMap((mark, at): Mark[] => {
    const before = marks.slice(0, at);
    const count = before.findLast(({ kind }) => kind !== 'unknown');
    const isOne = (other: Mark | undefined): boolean => other?.kind === 'count' && !other.count.article;
    // the "ones" of "the brown-belted ones"
    const named = marks[at - 1];
    if (mark.kind === 'queens' && named?.kind === 'bee' && isOne(marks[at - 2])) {
      if (endsWithSomeOf(folded.slice(marks[at - 2]!.span[1], named.span[0]))) return [];
    }
    if (!isOne(count) || !endsWithSomeOf(folded.slice(count!.span[1], mark.span[0]))) return [mark];
    const told = before.slice(0, before.indexOf(count!)).filter((other) => other.kind === 'bee');
    const isTold =
      mark.kind === 'queens'
        ? told.length > 0
        : mark.kind === 'bee' && told.some(({ bee }) => bee.names[0]?.name === mark.bee.names[0]?.name);
    const ofThem: Mark = { kind: 'of-them', span: mark.span };
    return !isTold ? [mark] : mark.kind === 'bee' ? [ofThem, mark] : [ofThem];
  });
}
