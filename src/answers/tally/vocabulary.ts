/** The words of a tally, made ready to be found. */
import type { Words } from '../../../shared/words.js';
import { anyOf } from '../any-of.js';
import { madeOnce } from '../text.js';
import { lexiconOf, type Lexicon } from './lexicon.js';

export type TallyWords = Words['tally'];

/** What a phrase can mean in a tally. Several meanings are told apart by what stands beside it. */
export type Meaning = Exclude<
  keyof TallyWords,
  'inexactBefore' | 'inexactAfter' | 'either' | 'unitsOfOtherThings' | 'vagueValued' | 'seeing' | 'notSeen'
>;

export interface TallyLexicons {
  readonly meanings: Lexicon<Meaning>;
  readonly vagueValued: Lexicon<number>;
  readonly inexactBefore: Lexicon<true>;
  readonly inexactAfter: Lexicon<true>;
  readonly either: Lexicon<true>;
  readonly units: Lexicon<true>;
}

const plainly = (phrases: readonly string[]): Lexicon<true> =>
  lexiconOf(phrases.map((phrase) => [phrase, true] as const));

export const tallyLexicons = madeOnce((words: TallyWords): TallyLexicons => {
  const {
    inexactBefore,
    inexactAfter,
    either,
    unitsOfOtherThings,
    vagueValued,
    seeing: _seeing,
    notSeen: _notSeen,
    ...meanings
  } = words;
  const table = (Object.keys(meanings) as (keyof typeof meanings)[]).flatMap((meaning) =>
    meanings[meaning].map((phrase) => [phrase, meaning] as const),
  );
  return {
    meanings: lexiconOf<Meaning>(table),
    vagueValued: lexiconOf(Object.entries(vagueValued)),
    inexactBefore: plainly(inexactBefore),
    inexactAfter: plainly(inexactAfter),
    either: plainly(either),
    units: plainly(unitsOfOtherThings),
  };
});

/** Phrases that a tally told in passing is tested by. */
export const tallyPhrases = madeOnce(({ queens, seeing, notSeen }: TallyWords) => {
  const anyQueens = new RegExp(anyOf(queens), 'u');
  const saw = new RegExp(anyOf(seeing), 'u');
  const unseen = new RegExp(anyOf(notSeen), 'gu');
  return {
    saysQueens: (phrase: string): boolean => anyQueens.test(phrase),
    saysSeeing: (phrase: string): boolean => saw.test(phrase),
    /** Where in the text such a phrase begins. */
    notSeen: (folded: string): number[] => [...folded.matchAll(unseen)].map(({ index }) => index),
  };
});
