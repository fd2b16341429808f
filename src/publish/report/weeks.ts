/** ISO 8601 weeks, `2026-W15`: their days, and those between two. */
import { Temporal } from 'temporal-polyfill';

/** Monday of the week: 4 January is always in the first week of its year (ISO 8601). */
export function mondayOf(week: string): Temporal.PlainDate {
  const [year = 0, number = 0] = week.split('-W').map(Number);
  const fourth = Temporal.PlainDate.from({ year, month: 1, day: 4 });
  return fourth.subtract({ days: fourth.dayOfWeek - 1 }).add({ weeks: number - 1 });
}

/** Every week from the first of them to the last, those that are not among them too. */
export function weeksThrough(weeks: readonly string[]): string[] {
  const sorted = [...weeks].sort();
  const [first, last] = [sorted[0], sorted.at(-1)];
  if (first === undefined || last === undefined) return [];
  const all: string[] = [];
  for (let monday = mondayOf(first); Temporal.PlainDate.compare(monday, mondayOf(last)) <= 0;) {
    all.push(`${monday.yearOfWeek}-W${String(monday.weekOfYear).padStart(2, '0')}`);
    monday = monday.add({ weeks: 1 });
  }
  return all;
}
