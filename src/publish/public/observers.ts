/** Observers' public keys: numbers in the order of their first watch, so that nothing of the stored key is published. */
export function observerKeys(): (observer: string) => string {
  const keys = new Map<string, string>();
  return (observer) => {
    const known = keys.get(observer) ?? `observer-${keys.size + 1}`;
    keys.set(observer, known);
    return known;
  };
}
