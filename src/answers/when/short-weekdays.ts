/** "sat", "sun" and "mon" are weekdays only in company: "sat my full quarter hour", "sun and clouds" are none. */
import type { Scan } from './mention.js';
import { dayNumberAt } from './named-days.js';
import { labelledBefore, numericDay } from './numeric-days.js';

const SUNDAY = 7;

/** "it was on sat I think": no answer that is nothing but a weekday is longer. */
const MOST_TOKENS_ALONE = 12;

/** "3:20", "3pm", "3 to 3:15", "1520", "noon": what a clock time begins like. */
function clockBegins({ tokens, dayWords, words }: Scan, at: number): boolean {
  const token = tokens[at];
  if (token?.kind === 'word') return words.times.noon[token.text] !== undefined;
  if (token?.kind !== 'number' || token.text.length > 4) return false;
  const after = tokens[at + 1];
  if (!after) return token.text.length === 4;
  if (after.text === ':' || after.text === '-') return tokens[at + 2]?.kind === 'number';
  if (dayWords.partsOfDay(tokens, at + 1)) return true;
  return words.times.to.includes(after.text) && tokens[at + 2]?.kind === 'number';
}

/** Where a short weekday that ends before `next` may be taken: nowhere, as an answer only, or in a note too. */
export function shortWeekdayStands(scan: Scan, at: number, next: number): 'no' | 'when-asked' | 'in-passing' {
  const { tokens, dayWords, words } = scan;
  const weekday = tokens[at];
  const before = tokens[at - 1];
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
  const first = at === 0 || (leads && words.date.weekdaysShort[weekday?.text ?? ''] !== SUNDAY);
  if (first && clockBegins(scan, after)) return at === 0 ? 'in-passing' : 'when-asked';
  return 'no';
}
