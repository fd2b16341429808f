/** What other readers may use of the names of bees and plants. */
export {
  findBees,
  findNames,
  findPlants,
  namedIn,
  type FoundName,
  type FoundNames,
  type NamedIn,
  type NameValue,
} from './find.js';
export { labelOf, rankOf } from './label.js';

// for the readers of one bee and of one plant
export { alternativesIn, leavesChoice } from './alternatives.js';
export {
  afterCorrection,
  agreed,
  besideSmallTalk,
  isDoubted,
  isNegated,
  isTalk,
  LONGEST_ANSWER,
  usedBy,
  type Named,
} from './answer.js';
export { isAroundBees, isBeeGenus, withBumble, withInitials } from './bee-words.js';
export { beeHits, isInsect } from './bees.js';
export { genusMentions } from './find.js';
export { beesOf, plantsOf, watchedOf } from './index-of-names.js';
export type { Hit } from './hit.js';
export { isAroundPlants } from './plant-words.js';
export { isUnlisted, plantHits, watchedTaxa } from './plants.js';
export { offering, settleBee, settlePlant, sideBySide } from './settle.js';
export { editsBetween } from './similarity.js';
export { BOMBUS, type Taxon } from './taxa.js';
export { wordAfter, wordBefore, wordsOf, type Word } from './tokens.js';
export { isDescribed, strangersIn } from './unlisted.js';
export { vocabularyOf } from './vocabulary.js';
