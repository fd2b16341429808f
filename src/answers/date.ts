/** Reads the day of a watch: "yesterday", "April 28", "4/28", "last Monday", "the 2nd". */
import type { Ask } from '../../shared/phrases.js';
import type { Context, Finder, Reader, Reading, Span } from './reading.js';
import { LONGEST_TEXT, none, sure, unsure } from './reading.js';
import { addDays, dayOf, lastWeekday, latestDayOfMonth, monthsBefore, weekdayOf, yearOf } from './when/calendar.js';
import {
  correctedPlace,
  isBackground,
  isDenied,
  isDoubted,
  isNotYet,
  isPlanned,
  isWeatherOnly,
} from './when/company.js';
import { clockBegins } from './when/clock-begins.js';
import { bareDay, daysMentioned, scanOf } from './when/days.js';
import type { DayMention, Mention, Scan, WeekdayMention } from './when/mention.js';
import { labelledBefore, MONTHS_WITHOUT_YEAR, numericDay, withoutYear } from './when/numeric-days.js';
import { smallNumberAt, spanOf, tokensOf, type Token } from './when/tokens.js';

/** "5-3" without a year is believed where it lies this near; further back it may be a span of hours. */
const DAYS_OF_LOOSE_DATE = 60;

/** A weekday this many tokens from a date speaks of that date, also in a long note. */
const TOKENS_TO_ITS_WEEKDAY = 4;

type Said = DayMention | WeekdayMention;

/**
 * Reads the answer to the question for a date. Value: ISO date, local to the survey. Always today or before where the
 * words leave a choice; a date that lies ahead, over a year back, or over nine months back without a year is offered.
 */
export const readDate: Reader<string> = (text, context) => {
  if (text.trim() === '') return none('empty');
  if (text.length > LONGEST_TEXT) return none('too-long');
  const scan = scanOf(text, context);
  const mentions = daysMentioned(scan);
  const said = notWeak(scan, meant(scan, mentions, 'asked'));
  if (said.length > 0) return settle(scan, said);
  if (mentions.some((mention) => mention.is === 'impossible')) return none('impossible-date');
  const bare = mentions.length === 0 ? bareNumber(scan) : null;
  if (bare) return bare;
  return none(mentions.some((mention) => mention.is === 'vague') ? 'which-day' : 'no-date');
};

/**
 * Finds the date in a longer text: only what is unmistakably one, and none where the words around say that it is not
 * the day of the watch. One reading at most; two different days are one that is unsure.
 */
export const findDate: Finder<string> = (text, context) => {
  const scan = scanOf(text, context);
  const said = meant(scan, daysMentioned(scan), 'in-passing');
  const labelled = said.filter((mention) => mention.is === 'day' && labelledBefore(scan, mention.at));
  const kept = labelled.length > 0 ? withTheirWeekdays(said, labelled) : ofOneDate(said);
  if (kept.length === 0) return [];
  const reading = settle(scan, kept);
  return reading.state === 'none' ? [] : [reading];
};

/** The spans of everything in a text that is a date, for readers of other numbers in the same answer. */
export function dateSpans(text: string, context: Context): readonly Span[] {
  const scan = scanOf(text, context);
  return daysMentioned(scan)
    .filter((mention) => mention.is !== 'vague' && !(mention.is === 'day' && mention.weak))
    .map(({ at, next }) => spanOf(scan.tokens, at, next));
}

/** What is left when the days that are denied, planned, taken back or only background are left out. */
function meant(scan: Scan, mentions: readonly Mention[], asked: 'asked' | 'in-passing'): Said[] {
  const { tokens, words } = scan;
  const notYet = isNotYet(tokens, words);
  const meantOnes = mentions.filter((mention) => {
    if (mention.is === 'vague' || (asked === 'in-passing' && !mention.inPassing)) return false;
    if (isDenied(tokens, mention, words) || isBackground(tokens, mention, words)) return false;
    const explicit = mention.is === 'day' && mention.explicit;
    return explicit || !(notYet || isPlanned(tokens, mention, words));
  });
  const standing = meantOnes.slice(correctedPlace(tokens, meantOnes, words) ?? 0);
  // "4/31, a Thursday" is a slip that no other word mends
  const said = standing.filter((mention) => mention.is === 'day' || mention.is === 'weekday');
  if (said.length < standing.length) return [];
  // "well now, it was Sunday", "just got in, watched Saturday"
  const aside = (mention: Said): boolean =>
    mention.is === 'day' && !mention.inPassing && mention.dates[0] === scan.today;
  const told = said.some((mention) => !aside(mention)) ? said.filter((mention) => !aside(mention)) : said;
  const watched = told.filter((mention) => !isReporting(scan, mention));
  const days = (watched.length > 0 ? watched : told).filter(
    (mention) => (mention.is === 'day' && mention.explicit) || !isWeatherOnly(tokens, mention, words),
  );
  return days.length > 0 || asked === 'in-passing' ? days : said;
}

/** "writing today": the day of the report, where another is told as well. */
function isReporting({ tokens, words, today }: Scan, mention: Said): boolean {
  if (mention.is !== 'day' || mention.dates[0] !== today) return false;
  const before = tokens.slice(Math.max(0, mention.at - 3), mention.at).map(({ text }) => text);
  return before.some((word) => words.when.reporting.includes(word));
}

/** Drops "5-3" where something better is said; alone it is a date, near by a sure one. */
function notWeak(scan: Scan, said: readonly Said[]): Said[] {
  const strong = said.filter((mention) => mention.is === 'weekday' || !mention.weak);
  if (strong.length > 0) return strong;
  const [only, ...others] = said;
  if (only?.is !== 'day' || others.length > 0) return [];
  const { tokens, words, today } = scan;
  const near = only.dates[0] >= addDays(today, -DAYS_OF_LOOSE_DATE);
  const alone = tokens.every(
    (token, i) => (i >= only.at && i < only.next) || token.kind === 'sign' || words.when.fillers.includes(token.text),
  );
  // "04.05." is how a date is written where the day comes first
  const hyphened = tokens[only.at + 1]?.text === '-' || (scan.order === 'DMY' && tokens[only.next]?.text === '.');
  if (alone && near && hyphened) return [only];
  const goesOn = tokens[only.next]?.kind === 'sign' || clockBegins(tokens, only.next, words);
  const leads = only.at === 0 && goesOn;
  return alone || (leads && near) ? [{ ...only, doubt: only.doubt ?? 'loose-date' }] : [];
}

/** "22" or "0503" as the whole answer. */
function bareNumber(scan: Scan): Reading<string> | null {
  const { tokens, today, order } = scan;
  const spoken = spokenNumbers(scan);
  if (spoken) return bareNumber({ ...scan, tokens: spoken });
  const numbers = tokens.filter((token) => token.kind === 'number');
  const [first, second] = numbers;
  if (!first || tokens.some((token) => token.kind === 'word')) return null;
  const pair = (a: string, b: string): readonly string[] => withoutYear(scan, Number(a), Number(b));
  let dates: readonly string[] = [];
  const third = numbers[2];
  if (third && second && tokens.length === 3) {
    // "4 29 26": three numbers alone are nothing but a date
    const mention = numericDay({ ...scan, tokens: tokensOf(`${first.text}/${second.text}/${third.text}`) }, 0);
    return mention?.is === 'day' ? settle(scan, [{ ...mention, at: 0, next: 3 }]) : null;
  }
  if (second && tokens.length === 2) dates = pair(first.text, second.text);
  else if (tokens.length !== 1) return null;
  else if (first.text.length <= 2)
    dates = [latestDayOfMonth(Number(first.text), today)].filter((date) => date !== null);
  else if (first.text.length === 4) dates = pair(first.text.slice(0, 2), first.text.slice(2));
  else if (first.text.length === 6) {
    const [a, b, c] = [0, 2, 4].map((from) => Number(first.text.slice(from, from + 2))) as [number, number, number];
    const date = order === 'MDY' ? dayOf(2000 + c, a, b) : dayOf(2000 + c, b, a);
    dates = date === null ? [] : [date];
  }
  if (dates.length === 0) return null;
  const [date] = dates;
  // "050126": a year at its end, and near
  const near = date !== undefined && date <= today && date >= addDays(today, -DAYS_OF_LOOSE_DATE);
  if (first.text.length === 6 && near) return sure(date, [spanOf(tokens, 0, tokens.length)]);
  const mention = bareDay(scan, dates);
  return mention.is === 'day' ? unsure(mention.dates, 'loose-date', [spanOf(tokens, 0, tokens.length)]) : null;
}

/** "five four twenty six", "five four twenty twenty six" in figures; null where other words stand among them. */
function spokenNumbers({ tokens, words, today }: Scan): readonly Token[] | null {
  const said: number[] = [];
  for (let at = 0; at < tokens.length;) {
    const number = smallNumberAt(tokens, at, words.numbers);
    if (number?.written !== 'words') return null;
    said.push(number.value);
    at = number.next;
  }
  const century = Math.floor(yearOf(today) / 100);
  const year = said.length === 4 && said[2] === century ? [said[0], said[1], said[3]] : said;
  return year.length === 3 ? tokensOf(year.join(' ')) : null;
}

/** In a note, only weekdays right beside a date speak of it. */
function withTheirWeekdays(said: readonly Said[], days: readonly Said[]): Said[] {
  return said.filter((mention) => {
    if (days.includes(mention)) return true;
    if (mention.is !== 'weekday') return false;
    return days.some(
      (day) =>
        Math.abs(day.at - mention.next) <= TOKENS_TO_ITS_WEEKDAY ||
        Math.abs(mention.at - day.next) <= TOKENS_TO_ITS_WEEKDAY,
    );
  });
}

/** Days with their own weekdays; weekdays alone only where there is no day. */
function ofOneDate(said: readonly Said[]): readonly Said[] {
  const days = said.filter((mention) => mention.is === 'day');
  return days.length === 0 ? said : withTheirWeekdays(said, days);
}

const weekdayFits = (mention: WeekdayMention, date: string): boolean => mention.weekdays.includes(weekdayOf(date));

/** Puts together what is said: all must be able to mean one day, or it is asked back. */
function settle(scan: Scan, said: readonly Said[]): Reading<string> {
  const used = said.map(({ at, next }) => spanOf(scan.tokens, at, next));
  const days = said.filter((mention) => mention.is === 'day');
  const weekdays = said.filter((mention) => mention.is === 'weekday');
  const doubted = isDoubted(scan.tokens, said, scan.words);

  if (days.length === 0) {
    const dates = [...new Set(weekdays.flatMap((day) => day.weekdays.map((one) => lastWeekday(one, scan.today))))];
    const [date] = dates;
    if (date === undefined) return none('no-date', used);
    if (dates.length > 1) return unsure(dates, 'two-dates', used);
    return doubted ? unsure([date], 'doubted-date', used) : sure(date, used);
  }

  const ordered = explicitFirst(scan, days);
  const [first, ...others] = ordered;
  if (!first) return none('no-date', used);
  const common = first.dates.filter((date) => others.every((day) => day.dates.includes(date)));
  const [date] = common.filter((candidate) => weekdays.every((day) => weekdayFits(day, candidate)));
  if (date === undefined) {
    const all = [...new Set(ordered.flatMap((day) => day.dates.slice(0, others.length > 0 ? 1 : undefined)))];
    if (common.length > 0) {
      const byWeekday = weekdays.flatMap((day) => day.weekdays.map((weekday) => lastWeekday(weekday, scan.today)));
      return unsure([...new Set([...all, ...byWeekday])], 'weekday-differs', used);
    }
    return unsure(all, 'two-dates', used);
  }

  // Said twice, or with its weekday, a day that had two meanings has one
  const pinned = said.length > 1 && (others.length > 0 || common.length > 1);
  const doubt: Ask | null =
    lies(date, days, scan.today) ?? (pinned ? null : first.doubt) ?? (doubted ? 'doubted-date' : null);
  if (doubt === null) return sure(date, used);
  return unsure(pinned ? [date] : [date, ...first.dates.filter((other) => other !== date)], doubt, used);
}

/** Why a date needs a question for where it lies; null where it needs none. */
function lies(date: string, days: readonly DayMention[], today: string): Ask | null {
  if (date > today) return 'future-date';
  const yearSaid = days.some((day) => day.yearSaid);
  if (!yearSaid && date < monthsBefore(today, MONTHS_WITHOUT_YEAR)) return 'no-year';
  return date < monthsBefore(today, 12) ? 'old-date' : null;
}

/** "yesterday, 5/4": the date in figures is offered first where the two stand side by side. */
function explicitFirst({ tokens }: Scan, days: readonly DayMention[]): readonly DayMention[] {
  const [first, second] = days;
  if (!first || !second || days.length > 2 || first.explicit || !second.explicit) return days;
  const between = tokens.slice(first.next, second.at);
  return between.every((token) => token.kind === 'sign' && token.text !== '&') ? [second, first] : days;
}
