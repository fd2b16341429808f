/** Does the place lie in the survey's region? Only coordinates can tell. */
import { metresOutside } from '../../shared/polygon.js';
import type { Check } from './check.js';

/** Beyond this the place is on no border of the region: a slip in the coordinates, or another survey's watch. */
const FAR_METRES = 100_000;

export const region: Check = {
  name: 'region',
  weights: ['ask', 'query'],
  check({ place }, _history, { settings }) {
    if (place === null || place.latitude === null || place.longitude === null) return null;
    const { latitude, longitude, uncertaintyMetres } = place;
    const outside = metresOutside({ latitude, longitude }, settings.region);
    // Within its own uncertainty the place may well lie inside.
    if (outside <= (uncertaintyMetres ?? 0)) return null;
    return {
      check: 'region',
      weight: outside > FAR_METRES ? 'query' : 'ask',
      values: { latitude, longitude, outsideMetres: Math.round(outside) },
    };
  },
};
