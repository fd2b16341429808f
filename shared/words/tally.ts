/** Queens of each bee on each plant. */
import { z } from 'zod';
import { valued, words } from './kinds.js';

export const tallySection = z.strictObject({
  /** None seen: "none", "didn't see any". */
  zero: words,
  /** Begins like a zero and is none: "no problem". */
  notZero: words,
  /** A count nobody could give: "several", "lots of"; asked for. */
  vague: words,
  /** A vague count with a likely number: "a few" 3. */
  vagueValued: valued,
  /** Before or after a number that it makes inexact: "about", "or so", "at least". */
  inexactBefore: words,
  inexactAfter: words,
  /** Between two numbers: "3 or 4", "2 to 3". */
  either: words,
  /** The number behind it has nothing to do with queens: "minutes", "flowers". */
  unitsOfOtherThings: words,
  /** "1 impatiens on each": once for each plant watched. */
  each: words,
  /** All plants watched, behind "on": "both", "either", "all of them". */
  allPlants: words,
  /** The plants not named: "the others". */
  restPlants: words,
  /** No queens on the plants not named: "nothing else". */
  nothingElse: words,
  /** The count and bee said last, again: "same", "ditto". */
  same: words,
  /** A queen that was counted before: "the same one", "that queen again". */
  sameOne: words,
  /** Queens that were counted before: "the same two". */
  sameOnes: words,
  /** She went on to another plant: "then moved to". */
  movedOn: words,
  another: words,
  /** One bee for all counts: "they're all". */
  allBees: words,
  bothBees: words,
  /** What a queen or bee is called without a name. */
  queens: words,
  /** These only ever mean more than one. */
  queensPlural: words,
  workers: words,
  pollen: words,
  noPollen: words,
  /** "couldn't tell which": a bumble bee of unknown name. */
  cannotTell: words,
  /** Behind a name: "not sure" makes it doubtful. */
  doubtful: words,
  /** "in all": the sum of the rows. */
  total: words,
  /** Puts queens on a plant and nowhere else: "on", "visiting". */
  onPlants: words,
  /** May stand before a plant: "at", "in". */
  prepositions: words,
  /** Stands for a plant without naming it: "tree", "them". */
  plantThings: words,
  /** Visitors that are no bumble bees: "honey bees", "flies". */
  otherInsects: words,
  /** What follows is not so: "not 3 impatiens". */
  denies: words,
  /** Takes back the row before, strongly and weakly: "no wait"; "actually". */
  takesBack: words,
  takesBackWeakly: words,
  /** In a zero, that it is of what was looked for: "saw none". */
  seeing: words,
  /** What follows was not seen in this watch: "hoping for", "last year". */
  notSeen: words,
  /** Joins rows: "and", "plus". */
  ands: words,
  ors: words,
  /** Words that mean nothing here. */
  filler: words,
});
