/** Numbers in an answer that count nothing: clock times, dates, phone numbers. Blanked before counting. */
import { blank } from '../text.js';
import type { Span } from '../reading.js';

const HALF_OF_DAY = String.raw`(?:\s*[ap]\.?\s?m\b\.?)`;
/** "3:15", "3:15 pm", "15h20" */
const CLOCK = String.raw`\d{1,2}[:h]\d{2}(?!\d)${HALF_OF_DAY}?`;
/** "3 pm" */
const HOUR = String.raw`\d{1,2}(?:\.\d{2})?${HALF_OF_DAY}`;
/** "3-3:15", "3 to 3:15 pm" */
const CLOCK_SPAN = String.raw`(?<![\d.])\d{1,2}(?:[:.]\d{2})?\s*(?:-|to|til|till|until)\s*(?:${CLOCK}|${HOUR})`;
/** "4/29", "4/29/26", "2026-05-02"; two numbers of which one is meant ("40/50") are no date. */
const DATE = String.raw`(?<![\d/])(?:0?[1-9]|1[0-2])/(?:0?[1-9]|[12]\d|3[01])(?:/\d{2,4})?(?![\d/])|\b\d{4}-\d{2}-\d{2}\b`;
const PHONE = String.raw`\b\d{3}[-.\s]\d{3}[-.]\d{4}\b`;

/** 5'6" */
const FEET_AND_INCHES = String.raw`\d+'\s?\d{1,2}(?:"|'')`;

const ELSEWHERE = new RegExp([FEET_AND_INCHES, PHONE, CLOCK_SPAN, CLOCK, HOUR, DATE].join('|'), 'gu');

/** The folded text with such numbers blanked out, same length. `numbers`: those of the text, "1/2 dozen" among them. */
export function blankElsewhere(folded: string, numbers: readonly Span[]): string {
  const spans = [...folded.matchAll(ELSEWHERE)]
    .map((match): Span => [match.index, match.index + match[0].length])
    .filter(([from, to]) => !numbers.some(([begin, end]) => begin <= from && to < end));
  return blank(folded, spans);
}
