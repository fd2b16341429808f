/** Was the watch as long as the protocol asks? */
import { withinLength } from '../../shared/protocol.js';
import type { Check, Draft } from './check.js';

/** Beyond these shares of the protocol's minutes it is another kind of watch. Our choice, no source. */
const FAR_TOO_SHORT = 1 / 2;
const FAR_TOO_LONG = 2;

const minutesOfDay = (time: string): number => Number(time.slice(0, 2)) * 60 + Number(time.slice(3, 5));

function minutesWatched({ minutes, times }: Draft): number | null {
  if (minutes !== null) return minutes;
  if (times === null || times.end === null) return null;
  return minutesOfDay(times.end) - minutesOfDay(times.start);
}

export const length: Check = {
  name: 'length',
  weights: ['ask', 'query'],
  check(watch, _history, { settings: { protocol } }) {
    const minutes = minutesWatched(watch);
    if (minutes === null || withinLength(minutes, protocol)) return null;
    const far = minutes < protocol.minutes * FAR_TOO_SHORT || minutes > protocol.minutes * FAR_TOO_LONG;
    return {
      check: 'length',
      weight: far ? 'query' : 'ask',
      values: { minutes, protocolMinutes: protocol.minutes, toleranceMinutes: protocol.toleranceMinutes },
    };
  },
};
