/** Turns words of a language into parts of patterns. */

const escape = (phrase: string): string => phrase.replace(/[.*+?^${}()|[\]\\]/g, '\\$&').replace(/\s+/g, '\\s+');

const whole = (phrase: string): string => {
  const before = /^[\p{L}\p{Nd}]/u.test(phrase) ? '(?<![\\p{L}\\p{Nd}])' : '';
  const after = /[\p{L}\p{Nd}]$/u.test(phrase) ? '(?![\\p{L}\\p{Nd}])' : '';
  return `${before}${escape(phrase)}${after}`;
};

/**
 * A part of a pattern (flag `u`) that matches any of the phrases, longest first, as whole words; a phrase of signs
 * ("~") may stand beside anything. No phrase, no match.
 */
export const anyOf = (...lists: readonly (readonly string[])[]): string => {
  const phrases = [...new Set(lists.flat())].sort((a, b) => b.length - a.length);
  return phrases.length === 0 ? '(?!)' : `(?:${phrases.map(whole).join('|')})`;
};

/** As `anyOf`, but a digit may stand right beside a phrase: "70F", "50ish". */
export const anyAfterDigits = (phrases: readonly string[]): string => {
  const longestFirst = [...new Set(phrases)].sort((a, b) => b.length - a.length);
  const ends = (phrase: string): string => (/[\p{L}\p{Nd}]$/u.test(phrase) ? '(?![\\p{L}\\p{Nd}])' : '');
  return longestFirst.length === 0
    ? '(?!)'
    : `(?:${longestFirst.map((phrase) => escape(phrase) + ends(phrase)).join('|')})`;
};
