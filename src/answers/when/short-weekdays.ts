/** "sat", "sun" and "mon" are weekdays only in company: "sat my full quarter hour", "sun and clouds" are none. */
import type { Scan } from './mention.js';
import { dayNumberAt } from './named-days.js';
import { smallNumberAt } from './tokens.js';
import { clockBegins, lengthBegins } from './clock-begins.js';
import { labelledBefore, numericDay } from './numeric-days.js';

const SUNDAY = 7;

/** "it was on sat I think": no answer that is nothing but a weekday is longer. */
const MOST_TOKENS_ALONE = 12;

/** Where a short weekday that ends before `next` may be taken: nowhere, as an answer only, or in a note too. */
export function shortWeekdayStands(scan: Scan, at: number, next: number): 'no' | 'when-asked' | 'in-passing' {
  const { tokens, dayWords, words } = scan;
  const weekday = tokens[at];
  const before = tokens[at - 1];
  // the "th" of "45th"
  if (weekday?.spaced === false) return 'no';
  const leads = !before || before.kind === 'sign' || tokens[at]?.first === true;
  if (before?.kind === 'word' && !leads && words.date.sitters.includes(before.text)) return 'no';
  if (before && dayWords.on(tokens, at - 1)?.next === at) return 'in-passing';
  if (labelledBefore(scan, at)) return 'in-passing';

  const after = tokens[next]?.kind === 'sign' && tokens[next]?.text !== '-' ? next + 1 : next;
  if (dayWords.partsOfDay(tokens, next)) return 'in-passing';
  const month = tokens[after] !== undefined && dayWords.namesOf(tokens[after]).some((name) => name.is === 'month');
  const dated =
    (month && dayNumberAt(scan, dayWords.the(tokens, after + 1)?.next ?? after + 1) !== null) ||
    numericDay(scan, after) !== null ||
    dayNumberAt(scan, dayWords.the(tokens, after)?.next ?? after)?.ordinal === true ||
    (dayNumberAt(scan, after) !== null &&
      dayWords.namesOf(tokens[after + 1] ?? tokens[at]!).some((name) => name.is === 'month'));
  if (dated) return 'in-passing';

  // The whole answer, but for small words and signs
  const alone =
    tokens.length <= MOST_TOKENS_ALONE &&
    tokens.every(
      (token, i) =>
        (i < at ? words.when.fillers : words.date.alongside).includes(token.text) ||
        token.kind === 'sign' ||
        (i >= at && i < next),
    );
  if (alone) return 'when-asked';
  const isSunday = words.date.weekdaysShort[weekday?.text ?? ''] === SUNDAY;
  if (at === 0 || (leads && !isSunday)) {
    const clock = clockBegins(tokens, after, words) || (after > next && lengthBegins(tokens, after, words));
    if (clock) return at === 0 ? 'in-passing' : 'when-asked';
  }
  // "2:15-2:30 sat", but "10:40 to 10:55 sun" is weather
  const number = smallNumberAt(tokens, at - 1, words.numbers) !== null;
  const half = [4, 3, 2, 1].some((back) => {
    const end = at < back ? undefined : dayWords.partsOfDay(tokens, at - back)?.next;
    return end === at || (end === at - 1 && before?.text === '.');
  });
  const behindTime = number || half;
  const ends = !tokens[next] || tokens[next].kind !== 'word' || tokens[next].first;
  if (!ends || isSunday) return 'no';
  if (behindTime) return 'in-passing';
  if (words.date.doings.includes(before?.text ?? '')) return 'when-asked'; // "watched sat, writing today"
  const unit = before?.text ?? '';
  return words.date.minuteUnits[unit] !== undefined ? 'when-asked' : 'no';
}
