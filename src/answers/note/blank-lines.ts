/** Blanks what was used out of a text of several lines, which must stay lines. */
import type { Span } from '../reading.js';
import { joinSpans } from '../text.js';

/** The text with those spans blanked out, same length; line ends are kept. */
export function blankLines(text: string, spans: readonly Span[]): string {
  let out = '';
  let at = 0;
  for (const [from, to] of joinSpans(spans)) {
    out += text.slice(at, from) + text.slice(from, to).replace(/[^\n]/g, ' ');
    at = to;
  }
  return out + text.slice(at);
}

/** The text with a sign or letter in place of every letter of those spans; same length. */
export function maskedWith(sign: string, text: string, spans: readonly Span[]): string {
  let out = '';
  let at = 0;
  for (const [from, to] of joinSpans(spans)) {
    out += text.slice(at, from) + sign.repeat(to - from);
    at = to;
  }
  return out + text.slice(at);
}

/** The text with only those parts left in. */
export const keepOnly = (text: string, spans: readonly Span[]): string => {
  const gaps: Span[] = [];
  let at = 0;
  for (const [from, to] of [...spans].sort((a, b) => a[0] - b[0])) {
    if (from > at) gaps.push([at, from]);
    at = Math.max(at, to);
  }
  return blankLines(text, [...gaps, [at, text.length]]);
};
