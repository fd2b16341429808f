/** Days told from today: "yesterday", "3 days ago", "last Monday", "Tuesday of last week", "the day before Easter". */
import { Temporal } from 'temporal-polyfill';
import { addDays, lastWeekday, monthsBefore, weekdayOf, weekdayOfWeek } from './calendar.js';
import type { WeekdayLead, WeekdayTail } from './day-words.js';
import { dayMention, type DayRule, type Mention, type Scan } from './mention.js';
import { smallNumberAt, type Token } from './tokens.js';
import { shortWeekdayStands } from './short-weekdays.js';

/** "today", "yesterday", "day before yesterday", "this morning", and their slips. */
export const wordDay: DayRule = (scan, at) => {
  const { tokens, dayWords, today } = scan;
  const phrase = dayWords.days(tokens, at);
  if (phrase) return dayMention({ at, next: phrase.next }, [addDays(today, -phrase.value)]);
  const asked = dayWords.daysWhenAsked(tokens, at);
  if (asked) return dayMention({ at, next: asked.next }, [addDays(today, -asked.value)], { inPassing: false });
  const token = tokens[at];
  const slips = token ? dayWords.namesOf(token).flatMap((name) => (name.is === 'days' ? [name.daysBack] : [])) : [];
  if (slips.length === 0) return null;
  const dates = slips.map((back) => addDays(today, -back));
  return dayMention({ at, next: at + 1 }, dates, { doubt: dates.length > 1 ? 'which-day' : null });
};

const weekdaysAt = (scan: Scan, at: number): { weekdays: number[]; short: boolean; next: number } | null => {
  const { tokens, dayWords } = scan;
  const token = tokens[at];
  if (!token) return null;
  const names = dayWords.namesOf(token).flatMap((name) => (name.is === 'weekday' ? [name] : []));
  if (names.length === 0) return null;
  const pointed = tokens[at + 1]?.text === '.' && !tokens[at + 1]?.spaced && token.text.length <= 5;
  return {
    weekdays: names.map((name) => name.weekday),
    short: names.some((name) => name.short),
    next: pointed && tokens[at + 2] !== undefined ? at + 2 : at + 1,
  };
};

/** "last", "this past", "next" before a weekday. */
function ledWeekday(where: { at: number; next: number }, lead: WeekdayLead, weekday: number, today: string): Mention {
  const bare = lastWeekday(weekday, today);
  const isToday = bare === today;
  switch (lead) {
    case 'just-past':
      return dayMention(where, [isToday ? addDays(bare, -7) : bare]);
    case 'last':
      // of the last six days or of the week before: people mean either
      if (isToday) return dayMention(where, [addDays(bare, -7)]);
      return dayMention(where, [bare, addDays(bare, -7)], { doubt: 'which-weekday' });
    case 'this':
      return dayMention(where, [bare], { doubt: weekday <= weekdayOf(today) ? null : 'which-weekday' });
    case 'next':
      return dayMention(where, [addDays(bare, 7)], { doubt: 'future-date' });
  }
}

/** "of last week", "before last", "a week ago" after a weekday. */
function tailedWeekday(
  where: { at: number; next: number },
  tail: WeekdayTail,
  weekday: number,
  today: string,
): Mention {
  const bare = lastWeekday(weekday, today);
  switch (tail) {
    case 'last':
    case 'next':
      return ledWeekday(where, tail, weekday, today);
    case 'last-week':
    case 'this-week': {
      const dates = weekdayOfWeek(weekday, tail === 'last-week' ? 1 : 0, today);
      return dayMention(where, dates, { doubt: dates.length > 1 ? 'which-weekday' : null });
    }
    case 'before-last': // the last one is the bare weekday, today's is none yet
      return dayMention(where, [addDays(bare, bare === today ? -14 : -7)]);
    case 'week-ago':
      return dayMention(where, [addDays(bare, -7)]);
  }
}

const endsHere = (token: Token | undefined): boolean => !token || token.kind === 'sign' || token.first;

/** "Monday", "tues", "last Monday", "this past Sunday", "Tuesday of last week", "sat" in the right company. */
export const weekdayDay: DayRule = (scan, at) => {
  const { tokens, dayWords, today } = scan;
  const lead = dayWords.weekdayLeads(tokens, at);
  const said = weekdaysAt(scan, lead?.next ?? at);
  if (!said) return null;
  const tail = dayWords.weekdayTails(tokens, said.next);
  const tails = tail && (tail.value !== 'last' || endsHere(tokens[tail.next])) ? tail : null;
  const where = { at, next: tails?.next ?? said.next };
  const [weekday] = said.weekdays;
  if (weekday === undefined) return null;
  if (tails) return tailedWeekday(where, tails.value, weekday, today);
  if (lead) return ledWeekday(where, lead.value, weekday, today);
  const company = said.short ? shortWeekdayStands(scan, at, said.next) : 'in-passing';
  if (company === 'no') return null;
  return { is: 'weekday', weekdays: said.weekdays, inPassing: company === 'in-passing', ...where };
};

/** "last week Tuesday", "this week, Monday". */
export const weekThenWeekday: DayRule = (scan, at) => {
  const { tokens, dayWords, today } = scan;
  const lastWeek = dayWords.lastWeek(tokens, at);
  const tail = lastWeek ? { value: 'last-week' as const, next: lastWeek.next } : dayWords.weekdayTails(tokens, at);
  if (!tail || ['last', 'next', 'before-last'].includes(tail.value)) return null;
  let next = tokens[tail.next]?.text === ',' ? tail.next + 1 : tail.next;
  next = dayWords.on(tokens, next)?.next ?? next;
  const lead = tail.value === 'week-ago' ? dayWords.weekdayLeads(tokens, next) : null;
  const said = weekdaysAt(scan, lead?.next ?? next);
  const [weekday] = said?.weekdays ?? [];
  if (!said || weekday === undefined) return null;
  return tailedWeekday({ at, next: said.next }, tail.value, weekday, today);
};

/** "last weekend": a Saturday or a Sunday. */
export const weekendDay: DayRule = (scan, at) => {
  const weekend = scan.dayWords.weekend(scan.tokens, at);
  if (!weekend) return null;
  const sunday = lastWeekday(7, scan.today);
  const saturday = lastWeekday(6, scan.today);
  const both = saturday < sunday ? [saturday, sunday] : [addDays(sunday, -1), sunday];
  // On a Saturday "this weekend" has begun: the day itself is the likely one
  const dates = saturday === scan.today ? [saturday, sunday] : both;
  return dayMention({ at, next: weekend.next }, dates, { doubt: 'which-day' });
};

interface HowMany {
  readonly numbers: readonly number[];
  readonly inexact: boolean;
  readonly next: number;
}

/** "3", "three", "a", "a couple of", "2-3", "one or two", "half an". */
function howMany(scan: Scan, at: number): HowMany | null {
  const { tokens, dayWords, words } = scan;
  const inexact = dayWords.inexact(tokens, at);
  if (inexact) return { numbers: [inexact.value], inexact: true, next: inexact.next };
  if (words.numbers.articles.includes(tokens[at]?.text ?? '')) return { numbers: [1], inexact: false, next: at + 1 };
  const number = smallNumberAt(tokens, at, words.numbers);
  // "for days ago"
  const heard = words.count.byEar[tokens[at]?.text ?? ''];
  if (!number && heard !== undefined && words.date.dayUnits[tokens[at + 1]?.text ?? ''] !== undefined)
    return { numbers: [heard], inexact: false, next: at + 1 };
  if (!number) return null;
  const range = dayWords.or(tokens, number.next)?.next ?? (tokens[number.next]?.text === '-' ? number.next + 1 : null);
  const second = range === null ? null : smallNumberAt(tokens, range, words.numbers);
  if (second) return { numbers: [number.value, second.value], inexact: true, next: second.next };
  return { numbers: [number.value], inexact: false, next: number.next };
}

/** No watch is told of after more days than this. */
const MOST_DAYS_AGO = 3660;

function minutesAgo(scan: Scan, minutes: number): string {
  const now = Temporal.PlainDateTime.from(`${scan.today}T${scan.time}`);
  return now.subtract({ minutes }).toPlainDate().toString();
}

/** "3 days ago", "a week ago today", "a couple of days ago", "two Sundays ago", "an hour ago". */
export const agoDay: DayRule = (scan, at) => {
  const { tokens, dayWords, words, today } = scan;
  const rough = dayWords.roughly(tokens, at);
  const half = words.numbers.fractions[tokens[at]?.text ?? ''] !== undefined ? at + 1 : null;
  const many =
    howMany(scan, half ?? rough?.next ?? at) ?? (half === null ? null : { numbers: [1], inexact: false, next: half });
  if (!many) return null;
  // "a day or two ago"
  const unit = tokens[many.next]?.text ?? '';
  const after = dayWords.orSo(tokens, many.next + 1);
  const orMore = dayWords.or(tokens, many.next + 1);
  const more = !after && orMore ? smallNumberAt(tokens, orMore.next, words.numbers) : null;
  const agoAt = more?.next ?? after?.next ?? many.next + 1;
  // "two days before" as the last words; "15 minutes before noon" is a time
  const atEnd = words.date.dayUnits[unit] !== undefined && agoAt === tokens.length - 1;
  const before = atEnd ? dayWords.before(tokens, agoAt) : null;
  const ago = dayWords.ago(tokens, agoAt) ?? before;
  if (!ago) return null;
  const numbers = more ? [...many.numbers, more.value] : many.numbers;
  const vague = many.inexact || after !== null || more !== null;

  const units = words.date;
  const minutes = units.minuteUnits[unit];
  if (minutes !== undefined) {
    // "twenty minutes past one" is a time
    if (smallNumberAt(tokens, ago.next, words.numbers) ?? words.times.noon[tokens[ago.next]?.text ?? '']) return null;
    const count = half === null ? (numbers[0] ?? 1) : 1;
    return dayMention({ at, next: ago.next }, [minutesAgo(scan, count * minutes)], { inPassing: false });
  }
  if (half !== null) return null;

  const weekday = weekdaysAt(scan, many.next);
  const [first] = weekday?.weekdays ?? [];
  if (first !== undefined) {
    // two Sundays ago: the one that has just been may count or not
    const back = ((numbers[0] ?? 1) - 1) * 7;
    const bare = lastWeekday(first, today);
    const dates = back > MOST_DAYS_AGO ? [] : [addDays(bare, -back), addDays(bare, -back - 7)];
    return dayMention({ at, next: ago.next }, dates, { doubt: 'which-weekday' });
  }

  if (numbers.some((number) => number > MOST_DAYS_AGO / 7)) return null;
  const dayUnit = units.dayUnits[unit];
  if (dayUnit !== undefined) {
    const dates = numbers.map((number) => addDays(today, -number * dayUnit));
    return daysAgo(scan, { at, next: ago.next }, dates, vague || (rough !== null && dayUnit >= 7));
  }
  if (units.monthUnits.includes(unit) || units.yearUnits.includes(unit)) {
    const months = units.yearUnits.includes(unit) ? 12 : 1;
    if (numbers.some((number) => number * months > 120)) return null;
    const dates = numbers.map((number) => monthsBefore(today, number * months));
    return dayMention({ at, next: ago.next }, dates, { doubt: 'about-when' });
  }
  return null;
};

/** What follows "a week ago": "today", "yesterday" or a weekday say which day of that week. */
function daysAgo(scan: Scan, where: { at: number; next: number }, dates: readonly string[], vague: boolean): Mention {
  const { tokens, dayWords, today } = scan;
  const doubt = vague ? 'about-when' : null;
  const [date] = dates;
  if (date === undefined) return dayMention(where, dates);
  const byWeeks = dates.length === 1 && weekdayOf(date) === weekdayOf(today) && date < today;
  if (!byWeeks) return dayMention(where, dates, { doubt });
  const on = dayWords.on(tokens, where.next)?.next ?? where.next;
  const day = dayWords.days(tokens, on);
  if (day && day.value >= 0 && day.value <= 2) {
    return dayMention({ at: where.at, next: day.next }, [addDays(date, -day.value)], { doubt });
  }
  const lead = dayWords.weekdayLeads(tokens, on);
  const weekday = weekdaysAt(scan, lead?.next ?? on);
  const [first] = weekday?.weekdays ?? [];
  if (!weekday || first === undefined || first === weekdayOf(today)) return dayMention(where, dates, { doubt });
  const sameWeekday = addDays(date, -((weekdayOf(today) - first + 7) % 7));
  return dayMention({ at: where.at, next: weekday.next }, [sameWeekday, addDays(sameWeekday, 7)], {
    doubt: 'which-weekday',
  });
}

/** "the other day": asks which. */
export const vagueDay: DayRule = (scan, at) => {
  const vague = scan.dayWords.vague(scan.tokens, at);
  return vague ? { is: 'vague', inPassing: false, at, next: vague.next } : null;
};
