/** The parts of a text that tells of plants and queens: numbers, names, and words that mean something beside a number. */
import type { Words } from '../../../shared/words.js';
import type { FoundName } from '../names/index.js';
import { findNumbers } from '../numbers.js';
import type { Span } from '../reading.js';
import { lexiconOf, tokensOf } from '../tally/lexicon.js';
import { blank, madeOnce } from '../text.js';

/** What a word or sign can be beside a number. `small` words stand anywhere, `word` is any other. */
type Kind =
  | 'unit'
  | 'bearer'
  | 'bud'
  | 'none'
  | 'flower'
  | 'open'
  | 'queen'
  | 'range'
  | 'after'
  | 'hedge'
  | 'placing'
  | 'those'
  | 'and'
  | 'vague'
  | 'small';
const KINDS: readonly Kind[] = [
  'unit',
  'bearer',
  'bud',
  'none',
  'flower',
  'open',
  'queen',
  'range',
  'after',
  'hedge',
  'placing',
  'those',
  'small',
  'vague',
  'and',
];

export interface Part {
  readonly kind: Kind | 'number' | 'bee' | 'plant' | 'comma' | 'colon' | 'end' | 'sign' | 'word';
  readonly span: Span;
  /** Kinds a phrase has besides: "about" is a hedge and small. */
  readonly also: ReadonlySet<Kind>;
  /** Its place among the plants. */
  readonly plant: number;
  /** A number that can stand for a queen: the second "one" of "one big one". */
  readonly isOne?: boolean;
  /** A number of more than can be queens. */
  readonly isMany?: boolean;
}

/** More queens on one plant nobody sees in a quarter of an hour. */
const MOST_QUEENS = 20;

const NONE: ReadonlySet<Kind> = new Set();
const BEARER: ReadonlySet<Kind> = new Set(['bearer']);

const lexicon = madeOnce(({ count, hedges, tally, plants, numbers }: Words) => {
  const bees = new Set([...count.queens, ...count.bees]);
  const lists: Record<Kind, readonly string[]> = {
    unit: count.otherAfter,
    bearer: count.bearers,
    bud: count.notOpen,
    none: tally.zero,
    flower: count.flowers,
    and: tally.ands,
    vague: count.vague.filter((phrase) => !count.aboutAfter.includes(phrase)),
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
    those: count.ofThem,
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

/** `folded` cut into parts, left to right. */
export function partsOf(
  folded: string,
  bees: readonly FoundName[],
  plants: readonly FoundName[],
  words: Words,
): Part[] {
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
  )
    // "0600" is a time
    .filter(({ span }) => !/^0\d{3}$/.test(folded.slice(...span)));
  const tokens = tokensOf(folded);
  const phrases = lexicon(words);
  const beforePronoun = new Set(words.count.beforePronoun);
  const sizes = new Set(words.names.sizes);
  const bearers = new Set(words.count.bearers);
  const parts: Part[] = [];
  let name = 0;
  let number = 0;
  let end = 0;
  for (let at = 0; at < tokens.length;) {
    const token = tokens[at]!;
    const [from] = token.span;
    if (folded.slice(end, from).includes('\n')) parts.push({ kind: 'end', span: [end, from], also: NONE, plant: -1 });
    while (names[name] && names[name]!.span[1] <= from) name++;
    while (numbers[number] && numbers[number]!.span[1] <= from) number++;
    const named = names[name];
    const counted = numbers[number];
    const whole =
      named && from >= named.span[0]
        ? named
        : counted && from >= counted.span[0]
          ? { kind: 'number' as const, span: counted.span, plant: -1, isMany: counted.value > MOST_QUEENS }
          : null;
    if (whole) {
      const isOne = whole.kind === 'number' && words.tally.queens.includes(folded.slice(...whole.span));
      // "the first one", "the same one"
      const before = tokens[at - 1]?.text ?? '';
      // of "one big one" the first counts
      const isSized = sizes.has(before) && !parts.slice(-3).some(({ kind }) => kind === 'number');
      const isPronoun = isOne && (beforePronoun.has(before) || isSized) && /^\p{L}/u.test(token.text);
      if (isPronoun) parts.push({ kind: 'word', span: whole.span, also: NONE, plant: -1 });
      // "lilac bushes" are counted by the bush
      else if (
        whole.kind === 'plant' &&
        bearers.has(
          folded
            .slice(...whole.span)
            .split(' ')
            .at(-1)!,
        )
      )
        parts.push({ ...whole, also: BEARER });
      else parts.push({ ...whole, also: NONE, isOne });
      end = whole.span[1];
      while (tokens[at] && tokens[at]!.span[0] < end) at++;
      continue;
    }
    const phrase = phrases.at(tokens, at);
    const next = Math.min(named?.span[0] ?? Infinity, counted?.span[0] ?? Infinity);
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

/** Whether a part is of one of those kinds. */
export const is = (part: Part | undefined, ...kinds: Kind[]): boolean =>
  part !== undefined && kinds.some((kind) => part.kind === kind || part.also.has(kind));
