/** Words of doubt, and which name each of them is about. */
import type { Words } from '../../../shared/words.js';
import type { Span } from '../reading.js';
import { anyOf } from '../any-of.js';
import { madeOnce, phraseFinder } from '../text.js';

export interface Hedge {
  readonly span: Span;
  /** "about", "~": of a count or a place, but where a name comes right after. */
  readonly onlyBefore: boolean;
  /** "?", "-ish": of what stands before. */
  readonly onlyAfter: boolean;
}

/** "95 %", "80 percent" */
const percentPattern = madeOnce(
  (percent: readonly string[]) => new RegExp(`(?<![\\d.])\\d{1,2}\\s?(?:${percent.join('|')})(?!\\p{L})`, 'gu'),
);

const hedgeFinder = madeOnce((words: Words) => {
  const phrases = [...words.hedges.soft, ...words.hedges.doubting, ...words.names.hedges, ...words.names.unknown];
  const { amountHedges, hedgesAfter } = words.names;
  const all = phrases.flatMap((phrase) => [phrase, phrase.replaceAll("'", '')]);
  const amount = new Set(amountHedges);
  const after = new Set(hedgesAfter);
  return phraseFinder(
    all.map((phrase) => [phrase, { onlyBefore: amount.has(phrase), onlyAfter: after.has(phrase) }] as const),
  );
});

/** All words of doubt; "95 %" is one, "100 %" is none. */
export function hedgesIn(folded: string, words: Words): Hedge[] {
  const hedges = hedgeFinder(words)(folded).map(({ value, span }) => ({ ...value, span }));
  for (const match of folded.matchAll(percentPattern(words.names.percent))) {
    hedges.push({ span: [match.index, match.index + match[0].length], onlyBefore: false, onlyAfter: false });
  }
  return hedges.sort((a, b) => a.span[0] - b.span[0]);
}

/** "I believe was a", "I think it was an": words between a doubt and the name it is about. */
const linkPattern = madeOnce((links: readonly string[]) => new RegExp(`^\\s*(?:${anyOf(links)}\\s*)*$`, 'u'));

/** "maybe a hundred open and one two-spotted": the doubt is about the flowers. */
const flowerPattern = madeOnce(({ count }: Words) => new RegExp(anyOf(count.flowers, count.open), 'u'));

/** What ends the reach of a word of doubt. */
const BOUNDARY = /[,;:\n.!]/;
/** "vagans, not sure" */
const COMMA_ONLY = /^\s*,\s*$/;
const MOST_BETWEEN = 60;

const isWord = (folded: string, [from]: Span): boolean => /\p{L}/u.test(folded[from] ?? '');

/**
 * The positions of the names (by their spans, left to right) that a word of doubt is about: the next name where
 * nothing parts them, else the one before ("bimac maybe, 2 imp").
 */
export function doubted(folded: string, names: readonly Span[], hedges: readonly Hedge[], words: Words): Set<number> {
  const links = linkPattern(words.names.hedgeLinks);
  const flowers = flowerPattern(words);
  const found = new Set<number>();
  if (names.length === 0) return found;
  const reaches = (from: number, to: number): boolean =>
    to - from <= MOST_BETWEEN && !BOUNDARY.test(folded.slice(from, to)) && !flowers.test(folded.slice(from, to));
  let next = 0;
  for (const { span, onlyBefore, onlyAfter } of hedges) {
    while (next < names.length && names[next]![0] < span[1]) next++;
    const after = names[next];
    const before = names[next - 1];
    if (onlyBefore) {
      if (after && folded.slice(span[1], after[0]).trim() === '') found.add(next);
    } else if (after && !onlyAfter && reaches(span[1], after[0])) found.add(next);
    // "4 common eastern and one that I believe was a lemon cuckoo"
    else if (after && isWord(folded, span) && links.test(folded.slice(span[1], after[0]))) found.add(next);
    else if (
      before &&
      (reaches(Math.min(before[1], span[0]), span[0]) || COMMA_ONLY.test(folded.slice(before[1], span[0])))
    ) {
      found.add(next - 1);
    }
  }
  return found;
}
