/** Was it as warm as the protocol asks, and can it have been so warm or cold with queens about? */
import { withinTemperature } from '../../shared/protocol.js';
import type { Check } from './check.js';

/**
 * Outside these, °C, a slip of the unit or the pen is likelier than a watch: queens of early species forage from
 * about 5 °C (from memory), and nobody sits by flowers for long above 38 °C (our choice, no source).
 */
const PLAUSIBLE_CELSIUS = { from: 5, to: 38 };

export const temperature: Check = {
  name: 'temperature',
  weights: ['keep', 'ask'],
  check({ temperature }, _history, { settings: { protocol } }) {
    if (temperature === null || withinTemperature(temperature.celsius, protocol)) return null;
    const { celsius } = temperature;
    const plausible = celsius >= PLAUSIBLE_CELSIUS.from && celsius <= PLAUSIBLE_CELSIUS.to;
    return {
      check: 'temperature',
      // A cool watch is data too, and the observer cannot warm it: only what is hard to believe is asked about.
      weight: plausible ? 'keep' : 'ask',
      values: { celsius, leastCelsius: protocol.leastCelsius, mostCelsius: protocol.mostCelsius },
    };
  },
};
