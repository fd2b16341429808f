/** One axis of a pair by itself: "N 45.09", "lat: 45.09", "45° 5' north", "-93.64"; and two of them put together. */
import type { Words } from '../../../shared/words.js';
import { anyOf } from '../any-of.js';
import type { Span } from '../reading.js';
import { madeOnce } from '../text.js';
import type { CoordinatesFound } from './form.js';

export type Side = 'n' | 's' | 'e' | 'w';

/** What was said of one axis. */
export interface Axis {
  /** Without its sign. */
  readonly degrees: number;
  readonly minus: boolean;
  readonly side: Side | null;
  readonly axis: 'latitude' | 'longitude' | null;
  readonly precisionMetres: number;
  /** Typed with signs for degrees or minutes. */
  readonly marked: boolean;
  readonly decimals: number;
  readonly span: Span;
}

/** The number of an axis, read from the groups of its pattern; null where it is on no globe ("75 minutes"). */
export type ReadDegrees = (
  groups: Readonly<Record<string, string | undefined>>,
) => Pick<Axis, 'degrees' | 'precisionMetres' | 'marked' | 'decimals'> | null;

export interface AxisPattern {
  readonly pattern: RegExp;
  readonly read: ReadDegrees;
}

/** Any of the words where digits may stand on both sides: "45d07m". */
export const besideDigits = (words: readonly string[]): string =>
  `(?:${[...words]
    .sort((a, b) => b.length - a.length)
    .map((word) => word.replace('.', '\\.'))
    .join('|')})(?!\\p{L})`;

/** A pattern (flag `gu`) for the number with label, letter and sign around it. */
export function axisPattern(number: string, { latitude, longitude, hemispheres, together }: Words['place']): RegExp {
  const letter = Object.keys(hemispheres)
    .sort((a, b) => b.length - a.length)
    .join('|');
  // "-90.64 east side" is no longitude in the east; a dash at the head of a line, with a blank behind it, begins an item
  return new RegExp(
    `(?<![\\p{L}\\d.])(?:(?<label>${anyOf(latitude, longitude)})[\\s:=.("']{0,4})?` +
      `(?:\\(?(?<before>${letter})\\)?[\\s.:]{0,2})?(?<sign>[+-](?!\\s)|(?<!(?:^|\\n)[ \\t]{0,4})[+-])?\\s?(?<!\\d[.,]?)${number}` +
      `(?<tail>\\s{0,2}\\(?(?<after>${letter})(?!\\p{L})\\.?\\)?(?!\\s{1,3}(?!${anyOf(latitude, longitude)}|(?:${letter}|${together.join('|')})(?!\\p{L}))\\p{L}))?`,
    'gu',
  );
}

/** An axis, or the place of one that cannot be. */
type AxisFound = Axis | { readonly impossible: 'nowhere'; readonly span: Span };

function axesIn(plain: string, { pattern, read }: AxisPattern, { latitude, hemispheres }: Words['place']): AxisFound[] {
  const axes: AxisFound[] = [];
  pattern.lastIndex = 0;
  for (let match = pattern.exec(plain); match; match = pattern.exec(plain)) {
    const groups = match.groups ?? {};
    const { label, before, after, sign, tail = '' } = groups;
    // "W 93.6 N 45.1": the N is the next one's
    const ends = match.index + match[0].length - (before !== undefined ? tail.length : 0);
    pattern.lastIndex = Math.max(ends, match.index + 1);
    const span: Span = [match.index, ends];
    const number = read(groups);
    if (!number) {
      axes.push({ impossible: 'nowhere', span });
      continue;
    }
    const side = hemispheres[before ?? after ?? ''] ?? null;
    const byLabel = label === undefined ? null : latitude.includes(label) ? 'latitude' : 'longitude';
    const byLetter = side === null ? null : side === 'n' || side === 's' ? 'latitude' : 'longitude';
    axes.push({ ...number, minus: sign === '-', side, axis: byLetter ?? byLabel, span });
  }
  return axes;
}

const between = madeOnce(
  ({ together }: Words['place']) => new RegExp(`^[\\s,;/|)(.&+"]{0,6}(?:${anyOf(together)}\\s{1,3})?$`, 'u'),
);

/** Whether a pair without letters is coordinates at all; the form decides. */
export type Accept = (first: Axis, second: Axis, whole: boolean) => { readonly unmistakable: boolean } | null;

/** Neighbouring axes put together. Impossible where both are the same axis, or one is on no globe. */
export function pairsIn(plain: string, axis: AxisPattern, words: Words['place'], accept: Accept): CoordinatesFound[] {
  const axes = axesIn(plain, axis, words);
  const pairs: CoordinatesFound[] = [];
  for (let at = 0; at + 1 < axes.length; at++) {
    const first = axes[at]!;
    const second = axes[at + 1]!;
    if (!between(words).test(plain.slice(first.span[1], second.span[0]))) continue;
    const span: Span = [first.span[0], second.span[1]];
    if ('impossible' in first || 'impossible' in second) {
      pairs.push({ impossible: 'nowhere', span });
      at++;
      continue;
    }
    const whole = /^[\s().]*$/u.test(plain.slice(0, span[0]) + plain.slice(span[1]));
    const accepted = accept(first, second, whole);
    if (!accepted) continue;
    pairs.push(pairOf(first, second, span, accepted.unmistakable));
    at++;
  }
  return pairs;
}

function pairOf(first: Axis, second: Axis, span: Span, unmistakable: boolean): CoordinatesFound {
  if (first.axis !== null && first.axis === second.axis) return { impossible: 'nowhere', span };
  const turned = first.axis === 'longitude' || second.axis === 'latitude';
  const [latitude, longitude] = turned ? [second, first] : [first, second];
  const signed = ({ degrees, minus, side }: Axis): number =>
    (minus || side === 's' || side === 'w') && degrees !== 0 ? -degrees : degrees;
  return {
    latitude: signed(latitude),
    longitude: signed(longitude),
    axesSaid: first.axis !== null || second.axis !== null,
    sideSaid: longitude.side !== null || longitude.minus,
    precisionMetres: Math.max(first.precisionMetres, second.precisionMetres),
    statedMetres: null,
    leastMetres: 0,
    unmistakable,
    span,
  };
}
