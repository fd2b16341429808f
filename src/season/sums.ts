/** Sums by key: what the figures keep of a season, however many watches it has. */

/** A sum for each key. */
export type Sums = Map<string, number>;

export const noSums = (): Sums => new Map();

export function addTo<Key>(sums: Map<Key, number>, key: Key, value: number): void {
  sums.set(key, (sums.get(key) ?? 0) + value);
}

/** The value of a key, made where it is missing. */
export function at<Key, Value>(all: Map<Key, Value>, key: Key, make: () => Value): Value {
  const known = all.get(key);
  if (known !== undefined) return known;
  const made = make();
  all.set(key, made);
  return made;
}

export function sum(numbers: ArrayLike<number>): number {
  let total = 0;
  for (let index = 0; index < numbers.length; index++) total += numbers[index] ?? 0;
  return total;
}
