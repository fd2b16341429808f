/** Which bees on which plants: the table that the season is about. */
import { sortedNames, type Figure } from './figure.js';
import { addTo, type Sums } from './sums.js';

export interface Table {
  readonly bees: readonly string[];
  readonly plants: readonly string[];
  /** `counts[i][j]`: visits of bee i to plant j, queens seen before on another plant among them. */
  readonly counts: readonly (readonly number[])[];
  /** By bee: queens, each once in a watch. */
  readonly queens: readonly number[];
  /** By plant: open flowers, summed over its watches, in the plant's counting unit. */
  readonly flowers: readonly number[];
  /** By plant: watches in which it was watched. */
  readonly watches: readonly number[];
}

export function table(): Figure<Table> {
  const visits = new Map<string, Sums>();
  const queensByBee: Sums = new Map();
  const flowersByPlant: Sums = new Map();
  const watchesByPlant: Sums = new Map();
  return {
    add({ plants, queens }) {
      for (const { name, flowers } of plants) addTo(flowersByPlant, name, flowers);
      // A plant may stand twice in a watch (the pink and the white): still one watch of it.
      for (const name of new Set(plants.map((plant) => plant.name))) addTo(watchesByPlant, name, 1);
      for (const seen of queens) {
        const byPlant = visits.get(seen.bee) ?? new Map<string, number>();
        visits.set(seen.bee, byPlant);
        addTo(byPlant, seen.plant, seen.visits);
        addTo(queensByBee, seen.bee, seen.queens);
      }
    },
    result() {
      const bees = sortedNames(visits.keys());
      const plants = sortedNames(watchesByPlant.keys());
      return {
        bees,
        plants,
        counts: bees.map((bee) => plants.map((plant) => visits.get(bee)?.get(plant) ?? 0)),
        queens: bees.map((bee) => queensByBee.get(bee) ?? 0),
        flowers: plants.map((plant) => flowersByPlant.get(plant) ?? 0),
        watches: plants.map((plant) => watchesByPlant.get(plant) ?? 0),
      };
    },
  };
}
