/** Lengths and areas in a text, each with its unit and what it is the length of: "6'6\"", "2 feet wide", "100 sq ft". */
import { metresPerUnit, squareMetresPerAcre, squareMetresPerHectare, type LengthName } from '../../../shared/units.js';
import type { Words } from '../../../shared/words.js';
import { findAmounts } from '../numbers.js';
import type { Span } from '../reading.js';
import { ONE_WAY, REACH, type PatchPhrases, type Role } from './phrases.js';

export interface Measure {
  /** `square` is "10 ft square", `squared` the "10 feet squared" that may mean either. */
  readonly kind: 'bare' | 'length' | 'area' | 'square' | 'squared';
  /** In its unit; the middle of a range. */
  readonly value: number;
  readonly unit: LengthName | 'acre' | 'hectare' | null;
  /** The ends of "10-12". */
  readonly ends: readonly [low: number, high: number] | null;
  readonly doubted: boolean;
  readonly role: Role | null;
  /** The number and its unit. */
  readonly span: Span;
  /** Behind its unit and its own words: "12 feet long". */
  readonly to: number;
}

type Bare = Omit<Measure, 'role' | 'to'>;

export const isLength = (unit: Measure['unit']): unit is LengthName =>
  unit !== null && unit !== 'acre' && unit !== 'hectare';

/** Square metres of an area: of so many squares on the unit where the unit is a length. */
export const squareMetresOf = ({ value, unit }: Pick<Measure, 'value' | 'unit'>): number => {
  if (unit === 'acre') return value * squareMetresPerAcre;
  if (unit === 'hectare') return value * squareMetresPerHectare;
  return unit === null ? 0 : value * metresPerUnit[unit] ** 2;
};

/** An amount with the unit that follows it. */
function withUnit(text: string, value: number, span: Span, words: Words, phrases: PatchPhrases): Bare {
  const bare: Bare = { kind: 'bare', value, unit: null, ends: null, doubted: false, span };
  phrases.unit.lastIndex = span[1];
  const match = phrases.unit.exec(text);
  const { of, joined, sq, name, two, squared, square } = match?.groups ?? {};
  // "of an acre" goes with fractions only, "of feet" with a couple
  if (!match || (of && value >= 1 && !/^\s*of\s+$/u.test(of))) return bare;
  const whole: Span = [span[0], span[1] + match[0].length];
  const { lengths, areas, joinedAreas } = words.patch;
  if (joined !== undefined) return { ...bare, kind: 'area', unit: joinedAreas[joined] ?? null, span: whole };
  if (name === undefined) return bare;
  const area = areas[name];
  if (area) return { ...bare, kind: 'area', unit: area, span: whole };
  const unit = lengths[name] ?? null;
  // the 2 of 3'2" is of inches
  if (two !== undefined && sq === undefined && !/^\p{L}/u.test(name)) {
    return { ...bare, kind: 'length', unit, span: [whole[0], whole[1] - two.length] };
  }
  if (sq !== undefined || two !== undefined) return { ...bare, kind: 'area', unit, span: whole };
  if (squared !== undefined) return { ...bare, kind: 'squared', unit, span: whole };
  // "100 ft sq" may be either, "10 ft square" is a square
  if (square !== undefined)
    return { ...bare, kind: phrases.squareAfter.test(square) ? 'square' : 'squared', unit, span: whole };
  return { ...bare, kind: 'length', unit, span: whole };
}

/** Behind the inches of "5 feet 6": the end, a sign, or the other side. */
const ENDS_LENGTH = /^\s*(?:$|[,;)*×.]|by\b|x\b)/u;

/** "5 feet 6 inches", "5'6", "1 m 50", "an acre and a half": the second goes on the first. Null where it does not. */
function compound(text: string, first: Bare, second: Bare, phrases: PatchPhrases): Bare | null {
  const gap = text.slice(first.span[1], second.span[0]);
  const span: Span = [first.span[0], second.span[1]];
  if (second.kind === 'bare' && second.value < 1 && first.kind !== 'bare' && /^\s+and\s+$/u.test(gap)) {
    return { ...first, value: first.value + second.value, span };
  }
  if (first.kind !== 'length' || !Number.isInteger(first.value)) return null;
  if (
    second.kind === 'length' &&
    second.unit === 'in' &&
    first.unit === 'ft' &&
    second.value < 12 &&
    (gap === '-' || phrases.and.test(gap))
  ) {
    return { ...first, value: first.value + second.value / 12, span };
  }
  if (
    second.kind === 'length' &&
    second.unit === 'cm' &&
    first.unit === 'm' &&
    second.value < 100 &&
    phrases.and.test(gap)
  ) {
    return { ...first, value: first.value + second.value / 100, span };
  }
  if (second.kind !== 'bare' || !/^\s?$/.test(gap)) return null;
  // "10 feet. one queen"
  if (gap !== '' && (text[first.span[1] - 1] === '.' || !ENDS_LENGTH.test(text.slice(second.span[1])))) return null;
  // "10' 6 wide" are two lengths, "5'6 wide" is one
  const labelled = phrases.roles.some(({ after }) => after.test(text.slice(second.span[1], second.span[1] + REACH)));
  if (gap !== '' && labelled) return null;
  if (first.unit === 'ft' && second.value < 12) return { ...first, value: first.value + second.value / 12, span };
  const centimetres = second.value >= 10 && second.value < 100 && Number.isInteger(second.value);
  return first.unit === 'm' && centimetres ? { ...first, value: first.value + second.value / 100, span } : null;
}

/** Joins "10 to 12 ft" into its middle. */
function ranged(text: string, first: Bare, second: Bare, phrases: PatchPhrases): Bare | null {
  const gap = text.slice(first.span[1], second.span[0]);
  const alike = first.kind === 'bare' || (first.unit === second.unit && first.kind === second.kind);
  const between = phrases.between.test(text.slice(Math.max(0, first.span[0] - REACH), first.span[0]));
  if (!alike || second.value <= first.value || !(phrases.range.test(gap) || (between && phrases.and.test(gap))))
    return null;
  return {
    ...second,
    value: (first.value + second.value) / 2,
    ends: [first.value, second.value],
    doubted: phrases.or.test(gap),
    span: [first.span[0], second.span[1]],
  };
}

function joinNeighbours(
  text: string,
  measures: readonly Bare[],
  join: (text: string, first: Bare, second: Bare, phrases: PatchPhrases) => Bare | null,
  phrases: PatchPhrases,
): Bare[] {
  const joined: Bare[] = [];
  for (const measure of measures) {
    const last = joined.at(-1);
    const both = last ? join(text, last, measure, phrases) : null;
    if (both) joined[joined.length - 1] = both;
    else joined.push(measure);
  }
  return joined;
}

/** "3 m (10 ft)" says one length twice. */
function restates(text: string, first: Bare, second: Bare, phrases: PatchPhrases): Bare | null {
  if (first.kind === 'bare' || first.kind !== second.kind || first.unit === second.unit) return null;
  if (!phrases.restated.test(text.slice(first.span[1], second.span[0]))) return null;
  const size = ({ kind, value, unit }: Bare): number =>
    kind === 'length' && isLength(unit) ? value * metresPerUnit[unit] : squareMetresOf({ value, unit });
  const ratio = size(second) / size(first);
  if (ratio < 0.9 || ratio > 1.11) return null;
  const closed = /^\s*\)/u.exec(text.slice(second.span[1]))?.[0].length ?? 0;
  return { ...first, span: [first.span[0], second.span[1] + closed] };
}

/** Numbers in a sentence that tells a size, and others. */
const MOST_AMOUNTS = 100;
/** More measures than this are a list of something else; a patch has three. */
const MOST_MEASURES = 40;

/** Same length, easier to read: "20ftx10ft", "10ft6in", "10ish by 12ish". What `measuresIn` and `shapesOf` take. */
export const plainSizes = (folded: string, { weather }: Words, phrases: PatchPhrases): string =>
  folded
    .replace(phrases.byEar, (found) => String(weather.unitsByEar[found]).padEnd(found.length))
    .replace(phrases.crossed, (found) => '*'.padEnd(found.length))
    .replace(phrases.oneWay, (found) => ONE_WAY.padEnd(found.length))
    // "10ft6in" · "4ft6 x 3ft", but "4ft2" is an area
    .replace(/(?<=\d\s?)ft(?=(?!2(?!\d))\d{1,2}(?!\d|\s?(?:f(?:oo|ee)?t|'(?!'))(?!\p{L})))/gu, " '")
    .replace(phrases.roleCorrected, (found) => ' '.repeat(found.length))
    .replace(phrases.suffix, (found) => ' '.repeat(found.length));

/** All measures, left to right; none where there are too many to be a size. */
export function measuresIn(text: string, words: Words, phrases: PatchPhrases): Measure[] {
  const amounts = findAmounts(text, words).map(({ value, span }) => ({ value, span }));
  if (amounts.length > MOST_AMOUNTS) return [];
  const found = amounts.map(({ value, span }) => withUnit(text, value, span, words, phrases));
  for (const match of text.matchAll(phrases.article)) {
    const to = match.index + (match.groups?.['article']?.length ?? 0);
    const taken = found.some(({ span }) => span[0] < to && match.index < span[1]);
    if (!taken) found.push(withUnit(text, 1, [match.index, to], words, phrases));
  }
  found.sort((a, b) => a.span[0] - b.span[0]);
  const joins = [compound, ranged, restates];
  const measures = joins.reduce<Bare[]>((left, join) => joinNeighbours(text, left, join, phrases), found);

  if (measures.length > MOST_MEASURES) return [];
  let from = 0;
  return measures.map((measure, at) => {
    const before = text.slice(Math.max(from, measure.span[0] - REACH), measure.span[0]);
    const end = measures[at + 1]?.span[0] ?? text.length;
    const after = text.slice(measure.span[1], Math.min(end, measure.span[1] + REACH));
    const said = phrases.roles.find((role) => role.before.test(before));
    const behind = phrases.roles
      .map(({ role, after: pattern }) => ({ role, length: pattern.exec(after)?.[0].length ?? 0 }))
      .filter(({ length }) => length > 0)
      .reduce<{ role: Role; length: number } | null>(
        (best, one) => (best && best.length >= one.length ? best : one),
        null,
      );
    const own = said === undefined && behind ? behind : null;
    const to = measure.span[1] + (own?.length ?? 0);
    from = to;
    return { ...measure, role: said?.role ?? own?.role ?? null, to };
  });
}
