/** A watch as the figures count it: plants by name, queens under the names that stand, workers apart. */
import type { CountingUnit } from '../../shared/vocabularies.js';
import type { DeterminationCounts, QueensCounts, WatchCounts } from '../../shared/watch-counts.js';
import { clusterKeys, type ClusterKeys } from './clusters.js';
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
  readonly clusters: ClusterKeys;
  readonly plants: readonly CountedPlant[];
  /** Workers are not among them. */
  readonly queens: readonly CountedQueens[];
  readonly workers: number;
}

/** Throws where a row of queens names a plant that the watch does not have: such a watch cannot have been stored. */
export function countedWatch(watch: WatchCounts): CountedWatch {
  const plants = watch.plants.map(({ plant, name, asTyped, flowers, unit }): CountedPlant => ({
    entry: plant,
    name: name ?? asTyped,
    flowers: flowers.value,
    unit,
  }));
  const plantOf = ({ row, plant }: QueensCounts): string => {
    const found = plants.find(({ entry }) => entry === plant);
    if (found) return found.name;
    const known = plants.map(({ entry }) => entry).join(', ');
    throw new Error(`Watch ${watch.number}, row ${row} of its queens names plant ${plant}. Its plants: ${known}.`);
  };
  const queens: CountedQueens[] = [];
  let workers = 0;
  for (const row of watch.queens) {
    const plant = plantOf(row);
    for (const standing of standingOf(row)) {
      if (standing.caste === 'worker') workers += standing.queens;
      else queens.push({ ...standing, plant, entry: row.plant });
    }
  }
  return { watch, clusters: clusterKeys(watch), plants, queens, workers };
}
