/** Whether words in which no plant of the list is found still name or describe a plant. */
import type { NameIndex } from './name-index.js';
import { isAroundPlants } from './plant-words.js';
import { wordAfter, type Word } from './tokens.js';
import type { Vocabulary } from './vocabulary.js';

/** Shorter words that we do not know are slips and exclamations: "uep", "brr". */
const SHORTEST_STRANGE = 4;
/** A letter three times in a row is drawn out: "brrr", "sooooo". */
const DRAWN_OUT = /(.)\1\1/;

const describes = ({ plain, stem }: Word, { describing, plantNouns }: Vocabulary): boolean =>
  !plantNouns.has(stem) && (describing.has(plain) || describing.has(stem));

/** "the tall pink one", "unknown white wildflower": a look, and besides it a noun, another word or that it is unknown. */
export function isDescribed(words: readonly Word[], saidUnknown: boolean, vocabulary: Vocabulary): boolean {
  const { states, sizes, plantNouns, bumblebee, aroundBees } = vocabulary;
  if (words.some(({ plain }) => bumblebee.has(plain) || (aroundBees.has(plain) && !plantNouns.has(plain))))
    return false;
  const says = words.filter((word) => describes(word, vocabulary) && !states.has(word.plain));
  if (says.every(({ plain }) => sizes.has(plain))) return false;
  const isNamed = saidUnknown || words.some(({ stem }) => plantNouns.has(stem));
  return isNamed || (says.length > 1 && !words.some(({ digits }) => digits));
}

/** Words of no list that could be a name: "Ruffles", not "16T", "brrr", "nonee" or the Otter of "Otter Creek". */
export function strangersIn(
  words: readonly Word[],
  typed: string,
  { firsts, lasts }: NameIndex,
  vocabulary: Vocabulary,
): Word[] {
  const { placeNouns, aroundPlants, almostKnown } = vocabulary;
  return words.filter((word, at) => {
    const { plain, stem, span } = word;
    if (plain.length < SHORTEST_STRANGE || DRAWN_OUT.test(plain) || isAroundPlants(word, vocabulary)) return false;
    if (/\d/.test((typed[span[0] - 1] ?? '') + (typed[span[1]] ?? ''))) return false;
    const next = wordAfter(words, at + 1);
    const isOfPlace = next !== undefined && placeNouns.has(next.plain) && !aroundPlants.has(next.plain);
    // "La Crosse" is no slip of "across"
    const isName = at > 0 && /\p{Lu}/u.test(typed[span[0]]!);
    return !isOfPlace && (isName || firsts.has(stem) || lasts.has(stem) || !almostKnown(plain));
  });
}
