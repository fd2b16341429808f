/** A whole watch in one message or mail. */
import { z } from 'zod';
import { words } from './kinds.js';

export const noteSection = z.strictObject({
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
  /** Says nothing, but reads as if it did: "by the way". */
  chat: words,
  /** Before a number that is no value: "age", "room". */
  asidesBefore: words,
  /** After a number that is no value: "years old". */
  asidesAfter: words,
  /** "watch", "survey": "watch no. 2" counts watches. */
  watchNouns: words,
  /** "won't be able to": no watch was made. */
  noWatch: words,
  /** "watch", "watched": a paragraph that has them is of the watch. */
  ofWatch: words,
  /** Before what a sentence begins with: "and", "also", "by the way". */
  beforeAside: words,
  /** Begin a question to us: "do you want", "should I". */
  asksUs: words,
  /** What is still to come: "next weekend". */
  coming: words,
  /** Times gone by: "last year". */
  elsewhen: words,
  /** The time of the watch, beside another: "this year", "today". */
  thisTime: words,
  ordinals: words,
  /** At the start of a question: "is", "what". */
  asking: words,
  /** Between what is named and its value: "the temp, it was 64". */
  resuming: words,
  /** A plant that nobody could name: "unknown" before or "I don't know" behind "flower". */
  strangers: z.strictObject({ before: words, nouns: words, after: words }),
  /** Behind a plant that was not watched: "isn't open yet", "were done". */
  notInFlower: words,
  /** Before a plant that only says where: "next to", "instead of". */
  besidePlants: words,
  /** Tells that the plants of its sentence were watched: "watched", "sat with". */
  watching: words,
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
    /** Over all of a watch: "Watch: Sat. May 2, 11:30". */
    heading: words,
    /** Who it is from, up to the end of the sentence: "Observer: Dale Moss. 1:15 to 1:30 pm". */
    person: words,
    /** Nothing of a watch: "email". */
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
