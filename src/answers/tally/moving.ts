/** Queens that went from plant to plant, or came back: each of them is one queen, however often she is told. */
import type { Ask } from '../../../shared/phrases.js';
import { isZero, positive, type Row } from './meant.js';

/** What the whole text says of them. */
export interface Moving {
  /** The same one came back to its own plant, which is no visit. */
  readonly returned: boolean;
  /** "Visited both", "went back and forth". */
  readonly toured: boolean;
  /** "Kept coming", "three times". */
  readonly keptComing: boolean;
}

const bumbleOf = ({ bee }: Row): string | undefined => bee?.names[0]?.name;

/** "2 imps on the bluebells, one of them went to the dandelion after": that one was counted. */
export const withMoved = (rows: readonly Row[]): Row[] =>
  rows.map((row, at) => {
    if (!row.said.ofThem || row.plants === null || row.seenBefore || isZero(row)) return row;
    const before = rows
      .slice(0, at)
      .findLast(
        (other) => !other.said.ofThem && !isZero(other) && (row.bee === null || bumbleOf(other) === bumbleOf(row)),
      );
    // "3 imps, 2 of them on the phlox" tells where those were
    const isElsewhere = before != null && before.plants !== null && before.plants !== row.plants;
    if (!isElsewhere || positive(row.counts) > positive(before.counts)) return row;
    return { ...row, bee: row.bee ?? before.bee, seenBefore: true };
  });

/** "3 imps, 2 of them on the phlox": where two of the three were; of the third it is not told. */
export function withPartPlaced(rows: readonly Row[]): Row[] {
  const left: Row[] = [];
  const isPart = ({ bee, said, plants, pollen }: Row): boolean =>
    bee === null && said.count !== null && plants !== null && pollen === null;
  for (let at = 0; at < rows.length; at++) {
    const row = rows[at]!;
    const behind = rows.slice(at + 1);
    const end = behind.findIndex((other) => !isPart(other));
    // "2 of them on the phlox and 1 on the violets"
    const parts = end === -1 ? behind : behind.slice(0, end);
    const [first] = parts;
    const rest = parts.reduce((sum, part) => sum - positive(part.counts), positive(row.counts));
    const isTold = first?.said.ofThem === true && first.plants === row.plants && isBehind(first);
    if (!isTold || isZero(row) || rest < 0) {
      left.push(row);
      continue;
    }
    if (rest > 0) left.push({ ...row, counts: [rest], plants: null });
    left.push(...parts.map((part) => ({ ...part, bee: row.bee })));
    at += parts.length;
  }
  return left;
}

/** Its plant was said with it, not before. */
const isBehind = ({ plants, said }: Row): boolean => plants !== null && plants.span[0] > said.span[0];

/** "One imp that visited both": one queen, on one plant after the other. */
export const withTouring = (rows: readonly Row[], { toured }: Moving): Row[] =>
  rows.map((row) => {
    const isOfMany = row.plants?.plants === 'all' || (row.plants?.plants.length ?? 0) > 1;
    return toured && isOfMany && !row.said.each && positive(row.counts) === 1 ? { ...row, tours: true } : row;
  });

/** "The same imp came back three times", of which nothing was told before: she counts once, and that is asked back. */
export function withFirstSame(rows: readonly Row[], { keptComing }: Moving, doubts: Set<Ask>): Row[] {
  const [first, ...others] = rows;
  if (first?.seenBefore !== true || !keptComing || first.bee === null) return [...rows];
  doubts.add('tally-unclear');
  return [{ ...first, seenBefore: false }, ...others];
}
