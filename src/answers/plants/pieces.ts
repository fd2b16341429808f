/** Cuts an answer about several plants into pieces that name one plant, count flowers, or both. */
import type { Words } from '../../../shared/words.js';
import type { FoundName } from '../names/index.js';
import { findNumbers } from '../numbers.js';
import type { Context, Span } from '../reading.js';
import { lexiconOf, tokensOf, type Lexicon, type Token } from '../tally/lexicon.js';
import { blank, madeOnce } from '../text.js';
import { plantsSaid } from './plants-said.js';

export interface Piece {
  readonly span: Span;
  /** The plant that the running text shows; null where the piece is a count, or words to be looked at more closely. */
  readonly name: FoundName | null;
  readonly hasNumber: boolean;
}

/** Words that a piece about flowers is made of beside names and numbers. */
interface PieceWords {
  readonly ands: Lexicon<true>;
  readonly ors: Lexicon<true>;
  readonly between: Lexicon<true>;
  /** "or so" and "and counting" belong to the number before. */
  readonly afterNumber: Lexicon<true>;
}

const pieceWords = madeOnce(({ tally, count }: Words): PieceWords => {
  const plainly = (phrases: readonly string[]): Lexicon<true> =>
    lexiconOf(phrases.map((phrase) => [phrase, true] as const));
  return {
    ands: plainly([...tally.ands, ...tally.ors]),
    ors: plainly(tally.ors),
    between: plainly(count.between),
    afterNumber: plainly([...count.aboutAfter, ...count.atLeastAfter, ...count.atMostAfter]),
  };
});

const PARTING_SIGNS = new Set([',', ';', '\n', '|', '•', '/', '&', '+', '·', '*']);

/** True for a sign that parts plants: not the comma of "1,200", which is within a number, nor the plus of "300+". */
function parts(folded: string, token: Token): boolean {
  if (token.text === '+' && /\d/.test(folded[token.span[0] - 1] ?? '')) return false;
  if (PARTING_SIGNS.has(token.text)) return true;
  const after = folded[token.span[1]];
  return token.text === '.' && (after === undefined || /\s/.test(after));
}

/** Where the text is cut: between `to` of one piece and `from` of the next. */
function cutsIn(folded: string, numbers: readonly Span[], names: readonly Span[], words: Words): Span[] {
  const { ands, between, afterNumber, ors } = pieceWords(words);
  const numberBegins = new Set(numbers.map(([from]) => from));
  const numberEnds = new Set(numbers.map(([, to]) => to));
  const tokens = tokensOf(folded);
  const cuts: Span[] = [];
  let number = 0;
  let name = 0;
  let betweenFrom = -1;
  let lineFrom = 0;
  for (let at = 0; at < tokens.length; at++) {
    const token = tokens[at]!;
    const line = folded.slice(lineFrom, token.span[0]).indexOf('\n');
    if (line !== -1) cuts.push([lineFrom + line, lineFrom + line + 1]);
    lineFrom = token.span[1];
    while (numbers[number] && numbers[number]![1] <= token.span[0]) number++;
    while (names[name] && names[name]![1] <= token.span[0]) name++;
    const inside = [numbers[number], names[name]].some(
      (span) => span && span[0] <= token.span[0] && token.span[1] <= span[1],
    );
    if (inside) continue;
    const after = at > 0 ? afterNumber.at(tokens, at) : null;
    if (after && after.to > at + 1) {
      at = after.to - 1;
      lineFrom = tokens[at]!.span[1];
      continue;
    }
    if (between.at(tokens, at)) betweenFrom = at;
    if (parts(folded, token)) {
      cuts.push(token.span);
      continue;
    }
    const and = ands.at(tokens, at);
    // "between 40 and 60"
    const joinsRange =
      betweenFrom !== -1 && at - betweenFrom <= 4 && numbers[number]?.[0] === tokens[and?.to ?? at]?.span[0];
    // "15 or 20" of one plant
    const either =
      and !== null &&
      numberEnds.has(tokens[at - 1]?.span[1] ?? -1) &&
      numberBegins.has(tokens[and.to]?.span[0] ?? -1) &&
      ors.at(tokens, at) !== null;
    if (and && token.isWord && !joinsRange && !either) cuts.push([token.span[0], tokens[and.to - 1]!.span[1]]);
  }
  return cuts;
}

/** A piece that holds several names is cut before each name, or behind each where the counts come first. */
function apart(from: number, to: number, names: readonly FoundName[], numbers: readonly Span[]): Span[] {
  if (names.length < 2) return [[from, to]];
  const firstNumber = numbers.find((span) => span[0] >= from && span[1] <= to);
  const namesFirst = !firstNumber || names[0]!.span[0] < firstNumber[0];
  const spans: Span[] = [];
  let start = from;
  for (const { span } of namesFirst ? names.slice(1) : names.slice(0, -1)) {
    const cut = namesFirst ? span[0] : span[1];
    spans.push([start, cut]);
    start = cut;
  }
  return [...spans, [start, to]];
}

export function piecesOf(folded: string, context: Context): Piece[] {
  const names = plantsSaid(folded, context);
  const outside = blank(
    folded,
    names.map(({ span }) => span),
  );
  const numbers = findNumbers(outside, context.words).map(({ span }) => span);
  const cuts = cutsIn(
    folded,
    numbers,
    names.map(({ span }) => span),
    context.words,
  );
  const pieces: Piece[] = [];
  let from = 0;
  let name = 0;
  for (const [cutFrom, cutTo] of [...cuts, [folded.length, folded.length] as const]) {
    if (cutFrom < from) continue;
    const inside: FoundName[] = [];
    while (name < names.length && names[name]!.span[1] <= cutFrom) inside.push(names[name++]!);
    for (const span of apart(from, cutFrom, inside, numbers)) {
      if (folded.slice(...span).trim() === '') continue;
      pieces.push({
        span,
        name: inside.find((found) => found.span[0] >= span[0] && found.span[1] <= span[1]) ?? null,
        hasNumber: numbers.some((number) => number[0] >= span[0] && number[1] <= span[1]),
      });
    }
    from = cutTo;
  }
  return pieces;
}
