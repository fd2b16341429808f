/** Flowers told anew so few that queens may be meant: "bee on dandelion 1" of a plant with 25 flowers. */
import { saysAnyOf, type PlantTold } from '../answers/index.js';
import type { Words } from '../../shared/words.js';
import { plantKey } from './fields.js';
import type { Report } from './types.js';

/** A number without a name: more queens of one bee are seldom seen on a plant in fifteen minutes. Common practice, no source. */
export const MOST_QUEENS = 9;

/** So much less than was told is rather a number of queens, where it could be one. */
const TIMES_LESS = 5;

export const isFew = (flowers: number, told: number): boolean => flowers <= MOST_QUEENS && flowers * TIMES_LESS <= told;

/** Whether a text gives plants of the report so few, and does not say that they are flowers. */
export const givesFew = (report: Report, plants: readonly PlantTold[], text: string, { count }: Words): boolean =>
  !saysAnyOf(text, count.flowers) &&
  plants.some(({ name, asTyped, flowers }) => {
    const known = report.plants?.find((plant) => plantKey(plant) === plantKey({ name, typed: asTyped }))?.flowers;
    return known != null && flowers !== null && isFew(flowers.value, known.value);
  });
