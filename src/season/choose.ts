/** Chances of drawing without putting back, from whole numbers of any size that a season can have. */

/** ln k! for 0 to n, summed with Kahan's correction: thousands of terms keep their last digits. */
function logFactorials(n: number): Float64Array {
  const table = new Float64Array(n + 1);
  let [sum, lost] = [0, 0];
  for (let k = 2; k <= n; k++) {
    const term = Math.log(k) - lost;
    const next = sum + term;
    lost = next - sum - term;
    sum = next;
    table[k] = sum;
  }
  return table;
}

/**
 * For a total of n: gives C(n − x, m) / C(n, m), the chance that m drawn of n meet none of x. It is 0 where so many
 * are drawn that one must be met. All are whole numbers from 0 to n.
 */
export function missChance(n: number): (x: number, m: number) => number {
  const table = logFactorials(n);
  const log = (k: number): number => table[k] ?? 0;
  return (x, m) => (m > n - x ? 0 : Math.exp(log(n - x) - log(n - x - m) - log(n) + log(n - m)));
}
