/** A text cut into words and clauses, as the readers of temperature, sky and wind look at it. */
import type { Words } from '../../../shared/words.js';
import type { Span } from '../reading.js';
import { fold, lately, madeOnce } from '../text.js';

export interface Token {
  /** Small letters, no apostrophes, and one word for several that mean the same: "wasn't" is "not". */
  readonly word: string;
  /** The same as it stands in the text, but for apostrophes. */
  readonly typed: string;
  readonly span: Span;
  /** Position in `clauses`. */
  readonly clause: number;
  /** May stand between the words of a phrase without changing it: "a", "the", "was". */
  readonly skipped: boolean;
}

export interface Clause {
  /** From its first word to the first of the next clause. */
  readonly span: Span;
  /** Its tokens: `[from, to)`. */
  readonly from: number;
  readonly to: number;
  /** What stands between it and the clause before. */
  readonly gap: string;
}

export interface Spoken {
  readonly folded: string;
  readonly tokens: readonly Token[];
  readonly clauses: readonly Clause[];
}

/** A word, "w/", "w/o", or a picture. */
const TOKEN = /(?<!\p{L})w\/(?:out|o)?(?=\s|\p{L})|[\p{L}\p{N}]+(?:'\p{L}+)*|\p{Extended_Pictographic}/gu;
/** Ends a clause. A hyphen only between blanks; a point, comma or colon not inside a number (seen to by the caller). */
const BREAK = /[,;:!?\n()[\]|•·…→=>]|\.|\s-+(?:\s|$)|^-+\s/u;

/** "70º", "70˚", "70⁰", "70o F": typed for a degree sign; they would fold to a letter or a digit. */
const LIKE_DEGREE = /(?<=\p{Nd}\s?)[º˚⁰ᵒ∘]|(?<=(?<![\p{Nd}oO.])\p{Nd}{2})[oO](?=\s?[fFcC]?(?![\p{L}\p{Nd}'’]))/gu;

const sameWord = madeOnce((weather: Words['weather']) => new Map(Object.entries(weather.same)));
const skippedWords = madeOnce((weather: Words['weather']) => new Set([...weather.skipped, ...weather.directions]));
const abbreviatedWords = madeOnce((weather: Words['weather']) => new Set(weather.abbreviated));
const breakingWords = madeOnce((weather: Words['weather']) => new Set(weather.breaks));

/** Folded like `fold`, with every sign for degrees made "°". Same length as `text`. */
export const foldDegrees = (text: string): string => fold(text.replace(LIKE_DEGREE, '°'));

const cut = lately((text, weather: Words['weather']): Spoken => {
  const folded = foldDegrees(text);
  const same = sameWord(weather);
  const skipped = skippedWords(weather);
  const breaking = breakingWords(weather);
  const abbreviated = abbreviatedWords(weather);
  const tokens: Token[] = [];
  const clauses: { span: [number, number]; from: number; to: number; gap: string }[] = [];
  let end = 0;
  for (const match of folded.matchAll(TOKEN)) {
    const plain = match[0].replaceAll("'", '');
    const word = same.get(plain) ?? plain;
    const gap = folded.slice(end, match.index);
    const shortened = /^\./.test(gap) && abbreviated.has(tokens.at(-1)?.typed ?? '');
    const insideNumber = /^[.,:]$/.test(gap) && /\d/.test(folded[end - 1] ?? '') && /\d/.test(plain[0] ?? '');
    if (clauses.length === 0 || (BREAK.test(gap) && !insideNumber && !shortened) || breaking.has(plain)) {
      const last = clauses.at(-1);
      if (last) last.span[1] = match.index;
      clauses.push({ span: [match.index, folded.length], from: tokens.length, to: tokens.length, gap });
    }
    end = match.index + match[0].length;
    const clause = clauses.length - 1;
    // "very very windy" is "very windy"
    const again = tokens.at(-1)?.word === word && tokens.at(-1)?.clause === clause && !/^\d/.test(word);
    tokens.push({ word, typed: plain, span: [match.index, end], clause, skipped: again || skipped.has(word) });
    clauses[clause]!.to = tokens.length;
  }
  return { folded, tokens, clauses };
});

/** Cuts a text up. Linear in its length. */
export const spoken = (text: string, { weather }: Words): Spoken => cut(text, weather);

/** The first token that ends behind the position; as many as there are tokens where none does. */
export function tokenAt({ tokens }: Spoken, position: number): number {
  let low = 0;
  let high = tokens.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (tokens[middle]!.span[1] > position) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** The clause at a position of the text: of the words there, or of those before. */
export function clauseAt(text: Spoken, position: number): number {
  const token = text.tokens[tokenAt(text, position)];
  if (token && token.span[0] <= position) return token.clause;
  const clause = token?.clause ?? text.clauses.length - 1;
  return Math.max(0, token && text.clauses[clause]!.span[0] <= position ? clause : token ? clause - 1 : clause);
}
