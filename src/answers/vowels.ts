/**
 * Words that a cold thumb types without their vowels: "brzy" is "breezy", "strtd" is "started", "knda" is "kinda". Only
 * such words are read so that have no vowel but at their ends, and only where exactly one of the known words fits.
 */
import type { Words } from '../../shared/words.js';
import { madeOnce } from './text.js';

/** Of two letters too many words fit: "tn" is ten, ton, tin, town. */
const SHORTEST = 3;

const WITHOUT_VOWELS = /^\p{L}[^\P{L}aeiou]{2,}[aeiou]?$/u;

/** All consonants in order, doubled ones once; a vowel only where the word begins with it. */
const skeletonOf = (word: string): string =>
  (word[0] ?? '') +
  word
    .slice(1)
    .replace(/[aeiou]/gu, '')
    .replace(/(\p{L})\1+/gu, '$1');

const LAST_VOWEL = /[aeiou]$/u;

/** Words without vowels that some reader knows: "blk" is "black" of a bee, and no "bleak" sky. */
export const knownWithoutVowels = madeOnce((words: Words): ReadonlySet<string> => {
  const known = new Set<string>();
  const gather = (value: unknown): void => {
    if (typeof value === 'string') {
      for (const word of value.split(/[^\p{L}]+/u)) if (WITHOUT_VOWELS.test(word)) known.add(word);
    } else if (Array.isArray(value)) value.forEach(gather);
    else if (typeof value === 'object' && value !== null) {
      Object.keys(value).forEach(gather);
      Object.values(value).forEach(gather);
    }
  };
  gather(words);
  return known;
});

/**
 * For a table of words and what they mean, what a word without vowels means; undefined where none or several fit, or
 * where it is one of `taken`, which mean themselves.
 */
export function withVowels<Meaning>(
  known: Iterable<readonly [word: string, meaning: Meaning]>,
  taken: ReadonlySet<string>,
): (typed: string) => Meaning | undefined {
  const bySkeleton = new Map<string, Set<Meaning>>();
  for (const [word, meaning] of known) {
    const skeleton = skeletonOf(word);
    if (skeleton.length < SHORTEST || skeleton === word || !/^\p{L}+$/u.test(word)) continue;
    const last = LAST_VOWEL.exec(word)?.[0] ?? '';
    for (const typed of new Set([skeleton, skeleton + last]))
      bySkeleton.set(typed, (bySkeleton.get(typed) ?? new Set()).add(meaning));
  }
  return (typed) => {
    if (!WITHOUT_VOWELS.test(typed) || taken.has(typed)) return undefined;
    const meant = bySkeleton.get(skeletonOf(typed) + (LAST_VOWEL.exec(typed)?.[0] ?? ''));
    return meant?.size === 1 ? [...meant][0] : undefined;
  };
}
