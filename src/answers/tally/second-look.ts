/** A second look at the marks, once all are known: what stands behind a mark can change what it means. */
import type { CountSaid } from './counts.js';
import { nextMeaning } from './looking-on.js';
import { ends, isArticle, namesBee, type Mark } from './mark.js';
import { withNoAsCorrection } from './no-as-correction.js';
import { isCounted, withRestUntold, withSameOfThem, withTheOther } from './the-others.js';
import {
  withSomeOf,
  withAfterthoughts,
  withoutAppositions,
  withoutPredicates,
  withWorkersAmong,
} from './told-again.js';
import type { TallyPhrases } from './vocabulary.js';
import type { Span } from '../reading.js';

export function secondLook(marks: readonly Mark[], folded: string, phrases: TallyPhrases): Mark[] {
  const same = withSameOfThem(withoutStutters(marks, folded), folded, phrases);
  const parted = withContrasts(
    withoutAppositions(withoutPredicates(withSomeOf(same, folded, phrases), folded, phrases), folded, phrases),
    folded,
    phrases,
  );
  const dashed = withNoneElsewhere(withDashAsNone(parted, folded), folded, phrases);
  const seen = withPollenOnSome(withGenusAsLabel(withoutSameKind(dashed, folded, phrases)));
  const told = withoutStrayNumbers(withAlternativeCounts(withNamelessOnes(seen, folded, phrases)));
  const plants = withPlantsThatHad(withNamedAmong(withAfterthoughts(told, folded, phrases)), folded, phrases);
  const others = withTheOther(withRestUntold(withSumSign(plants, folded), folded, phrases), folded, phrases);
  const parts = withWorkersAmong(withoutIdleArticles(withHedgedCounts(others, folded, phrases)), folded, phrases);
  return withNoAsCorrection(parts, folded);
}

/** "on each of bluebells and redbud", "on both bluebells and redbud": on those two, and no other plant that is watched. */
const withNamedAmong = (marks: readonly Mark[]): Mark[] =>
  marks.flatMap((mark, at): Mark[] => {
    if (mark.kind !== 'plants' || marks[at + 1]?.kind !== 'plant' || !ends(marks[at + 2], 'and', 'or', 'comma'))
      return [mark];
    if (marks[at + 3]?.kind !== 'plant') return [mark];
    const on: Mark = { kind: 'preposition', strong: true, span: mark.span };
    if (mark.each) return [{ kind: 'each', span: mark.span }, on];
    return marks[at - 1]?.kind === 'preposition' ? [] : [mark];
  });

/** "none on the columbine but the lilac had 2": what follows is of the lilac. */
const withContrasts = (marks: readonly Mark[], folded: string, { contrasts }: TallyPhrases): Mark[] =>
  marks.map((mark, at): Mark => {
    const parts =
      ends(mark, 'and') &&
      contrasts.has(folded.slice(...mark.span)) &&
      marks[at - 1]?.kind === 'plant' &&
      marks[at + 1]?.kind === 'plant' &&
      marks.slice(0, at).some(({ kind }) => kind === 'zero');
    return parts ? { kind: 'break', strength: 'comma', span: mark.span } : mark;
  });

/** "no wait five five common eastern": dictated numbers said again at once are one. */
const withoutStutters = (marks: readonly Mark[], folded: string): Mark[] =>
  marks.filter((mark, at) => {
    const next = marks[at + 1];
    if (mark.kind !== 'count' || next?.kind !== 'count') return true;
    const [said, again] = [folded.slice(...mark.span), folded.slice(...next.span)];
    return said !== again || /\d/.test(said) || folded.slice(mark.span[1], next.span[0]).trim() !== '';
  });

/** "Taraxacum: -": the dash in the place of a number is none. */
function withDashAsNone(marks: readonly Mark[], folded: string): Mark[] {
  return marks.map((mark, at): Mark => {
    const heads = ends(marks[at - 1], 'colon') && marks[at - 2]?.kind === 'plant';
    const behind = marks[at + 1];
    const alone = behind === undefined || ends(behind, 'comma', 'stop', 'line');
    const isDash = ends(mark, 'dash') && /^[-–—]+$/u.test(folded.slice(...mark.span));
    return heads && isDash && alone ? { kind: 'zero', span: mark.span } : mark;
  });
}

/** Letters before a plant or bee in which an "only" of it stands. */
const MOST_BEFORE_ONLY = 30;

/** "Only the bleeding heart had one", "nothing but an imp on the phlox": the other plants had none. */
function withNoneElsewhere(
  marks: readonly Mark[],
  folded: string,
  { endsWithOnly, endsWithExcept }: TallyPhrases,
): Mark[] {
  const before = ({ span: [from] }: Mark): string => folded.slice(Math.max(0, from - MOST_BEFORE_ONLY), from);
  const only = marks.filter((mark) => mark.kind === 'plant' && endsWithOnly(before(mark)));
  const except = marks.filter((mark) => (mark.kind === 'bee' || mark.kind === 'count') && endsWithExcept(before(mark)));
  const tellsNone = marks.some(({ kind }) => kind === 'zero');
  if (tellsNone || (only.length !== 1 && except.length !== 1)) return [...marks];
  const end: Span = [folded.length, folded.length];
  return [...marks, { kind: 'nothing-else', span: end }];
}

/** "Bombus: nil", "BOMBUS: bimaculatus 2": a label, and none of them. */
const withGenusAsLabel = (marks: readonly Mark[]): Mark[] =>
  marks.filter((mark, at) => {
    const genus = mark.kind === 'bee' && mark.bee.names[0]?.name === 'Bombus';
    const [sign, first, second] = marks.slice(at + 1, at + 4);
    const none = ends(sign, 'colon', 'dash') && first?.kind === 'zero';
    const named = ends(sign, 'colon') && (namesBee(first) || (first?.kind === 'count' && namesBee(second)));
    return !(genus && (none || named));
  });

/** "… and one on the dandelion, same kind": says nothing new; "same kind on the dandelion" does. */
const withoutSameKind = (marks: readonly Mark[], folded: string, { sameKind }: TallyPhrases): Mark[] =>
  marks.filter((mark, at) => {
    const kind = mark.kind === 'same' && sameKind.has(folded.slice(...mark.span));
    const next = marks[at + 1];
    return !(kind && (next === undefined || next.kind === 'break'));
  });

/** "2 bimacs (pollen on one of them)": one of them with pollen. */
function withPollenOnSome(marks: readonly Mark[]): Mark[] {
  const left = [...marks];
  marks.forEach((mark, at) => {
    const [placing, number, behind] = marks.slice(at + 1, at + 4);
    if (mark.kind !== 'pollen' && mark.kind !== 'no-pollen') return;
    if (placing?.kind !== 'preposition' || number?.kind !== 'count' || number.count.article) return;
    const of = behind?.kind === 'of-them' ? [behind] : [];
    const next = of.length > 0 ? marks[at + 4] : behind;
    if (next !== undefined && next.kind !== 'break' && next.kind !== 'unknown') return;
    left.splice(at, 3 + of.length, { kind: 'break', strength: 'comma', span: placing.span }, number, ...of, mark);
  });
  return left;
}

/** "1 vagans and something unknown": the unknown one is a queen of its own. */
function withNamelessOnes(marks: readonly Mark[], folded: string, { saysNameless }: TallyPhrases): Mark[] {
  return marks.flatMap((mark, at): Mark[] => {
    if (mark.kind !== 'cannot-tell' || !saysNameless(folded.slice(...mark.span))) return [mark];
    const before = marks.slice(0, at).findLast(({ kind }) => kind !== 'unknown');
    const named = marks.slice(0, at).some(({ kind }) => kind === 'bee');
    if (!named || !ends(before, 'and')) return [mark];
    const count: CountSaid = { values: [1], exact: true, article: false, span: mark.span };
    return [{ kind: 'count', count, span: mark.span }, mark];
  });
}

/** "Two, might have been three, half-blacks": either. */
function withAlternativeCounts(marks: readonly Mark[]): Mark[] {
  const left: Mark[] = [];
  for (const mark of marks) {
    const hedge = left.at(-1);
    const gap = left.at(-2);
    const first = ends(gap, 'comma', 'dash', 'open', 'or', 'and') ? left.at(-3) : gap;
    const alternative =
      mark.kind === 'count' &&
      !mark.count.article &&
      hedge?.kind === 'doubtful' &&
      !hedge.behind &&
      first?.kind === 'count' &&
      !first.count.article;
    if (!alternative) {
      left.push(mark);
      continue;
    }
    left.length = left.lastIndexOf(first);
    const values = [...new Set([...first.count.values, ...mark.count.values])];
    left.push({ ...first, count: { ...first.count, values, exact: false } });
  }
  return left;
}

/** Fewer are counted as queens; 32 °F is the least degree that a watch has. */
const LEAST_STRAY = 32;
const OF_NO_BEES: ReadonlySet<Mark['kind']> = new Set(['unknown', 'thing', 'break', 'preposition', 'count']);

/** "0 queens. Sunny, 70, light wind": large numbers of a sentence that speaks of no bees and no plants. */
function withoutStrayNumbers(marks: readonly Mark[]): readonly Mark[] {
  const sentences: Mark[][] = [[]];
  for (const mark of marks) {
    sentences.at(-1)!.push(mark);
    if (ends(mark, 'stop', 'line')) sentences.push([]);
  }
  const told = (sentence: readonly Mark[]): boolean => sentence.some(({ kind }) => !OF_NO_BEES.has(kind));
  if (!sentences.some(told)) return marks;
  const strays = (sentence: readonly Mark[]): boolean =>
    !told(sentence) &&
    sentence.some(({ kind }) => kind === 'unknown') &&
    sentence.every((mark) => mark.kind !== 'count' || (mark.count.values[0] ?? 0) >= LEAST_STRAY || mark.count.article);
  return sentences.flatMap((sentence) =>
    strays(sentence) ? sentence.filter(({ kind }) => kind !== 'count') : sentence,
  );
}

/** "Both had one bimac": both plants; "2 imps, both had pollen": the imps. */
function withPlantsThatHad(marks: readonly Mark[], folded: string, { eachHad }: TallyPhrases): Mark[] {
  return marks.map((mark, at): Mark => {
    if ((mark.kind !== 'all-bees' && mark.kind !== 'each') || marks.slice(0, at).some(isCounted)) return mark;
    const next = marks.slice(at + 1).find(({ kind }) => kind !== 'unknown');
    const had = eachHad(folded, mark.span[0]) && (next?.kind === 'count' || next?.kind === 'zero');
    return had ? { kind: 'plants', which: 'all', each: true, span: mark.span } : mark;
  });
}

/** "2 imp 1 bimac = 3", "2 imp + 1 bimac = 3 queens": a sum, where nothing but its queens stands behind it. */
function withSumSign(marks: readonly Mark[], folded: string): Mark[] {
  return marks.flatMap((mark, at): Mark[] => {
    const isSign = ends(mark, 'colon') && folded[mark.span[0]] === '=';
    const names = marks.slice(0, at).filter(({ kind }) => kind === 'bee' || kind === 'cannot-tell');
    const [number, behind, end] = marks.slice(at + 1, at + 4);
    const last = behind?.kind === 'queens' ? end : behind;
    const isSum = isSign && names.length > 1 && number?.kind === 'count' && (last === undefined || ends(last, 'stop'));
    if (!isSum || isNamedAlone(marks, at)) return [mark];
    return [
      { ...mark, kind: 'break', strength: 'comma' },
      { kind: 'total', span: mark.span },
    ];
  });
}

/** "imp = 2, bimac = 3": the sign before `at` gave a bee its number. */
const isNamedAlone = (marks: readonly Mark[], at: number): boolean => {
  const counted = marks.slice(0, at).filter(({ kind }) => kind === 'count').length;
  return counted < marks.slice(0, at).filter(({ kind }) => kind === 'bee').length;
};

/** "one was maybe a tricolored": the article counts nothing that "one" has not counted. */
function withoutIdleArticles(marks: readonly Mark[]): Mark[] {
  let counted = false;
  return marks.filter((mark, at) => {
    const kind = nextMeaning(marks, at)?.kind;
    const idle = counted && isArticle(mark) && (kind === 'bee' || kind === 'insect' || kind === 'worker');
    if (mark.kind === 'count' && !mark.count.article) counted = mark.count.values[0] === 1;
    else if (!isArticle(mark) && !['doubtful', 'unknown', 'queens', 'of-them'].includes(mark.kind)) counted = false;
    return !idle;
  });
}

/** "not sure but 2 imps": the number is in doubt. */
function withHedgedCounts(marks: readonly Mark[], folded: string, { hedgedBut }: TallyPhrases): Mark[] {
  const hedges = hedgedBut(folded);
  if (hedges.length === 0) return [...marks];
  const hedged = new Set<Mark>();
  for (const [from, to] of hedges) {
    const at = marks.findIndex(({ span }) => span[0] >= to);
    const next = marks.slice(Math.max(0, at), at + 4).find((mark) => mark.kind !== 'unknown');
    if (at === -1 || next?.kind !== 'count' || next.count.article) continue;
    hedged.add(next);
    for (const mark of marks) if (mark.span[0] >= from && mark.span[1] <= to) hedged.add(mark);
  }
  return marks.flatMap((mark): Mark[] => {
    if (!hedged.has(mark)) return [mark];
    return mark.kind === 'count' ? [{ ...mark, count: { ...mark.count, exact: false } }] : [];
  });
}
