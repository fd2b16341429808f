/** Words by which bees are told apart from what is said around them. */
import { editsBetween } from './similarity.js';
import type { Word } from './tokens.js';
import type { Vocabulary } from './vocabulary.js';

const BUMBLE = { letters: 'bumble', slips: 1 };
const BUMBLEBEE = { letters: 'bumblebee', slips: 2 };
const BOMBUS = { letters: 'bombus', slips: 1 };
/** Shorter words are one slip from too many others. */
const SHORTEST_MISSPELLED = 5;

const isSlipOf = ({ plain }: Word, { letters, slips }: { letters: string; slips: number }): boolean =>
  plain.length >= SHORTEST_MISSPELLED && editsBetween(plain, letters, slips) <= slips;

/** "bumbel", "bumblbee" made "bumble", which the names of bees are told by. */
export function withBumble(words: readonly Word[], vocabulary: Vocabulary): Word[] {
  return words.map((word) => {
    if (vocabulary.bumblebee.has(word.plain) || vocabulary.isPlain(word.plain)) return word;
    const isBumble = isSlipOf(word, BUMBLE) || isSlipOf(word, BUMBLEBEE);
    return isBumble ? { ...word, plain: BUMBLE.letters, stem: BUMBLE.letters } : word;
  });
}

/** "Bombus", "B.", "Psithyrus" and what thumbs make of the first. */
export const isBeeGenus = (word: Word, { beeGenera }: Vocabulary): boolean =>
  beeGenera.has(word.plain) || isSlipOf(word, BOMBUS);

/** A word that says nothing of which bee it is. */
export const isAroundBees = (word: Word, vocabulary: Vocabulary): boolean =>
  word.digits ||
  vocabulary.isPlain(word.plain) ||
  vocabulary.aroundBees.has(word.plain) ||
  vocabulary.bumblebee.has(word.plain) ||
  isBeeGenus(word, vocabulary);

/** "bumble", "bumblebee", not "bee", which many are. */
export const isBumble = (word: Word | undefined, { bumblebee }: Vocabulary): boolean =>
  word !== undefined && bumblebee.has(word.plain) && !/^bee[sz]?$/.test(word.plain);
