/**
 * All words that the program understands: the shape of `dialogs/LANGUAGE/words.yaml`. One section for each reader,
 * and the sections that several share. Words are written in small letters with straight quotes; how they are read is
 * code in `src/answers`.
 */
import { z } from 'zod';

const words = z.array(z.string().min(1));
/** A word and the number it stands for. */
const valued = z.record(z.string(), z.number());

const numbersSection = z.strictObject({
  /** "one" to "nineteen", "zero". */
  units: valued,
  /** "twenty" to "ninety". */
  tens: valued,
  /** "hundred", "thousand", "k": multiply what stands before them. */
  scales: valued,
  /** "a", "an": one, but only before a scale or as a whole answer. */
  articles: words,
  /** "dozen" 12, "couple" 2, "pair" 2: take an article or a number before them. */
  groups: valued,
  /** "dozens" 12: only after a number. */
  manyGroups: valued,
  /** "of" between a group and what it counts: "a couple of hundred". */
  groupJoins: words,
  /** "half", "quarter", "third": fractions. */
  fractions: valued,
  /** "and" inside a number: "two hundred and five". */
  joins: words,
});

const hedgesSection = z.strictObject({
  /** Stay sure: "I think", "about", "around". */
  soft: words,
  /** Make a value unsure, a name doubtful: "maybe", "not sure but", "?". */
  doubting: words,
  /** What comes after replaces what came before: "sorry", "no wait", "I mean". */
  correcting: words,
});

const wishesSection = z.strictObject({
  /** A whole message, without marks at its end. */
  plain: z.strictObject({
    help: words,
    example: words,
    back: words,
    skip: words,
    /** "don't know": skips what may be skipped. */
    unknown: words,
    'so-far': words,
    pause: words,
    'go-on': words,
    'throw-away': words,
    start: words,
    stop: words,
    undo: words,
    new: words,
    practice: words,
    real: words,
    'same-place': words,
    /** "that's all": nothing more on the plants not named. */
    'all-done': words,
    greeting: words,
  }),
  /** Left out at either end: "please", "can we". */
  polite: words,
  /** "fix my last watch"; a number may follow. */
  fix: words,
  watchNumber: words,
  /** What follows is a field, perhaps with its value. */
  change: words,
  add: words,
  takeOut: words,
  remark: words,
  /** What a person may call each field when they want to change it. */
  fields: z.record(z.string(), words),
  /** Between a field and its new value: "to", "should be", "was". */
  becomes: words,
  /** A place that is asked about once: the words that make it one's own. */
  own: words,
  /** Words by which a habitat is told in passing. */
  habitat: words,
  /** Words that answer whether a place is private: "it's a park". */
  publicPlace: words,
  /** Before a name: "my name is". */
  nameLead: words,
  /** "the first one", by the position it stands for. */
  ordinals: valued,
  /** "either", "can't tell": takes the genus at the end of the offers. */
  either: words,
});

const noteSection = z.strictObject({
  /** At the start of a note: "good morning", "dear". */
  greetings: words,
  /** Who is greeted: "there", "all". */
  greeted: words,
  /** Only ever the end of a letter: "yours truly". */
  closings: words,
  /** Often the end of a letter: "thanks", "best". */
  weakClosings: words,
  /** "ps": a signature is over. */
  postscripts: words,
  /** "sent from my": put there by a telephone. */
  sentFrom: words,
  /** A line above another mail: "original message". */
  quotedBelow: words,
  /** "from", "subject": lines at the head of a mail. */
  mailHeaders: words,
  /** "on" begins, "wrote" ends the line above a quotation. */
  attributionBegins: words,
  wrote: words,
  /** Before a number that is no value: "age", "room". */
  asidesBefore: words,
  /** After a number that is no value: "years old". */
  asidesAfter: words,
  /** "watch", "survey": "watch no. 2" counts watches. */
  watchNouns: words,
  ordinals: words,
  /** What stands before ":" in a form, by the field it names; "weather" is temperature, sky and wind. */
  labels: z.strictObject({
    date: words,
    times: words,
    place: words,
    temperature: words,
    sky: words,
    wind: words,
    weather: words,
    patch: words,
    plants: words,
    tally: words,
    /** Nothing of a watch: "observer", "email". */
    other: words,
  }),
  /** Words of a quoted question that tell which field its answer belongs to. */
  questions: z.strictObject({
    date: words,
    times: words,
    place: words,
    temperature: words,
    sky: words,
    wind: words,
    patch: words,
    plants: words,
    tally: words,
  }),
});

export const wordsSchema = z.strictObject({
  note: noteSection,
  wishes: wishesSection,
  numbers: numbersSection,
  hedges: hedgesSection,
  // Sections of the readers follow, one each: date, times, temperature, sky, wind, patch, place, count, names, tally,
  // yesNo, note; then `wishes`, what people ask of the conversation itself.
});

export type Words = z.infer<typeof wordsSchema>;
