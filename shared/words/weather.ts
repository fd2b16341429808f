/** Temperature, sky and wind. */
import { z } from 'zod';
import { CLOUDS } from '../vocabularies.js';
import { valued, words } from './kinds.js';

/** Shared by the readers of temperature, sky and wind. */
export const weatherSection = z.strictObject({
  /** Words that are read as another: "wasn't" as "not", "skies" as "sky". */
  same: z.record(z.string(), z.string().min(1)),
  /** Phrases as a telephone hears them in an answer, word for word: "blew sky" as "blue sky". */
  heard: z.record(z.string().min(1), z.string().min(1)),
  /** May stand inside a phrase without changing it: "the", "was", "nice". */
  skipped: words,
  /** Of the wind: "nw", "southerly". Skipped in phrases too. */
  directions: words,
  /** May stand beside a word that otherwise counts only by itself: "today", "outside". */
  fillers: words,
  /** A point behind them ends no clause: "p. cloudy". */
  abbreviated: words,
  /** Begin a new clause: "but". */
  breaks: words,
  /** Say that the next phrase does not hold: "not", and what `same` makes of "no". */
  negators: words,
  /** Between "not" and its phrase: "very", "that". */
  strengths: words,
  /** Good words within a letter of ours: "clean" is no slip for "clear". */
  notMisspelt: words,
  /** Behind a word of weather they make a name or a spot of it: "Clear Lake", "a sunny hillside". */
  notWeatherBefore: words,
  /** In a list of weather they are as likely an answer on bees: "none". */
  alsoCounts: words,
  /** Look like one of `changes` and are none: "now and then". */
  noChanges: words,
  /** Begins a sentence that tells the weather, whatever stands before: "… it was sixty two and cloudy". */
  opening: words,
  /** Somewhere in the clause: what is said held only for a part of the watch. "at first", "until the end". */
  partOfTheTime: words,
  /** Before a time of day: it had changed until then. "blue by 10:15" */
  changedBy: words,
  /** Directly before a word of weather: it was not so all the time. "turned cloudy". */
  becoming: words,
  /** "twenty point five". */
  point: words,
  /** Behind "seventy", before a unit or an end, as a telephone hears them: "won", "ate". */
  unitsByEar: valued,
  /** Between the ends of a range: "to". */
  rangeJoins: words,
  /** Between two guesses: "or". */
  alternativeJoins: words,
  /** In front of a range with "and": "between". */
  between: words,
  /** Ask what a word means: no answer. "what counts as breezy" */
  questions: words,
  /** What such a clause tells is of the watch, whatever others tell. */
  duringWatch: words,
  /** Make a value unsure, besides `hedges.doubting`. */
  doubting: words,
  /** Look like one of the doubts and are none: "sunny as could be". */
  notDoubting: words,
  /** At the beginning of a clause that ends with "?": what was said before is doubted. "calm, is 0 ok?" */
  asking: words,
  /** A second reading follows: "one says 61, the other 65". */
  otherSources: words,
  /** Replace what was said before, besides `hedges.correcting`. */
  correcting: words,
  /** Corrections only at the beginning of a clause: "it was rather windy". */
  notCorrecting: words,
  /** What others say of the weather, in such a clause, gives way to what the observer saw. */
  reported: words,
  /** What is told in such a clause was at another time or place, if another clause tells of the watch. */
  beforehand: words,
  /** What is told in such a clause was before the watch, or is yet to come. */
  otherTime: words,
  /** Something changed while they watched: "then", "turned". */
  changes: words,
});

export const temperatureSection = z.strictObject({
  /** What may stand behind a number for °F and °C. */
  units: z.strictObject({ F: words, C: words, degrees: words }),
  /** "temp", "thermometer": a number beside it is a temperature. */
  labels: words,
  /** The same, but only with a mark behind: "t=64". */
  labelsWithMark: words,
  /** Behind a number, before a label: "58 on the thermometer". */
  readFrom: words,
  /** "low" 2, "mid" 5, "high" 8: what they add to a decade. */
  parts: valued,
  /** Parts that before a bare number could also be a forecast: "high 70". */
  doubtfulParts: words,
  /** "seventies" 70, "teens" 10. */
  decades: valued,
  /** "sixty-something". */
  somethings: words,
  below: words,
  /** Behind a number: "5 below". */
  belowAfter: words,
  /** Behind a number, says only that it is not below. */
  aboveAfter: words,
  /** Directly before a number: it is a forecast. "low of 60" is none of the 60s. */
  forecastBefore: words,
  /** The number that follows is no air temperature: "felt like", "humidity". */
  otherBefore: words,
  /** Behind a number: it is no temperature. */
  otherAfter: words,
});

const cloudWords = z.strictObject({ clear: words, few: words, scattered: words, broken: words, overcast: words });
export const skySection = z.strictObject({
  labels: words,
  /** The whole sky; cannot be mistaken even in passing. */
  clouds: cloudWords,
  /** The same, but in passing only among other words of weather: "clear", "grey". */
  cloudsInPlace: cloudWords,
  /** The same, but only as all that is said of the sky; "none" only behind a label. */
  cloudsAlone: cloudWords,
  /** Overcast by mood: "gloomy"; gives way to any other word for much cloud. */
  gloom: words,
  /** "blue": clear where nothing else is said; beside much cloud it is only a gap. */
  blue: words,
  /** Directly beside sun or cloud they make sun and cloud by turns: "in and out". */
  byTurns: words,
  /** May stand between: "kept". */
  turning: words,
  /** "sun behind clouds"; scattered where a word of `repeats` stands beside it, else it leaves open how much. */
  hidden: words,
  repeats: words,
  /** A gap beside words of much cloud, nothing by themselves: "hole". */
  holes: words,
  /** The sun shows through: "sunny breaks". */
  gaps: words,
  /** Clear where nothing else is said; beside clouds it only shows between them. */
  sun: words,
  /** Clear where nothing else is said; "bright overcast" is overcast. */
  bright: words,
  /** "hazy": few where nothing else is said. */
  haze: words,
  someCloud: words,
  fewClouds: words,
  manyClouds: words,
  /** "clouds", no word on how many. */
  bareCloud: words,
  /** Leave two classes open: the better one first. */
  vague: z.array(z.strictObject({ words, offer: z.array(z.enum(CLOUDS)).min(1), rain: z.boolean().default(false) })),
  /** How many clouds, with any of the adjectives between it and the noun: "a handful of small white clouds". */
  amounts: z.strictObject({ few: words, some: words, many: words }),
  cloudAdjectives: words,
  /** Such clouds let the sun through; they stand behind a word of `amounts.few` only. */
  thinCloudAdjectives: words,
  cloudNouns: words,
  /** Before or behind a word for the whole sky, as all else that is said: "sunny mostly" is few. */
  mostly: words,
  /** "sun" is also a day of the week. */
  alsoDays: words,
  rain: words,
  /** Rain in an answer; in a longer text as likely of another day. */
  rained: words,
  /** Behind a word of rain, and then the end: "rain: none". */
  noneOf: words,
  /** A little before or behind a word of rain: it was before the watch, is yet to come, or is elsewhere. */
  rainElsewhen: z.strictObject({ before: words, behind: words }),
  /** In the clause of rain, in a longer text: it was another day's. "week". */
  otherDay: words,
  noRain: words,
  /** Says nothing of the sky: rain that was over or is still to come, things named after rain, a patch "in full sun". */
  passedOver: words,
  /** Behind a share of the sky: that much is cloud, or is clear. */
  covered: words,
  uncovered: words,
  /** Behind a share of the sky: what follows is another part of it. "7/8 with a sliver of blue" */
  otherPart: words,
  eighths: words,
  /** "of", "out of" between a number and eight. */
  outOf: words,
  percent: words,
  /** In the clause of a percentage: it is none of the sky. */
  otherPercent: words,
});

const forceWords = z.record(z.string().regex(/^(\d|1[0-2])$/, 'a Beaufort force, 0 to 12'), words);
export const windSection = z.strictObject({
  labels: words,
  /** By Beaufort force; cannot be mistaken even in passing. */
  forces: forceWords,
  /** The same, but in passing only among other words of weather, and only where nothing better is said: "a breeze". */
  forcesInPlace: forceWords,
  /** The same, but only as all that is said of the wind: "light", "moderate". */
  forcesAlone: forceWords,
  /** Leave several forces open: the best first. */
  vague: z.array(z.strictObject({ words, offer: z.array(z.int().min(0).max(12)).min(1) })),
  vagueAlone: z.array(z.strictObject({ words, offer: z.array(z.int().min(0).max(12)).min(1) })),
  /** Behind or before a strength they make it a gust. */
  gusts: words,
  /** What the wind moves, how, and the forces that leaves open; "stays" is how things move that do not. */
  effects: z.strictObject({
    things: z.record(z.string(), words),
    motions: z.record(z.string(), words),
    /** Of `motions`, those that count only at the end of a clause: "leaves still", not "leaves still wet". */
    onlyAtEnd: words,
    forces: z.record(z.string(), z.record(z.string(), z.array(z.int().min(0).max(12)).min(1))),
    /** Which motions of which things are told of the wind in a longer text too. */
    inPassing: z.record(z.string(), words),
    /** Things so plain that other words may stand between them and their motion: "smoke from the chimney rose". */
    evenApart: words,
  }),
  beaufort: words,
  /** Alone or stuck to a number in an answer about the wind: "f3", "b2". */
  beaufortLetters: words,
  speedUnits: z.strictObject({ mph: words, 'km/h': words, 'm/s': words, kn: words }),
  /** Units only in an answer about the wind: "5 miles". */
  speedUnitsInAnswer: z.strictObject({ mph: words, 'km/h': words, 'm/s': words, kn: words }),
  /** Only an upper bound is said, before or behind the number: "under 10 mph", "5 tops". */
  underAfter: words,
  under: words,
});
