/** "last Friday in April", "the first Saturday of May", "the last day of March". */
import { addDays, latestDayOfYear, latestFeast } from './calendar.js';
import { dayMention, type DayRule } from './mention.js';

/** No month has a weekday more often than this, but for a few. */
const MOST_WEEKS = 4;

export const weekdayOfMonth: DayRule = (scan, at) => {
  const { tokens, dayWords, words, today } = scan;
  const from = dayWords.the(tokens, at)?.next ?? at;
  const which = tokens[from]?.text ?? '';
  const nth = words.date.last.includes(which) ? -1 : (words.date.ordinals[which] ?? 0);
  if (nth === 0 || nth > MOST_WEEKS) return null;
  const [weekday, link, month] = tokens.slice(from + 1, from + 4);
  if (!weekday || !link || !month || !words.date.inMonth.includes(link.text)) return null;
  const [day] = dayWords.namesOf(weekday).flatMap((name) => (name.is === 'weekday' ? [name.weekday] : []));
  const [of] = dayWords.namesOf(month).flatMap((name) => (name.is === 'month' ? [name.month] : []));
  if (of !== undefined && words.date.dayUnitsOfShift.includes(weekday.text)) {
    // the last day of a month is the one before the next month's first
    const first = latestDayOfYear(nth < 0 ? (of % 12) + 1 : of, 1, today);
    const date = first === null ? null : addDays(first, nth < 0 ? -1 : nth - 1);
    return date === null ? null : dayMention({ at, next: from + 4 }, [date], { yearSaid: false });
  }
  if (day === undefined || of === undefined) return null;
  const date = latestFeast({ month: of, weekday: day, nth }, today);
  return date === null ? null : dayMention({ at, next: from + 4 }, [date], { yearSaid: false });
};
