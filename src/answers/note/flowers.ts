/**
 * Tells numbers of flowers from numbers of queens in a text that tells both: a number beside "flowers", or beside the
 * name of a plant, counts flowers; one beside the name of a bee counts queens.
 */
import type { Words } from '../../../shared/words.js';
import type { FoundName, FoundNames } from '../names/index.js';
import type { Span } from '../reading.js';
import { is, partsOf, type Part } from './flower-parts.js';

/** A number of flowers, with the words that belong to it, and the plant they are of. */
export interface FlowersSaid {
  readonly span: Span;
  /** Its place among the plants; null where the text names none. */
  readonly plant: number | null;
}

export interface FloraSaid {
  readonly bees: readonly FoundName[];
  readonly plants: readonly FoundName[];
  readonly flowers: readonly FlowersSaid[];
}

/** Unknown words, at most, between a number and what it counts: "40 pale blue phlox". */
const MOST_WORDS_BETWEEN = 2;

/** What stands behind a number that it can count. */
function behind(
  parts: readonly Part[],
  at: number,
): { kind: 'flower' | 'bee' | 'plant' | 'other' | null; plant: number } {
  let unknown = 0;
  let open = false;
  const nothing = (): { kind: 'flower' | null; plant: number } => ({ kind: open ? 'flower' : null, plant: -1 });
  if (is(parts[at + 1], 'unit', 'bearer') && !is(parts[at + 1], 'after')) return { kind: 'other', plant: -1 };
  for (let next = at + 1; next < parts.length; next++) {
    const part = parts[next]!;
    // "4 lilac bushes"
    const bears = is(part, 'bearer') || is(parts[next + 1], 'bearer');
    if (part.kind === 'plant' && bears && !is(parts[next + 1], 'flower')) return { kind: 'other', plant: -1 };
    if (part.kind === 'plant') return { kind: 'plant', plant: part.plant };
    if (part.kind === 'bee') return { kind: 'bee', plant: -1 };
    // "2 imps on the bluebells and one big fuzzy one": no flower
    if (part.isOne && next > at + 1) return open ? nothing() : { kind: 'bee', plant: -1 };
    if (part.kind === 'number' || part.kind === 'comma' || part.kind === 'end' || part.kind === 'colon')
      return nothing();
    // "phlox 55 no bees": the fifty-five are of no bees
    if (part.kind === 'none') return nothing();
    if (is(part, 'flower')) return { kind: 'flower', plant: -1 };
    // "violets, 200+ and a few dandelions": these have an amount of their own
    if (is(part, 'vague')) return nothing();
    if (is(part, 'bud')) return { kind: 'other', plant: -1 };
    if (is(part, 'queen')) return { kind: 'bee', plant: -1 };
    if (is(part, 'open')) open = true;
    else if (is(part, 'placing')) return nothing();
    else if (part.kind === 'word' && ++unknown > MOST_WORDS_BETWEEN) return nothing();
  }
  return nothing();
}

/** What stands before a number: a plant, a bee or "flowers:", and whether a comma parts them. */
function ahead(
  parts: readonly Part[],
  at: number,
  floor: number,
): { kind: 'flower' | 'bee' | 'plant' | null; plant: number; comma: boolean; labelled: boolean } {
  let comma = false;
  for (let last = at - 1; last >= 0; last--) {
    const part = parts[last]!;
    if (part.kind === 'plant') return { kind: 'plant', plant: part.plant, comma, labelled: false };
    if (part.kind === 'bee' || is(part, 'queen')) return { kind: 'bee', plant: -1, comma, labelled: false };
    if (is(part, 'flower', 'open')) {
      // "60 flowers 2 bees": these flowers have their number
      if (last < floor) break;
      const plant = ahead(parts, last, floor);
      return plant.kind === 'plant'
        ? { ...plant, comma: comma || plant.comma, labelled: true }
        : { kind: 'flower', plant: -1, comma, labelled: true };
    }
    // "dandelions and 200 violets": the violets' number
    if ((part.kind === 'comma' || is(part, 'and')) && !comma) comma = true;
    else if (part.kind !== 'sign' && part.kind !== 'colon' && !is(part, 'hedge', 'small') && !isTimes(part)) break;
  }
  return { kind: null, plant: -1, comma, labelled: false };
}

/** The "x" of "bluebells x 85". */
const isTimes = (part: Part | undefined): boolean =>
  (part?.kind === 'word' || part?.kind === 'small') && part.span[1] - part.span[0] === 1;

/** "100 to 150", "100-150": the second number, where it belongs to the first. */
function secondOfRange(parts: readonly Part[], at: number): number {
  const [first, between, second] = parts.slice(at, at + 3);
  if (!first || !between || second?.kind !== 'number') return at;
  const touches = between.span[0] === first.span[1] && between.span[1] === second.span[0];
  // "22 / 2 imps" are two numbers
  const joins =
    between.kind === 'word' || is(between, 'range') ? touches || between.span[1] - between.span[0] > 1 : touches;
  return joins && behind(parts, at + 2).kind !== 'bee' ? at + 2 : at;
}

/** No value was taken out between them: "wind about 10 mph. 75 heads" is not about 75. */
const touches = (parts: readonly Part[], at: number): boolean =>
  parts[at + 1]!.span[0] - parts[at]!.span[1] <= MOST_BLANKS;
/** More blanks in a row stand where words were taken out. */
const MOST_BLANKS = 3;

function spanOf(parts: readonly Part[], at: number, last: number): Span {
  let from = at;
  while ((is(parts[from - 1], 'hedge') && touches(parts, from - 1)) || isTimes(parts[from - 1])) from--;
  let to = last;
  while (is(parts[to + 1], 'after', 'open', 'flower', 'those') && !isPlus(parts, to + 1)) to++;
  return [parts[from]!.span[0], parts[to]!.span[1]];
}

/** The "+" of "65 + wild geranium 20", which joins; "65+" is sixty-five or more. */
const isPlus = (parts: readonly Part[], at: number): boolean => {
  const [before, sign, next] = parts.slice(at - 1, at + 2);
  return (
    sign!.span[1] - sign!.span[0] === 1 &&
    sign!.span[0] > before!.span[1] &&
    next?.kind === 'plant' &&
    is(sign, 'after')
  );
};

/** "400 blossoms on the redbud": the plant right behind the flowers. */
function plantBehind(parts: readonly Part[], at: number): number | null {
  for (let next = at + 1; next < parts.length; next++) {
    const part = parts[next]!;
    if (part.kind === 'plant') return part.plant;
    if (is(part, 'and') || !is(part, 'after', 'open', 'flower', 'small', 'placing')) return null;
  }
  return null;
}

/** "60 clusters of lilac": the plant that has no number of its own, and is not where the flowers stood. */
const isOf = (parts: readonly Part[], last: number, plant: number): boolean =>
  !numberBehind(parts, plant) && !parts.slice(last + 1, plant).some((part) => is(part, 'placing'));

/** Where the plant of that place among the plants is named. */
const placeOf = (parts: readonly Part[], plant: number): number => parts.findIndex((part) => part.plant === plant);

/** `names` are those of the text. */
export function floraIn(folded: string, { bees, plants }: FoundNames, words: Words): FloraSaid {
  const parts = partsOf(folded, bees, plants, words);
  const counted = new Set<number>();
  const flowers: FlowersSaid[] = [];
  // parts before it belong to an earlier number
  let floor = 0;
  for (let at = 0; at < parts.length; at++) {
    if (parts[at]!.kind === 'none' && is(parts[at + 1], 'open')) {
      // "skunk cabbage none open": no flowers, and nothing of bees
      const { kind, plant } = ahead(parts, at, floor);
      if (kind === 'plant' && !counted.has(plant)) {
        counted.add(plant);
        flowers.push({ span: [parts[at]!.span[0], parts[at + 1]!.span[1]], plant });
      }
    }
    if (parts[at]!.kind !== 'number') continue;
    const last = secondOfRange(parts, at);
    const next = behind(parts, last);
    const before = ahead(parts, at, floor);
    // "phlox: 0" beside bees is none of them
    const typed = folded.slice(...parts[at]!.span);
    const none = bees.length > 0 && (typed === '0' || words.tally.zero.includes(typed)) && next.kind !== 'flower';
    const owned = none ? undefined : plantOf(parts, at, last, next, before, counted, plants);
    if (owned !== undefined) {
      if (owned !== null) counted.add(owned);
      const span = spanOf(parts, at, last);
      flowers.push({ span, plant: owned });
      floor = parts.findIndex((part) => part.span[0] >= span[1]);
      if (floor === -1) floor = parts.length;
    }
    at = last;
  }
  return { bees, plants, flowers };
}

/** "lupine 30 bimac 1 imp 2": each bee behind has its number behind it, so that the first number is the plant's. */
function beesBeforeNumbers(parts: readonly Part[], at: number): boolean {
  const kinds: string[] = [];
  for (let next = at + 1; next < parts.length; next++) {
    const { kind } = parts[next]!;
    if (kind === 'end' || kind === 'plant') break;
    if (kind === 'bee' || kind === 'number') kinds.push(kind);
    // of "two impatiens and one bimac" the "and" leads on to the next bee
    const behind = isTimes(parts[next + 1]) ? parts[next + 2] : parts[next + 1];
    if (kind === 'bee' && behind?.kind !== 'number' && behind?.kind !== 'colon') return false;
  }
  return (
    kinds.length >= 2 && kinds.length % 2 === 0 && kinds.every((kind, index) => (kind === 'bee') === (index % 2 === 0))
  );
}

/** "2 impatiens on the redbud and 1 on the violets": the one is a bee. */
function goesOnOfBees(parts: readonly Part[], at: number, last: number): boolean {
  if (parts[last + 1]?.kind !== 'placing') return false;
  const ended = parts.slice(0, at).findLastIndex(({ kind }) => kind === 'end');
  return parts.slice(ended + 1, at).some((part) => part.kind === 'bee' || part.kind === 'queen');
}

/** "30 flowers on the columbine and 45 on the geranium": the plant of the forty-five; null for any other number. */
function goesOnOfFlowers(
  parts: readonly Part[],
  at: number,
  last: number,
  counted: ReadonlySet<number>,
): number | null {
  if (parts[last + 1]?.kind !== 'placing') return null;
  const ended = parts.slice(0, at).findLastIndex(({ kind }) => kind === 'end');
  if (!parts.slice(ended + 1, at).some((part) => is(part, 'flower'))) return null;
  const plant = plantBehind(parts, last);
  return plant === null || counted.has(plant) ? null : plant;
}

/** "… 250 on the redbud, 15 on the phlox": the sentence has counted flowers, and named no bee. */
function goesOnOfCounted(parts: readonly Part[], at: number, counted: ReadonlySet<number>): boolean {
  const ended = parts.slice(0, at).findLastIndex(({ kind }) => kind === 'end');
  const before = parts.slice(ended + 1, at);
  return before.some(({ plant }) => counted.has(plant)) && !before.some(({ kind }) => kind === 'bee');
}

/** "redbud and phlox, 250 flowers on the redbud": a plant named before, which the "on" behind a number names again. */
function placedOn(parts: readonly Part[], at: number, plants: readonly FoundName[]): number | null {
  const plant = plantBehind(parts, at);
  if (plant === null) return null;
  const named = parts.findIndex((part) => part.plant === plant);
  if (!parts.slice(at + 1, named).some((part) => is(part, 'placing'))) return null;
  const nameOf = (index: number): string | undefined => plants[index]!.names[0]?.name;
  const again = plants.slice(0, plant).some((_, index) => nameOf(index) === nameOf(plant));
  return again && !numberBehind(parts, named) ? plant : null;
}

/** Words, at most, between a name and its number: "bluebells were about 200". */
const MOST_BEFORE_NUMBER = 3;

/** "60 of them" */
const isOfThose = (parts: readonly Part[], last: number): boolean =>
  is(
    parts.slice(last + 1).find((part) => !is(part, 'after')),
    'those',
  );

/**
 * "dandelions in the boulevard, 60 of them": the last plant named in the sentence; undefined where a bee is, or a number
 * of which these are a part: "3 imps on the violets, 2 of them with pollen".
 */
function plantOfThose(parts: readonly Part[], at: number): number | undefined {
  const ended = parts.slice(0, at).findLastIndex(({ kind }) => kind === 'end');
  const before = parts.slice(ended + 1, at);
  if (before.some((part) => part.kind === 'bee' || part.kind === 'number' || is(part, 'queen', 'none')))
    return undefined;
  return before.findLast(({ kind }) => kind === 'plant')?.plant;
}

/** True for a plant with a number right behind it that counts nothing else. */
function numberBehind(parts: readonly Part[], plant: number): boolean {
  let at = plant + 1;
  while (at <= plant + MOST_BEFORE_NUMBER && is(parts[at], 'hedge', 'small')) at++;
  if (parts[at]?.kind !== 'number') return false;
  const { kind } = behind(parts, at);
  // "… on the redbud and 60 on the phlox"
  const ofAnother = is(parts[at + 1], 'placing') && plantBehind(parts, at) !== null;
  return (kind === null || kind === 'flower') && !ofAnother;
}

/** The plant whose flowers a number counts, null for flowers of no plant named; undefined for a number of other things. */
function plantOf(
  parts: readonly Part[],
  at: number,
  last: number,
  next: ReturnType<typeof behind>,
  before: ReturnType<typeof ahead>,
  counted: ReadonlySet<number>,
  plants: readonly FoundName[],
): number | null | undefined {
  const free = before.kind === 'plant' && !counted.has(before.plant);
  const placed = placedOn(parts, last, plants);
  // "zero queens on 30 trilliums"; of "on one dandelion" nobody counted the flowers
  if (next.kind === 'plant' && is(parts[at - 1], 'placing') && !parts[at]!.isOne) return next.plant;
  // "dandelion x70 imp x2", "flowers 120 bees 1 impatiens"
  const bound = isTimes(parts[at - 1]) && parts[at - 1]!.span[1] === parts[at]!.span[0];
  if (free && next.kind === 'bee' && (bound || (!before.comma && beesBeforeNumbers(parts, last)))) return before.plant;
  const labelled = before.labelled && !before.comma && is(parts[last + 1], 'queen');
  if (next.kind === 'other' || (next.kind === 'bee' && !labelled)) return undefined;
  if (next.kind === 'flower' || labelled || (before.kind === 'flower' && next.kind === null)) {
    if (placed !== null) return placed;
    const behindFlowers = plantBehind(parts, last);
    const isOfNext = before.comma && behindFlowers !== null && isOf(parts, last, placeOf(parts, behindFlowers));
    if (free && !isOfNext) return before.plant;
    if (behindFlowers !== null) return behindFlowers;
    const named = parts.slice(0, at).findLast(({ kind }) => kind === 'plant')?.plant;
    if (named !== undefined) return named;
    // "some bush with 300 flowers, violets 60": the violets have their own
    const first = parts.findIndex(({ kind }) => kind === 'plant');
    return plants.length > 0 && !numberBehind(parts, first) ? 0 : null;
  }
  if (isOfThose(parts, last)) return plantOfThose(parts, at);
  if (before.kind === 'bee' || goesOnOfBees(parts, at, last)) return undefined;
  const alsoOn = goesOnOfFlowers(parts, at, last, counted);
  if (alsoOn !== null) return alsoOn;
  // "redbud, phlox, 2 on the redbud": as many can be queens
  if (placed !== null) return parts[at]!.isMany || goesOnOfCounted(parts, at, counted) ? placed : undefined;
  if (free && !before.comma) return before.plant;
  // "66 bluebells 200": what stands behind the name is its number
  if (parts[last + 1]?.kind === 'plant' && numberBehind(parts, last + 1)) return undefined;
  if (next.kind === 'plant') return next.plant;
  return free ? before.plant : undefined;
}
