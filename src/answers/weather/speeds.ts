/** Finds how hard it blew in numbers: "5-10 mph", "12 km/h", "Beaufort 3", "NW at 10"; gusts are passed over. */
import { beaufortOf } from '../../../shared/units.js';
import { SPEED_UNITS, type SpeedUnit } from '../../../shared/vocabularies.js';
import type { Words } from '../../../shared/words.js';
import type { Span } from '../reading.js';
import { blank, madeOnce } from '../text.js';
import { findMeasures } from './measures.js';
import { isFiller, labelledBefore } from './said.js';
import { clauseAt, tokenAt, type Spoken } from './spoken.js';
import { besideGust } from './wind-words.js';

export interface Speed {
  /** Forces it may mean, the best first; one where it is clear; none where it is off the scale. */
  readonly forces: readonly number[];
  /** A unit, a label or a direction says that it is of the wind. */
  readonly marked: boolean;
  /** "wind 60 mph" rather than "60 mph". */
  readonly labelled: boolean;
  readonly gust: boolean;
  /** As said beside the number; null where none was. */
  readonly unit: SpeedUnit | 'beaufort' | null;
  readonly fastest: number;
  readonly span: Span;
  readonly from: number;
  readonly to: number;
  readonly clause: number;
}

const HIGHEST_FORCE = 12;

type Unit = SpeedUnit | 'beaufort' | 'other';

const patternsOf = madeOnce(({ wind, temperature, sky, weather }: Words) => {
  const escape = (phrase: string): string => phrase.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&').replace(/\s+/g, '\\s{1,2}');
  const anyOf = (list: readonly string[]): string =>
    [...list]
      .sort((a, b) => b.length - a.length)
      .map(escape)
      .join('|');
  const end = '\\.?(?![\\p{L}\\p{N}/])';
  const behind = (list: readonly string[]): RegExp => new RegExp(`^[\\s(-]{0,2}(?:${anyOf(list)})${end}`, 'u');
  const units: [Unit, RegExp][] = [];
  for (const unit of SPEED_UNITS) units.push([unit, behind(wind.speedUnits[unit])]);
  const inAnswer: [Unit, RegExp][] = [];
  for (const unit of SPEED_UNITS)
    if (wind.speedUnitsInAnswer[unit].length > 0) inAnswer.push([unit, behind(wind.speedUnitsInAnswer[unit])]);
  const { F, C, degrees } = temperature.units;
  const others: [Unit, RegExp][] = [
    ['other', /^\s?(?:°|%|"|')/u],
    ['other', behind([...F, ...C, ...degrees, ...sky.percent, ...sky.eighths])],
    [
      'other',
      behind(
        temperature.otherAfter.filter(
          (word) =>
            !Object.values(wind.speedUnits).flat().includes(word) &&
            !wind.gusts.includes(word) &&
            !wind.beaufort.includes(word),
        ),
      ),
    ],
  ];
  return {
    units,
    inAnswer,
    others,
    beaufortBehind: new RegExp(`^[\\s-]{0,2}(?:on\\s(?:the\\s)?)?(?:${anyOf(wind.beaufort)})${end}`, 'u'),
    /** "Beaufort 2", "force: 3", "bft=2", "Beaufort scale was about 3" */
    beaufortBefore: new RegExp(`(?<!\\p{L})(?:${anyOf(wind.beaufort)})[\\s:=.#-]{0,3}(?:\\p{L}{1,7}\\s){0,2}$`, 'u'),
    /** "f3", "B2" */
    /** "f3", "B2" · "NW5", "SW5-10" */
    letters: new RegExp(
      `(?<![\\p{L}\\p{N}])(?:(?:${anyOf(wind.beaufortLetters)})[\\s-]?(?<force>\\d{1,2})|(?:${anyOf(weather.directions)})(?<low>\\d{1,2})(?:-(?<high>\\d{1,2}))?)(?![\\p{L}\\p{N}])`,
      'gu',
    ),
    under: new RegExp(`(?:^|[^\\p{L}])(?:${anyOf(wind.under)})\\s{0,2}(?:about\\s)?$`, 'u'),
    underAfter: new RegExp(`^\\s{1,2}(?:${anyOf(wind.underAfter)})(?![\\p{L}\\p{N}])`, 'u'),
    /** "10g20", "10 G 20 kt" */
    gustBehind: /^\s?g\s?\d{1,3}(?!\d)/u,
  };
});

/** A label says what a number is when at most so many words stand between. */
const FARTHEST_LABEL = 4;
const LONGEST_LEAD = 40;

/** Forces of one wind told by its ends: "5 to 10" is its middle; "under 10", "5 or 10" leave open which. */
function forcesOf(
  low: number,
  high: number,
  { under, either }: { under: boolean; either: boolean },
  unit: SpeedUnit,
): number[] {
  if (under) {
    const most = unit === 'm/s' ? high * 0.99 : Math.ceil(high) - 1;
    return [...new Set([beaufortOf(high / 2, unit), beaufortOf(most, unit)])];
  }
  const middle = beaufortOf((low + high) / 2, unit);
  return either ? [...new Set([middle, beaufortOf(low, unit), beaufortOf(high, unit)])] : [middle];
}

/** A range of forces is its middle; "2-3" leaves both open, the higher first as half rounds up. */
function forcesBetween(low: number, high: number): number[] {
  const middle = (low + high) / 2;
  if (high > HIGHEST_FORCE || !Number.isFinite(middle)) return [];
  return Number.isInteger(middle) ? [middle] : [Math.ceil(middle), Math.floor(middle)];
}

/** The wind of an aviation report: "18008KT", "VRB03KT", "27015G25KT"; direction, speed, gust. Source: WMO-No. 306, FM 15. */
const REPORTED = /(?<![\p{L}\p{N}])(?:\d{3}|vrb)(?<speed>\d{2})(?:g\d{2,3})?(?<unit>kt|mps)(?![\p{L}\p{N}])/gu;

/** All speeds and forces, left to right; a number without a unit is in `bareUnit`. */
export function speedsIn(text: Spoken, words: Words, bareUnit: SpeedUnit | 'beaufort', answer: boolean): Speed[] {
  const { folded, tokens } = text;
  const patterns = patternsOf(words);
  const unitAt = (behind: string): { unit: Unit | null; length: number } | null => {
    const gust = patterns.gustBehind.exec(behind)?.[0].length ?? 0;
    const rest = behind.slice(gust);
    for (const [unit, pattern] of [...patterns.units, ...(answer ? patterns.inAnswer : []), ...patterns.others]) {
      const found = pattern.exec(rest);
      if (found) return { unit, length: gust + found[0].length };
    }
    const beaufort = patterns.beaufortBehind.exec(rest);
    if (beaufort) return { unit: 'beaufort', length: gust + beaufort[0].length };
    return gust > 0 ? { unit: null, length: gust } : null;
  };
  const isLabel = (token: number): boolean => words.wind.labels.includes(tokens[token]!.word);
  // in passing "N 43.52" is a place
  const isDirection = (token: number): boolean => words.weather.directions.includes(tokens[token]!.word);
  const small = (token: number): boolean => isFiller(tokens[token]!, words);
  const speeds: Speed[] = [];
  const reported = [...folded.matchAll(REPORTED)];
  for (const match of reported) {
    const span: Span = [match.index, match.index + match[0].length];
    const speed = Number(match.groups?.['speed']);
    speeds.push({
      forces: forcesOf(speed, speed, { under: false, either: false }, match.groups?.['unit'] === 'mps' ? 'm/s' : 'kn'),
      marked: true,
      labelled: true,
      gust: false,
      unit: match.groups?.['unit'] === 'mps' ? 'm/s' : 'kn',
      fastest: speed,
      span,
      from: tokenAt(text, span[0]),
      to: tokenAt(text, span[1]),
      clause: clauseAt(text, span[0]),
    });
  }
  const rest = blank(
    folded,
    reported.map((match): Span => [match.index, match.index + match[0].length]),
  );
  for (const measure of findMeasures(rest, words, unitAt)) {
    const { low, high, unit, foreign, span } = measure;
    if (foreign || unit === 'other') continue;
    const from = tokenAt(text, span[0]);
    const to = tokenAt(text, span[1]);
    const clause = clauseAt(text, span[0]);
    const lead = folded.slice(Math.max(0, span[0] - LONGEST_LEAD), span[0]);
    const beaufort = patterns.beaufortBefore.exec(lead);
    const start = beaufort ? span[0] - beaufort[0].length : span[0];
    const gust = besideGust(text, from, to, words);
    // "wind -5" has a dash; a text that begins with "-5" has no wind in it
    const [least, most] = low < 0 ? [Math.abs(high), Math.abs(low)] : [low, high];
    const negative = low < 0 && folded.slice(0, span[0]).trim() === '';
    const bounds = {
      under: patterns.under.test(lead) || patterns.underAfter.test(folded.slice(span[1], span[1] + LONGEST_LEAD)),
      either: measure.alternatives,
    };
    const said = unit ?? (beaufort ? 'beaufort' : null);
    const of = said ?? bareUnit;
    const named = labelled(text, from, clause, isLabel, small) || labelledBefore(text, clause, isLabel);
    const directed = answer && labelled(text, from, clause, isDirection, small);
    speeds.push({
      forces: negative ? [] : of === 'beaufort' ? forcesBetween(least, most) : forcesOf(least, most, bounds, of),
      marked: said !== null || named || directed,
      labelled: named,
      gust,
      unit: said,
      fastest: of === 'beaufort' ? 0 : most,
      span: [start, span[1]],
      from,
      to,
      clause,
    });
  }
  if (!answer) return speeds;
  const marked = speeds.filter((speed) => speed.marked);
  const lettered = new Set<number>();
  for (const match of folded.matchAll(patterns.letters)) {
    const { force, low = '', high = low } = match.groups ?? {};
    const span: Span = [match.index, match.index + match[0].length];
    const from = tokenAt(text, span[0]);
    if (marked.some((speed) => speed.span[0] < span[1] && span[0] < speed.span[1])) continue;
    lettered.add(span[1]);
    speeds.push({
      forces:
        force !== undefined
          ? forcesBetween(Number(force), Number(force))
          : bareUnit === 'beaufort'
            ? forcesBetween(Number(low), Number(high))
            : forcesOf(Number(low), Number(high), { under: false, either: false }, bareUnit),
      marked: true,
      labelled: true,
      gust: false,
      unit: force !== undefined ? 'beaufort' : null,
      fastest: force !== undefined ? 0 : Number(high),
      span,
      from,
      to: tokenAt(text, span[1]),
      clause: clauseAt(text, span[0]),
    });
  }
  // the bare 3 of "f3"
  return speeds.filter((speed) => speed.marked || !lettered.has(speed.span[1]));
}

/** "wind about 5", "NW at 10", "out of the west 5 to 10". */
function labelled(
  { tokens }: Spoken,
  from: number,
  clause: number,
  tells: (token: number) => boolean,
  small: (token: number) => boolean,
): boolean {
  for (let at = from - 1; at >= 0 && from - at <= FARTHEST_LABEL && tokens[at]!.clause === clause; at--) {
    if (tells(at)) return true;
    if (!small(at)) return false;
  }
  return false;
}
