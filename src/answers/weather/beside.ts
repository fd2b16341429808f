/** Tells whether a bare number stands among words of sky and wind, so that it can only be the temperature. */
import type { Words } from '../../../shared/words.js';
import { madeOnce } from '../text.js';
import { inAny } from './phrases.js';
import { skyHits } from './sky-words.js';
import type { Spoken } from './spoken.js';
import { windHits } from './wind-words.js';

/** Bare numbers taken for °F in passing. Common practice, no source: below may be °C, above counts of flowers. */
export const FAHRENHEIT_IN_PASSING = { from: 45, to: 110 };

type Neighbour = 'edge' | 'weather' | 'time' | 'other';

const smallWords = madeOnce(({ weather }: Words) => new Set(weather.fillers));
const speedUnits = madeOnce(({ wind }: Words) => new Set(Object.values(wind.speedUnits).flat()));
const timeWords = madeOnce(
  ({ date }: Words) => new Set([...Object.keys(date.months), ...Object.keys(date.weekdays), ...Object.keys(date.days)]),
);

interface Place {
  readonly low: number;
  readonly high: number;
  readonly from: number;
  readonly to: number;
  readonly clause: number;
}

/** For numbers of the text: "66 and mostly sunny", "dead calm, 65, sunny", "sunny 70"; not "sunny, 85 violets". */
export function weatherBeside(text: Spoken, words: Words): (number: Place) => boolean {
  const { tokens, clauses } = text;
  const isWeather = inAny([...skyHits(text, words), ...windHits(text, words).words]);
  const neighbour = (start: number, step: 1 | -1, within: number): Neighbour => {
    for (let at = start, seen = 0; tokens[at]?.clause === within && seen < FARTHEST_TOKENS; at += step, seen++) {
      const { word, skipped } = tokens[at]!;
      if (isWeather(at) || speedUnits(words).has(word)) return 'weather';
      if (timeWords(words).has(word) || /^\d{1,2}(?::?\d\d)?(?:[ap]m?)?$|^[ap]m$/.test(word)) return 'time';
      // "forgot the weather it was sixty two and cloudy": here another sentence begins
      if (step === -1 && words.weather.opening.includes(word)) return 'edge';
      if (!skipped && !smallWords(words).has(word)) return 'other';
    }
    return 'edge';
  };
  return ({ low, high, from, to, clause }) => {
    if (low < FAHRENHEIT_IN_PASSING.from || high > FAHRENHEIT_IN_PASSING.to) return false;
    const left = neighbour(from - 1, -1, clause);
    const right = neighbour(to, 1, clause);
    if (right === 'weather') return left !== 'other';
    if (right !== 'edge') return false;
    if (left === 'weather') return true;
    if (left === 'other') return false;
    // alone between commas: what stands in the clauses beside it
    const next = clauses[clause + 1];
    const last = clauses[clause - 1];
    return (
      (next !== undefined && neighbour(next.from, 1, clause + 1) === 'weather') ||
      (left === 'edge' && last !== undefined && neighbour(last.to - 1, -1, clause - 1) === 'weather')
    );
  };
}

/** A number and a word of weather farther apart have nothing to do with each other. */
const FARTHEST_TOKENS = 10;
