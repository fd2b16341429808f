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
  /** "between 3 and 5" */
  between: words,
  /** A number as heard or mistyped, right before a bee: "to impatiens" 2, "ate bimacs" 8. */
  soundsLike: valued,
  /** Between two numbers: "3 or 4", "2 to 3". */
  either: words,
  /** The number behind it has nothing to do with queens: "minutes", "flowers". */
  unitsOfOtherThings: words,
  /** The number behind it is a label: "watch 3:". */
  labelsBefore: words,
  /** "1 impatiens on each": once for each plant watched. */
  each: words,
  /** "both had one bimac": the plants had, where no pollen follows. */
  eachHad: words,
  /** All plants watched, behind "on": "both", "either", "all of them". */
  allPlants: words,
  /** The plants not named: "the others". */
  restPlants: words,
  /** No queens on the plants not named: "nothing else". */
  nothingElse: words,
  /** Words that are read in spite of a slip of the thumb; and slips of shorter ones, with the word meant. */
  slipsFrom: words,
  shortSlips: z.record(z.string(), z.string()),
  /** None of a plant that stands beside it; else that nothing was told yet: "nothing yet". Also among `zero`. */
  zeroSoFar: words,
  /** Makes a "none" one that may not be of queens: "none that i could name", "no bees yet". */
  zeroOfOthers: words,
  /** Of flowers as well as of bees: "and nothing else". */
  elsewise: words,
  /** Between a number and what it turned out to be: "one was a worker". */
  beingOne: words,
  /** Between a number and those of which it counts some: "of the". */
  someOf: words,
  /** Words for another queen that, behind one just counted, say more of that one: "a different". */
  differing: words,
  /** Ends a report and says nothing of other plants: "that's all". */
  thatIsAll: words,
  /** A sentence that begins so and ends in a question mark asks us something. */
  asking: words,
  /** Whose count it is: "my wife says". Two who say the same counted the same queens. */
  saying: words,
  /** What follows counts again what was counted: "so two imps". */
  concluding: words,
  /** "nothing for a while, then 2 imps": a nothing that did not last. */
  phases: words,
  /** What makes it doubtful that a bee counts: it was dead, a male, flew past or was seen outside the watch. */
  unsettling: words,
  /** Told of a bee that visited nothing: "flew over", "didn't land", "heard one". */
  passedBy: words,
  /** Begins a sentence about bees told before: "she", "both". */
  refers: words,
  /** Behind them, what the bees looked like: "had". */
  looks: words,
  /** Names a bee that nobody knows: "unknown", "something unknown". Behind "and" it is one more queen. */
  nameless: words,
  /** "Only flies", "nothing but ants": no queen was seen. */
  onlyOthers: words,
  /** Beside "the same one": seen again on its own plant, which is no visit. */
  returned: words,
  /** One queen went from plant to plant: "visited both". */
  toured: words,
  /** Said of "the same one" where she was not told before: "kept coming back", "three times". */
  keptComing: words,
  /** "Nothing but 1 impatiens on the phlox": the other plants had none. */
  exceptThese: words,
  /** Queens not named yet, of a sum said before: "5 bees, 3 imps and the rest bimacs". */
  remainder: words,
  /** One more queen: "one was an imp, the other a bimac". */
  theOther: words,
  /** A number before it is of queens told already: "bimac. 3 of them". */
  ofThem: words,
  /** Plants by their place in the list: "on the first one", "plant 2". */
  plantByOrder: valued,
  /** Behind "the other": "two". */
  otherNumbers: valued,
  plantWords: words,
  /** Queens nobody counted: "might have missed one". */
  missed: words,
  /** Of `same`, those that say only of which kind: "same kind". */
  sameKind: words,
  /** Between a plant without queens and one with: "but". */
  contrasts: words,
  /** The count and bee said last, again: "same", "ditto". */
  same: words,
  /** A queen that was counted before: "the same one", "that queen again". */
  sameOne: words,
  /** Queens that were counted before: "the same two". */
  sameOnes: words,
  /** She went on to another plant: "then moved to". */
  movedOn: words,
  another: words,
  /** Before a bee: not all were, and nobody knows how many. */
  mostly: words,
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
  /** Where pollen was said before: "one with pollen and one without". */
  withoutIt: words,
  /** "couldn't tell which": a bumble bee of unknown name. */
  cannotTell: words,
  /** Behind a name: "not sure" makes it doubtful. */
  doubtful: words,
  /** Before "but" and a count: "not sure but 2 imps". */
  hedgesBefore: words,
  /** Behind a zero: "none?" is asked back, "none I think" is not. */
  doubtsZero: words,
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
  /** What follows was not seen, up to "saw": "hoping for", "looked for". */
  notSeen: words,
  /** What follows was seen at another time, up to "but today": "last year", "usually". */
  otherTimes: words,
  seenAfterAll: words,
  /** Joins rows: "and", "plus". */
  ands: words,
  ors: words,
  /** Words that mean nothing here. */
  filler: words,
});
