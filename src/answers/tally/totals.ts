/** Sums and parts: a number that counts again what other rows count is no row of its own. */
import type { Ask } from '../../../shared/phrases.js';
import { isZero, positive, sumOf, type Row } from './meant.js';

/** "one with pollen" and "(1 worker)" belong to the row before. */
export function withoutParts(rows: readonly Row[]): Row[] {
  const left: Row[] = [];
  for (const row of rows) {
    const before = left.at(-1);
    const within = before !== undefined && !isZero(before) && positive(row.counts) <= positive(before.counts);
    if (!row.said.partOfLast || !within || (row.plants !== null && row.plants !== before.plants)) {
      left.push(row);
      continue;
    }
    if (row.pollen !== null) before.pollen = positive(row.counts);
    if (row.worker) {
      const others = positive(before.counts) - positive(row.counts);
      if (others > 0) left.push({ ...before, counts: row.counts, worker: true, pollen: null });
      if (others > 0) left[left.indexOf(before)] = { ...before, counts: [others] };
      else before.worker = true;
    }
  }
  return left;
}

/** "5 queens: 3 imp, 2 bimac" and "3 imp: 2 on the plum, 1 on the phlox": a sum is no row, and must be right. */
export function withoutTotals(rows: readonly Row[], doubts: Set<Ask>): Row[] {
  const isTotal = (row: Row): boolean => row.said.total && row.bee === null;
  const left = rows.filter((row) => !isTotal(row));
  for (const total of rows.filter(isTotal)) {
    if (left.length === 0) return [...rows];
    if (sumOf(left) !== positive(total.counts)) doubts.add('tally-total-differs');
  }
  for (let at = 0; at < left.length - 1; at++) {
    const head = left[at]!;
    if (head.said.role !== 'new' || head.said.count?.article === true || isZero(head)) continue;
    const parts: Row[] = [];
    for (const next of left.slice(at + 1)) {
      const part = head.bee ? next.bee === null && next.said.role === 'new' : next.bee !== null;
      if (!part || (head.bee && !head.said.total && next.plants === null)) break;
      parts.push(next);
    }
    const shared = head.plants === null || head.plants === parts[0]?.plants;
    // "five queens on the plum: three imp, two bimac"
    const restated = head.bee === null && head.said.queens && parts.every(({ plants }) => plants === null);
    const sums = parts.length > 0 && (shared || head.said.total || restated) && (head.bee !== null || at === 0);
    if (!sums || (restated && !shared && sumOf(parts) !== positive(head.counts))) continue;
    if (restated && !shared) for (const part of parts) left[left.indexOf(part)] = { ...part, plants: head.plants };
    if (sumOf(parts) === positive(head.counts)) {
      if (head.bee) for (const part of parts) part.bee = head.bee;
      left.splice(at, 1);
    } else if (!head.bee) {
      doubts.add('tally-total-differs');
      left.splice(at, 1);
    } else if (head.plants !== null && parts.length > 0) doubts.add('tally-unclear');
  }
  return left;
}

/** "A two-spotted on the plum! 1 queen": the number of the one bee named. */
export function withCountSaidLater(rows: readonly Row[]): Row[] {
  const [named, counted] = rows;
  const restates =
    rows.length === 2 &&
    named?.bee &&
    named.said.count === null &&
    counted?.bee === null &&
    counted.said.queens &&
    counted.said.role === 'new' &&
    counted.plants === null;
  if (!restates) return [...rows];
  return [{ ...named, counts: counted.counts, said: { ...named.said, count: counted.said.count, plural: false } }];
}
