/** Turns words of a language into parts of patterns for regular expressions with the flag `u`. */

const escape = (phrase: string): string => phrase.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&').replace(/\s+/g, '\\s+');
const WORD = '[\\p{L}\\p{Nd}]';

/** Phrases in a row that end in a letter or digit share one look at what follows: each look is slow to compile. */
function alternatives(phrases: readonly string[]): string {
  const runs: { readonly endsInWord: boolean; readonly phrases: string[] }[] = [];
  for (const phrase of phrases) {
    const endsInWord = /[\p{L}\p{Nd}]$/u.test(phrase);
    const last = runs.at(-1);
    if (last?.endsInWord === endsInWord) last.phrases.push(escape(phrase));
    else runs.push({ endsInWord, phrases: [escape(phrase)] });
  }
  return runs
    .map(({ endsInWord, phrases }) => (endsInWord ? `(?:${phrases.join('|')})(?!${WORD})` : phrases.join('|')))
    .join('|');
}

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
