/** Dates in digits: "4/28", "5.3.26", "2026-05-02", "20260502". */
import { addDays, dayOf, latestDayOfYear, monthsBefore, yearOf } from './calendar.js';
import { dayMention, type DayRule, type Mention, type Scan } from './mention.js';
import type { Token } from './tokens.js';

/** A date without a year that lies further back than this is asked about. */
export const MONTHS_WITHOUT_YEAR = 9;

/** How far from today the year of a date in passing may lie: "1.2.34" is a version, not a date. */
const YEARS_IN_PASSING = 5;

/** A date in passing without its year lies this near, unless a time or a weekday stands beside it: "9/8" may be a score. */
const DAYS_BACK_IN_PASSING = 120;

/** The highest number that can be a slip for a day: "4/31" was a date, "50/70" was not. */
const HIGHEST_SLIP_OF_DAY = 39;

/** Numbers below which a fraction is cut: "3/8 cloud", "4/5 of it". */
const DENOMINATORS = new Set([2, 3, 4, 5, 8, 10, 16]);

const isNumber = (token: Token | undefined): token is Token => token?.kind === 'number';

/** True where the number at `at` goes on a longer figure, as in "2:20", "$4" or "v5". */
export function stuckBefore(tokens: readonly Token[], at: number): boolean {
  const token = tokens[at];
  const before = tokens[at - 1];
  if (!token || !before || token.spaced) return false;
  if (before.kind === 'word' || before.text === '$' || before.text === '#') return true;
  return [':', '.', '/', '-', ','].includes(before.text) && isNumber(tokens[at - 2]) && !before.spaced;
}

/** True where a figure cannot begin: "$4", "v5", the "200" of "1,200", the "20" of "5.3.20". */
export function stuckSigns(tokens: readonly Token[], at: number): boolean {
  const token = tokens[at];
  const before = tokens[at - 1];
  if (!token || !before || token.spaced) return false;
  if (before.kind === 'word' || before.text === '$' || before.text === '#') return true;
  return [',', '.'].includes(before.text) && isNumber(tokens[at - 2]) && !before.spaced;
}

/** True where a figure that ends before `next` goes on, as in "10-10:15", "3/4pm" or "40%". */
export function stuckAfter({ tokens, dayWords }: Scan, next: number): boolean {
  const after = tokens[next];
  if (!after || after.spaced) return false;
  if (after.kind === 'word') return !dayWords.ordinalEndings(tokens, next) && !dayWords.afterNumber(tokens, next);
  if (['%', '°', '"', "'"].includes(after.text)) return true;
  const following = tokens[next + 1];
  return [':', '.', '/', '-', ','].includes(after.text) && isNumber(following) && !following.spaced;
}

/** True where "date:", "on" or the like stands right before. */
export function labelledBefore({ tokens, dayWords }: Scan, at: number): boolean {
  let end = at;
  while (end > 0 && tokens[end - 1]?.kind === 'sign' && !tokens[end]?.first) end--;
  for (let from = Math.max(0, end - 3); from < end; from++) {
    if (dayWords.labels(tokens, from)?.next === end) return true;
  }
  return false;
}

function isFraction({ tokens, dayWords }: Scan, at: number, next: number): boolean {
  if (dayWords.fractionOf(tokens, next)) return true;
  let before = at - 1;
  while (tokens[before]?.text === ':' || tokens[before]?.text === '=') before--;
  for (const from of [before, before - 1]) {
    if (from >= 0 && dayWords.fractionBefore(tokens, from)?.next === before + 1) return true;
  }
  // "1 1/2", but not "3:35 5/2"
  const [top, bottom] = [Number(tokens[at]?.text), Number(tokens[next - 1]?.text)];
  return top < bottom && DENOMINATORS.has(bottom) && isNumber(tokens[at - 1]) && !stuckBefore(tokens, at - 1);
}

/** A fraction by its looks ("4/5") counts in passing only where it stands like a date. */
function standsLikeDate(scan: Scan, at: number, next: number): boolean {
  const { tokens, dayWords } = scan;
  if (labelledBefore(scan, at)) return true;
  const before = tokens[at - 1];
  if (before && dayWords.namesOf(before).some((name) => name.is !== 'month')) return true;
  const clockAfter = isNumber(tokens[next]) && tokens[next + 1]?.text === ':';
  const clockBefore = isNumber(before) && tokens[at - 2]?.text === ':';
  return clockAfter || clockBefore;
}

interface DayAndMonth {
  readonly month: number;
  readonly day: number;
}

/** The survey's order first; the other only where that is no day of any year. */
const inOrder = (a: number, b: number, order: Scan['order']): readonly [DayAndMonth, DayAndMonth] => {
  const monthFirst = { month: a, day: b };
  const dayFirst = { month: b, day: a };
  return order === 'MDY' ? [monthFirst, dayFirst] : [dayFirst, monthFirst];
};

function withYear(
  scan: Scan,
  numbers: readonly [Token, Token, Token],
  where: { at: number; next: number },
): Mention | null {
  const [a, b, c] = numbers.map((token) => Number(token.text)) as [number, number, number];
  const [first, , last] = numbers;
  const thisYear = yearOf(scan.today);
  if (first.text.length === 4) {
    // a day before its month after the year: nobody's order, so only offered
    const date = dayOf(a, b, c);
    const turned = dayOf(a, c, b);
    const near = { inPassing: Math.abs(a - thisYear) <= YEARS_IN_PASSING, explicit: true };
    if (date === null && turned !== null) return dayMention(where, [turned], { ...near, doubt: 'doubted-date' });
    return dayMention(where, date === null ? [] : [date], near);
  }
  if (last.text.length !== 2 && last.text.length !== 4) return null;
  const year = last.text.length === 2 ? 2000 + c : c;
  const [said, other] = inOrder(a, b, scan.order);
  const date = dayOf(year, said.month, said.day) ?? dayOf(year, other.month, other.day);
  const inPassing = Math.abs(year - thisYear) <= YEARS_IN_PASSING;
  // "26-04-30" begins with the year as computers write it; as a day or month it would lie ahead
  const shortYear =
    first.text.length === 2 && last.text.length === 2 && 2000 + a === thisYear ? dayOf(2000 + a, b, c) : null;
  if (shortYear !== null && shortYear <= scan.today && (date === null || date > scan.today)) {
    const slipped = [dayOf(year, said.month, said.day), dayOf(year, other.month, other.day)].filter(
      (one) => one !== null,
    );
    if (slipped.every((one) => one > scan.today)) return dayMention(where, [shortYear], { explicit: true, inPassing });
  }
  const yearFirst = 2000 + a === thisYear && first.text.length === 2 && !inPassing ? dayOf(thisYear, b, c) : null;
  if (yearFirst !== null) return dayMention(where, [yearFirst], { doubt: 'doubted-date', explicit: true, inPassing });
  if (date === null && Math.max(a, b) > HIGHEST_SLIP_OF_DAY) return null;
  return dayMention(where, date === null ? [] : [date], { inPassing, explicit: true });
}

/** The days a month and a day without a year can mean: the order's own; one of the other order where that is nearer. */
export function withoutYear(scan: Scan, a: number, b: number): string[] {
  const [first, second] = inOrder(a, b, scan.order)
    .map(({ month, day }) => latestDayOfYear(month, day, scan.today))
    .filter((date) => date !== null);
  if (first === undefined) return [];
  const asked = first < monthsBefore(scan.today, MONTHS_WITHOUT_YEAR);
  return asked && second !== undefined && second > first ? [first, second] : [first];
}

/** "4/28", "28/4", "4-28", "4.28", with or without a year. */
export const numericDay: DayRule = (scan, at) => {
  const { tokens, dayWords } = scan;
  const [first, separator, second] = tokens.slice(at, at + 3);
  if (!isNumber(first) || !separator || !isNumber(second) || !['/', '\\', '-', '.'].includes(separator.text))
    return null;
  if (stuckBefore(tokens, at) || dayWords.never(tokens, at)) return null;
  const slashed = separator.text === '/' || separator.text === '\\';
  if ((separator.spaced || second.spaced) && !slashed) return null;

  const [again, apostrophe] = tokens.slice(at + 3, at + 5);
  const yearAt = apostrophe?.text === "'" ? at + 5 : at + 4;
  const third = tokens[yearAt];
  if (again?.text === separator.text && isNumber(third) && !third.spaced) {
    const where = { at, next: yearAt + 1 };
    const clockOfComputers = tokens[where.next]?.text === 't' && isNumber(tokens[where.next + 1]);
    if (stuckAfter(scan, where.next) && !clockOfComputers) return null;
    return withYear(scan, [first, second, third], where);
  }

  if (first.text.length > 2 || second.text.length > 2 || stuckAfter(scan, at + 3)) return null;
  const [a, b] = [Number(first.text), Number(second.text)];
  const where = { at, next: at + 3 };
  if (!slashed) {
    const dates = withoutYear(scan, a, b);
    const labelled = labelledBefore(scan, at);
    if (dates.length === 0) return null;
    return dayMention(where, dates, { explicit: true, yearSaid: false, weak: !labelled, inPassing: labelled });
  }
  if (isFraction(scan, at, where.next)) return null;
  const dates = withoutYear(scan, a, b);
  const [low, high] = [Math.min(a, b), Math.max(a, b)];
  if (dates.length === 0 && (low < 1 || low > 12 || high > HIGHEST_SLIP_OF_DAY)) return null;
  const looksLikeFraction = a < b && DENOMINATORS.has(b);
  const far = (dates[0] ?? '') < addDays(scan.today, -DAYS_BACK_IN_PASSING);
  const inPassing = (!looksLikeFraction && !far) || standsLikeDate(scan, at, where.next);
  return dayMention(where, dates, { explicit: true, yearSaid: false, inPassing });
};

const ROMAN_MONTHS = ['i', 'ii', 'iii', 'iv', 'v', 'vi', 'vii', 'viii', 'ix', 'x', 'xi', 'xii'];

/** "3.V.2026", "29-iv-26", "3 V 2026": as on the labels of collections. */
export const romanMonth: DayRule = (scan, at) => {
  const tokens = scan.tokens.slice(at, at + 7).filter(({ text }) => !['.', '-', '/'].includes(text));
  const [day, month, year] = tokens;
  if (!isNumber(day) || !isNumber(year) || day.text.length > 2 || stuckBefore(scan.tokens, at)) return null;
  const number = ROMAN_MONTHS.indexOf(month?.text ?? '') + 1;
  const next = scan.tokens.indexOf(year) + 1;
  const isShort = year.text.length === 2 && next - at === 5;
  if (number === 0 || !(isShort || year.text.length === 4) || stuckAfter(scan, next)) return null;
  const date = dayOf(Number(year.text) + (isShort ? 2000 : 0), number, Number(day.text));
  return date === null ? null : dayMention({ at, next }, [date], { explicit: true });
};

/** "20260502". */
export const eightDigits: DayRule = (scan, at) => {
  const token = scan.tokens[at];
  const parts = /^(?<year>20\d\d)(?<month>\d\d)(?<day>\d\d)$/.exec(token?.text ?? '')?.groups;
  if (!parts || stuckBefore(scan.tokens, at)) return null;
  const following = scan.tokens[at + 1];
  if (following && !following.spaced && following.kind === 'word' && following.text !== 't') return null;
  const date = dayOf(Number(parts['year']), Number(parts['month']), Number(parts['day']));
  return date === null ? null : dayMention({ at, next: at + 1 }, [date], { explicit: true });
};
