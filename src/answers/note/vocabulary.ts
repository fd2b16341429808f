/** The words around the fields of a note, made ready to be found. */
import type { Words } from '../../../shared/words.js';
import { anyAfterDigits, anyOf } from '../any-of.js';
import { madeOnce, saysAnyOf } from '../text.js';

type Asked = keyof Words['note']['questions'];

export const noteWords = madeOnce((words: Words) => {
  const { note, tally, count } = words;
  const small = new Set(
    [...tally.filler, ...tally.prepositions, ...tally.ands, ...words.plants.around].flatMap((phrase) =>
      phrase.split(' '),
    ),
  );
  const hedging = new Set([...count.about, ...count.aboutAfter].flatMap((phrase) => phrase.split(' ')));
  const questions = (Object.keys(note.questions) as Asked[]).map((field) => ({
    field,
    pattern: new RegExp(anyOf(note.questions[field]), 'u'),
  }));
  const flowers = new RegExp(anyOf(count.flowers), 'u');
  const noWatch = new RegExp(anyOf(note.noWatch), 'u');
  const none = tally.zero.filter((phrase) => phrase !== 'no');
  const bees = new RegExp(anyOf(count.bees, count.queens, tally.workers), 'u');
  const tellsOfBees = [
    ...[count.bees, count.queens, tally.zero, tally.same, tally.sameOne, tally.sameOnes, tally.each, tally.allPlants],
  ].flat();
  const pronouns = new Set(tally.queens.filter((word) => /^ones?$/.test(word)));
  const saysQueens = [
    count.bees.filter((word) => !pronouns.has(word)),
    count.queens.filter((word) => !pronouns.has(word)),
    ...[tally.zero, tally.same, tally.sameOne, tally.sameOnes, tally.another, tally.workers, tally.pollen],
    tally.noPollen,
  ].flat();
  const side = new RegExp(`\\d\\s*(?:${anyAfterDigits(words.patch.by)})\\s*$`, 'u');
  return {
    /** What stands before the second side of a size: "6 x". */
    isSide: (before: string): boolean => side.test(before),
    /** Speaks of queens or of none, and not only of "ones". */
    saysQueens: (folded: string): boolean => saysAnyOf(folded, saysQueens),
    tellsOfBees: (folded: string): boolean => saysAnyOf(folded, tellsOfBees),
    saysNone: (folded: string): boolean => saysAnyOf(folded, none),
    /** "about", "or so" */
    hedges: (word: string): boolean => hedging.has(word),
    small: (word: string): boolean => small.has(word),
    /** The fields that a quoted question asks for. */
    fieldsOf: (question: string): Asked[] =>
      questions.filter(({ pattern }) => pattern.test(question)).map(({ field }) => field),
    saysBees: (folded: string): boolean => bees.test(folded),
    saysFlowers: (said: string): boolean => flowers.test(said),
    saysNoWatch: (folded: string): boolean => noWatch.test(folded),
  };
});
