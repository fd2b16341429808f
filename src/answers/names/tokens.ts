/** Cuts folded text into the words that names are made of. */
import type { Words } from '../../../shared/words.js';
import type { Span } from '../reading.js';

/**
 * What stands between a word and the one before it. A comma, a bracket that opens or a dash can be crossed by a name
 * turned round ("plum, American", "honeysuckle (Tatarian)", "clover - white", "clover: white"), a break never.
 */
export type Gap = 'none' | 'comma' | 'bracket' | 'dash' | 'break';

export interface Word {
  /** Small letters only: "jacob's" is "jacobs", "2" in "2-spotted" is "two". */
  readonly plain: string;
  /** Without the endings that differ between "two spot", "two-spotted" and "two spots". */
  readonly stem: string;
  readonly span: Span;
  readonly digits: boolean;
  /** "rose's" */
  readonly possessive: boolean;
  /** "imp." */
  readonly dotted: boolean;
  readonly gap: Gap;
}

const WORD = /\p{L}+(?:'\p{L}+)*|\d+/gu;
/** The same for plain text, which is nearly all of it: a third of the time. */
const PLAIN_WORD = /[a-z]+(?:'[a-z]+)*|\d+/g;
const PLAIN_TEXT = /^[ -~\s]*$/;
const BREAK = /[;:!?\n()[\]{}"|/=•…]|--|\s-\s/;
const BRACKET = /^\s*[([]\s*$/;
const DASH = /^\s*(?:--|:)\s*$|^\s+-\s+$/;
const COMMA = /,/;

/** Longest word that is looked at, in letters: the longest names of plants have under 25. */
const LONGEST = 40;

/** "blossoms" → "blossom", "beauties" → "beauty", "spotted" → "spot"; "iris" and "-us" stay whole. */
export function stemOf(plain: string): string {
  let stem = plain;
  if (stem.length > 4 && stem.endsWith('ies')) stem = `${stem.slice(0, -3)}y`;
  else if (stem.length > 4 && /(?:is|us|ss|sh|ch|x|z|o)es$/.test(stem)) stem = stem.slice(0, -2);
  else if (stem.length > 3 && /[^siu]s$/.test(stem)) stem = stem.slice(0, -1);
  if (stem.length > 5 && /[^e]ed$/.test(stem)) stem = stem.slice(0, -2).replace(/([bdgnpt])\1$/, '$1');
  return stem.replace('colour', 'color').replace('grey', 'gray');
}

function gapBetween(
  between: string,
  before: string,
  after: string,
  { joining, negating, parting }: Words['names'],
): Gap {
  if (BREAK.test(between)) return BRACKET.test(between) ? 'bracket' : DASH.test(between) ? 'dash' : 'break';
  // "B. imp", "mert. virg.", "St. John", "subsp. interior" go on; a longer word with a dot ends a sentence
  const isWhole = (before.length > 4 && !joining.includes(before)) || negating.includes(before);
  if (isWhole && /\.\s/.test(between)) return 'break';
  if (COMMA.test(between)) return 'comma';
  return parting.includes(`${before} ${after}`) ? 'break' : 'none';
}

export function wordsOf(folded: string, names: Words['names']): Word[] {
  const words: Word[] = [];
  let end = 0;
  let before = '';
  for (const match of folded.matchAll(PLAIN_TEXT.test(folded) ? PLAIN_WORD : WORD)) {
    const typed = match[0];
    const from = match.index;
    const letters = typed.replaceAll("'", '').slice(0, LONGEST);
    const plain = Object.hasOwn(names.saidAs, letters) ? names.saidAs[letters]! : letters; // "constructor" is a word too
    words.push({
      plain,
      stem: stemOf(plain),
      span: [from, from + typed.length],
      digits: /^\d/.test(typed),
      possessive: typed.endsWith("'s"),
      dotted: folded[from + typed.length] === '.',
      gap: words.length === 0 ? 'none' : gapBetween(folded.slice(end, from), before, letters, names),
    });
    end = from + typed.length;
    before = letters;
  }
  return words;
}

/** The word before or after, where nothing but a blank or hyphen is between. */
export const wordBefore = (words: readonly Word[], at: number): Word | undefined =>
  words[at]?.gap === 'none' ? words[at - 1] : undefined;
export const wordAfter = (words: readonly Word[], to: number): Word | undefined =>
  words[to]?.gap === 'none' ? words[to] : undefined;

/** How many words before each are such, the last before the end: two of them tell how many there are in a run. */
export function countedUpTo(words: readonly Word[], isSuch: (word: Word, at: number) => boolean): number[] {
  const upTo = [0];
  for (const [at, word] of words.entries()) upTo.push(upTo[at]! + (isSuch(word, at) ? 1 : 0));
  return upTo;
}
