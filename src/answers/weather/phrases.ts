/** Finds phrases in a spoken text even where small words stand between their words, or a letter is wrong. */
import { distance } from 'fastest-levenshtein';
import type { Words } from '../../../shared/words.js';
import type { Span } from '../reading.js';
import { byWord, madeOnce } from '../text.js';
import { knownWithoutVowels, withVowels } from '../vowels.js';
import { spoken, type Spoken, type Token } from './spoken.js';

export interface Hit<Value> {
  readonly value: Value;
  /** Its tokens: `[from, to)`. */
  readonly from: number;
  readonly to: number;
  readonly span: Span;
  readonly clause: number;
  /** "not", "without" stands before it, and is no part of the phrase itself. */
  readonly negated: boolean;
}

/** Tells whether a token belongs to any of the hits. */
export function inAny(hits: readonly { readonly from: number; readonly to: number }[]): (token: number) => boolean {
  const covered = new Set<number>();
  for (const hit of hits) for (let token = hit.from; token < hit.to; token++) covered.add(token);
  return (token) => covered.has(token);
}

export type HitFinder<Value> = (text: Spoken) => readonly Hit<Value>[];

interface Branch<Value> {
  readonly next: Map<string, Branch<Value>>;
  value: Value | undefined;
}

/** More small words than this in a row part a phrase. */
const MOST_SKIPPED = 4;
/** Shorter words have too many neighbours to be guessed: "calm" and "clam" are listed where meant. */
const SHORTEST_MENDED = 5;
/** Of the words that are read as another, only such long ones are mended: the list has slips of its own. */
const SHORTEST_INFLECTED = 6;
/** From this length on, two letters may be wrong. */
const LONG_WORD = 8;

const swapped = (typed: string, known: string): boolean => {
  if (typed.length !== known.length) return false;
  const at = [...typed].findIndex((letter, index) => letter !== known[index]);
  return at !== -1 && typed.slice(0, at) + typed[at + 1] + typed[at] + typed.slice(at + 2) === known;
};

/** True where `typed` is `known` with a letter wrong, missing, too many or swapped; the first letter is right. */
function misspells(typed: string, known: string): boolean {
  if (known.length < SHORTEST_MENDED || typed.length < SHORTEST_MENDED - 1) return false;
  if (typed[0] !== known[0] || Math.abs(typed.length - known.length) > 2 || /\d/.test(typed)) return false;
  const wrong = distance(typed, known);
  return wrong <= 1 || (wrong === 2 && known.length >= LONG_WORD) || swapped(typed, known);
}

/** "sooo" as "soo" and "so". */
const shortened = (word: string): string[] =>
  /(.)\1\1/u.test(word) ? [word.replace(/(.)\1{2,}/gu, '$1$1'), word.replace(/(.)\1{2,}/gu, '$1')] : [];

/** A function from words as typed to the words of the phrases; what fits none stays. */
function mender(vocabulary: ReadonlySet<string>, words: Words): (word: string) => string {
  const { weather, hedges, wind } = words;
  const hedgeWords = Object.values(hedges).flatMap((phrases) => phrases.flatMap((phrase) => phrase.split(' ')));
  const kept = new Set([
    ...weather.notMisspelt,
    ...Object.keys(weather.same),
    ...weather.skipped,
    ...weather.fillers,
    ...hedgeWords,
    ...wind.gusts,
  ]);
  // "rainning" is a slip for "raining", which is read as "rain"
  const inflected = Object.keys(weather.same).filter(
    (word) => word.length >= SHORTEST_INFLECTED && vocabulary.has(weather.same[word]!),
  );
  const byFirst = new Map<string, string[]>();
  for (const known of [...vocabulary, ...inflected]) {
    const first = known[0] ?? '';
    byFirst.set(first, [...(byFirst.get(first) ?? []), known]);
  }
  // slips that are listed are no words that a vowel could be missing from
  const meaning = (known: string): readonly [string, string] => [known, weather.same[known] ?? known];
  const whole = [...vocabulary, ...kept].filter((known) => !(known in weather.same));
  const clipped = withVowels(whole.map(meaning), knownWithoutVowels(words));
  const listed = Object.keys(weather.same).filter(
    (known) => known.length >= SHORTEST_MENDED && vocabulary.has(weather.same[known]!),
  );
  const clippedListed = withVowels(listed.map(meaning), knownWithoutVowels(words));
  return byWord((word) => {
    if (vocabulary.has(word) || kept.has(word) || words.dictionary.has(word)) return word;
    for (const shorter of shortened(word)) {
      const known = weather.same[shorter] ?? shorter;
      if (vocabulary.has(known)) return known;
    }
    const slips = byFirst.get(word[0] ?? '')?.filter((known) => misspells(word, known)) ?? [];
    // "breezzy" is nearer to "breezy" than to "breeze"
    const meant =
      slips.find((known) => known.at(-1) === word.at(-1)) ?? slips[0] ?? clipped(word) ?? clippedListed(word) ?? word;
    return vocabulary.has(meant) ? meant : (weather.same[meant] ?? meant);
  });
}

/**
 * Finds any of the phrases, left to right, the longest at each place, none overlapping and none across the end of a
 * clause. Where a phrase stands twice in the table, the first counts.
 */
export function hitFinder<Value>(
  table: Iterable<readonly [phrase: string, value: Value]>,
  words: Words,
): HitFinder<Value> {
  const { weather } = words;
  const root: Branch<Value> = { next: new Map(), value: undefined };
  const vocabulary = new Set<string>();
  for (const [phrase, value] of table) {
    let branch = root;
    const { tokens } = spoken(phrase, words);
    for (const [at, { word, skipped }] of tokens.entries()) {
      // "went from" is more than "went"
      if (skipped && (at < tokens.length - 1 || branch === root)) continue;
      vocabulary.add(word);
      const next = branch.next.get(word) ?? { next: new Map(), value: undefined };
      branch.next.set(word, next);
      branch = next;
    }
    if (branch === root) throw new Error(`The phrase "${phrase}" has only words that are skipped.`);
    branch.value ??= value;
  }
  const mend = mender(vocabulary, words);
  const negators = new Set(weather.negators);
  const strengths = new Set(weather.strengths);

  const negatedAt = (tokens: readonly Token[], from: number): boolean => {
    for (let at = from - 1; at >= from - MOST_SKIPPED && tokens[at]?.clause === tokens[from]!.clause; at--) {
      const { word, skipped } = tokens[at]!;
      if (negators.has(word)) return true;
      if (!skipped && !strengths.has(word)) return false;
    }
    return false;
  };

  return madeOnce(({ tokens }: Spoken) => {
    const mended = tokens.map(({ word }) => mend(word));
    const hits: Hit<Value>[] = [];
    for (let from = 0; from < tokens.length;) {
      let branch = root;
      let found: { value: Value; to: number } | null = null;
      let skippedInRow = 0;
      for (let at = from; at < tokens.length && tokens[at]!.clause === tokens[from]!.clause; at++) {
        const next = branch.next.get(mended[at]!);
        if (next) {
          branch = next;
          skippedInRow = 0;
          if (branch.value !== undefined) found = { value: branch.value, to: at + 1 };
        } else if (at === from || !tokens[at]!.skipped || ++skippedInRow > MOST_SKIPPED) break;
      }
      if (!found) {
        from++;
        continue;
      }
      const first = tokens[from]!;
      const last = tokens[found.to - 1]!;
      hits.push({
        value: found.value,
        from,
        to: found.to,
        span: [first.span[0], last.span[1]],
        clause: first.clause,
        negated: negatedAt(tokens, from),
      });
      from = found.to;
    }
    return hits;
  });
}
