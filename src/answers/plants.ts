/**
 * Reads which plants were watched, each with about how many open flowers: "squirrel corn 60, phlox about 40". Flowers
 * are null where no number was given, or only "lots": they are asked for plant by plant. A name that the list does not
 * hold is kept as typed.
 */
import type { Ask } from '../../shared/phrases.js';
import type { Count } from '../../shared/record.js';
import { readCount } from './count.js';
import type { NameValue } from './names/index.js';
import { blankLines } from './note/blank-lines.js';
import { listNumbersIn } from './note/list-numbers.js';
import { readPlant } from './plant.js';
import { piecesOf, type Piece } from './plants/pieces.js';
import { plantsWords } from './plants/vocabulary.js';
import { none, sure, unsure, type Context, type Reader, type Span } from './reading.js';
import { blank, fold } from './text.js';

export interface PlantTold {
  /** Accepted name; null for a plant that the list does not hold. */
  readonly name: string | null;
  readonly rank: string | null;
  /** Its name in their words. */
  readonly asTyped: string;
  /** Open flowers; null where they are still to be asked for. */
  readonly flowers: Count | null;
  readonly flowersTyped: string | null;
  readonly doubt?: true;
}

/** Longer answers are a note or none at all. */
const LONGEST = 4000;
const MOST_OFFERS = 6;
/** Plants told at once, at most; more pieces are a story. */
const MOST_PIECES = 60;

/** A plant with the pieces of the answer that are about it. */
interface Group {
  /** Names it could have, best first; null for one that the list does not hold. */
  readonly names: readonly (NameValue | null)[];
  readonly nameSpan: Span;
  readonly doubt: boolean;
  readonly asks: Ask | null;
  readonly pieces: Piece[];
  counted: boolean;
}

interface Flowers {
  readonly count: Count | null;
  readonly typed: string | null;
  readonly ask: Ask | null;
}

const NOT_COUNTED: Flowers = { count: null, typed: null, ask: null };

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
  const { describes, nameLength } = plantsWords(context.words);
  const numberless = nameWords(folded, piece, context);
  if (numberless === null) return null;
  const words = folded.slice(...numberless);
  // "those hot pink ones" says more of the plant before
  if (!isFirst && describes(words)) return null;
  const reading = readPlant(text.slice(...numberless), context);
  if (reading.state === 'none') return null;
  const names = reading.state === 'sure' ? [reading.value] : reading.offer.filter(({ name }) => name !== null);
  return {
    names: names.map(({ name, rank }) => (name === null ? null : { name, rank })),
    nameSpan: [numberless[0], numberless[0] + nameLength(words, text.slice(...numberless))],
    doubt: names[0]?.doubt === true,
    asks: reading.state === 'unsure' ? 'plants-shared' : null,
    pieces: [piece],
    counted: piece.hasNumber,
  };
}

const listed = (piece: Piece): Group | null =>
  piece.name && {
    names: piece.name.names.map((value) => (value.rank === null ? null : value)),
    nameSpan: piece.name.span,
    doubt: piece.name.doubt,
    asks: piece.name.clear ? null : 'plants-shared',
    pieces: [piece],
    counted: piece.hasNumber,
  };

/** Gives each piece that only counts to the plant it is about. */
function groupsOf(text: string, folded: string, context: Context): Group[] {
  const { saysEach, saysCount } = plantsWords(context.words);
  const pieces = piecesOf(folded, context);
  if (pieces.length > MOST_PIECES) return [];
  const groups: Group[] = [];
  let waiting: Piece[] = [];
  const named: (Group | null)[] = [];
  for (const piece of pieces) {
    const isFirst = named.every((group) => group === null);
    const group = listed(piece) ?? unlisted(text, folded, piece, isFirst, context);
    // "lots of bloom" names nothing, "redbud: hundreds" does
    const amount = !isFirst && !piece.hasNumber && saysCount(folded.slice(...piece.span));
    named.push(amount && group?.names[0] === null ? null : group);
  }
  pieces.forEach((piece, at) => {
    const group = named[at];
    if (group) {
      group.pieces.unshift(...waiting);
      group.counted ||= waiting.length > 0 || saysCount(folded.slice(...piece.span));
      waiting = [];
      groups.push(group);
      return;
    }
    const words = folded.slice(...piece.span);
    const counts = piece.hasNumber || saysCount(words);
    if (!counts) return;
    const last = groups.at(-1);
    if (saysEach(words)) {
      const open = groups.filter(({ counted }) => !counted);
      for (const uncounted of open) {
        uncounted.pieces.push(piece);
        uncounted.counted = true;
      }
      return;
    }
    const next = named[at + 1];
    if (!last || (last.counted && next && !next.counted)) waiting.push(piece);
    else {
      last.pieces.push(piece);
      last.counted = true;
    }
  });
  return inOrder(groups);
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

/** The count of a plant's flowers, from all that was said of it but its name. */
function flowersOf(text: string, folded: string, group: Group, context: Context): Flowers {
  if (!group.counted) return NOT_COUNTED;
  const { saysCount, countsBearers, saysFlowers, withoutEach } = plantsWords(context.words);
  const withoutName = blank(text, [group.nameSpan]);
  const spans = group.pieces
    .filter((piece) => piece.hasNumber || saysCount(folded.slice(...piece.span)))
    .map(({ span }) => span);
  const said = spans
    .map((span) =>
      withoutName
        .slice(...span)
        .replace(/\s+/g, ' ')
        .trim(),
    )
    .filter((words) => words !== '');
  // "1 lilac bush" counts bushes, though its name has the word
  const flowers = said.filter(
    (words) =>
      !countsBearers(fold(words)) && !(bearsAlone(words, group) && countsBearers(folded.slice(...group.nameSpan))),
  );
  if (flowers.length === 0) return NOT_COUNTED;
  // "just the one lilac, about 60 clusters"
  const named = flowers.filter((words) => saysFlowers(fold(words)));
  const typed = (named.length > 0 ? named : flowers).join(', ');
  const reading = readCount(withoutEach(typed), { ...context, of: 'flowers' });
  const shown = typed.replace(/^[\s,:;=()-]+|[\s,:;=()-]+$/g, '');
  switch (reading.state) {
    case 'sure':
      return { count: reading.value, typed: shown, ask: null };
    case 'unsure':
      return { count: reading.offer[0] ?? null, typed: shown, ask: 'plants-count-doubt' };
    case 'none':
      return NOT_COUNTED;
  }
}

/** True for a number right before the plant's name, with nothing else said. */
const bearsAlone = (words: string, group: Group): boolean => /^[\d\s]+$/.test(words) && group.pieces.length > 1;

function toldOf(text: string, group: Group, flowers: Flowers, choice: number): PlantTold {
  const value = group.names[choice] ?? null;
  // "bluebells maybe 60" doubts the sixty
  const doubt = group.doubt && flowers.ask === null;
  return {
    name: value?.name ?? null,
    rank: value?.rank ?? null,
    asTyped: text.slice(...group.nameSpan).trim(),
    flowers: flowers.count,
    flowersTyped: flowers.typed,
    ...(doubt ? { doubt: true as const } : {}),
  };
}

/** A plant named twice is one: the count said last stands. Two words for one genus are two plants. */
function withoutRepeats(plants: readonly PlantTold[]): PlantTold[] {
  const keyOf = ({ name, rank, asTyped }: PlantTold): string =>
    rank === 'genus' || name === null ? `${name ?? ''} ${asTyped.toLowerCase()}` : name;
  const kept: PlantTold[] = [];
  for (const plant of plants) {
    const at = kept.findIndex((other) => keyOf(other) === keyOf(plant));
    if (at === -1) kept.push(plant);
    else if (plant.flowers !== null)
      kept[at] = { ...kept[at]!, flowers: plant.flowers, flowersTyped: plant.flowersTyped };
  }
  return kept;
}

export const readPlants: Reader<PlantTold[]> = (typed, context) => {
  if (typed.trim() === '') return none('empty');
  if (typed.length > LONGEST) return none('too-long');
  const text = blankLines(typed, listNumbersIn(typed));
  const folded = fold(text);
  const groups = groupsOf(text, folded, context);
  if (groups.length === 0) return none('plants-no-name');
  const flowers = groups.map((group) => flowersOf(text, folded, group, context));
  const used = groups.flatMap((group) => [
    group.nameSpan,
    ...group.pieces.filter(({ hasNumber }) => hasNumber).map(({ span }) => span),
  ]);
  const told = (changed: number, choice: number): PlantTold[] =>
    withoutRepeats(groups.map((group, at) => toldOf(text, group, flowers[at]!, at === changed ? choice : 0)));
  const ask = groups.find(({ asks }) => asks !== null)?.asks ?? flowers.find((each) => each.ask !== null)?.ask ?? null;
  if (ask === null) return sure(told(0, 0), used);
  const others = groups.flatMap(({ names, asks }, at) =>
    asks === null ? [] : names.slice(1).map((_, choice) => told(at, choice + 1)),
  );
  const offers = [told(0, 0), ...others];
  return unsure(
    offers.length <= MOST_OFFERS ? offers : [...offers.slice(0, MOST_OFFERS - 1), offers.at(-1)!],
    ask,
    used,
  );
};
