/** The middle of what was measured: a disk can change its speed tenfold by itself, which a mean would carry on. */
export const median = (numbers: readonly number[]): number =>
  [...numbers].sort((a, b) => a - b)[Math.floor(numbers.length / 2)] ?? Number.NaN;

/** How often `unit` gets done in a second over one slice; it gives how many it did. */
export async function speed(milliseconds: number, unit: () => Promise<number> | number): Promise<number> {
  const start = performance.now();
  let done = 0;
  while (performance.now() - start < milliseconds) done += await unit();
  return (done / (performance.now() - start)) * 1000;
}
