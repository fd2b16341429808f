/** The seasons in which intervals are tried, each from a seed of its own, so that one row can be drawn by itself. */
import { COVERAGE } from '../../../src/season/coverage.js';
import type { Design } from './simulated.js';

/** Standard deviations of the logarithm: all alike; two in three within a factor of 1.5 either way; of 2.2. */
const SPREADS = [0, 0.4, 0.8] as const;
const PEOPLE = [
  { observers: 10, sites: 10 },
  { observers: 20, sites: 10 },
  { observers: 40, sites: 20 },
  { observers: 60, sites: 30 },
] as const;

export const DESIGNS: readonly Design[] = SPREADS.flatMap((spread) => PEOPLE.map((people) => ({ ...people, spread })));

export const seedOf = (index: number): number => COVERAGE.seed + index;
