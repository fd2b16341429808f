/** The words left beside coordinates: "Fen Boardwalk (43.51, -90.64)" leaves "Fen Boardwalk". */
import type { Span } from '../reading.js';
import { fold, joinSpans } from '../text.js';
import type { PlacePhrases } from './phrases.js';

/** Marks and labels go from the sides that touch coordinates; the rest stays as typed. */
export function wordsBeside(text: string, spans: readonly Span[], phrases: PlacePhrases): string {
  const pieces: string[] = [];
  let at = 0;
  const joined = joinSpans(spans);
  for (const [from, to] of [...joined, [text.length, text.length] as const]) {
    const last = to === text.length && from === text.length;
    let piece = text.slice(at, from);
    if (!last || joined.some(([, end]) => end === text.length))
      piece = piece.slice(0, phrases.labelsAtEnd(fold(piece)));
    if (at > 0) piece = piece.slice(phrases.labelsAtStart(fold(piece)));
    piece = piece.replace(/^[\s,;:.)\]|/-]+|[\s,;:([|/-]+$/gu, '');
    if (/[\p{L}\p{N}]/u.test(piece) && !phrases.onlyLabels(fold(piece))) pieces.push(piece);
    at = to;
  }
  return pieces
    .join(' ')
    .replace(phrases.label, '')
    .replace(/\s+/gu, ' ')
    .replace(/^[?!.\s]+|[?\s]+$/gu, '')
    .trim();
}
