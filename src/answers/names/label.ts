/** Names as people know them. */
import { beesOf, plantsOf, type WithNames } from './index-of-names.js';

/** The English name to show, "Virginia bluebells"; the name itself where the lists have no English one. */
export function labelOf(name: string, context: WithNames): string {
  return beesOf(context).labels.get(name) ?? plantsOf(context).labels.get(name) ?? name;
}

/** `species`, `genus` or `hybrid` of an accepted name; null for one that no list holds. */
export function rankOf(name: string, context: WithNames): string | null {
  const taxon = beesOf(context).taxa.get(name) ?? plantsOf(context).taxa.get(name);
  return taxon?.rank ?? null;
}
