/** What a figure is: it is shown each watch once, keeps sums, and says its result at the end. */
import { GENUS } from './standing.js';
import type { CountedWatch } from './counted.js';

export interface Figure<Result> {
  /** Watches come in any order, each once. */
  add(counted: CountedWatch): void;
  result(): Result;
}

/** Names in the order of their letters, the genus alone last. */
export const sortedNames = (names: Iterable<string>): string[] => {
  const all = [...new Set(names)].sort();
  return [...all.filter((name) => name !== GENUS), ...all.filter((name) => name === GENUS)];
};
