/** Days as numbers, so that a million watches need no calendar. */
import { Temporal } from 'temporal-polyfill';

export const MINUTE_MILLISECONDS = 60_000;

/** `04-20` as the day of a year that is no leap year: 110. */
export const dayOfYear = (monthAndDay: string): number => Temporal.PlainDate.from(`2026-${monthAndDay}`).dayOfYear;

/** `13:05`. */
export function clock(minuteOfDay: number): string {
  const [hour, minute] = [Math.floor(minuteOfDay / 60), minuteOfDay % 60];
  return `${hour < 10 ? '0' : ''}${hour}:${minute < 10 ? '0' : ''}${minute}`;
}

/** `1:05`, as one says it with am or pm. */
export function twelveHours(minuteOfDay: number): string {
  const minute = minuteOfDay % 60;
  return `${((Math.floor(minuteOfDay / 60) + 11) % 12) + 1}:${minute < 10 ? '0' : ''}${minute}`;
}

const DAY_MILLISECONDS = 24 * 60 * MINUTE_MILLISECONDS;
const dates = new Map<number, string>();

/** `2026-05-02` in UTC, of the days since 1970. Kept, since a season has few days and printing one is slow. */
function dateOf(day: number): string {
  const known = dates.get(day);
  if (known !== undefined) return known;
  const date = new Date(day * DAY_MILLISECONDS).toISOString().slice(0, 10);
  dates.set(day, date);
  return date;
}

/** `2026-05-02T23:30:00.123Z`, of milliseconds since 1970. */
export function instantOf(epochMilliseconds: number): string {
  const day = Math.floor(epochMilliseconds / DAY_MILLISECONDS);
  const inDay = epochMilliseconds - day * DAY_MILLISECONDS;
  const seconds = Math.floor(inDay / 1000) % 60;
  const milliseconds = inDay % 1000;
  const zeros = milliseconds < 10 ? '00' : milliseconds < 100 ? '0' : '';
  const time = `${clock(Math.floor(inDay / MINUTE_MILLISECONDS))}:${seconds < 10 ? '0' : ''}${seconds}`;
  return `${dateOf(day)}T${time}.${zeros}${milliseconds}Z`;
}
