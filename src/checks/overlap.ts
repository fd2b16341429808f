/** When two watches share time or place. */
import { metresBetween, type Position } from '../../shared/distance.js';
import type { Place } from '../../shared/record.js';

interface Span {
  readonly start: string;
  readonly end: string;
}

/** Whether two spans of one day share any time. One that ends as the other starts does not. */
export const shareTime = (one: Span, other: Span): boolean =>
  one.start === other.start || (one.start < other.end && other.start < one.end);

/** Two positions this near are one spot: the width of a garden, and a phone's usual error twice. Our choice. */
export const SAME_SPOT_METRES = 50;

/** The position of a place; null where only its words are known. */
export function positionOf({ latitude, longitude }: Pick<Place, 'latitude' | 'longitude'>): Position | null {
  return latitude === null || longitude === null ? null : { latitude, longitude };
}

/**
 * Whether two places are surely two: in different sites, or further apart than both their uncertainties. Words alone
 * prove nothing: "home" and "my garden" may be one.
 */
export function surelyApart(one: Readonly<Place>, other: Readonly<Place>): boolean {
  if (one.site !== null && other.site !== null && one.site !== other.site) return true;
  const here = positionOf(one);
  const there = positionOf(other);
  if (here === null || there === null) return false;
  const unsureMetres = (one.uncertaintyMetres ?? 0) + (other.uncertaintyMetres ?? 0);
  return metresBetween(here, there) > Math.max(SAME_SPOT_METRES, unsureMetres);
}
