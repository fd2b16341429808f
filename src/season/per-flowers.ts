/**
 * Visits in a quarter of an hour to a hundred open flowers: what is left of a plant's rate when its flowers are allowed
 * for. Flowers of different counting units are never added: a plant counted in two units has a row for each.
 */
import type { CountingUnit } from '../../shared/vocabularies.js';
import { sortedNames, type Figure } from './figure.js';
import { garwood, type Interval } from './intervals.js';

export interface PerFlowers {
  /** Null for all bees. */
  readonly bee: string | null;
  readonly plant: string;
  readonly unit: CountingUnit;
  /** Visits in the watches whose flowers were counted. */
  readonly visits: number;
  /** Σ minutes × open flowers over those watches: the exposure. */
  readonly flowerMinutes: number;
  /** Times that the plant was watched without an open flower: they say nothing about visits to one and are left out. */
  readonly withoutFlowers: number;
  /** Σ visits / Σ (minutes × flowers) × 15 × 100; null without an exposure. */
  readonly per15minPer100: number | null;
  /** Garwood's, over that exposure: right only if every flower and watch were alike. */
  readonly poisson: Interval | null;
}

const MINUTES = 15;
const FLOWERS = 100;

interface Exposure {
  readonly plant: string;
  readonly unit: CountingUnit;
  flowerMinutes: number;
  withoutFlowers: number;
  readonly visits: Map<string, number>;
}

/** Every plant watched, for all bees and for each bee seen on it; sorted by plant and unit, all bees first. */
export function perFlowers(): Figure<readonly PerFlowers[]> {
  const exposures = new Map<string, Exposure>();
  return {
    add({ watch, plants, queens }) {
      for (const { entry, name, unit, flowers } of plants) {
        const key = `${name}\n${unit}`;
        const exposure = exposures.get(key) ?? {
          plant: name,
          unit,
          flowerMinutes: 0,
          withoutFlowers: 0,
          visits: new Map<string, number>(),
        };
        exposures.set(key, exposure);
        if (flowers === 0) {
          exposure.withoutFlowers += 1;
          continue;
        }
        exposure.flowerMinutes += watch.minutes * flowers;
        for (const one of queens)
          if (one.entry === entry) exposure.visits.set(one.bee, (exposure.visits.get(one.bee) ?? 0) + one.visits);
      }
    },
    result: () =>
      [...exposures.keys()].sort().flatMap((key) => {
        const { plant, unit, flowerMinutes, withoutFlowers, visits } = exposures.get(key)!;
        const row = (bee: string | null, seen: number): PerFlowers => {
          const per = flowerMinutes > 0 ? (MINUTES * FLOWERS) / flowerMinutes : null;
          return {
            bee,
            plant,
            unit,
            visits: seen,
            flowerMinutes,
            withoutFlowers,
            per15minPer100: per === null ? null : seen * per,
            poisson: per === null ? null : garwood(seen, per),
          };
        };
        const all = [...visits.values()].reduce((total, seen) => total + seen, 0);
        return [row(null, all), ...sortedNames(visits.keys()).map((bee) => row(bee, visits.get(bee) ?? 0))];
      }),
  };
}
