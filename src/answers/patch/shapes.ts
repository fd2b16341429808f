/** Puts measures together into patches: two sides, a circle, a square, an area; and tells what is doubtful of each. */
import type { Ask } from '../../../shared/phrases.js';
import type { Patch } from '../../../shared/record.js';
import { metresPerUnit, rounded, type LengthName } from '../../../shared/units.js';
import type { Span } from '../reading.js';
import { isLength, squareMetresOf, type Measure } from './measures.js';
import type { PatchPhrases } from './phrases.js';

export interface Shape {
  readonly patch: Patch;
  /** What else it may be, best first. */
  readonly others: readonly Patch[];
  /** Why it is asked back; null where it is not. */
  readonly ask: Ask | null;
  readonly span: Span;
}

/** Takes away what binary fractions add: a millionth of a metre is less than anybody measures. */
const clean = (value: number): number => rounded(value, 6);

const NONE = { lengthMetres: null, widthMetres: null, diameterMetres: null } as const;

export const areaOf = (squareMetres: number): Patch => ({ ...NONE, squareMetres: clean(squareMetres), shape: 'area' });

export const circleOf = (diameterMetres: number): Patch => ({
  ...NONE,
  squareMetres: clean((Math.PI * diameterMetres ** 2) / 4),
  shape: 'circle',
  diameterMetres: clean(diameterMetres),
});

export const rectangleOf = (lengthMetres: number, widthMetres: number): Patch => ({
  ...NONE,
  squareMetres: clean(lengthMetres * widthMetres),
  shape: 'rectangle',
  lengthMetres: clean(lengthMetres),
  widthMetres: clean(widthMetres),
});

const metresOf = (value: number, unit: LengthName): number => value * metresPerUnit[unit];

/** Two sides: the one said to be long is the length, else the longer. */
function sides(first: Measure, second: Measure, firstMetres: number, secondMetres: number): Patch {
  const said = first.role === 'long' || second.role === 'wide' || second.role === 'across';
  const turned = second.role === 'long' || first.role === 'wide' || first.role === 'across';
  if (said && !turned) return rectangleOf(firstMetres, secondMetres);
  if (turned && !said) return rectangleOf(secondMetres, firstMetres);
  return rectangleOf(Math.max(firstMetres, secondMetres), Math.min(firstMetres, secondMetres));
}

/** Whether a unit was said for lengths without one of their own; else the survey's is offered. */
export interface UnitForBare {
  readonly unit: LengthName;
  readonly said: boolean;
}

/** Two measures that are the sides of one patch. */
function pairOf(
  text: string,
  first: Measure,
  second: Measure,
  bareUnit: UnitForBare,
  phrases: PatchPhrases,
  span: Span,
): Shape {
  const detached = phrases.detached.exec(text.slice(second.to, second.to + 30))?.groups?.['name'];
  const own = isLength(second.unit) ? second.unit : isLength(first.unit) ? first.unit : null;
  const fallback = own ?? bareUnit.unit;
  const unitOf = ({ unit }: Measure): LengthName => (isLength(unit) ? unit : fallback);
  const patch = sides(first, second, metresOf(first.value, unitOf(first)), metresOf(second.value, unitOf(second)));
  const said = own !== null || bareUnit.said || detached !== undefined;
  const ask: Ask | null = !said ? 'patch-no-unit' : first.doubted || second.doubted ? 'patch-doubt' : null;
  return { patch, others: [], ask, span };
}

/** One measure by itself. Null where it is no size: a height, a distance, a bare number. */
function singleOf(text: string, measure: Measure, bareUnit: UnitForBare, phrases: PatchPhrases): Shape | null {
  const { kind, value, role, span, ends } = measure;
  const whole: Span = [span[0], measure.to];
  const shape = (patch: Patch, ask: Ask | null, others: readonly Patch[] = []): Shape => ({
    patch,
    others,
    ask: ask ?? (measure.doubted ? 'patch-doubt' : null),
    span: whole,
  });
  if (kind === 'area') return shape(areaOf(squareMetresOf(measure)), null);
  if (kind === 'bare' && (role === null || role === 'tall' || role === 'elsewhere')) return null;
  const unit = isLength(measure.unit) ? measure.unit : bareUnit.unit;
  const unclear: Ask | null = isLength(measure.unit) || bareUnit.said ? null : 'patch-no-unit';
  const metres = metresOf(value, unit);
  const square = rectangleOf(metres, metres);
  if (kind === 'squared') return shape(square, 'patch-squared', [areaOf(squareMetresOf(measure))]);
  if (kind === 'square' || role === 'side') return shape(square, unclear);
  if (role === 'radius') return shape(circleOf(2 * metres), unclear);
  if (role === 'around') return shape(circleOf(metres / Math.PI), unclear ?? 'patch-shape', [circleOf(2 * metres)]);
  if (role === 'across' || phrases.round.test(text)) return shape(circleOf(metres), unclear);
  if (phrases.squareShaped.test(text)) return shape(square, unclear);
  if (ends && phrases.hyphen.test(/^[\d.,]+(?<gap>\s*-\s*)\d/u.exec(text.slice(...span))?.groups?.['gap'] ?? '')) {
    const [low, high] = ends;
    return shape(rectangleOf(metresOf(high, unit), metresOf(low, unit)), 'patch-one-length', [square]);
  }
  return shape(square, 'patch-one-length');
}

/** All patches that the measures make, left to right. */
export function shapesOf(
  text: string,
  measures: readonly Measure[],
  bareUnit: UnitForBare,
  phrases: PatchPhrases,
): Shape[] {
  const shapes: Shape[] = [];
  const used = measures.filter(
    ({ role, kind, unit }) =>
      role !== 'tall' && (role !== 'elsewhere' || kind === 'area') && (kind === 'bare' || unit !== null),
  );
  const side = ({ kind, unit }: Measure): boolean => kind === 'bare' || kind === 'length' || isLength(unit);
  for (let at = 0; at < used.length; at++) {
    const first = used[at]!;
    const second = used[at + 1];
    if (second && side(first) && side(second)) {
      const gap = text.slice(first.to, second.span[0]);
      const third = used[at + 2];
      const span: Span = [first.span[0], second.to];
      const crossed =
        phrases.by.test(gap) ||
        phrases.by.test(text.slice(first.span[1], second.span[0])) ||
        (first.kind === 'length' && second.kind === 'length' && phrases.byWithUnits.test(gap));
      if (crossed) {
        const triple = third !== undefined && phrases.by.test(text.slice(second.to, third.span[0]));
        const pair = pairOf(
          text,
          first,
          third && triple && third.unit !== null && second.unit === null ? { ...second, unit: third.unit } : second,
          bareUnit,
          phrases,
          span,
        );
        shapes.push(triple ? { ...pair, ask: 'patch-doubt' } : pair);
        at += triple ? 2 : 1;
        continue;
      }
      // "2 feet wide and 30 long", "30 ft of fence, 2 ft wide"
      const lengths =
        first.kind !== 'area' &&
        second.kind !== 'area' &&
        (first.kind !== 'bare' || second.kind !== 'bare' || (first.role && second.role));
      const roles = [first.role, second.role];
      const longAndWide = roles.includes('long') || roles.includes('wide');
      const named = (role: Measure['role'], kind: Measure['kind']): boolean => role !== null || kind !== 'bare';
      const notRound = !roles.includes('radius') && !roles.includes('around') && !roles.includes('side');
      if (
        lengths &&
        longAndWide &&
        (first.role !== second.role || first.role === 'wide') &&
        notRound &&
        named(first.role, first.kind) &&
        named(second.role, second.kind)
      ) {
        shapes.push(pairOf(text, first, second, bareUnit, phrases, span));
        at++;
        continue;
      }
      if (
        first.kind === 'length' &&
        second.kind === 'length' &&
        roles.every((role) => role === null) &&
        phrases.and.test(gap)
      ) {
        shapes.push({ ...pairOf(text, first, second, bareUnit, phrases, span), ask: 'patch-doubt' });
        at++;
        continue;
      }
    }
    const single = singleOf(text, first, bareUnit, phrases);
    if (single) shapes.push(single);
  }
  return shapes;
}
