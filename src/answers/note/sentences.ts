/** The sentences and lines of a note. */
import type { Span } from '../reading.js';

/** Ends a sentence: not the point of "2.5", "B.imp" or "B. imp". */
const END = /(?:(?<!(?<![a-z])b)\.|[!?;])(?=\s|$)|\n/g;

/** Left to right; each with the sign that ends it. */
export function sentencesIn(folded: string): Span[] {
  const sentences: Span[] = [];
  let from = 0;
  for (const { index } of folded.matchAll(END)) {
    sentences.push([from, index + 1]);
    from = index + 1;
  }
  if (from < folded.length) sentences.push([from, folded.length]);
  return sentences;
}

/** The blocks between empty lines. */
export function paragraphsIn(folded: string): Span[] {
  const paragraphs: Span[] = [];
  let from = 0;
  for (const { index, 0: gap } of folded.matchAll(/\n[ \t]*\n\s*/g)) {
    paragraphs.push([from, index]);
    from = index + gap.length;
  }
  paragraphs.push([from, folded.length]);
  return paragraphs;
}

export const isWithin = (span: Span, [from, to]: Span): boolean => span[0] >= from && span[1] <= to;
