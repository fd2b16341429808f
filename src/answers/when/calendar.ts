/** Days as ISO dates, and the sums that dates in plain words need. No clock: today is always an argument. */
import { Temporal } from 'temporal-polyfill';

const plain = (date: string): Temporal.PlainDate => Temporal.PlainDate.from(date);

const DAYS_IN_MONTH = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/** The Gregorian rule, by hand: a note is tried for hundreds of days, and Temporal makes objects for each. */
function daysInMonth(year: number, month: number): number {
  const leap = year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
  return month === 2 && leap ? 29 : (DAYS_IN_MONTH[month - 1] ?? 0);
}

/** ISO 8601 date, or null where there is no such day. */
export function dayOf(year: number, month: number, day: number): string | null {
  if (year < 1 || year > 9999 || day < 1 || day > daysInMonth(year, month)) return null;
  return `${String(year).padStart(4, '0')}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`;
}

export const yearOf = (date: string): number => Number(date.slice(0, 4));

export const monthOf = (date: string): number => Number(date.slice(5, 7));

export const addDays = (date: string, days: number): string => plain(date).add({ days }).toString();

export const monthsBefore = (date: string, months: number): string => plain(date).subtract({ months }).toString();

/** 1 is Monday, 7 is Sunday (ISO 8601). */
export const weekdayOf = (date: string): number => plain(date).dayOfWeek;

/** The last such weekday, today counted. */
export const lastWeekday = (weekday: number, today: string): string =>
  addDays(today, -((weekdayOf(today) - weekday + 7) % 7));

/** A leap day can be eight years back (1896 to 1904, and again about 2100). */
const YEARS_BACK = 8;

/** The latest such day that is not after today; null where no year has it. */
export function latestDayOfYear(month: number, day: number, today: string): string | null {
  const year = yearOf(today);
  for (let back = 0; back <= YEARS_BACK; back++) {
    const date = dayOf(year - back, month, day);
    if (date !== null && date <= today) return date;
  }
  return null;
}

/** The latest day of that number, in this month or one before, that is not after today; null over 31. */
export function latestDayOfMonth(day: number, today: string): string | null {
  const months = yearOf(today) * 12 + monthOf(today) - 1;
  for (let back = 0; back < 3; back++) {
    const date = dayOf(Math.floor((months - back) / 12), ((months - back) % 12) + 1, day);
    if (date !== null && date <= today) return date;
  }
  return null;
}

/**
 * That weekday of the week so many weeks back: by weeks that begin on Monday, and by weeks that begin on Sunday. The
 * two differ on Sundays.
 */
export function weekdayOfWeek(weekday: number, weeksBack: number, today: string): string[] {
  const monday = addDays(today, 1 - weekdayOf(today) - 7 * weeksBack);
  const sunday = addDays(today, -(weekdayOf(today) % 7) - 7 * weeksBack);
  const byMonday = addDays(monday, weekday - 1);
  const bySunday = addDays(sunday, weekday % 7);
  return byMonday === bySunday ? [byMonday] : [bySunday, byMonday];
}

/** Easter Sunday of the western churches: the anonymous Gregorian algorithm, from memory. */
function easterOf(year: number): string {
  const a = year % 19;
  const b = Math.floor(year / 100);
  const c = year % 100;
  const d = Math.floor((b * 8 + 13) / 25);
  const h = (19 * a + b - Math.floor(b / 4) - d + 15) % 30;
  const l = (32 + 2 * (b % 4) + 2 * Math.floor(c / 4) - h - (c % 4)) % 7;
  const m = Math.floor((a + 11 * h + 22 * l) / 451);
  const sum = h + l - 7 * m + 114;
  return dayOf(year, Math.floor(sum / 31), (sum % 31) + 1) ?? '';
}

/** How a feast finds its day: a day of the year, a weekday of a month (nth −1 is the last), days after Easter. */
export type Feast =
  | { readonly month: number; readonly day: number }
  | { readonly month: number; readonly weekday: number; readonly nth: number }
  | { readonly easter: number };

function feastIn(year: number, feast: Feast): string | null {
  if ('easter' in feast) return addDays(easterOf(year), feast.easter);
  if ('day' in feast) return dayOf(year, feast.month, feast.day);
  const all: string[] = [];
  for (let day = 1; day <= daysInMonth(year, feast.month); day++) {
    const date = dayOf(year, feast.month, day);
    if (date !== null && weekdayOf(date) === feast.weekday) all.push(date);
  }
  return all.at(feast.nth < 0 ? feast.nth : feast.nth - 1) ?? null;
}

/** The latest such feast not after today. */
export function latestFeast(feast: Feast, today: string): string | null {
  const year = yearOf(today);
  for (const candidate of [year, year - 1]) {
    const date = feastIn(candidate, feast);
    if (date !== null && date <= today) return date;
  }
  return null;
}
