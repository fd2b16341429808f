/**
 * Finds numbers in running text, in digits or words: "1,200", "7.5", "2,5", "1.2k", "twenty-five", "a couple hundred",
 * "3 dozen", "two and a half". Fractions by themselves ("half an acre") are found by `findAmounts` only: in most
 * answers "half and half" and "3/4" are no numbers.
 */
import type { Words } from '../../shared/words.js';
import type { Span } from './reading.js';
import { slipsOf } from './slips.js';
import { lately, madeOnce } from './text.js';

export interface NumberFound {
  readonly value: number;
  readonly span: Span;
  readonly written: 'digits' | 'words';
  /** Digits after the point; 0 for whole numbers. */
  readonly decimals: number;
}

const SIGNS_OF_FRACTIONS: Readonly<Record<string, number>> = {
  '½': 1 / 2,
  '⅓': 1 / 3,
  '⅔': 2 / 3,
  '¼': 1 / 4,
  '¾': 3 / 4,
  '⅛': 1 / 8,
  '⅜': 3 / 8,
  '⅝': 5 / 8,
  '⅞': 7 / 8,
};

/** Not inside a word or a number; "x2" and "4x6" count, "B2B" does not. */
const STARTS = String.raw`(?<!\p{Nd}|\p{Nd}[.,]|\p{L}\p{L}|(?!x)\p{L})`;
/** Not the beginning of an ordinal ("2nd"), a decade ("70s") or a list ("3,4,5"); a unit may stick to it ("70F"). */
const ENDS = String.raw`(?!\p{Nd}|,\d|(?:st|nd|rd|th|s)(?!\p{L}))`;
/** "1,200" · "70" and what a thumb makes of it, "7O" · both with decimals, "2,5" too. */
const WHOLE = String.raw`\d{1,3}(?:,\d{3})+(?!\d)|\d[\do]*(?![\p{L}\p{Nd}])|\d+`;
const DECIMALS = String.raw`\.\d+|,\d{1,2}(?![\d,])`;
/** "1/2", "3/4", "2/3"; the denominators people use, so that dates and oktas stay out. */
const SLASHED = String.raw`(?:1/(?:2|5|6|1[026]|20)|[12]/3|[13]/4|[1357]/8)(?![\d/])`;

/** A number in digits, or a word; everything else is skipped. */
const TOKEN = new RegExp(
  [
    `(?<slashed>${STARTS}${SLASHED}${ENDS})`,
    `(?<digits>${STARTS}(?:(?:${WHOLE})(?:${DECIMALS})?|(?<!\\.)\\.\\d+))(?<thousand>k(?!\\p{L}))?${ENDS}`,
    `(?<sign>[${Object.keys(SIGNS_OF_FRACTIONS).join('')}])`,
    '(?<word>\\p{L}+)',
  ].join('|'),
  'gu',
);

interface Token {
  readonly kind:
    'digits' | 'unit' | 'tens' | 'scale' | 'group' | 'many-groups' | 'fraction' | 'article' | 'join' | 'of' | 'other';
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
  // "fortyfive"
  for (const [tens, value] of Object.entries(numbers.tens)) {
    for (const [unit, more] of Object.entries(numbers.units)) {
      if (more >= 1 && more <= 9) kinds.set(tens + unit, { kind: 'unit', value: value + more });
    }
  }
  all('scale', numbers.scales);
  all('group', numbers.groups);
  all('many-groups', numbers.manyGroups);
  all('fraction', numbers.fractions);
  for (const [word, meant] of [...kinds]) {
    for (const slip of slipsOf(word)) if (!kinds.has(slip) && !numbers.notSlips.includes(slip)) kinds.set(slip, meant);
  }
  for (const word of numbers.articles) kinds.set(word, { kind: 'article', value: 1 });
  for (const word of numbers.joins) kinds.set(word, { kind: 'join', value: 0 });
  for (const word of numbers.groupJoins) kinds.set(word, { kind: 'of', value: 0 });
  return kinds;
});

/** The number of "fiftyish" without its ending. */
function withoutEnding(word: string, kinds: ReturnType<typeof kindsOfWords>, { endings }: Words['numbers']): string {
  const ending = kinds.has(word) ? undefined : endings.find((one) => word.length > one.length && word.endsWith(one));
  const number = ending === undefined ? word : word.slice(0, -ending.length);
  return NUMBERS.includes(kinds.get(number)?.kind ?? 'other') ? number : word;
}
const NUMBERS: readonly Token['kind'][] = ['unit', 'tens', 'scale', 'group'];

const quotient = (slashed: string): number => {
  const [over, under] = slashed.split('/').map(Number);
  return (over ?? 0) / (under ?? 1);
};

const tokensOf = lately((folded, numbers: Words['numbers']): readonly Token[] => {
  const kinds = kindsOfWords(numbers);
  const tokens: Token[] = [];
  for (const match of folded.matchAll(TOKEN)) {
    const typed = match[0];
    const { slashed, digits, thousand, sign, word } = match.groups ?? {};
    const span: Span = [match.index, match.index + typed.length];
    if (word !== undefined) {
      const number = withoutEnding(word, kinds, numbers);
      const known = kinds.get(number);
      const shorter: Span = [match.index, match.index + number.length];
      tokens.push({ kind: known?.kind ?? 'other', value: known?.value ?? 0, decimals: 0, span: shorter });
    } else if (slashed !== undefined) {
      tokens.push({ kind: 'fraction', value: quotient(slashed), decimals: 0, span });
    } else if (sign !== undefined) {
      tokens.push({ kind: 'fraction', value: SIGNS_OF_FRACTIONS[sign] ?? 0, decimals: 0, span });
    } else if (digits !== undefined) {
      const grouped = /^\d{1,3}(?:,\d{3})+/.test(digits) ? digits.replaceAll(',', '') : digits.replace(',', '.');
      const plain = grouped.replaceAll('o', '0');
      const value = Number(plain) * (thousand === undefined ? 1 : 1000);
      if (Number.isFinite(value)) {
        tokens.push({ kind: 'digits', value, decimals: plain.split('.')[1]?.length ?? 0, span });
      }
    }
  }
  return tokens;
});

/** True where only blanks or one hyphen stand between two tokens, or nothing ("2½"): they may be one number. */
const together = (folded: string, left: Token, right: Token): boolean =>
  /^(?:\s*|-)$/.test(folded.slice(left.span[1], right.span[0]));

/** True where a hyphen ties the token to a word: the "half" of "half-black" is no fraction. */
const tied = (folded: string, token: Token): boolean => /^-\p{L}/u.test(folded.slice(token.span[1], token.span[1] + 2));

interface Found {
  readonly found: NumberFound;
  readonly next: number;
}

/** "half a dozen", "half dozen", "half a hundred" at `tokens[at]`. */
function partOfGroupAt(folded: string, tokens: readonly Token[], at: number): Found | null {
  const fraction = tokens[at];
  // halves and quarters only: "the third dozen" is no four
  if (fraction?.kind !== 'fraction' || !Number.isInteger(fraction.value * 4)) return null;
  const skip = tokens[at + 1]?.kind === 'article' ? 2 : 1;
  const group = tokens[at + skip];
  const between = tokens[at + skip - 1];
  if (!group || !between || !together(folded, fraction, tokens[at + 1]!) || !together(folded, between, group))
    return null;
  if (group.kind !== 'group' && group.kind !== 'scale') return null;
  const value = fraction.value * group.value;
  return {
    found: { value, span: [fraction.span[0], group.span[1]], written: 'words', decimals: 0 },
    next: at + skip + 1,
  };
}

/** The fraction that goes on a number that ends before `tokens[next]`: " ½", " 1/2", " and a half". */
function fractionAfter(
  folded: string,
  tokens: readonly Token[],
  last: Token,
  next: number,
): { token: Token; next: number } | null {
  let before = last;
  let at = next;
  let joined = false;
  for (const kind of ['join', 'article'] as const) {
    const token = tokens[at];
    if (token?.kind === kind && together(folded, before, token)) {
      joined ||= kind === 'join';
      before = token;
      at++;
    }
  }
  const token = tokens[at];
  if (token?.kind !== 'fraction' || !together(folded, before, token) || tied(folded, token)) return null;
  const written = /^\p{L}/u.test(folded.slice(token.span[0]));
  // "two half acres" is no two and a half
  return written === joined ? { token, next: at + 1 } : null;
}

/** Reads the one number that begins at `tokens[at]`; null where none does. */
function numberAt(folded: string, tokens: readonly Token[], at: number): Found | null {
  const first = tokens[at];
  if (!first || first.kind === 'other' || first.kind === 'join' || first.kind === 'of') return null;
  if (first.kind === 'fraction') return partOfGroupAt(folded, tokens, at);
  let thousands = 0;
  let value: number | null = null;
  let last: Token['kind'] | null = null;
  let lastToken = first;
  let next = at;
  for (; next < tokens.length; next++) {
    let token = tokens[next]!;
    if (next > at && !together(folded, lastToken, token)) break;
    const following = tokens[next + 1];
    if (token.kind === 'join' || token.kind === 'of') {
      // "two hundred and five" · "a couple of dozen"
      const goesOn =
        token.kind === 'join'
          ? last === 'scale' && (following?.kind === 'unit' || following?.kind === 'tens')
          : last === 'group' && (following?.kind === 'scale' || following?.kind === 'group');
      if (!following || !goesOn || !together(folded, token, following)) break;
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
    } else if (token.kind === 'group' || token.kind === 'many-groups') {
      if (token.kind === 'many-groups' && value === null) break;
      value = (value ?? 1) * token.value;
    } else break;
    last = token.kind;
    lastToken = token;
  }
  if (value === null) return null;
  if (last === 'digits' || last === 'unit' || last === 'tens' || last === 'group') {
    const fraction = fractionAfter(folded, tokens, lastToken, next);
    if (fraction) {
      // "a dozen and a half": half of the dozen, not half a flower
      value += fraction.token.value * (last === 'group' ? lastToken.value : 1);
      lastToken = fraction.token;
      next = fraction.next;
      const group = tokens[next];
      // "two and a half dozen"
      if (group && (group.kind === 'group' || group.kind === 'scale') && together(folded, lastToken, group)) {
        value *= group.value;
        lastToken = group;
        next++;
      }
    }
  }
  const written = first.kind === 'digits' ? 'digits' : 'words';
  return {
    found: { value: thousands + value, span: [first.span[0], lastToken.span[1]], written, decimals: first.decimals },
    next,
  };
}

/** "half", "a quarter", "three quarters", "½", "1/2" at `tokens[at]`: a fraction by itself. */
function fractionAt(folded: string, tokens: readonly Token[], at: number): Found | null {
  const first = tokens[at];
  const second = tokens[at + 1];
  if (!first) return null;
  if (first.kind === 'fraction') {
    return { found: { value: first.value, span: first.span, written: 'words', decimals: 0 }, next: at + 1 };
  }
  const counts = first.kind === 'article' || first.kind === 'unit' || (first.kind === 'digits' && first.decimals === 0);
  const written = second?.kind === 'fraction' && /^\p{L}/u.test(folded.slice(second.span[0]));
  if (!second || !counts || !written || !together(folded, first, second)) return null;
  return {
    found: { value: first.value * second.value, span: [first.span[0], second.span[1]], written: 'words', decimals: 0 },
    next: at + 2,
  };
}

type FindAt = (folded: string, tokens: readonly Token[], at: number) => Found | null;

const findAll = (findAt: FindAt) =>
  lately((folded: string, words: Words): readonly NumberFound[] => {
    const tokens = tokensOf(folded, words.numbers);
    const found: NumberFound[] = [];
    for (let at = 0; at < tokens.length;) {
      const number = findAt(folded, tokens, at);
      if (number) found.push(number.found);
      at = number ? number.next : at + 1;
    }
    return found;
  });

/** All numbers, left to right. "one fifteen" is two numbers; "one hundred fifteen" is one; a bare "a" is none. */
export const findNumbers = findAll(numberAt);

/** Numbers, and fractions by themselves: "half", "three quarters", "a tenth", "1/2". What follows decides if one was meant. */
export const findAmounts = findAll((text, tokens, at) => fractionAt(text, tokens, at) ?? numberAt(text, tokens, at));
