/** Groups the pieces of an answer about plants by the plant they are about. */
import type { Ask } from '../../../shared/phrases.js';
import type { NameValue } from '../names/index.js';
import { findNumbers } from '../numbers.js';
import { readPlant } from '../plant.js';
import type { Context, Span } from '../reading.js';
import { blank } from '../text.js';
import { piecesOf, type Piece } from './pieces.js';
import { plantsWords } from './vocabulary.js';

/** Plants told at once, at most; more pieces are a story. */
const MOST_PIECES = 60;

/** A plant with the pieces of the answer that are about it. */
export interface Group {
  /** Names it could have, best first; null for one that the list does not hold. */
  readonly names: readonly (NameValue | null)[];
  readonly nameSpan: Span;
  readonly doubt: boolean;
  readonly asks: Ask | null;
  readonly pieces: Piece[];
  counted: boolean;
  /** Pieces whose count was corrected: "phlox 40, sorry, 60". */
  takenBack: readonly Piece[];
}

const isNumbered = ({ pieces }: Group): boolean => pieces.some(({ hasNumber }) => hasNumber);

/** The words of a piece that could be a name: without numbers, hedges and words for flowers at either end. */
function nameWords(folded: string, piece: Piece, context: Context): Span | null {
  const { edges } = plantsWords(context.words);
  let [from, to] = piece.span;
  for (let trimmed = true; trimmed && from < to;) {
    trimmed = false;
    const text = folded.slice(from, to);
    const left = edges.start.exec(text)?.[0].length ?? 0;
    const right = edges.end.exec(text.slice(left))?.[0].length ?? 0;
    if (left + right > 0) {
      from += left;
      to -= right;
      trimmed = true;
    }
  }
  return from < to && /\p{L}{2}/u.test(folded.slice(from, to)) ? [from, to] : null;
}

/** The plant of a piece whose name the running text does not show. */
function unlisted(text: string, folded: string, piece: Piece, isFirst: boolean, context: Context): Group | null {
  const { describes, nameLength, saysPlant } = plantsWords(context.words);
  const numberless = nameWords(folded, piece, context);
  if (numberless === null) return null;
  const words = folded.slice(...numberless);
  // "those hot pink ones" says more of the plant before
  if (!isFirst && describes(words) && !(piece.hasNumber && saysPlant(words))) return null;
  const reading = readPlant(text.slice(...numberless), context);
  if (reading.state === 'none') return null;
  const names = reading.state === 'sure' ? [reading.value] : reading.offer.filter(({ name }) => name !== null);
  const unknown = isUnknownTo(folded, piece, context);
  return {
    names: unknown ? [null] : names.map(({ name, rank }) => (name === null ? null : { name, rank })),
    nameSpan: [numberless[0], numberless[0] + nameLength(words, text.slice(...numberless))],
    doubt: !unknown && names[0]?.doubt === true,
    asks: reading.state === 'unsure' && !unknown ? 'plants-shared' : null,
    pieces: [piece],
    counted: piece.hasNumber,
    takenBack: [],
  };
}

/** "a little white star flower I don't know": its words happen to be a name, but it is none they mean. */
const isUnknownTo = (folded: string, piece: Piece, context: Context): boolean => {
  const { saysUnknown, saysPlant } = plantsWords(context.words);
  const name = piece.name ? folded.slice(...piece.name.span) : '';
  return /\s/.test(name) && saysPlant(name) && saysUnknown(folded.slice(...piece.span));
};

const listed = (folded: string, piece: Piece, context: Context): Group | null =>
  piece.name === null || isUnknownTo(folded, piece, context)
    ? null
    : {
        names: piece.name.names.map((value) => (value.rank === null ? null : value)),
        nameSpan: piece.name.span,
        doubt: piece.name.doubt,
        asks: piece.name.clear ? null : 'plants-shared',
        pieces: [piece],
        counted: piece.hasNumber,
        takenBack: [],
      };

/** Gives each piece that only counts to the plant it is about. */
export function groupsOf(text: string, folded: string, context: Context): Group[] {
  const { saysEach, saysCount, corrects, onlyCorrects } = plantsWords(context.words);
  const pieces = piecesOf(folded, context);
  if (pieces.length > MOST_PIECES) return [];
  const groups: Group[] = [];
  let waiting: Piece[] = [];
  const named: (Group | null)[] = [];
  for (const piece of pieces) {
    const isFirst = named.every((group) => group === null);
    const group = listed(folded, piece, context) ?? unlisted(text, folded, piece, isFirst, context);
    // "lots of bloom" names nothing, "redbud: hundreds" does
    const words = folded.slice(...piece.span);
    const amount = !isFirst && !piece.hasNumber && saysCount(words) && !isUnknownTo(folded, piece, context);
    named.push(amount && group?.names[0] === null ? null : group);
  }
  let correcting = false;
  pieces.forEach((piece, at) => {
    const group = named[at];
    const corrected = correcting || corrects(folded.slice(...piece.span));
    correcting = corrected && !group && !piece.hasNumber;
    if (group) {
      const last = groups.at(-1);
      // "anemone, sorry, bloodroot 50", "40 violets, sorry 40 trillium"
      if (corrected && last && (!last.counted || takesBack(folded, piece, group, groups, context))) groups.pop();
      group.pieces.unshift(...waiting);
      group.counted ||= waiting.length > 0 || saysCount(folded.slice(...piece.span));
      waiting = [];
      groups.push(group);
      return;
    }
    const words = folded.slice(...piece.span);
    const counts = piece.hasNumber || saysCount(words);
    // the "no" of "no wait" is no number
    if (!counts || onlyCorrects(words)) return;
    const last = groups.at(-1);
    if (saysEach(words)) {
      const open = groups.filter(({ counted }) => !counted);
      for (const uncounted of open) {
        uncounted.pieces.push(piece);
        uncounted.counted = true;
      }
      // "2 trees, 500 blossoms each": how many in all is for them to say
      if (open.length === 0 && last) last.takenBack = [...last.pieces];
      return;
    }
    const next = named[at + 1];
    if (corrected && last) last.takenBack = [...last.pieces];
    // "some phlox, 25 flowers": a number says more than "some"
    const hasCount = last !== undefined && (piece.hasNumber ? isNumbered(last) : last.counted);
    if (!last || (hasCount && !corrected && next && !next.counted)) waiting.push(piece);
    else {
      last.pieces.push(piece);
      last.counted = true;
    }
  });
  return inOrder(groups.filter((group) => !isComment(folded, group, groups, context)));
}

/** A plant with its number, right behind another and a "sorry", and not told before it. */
function takesBack(folded: string, piece: Piece, group: Group, groups: readonly Group[], context: Context): boolean {
  const { onlyCorrects } = plantsWords(context.words);
  const from = Math.max(0, ...(groups.at(-1)?.pieces.map(({ span }) => span[1]) ?? []));
  const before = folded.slice(from, group.nameSpan[0]);
  const numbers = findNumbers(before, context.words).map(({ span }) => span);
  const isNew = groups.every(({ names }) => names[0]?.name !== group.names[0]?.name);
  return piece.hasNumber && isNew && onlyCorrects(blank(before, numbers));
}

/** "such a cheerful yellow" among plants that are counted: talk with no number of its own. */
function isComment(folded: string, group: Group, groups: readonly Group[], context: Context): boolean {
  if (group.counted || group.names.some((name) => name !== null) || !groups.some(isNumbered)) return false;
  const { isTalk } = plantsWords(context.words);
  return isTalk(folded.slice(...group.nameSpan));
}

/** "redbud and phlox, 60 and 40": as many counts behind the names as names are the names' in turn. */
function inOrder(groups: readonly Group[]): Group[] {
  const last = groups.at(-1);
  const rest = groups.slice(0, -1);
  const counts = last?.pieces.filter((piece) => piece.hasNumber && piece.name === null) ?? [];
  const own = last?.pieces.filter((piece) => !counts.includes(piece)) ?? [];
  const inTurn =
    last !== undefined &&
    rest.length > 0 &&
    rest.every(({ counted }) => !counted) &&
    own.every((piece) => !piece.hasNumber) &&
    counts.length === groups.length;
  if (!inTurn) return [...groups];
  return groups.map((group, at) => ({
    ...group,
    pieces: [...group.pieces.filter((piece) => !counts.includes(piece)), counts[at]!],
    counted: true,
  }));
}
