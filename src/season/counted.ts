/** A watch as the figures count it: plants by name, queens under the names that stand, workers apart. */
import type { CountingUnit } from '../../shared/vocabularies.js';
import type { DeterminationCounts, WatchCounts } from '../../shared/watch-counts.js';
import { standingOf, type Standing } from './standing.js';

export interface CountedPlant {
  /** Its place in the watch: a name may stand twice, the pink and the white. */
  readonly entry: number;
  /** The accepted name; for a plant not on the list its words as typed. */
  readonly name: string;
  readonly flowers: number;
  readonly unit: CountingUnit;
}

export interface CountedQueens extends Standing<DeterminationCounts> {
  readonly plant: string;
  /** Of the plant as it stands in the watch. */
  readonly entry: number;
}

export interface CountedWatch {
  readonly watch: WatchCounts;
  readonly plants: readonly CountedPlant[];
  /** Workers are not among them. */
  readonly queens: readonly CountedQueens[];
  readonly workers: number;
}

/** Throws where a row of queens names a plant that the watch does not have: such a watch cannot have been stored. */
export function countedWatch(watch: WatchCounts): CountedWatch {
  const plantOf = (row: number, plant: number): string => {
    const found = watch.plants.find((one) => one.plant === plant);
    if (found) return found.name ?? found.asTyped;
    const known = watch.plants.map((one) => one.plant).join(', ');
    throw new Error(`Watch ${watch.number}, row ${row} of its queens names plant ${plant}. Its plants: ${known}.`);
  };
  const bees = watch.queens.flatMap((row) =>
    standingOf(row).map((standing) => ({ ...standing, plant: plantOf(row.row, row.plant), entry: row.plant })),
  );
  return {
    watch,
    plants: watch.plants.map(({ plant, name, asTyped, flowers, unit }) => ({
      entry: plant,
      name: name ?? asTyped,
      flowers: flowers.value,
      unit,
    })),
    queens: bees.filter(({ caste }) => caste !== 'worker'),
    workers: bees.filter(({ caste }) => caste === 'worker').reduce((sum, { queens }) => sum + queens, 0),
  };
}
