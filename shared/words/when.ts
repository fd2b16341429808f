/** Days and times. */
import { z } from 'zod';
import { valued, words } from './kinds.js';

export const whenSection = z.strictObject({
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
  /** Before "today" they make it the day of the report: "writing". */
  reporting: words,
  /** Weather of another day: "it rained yesterday", "last night's frost". */
  weather: words,
  or: words,
});

const feast = z.union([
  z.strictObject({ month: z.int().min(1).max(12), day: z.int().min(1).max(31) }),
  z.strictObject({ month: z.int().min(1).max(12), weekday: z.int().min(1).max(7), nth: z.int().min(-1).max(5) }),
  z.strictObject({ easter: z.int() }),
]);

export const dateSection = z.strictObject({
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
  /** A short weekday behind them is one: "watched sat". */
  doings: words,
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
  /** Between a weekday and its month: "the last Friday in April". */
  inMonth: words,
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

export const timesSection = z.strictObject({
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
