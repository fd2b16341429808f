/**
 * What an observer called a bee, word for word, where it is nothing but a name. A corrected line keeps the whole sentence
 * that corrected it, and a sentence may say who stood beside it, or where.
 */
import type { Names } from '../../../shared/names.js';

const wordsIn = (text: string): string[] => text.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];

/** Words of all names of bees, made once for a list: a season has many rows. */
const known = new WeakMap<Names['bees'], ReadonlySet<string>>();

function wordsOf(bees: Names['bees']): ReadonlySet<string> {
  const made =
    known.get(bees) ??
    new Set(bees.flatMap(({ name, common, former, short }) => [name, ...common, ...former, ...short].flatMap(wordsIn)));
  known.set(bees, made);
  return made;
}

/** Null where a word of it is in no name of a bee, its plural aside. */
export function verbatimName(typed: string, { bees }: Pick<Names, 'bees'>): string | null {
  const names = wordsOf(bees);
  const words = wordsIn(typed);
  const isName = (word: string): boolean => names.has(word) || names.has(word.replace(/s$/, ''));
  return words.length > 0 && words.every(isName) ? typed : null;
}
