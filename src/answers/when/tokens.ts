/** Folded text cut into words, numbers and signs, and phrases of the words file found among them. */
import type { Words } from '../../../shared/words.js';
import type { Span } from '../reading.js';
import { slipsOf } from '../slips.js';
import { withVowels } from '../vowels.js';
import { lately, madeOnce } from '../text.js';

export interface Token {
  readonly kind: 'word' | 'number' | 'sign';
  /** As folded: "yesterday's", "15", ":". */
  readonly text: string;
  /** Without the ending of a possessive: "yesterday". */
  readonly stem: string;
  readonly span: Span;
  /** A blank or a line break stands before it, or nothing at all. */
  readonly spaced: boolean;
  /** It begins a line. */
  readonly first: boolean;
}

// Variation selectors and joiners belong to the emoji before them and say nothing of their own.
const PIECE = /(?<word>\p{L}+(?:'\p{L}+)*)|(?<number>\p{Nd}+)|[\ufe00-\ufe0f\u200d]|(?<sign>[^\s])/gu;

const cut = lately((folded): readonly Token[] => {
  const tokens: Token[] = [];
  let end = 0;
  for (const match of folded.matchAll(PIECE)) {
    const { word, number, sign } = match.groups ?? {};
    const text = word ?? number ?? sign;
    const before = folded.slice(end, match.index);
    if (text === undefined) {
      end = match.index + match[0].length;
      continue;
    }
    tokens.push({
      kind: word !== undefined ? 'word' : number !== undefined ? 'number' : 'sign',
      text,
      stem: text.replace(/'s$/, ''),
      span: [match.index, match.index + text.length],
      spaced: tokens.length === 0 || before !== '',
      first: tokens.length === 0 || before.includes('\n'),
    });
    end = match.index + text.length;
  }
  return tokens;
});

export const tokensOf = (folded: string): readonly Token[] => cut(folded, undefined);

/** The phrase that begins at a token, and the token after it; the longest wins. */
export type PhraseIndex<Value> = (
  tokens: readonly Token[],
  at: number,
) => { readonly value: Value; readonly next: number } | null;

/**
 * A table of phrases made ready to be met at a token. What is written together in the table must be written together
 * in the text: "2day" is not "2 day".
 */
export function phraseIndex<Value>(table: Iterable<readonly [phrase: string, value: Value]>): PhraseIndex<Value> {
  const byFirst = new Map<string, { parts: readonly Token[]; value: Value }[]>();
  for (const [phrase, value] of table) {
    const parts = tokensOf(phrase);
    const first = parts[0];
    if (!first) continue;
    const same = byFirst.get(first.text) ?? [];
    same.push({ parts, value });
    byFirst.set(first.text, same);
  }
  for (const same of byFirst.values()) same.sort((a, b) => b.parts.length - a.parts.length);

  const stands = (tokens: readonly Token[], at: number, parts: readonly Token[]): boolean =>
    parts.every((part, i) => {
      const token = tokens[at + i];
      if (!token || (token.text !== part.text && token.stem !== part.text)) return false;
      return i === 0 || part.spaced || !token.spaced;
    });

  return (tokens, at) => {
    const token = tokens[at];
    if (!token) return null;
    const keys = token.stem === token.text ? [token.text] : [token.text, token.stem];
    for (const key of keys) {
      for (const { parts, value } of byFirst.get(key) ?? []) {
        if (stands(tokens, at, parts)) return { value, next: at + parts.length };
      }
    }
    return null;
  };
}

export const phraseSet = (phrases: readonly string[]): PhraseIndex<true> =>
  phraseIndex(phrases.map((phrase) => [phrase, true] as const));

/** Number words up to ninety-nine, with their slips and without their vowels: "tweny", "thrty". */
const numberWords = madeOnce((numbers: Words['numbers']) => {
  const notSlips = new Set(numbers.notSlips);
  const withSlips = (known: Readonly<Record<string, number>>): ((typed: string) => number | undefined) => {
    const values = new Map(Object.entries(known));
    for (const [word, value] of Object.entries(known)) {
      for (const slip of slipsOf(word)) if (!values.has(slip) && !notSlips.has(slip)) values.set(slip, value);
    }
    const clipped = withVowels(Object.entries(known), notSlips);
    return (typed) => values.get(typed) ?? clipped(typed);
  };
  return { units: withSlips(numbers.units), tens: withSlips(numbers.tens) };
});

export interface SmallNumber {
  readonly value: number;
  readonly next: number;
  readonly written: 'digits' | 'words';
}

/** A whole number of up to four digits, or in words up to ninety-nine ("twenty one", "twenty-one"); no article. */
export function smallNumberAt(tokens: readonly Token[], at: number, numbers: Words['numbers']): SmallNumber | null {
  const token = tokens[at];
  if (!token) return null;
  if (token.kind === 'number') {
    return token.text.length > 4 ? null : { value: Number(token.text), next: at + 1, written: 'digits' };
  }
  const { units, tens: tensOf } = numberWords(numbers);
  const unit = units(token.text);
  if (unit !== undefined) return { value: unit, next: at + 1, written: 'words' };
  const tens = tensOf(token.text);
  if (tens === undefined) return null;
  // "twenty-one", but not "twelve forty - one o'clock"
  const hyphen = tokens[at + 1]?.text === '-' && !tokens[at + 1]?.spaced && !tokens[at + 2]?.spaced;
  const after = hyphen ? at + 2 : at + 1;
  const more = units(tokens[after]?.text ?? '');
  if (more !== undefined && more >= 1 && more <= 9) return { value: tens + more, next: after + 1, written: 'words' };
  return { value: tens, next: at + 1, written: 'words' };
}

/** From the first to the last of those tokens. */
export const spanOf = (tokens: readonly Token[], at: number, next: number): Span => [
  tokens[at]?.span[0] ?? 0,
  tokens[next - 1]?.span[1] ?? 0,
];

const SENTENCE_ENDS = new Set(['.', '!', '?', ';']);

/** True where a sentence or a line ends before that token. A point inside "p.m." or "5.3" ends none. */
export function sentenceEndsBefore(tokens: readonly Token[], at: number): boolean {
  const token = tokens[at];
  const before = tokens[at - 1];
  if (!token || !before || token.first) return true;
  return SENTENCE_ENDS.has(before.text) && token.spaced;
}
