/** Whether the names in a package are names: bees must be, plants may be words as typed. */
import { GENUS, type Names } from '../../../shared/names.js';
import type { CountingUnit } from '../../../shared/vocabularies.js';
import { shown } from './problem.js';

export interface KnownNames {
  /** What is wrong with a bee's name, and what would do; null where it is accepted. */
  beeProblem(name: string): string | null;
  /** The same of an expert's name, who may find that it was no bumble bee. */
  taxonProblem(name: string): string | null;
  isPlant(name: string): boolean;
  unitOf(plant: string): CountingUnit;
}

const GENUS_OF = /^(?<genus>[A-Z][a-z-]+)(?: [a-z×-]+)*$/;

export function knownNames(names: Names): KnownNames {
  const bees = new Set([GENUS, ...names.bees.map(({ name }) => name)]);
  const formerBees = new Map(names.bees.flatMap(({ name, former }) => former.map((old) => [old, name] as const)));
  const units = new Map(names.plants.map(({ name, unit }) => [name, unit]));

  const beeProblem = (name: string): string | null => {
    if (bees.has(name)) return null;
    const now = formerBees.get(name);
    if (now !== undefined) return `${shown(name)} is now called ${shown(now)}; write that`;
    return `${shown(name)} is no accepted name of a bumble bee; write it like "Bombus impatiens", or ${shown(GENUS)}`;
  };
  return {
    beeProblem,
    taxonProblem: (name) => {
      const genus = GENUS_OF.exec(name)?.groups?.['genus'];
      return genus === undefined || genus === GENUS || formerBees.has(name) ? beeProblem(name) : null;
    },
    isPlant: (name) => units.has(name),
    unitOf: (plant) => units.get(plant) ?? 'flower',
  };
}
