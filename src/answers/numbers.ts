/** Finds numbers in running text, in digits or words: "1,200", "7.5", "twenty-five", "a couple hundred", "3 dozen". */
import type { Words } from '../../shared/words.js';
import type { Span } from './reading.js';
import { madeOnce } from './text.js';

export interface NumberFound {
  readonly value: number;
  readonly span: Span;
  readonly written: 'digits' | 'words';
  /** Digits after the point; 0 for whole numbers. */
  readonly decimals: number;
}

/** A number in digits, or a word; everything else is skipped. */
const TOKEN =
  /(?<digits>(?<![\p{L}\p{N}.,])(?:\d{1,3}(?:,\d{3})+(?!\d)|\d[\do]*)?(?:\.\d+)?(?<thousand>k)?(?![\p{L}\p{N}]))|(?<word>\p{L}+)/gu;

interface Token {
  readonly kind: 'digits' | 'unit' | 'tens' | 'scale' | 'group' | 'article' | 'join' | 'other';
  readonly value: number;
  readonly decimals: number;
  readonly span: Span;
}

const kindsOfWords = madeOnce((numbers: Words['numbers']) => {
  const kinds = new Map<string, { kind: Token['kind']; value: number }>();
  const all = (kind: Token['kind'], words: Readonly<Record<string, number>>): void => {
    for (const [word, value] of Object.entries(words)) kinds.set(word, { kind, value });
  };
  all('unit', numbers.units);
  all('tens', numbers.tens);
  all('scale', numbers.scales);
  all('group', numbers.groups);
  for (const word of numbers.articles) kinds.set(word, { kind: 'article', value: 1 });
  for (const word of numbers.joins) kinds.set(word, { kind: 'join', value: 0 });
  return kinds;
});

function tokensOf(folded: string, numbers: Words['numbers']): Token[] {
  const kinds = kindsOfWords(numbers);
  const tokens: Token[] = [];
  for (const match of folded.matchAll(TOKEN)) {
    const typed = match[0];
    if (typed === '') continue;
    const span: Span = [match.index, match.index + typed.length];
    if (match.groups?.['word'] !== undefined) {
      const known = kinds.get(typed);
      tokens.push({ kind: known?.kind ?? 'other', value: known?.value ?? 0, decimals: 0, span });
      continue;
    }
    const thousand = match.groups?.['thousand'] !== undefined;
    // "7O" is what a thumb makes of 70
    const plain = typed.replace(/k$/, '').replaceAll(',', '').replaceAll('o', '0');
    const value = Number(plain) * (thousand ? 1000 : 1);
    if (Number.isFinite(value)) {
      tokens.push({ kind: 'digits', value, decimals: plain.split('.')[1]?.length ?? 0, span });
    }
  }
  return tokens;
}

/** True where only blanks or one hyphen stand between two tokens: they may be one number. */
const together = (folded: string, left: Token, right: Token): boolean => /^(?:\s+|-)$/.test(folded.slice(left.span[1], right.span[0]));

/** Reads the one number that begins at `tokens[at]`; null where none does. */
function numberAt(folded: string, tokens: readonly Token[], at: number): { found: NumberFound; next: number } | null {
  const first = tokens[at];
  if (!first || first.kind === 'other' || first.kind === 'join') return null;
  let thousands = 0;
  let value: number | null = null;
  let last: Token['kind'] | null = null;
  let lastToken = first;
  let next = at;
  for (; next < tokens.length; next++) {
    let token = tokens[next]!;
    if (next > at && !together(folded, lastToken, token)) break;
    const following = tokens[next + 1];
    if (token.kind === 'join') {
      const goesOn = following && (following.kind === 'unit' || following.kind === 'tens');
      if (last !== 'scale' || !goesOn || !together(folded, token, following)) break;
      lastToken = token;
      token = following;
      next++;
    }
    if (token.kind === 'article') {
      const multiplies = following && (following.kind === 'scale' || following.kind === 'group');
      if (value !== null || !multiplies || !together(folded, token, following)) break;
    } else if (token.kind === 'digits') {
      if (value !== null) break;
      value = token.value;
    } else if (token.kind === 'unit') {
      if (value === null) value = token.value;
      else if (last === 'tens' && token.value >= 1 && token.value <= 9) value += token.value;
      else if (last === 'scale') value += token.value;
      else break;
    } else if (token.kind === 'tens') {
      if (value === null) value = token.value;
      else if (last === 'scale') value += token.value;
      else break;
    } else if (token.kind === 'scale') {
      value = (value ?? 1) * token.value;
      if (token.value >= 1000) {
        thousands += value;
        value = 0;
      }
    } else if (token.kind === 'group') {
      if (value !== null && last !== 'digits' && last !== 'unit') break;
      value = (value ?? 1) * token.value;
    } else break;
    last = token.kind;
    lastToken = token;
  }
  if (value === null || next === at) return null;
  const written = first.kind === 'digits' ? 'digits' : 'words';
  return {
    found: { value: thousands + value, span: [first.span[0], lastToken.span[1]], written, decimals: first.decimals },
    next,
  };
}

/** All numbers, left to right. "one fifteen" is two numbers; "one hundred fifteen" is one; a bare "a" is none. */
export function findNumbers(folded: string, words: Words): NumberFound[] {
  const tokens = tokensOf(folded, words.numbers);
  const found: NumberFound[] = [];
  for (let at = 0; at < tokens.length; ) {
    const number = numberAt(folded, tokens, at);
    if (number) found.push(number.found);
    at = number ? number.next : at + 1;
  }
  return found;
}
