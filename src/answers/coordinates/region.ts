/** Where coordinates lie against the survey's region, and what that says of a pair that may be swapped or lack a minus. */
import type { Ask } from '../../../shared/phrases.js';
import { metresOutside } from '../../../shared/polygon.js';
import type { SurveySettings } from '../../../shared/survey.js';
import type { Coordinates } from './form.js';

export interface Pair {
  readonly latitude: number;
  readonly longitude: number;
}

type Region = SurveySettings['region'];

const isOnEarth = ({ latitude, longitude }: Pair): boolean => Math.abs(latitude) <= 90 && Math.abs(longitude) <= 180;

export const liesIn = (pair: Pair, region: Region): boolean => isOnEarth(pair) && metresOutside(pair, region) === 0;

export const hemisphereOfRegion = (region: Region): 'north' | 'south' =>
  region.reduce((sum, corner) => sum + corner.latitude, 0) >= 0 ? 'north' : 'south';

const liesWest = (region: Region): boolean => region.every((corner) => corner.longitude < 0);

/** What the pair means: itself, or better ones that are only offered. Null where it is no place on the earth. */
export function placed(
  found: Coordinates,
  region: Region,
): { readonly pair: Pair } | { readonly offers: readonly Pair[]; readonly ask: Ask } | null {
  const asRead: Pair = { latitude: found.latitude, longitude: found.longitude };
  const swapped: Pair = { latitude: found.longitude, longitude: found.latitude };
  const mirrored = ({ latitude, longitude }: Pair): Pair => ({ latitude, longitude: -Math.abs(longitude) });
  const western = liesWest(region);

  if (!found.axesSaid || found.leastMetres > 0) {
    const west = western ? mirrored(swapped) : swapped;
    const onlySwapped =
      (!isOnEarth(asRead) && isOnEarth(swapped)) ||
      (!liesIn(asRead, region) && !(western && liesIn(mirrored(asRead), region)) && liesIn(west, region));
    if (onlySwapped) return { offers: [liesIn(swapped, region) ? swapped : west], ask: 'place-swapped' };
  }
  if (!isOnEarth(asRead)) return null;
  if (western && asRead.longitude > 0) {
    const west = mirrored(asRead);
    if (!found.sideSaid) return { offers: [west, asRead], ask: 'place-western' };
    // a form that says its side may still have lost its minus on the way
    const machine = found.unmistakable && found.axesSaid && found.leastMetres > 0;
    if (machine && liesIn(west, region)) return { offers: [west, asRead], ask: 'place-western' };
  }
  return { pair: asRead };
}
