/** Dates with a month's name, ordinals and feasts: "April 28", "28th of Apr", "the 22nd", "Earth Day". */
import {
  addDays,
  dayOf,
  latestDayOfMonth,
  latestDayOfYear,
  latestFeast,
  monthOf,
  monthsBefore,
  yearOf,
} from './calendar.js';
import { dayMention, type DayRule, type Mention, type Scan } from './mention.js';
import { clockBegins, lengthBegins } from './clock-begins.js';
import { stuckAfter, stuckBefore } from './numeric-days.js';
import { timeWords } from './time-words.js';
import { smallNumberAt, type Token } from './tokens.js';

/** Years a watch can plausibly be told with; "May 2 2015" is a date and a quarter past eight. */
const YEARS_BACK = 6;

interface DayNumber {
  readonly day: number;
  readonly next: number;
  /** "2nd", "second". */
  readonly ordinal: boolean;
  readonly written: 'digits' | 'words';
}

/** "2", "2nd", "2 nd", "second", "twenty-second", "twenty two"; up to 39, so that a slip is seen. */
export function dayNumberAt(scan: Scan, at: number): DayNumber | null {
  const { tokens, dayWords, words } = scan;
  const token = tokens[at];
  if (token?.kind === 'number') {
    const day = Number(token.text);
    const range = ['-', '/'].includes(tokens[at + 1]?.text ?? '') && tokens[at + 2]?.kind === 'number';
    if (token.text.length > 2 || day < 1 || day > 39 || (!range && stuckAfter(scan, at + 1))) return null;
    const ending = dayWords.ordinalEndings(tokens, at + 1);
    let next = ending?.next ?? at + 1;
    next = dayWords.afterNumber(tokens, tokens[next]?.text === '-' ? next + 1 : next)?.next ?? next;
    return { day, next, ordinal: ending !== null, written: 'digits' };
  }
  const ordinal = dayWords.ordinals[token?.text ?? ''];
  if (ordinal !== undefined) return { day: ordinal, next: at + 1, ordinal: true, written: 'words' };
  const tens = words.numbers.tens[token?.text ?? ''];
  if (tens !== undefined) {
    const unitAt = tokens[at + 1]?.text === '-' ? at + 2 : at + 1;
    const unit = dayWords.ordinals[tokens[unitAt]?.text ?? ''];
    // "april twenty ate", as a telephone hears it
    const heard = words.count.byEar[tokens[unitAt]?.text ?? ''];
    const ends = !tokens[unitAt + 1] || tokens[unitAt + 1]?.kind === 'sign';
    if (heard !== undefined && heard <= 9 && ends)
      return { day: tens + heard, next: unitAt + 1, ordinal: false, written: 'words' };
    if (unit !== undefined && unit <= 9) return { day: tens + unit, next: unitAt + 1, ordinal: true, written: 'words' };
  }
  const number = smallNumberAt(tokens, at, words.numbers);
  if (!number || number.value < 1 || number.value > 31) return null;
  return { day: number.value, next: number.next, ordinal: false, written: 'words' };
}

/** ", 2026", "2026", "'26", and "-26" after a date written with the same separator. */
function yearAt({ tokens, today }: Scan, at: number, separator: string | null): { year: number; next: number } | null {
  const sign = tokens[at]?.text;
  const signed = sign === ',' || (separator !== null && sign === separator);
  let next = signed ? at + 1 : at;
  const apostrophe = tokens[next]?.text === "'";
  if (apostrophe) next++;
  const token = tokens[next];
  const following = tokens[next + 1];
  const goesOn =
    following && !following.spaced && [':', '-'].includes(following.text) && tokens[next + 2]?.kind === 'number';
  const ownNumber = goesOn && !tokens[next + 2]?.spaced;
  if (token?.kind !== 'number' || ownNumber || (following?.text === '%' && !following.spaced)) return null;
  const thisYear = yearOf(today);
  if (token.text.length === 4) {
    const year = Number(token.text);
    return year >= thisYear - YEARS_BACK && year <= thisYear + 1 ? { year, next: next + 1 } : null;
  }
  if (token.text.length !== 2) return null;
  const year = 2000 + Number(token.text);
  const stands = apostrophe || (separator !== null && sign === separator && Math.abs(year - thisYear) <= YEARS_BACK);
  // "May 2 26": only this year's number, and nothing it could count
  const thisYearAlone =
    year === thisYear && (!following || (following.kind === 'sign' && !['°', '%', '/'].includes(following.text)));
  return stands || thisYearAlone ? { year, next: next + 1 } : null;
}

const months = (scan: Scan, at: number): number[] => {
  const token = scan.tokens[at];
  return token ? scan.dayWords.namesOf(token).flatMap((name) => (name.is === 'month' ? [name.month] : [])) : [];
};

/** "or 3", "-3", "and 4th" after a day: a second day of the same month. */
function orDay(scan: Scan, at: number): DayNumber | null {
  const { tokens, dayWords } = scan;
  const or = dayWords.or(tokens, at);
  const sign = tokens[at]?.text;
  const and = scan.words.numbers.joins.includes(sign ?? '') ? dayNumberAt(scan, at + 1) : null;
  if (and?.ordinal && and.written === 'digits') return and;
  if (!or && sign !== '-' && sign !== '/' && sign !== '&') return null;
  const second = dayNumberAt(scan, or?.next ?? at + 1);
  if (!second) return null;
  if (or) return second;
  const after = tokens[second.next];
  const clock = after && (after.text === ':' || (!after.spaced && after.kind === 'word'));
  if (!tokens[at]?.spaced && !clock && !tokens[second.next - 1]?.spaced) return second;
  return !after || (after.kind === 'sign' && ['.', ',', ')', ';', '!', '?'].includes(after.text)) ? second : null;
}

/** A day of a month, with the year after it if one is said. */
function monthDay(
  scan: Scan,
  at: number,
  month: number,
  day: DayNumber,
  next: number,
  separator: string | null,
  inPassing: boolean,
): Mention {
  // "28-apr-26" ends in a year, "apr 28-29" in a day
  const closing = separator === null ? null : yearAt(scan, next, separator);
  const second = closing ? null : orDay(scan, next);
  const year = closing ?? yearAt(scan, second?.next ?? next, separator);
  const where = { at, next: year?.next ?? second?.next ?? next };
  const date = (number: number): string | null =>
    year ? dayOf(year.year, month, number) : latestDayOfYear(month, number, scan.today);
  const dates = [date(day.day), second ? date(second.day) : null].filter((found) => found !== null);
  return dayMention(where, dates, {
    explicit: true,
    yearSaid: year !== null,
    inPassing,
    doubt: second && dates.length > 1 ? 'two-dates' : null,
  });
}

/** "April 28", "apr. the 28th", "may second", "Apr-28-2026". */
export const monthThenDay: DayRule = (scan, at) => {
  const { tokens, dayWords } = scan;
  const [month] = months(scan, at);
  if (month === undefined) return null;
  let dayAt = at + 1;
  const sign = tokens[dayAt];
  const separator = sign && !sign.spaced && ['-', '/', '.', ','].includes(sign.text) ? sign.text : null;
  if (separator !== null) dayAt++;
  dayAt = dayWords.the(tokens, dayAt)?.next ?? dayAt;
  // "may too", as a telephone hears it
  const heard = tokens.length === 2 && at === 0 ? scan.words.count.byEar[tokens[1]?.text ?? ''] : undefined;
  const day: DayNumber | null =
    dayNumberAt(scan, dayAt) ??
    (heard === undefined ? null : { day: heard, next: at + 2, ordinal: false, written: 'words' });
  if (!day) return null;
  // "it may two of them": a plain number word after a month is a day only where a date was asked for
  const inPassing = day.ordinal || day.written === 'digits';
  return monthDay(scan, at, month, day, day.next, separator, inPassing);
};

const isMayOrMarch = (token: Token | undefined): boolean => token?.text === 'may' || token?.text === 'march';

/** "28 April", "the 28th of Apr", "2-May-26". */
export const dayThenMonth: DayRule = (scan, at) => {
  const { tokens, dayWords } = scan;
  const dayAt = dayWords.the(tokens, at)?.next ?? at;
  if (stuckBefore(tokens, dayAt)) return null;
  // "28.apr" goes on, but with the month
  const digits = tokens[dayAt];
  const day: DayNumber | null =
    dayNumberAt(scan, dayAt) ??
    (digits?.kind === 'number' && digits.text.length <= 2 && months(scan, dayAt + 1).length > 0
      ? { day: Number(digits.text), next: dayAt + 1, ordinal: false, written: 'digits' }
      : null);
  if (!day || (day.written === 'words' && !day.ordinal)) return null;
  const of = dayWords.of(tokens, day.next);
  const sign = tokens[day.next];
  const separator = !of && sign && !sign.spaced && ['-', '/', '.'].includes(sign.text) ? sign.text : null;
  const monthAt = of?.next ?? (separator !== null ? day.next + 1 : day.next);
  const [month] = months(scan, monthAt);
  if (month === undefined || dayWords.notMonthBefore(tokens, monthAt + 1)) return null;
  const next = tokens[monthAt + 1]?.text === '.' && tokens[monthAt]?.text !== 'may' ? monthAt + 2 : monthAt + 1;

  const certain = day.ordinal || of !== null || separator !== null;
  const second = dayNumberAt(scan, next);
  const { fromHour } = timeWords(scan.words);
  const besideNumber =
    smallNumberAt(tokens, dayAt - 1, scan.words.numbers) !== null ||
    [1, 2, 3].some((back) => dayAt >= back && fromHour(tokens, dayAt - back)?.next === dayAt);
  // "1. April 27" is an item of a list
  if (second && !second.ordinal && separator === '.' && tokens[monthAt]?.spaced === true) return null;
  if (second && !certain && next === monthAt + 1) {
    // "3 20 may 2", "quarter past 12 may 1st": the month goes with what follows it, unless that is a clock time
    const goesWithNext = besideNumber || second.ordinal || yearAt(scan, second.next, null) !== null;
    const after = tokens[second.next];
    const time = after && (after.text === '-' || after.text === 'to' || dayWords.partsOfDay(tokens, second.next));
    if (goesWithNext && !time) return null;
    // "1 april 27" may be an item of a list too
    const alone = !tokens[next]?.first && (!after || after.kind === 'sign' || after.first);
    if (alone && !time && yearAt(scan, next, null) === null) {
      const dates = [second.day, day.day]
        .map((number) => latestDayOfYear(month, number, scan.today))
        .filter((date) => date !== null);
      const where = { at, next: second.next };
      if (dates.length > 0) return dayMention(where, dates, { explicit: true, yearSaid: false, doubt: 'two-dates' });
    }
  }
  const after = tokens[next];
  const stands = !after || after.kind !== 'word' || dayWords.dayGoesOn(tokens, next) !== null;
  const inPassing = certain || !isMayOrMarch(tokens[monthAt]) || stands;
  return monthDay(scan, at, month, day, next, separator, inPassing);
};

/** "the 22nd", "22nd", "the second"; never "the second watch". */
export const ordinalDay: DayRule = (scan, at) => {
  const { tokens, dayWords, words, today } = scan;
  const the = dayWords.the(tokens, at);
  const dayAt = the?.next ?? at;
  if (stuckBefore(tokens, dayAt)) return null;
  const day = dayNumberAt(scan, dayAt);
  if (!day) return null;
  const before = tokens[at - 1];
  const afterWeekday = before !== undefined && dayWords.namesOf(before).some((name) => name.is === 'weekday');
  const afterOn = before !== undefined && dayWords.on(tokens, at - 1) !== null;
  if (day.written === 'words' && !(day.ordinal && (the || afterOn || afterWeekday))) return null;
  if (!day.ordinal && !the) return null;
  if (
    !the &&
    !afterOn &&
    !afterWeekday &&
    !tokens[at]?.first &&
    before?.kind !== 'sign' &&
    before?.kind !== 'number' &&
    !dayWords.or(tokens, at - 1)
  )
    return null;

  const ofMonth = dayWords.thisMonth(tokens, day.next) ?? dayWords.lastMonth(tokens, day.next);
  const isLastMonth = dayWords.lastMonth(tokens, day.next) !== null;
  const after = tokens[day.next];
  if (!ofMonth && dayWords.counted(tokens, day.next) && !clockBegins(tokens, day.next, words)) return null;
  const standsAlone =
    ofMonth !== null ||
    !after ||
    after.first ||
    (after.kind === 'sign' && after.text !== '/' && after.text !== '%') ||
    dayWords.dayGoesOn(tokens, day.next) !== null ||
    dayWords.partsOfDay(tokens, day.next) !== null ||
    dayWords.namesOf(after).some((name) => name.is === 'weekday');
  const clockFollows =
    dayWords.or(tokens, day.next) !== null || smallNumberAt(tokens, day.next, words.numbers) !== null;
  const number = the !== null && day.written === 'digits' && after?.kind === 'number';
  const beginsNext = number || clockBegins(tokens, day.next, words) || lengthBegins(tokens, day.next, words);
  if (!standsAlone && !clockFollows && (day.written === 'words' || !day.ordinal)) return null;

  const second = orDay(scan, day.next);
  const where = { at, next: second?.next ?? ofMonth?.next ?? day.next };
  const date = (number: number): string | null => {
    if (!isLastMonth) return latestDayOfMonth(number, today);
    const endOfLastMonth = addDays(`${today.slice(0, 7)}-01`, -1);
    return dayOf(yearOf(endOfLastMonth), monthOf(endOfLastMonth), number);
  };
  const dates = [date(day.day), second ? date(second.day) : null].filter((found) => found !== null);
  if (dates.length === 0 && !day.ordinal) return null;
  // "a different one from the first", "the second is bigger"
  const isDay = day.written === 'digits' || afterOn || afterWeekday || ofMonth !== null;
  return dayMention(where, dates, {
    doubt: second ? 'two-dates' : null,
    inPassing: isDay && (the !== null || afterWeekday || afterOn) && day.ordinal && (standsAlone || beginsNext),
  });
};

/** "Easter Sunday", "Earth Day 2026". */
export const feastDay: DayRule = (scan, at) => {
  const { tokens, dayWords, today } = scan;
  const feast = dayWords.feasts(tokens, at);
  if (!feast || dayWords.notMonthBefore(tokens, feast.next)) return null;
  const date = latestFeast(feast.value, today);
  if (date === null) return null;
  const old = date < monthsBefore(today, 12);
  return dayMention({ at, next: feast.next }, [date], { yearSaid: false, doubt: old ? 'old-date' : null });
};
