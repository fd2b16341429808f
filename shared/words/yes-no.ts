/** A yes, a no, and what comes with them. */
import { z } from 'zod';
import { words } from './kinds.js';

/** The parts of a sentence that says what is found of what was shown: `src/answers/yes-no/assessments.ts`. */
const assessing = z.strictObject({
  /** "that all", "everything". */
  subjects: words,
  /** A subject with its verb: "that's". */
  joined: words,
  /** "looks", "is". */
  links: words,
  /** "doesn't look", "isn't". */
  notLinks: words,
  /** Leave a doubt: "should be", "might be". */
  maybeLinks: words,
  /** Passed over: "about", "just". */
  adverbs: words,
  /** Make it a yes in part: "mostly". */
  half: words,
  /** Make it a no: "almost". */
  short: words,
  nots: words,
  /** "was": what is right, but not what is only good. */
  pastLinks: words,
  /** Before it, they make it the contrary: "I don't think". */
  denials: words,
  right: words,
  /** Of `right`, those that an adverb makes a sentence of: "quite correct". */
  emphatic: words,
  good: words,
  bad: words,
  /** Behind it, passed over: "to me". */
  tails: words,
  /** "what I wrote down" is right, in three parts. */
  what: words,
  sayers: words,
  said: words,
  /** Before a fault, a yes: "I see nothing wrong". */
  nothing: words,
  faults: words,
  /** A short answer by itself: "I did", "it wasn't". */
  pronouns: words,
  auxiliaries: words,
  auxiliariesNot: words,
});

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
  /** A no with a doubt: "probably not". */
  doubtfulNo: words,
  /** No answer at all: "I don't know", "yes or no". */
  unknowing: words,
  /** Passed over anywhere: "well", "thanks". */
  fillers: words,
  /** Passed over before a yes or no: "I said". */
  leads: words,
  /** Passed over after a yes or no: "that's what I wrote down". */
  chat: words,
  /** Between a yes and its change: "but", "except". */
  contrasts: words,
  /** Make what follows a yes a change: "should", "was". */
  changes: words,
  /** What may be changed: "wind". After a yes or a no their clause is a change. */
  topics: words,
  /** Anywhere in a clause they make it one about what comes, which changes nothing: "I'll". */
  futures: words,
  /** After an answer, a clause that begins so wants a change but tells none: "let me fix something". */
  wanting: words,
  /** A sentence that begins so is a question, with or without its mark: "what's". */
  questions: words,
  /** A sentence that begins so changes nothing, whatever it names: "what a", "can't wait". */
  pleasantries: words,
  /** At the end of a yes they take it back: "yes, wait". */
  halting: words,
  /** What follows replaces what went before: "wait". */
  corrections: words,
  /** At its beginning they make it a correction, and so a no: "change". */
  fixing: words,
  /** So does a thing denied: "it isn't" the redbud. */
  denying: words,
  /** Between what is right and what is wrong: "5 queens not 4". */
  insteadOf: words,
  /** Somewhere in the answer they make it a no: "the date is wrong". */
  wrongLater: words,
  /** Before our own words in quotation marks, from telephones that send reactions as text: "Liked", "Disliked". */
  tapbackYes: words,
  tapbackNo: words,
  assessing,
  /** Words whose slips are mended besides those of yes and no, and words that are no slips of any. */
  slipsFrom: words,
  notSlips: words,
});
