/** Where it was. */
import { z } from 'zod';
import { words } from './kinds.js';

/** Where a watch was: `src/answers/place.ts` and `src/answers/coordinates`. */
export const placeSection = z.strictObject({
  /** Before a number of degrees. */
  latitude: words,
  longitude: words,
  /** Before or after a number of degrees. */
  hemispheres: z.record(z.string(), z.enum(['n', 's', 'e', 'w'])),
  degrees: words,
  minutes: words,
  seconds: words,
  /** Beside the metres of a grid. */
  easting: words,
  northing: words,
  utm: words,
  zone: words,
  /** Before and after so many metres: "accurate to", "accuracy". */
  accuracyBefore: words,
  accuracyAfter: words,
  accuracySoft: words,
  /** Between the two numbers of a pair. */
  together: words,
  /** After so many metres they tell a way, no accuracy: "within 10 m of the bridge". */
  awayFrom: words,
  /** Reference systems that are the same as ours within a few metres: left out of the words. */
  datums: words,
  /** Beside coordinates they are no words of the place: "gps". */
  coordinateLabels: words,
  /** Before metres above the sea, which are left out. */
  height: words,
  /** Before the words of a place: "place:". */
  labels: words,
  /** Before "at" and the words of a place: "it was". */
  sentenceLeads: words,
  /** How questions begin. */
  questions: words,
  /** At the beginning of what ends with a question mark. */
  questionVerbs: words,
  /** Whole answers that name no place: "don't know", "hello". */
  unknown: words,
  /** Behind coordinates they are no words of the place: "thanks". */
  politeAfter: words,
  /** Between a hedge and the place: "not sure, but". */
  hedgeJoins: words,
  /** Stick to numbers that tell no place: "66F". */
  otherSuffixes: words,
  /** An answer of only these and numbers is about something else: "yesterday", "sunny". */
  otherKinds: words,
  /** Make words unsure: "not sure". */
  doubts: words,
  /** In a longer text a place is told by these: "at", "my", "garden". */
  prepositions: words,
  /** Before a thing that is pointed at, which is then a place whatever it is: "by the pump". */
  beside: words,
  /** "by the way" is no place. */
  notBeside: words,
  /** Before a name with capitals, which may have its article and small words within: "at the Bay of Elms". */
  nameAfter: words,
  /** Before a name in small letters. */
  smallNameAfter: words,
  nameArticles: words,
  nameJoins: words,
  /** Those that tell a place wherever they stand; the others only at the start of a clause or after `watching`. */
  anywhere: words,
  watching: words,
  determiners: words,
  /** As determiners; they make a place even without "at": "my garden, 70F". */
  owners: words,
  nouns: words,
  /** More words of a place in an answer about it: "home", "mailbox". */
  spots: words,
  /** Of all those, what says too little by itself: "place", "way". */
  vague: words,
  /** Before the number of a place: "highway", "marker". */
  numbered: words,
  /** Before its number it is a place with no more said: "site". */
  numberedAlone: words,
  /** Of the vague words, what is a place behind "the" or "my", and what else may stand before them: "usual". */
  pointed: words,
  pointing: words,
  /** Before a number they make it a reading: "said". */
  telling: words,
  /** After so many miles they tell a way: "south of". */
  beyond: words,
  /** After a house number and a name: "street". */
  streets: words,
  /** After a comma they go on with the place: ", lower loop". */
  tails: words,
  /** Written with a capital and no places: days, months. */
  notPlaceNames: words,
  /** A side of a place, no place: "the thermometer in the shade of the shed". */
  sides: words,
  /** No part of a name in small letters: "at noon on the hill". */
  notInNames: words,
});
