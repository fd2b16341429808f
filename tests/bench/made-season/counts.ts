/** Open flowers as people count them: exactly while they are few, in round numbers when they are many. */
import type { PlantWatched } from '../../../shared/record.js';
import type { Chance } from './chance.js';
import type { Plant } from './flora.js';

export interface Patch {
  readonly flowers: PlantWatched['flowers'];
  /** How many times the usual number there truly are. */
  readonly times: number;
}

const SPREAD = 0.9;
/** Up to here most people count one by one. */
const FEW = 20;

/** 37 is 40, 137 is 150, 1370 is 1500: what people say for it. */
function rounded(flowers: number): number {
  let step = 5;
  if (flowers > 50) step = 10;
  if (flowers > 120) step = 50;
  if (flowers > 500) step = 100;
  if (flowers > 1000) step = 500;
  return Math.max(step, Math.round(flowers / step) * step);
}

export function flowersOf(plant: Plant, chance: Chance): Patch {
  const times = chance.times(SPREAD);
  const flowers = Math.max(1, Math.round(plant.usual * times));
  const how = chance.share();
  const told = (low: number, value: number, high: number | null, about: boolean, asTyped: string): Patch => ({
    flowers: { value, low, high, about, asTyped },
    times,
  });
  if (how < (flowers <= FEW ? 0.9 : 0.3)) return told(flowers, flowers, flowers, false, String(flowers));
  const round = rounded(flowers);
  if (how < 0.86 || round < FEW) {
    return told(round, round, round, true, `${chance.one(['about', 'about', 'around', 'roughly'])} ${round}`);
  }
  if (how < 0.96) {
    const high = rounded(round * 1.5);
    return told(round, Math.round((round + high) / 2), high, true, `${round}-${high}`);
  }
  return told(round, round, null, true, `over ${round}`);
}
