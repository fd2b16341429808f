/** Finds what is said of degrees: "70F", "21 °C", "low 70s", "between 66 and 70", "seventy"; and tells felt from measured. */
import type { TemperatureUnit } from '../../../shared/vocabularies.js';
import { distance } from 'fastest-levenshtein';
import type { Words } from '../../../shared/words.js';
import type { Span } from '../reading.js';
import { madeOnce, phraseFinder } from '../text.js';
import { findMeasures, type Ready } from './measures.js';
import { hitFinder, inAny, type Hit } from './phrases.js';
import { labelledBefore, otherTimeClauses } from './said.js';
import { skyHits } from './sky-words.js';
import { clauseAt, tokenAt, type Spoken } from './spoken.js';
import { windHits, type WindHit } from './wind-words.js';

export interface Degrees {
  /** Both ends of a range; the same number twice where it is none. */
  readonly low: number;
  readonly high: number;
  readonly unit: TemperatureUnit | null;
  /** A unit, a degree sign, a label or a decade says that it is a temperature. */
  readonly marked: boolean;
  /** "high 70": a decade, or what a forecast said. */
  readonly doubtful: boolean;
  /** "68 or 75". */
  readonly alternatives: boolean;
  /** "felt like 80", "a high of 75", "not 70": told, but not as the temperature of the watch. */
  readonly aside: boolean;
  /** "earlier 55", "75 tomorrow". */
  readonly otherTime: boolean;
  /** No mark, and behind words of weather, where a speed usually stands. */
  readonly behindWeather: boolean;
  readonly span: Span;
  /** With the label that made it one. */
  readonly used: readonly Span[];
  /** Tokens of the text: `[from, to)`. */
  readonly from: number;
  readonly to: number;
  readonly clause: number;
}

/** "farenheight" is this far from the right spelling. */
const MOST_WRONG_LETTERS = 3;

type UnitWord = TemperatureUnit | 'degrees';

const unitWords = madeOnce(({ units }: Words['temperature']) => {
  const known = new Map<string, UnitWord>();
  for (const word of units.F) known.set(word, 'F');
  for (const word of units.C) known.set(word, 'C');
  for (const word of units.degrees) known.set(word, 'degrees');
  return known;
});

function unitOf(word: string, known: ReadonlyMap<string, UnitWord>): UnitWord | null {
  const exact = known.get(word);
  if (exact) return exact;
  if (word.length < 6) return null;
  for (const [right, unit] of known) {
    const slips = Math.min(MOST_WRONG_LETTERS, Math.floor(right.length / 3));
    if (right.length >= 6 && right[0] === word[0] && distance(word, right) <= slips) return unit;
  }
  return null;
}

/** "°", "70' F", "70* F"; an apostrophe before a number or an "x" is feet. */
const DEGREE_SIGN = /^[ \t]{0,2}(?:°|\*(?!\*)|\^|'(?!\s{0,2}[\dx"'s]))/;
const NEXT_WORD = /^[ \t\-(.,/]{0,3}(?<word>\p{L}{1,12}|℉|℃)\.?(?![\p{L}\p{N}])/u;

/** Reads the unit behind a number; a mere "degrees" or "°" marks it and says no unit. */
const unitAt = (words: Words) => (rest: string) => {
  const known = unitWords(words.temperature);
  let length = DEGREE_SIGN.exec(rest)?.[0].length ?? 0;
  let unit: TemperatureUnit | null = null;
  for (let seen = 0; seen < 4; seen++) {
    const next = NEXT_WORD.exec(rest.slice(length));
    const word = next?.groups?.['word'];
    if (!next || word === undefined) break;
    const found = unitOf(word, known);
    if (found === null && !(length > 0 && /^(?:in|of)$/.test(word))) break;
    if (found === null) {
      // "70 degrees in Fahrenheit"
      const further = NEXT_WORD.exec(rest.slice(length + next[0].length))?.groups?.['word'];
      if (further === undefined || unitOf(further, known) === null) break;
    }
    length += next[0].length;
    if (found === 'F' || found === 'C') {
      unit = found;
      if (/^\)/.test(rest.slice(length))) length++;
      break;
    }
  }
  return length === 0 ? null : { unit, length };
};

const decadePattern = madeOnce(({ temperature, numbers }: Words) => {
  const anyOf = (words: Readonly<Record<string, number>>): string => Object.keys(words).join('|');
  const part = anyOf(temperature.parts);
  return new RegExp(
    [
      String.raw`(?<![\p{L}\p{N}])`,
      // "mid to upper ", "low-", "in the lower "
      String.raw`(?:(?<first>${part})(?:[\s-]{0,2}(?:to|or|and|&|/|-)[\s-]{0,2}(?<second>${part}))?[\s-]{0,2}(?:the\s)?)?`,
      // "70", "seventies", "seventy"
      `(?:(?<digits>[1-9]0)|(?<decade>${anyOf(temperature.decades)})|(?<tens>${anyOf(numbers.tens)}))`,
      // "70s", "70's", "60-something"
      String.raw`(?:(?<plural>\s?'?s)|[\s-]?(?<some>${temperature.somethings.join('|')}))?`,
      // no "mid 60-65", no "low seventy two"
      String.raw`(?![\p{L}\p{N}])(?!\s?[-/.:,]\s?\d)(?![\s-](?:${anyOf(numbers.units)})(?!\p{L}))`,
    ].join(''),
    'gu',
  );
});

interface Decade extends Ready {
  readonly marked: boolean;
  readonly doubtful: boolean;
}

/** "low 70s" 72, "mid to upper 60s" 66.5, "in the 60s" 65. */
function decadesIn(folded: string, words: Words): Decade[] {
  const { parts, decades, doubtfulParts } = words.temperature;
  const found: Decade[] = [];
  for (const match of folded.matchAll(decadePattern(words))) {
    const { first, second, digits, plural, decade, tens, some } = match.groups ?? {};
    const whole = plural !== undefined || decade !== undefined || some !== undefined;
    if (first === undefined && !whole) continue;
    const base = digits !== undefined ? Number(digits) : (decades[decade ?? ''] ?? words.numbers.tens[tens ?? ''] ?? 0);
    const offsets = [first, second].flatMap((part) => (part === undefined ? [] : [parts[part] ?? 5]));
    const offset = offsets.length === 0 ? 5 : offsets.reduce((sum, each) => sum + each, 0) / offsets.length;
    found.push({
      value: base + offset,
      span: [match.index, match.index + match[0].length],
      written: digits === undefined ? 'words' : 'digits',
      marked: whole,
      doubtful: !whole && doubtfulParts.includes(first ?? ''),
    });
  }
  return found;
}

const labels = madeOnce((words: Words) =>
  hitFinder(
    words.temperature.labels.map((phrase) => [phrase, true] as const),
    words,
  ),
);
const notBefore = madeOnce((words: Words) =>
  hitFinder(
    words.temperature.otherBefore.map((phrase) => [phrase, true] as const),
    words,
  ),
);
const behind = madeOnce(({ temperature }: Words) =>
  phraseFinder(temperature.otherAfter.map((phrase) => [phrase, true] as const)),
);
const dateWords = madeOnce(({ date }: Words) => new Set([...Object.keys(date.months), ...Object.keys(date.weekdays)]));

const forecastBefore = madeOnce(({ temperature }: Words) => {
  const pattern = new RegExp(
    `(?<!\\p{L})(?:${temperature.forecastBefore.join('|')})\\s{1,2}(?:\\p{L}{1,8}\\s){0,1}$`,
    'u',
  );
  return (lead: string): boolean => pattern.test(lead);
});
/** "a high of around " */
const LONGEST_FORECAST = 30;

/** A label says what a number is when at most so many words stand between. */
const FARTHEST_LABEL = 4;

/** All that is said of degrees, left to right. Numbers that are times, dates, speeds, counts are left out. */
export function degreesIn(text: Spoken, words: Words): Degrees[] {
  const { folded, tokens } = text;
  const decades = decadesIn(folded, words);
  const measures = findMeasures(folded, words, unitAt(words), decades).filter((measure) => !measure.foreign);
  if (measures.length === 0) return [];
  const labelHits = labels(words)(text);
  const isLabel = inAny(labelHits);
  const isMarkedLabel = (token: number): boolean =>
    isLabel(token) || words.temperature.labelsWithMark.includes(tokens[token]!.word);
  const labelEnds = new Map(labelHits.map((hit) => [hit.to, hit]));
  const otherEnds = new Map(notBefore(words)(text).map((hit) => [hit.to, hit]));
  const otherTimes = otherTimeClauses(text, words);
  const sky = skyHits(text, words);
  const wind = windHits(text, words).words;
  const firstWeather = Math.min(...[...sky, ...wind].map((hit) => hit.span[0]), Infinity);

  const isWind = windAt(wind);
  const isSky = inAny(sky);
  let passed = 0;
  return measures.flatMap((measure): Degrees[] => {
    const [start, end] = measure.span;
    const clause = clauseAt(text, start);
    const from = tokenAt(text, start);
    const to = tokenAt(text, end);
    while (passed < decades.length && decades[passed]!.span[1] <= start) passed++;
    const inDecade: Decade[] = [];
    for (let at = passed; at < decades.length && decades[at]!.span[1] <= end; at++) inDecade.push(decades[at]!);
    const before = lastMeaning(text, from);
    const label = closeBefore(text, labelEnds, from, clause);
    const labelled =
      label !== undefined ||
      (clause > 0 && text.clauses[clause]?.from === from && labelledBefore(text, clause, isMarkedLabel)) ||
      readFromLabel(text, to, clause, isLabel, words);
    const marked = measure.unit !== null || measure.marked || inDecade.some((decade) => decade.marked) || labelled;
    if (!marked) {
      const [next] = behind(words)(folded.slice(end, end + 20));
      if (next && /^[\s-]*$/.test(folded.slice(end, end + next.span[0]))) return [];
      if (
        /^\s?(?:%|#|\/\s?8|'\s?[\dx])/.test(folded.slice(end, end + 5)) ||
        (folded[end] === '"' && folded[start - 1] !== '"') ||
        /[#$@]\s?$/.test(folded.slice(0, start).slice(-3))
      )
        return [];
      if (before !== undefined && dateWords(words).has(before) && measure.high <= 31) return [];
      if (measure.written === 'words' && measure.high < SMALLEST_SPELT && tokens.length > 3) return [];
    }
    if (!marked && measure.high < LEAST_FAHRENHEIT && ofWind(text, from, clause, isWind, isSky, words)) return [];
    const negated =
      words.weather.negators.includes(tokens[from - 1]?.word ?? '') && tokens[from - 1]?.clause === clause;
    return [
      {
        low: measure.low,
        high: measure.high,
        unit: measure.unit,
        marked,
        doubtful: inDecade.some((decade) => decade.doubtful),
        alternatives: measure.alternatives,
        aside:
          closeBefore(text, otherEnds, from, clause) !== undefined ||
          forecastBefore(words)(folded.slice(Math.max(0, start - LONGEST_FORECAST), start)) ||
          negated,
        otherTime: otherTimes.has(clause),
        behindWeather: !marked && start > firstWeather,
        span: measure.span,
        used: label ? [label.span, measure.span] : [measure.span],
        from,
        to,
        clause,
      },
    ];
  });
}

/** The lowest bare number that can only be °F: nobody watches flowers at 45 °C. */
export const LEAST_FAHRENHEIT = 45;

/** "one of those days": a small number in words is none of degrees, unless it is all that is said. */
const SMALLEST_SPELT = 10;

/** The last word before a token that is not skipped, in the same clause. */
function lastMeaning({ tokens }: Spoken, from: number): string | undefined {
  for (let at = from - 1; at >= 0 && tokens[at]!.clause === tokens[from]?.clause; at--) {
    if (!tokens[at]!.skipped) return tokens[at]!.word;
  }
  return undefined;
}

/** The hit that ends a few words before the token, in its clause, with no number between. */
function closeBefore<Value>(
  { tokens }: Spoken,
  ends: ReadonlyMap<number, Hit<Value>>,
  from: number,
  clause: number,
): Hit<Value> | undefined {
  for (let end = from; end >= from - FARTHEST_LABEL; end--) {
    const hit = ends.get(end);
    if (hit) return hit.clause === clause ? hit : undefined;
    if (/^\d/.test(tokens[end - 1]?.word ?? '')) return undefined;
  }
  return undefined;
}

/** "58 on the porch thermometer". */
function readFromLabel(
  text: Spoken,
  to: number,
  clause: number,
  isLabel: (token: number) => boolean,
  words: Words,
): boolean {
  const { tokens } = text;
  if (!words.temperature.readFrom.includes(tokens[to]?.word ?? '')) return false;
  for (let at = to + 1; at <= to + FARTHEST_LABEL && tokens[at]?.clause === clause; at++) if (isLabel(at)) return true;
  return false;
}

function windAt(wind: readonly WindHit[]): (token: number) => WindHit | undefined {
  const hits = new Map<number, WindHit>();
  for (const hit of wind) for (let token = hit.from; token < hit.to; token++) hits.set(token, hit);
  return (token) => hits.get(token);
}

/** "breeze 5", "wind about 10", "NW 10": directly behind a word of the wind, or a direction. "calm 21" is none. */
function ofWind(
  { tokens }: Spoken,
  from: number,
  clause: number,
  windAtToken: (token: number) => WindHit | undefined,
  isSky: (token: number) => boolean,
  { wind: { labels: windLabels }, weather }: Words,
): boolean {
  for (let at = from - 1; at >= 0 && from - at <= FARTHEST_LABEL && tokens[at]!.clause === clause; at--) {
    const { word } = tokens[at]!;
    if (windLabels.includes(word) || weather.directions.includes(word)) return true;
    const hit = windAtToken(at);
    if (hit) return hit.value.forces[0] !== 0;
    if (isSky(at) || /^\d/.test(word)) return false;
  }
  return false;
}

/**
 * The unit where it is said apart from any number and is the only one: "Fahrenheit: about 70", "temp (F) 70". A letter
 * counts only where it stands alone in its clause.
 */
export function unitAlone({ tokens, clauses }: Spoken, words: Words): TemperatureUnit | null {
  const known = unitWords(words.temperature);
  const units = new Set<TemperatureUnit>();
  tokens.forEach((token, at) => {
    const unit = unitOf(token.word, known);
    if (unit !== 'F' && unit !== 'C') return;
    const { from, to } = clauses[token.clause]!;
    const alone = to - from === 1 || /\d/.test(tokens[at - 1]?.word ?? '');
    if (token.word.length > 3 || alone) units.add(unit);
  });
  const [only] = units;
  return units.size === 1 && only ? only : null;
}
