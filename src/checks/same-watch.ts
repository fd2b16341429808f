/** Has this observer told of this watch before? */
import type { Check } from './check.js';
import { shareTime, surelyApart } from './overlap.js';

export const sameWatch: Check = {
  name: 'same-watch',
  weights: ['ask'],
  check(watch, { lastWatches }) {
    const { id, observer, date, times, place } = watch;
    if (observer === null || date === null || times === null || times.end === null) return null;
    const span = { start: times.start, end: times.end };
    const earlier = lastWatches.find(
      (other) =>
        other.id !== id &&
        other.observer === observer &&
        // What was thrown away or only tried out may well be told again.
        (other.status === 'confirmed' || other.status === 'unconfirmed') &&
        other.date === date &&
        shareTime(span, other.times) &&
        (place === null || other.place === null || !surelyApart(place, other.place)),
    );
    if (!earlier) return null;
    return {
      check: 'same-watch',
      weight: 'ask',
      values: { number: earlier.number, date, times: { ...earlier.times } },
    };
  },
};
