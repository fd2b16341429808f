/** Times told from now, as the answer to when a watch was: "20 minutes ago", "started half an hour ago", "finished 10 min back". */
import type { Words } from '../../../shared/words.js';
import { anyOf } from '../any-of.js';
import { type Context, type Reading, none, unsure } from '../reading.js';
import { fold, madeOnce, saysAnyOf } from '../text.js';
import type { Times } from './settled-times.js';

/** Nobody knows the minute of what is "half an hour ago". */
const ROUNDED_MINUTES = 5;
const HOUR_MINUTES = 60;

/** A number or article, perhaps a half, a unit, "ago": "20 min ago", "half an hour ago", "an hour and a half ago". */
const agoPattern = madeOnce(({ numbers, date }: Words): RegExp => {
  const many = `(?<many>\\d{1,3}|${anyOf(numbers.articles, Object.keys(numbers.units), Object.keys(date.inexact))})`;
  const fraction = anyOf(Object.keys(numbers.fractions));
  const before = `(?:(?<part>${fraction})(?:\\s+${anyOf(date.of)})?(?:\\s+${anyOf(numbers.articles)})?\\s+|${many}\\s*)`;
  const behind = `(?:\\s+\\p{L}{1,4}\\s+${anyOf(numbers.articles)}\\s+(?<more>${fraction}))?`;
  const unit = `(?<unit>${Object.keys(date.minuteUnits)
    .sort((a, b) => b.length - a.length)
    .join('|')})(?!\\p{L})`;
  return new RegExp(`${before}${unit}${behind}(?:\\s+${anyOf(date.orSo)})?\\s+${anyOf(date.ago)}`, 'u');
});

/** "HH:MM" of a minute of the day. */
const clock = (minute: number): string =>
  [Math.floor(minute / HOUR_MINUTES), minute % HOUR_MINUTES].map((part) => String(part).padStart(2, '0')).join(':');

/** An offer, since it is never told to the minute; none where nothing is told from now. */
export function timesAgo(text: string, { words, time, survey }: Context): Reading<Times> {
  const folded = fold(text);
  const found = agoPattern(words).exec(folded);
  const { many, part, more, unit } = found?.groups ?? {};
  if (found === null || unit === undefined) return none('no-time');
  const { numbers, date, times } = words;
  const amountOf = (word: string): number =>
    /^\d/.test(word) ? Number(word) : (numbers.units[word] ?? date.inexact[word] ?? 1);
  const fraction = (word: string | undefined): number => (word === undefined ? 0 : (numbers.fractions[word] ?? 0));
  const amount = (many === undefined ? fraction(part) : amountOf(many)) + fraction(more);
  const minutesAgo = amount * (date.minuteUnits[unit] ?? 1);
  const [hour = 0, minute = 0] = time.split(':').map(Number);
  const at = Math.round((hour * HOUR_MINUTES + minute - minutesAgo) / ROUNDED_MINUTES) * ROUNDED_MINUTES;
  const long = survey.protocol.minutes;
  // what began less than a watch ago is not over
  const isEnd = minutesAgo < long || saysAnyOf(folded.slice(0, found.index), [...times.ends, ...times.justEnded]);
  const start = isEnd ? at - long : at;
  if (minutesAgo <= 0 || start < 0) return none('no-time');
  return unsure([{ start: clock(start), end: clock(start + long) }], 'doubted-times', [
    [found.index, found.index + found[0].length],
  ]);
}
