/** Words by which bees are told apart from what is said around them. */
import type { NameIndex } from './name-index.js';
import { editsBetween } from './similarity.js';
import { stemOf, wordAfter, type Word } from './tokens.js';
import type { NameWords, Vocabulary } from './vocabulary.js';

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

/** "c. eastern", "n. amber", "am bumble": the first word of a common name by its first letters, where the rest is in full. */
export function withInitials(
  words: readonly Word[],
  { initials }: NameWords,
  vocabulary: Vocabulary,
  index: NameIndex,
): readonly Word[] {
  if (!words.some(({ plain }) => Object.hasOwn(initials, plain))) return words;
  return words.map((word, at) => {
    const next = wordAfter(words, at + 1);
    if (!next || !Object.hasOwn(initials, word.plain)) return word;
    const rest = vocabulary.bumblebee.has(next.plain) ? (isBumble(next, vocabulary) ? '' : null) : next.stem;
    const first = initials[word.plain]!.find(
      (each) => rest !== null && index.exact.get(stemOf(each) + rest)?.some(({ kind }) => kind === 'common') === true,
    );
    return first === undefined ? word : { ...word, plain: first, stem: stemOf(first), dotted: false };
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
