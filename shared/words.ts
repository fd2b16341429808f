/**
 * All words that the program understands: the shape of `dialogs/LANGUAGE/words.yaml`. One section for each reader,
 * and the sections that several share. Words are written in small letters with straight quotes; how they are read is
 * code in `src/answers`.
 */
import { z } from 'zod';
import { CLOUDS } from './vocabularies.js';

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

const tallySection = z.strictObject({
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

/** How many flowers or queens: `src/answers/count.ts`. */
const countSection = z.strictObject({
  /** "none", "nothing": 0. */
  zero: words,
  /** Look like zero and are not: "none of your business". */
  notZero: words,
  /** A whole answer that may be zero, and may be something else: "no". */
  zeroLike: words,
  /** Before a number below zero. */
  negative: words,
  /** Before a number that was not meant: "not 50". */
  denied: words,
  /** "no", "not a single": 0 before one of `flowers` or `queens`. */
  noBefore: words,
  /** "didn't", "never": 0 before one of `seeing` and one of `anything`. */
  negations: words,
  seeing: words,
  anything: words,
  /** A whole answer that means 1: "a", "just the one". */
  one: words,
  /** Before "one" they make it no number: "this one". */
  beforePronounOne: words,
  flowers: words,
  queens: words,
  /** Taken for queens where nobody says "queen": "bees", "visits". */
  bees: words,
  /** Bees and others that are no queens: "workers", "flies". */
  notQueens: words,
  /** Flowers that are not open: "buds", "wilted". */
  notOpen: words,
  open: words,
  /** What bears flowers and is not counted: "stems". */
  bearers: words,
  /** Before a number, after a number. */
  about: words,
  aboutAfter: words,
  /** "over 200": 200 or more. */
  atLeast: words,
  atLeastAfter: words,
  /** "up to 20": 20 or fewer. */
  atMost: words,
  atMostAfter: words,
  /** Before a number they say nothing of it: "only", "i saw". */
  passedOver: words,
  /** Between the ends of a range: "to". */
  ranges: words,
  /** "between" 40 "and" 50. */
  between: words,
  plusOrMinus: words,
  /** Between two numbers of which one is meant: "or". */
  either: words,
  /** Between numbers that belong together: "and", "plus". */
  together: words,
  totals: words,
  /** Only before a number: "=". */
  totalsBefore: words,
  /** Between two numbers that are multiplied: "3 clumps of 20". */
  multiplying: words,
  /** After a number that only compares: "20 more than last time". */
  relative: words,
  each: words,
  /** "couple": about two, where it multiplies another word. */
  loose: words,
  /** "a few": 3, unsure. */
  few: words,
  /** No number at all: "several", "lots". */
  vague: words,
  /** Where a number's own words end: "but". */
  breaks: words,
  /** One more, without a number: "and another". */
  more: words,
  /** After "none" they make it none there only: "none on the plum". */
  where: words,
  /** Make a number unsure: "can't read my writing". */
  doubts: words,
  /** Not counted at all: "didn't count". */
  unknown: words,
  /** Before a number that counts nothing here: "patch", "age", months. */
  otherBefore: words,
  /** After a number that counts nothing here: "minutes", "feet". */
  otherAfter: words,
  /** Before a clock time, where another number is told as well: "at 3 I had counted 40". */
  clockBefore: words,
  /** Numbers told for different moments do not add up: "then", "yesterday". */
  moments: words,
});

const whenSection = z.strictObject({
  /** Correct what came before only where a date or a time follows at once: "no, 4/30". */
  correcting: words,
  /** Doubts of dates and times besides the hedges that all readers share. */
  doubting: words,
  /** May stand between a correction, a label or a doubt and its date or time: "it was", "on". */
  fillers: words,
  /** "not": the date or time right after it is not meant. */
  not: words,
  /** "didn't": no date after it in the same clause is meant. */
  didNot: words,
  /** After "didn't": it was a watch all the same ("didn't see any"). */
  sawNone: words,
  /** "but", "so": begin a new clause. */
  clauseBreaks: words,
  /** "I'll", "hoping to": what is told has not happened. */
  plans: words,
  /** Look like plans but only say something: "I'll say". */
  notPlans: words,
  /** "not yet" */
  notYet: words,
  /** Before a day that is only the background of another: "than yesterday", "since Monday". */
  backgroundBefore: words,
  /** Weather of another day: "it rained yesterday", "last night's frost". */
  weather: words,
  or: words,
});

const feast = z.union([
  z.strictObject({ month: z.int().min(1).max(12), day: z.int().min(1).max(31) }),
  z.strictObject({ month: z.int().min(1).max(12), weekday: z.int().min(1).max(7), nth: z.int().min(-1).max(5) }),
  z.strictObject({ easter: z.int() }),
]);

const dateSection = z.strictObject({
  /** Names of months, 1 to 12. */
  months: valued,
  /** Names of weekdays that can mean nothing else: 1 is Monday, 7 is Sunday. */
  weekdays: valued,
  /** "sun", "sat": weekdays only beside a date, a time or "on". */
  weekdaysShort: valued,
  /** May stand beside a short weekday that is the whole answer: "sat i think". */
  alongside: words,
  /** Before "sat": somebody sat. */
  sitters: words,
  /** Words that look like a misspelt month, weekday or day and are none: "sturdy". */
  notSlips: words,
  /** "first" to "ninth", "tenth" to "nineteenth", "twentieth", "thirtieth". */
  ordinals: valued,
  /** "st", "nd" after a number. */
  ordinalEndings: words,
  /** "ish" after a number: changes nothing. */
  afterNumber: words,
  the: words,
  of: words,
  on: words,
  /** Days before today: "yesterday" 1, "tomorrow" -1. */
  days: valued,
  /** The same, but only as the answer to the question for a date: "just now" 0. */
  daysWhenAsked: valued,
  /** Units of days: "week" 7. */
  dayUnits: valued,
  monthUnits: words,
  yearUnits: words,
  /** Units of minutes: "hour" 60. */
  minuteUnits: valued,
  ago: words,
  /** "couple" 2, "few" 3: how many days ago is not quite said. */
  inexact: valued,
  /** "about a week ago" is not quite said either. */
  roughly: words,
  orSo: words,
  /** "the day before" a date: days to add. */
  shifts: valued,
  dayUnitsOfShift: words,
  before: words,
  after: words,
  /** Before a weekday. */
  last: words,
  justPast: words,
  this: words,
  next: words,
  /** After a weekday, or before it. */
  lastWeek: words,
  thisWeek: words,
  beforeLast: words,
  weekAgo: words,
  lastMonth: words,
  thisMonth: words,
  /** A Saturday or a Sunday. */
  weekend: words,
  /** A time that is no day: "the other day". */
  vague: words,
  feasts: z.record(z.string(), feast),
  /** Never dates: "24/7". */
  never: words,
  /** After "3/8": it was a fraction. */
  fractionOf: words,
  /** Before "3/8": it was a fraction of the sky. */
  fractionBefore: words,
  /** After "the second": it counted something. */
  counted: words,
  /** After "20 may" or "may": it was no month. */
  notMonthBefore: words,
  /** Before a date in a form. */
  labels: words,
  /** May follow a day that was said as a number: "the 2nd at". */
  dayGoesOn: words,
  /** "the 2nd in the morning", "sat morning". */
  partsOfDay: words,
});

/** Shared by the readers of temperature, sky and wind. */
const weatherSection = z.strictObject({
  /** Words that are read as another: "wasn't" as "not", "skies" as "sky". */
  same: z.record(z.string(), z.string().min(1)),
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
  /** Somewhere in the clause: what is said held only for a part of the watch. "at first", "until the end". */
  partOfTheTime: words,
  /** Directly before a word of weather: it was not so all the time. "turned cloudy". */
  becoming: words,
  /** "twenty point five". */
  point: words,
  /** Between the ends of a range: "to". */
  rangeJoins: words,
  /** Between two guesses: "or". */
  alternativeJoins: words,
  /** In front of a range with "and": "between". */
  between: words,
  /** Make a value unsure, besides `hedges.doubting`. */
  doubting: words,
  /** Replace what was said before, besides `hedges.correcting`. */
  correcting: words,
  /** What is told in such a clause was before the watch, or is yet to come. */
  otherTime: words,
  /** Something changed while they watched: "then", "turned". */
  changes: words,
});

const temperatureSection = z.strictObject({
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
  /** Directly before a number: it is a forecast. "low of 60" is none of the 60s. */
  forecastBefore: words,
  /** The number that follows is no air temperature: "felt like", "humidity". */
  otherBefore: words,
  /** Behind a number: it is no temperature. */
  otherAfter: words,
});

const cloudWords = z.strictObject({ clear: words, few: words, scattered: words, broken: words, overcast: words });
const skySection = z.strictObject({
  labels: words,
  /** The whole sky; cannot be mistaken even in passing. */
  clouds: cloudWords,
  /** The same, but in passing only among other words of weather: "clear", "grey". */
  cloudsInPlace: cloudWords,
  /** The same, but only as all that is said of the sky; "none" only behind a label. */
  cloudsAlone: cloudWords,
  /** Overcast by mood: "gloomy"; gives way to any other word for much cloud. */
  gloom: words,
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
  /** At the end of what is said, behind a word for the whole sky: "sunny mostly" is few. */
  mostly: words,
  /** "sun" is also a day of the week. */
  alsoDays: words,
  rain: words,
  /** Rain in an answer; in a longer text as likely of another day. */
  rained: words,
  /** In the clause of rain, in a longer text: it was another day's. "week". */
  otherDay: words,
  noRain: words,
  /** Says nothing of the sky: rain that was over or is still to come, things named after rain, a patch "in full sun". */
  passedOver: words,
  /** Behind a share of the sky: that much is cloud, or is clear. */
  covered: words,
  uncovered: words,
  eighths: words,
  /** "of", "out of" between a number and eight. */
  outOf: words,
  percent: words,
  /** In the clause of a percentage: it is none of the sky. */
  otherPercent: words,
});

const forceWords = z.record(z.string().regex(/^(\d|1[0-2])$/, 'a Beaufort force, 0 to 12'), words);
const windSection = z.strictObject({
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

const namesSection = z.strictObject({
  /** Words inside names that may be left out: "black and gold", "jack in the pulpit". */
  joining: words,
  /** Other ways to write a word of a name: "2" in "2-spotted". */
  saidAs: z.record(z.string(), z.string()),
  /** What else stands for a name or short form of a bee: "by mac" for "bimac". */
  heardAs: z.record(z.string(), z.string()),
  /** "bombus", "psithyrus", "b": add nothing before a bee's name. */
  beeGenera: words,
  /** "bumblebee", "bumble", "bee": add nothing to a bee's name; one word each. */
  bumblebee: words,
  /** "queen", "worker". */
  aroundBees: words,
  /** Words that may stand before a bare "bumble bee", which then says no more; another word there is a name. */
  beforeBumblebee: words,
  /** Words that may follow a bare "Bombus", which then says no more; another word there is a species. */
  afterBombus: words,
  /** "flowers", "bush", "patch": add nothing to a plant's name. */
  aroundPlants: words,
  /** Of those, what says by itself that a plant is meant: "wildflower", "shrub". */
  plantNouns: words,
  /** Colours, sizes, looks: never a name by themselves. */
  describing: words,
  /** "eastern", "american": a bee's name, unless another word follows that they could belong to. */
  placing: words,
  /** A single word of a bee's name that is only offered: "rusty". */
  faint: words,
  /** Words of the talk around names: no misspelling of a name, and no name. */
  ordinary: words,
  /** Plants that are also given names or ordinary words: "lily", "sage". */
  loose: words,
  /** Last words of many plants' names, which do not tell one from another: "lily", "berry". */
  heads: words,
  /** Before a plant's name they make it another kind: "japanese". */
  otherKinds: words,
  /** Before a plant's name they make it no such plant at all: "false". */
  mock: words,
  /** Before a given name: "aunt", "mrs". */
  people: words,
  /** Begin where a plant stands: "behind". */
  elsewhere: words,
  /** After a plant's name they make it a place: "street". */
  placeEnds: words,
  otherInsects: words,
  /** "no idea": as a bee, any bumble bee. */
  unknown: words,
  /** Hedges besides those of `hedges`: "cf", "looks like". */
  hedges: words,
  /** Hedges of amounts and places, of a name only right before it: "about". */
  amountHedges: words,
  /** Hedges of what stands before them: "?". */
  hedgesAfter: words,
  /** What follows is not meant: "not". */
  negating: words,
  /** Between names one of which is meant: "or". */
  choosing: words,
  /** "with", "has": what follows describes. */
  having: words,
  /** Marks of a bee, as nouns: "band". */
  marks: words,
  /** Where a mark is: "back". */
  body: words,
  /** After a number under 100 a doubt: "percent". */
  percent: words,
  /** First words of a question to us: "what". */
  asking: words,
  /** Words to us, not about a bee or plant: "you mean". */
  chat: words,
});

const timesSection = z.strictObject({
  am: words,
  pm: words,
  /** "p" right after the figures: "3:20p". */
  amLetters: words,
  pmLetters: words,
  /** The moment of the message, as an end: "3:20 until now". */
  now: words,
  justEnded: words,
  /** What voice or thumb makes of "to" between two times: "1:15 2 1:30". */
  typedTo: words,
  /** Words that are a time of day: "noon" 12, "midnight" 0. */
  noon: valued,
  oclock: words,
  /** "15h20", "1520 hrs". */
  hourMarks: words,
  /** "half past", "quarter to": minutes from the hour that follows. */
  fromHour: valued,
  /** "half ten": half past to some, half to to others. */
  halfOnly: words,
  past: words,
  before: words,
  /** "ten to three". */
  minutesTo: words,
  /** "oh five": the zero of minutes. */
  oh: words,
  /** "sharp", "ish": change nothing. */
  afterTime: words,
  /** Between start and end. */
  to: words,
  between: words,
  and: words,
  starts: words,
  ends: words,
  /** "in at 2, out at 2:15": an end only where a time was said before. */
  endsAfterStart: words,
  at: words,
  /** "sunset at 8:10", "got there 3:10": times that are not the watch's. */
  asides: words,
  minuteUnits: words,
  hourUnits: words,
  /** Lengths in words: "quarter of an hour" 15. */
  lengths: valued,
  /** Before a length without its unit: "for 15", "the full fifteen". */
  lengthLeads: words,
  /** After minutes that are no length of the watch: "later", "walk". */
  notLengthBefore: words,
  /** Before them: "every", "after". */
  notLengthAfter: words,
  /** Parts of the day and the hours they hold: from, up to. */
  partsOfDay: z.record(z.string(), z.tuple([z.number().min(0).max(24), z.number().min(0).max(24)])),
  /** "good morning": says nothing of the watch. */
  greetings: words,
  /** May follow a bare number that is an hour: "3 to 4 yesterday". */
  mayFollow: words,
  /** May not follow the end of a span: "3:20 to 4 queens". */
  measures: words,
});

const plantsSection = z.strictObject({
  /** Before or after the name of a plant, no part of it: "there were", "plants of". */
  around: words,
  /** A piece that begins with one of these says more of the plant before: "those", "near the". */
  asides: words,
});

/** Yes and no: `src/answers/yes-no.ts`. */
const yesNoSection = z.strictObject({
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

/** How big the part watched: `src/answers/patch.ts`. */
const patchSection = z.strictObject({
  /** Words for lengths, by their unit. */
  lengths: z.record(z.string(), z.enum(['in', 'ft', 'yd', 'mi', 'mm', 'cm', 'm', 'km'])),
  areas: z.record(z.string(), z.enum(['acre', 'hectare'])),
  /** "sqft": the square of a length in one word. */
  joinedAreas: z.record(z.string(), z.enum(['in', 'ft', 'yd', 'cm', 'm'])),
  /** Before a length they make an area, after it a square: "100 sq ft", "10 ft square". */
  square: words,
  /** Those that make a square after a length; "100 ft sq" may be either. */
  squareAfter: words,
  squared: words,
  by: words,
  /** After and before a length. */
  long: words,
  wide: words,
  lengthBefore: words,
  widthBefore: words,
  across: words,
  acrossBefore: words,
  radius: words,
  radiusBefore: words,
  around: words,
  aroundBefore: words,
  onASide: words,
  /** Anywhere in the answer: what shape one length belongs to. */
  round: words,
  squareShaped: words,
  /** Shapes that sides alone do not settle: "oval". */
  other: words,
  /** A length that is a height, or a way to somewhere. */
  tall: words,
  tallBefore: words,
  elsewhere: words,
  elsewhereBefore: words,
  ranges: words,
  /** Lengths that differ from person to person. */
  paces: words,
  /** "two patches". */
  several: words,
  /** Stick to a number and say nothing: "10ish". */
  suffixes: words,
  each: words,
  /** Between two patches: "and". */
  additional: words,
  /** Say nothing about a length: "about". */
  soft: words,
  /** Before a patch in a longer text: "patch:". */
  labels: words,
  /** What an area in passing belongs to, if not to the patch: "a 40 acre farm". */
  notPatch: words,
});

/** Where a watch was: `src/answers/place.ts` and `src/answers/coordinates`. */
const placeSection = z.strictObject({
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
  /** Before a name with capitals, which may have its article and small words within: "at the Bay of Elms". */
  nameAfter: words,
  nameArticles: words,
  nameJoins: words,
  /** Those that tell a place wherever they stand; the others only at the start of a clause or after `watching`. */
  anywhere: words,
  watching: words,
  determiners: words,
  /** As determiners; they make a place even without "at": "my garden, 70F". */
  owners: words,
  nouns: words,
  /** After a comma they go on with the place: ", lower loop". */
  tails: words,
  /** Written with a capital and no places: days, months. */
  notPlaceNames: words,
});

export const wordsSchema = z.strictObject({
  place: placeSection,
  patch: patchSection,
  yesNo: yesNoSection,
  plants: plantsSection,
  times: timesSection,
  weather: weatherSection,
  temperature: temperatureSection,
  sky: skySection,
  wind: windSection,
  when: whenSection,
  date: dateSection,
  count: countSection,
  tally: tallySection,
  note: noteSection,
  wishes: wishesSection,
  numbers: numbersSection,
  hedges: hedgesSection,
  names: namesSection,
  // Sections of the readers follow, one each: date, times, temperature, sky, wind, patch, place, count, names, tally,
  // yesNo, note; then `wishes`, what people ask of the conversation itself.
});

export type Words = z.infer<typeof wordsSchema>;
