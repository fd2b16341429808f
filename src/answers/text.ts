/**
 * Text made plain without moving it: small letters, straight quotes, plain spaces and hyphens, no accents. Every
 * position in the folded text is the same position in the text as typed, so that `used` can be told.
 */
import type { Span } from './reading.js';

const PLAIN: Readonly<Record<string, string>> = {
  '‘': "'",
  '’': "'",
  ʼ: "'",
  '′': "'",
  '`': "'",
  '´': "'",
  '“': '"',
  '”': '"',
  '″': '"',
  '‐': '-',
  '‑': '-',
  '‒': '-',
  '–': '-',
  '—': '-',
  '−': '-',
  '×': 'x',
  '\u00a0': ' ',
  '\u2009': ' ',
  '\u202f': ' ',
  '\u3000': ' ',
};

/** Small letters of these are already plain: all of ASCII but the grave accent, which stands for an apostrophe. */
const PLAIN_ONLY = /^[\x00-\x5f\x61-\x7f]*$/;

/** Same length as `text`, code unit by code unit. */
export function fold(text: string): string {
  if (PLAIN_ONLY.test(text)) return text.toLowerCase();
  let folded = '';
  for (const unit of text.split('')) {
    const plain = PLAIN[unit];
    if (plain !== undefined) {
      folded += plain;
      continue;
    }
    if (unit < '\u0080') {
      folded += unit.toLowerCase();
      continue;
    }
    const bare = unit.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();
    folded += bare.length === 1 ? bare : unit;
  }
  return folded;
}

/** A phrase table made ready to search: the longest phrase wins, and only whole words count. */
export interface PhraseFinder<Value> {
  (folded: string): readonly { readonly value: Value; readonly phrase: string; readonly span: Span }[];
}

const escape = (phrase: string): string => phrase.replace(/[.*+?^${}()|[\]\\]/g, '\\$&').replace(/\s+/g, '\\s+');
const startsWithWord = /^[\p{L}\p{N}]/u;
const endsWithWord = /[\p{L}\p{N}]$/u;

/**
 * Finds any of the phrases, left to right, none overlapping. Linear in the text for a fixed table. Phrases of signs
 * ("~", "👍") are found anywhere; phrases of letters only as whole words; a blank stands for any white space.
 */
export function phraseFinder<Value>(table: Iterable<readonly [phrase: string, value: Value]>): PhraseFinder<Value> {
  const values = new Map<string, Value>();
  for (const [phrase, value] of table) values.set(phrase.replace(/\s+/g, ' '), value);
  const longestFirst = [...values.keys()].sort((a, b) => b.length - a.length);
  if (longestFirst.length === 0) return () => [];
  // phrases in a row with the same kinds of ends share their look around: each look is slow to compile
  const runs: { ends: string; phrases: string[] }[] = [];
  for (const phrase of longestFirst) {
    const ends = `${startsWithWord.test(phrase)} ${endsWithWord.test(phrase)}`;
    const last = runs.at(-1);
    if (last?.ends === ends) last.phrases.push(phrase);
    else runs.push({ ends, phrases: [phrase] });
  }
  const parts = runs.map(({ phrases }) => {
    const before = startsWithWord.test(phrases[0]!) ? '(?<![\\p{L}\\p{N}])' : '';
    const after = endsWithWord.test(phrases[0]!) ? '(?![\\p{L}\\p{N}])' : '';
    return `${before}(?:${phrases.map(escape).join('|')})${after}`;
  });
  const pattern = new RegExp(parts.join('|'), 'gu');
  return (folded) => {
    const found: { value: Value; phrase: string; span: Span }[] = [];
    for (const match of folded.matchAll(pattern)) {
      const phrase = match[0].replace(/\s+/g, ' ');
      const value = values.get(phrase);
      if (value !== undefined) found.push({ value, phrase, span: [match.index, match.index + match[0].length] });
    }
    return found;
  };
}

/** Keeps what was made from a section of the words: made once for each loaded language, whoever asks. */
export function madeOnce<Source extends object, Made>(make: (source: Source) => Made): (source: Source) => Made {
  const made = new WeakMap<Source, Made>();
  return (source) => {
    let kept = made.get(source);
    if (kept === undefined) {
      kept = make(source);
      made.set(source, kept);
    }
    return kept;
  };
}

/** Joins spans that touch or overlap; sorted. */
export function joinSpans(spans: readonly Span[]): Span[] {
  const sorted = [...spans].sort((a, b) => a[0] - b[0]);
  const joined: Span[] = [];
  for (const span of sorted) {
    const last = joined.at(-1);
    if (last && span[0] <= last[1]) joined[joined.length - 1] = [last[0], Math.max(last[1], span[1])];
    else joined.push(span);
  }
  return joined;
}

/** The text with those spans blanked out, same length: what one reader used, the next must not see. */
export function blank(text: string, spans: readonly Span[]): string {
  let out = '';
  let at = 0;
  for (const [from, to] of joinSpans(spans)) {
    out += text.slice(at, from) + ' '.repeat(to - from);
    at = to;
  }
  return out + text.slice(at);
}

const finderOfWords = madeOnce((words: readonly string[]) => phraseFinder(words.map((word) => [word, word] as const)));

/** Whether any of the words stands in the text, as whole words. */
export const saysAnyOf = (text: string, words: readonly string[]): boolean =>
  finderOfWords(words)(fold(text)).length > 0;
