/** Mends slips of the thumb in the words of yes and no: "looks goof", "corect", "definately", "prfct". */
import { distance } from 'fastest-levenshtein';
import type { Words } from '../../../shared/words.js';
import { withVowels } from '../vowels.js';

/** Shorter words are too near to others: "fine" to "five", "good" to "food". */
const SHORTEST = 5;

export interface Respelled {
  readonly text: string;
  /** The position in the text as typed of a position in the mended one. */
  readonly typedAt: (position: number) => number;
}

const asTyped = (text: string): Respelled => ({ text, typedAt: (position) => position });

export function speller(yesNo: Words['yesNo']): (folded: string) => Respelled {
  const { assessing, yes, yesAlone, no, slipsFrom, notSlips } = yesNo;
  const phrases = [...yes, ...yesAlone, ...no, ...assessing.good, ...assessing.bad, ...slipsFrom];
  const known = new Set(phrases.flatMap((phrase) => phrase.split(' ')).filter((word) => /^\p{L}+$/u.test(word)));
  // all other words that are understood mean themselves: "night" is not "right"
  const others = new Set([notSlips, yesNo.changes, yesNo.nothings].flat().flatMap((phrase) => phrase.split(' ')));
  const targets = [...known].filter((word) => word.length >= SHORTEST);
  const clipped = withVowels(
    [...known].map((word) => [word, word] as const),
    others,
  );
  const meant = (word: string): string => {
    if (known.has(word) || others.has(word)) return word;
    const whole = clipped(word);
    if (whole !== undefined) return whole;
    if (word.length < SHORTEST - 1) return word;
    const near = targets.filter((target) => target[0] === word[0] && distance(target, word) === 1);
    return near.length === 1 ? near[0]! : word;
  };
  return (folded) => {
    const edits: { from: number; to: number; word: string }[] = [];
    for (const match of folded.matchAll(/(?<![\p{L}'])\p{L}{3,14}(?![\p{L}'])/gu)) {
      const word = meant(match[0]);
      if (word !== match[0]) edits.push({ from: match.index, to: match.index + match[0].length, word });
    }
    if (edits.length === 0) return asTyped(folded);
    let text = '';
    let last = 0;
    const typed: number[] = [];
    const copy = (until: number): void => {
      for (; last < until; last++) {
        text += folded[last];
        typed.push(last);
      }
    };
    for (const { from, to, word } of edits) {
      copy(from);
      text += word;
      for (let letter = 0; letter < word.length; letter++) typed.push(Math.min(from + letter, to));
      last = to;
    }
    copy(folded.length);
    return { text, typedAt: (position) => typed[position] ?? folded.length };
  };
}
