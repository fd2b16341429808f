/** What a figure is: it is shown each watch once, keeps sums, and says its result at the end. */
import { GENUS } from './standing.js';
import type { CountedWatch } from './counted.js';

export interface Figure<Result> {
  /** Watches come in any order, each once. */
  add(counted: CountedWatch): void;
  result(): Result;
}

export const sum = (numbers: readonly number[]): number => numbers.reduce((total, number) => total + number, 0);

/** A sum for each key. */
export type Sums = Map<string, number>;

/** The value of a key, made where it is missing. */
export function at<Key, Value>(all: Map<Key, Value>, key: Key, make: () => Value): Value {
  const known = all.get(key) ?? make();
  all.set(key, known);
  return known;
}

export const noSums = (): Sums => new Map();

export function addTo(sums: Sums, key: string, value: number): void {
  sums.set(key, (sums.get(key) ?? 0) + value);
}

/** Names in the order of their letters, the genus alone last. */
export const sortedNames = (names: Iterable<string>): string[] => {
  const all = [...new Set(names)].sort();
  return [...all.filter((name) => name !== GENUS), ...all.filter((name) => name === GENUS)];
};
