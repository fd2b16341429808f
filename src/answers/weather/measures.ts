/** Numbers with what stands behind them, and ranges of them: "66-70F", "between 5 and 10 mph", "minus two". */
import { distance } from 'fastest-levenshtein';
import type { Words } from '../../../shared/words.js';
import { findNumbers } from '../numbers.js';
import type { Span } from '../reading.js';
import { blank, madeOnce } from '../text.js';

export interface Measure<Unit> {
  /** Both ends of a range; the same number twice where it is none. */
  readonly low: number;
  readonly high: number;
  readonly unit: Unit | null;
  /** Something of a unit stood behind it, if only "degrees". */
  readonly marked: boolean;
  /** From its sign, digit or letter to the end of its unit. */
  readonly span: Span;
  readonly written: 'digits' | 'words';
  /** Part of a time or a date, or stuck to letters that are no unit: "3:15", "4/17", "15min". */
  readonly foreign: boolean;
  /** "68 or 75", "70/50": the ends may be two things rather than a range. */
  readonly alternatives: boolean;
}

/** A number that the caller has found already, such as a decade. */
export interface Ready {
  readonly value: number;
  readonly span: Span;
  readonly written: 'digits' | 'words';
}

/**
 * Tells what of a unit stands at the start of `rest`, the text behind a number, and how far it reaches; `unit` is null
 * where it does not say which ("degrees"). Null where nothing of a unit stands there.
 */
export type UnitAt<Unit> = (rest: string) => { readonly unit: Unit | null; readonly length: number } | null;

const patternsOf = madeOnce(({ weather, temperature, hedges }: Words) => ({
  /** "66-70", "66 to 70", "66/70", "66 or 70". */
  join: new RegExp(
    `^\\s{0,3}(?:-{1,2}|/|~|\\.{2,3}|(?:${[...weather.rangeJoins, ...weather.alternativeJoins].join('|')}))\\s{0,3}$`,
    'u',
  ),
  or: new RegExp(`^\\s{1,3}(?:${weather.alternativeJoins.join('|')})\\s{1,3}$`, 'u'),
  point: new RegExp(`^\\s(?:${weather.point.join('|')})\\s$`, 'u'),
  and: /^\s{1,3}(?:and|&)\s{1,3}$/u,
  between: new RegExp(`(?:${weather.between.join('|')})\\s{1,3}(?:\\p{L}{1,8}\\s{1,3}){0,2}$`, 'u'),
  negative: new RegExp(`(?<![\\p{L}\\p{N}])(?:${temperature.below.join('|')})\\s{1,2}$`, 'u'),
  /** "70ish" */
  stuckHedge: new RegExp(`^(?:${hedges.soft.filter((hedge) => /^\p{L}+$/u.test(hedge)).join('|')})(?!\\p{L})`, 'u'),
  byEar: new RegExp(
    `^[\\s-](?<word>${Object.keys(weather.unitsByEar).join('|')})(?=\\s{0,2}(?:$|[.,;!?°\\n]|(?:${Object.values(temperature.units).flat().join('|')})(?![\\p{L}])))`,
    'u',
  ),
  above: new RegExp(`^[\\s-]{1,3}(?:${temperature.aboveAfter.join('|')})(?!\\p{L})`, 'u'),
  below: new RegExp(`^[\\s-]{1,3}(?:${temperature.belowAfter.join('|')})(?!\\p{L})`, 'u'),
}));
type Patterns = ReturnType<typeof patternsOf>;

/** 3:15 · 15h20 · 4/17/26 · 2026-05-02 · 5.3.26 · the 4 of "4. 18 C" in a list */
const TIME_OR_DATE =
  /(?<![^\n])[ \t]{0,3}\d{1,2}[.)][ \t]{1,3}(?=[^\n\d]{0,20}\d)|\d{1,2}:\d\d|\d{1,2}h\d\d|\d{1,4}(?<mark>[-/.])\d{1,2}\k<mark>\d{1,4}/gu;
/** A sign that stands at the start or behind a word, and sticks to its number. */
const SIGN = /(?:^|[\s:(=,@])(?<sign>[-+])$/u;
/** Behind a number, a hyphen is no sign. */
const ENDS_NUMBER = /[\d°'%]\s*$|\d\s?[fc]\s*$/u;
/** A negative number beyond this was a bullet or a dash: no thermometer in a garden says it. */
const MOST_BELOW = 45;
/** A long note has some fifty numbers; a text with more than this is no note, and only its beginning is read. */
const MOST_NUMBERS = 500;
/** A unit is looked for in so much text behind a number. */
const LONGEST_UNIT = 40;
/** So much text before a number can bear on it. */
const LONGEST_LEAD = 40;

interface Atom<Unit> extends Omit<Measure<Unit>, 'low' | 'high' | 'alternatives'> {
  readonly value: number;
  readonly ready: boolean;
}

/** Two decades said in a row are one range where their values are this near: "high 60s, low 70s". */
const NEAR = 6;

/** "70-2", "66/7", "sixty five or six": the second number has lost the tens it shares with the first. */
const shorthand = (first: number, second: number): number =>
  first >= 10 && second < 10 && Number.isInteger(first) && second > first % 10 ? first - (first % 10) + second : second;

function signed(
  folded: string,
  value: number,
  [from, to]: Span,
  patterns: Patterns,
): { value: number; from: number; to: number } {
  const lead = folded.slice(Math.max(0, from - LONGEST_LEAD), from);
  const sign = SIGN.exec(lead)?.groups?.['sign'];
  const own = sign !== undefined && !ENDS_NUMBER.test(lead.slice(0, -1));
  const negative = patterns.negative.exec(lead)?.[0];
  const below = patterns.below.exec(folded.slice(to, to + LONGEST_UNIT))?.[0];
  const above = patterns.above.exec(folded.slice(to, to + LONGEST_UNIT))?.[0];
  if (value >= MOST_BELOW) return { value, from, to };
  if (own) return { value: sign === '-' ? -value : value, from: from - 1, to };
  if (negative !== undefined) return { value: -value, from: from - negative.length, to };
  if (above !== undefined) return { value, from, to: to + above.length };
  return below === undefined ? { value, from, to } : { value: -value, from, to: to + below.length };
}

/** What goes on a number: "twenty point five", "seventy 2", "sixty-fve". */
function continued(folded: string, number: Ready, next: Ready | undefined, words: Words, patterns: Patterns): Ready {
  const [from, to] = number.span;
  const tens = number.written === 'words' && number.value >= 20 && number.value % 10 === 0;
  if (next && next.value < 10) {
    const gap = folded.slice(to, next.span[0]);
    if (patterns.point.test(gap))
      return { ...number, value: number.value + next.value / 10, span: [from, next.span[1]] };
    if (tens && next.value >= 1 && /^[ -]$/.test(gap) && !/^[^\s.,;!?]/.test(folded.slice(next.span[1]))) {
      return { ...number, value: number.value + next.value, span: [from, next.span[1]] };
    }
  }
  // "sixty ate degrees"
  const heard = tens ? patterns.byEar.exec(folded.slice(to, to + LONGEST_UNIT))?.groups?.['word'] : undefined;
  if (heard !== undefined) {
    const units = words.weather.unitsByEar[heard] ?? 0;
    return { ...number, value: number.value + units, span: [from, to + 1 + heard.length] };
  }
  const tied = tens ? /^-(?<word>\p{L}{3,6})(?!\p{L})/u.exec(folded.slice(to, to + 8))?.groups?.['word'] : undefined;
  if (tied === undefined) return number;
  const unit = Object.entries(words.numbers.units).find(([word, value]) => value < 10 && distance(word, tied) === 1);
  return unit ? { ...number, value: number.value + unit[1], span: [from, to + 1 + tied.length] } : number;
}

function atomsIn<Unit>(
  folded: string,
  words: Words,
  unitAt: UnitAt<Unit>,
  ready: readonly Ready[],
  patterns: Patterns,
): Atom<Unit>[] {
  const timesAndDates = [...folded.matchAll(TIME_OR_DATE)].map((m): Span => [m.index, m.index + m[0].length]);
  const rest = blank(
    folded,
    ready.map((each) => each.span),
  );
  const numbers: Ready[] = [...findNumbers(rest, words), ...ready]
    .sort((a, b) => a.span[0] - b.span[0])
    .slice(0, MOST_NUMBERS);
  const isReady = new Set(ready);
  let passed = 0;
  const atoms: Atom<Unit>[] = [];
  for (const [at, found] of numbers.entries()) {
    // the zero of "5 below zero", the five of "twenty point five"
    if (found.span[0] < (atoms.at(-1)?.span[1] ?? 0)) continue;
    const number = isReady.has(found) ? found : continued(folded, found, numbers[at + 1], words, patterns);
    const { value, from, to } = signed(folded, number.value, number.span, patterns);
    const behind = folded.slice(to, to + LONGEST_UNIT);
    const unit = unitAt(behind);
    while (passed < timesAndDates.length && timesAndDates[passed]![1] <= from) passed++;
    const inTime = (timesAndDates[passed]?.[0] ?? Infinity) < to;
    const stuck = unit === null && /^\p{L}/u.test(behind) && !patterns.stuckHedge.test(behind);
    atoms.push({
      value,
      span: [from, to + (unit?.length ?? 0)],
      unit: unit?.unit ?? null,
      marked: unit !== null,
      written: number.written,
      foreign: inTime || stuck,
      ready: isReady.has(found),
    });
  }
  return atoms;
}

/** True where the two are ends of a range. */
function joins<Unit>(folded: string, first: Atom<Unit>, second: Atom<Unit>, patterns: Patterns): boolean {
  if (first.foreign || second.foreign) return false;
  if (first.unit !== null && second.unit !== null && first.unit !== second.unit) return false;
  const gap = folded.slice(first.span[1], second.span[0]);
  if (patterns.join.test(gap)) return true;
  // "high 60s, low 70s"
  if (first.ready && second.ready && /^\s?,?\s?$/.test(gap)) return Math.abs(first.value - second.value) <= NEAR;
  return (
    patterns.and.test(gap) &&
    patterns.between.test(folded.slice(Math.max(0, first.span[0] - LONGEST_LEAD), first.span[0]))
  );
}

/**
 * All measures, left to right, `ready` among them. A unit said once covers both ends of a range. The numbers of a time
 * or a date are marked foreign. An "and" joins only behind "between".
 */
export function findMeasures<Unit>(
  folded: string,
  words: Words,
  unitAt: UnitAt<Unit>,
  ready: readonly Ready[] = [],
): Measure<Unit>[] {
  const patterns = patternsOf(words);
  const atoms = atomsIn(folded, words, unitAt, ready, patterns);
  const measures: Measure<Unit>[] = [];
  for (let at = 0; at < atoms.length; at++) {
    const first = atoms[at]!;
    const second = atoms[at + 1];
    if (!second || !joins(folded, first, second, patterns)) {
      const { value, unit, marked, span, written, foreign } = first;
      measures.push({ low: value, high: value, unit, marked, span, written, foreign, alternatives: false });
      continue;
    }
    const gap = folded.slice(first.span[1], second.span[0]);
    const short = /^\s*[-/]\s*$/.test(gap) || (patterns.or.test(gap) && first.value >= 20);
    const other = short ? shorthand(first.value, second.value) : second.value;
    measures.push({
      low: Math.min(first.value, other),
      high: Math.max(first.value, other),
      unit: second.unit ?? first.unit,
      marked: first.marked || second.marked,
      span: [first.span[0], second.span[1]],
      written: first.written,
      foreign: false,
      alternatives: patterns.or.test(gap) || gap.includes('/'),
    });
    at++;
  }
  return measures;
}
