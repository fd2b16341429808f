/**
 * Phrases found by their first word: a pattern of hundreds of alternatives takes longer to compile than a season of
 * answers takes to read.
 */
const WORD = /[\p{L}\p{Nd}]/u;
const WORD_AT = /[\p{L}\p{Nd}]+/uy;
const SPACE = /\s/u;

export interface PhraseSet {
  /** The longest phrase that stands there as whole words, and how many characters it takes; null for none. */
  at(folded: string, position: number): { readonly phrase: string; readonly length: number } | null;
  /** Where the first of them stands; null for none. */
  in(folded: string): readonly [from: number, to: number] | null;
}

/** How many characters the phrase takes there, a blank being any white space; 0 where it does not stand there. */
function lengthAt(folded: string, position: number, phrase: string): number {
  let at = position;
  for (const character of phrase) {
    if (character !== ' ') {
      if (!folded.startsWith(character, at)) return 0;
      at += character.length;
      continue;
    }
    const from = at;
    while (at < folded.length && SPACE.test(folded[at]!)) at += 1;
    if (at === from) return 0;
  }
  return WORD.test(phrase.slice(-1)) && WORD.test(folded[at] ?? '') ? 0 : at - position;
}

export function phraseSet(...lists: readonly (readonly string[])[]): PhraseSet {
  const byBeginning = new Map<string, string[]>();
  const beginningOf = (text: string, position: number): string => {
    WORD_AT.lastIndex = position;
    return WORD_AT.exec(text)?.[0] ?? String.fromCodePoint(text.codePointAt(position) ?? 0);
  };
  for (const phrase of new Set(lists.flat())) {
    const beginning = beginningOf(phrase, 0);
    byBeginning.set(beginning, [...(byBeginning.get(beginning) ?? []), phrase]);
  }
  for (const phrases of byBeginning.values()) phrases.sort((a, b) => b.length - a.length);
  const at: PhraseSet['at'] = (folded, position) => {
    if (position >= folded.length) return null;
    if (position > 0 && WORD.test(folded[position]!) && WORD.test(folded[position - 1]!)) return null;
    for (const phrase of byBeginning.get(beginningOf(folded, position)) ?? []) {
      const length = lengthAt(folded, position, phrase);
      if (length > 0) return { phrase, length };
    }
    return null;
  };
  return {
    at,
    in: (folded) => {
      for (let position = 0; position < folded.length; position++) {
        const found = at(folded, position);
        if (found) return [position, position + found.length];
      }
      return null;
    },
  };
}
