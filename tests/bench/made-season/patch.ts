/** How big the part watched was, in round feet or metres. */
import type { Patch } from '../../../shared/record.js';
import type { LengthUnit } from '../../../shared/vocabularies.js';
import type { Chance } from './chance.js';
import type { Told } from './weather.js';

/** Exact: NIST SP 811. */
const FOOT_METRES = 0.3048;

const rounded = (value: number): number => Math.round(value * 100) / 100;

export function patchTold(unit: LengthUnit, chance: Chance): Told<Patch> {
  const [metres, many, words] = unit === 'ft' ? [FOOT_METRES, 3, 'feet'] : [1, 1, 'm'];
  const side = (): number => chance.whole(many, 8 * many);
  const how = chance.share();
  if (how < 0.75) {
    const [one, other] = [side(), side()];
    const [length, width] = [Math.max(one, other), Math.min(one, other)];
    return {
      value: {
        squareMetres: rounded(length * metres * width * metres),
        shape: 'rectangle',
        lengthMetres: rounded(length * metres),
        widthMetres: rounded(width * metres),
        diameterMetres: null,
      },
      typed: `${length} by ${width} ${words}`,
    };
  }
  if (how < 0.9) {
    const across = side() + many;
    const diameter = across * metres;
    return {
      value: {
        squareMetres: rounded((Math.PI * diameter * diameter) / 4),
        shape: 'circle',
        lengthMetres: null,
        widthMetres: null,
        diameterMetres: rounded(diameter),
      },
      typed: `${across} ${words} across`,
    };
  }
  const area = chance.whole(2, 16) * (unit === 'ft' ? 25 : 2);
  return {
    value: {
      squareMetres: rounded(area * metres * metres),
      shape: 'area',
      lengthMetres: null,
      widthMetres: null,
      diameterMetres: null,
    },
    typed: `${area} sq ${unit}`,
  };
}
