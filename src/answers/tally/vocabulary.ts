/** The words of a tally, made ready to be found. */
import type { Words } from '../../../shared/words.js';
import { anyOf } from '../any-of.js';
import type { Span } from '../reading.js';
import { madeOnce } from '../text.js';
import { lexiconOf, type Lexicon } from './lexicon.js';

export type TallyWords = Words['tally'];

/** Lists that are looked up by themselves. */
const NOT_MEANINGS = [
  'inexactBefore',
  'inexactAfter',
  'between',
  'either',
  'unitsOfOtherThings',
  'vagueValued',
  'soundsLike',
  'labelsBefore',
  'seeing',
  'notSeen',
  'otherTimes',
  'seenAfterAll',
  'asking',
  'phases',
  'hedgesBefore',
  'remainder',
  'theOther',
  'sameKind',
  'contrasts',
  'plantByOrder',
  'otherNumbers',
  'passedBy',
  'refers',
  'looks',
  'plantWords',
  'eachHad',
  'nameless',
  'onlyOthers',
  'exceptThese',
  'returned',
  'toured',
  'keptComing',
  'slipsFrom',
  'shortSlips',
  'zeroSoFar',
  'zeroOfOthers',
  'elsewise',
  'beingOne',
  'differing',
  'someOf',
] as const;
/** What a phrase can mean in a tally. Several meanings are told apart by what stands beside it. */
export type Meaning = Exclude<keyof TallyWords, (typeof NOT_MEANINGS)[number]>;

export interface TallyLexicons {
  readonly meanings: Lexicon<Meaning>;
  readonly vagueValued: Lexicon<number>;
  readonly soundsLike: Lexicon<number>;
  readonly inexactBefore: Lexicon<true>;
  readonly inexactAfter: Lexicon<true>;
  readonly either: Lexicon<true>;
  readonly units: Lexicon<true>;
}

const plainly = (phrases: readonly string[]): Lexicon<true> =>
  lexiconOf(phrases.map((phrase) => [phrase, true] as const));

const isMeaning = (key: keyof TallyWords): key is Meaning => !(NOT_MEANINGS as readonly string[]).includes(key);

export const tallyLexicons = madeOnce((words: TallyWords): TallyLexicons => {
  const table = (Object.keys(words) as (keyof TallyWords)[])
    .filter(isMeaning)
    .flatMap((meaning) => words[meaning].map((phrase) => [phrase, meaning] as const));
  return {
    meanings: lexiconOf<Meaning>(table),
    vagueValued: lexiconOf(Object.entries(words.vagueValued)),
    soundsLike: lexiconOf(Object.entries(words.soundsLike)),
    inexactBefore: plainly(words.inexactBefore),
    inexactAfter: plainly(words.inexactAfter),
    either: plainly(words.either),
    units: plainly(words.unitsOfOtherThings),
  };
});

/** From each phrase that begins such a span to the next that ends it. */
function spansOf(folded: string, begins: RegExp, ends: RegExp): Span[] {
  return [...folded.matchAll(begins)].map(({ index, 0: typed }): Span => {
    ends.lastIndex = index + typed.length;
    return [index, ends.exec(folded)?.index ?? folded.length];
  });
}

/** Phrases looked for in the whole text, where what stands beside them does not matter. */
export const tallyPhrases = madeOnce((words: TallyWords) => {
  const anyQueens = new RegExp(anyOf(words.queens), 'u');
  const saw = new RegExp(anyOf(words.seeing), 'u');
  const unseen = new RegExp(anyOf(words.notSeen), 'gu');
  const otherTime = new RegExp(anyOf(words.otherTimes), 'gu');
  const seenAgain = new RegExp(anyOf(words.seeing, words.seenAfterAll), 'gu');
  const thisTime = new RegExp(anyOf(words.seenAfterAll), 'gu');
  const phase = new RegExp(anyOf(words.phases), 'u');
  const hedgedBut = new RegExp(`${anyOf(words.hedgesBefore)},?\\s+but(?!\\p{L})`, 'gu');
  const asking = new RegExp(`^(?:${anyOf(words.asking)})`, 'u');
  const eachHad = new RegExp(anyOf(words.eachHad), 'uy');
  const nameless = new RegExp(`^${anyOf(words.nameless)}`, 'u');
  const onlyOthers = new RegExp(anyOf(words.onlyOthers), 'u');
  const onlyOn = new RegExp(
    `${anyOf(words.onlyOthers)}\\s+(?:${anyOf(words.onPlants, words.prepositions)}\\s+)?(?:\\p{L}{2,3}\\s+)?$`,
    'u',
  );
  const returned = new RegExp(anyOf(words.returned), 'u');
  const toured = new RegExp(anyOf(words.toured), 'u');
  const keptComing = new RegExp(anyOf(words.keptComing), 'u');
  const someOf = new RegExp(`^\\s*${anyOf(words.someOf)}(?:\\s+\\p{L}+){0,2}\\s*$`, 'u');
  const beingOne = new RegExp(anyOf(words.beingOne), 'u');
  const except = new RegExp(`${anyOf(words.exceptThese)}\\s+$`, 'u');
  const differing: ReadonlySet<string> = new Set(words.differing);
  const theOther: ReadonlySet<string> = new Set(words.theOther);
  const sameKind: ReadonlySet<string> = new Set(words.sameKind);
  const contrasts: ReadonlySet<string> = new Set(words.contrasts);
  const remainder: ReadonlySet<string> = new Set(words.remainder);
  const zeroSoFar: ReadonlySet<string> = new Set(words.zeroSoFar);
  return {
    saysQueens: (phrase: string): boolean => anyQueens.test(phrase),
    saysSeeing: (phrase: string): boolean => saw.test(phrase),
    /** Where the text speaks of what was not seen in this watch. */
    notSeen: (folded: string): Span[] => [
      ...spansOf(folded, unseen, seenAgain),
      ...spansOf(folded, otherTime, thisTime),
    ],
    /** "nothing for a while, then …" */
    saysPhases: (folded: string): boolean => phase.test(folded),
    /** "not sure but", by position. */
    hedgedBut: (folded: string): Span[] =>
      [...folded.matchAll(hedgedBut)].map(({ index, 0: typed }): Span => [index, index + typed.length]),
    /** True for a sentence that begins as a question does. */
    asksUs: (sentence: string): boolean => asking.test(sentence),
    /** True where "both had" begins at `at`. */
    eachHad: (folded: string, at: number): boolean => {
      eachHad.lastIndex = at;
      return eachHad.test(folded);
    },
    /** "unknown", "something unknown": names a bee that nobody knows. */
    saysNameless: (phrase: string): boolean => nameless.test(phrase),
    /** "only", "nothing but": no others than those said. */
    saysOnly: (folded: string): boolean => onlyOthers.test(folded),
    /** "the first": a plant, or a queen, by its place in a row. */
    saysOrder: (phrase: string): boolean => phrase.split(' ').some((word) => Object.hasOwn(words.plantByOrder, word)),
    /** "of the", "of those big", right behind a number. */
    endsWithSomeOf: (between: string): boolean => someOf.test(between),
    /** "was", "were": what stands before is what follows. */
    saysBeing: (folded: string): boolean => beingOne.test(folded),
    /** "came back", "counted once". */
    saysReturned: (folded: string): boolean => returned.test(folded),
    saysToured: (folded: string): boolean => toured.test(folded),
    saysKeptComing: (folded: string): boolean => keptComing.test(folded),
    /** "nothing but" right before a bee or its number. */
    endsWithExcept: (before: string): boolean => except.test(before),
    /** "only the", "just on the" right before a plant. */
    endsWithOnly: (before: string): boolean => onlyOn.test(before),
    differing,
    theOther,
    sameKind,
    contrasts,
    remainder,
    /** "the other two": how many. */
    otherNumbers: words.otherNumbers,
    zeroSoFar,
  };
});

export type TallyPhrases = ReturnType<typeof tallyPhrases>;
