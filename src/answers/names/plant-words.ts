/** Words by which plants are told apart from what is said around them. */
import type { Word } from './tokens.js';
import type { Vocabulary } from './vocabulary.js';

/** A word that says nothing of which plant it is. */
export const isAroundPlants = (word: Word, vocabulary: Vocabulary): boolean =>
  word.digits ||
  vocabulary.isPlain(word.plain) ||
  vocabulary.isPlain(word.stem) ||
  vocabulary.aroundPlants.has(word.plain) ||
  vocabulary.aroundPlants.has(word.stem);

/** The endings of most epithets: "canadense", "recurvatum", "macrophylla", "biflorus", "thunbergii". */
const LATIN = /^[a-z]{3,}(?:us|um|a|is|i|ae|ans|ens|ense|ale|oides|ior|olor)$/;
const SHORTEST_LATIN = 5;

/** A word after a genus that is rather a species we do not know than more talk. */
export const looksLatin = (word: Word, vocabulary: Vocabulary): boolean =>
  word.plain.length >= SHORTEST_LATIN && LATIN.test(word.plain) && !isAroundPlants(word, vocabulary);
