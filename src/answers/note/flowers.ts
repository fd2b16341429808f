/**
 * Tells numbers of flowers from numbers of queens in a text that tells both: a number beside "flowers", or beside the
 * name of a plant, counts flowers; one beside the name of a bee counts queens.
 */
import type { Words } from '../../../shared/words.js';
import type { FoundName, FoundNames } from '../names/index.js';
import { findNumbers } from '../numbers.js';
import type { Span } from '../reading.js';
import { lexiconOf, tokensOf } from '../tally/lexicon.js';
import { blank, madeOnce } from '../text.js';

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

/** What a word or sign can be beside a number. `small` words stand anywhere, `word` is any other. */
type Kind = 'unit' | 'bud' | 'none' | 'flower' | 'open' | 'queen' | 'range' | 'after' | 'hedge' | 'placing' | 'small';
const KINDS: readonly Kind[] = [
  'unit',
  'bud',
  'none',
  'flower',
  'open',
  'queen',
  'range',
  'after',
  'hedge',
  'placing',
  'small',
];

interface Part {
  readonly kind: Kind | 'number' | 'bee' | 'plant' | 'comma' | 'colon' | 'end' | 'sign' | 'word';
  readonly span: Span;
  /** Kinds a phrase has besides: "about" is a hedge and small. */
  readonly also: ReadonlySet<Kind>;
  /** Its place among the plants. */
  readonly plant: number;
  /** A number that can stand for a queen: the second "one" of "one big one". */
  readonly isOne?: boolean;
}

const NONE: ReadonlySet<Kind> = new Set();

const lexicon = madeOnce(({ count, hedges, tally, plants, numbers }: Words) => {
  const bees = new Set([...count.queens, ...count.bees]);
  const lists: Record<Kind, readonly string[]> = {
    unit: count.otherAfter,
    bud: count.notOpen,
    none: tally.zero,
    flower: count.flowers,
    open: count.open,
    queen: [...bees, ...tally.workers, ...tally.otherInsects],
    range: [...count.ranges, ...count.either],
    after: [...count.aboutAfter, ...count.atLeastAfter, ...count.atMostAfter],
    hedge: [
      ...count.about,
      ...count.atLeast,
      ...count.atMost,
      ...count.passedOver,
      ...count.between,
      ...hedges.soft,
      ...hedges.doubting,
    ],
    placing: [...tally.onPlants, ...tally.prepositions],
    // "bees on" is no small word: its bees are what a number counts
    small: [
      ...plants.around,
      ...numbers.groupJoins,
      ...numbers.articles,
      ...tally.filler.filter((phrase) => !phrase.split(' ').some((word) => bees.has(word))),
    ],
  };
  return lexiconOf(KINDS.flatMap((kind) => lists[kind].map((phrase) => [phrase, kind] as const)));
});

const COMMAS = new Set([',', '&', '/']);
const ENDS = new Set([';', '!', '•', '|']);

function partsOf(folded: string, bees: readonly FoundName[], plants: readonly FoundName[], words: Words): Part[] {
  const names = [
    ...bees.map(({ span }) => ({ kind: 'bee' as const, span, plant: -1 })),
    ...plants.map(({ span }, plant) => ({ kind: 'plant' as const, span, plant })),
  ].sort((a, b) => a.span[0] - b.span[0]);
  const numbers = findNumbers(
    blank(
      folded,
      names.map(({ span }) => span),
    ),
    words,
  ).map(({ span }) => span);
  const tokens = tokensOf(folded);
  const phrases = lexicon(words);
  const parts: Part[] = [];
  let name = 0;
  let number = 0;
  let end = 0;
  for (let at = 0; at < tokens.length;) {
    const token = tokens[at]!;
    const [from] = token.span;
    if (folded.slice(end, from).includes('\n')) parts.push({ kind: 'end', span: [end, from], also: NONE, plant: -1 });
    while (names[name] && names[name]!.span[1] <= from) name++;
    while (numbers[number] && numbers[number]![1] <= from) number++;
    const named = names[name];
    const counted = numbers[number];
    const whole =
      named && from >= named.span[0]
        ? named
        : counted && from >= counted[0]
          ? { kind: 'number' as const, span: counted, plant: -1 }
          : null;
    if (whole) {
      const isOne = whole.kind === 'number' && words.tally.queens.includes(folded.slice(...whole.span));
      parts.push({ ...whole, also: NONE, isOne });
      end = whole.span[1];
      while (tokens[at] && tokens[at]!.span[0] < end) at++;
      continue;
    }
    const phrase = phrases.at(tokens, at);
    const next = Math.min(named?.span[0] ?? Infinity, counted?.[0] ?? Infinity);
    // "40 - 60" is a range, "lilac - 60" is none
    const dash = token.text === '-' && parts.at(-1)?.kind !== 'number';
    if (phrase && !dash && tokens[phrase.to - 1]!.span[1] <= next) {
      const kind = KINDS.find((each) => phrase.kinds.has(each))!;
      end = tokens[phrase.to - 1]!.span[1];
      parts.push({ kind, span: [from, end], also: phrase.kinds, plant: -1 });
      at = phrase.to;
      continue;
    }
    end = token.span[1];
    const stops = token.text === '.' && /^(?:\s|$)/.test(folded.slice(end, end + 1));
    const kind = COMMAS.has(token.text)
      ? 'comma'
      : token.text === ':'
        ? 'colon'
        : stops || ENDS.has(token.text)
          ? 'end'
          : token.isWord
            ? 'word'
            : 'sign';
    parts.push({ kind, span: token.span, also: NONE, plant: -1 });
    at++;
  }
  return parts;
}

const is = (part: Part | undefined, ...kinds: Kind[]): boolean =>
  part !== undefined && kinds.some((kind) => part.kind === kind || part.also.has(kind));

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
  if (is(parts[at + 1], 'unit') && !is(parts[at + 1], 'after')) return { kind: 'other', plant: -1 };
  for (let next = at + 1; next < parts.length; next++) {
    const part = parts[next]!;
    if (part.kind === 'plant') return { kind: 'plant', plant: part.plant };
    if (part.kind === 'bee') return { kind: 'bee', plant: -1 };
    // "2 imps on the bluebells and one big fuzzy one": no flower
    if (part.isOne && next > at + 1) return { kind: 'bee', plant: -1 };
    if (part.kind === 'number' || part.kind === 'comma' || part.kind === 'end' || part.kind === 'colon')
      return nothing();
    // "phlox 55 no bees": the fifty-five are of no bees
    if (part.kind === 'none') return nothing();
    if (is(part, 'flower')) return { kind: 'flower', plant: -1 };
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
    if (part.kind === 'comma' && !comma) comma = true;
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
  while (is(parts[to + 1], 'after', 'open', 'flower')) to++;
  return [parts[from]!.span[0], parts[to]!.span[1]];
}

/** "400 blossoms on the redbud": the plant right behind the flowers. */
function plantBehind(parts: readonly Part[], at: number): number | null {
  for (let next = at + 1; next < parts.length; next++) {
    const part = parts[next]!;
    if (part.kind === 'plant') return part.plant;
    if (!is(part, 'after', 'open', 'flower', 'small', 'placing') || part.kind === 'comma' || part.kind === 'end')
      return null;
  }
  return null;
}

/** `names` are those of the text. */
export function floraIn(folded: string, { bees, plants }: FoundNames, words: Words): FloraSaid {
  const parts = partsOf(folded, bees, plants, words);
  const counted = new Set<number>();
  const flowers: FlowersSaid[] = [];
  // parts before it belong to an earlier number
  let floor = 0;
  for (let at = 0; at < parts.length; at++) {
    if (parts[at]!.kind !== 'number') continue;
    const last = secondOfRange(parts, at);
    const next = behind(parts, last);
    const before = ahead(parts, at, floor);
    // "phlox: 0" beside bees is none of them
    const none = bees.length > 0 && folded.slice(...parts[at]!.span) === '0' && next.kind !== 'flower';
    const owned = none ? undefined : plantOf(parts, at, last, next, before, counted, plants.length);
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
  for (const { kind } of parts.slice(at + 1)) {
    if (kind === 'end' || kind === 'plant') break;
    if (kind === 'bee' || kind === 'number') kinds.push(kind);
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

/** Words, at most, between a name and its number: "bluebells were about 200". */
const MOST_BEFORE_NUMBER = 3;

/** True for a plant with a number right behind it that counts nothing else. */
function numberBehind(parts: readonly Part[], plant: number): boolean {
  let at = plant + 1;
  while (at <= plant + MOST_BEFORE_NUMBER && is(parts[at], 'hedge', 'small')) at++;
  if (parts[at]?.kind !== 'number') return false;
  const { kind } = behind(parts, at);
  return kind === null || kind === 'flower';
}

/** The plant whose flowers a number counts, null for flowers of no plant named; undefined for a number of other things. */
function plantOf(
  parts: readonly Part[],
  at: number,
  last: number,
  next: ReturnType<typeof behind>,
  before: ReturnType<typeof ahead>,
  counted: ReadonlySet<number>,
  plants: number,
): number | null | undefined {
  const free = before.kind === 'plant' && !counted.has(before.plant);
  // "dandelion x70 imp x2", "flowers 120 bees 1 impatiens"
  const bound = isTimes(parts[at - 1]) && parts[at - 1]!.span[1] === parts[at]!.span[0];
  if (free && next.kind === 'bee' && (bound || (!before.comma && beesBeforeNumbers(parts, last)))) return before.plant;
  const labelled = before.labelled && !before.comma && is(parts[last + 1], 'queen');
  if (next.kind === 'other' || (next.kind === 'bee' && !labelled)) return undefined;
  if (next.kind === 'flower' || labelled || (before.kind === 'flower' && next.kind === null)) {
    if (free) return before.plant;
    const behindFlowers = plantBehind(parts, last);
    if (behindFlowers !== null) return behindFlowers;
    const named = parts.slice(0, at).findLast(({ kind }) => kind === 'plant')?.plant;
    if (named !== undefined) return named;
    // "some bush with 300 flowers, violets 60": the violets have their own
    const first = parts.findIndex(({ kind }) => kind === 'plant');
    return plants > 0 && !numberBehind(parts, first) ? 0 : null;
  }
  if (before.kind === 'bee' || goesOnOfBees(parts, at, last)) return undefined;
  if (free && !before.comma) return before.plant;
  // "66 bluebells 200": what stands behind the name is its number
  if (parts[last + 1]?.kind === 'plant' && numberBehind(parts, last + 1)) return undefined;
  if (next.kind === 'plant') return next.plant;
  return free ? before.plant : undefined;
}
