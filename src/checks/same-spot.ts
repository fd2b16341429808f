/** Did somebody else watch the same flowers at the same time? Then the same queens may stand twice in the figures. */
import { metresBetween } from '../../shared/distance.js';
import type { Check } from './check.js';
import { positionOf, SAME_SPOT_METRES, shareTime } from './overlap.js';

export const sameSpot: Check = {
  name: 'same-spot',
  weights: ['query'],
  check(watch, { sameDayNearby }) {
    const { observer, date, times, place } = watch;
    if (date === null || times === null || times.end === null || place === null) return null;
    const here = positionOf(place);
    if (here === null) return null;
    const span = { start: times.start, end: times.end };
    const nearest = sameDayNearby
      .filter((other) => other.observer !== observer && shareTime(span, other))
      .map((other) => ({ other, metres: metresBetween(here, other) }))
      .filter(({ metres }) => metres <= SAME_SPOT_METRES)
      .sort((a, b) => a.metres - b.metres || a.other.number - b.other.number)[0];
    if (!nearest) return null;
    const { number, start, end } = nearest.other;
    return {
      check: 'same-spot',
      weight: 'query',
      // No name and no words of the other person: this is said to the observer too.
      values: { number, times: { start, end }, apartMetres: Math.round(nearest.metres) },
    };
  },
};
