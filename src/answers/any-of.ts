/** Turns words of a language into parts of patterns for regular expressions with the flag `u`. */

const escape = (phrase: string): string => phrase.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&').replace(/\s+/g, '\\s+');
const WORD = '[\\p{L}\\p{Nd}]';

const alternatives = (phrases: readonly string[]): string =>
  phrases.map((phrase) => escape(phrase) + (/[\p{L}\p{Nd}]$/u.test(phrase) ? `(?!${WORD})` : '')).join('|');

const longestFirst = (phrases: readonly string[]): string[] =>
  [...new Set(phrases)].sort((a, b) => b.length - a.length);

/**
 * Any of the phrases, longest first, as whole words; a phrase of signs ("~") may stand beside anything. No phrase, no
 * match. Inside a word the pattern gives up at once, whatever its length: that keeps long texts fast. (A lookahead in
 * front would do the same for signs, but V8 11.3 compiles `(?=[\p{L}])` before alternatives wrongly: the first run of
 * the pattern finds them, later runs do not.)
 */
export function anyOf(...lists: readonly (readonly string[])[]): string {
  const phrases = longestFirst(lists.flat());
  const words = phrases.filter((phrase) => /^[\p{L}\p{Nd}]/u.test(phrase));
  const signs = phrases.filter((phrase) => !words.includes(phrase));
  const parts: string[] = [];
  if (words.length > 0) parts.push(`(?<!${WORD})(?:${alternatives(words)})`);
  if (signs.length > 0) parts.push(alternatives(signs));
  return parts.length === 0 ? '(?!)' : `(?:${parts.join('|')})`;
}

/** As `anyOf`, but a digit may stand right before a phrase: "70F", "50ish". */
export const anyAfterDigits = (phrases: readonly string[]): string =>
  phrases.length === 0 ? '(?!)' : `(?:${alternatives(longestFirst(phrases))})`;
