/** What the readers of one bee and of one plant share: which of the names in an answer is meant, and is it doubted. */
import type { Context, Span } from '../reading.js';
import { blank, joinSpans } from '../text.js';
import { hedgesIn } from './hedges.js';
import type { Hit } from './hit.js';
import type { Settled } from './settle.js';
import type { Taxon } from './taxa.js';
import type { Word } from './tokens.js';
import { vocabularyOf } from './vocabulary.js';

/** Longest answer that is read as one name, in characters; ordinary ones have under 80. */
export const LONGEST_ANSWER = 600;

export interface Named {
  readonly hit: Hit;
  readonly settled: Settled;
}

/** Without the names that a correction takes back: "vagans, sorry, perplexus" is the second. */
export function afterCorrection(folded: string, named: readonly Named[], context: Context): readonly Named[] {
  const last = named.at(-1);
  if (!last) return named;
  const corrections = vocabularyOf(context.words)
    .correcting(folded)
    .filter(({ span }) => span[1] <= last.hit.span[0]);
  const correction = corrections.at(-1);
  if (!correction) return named;
  const kept = named.filter(({ hit }) => hit.span[0] >= correction.span[1]);
  // "actually" at the very beginning takes nothing back
  return kept.length > 0 ? kept : named;
}

/** Words between a "not" and the name it takes away: "not a", "not the". */
const MOST_AFTER_NOT = 2;

/** "not vagans", "isn't a carpenter bee". "not sure vagans" and "why not vagans" take nothing away. */
export function isNegated(hit: Hit, words: readonly Word[], context: Context): boolean {
  const { negating, joining } = vocabularyOf(context.words);
  for (let at = hit.from - 1; at >= 0 && at >= hit.from - 1 - MOST_AFTER_NOT; at--) {
    if (words[at + 1]!.gap !== 'none') return false;
    const { plain } = words[at]!;
    if (negating.has(plain)) return true;
    if (!joining.has(plain) && plain !== 'any') return false;
  }
  return false;
}

/** The one meaning that all names of an answer agree on ("pussy willow (Salix)"), or null where they do not. */
export function agreed(named: readonly Named[]): Settled | null {
  let meant: { taxa: readonly Taxon[]; clear: boolean } | null = null;
  for (const settled of named.map((each) => withoutGenusOffered(each.settled))) {
    if (!meant) {
      meant = settled;
      continue;
    }
    const shared: readonly Taxon[] = meant.taxa.filter((taxon) => fitsOneOf(taxon, settled.taxa));
    const sharedBack: readonly Taxon[] = settled.taxa.filter((taxon) => fitsOneOf(taxon, meant!.taxa));
    const narrower = [...shared, ...sharedBack].filter(
      (taxon, at, all) => all.findIndex((other) => other.name === taxon.name) === at,
    );
    const species = narrower.filter((taxon) => taxon.rank !== 'genus');
    const kept = species.length > 0 ? species : narrower;
    if (kept.length === 0) return null;
    const firm: boolean = meant.clear || settled.clear || meant.taxa.length > 1 || settled.taxa.length > 1;
    meant = kept.length === 1 ? { taxa: kept, clear: firm } : { taxa: kept, clear: false };
  }
  return meant;
}

/** The genus that ends an offer of species is not what was said: "nannyberry or arrowwood" agree on nothing. */
function withoutGenusOffered({ taxa, clear }: Settled): Settled {
  const isOfSpecies = (name: string): boolean => taxa.some(({ rank, genus }) => rank !== 'genus' && genus === name);
  return clear
    ? { taxa, clear }
    : { taxa: taxa.filter(({ rank, name }) => rank !== 'genus' || !isOfSpecies(name)), clear };
}

/** The same taxon, or a genus and a species in it. */
function fitsOneOf(taxon: Taxon, others: readonly Taxon[]): boolean {
  return others.some((other) => {
    if (other.name === taxon.name) return true;
    const oneIsGenus = (other.rank === 'genus') !== (taxon.rank === 'genus');
    return oneIsGenus && other.genus === taxon.genus && taxon.genus !== '';
  });
}

/** True where any word of doubt stands in the answer; "about" only right before a name. */
export function isDoubted(folded: string, named: readonly Named[], context: Context): Span[] {
  const starts = named.map(({ hit }) => hit.span[0]);
  return hedgesIn(folded, context.words)
    .filter(
      ({ span, onlyBefore }) =>
        !onlyBefore || starts.some((start) => start >= span[1] && folded.slice(span[1], start).trim() === ''),
    )
    .map(({ span }) => span);
}

export const usedBy = (named: readonly Named[], more: readonly Span[] = []): Span[] =>
  joinSpans([...named.map(({ hit }) => hit.span), ...more]);

/** A question to us, or talk that names nothing: "what do you mean", "hold on". */
export function isTalk(folded: string, words: readonly Word[], context: Context): boolean {
  const vocabulary = vocabularyOf(context.words);
  if (vocabulary.chat(folded).length > 0) return true;
  const first = words[0];
  return first !== undefined && vocabulary.asking.has(first.plain) && /\?\s*$/.test(folded);
}

/** The answer without "thank you", "lol" and the like: they take nothing from a name beside them. */
export function besideSmallTalk(folded: string, context: Context): string {
  const said = vocabularyOf(context.words).smallTalk(folded);
  return said.length === 0
    ? folded
    : blank(
        folded,
        said.map(({ span }) => span),
      );
}
