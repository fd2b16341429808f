/** Bees and plants as people know them: the common name with the scientific one. */
import { GENUS, type Names } from './names.js';

/** "common eastern (B. impatiens)"; `genus` is what stands for a bee known to its genus alone. */
export function beeLabel(name: string, { bees }: Pick<Names, 'bees'>, genus: string): string {
  if (name === GENUS) return genus;
  const scientific = name.replace(/^Bombus /, 'B. ');
  const common = bees.find((bee) => bee.name === name)?.common[0];
  return common === undefined ? scientific : `${common.replace(/ bumble ?bee$/i, '')} (${scientific})`;
}

/** "Virginia bluebells (Mertensia virginica)"; the name alone where it has no common one, or is on no list. */
export function plantLabel(name: string, { plants }: Pick<Names, 'plants'>): string {
  const common = plants.find((plant) => plant.name === name)?.common[0];
  return common === undefined || common.toLowerCase() === name.toLowerCase() ? name : `${common} (${name})`;
}
