/** All days that a text speaks of, left to right, by an ordered list of rules. */
import { weekdayOfMonth } from './weekday-of-month.js';
import type { Context } from '../reading.js';
import { fold } from '../text.js';
import { addDays } from './calendar.js';
import { dayWords } from './day-words.js';
import { dayMention, type DayRule, type Mention, type Scan } from './mention.js';
import { dayThenMonth, feastDay, monthThenDay, ordinalDay } from './named-days.js';
import { eightDigits, numericDay, romanMonth } from './numeric-days.js';
import { agoDay, vagueDay, weekdayDay, weekendDay, weekThenWeekday, wordDay } from './relative-days.js';
import { smallNumberAt, tokensOf } from './tokens.js';

/** Days counted off from another day; more are no way to tell one. */
const MOST_DAYS_OF_SHIFT = 14;

/** "the day before Easter", "two days after May 1". */
const shiftedDay: DayRule = (scan, at) => {
  const { tokens, dayWords: known, words } = scan;
  let days: number;
  let from: number;
  const phrase = known.shifts(tokens, at);
  if (phrase) {
    days = phrase.value;
    from = phrase.next;
  } else {
    const many = smallNumberAt(tokens, at, words.numbers);
    const unit = many && known.dayUnitsOfShift(tokens, many.next);
    const before = unit && known.before(tokens, unit.next);
    const after = unit && known.after(tokens, unit.next);
    if (!many || many.value > MOST_DAYS_OF_SHIFT || (!before && !after)) return null;
    days = before ? -many.value : many.value;
    from = (before ?? after)?.next ?? at;
  }
  const day = firstOf(PLAIN_RULES, scan, from);
  if (day?.is !== 'day') return null;
  return { ...day, at, dates: mapDates(day.dates, (date) => addDays(date, days)), explicit: false };
};

const mapDates = (
  [first, ...others]: readonly [string, ...string[]],
  change: (date: string) => string,
): [string, ...string[]] => [change(first), ...others.map(change)];

function firstOf(rules: readonly DayRule[], scan: Scan, at: number): Mention | null {
  for (const rule of rules) {
    const mention = rule(scan, at);
    if (mention) return mention;
  }
  return null;
}

/** In this order: what says more is tried before what says less. */
const PLAIN_RULES: readonly DayRule[] = [
  eightDigits,
  numericDay,
  romanMonth,
  agoDay,
  feastDay,
  weekdayOfMonth,
  weekThenWeekday,
  monthThenDay,
  dayThenMonth,
  ordinalDay,
  weekendDay,
  weekdayDay,
  wordDay,
];
const RULES: readonly DayRule[] = [
  ...PLAIN_RULES.slice(0, 2),
  // "the day before yesterday" is a word of its own, and found there
  (scan, at) => wordDay(scan, at) ?? shiftedDay(scan, at),
  ...PLAIN_RULES.slice(2),
  vagueDay,
];

export function scanOf(text: string, { words, today, time, survey }: Context): Scan {
  return {
    tokens: tokensOf(fold(text)),
    words,
    dayWords: dayWords(words),
    today,
    time,
    order: survey.dateOrder,
  };
}

export function daysMentioned(scan: Scan): Mention[] {
  const mentions: Mention[] = [];
  for (let at = 0; at < scan.tokens.length;) {
    const mention = firstOf(RULES, scan, at);
    if (mention) mentions.push(mention);
    at = mention ? mention.next : at + 1;
  }
  return mentions;
}

/** The one thing said in a text, as a day of its own. */
export const bareDay = (scan: Scan, dates: readonly string[]): Mention =>
  dayMention({ at: 0, next: scan.tokens.length }, dates, { inPassing: false });
