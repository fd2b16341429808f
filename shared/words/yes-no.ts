/** A yes, a no, and what comes with them. */
import { z } from 'zod';
import { words } from './kinds.js';

/** Yes and no: `src/answers/yes-no.ts`. */
export const yesNoSection = z.strictObject({
  yes: words,
  /** Yes only where they are the whole answer or its own sentence: "good" but not "good morning". */
  yesAlone: words,
  no: words,
  noAlone: words,
  /** "no" itself: what follows decides whether it is one ("no it was 68") or not ("no queens"). */
  bareNo: words,
  afterNo: words,
  nothings: words,
  /** Neither yes nor no: "maybe". */
  doubtful: words,
  /** Passed over anywhere: "well", "thanks". */
  fillers: words,
  /** Passed over before a yes or no: "I said". */
  leads: words,
  /** Passed over after a yes or no: "that's what I wrote down". */
  chat: words,
  /** Between a yes and its change: "but", "except". */
  contrasts: words,
  /** Make what follows a yes a change: "should", "was", "wind". */
  changes: words,
  /** What follows replaces what went before: "wait". */
  corrections: words,
  /** Somewhere in the answer they make it a no: "the date is wrong". */
  wrongLater: words,
  /** Before our own words in quotation marks, from telephones that send reactions as text: "Liked", "Disliked". */
  tapbackYes: words,
  tapbackNo: words,
});
