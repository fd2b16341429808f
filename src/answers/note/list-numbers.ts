/** Numbers that only count the lines of a list: "1. April 27", "2) 3:30 to 3:45". */
import type { Span } from '../reading.js';

const NUMBERED = /(?<=^|\n)[ \t]*(?<number>\d{1,2})[.)][ \t]+(?=\S)/g;

/** Their spans, with the blanks around them; a single number that nothing counts on from is none. */
export function listNumbersIn(text: string): Span[] {
  const numbered = [...text.matchAll(NUMBERED)].map((match) => ({
    number: Number(match.groups?.['number']),
    span: [match.index, match.index + match[0].length] as const,
  }));
  return numbered
    .filter(({ number }, at) => numbered[at - 1]?.number === number - 1 || numbered[at + 1]?.number === number + 1)
    .map(({ span }) => span);
}
