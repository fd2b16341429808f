/** Which bee the rows are of that name none: the one said for all, the one said last, or those of another plant again. */
import type { Ask } from '../../../shared/phrases.js';
import { isZero, type Row } from './meant.js';
import { bombusAt, type NameSaid } from './names-said.js';

/** Gives each row that names no bee the one said for all, or the one said last. True where there is none to give. */
export function giveBees(rows: readonly Row[], allBees: NameSaid | null, doubts: Set<Ask>): boolean {
  const lastRow = rows.at(-1);
  const named = rows.filter((row) => row.bee !== null);
  // "2 on the redbud and 5 on the plum, impatiens"
  const afterwards =
    lastRow &&
    named.length === 1 &&
    lastRow === named[0] &&
    rows.length > 1 &&
    lastRow.said.count === null &&
    lastRow.plants === null
      ? lastRow.bee
      : null;
  if (afterwards) (rows as Row[]).pop();
  // "2, then 3, half-blacks": together, or one of them
  const sameNumbersTwice =
    rows.filter(({ plants, said }) => plants === null && !said.queens && !said.ofThem).length > 1;
  if (afterwards && sameNumbersTwice) doubts.add('tally-unclear');
  const given = allBees ?? afterwards ?? saidFirst(rows);
  let last: NameSaid | null = null;
  let missing = false;
  for (const row of rows) {
    if (row.bee) {
      last = row.bee;
      continue;
    }
    if (isZero(row)) continue;
    if (row.said.unresolved) {
      doubts.add('tally-unknown-guess');
      row.bee = bombusAt(row.said.unresolved);
      continue;
    }
    row.bee = given ?? last;
    // "2 imp on the phlox … 2": more of them, or a time, or the number of something else
    if (row.bee && !given && row.said.role === 'new' && row.plants === null && !row.worker && row.pollen === null)
      doubts.add('tally-unclear');
    if (row.bee === null) {
      if (row.said.role === 'same' || row.said.role === 'same-ones') continue;
      doubts.add('tally-bees-guess');
      row.bee = bombusAt(row.said.span);
      missing = true;
    } else if (row.said.queens && !given && (row.said.role === 'new' || row.said.role === 'another')) {
      // "2 imp on the plum, 1 queen on the phlox", "and one other bumble bee": perhaps an imp too
      doubts.add('tally-bees-guess');
      row.bee = bombusAt(row.said.span);
    }
  }
  return missing;
}

/** "just impatiens. 4 on the redbud, 1 on the lilac": a bee named first, without a number, for all that are counted behind. */
function saidFirst(rows: readonly Row[]): NameSaid | null {
  const [first, ...counted] = rows;
  if (!first?.bee || first.said.count !== null || first.said.role !== 'new' || counted.length === 0) return null;
  const [next] = counted;
  const isPlaced = first.plants !== null && first.plants.span[0] < next!.said.span[0];
  const allCounted = counted.every(({ bee, said, plants }) => bee === null && said.count !== null && plants !== null);
  if (isPlaced || !allCounted) return null;
  (rows as Row[]).shift();
  return first.bee;
}

/** "Same on the redbud": the rows of the plant before, again; "the same two": the same queens. */
export function withSame(rows: readonly Row[]): Row[] {
  const left: Row[] = [];
  for (const row of rows) {
    const again = row.said.role === 'same-ones' && row.said.bee === null && row.said.count === null;
    if (row.said.role !== 'same' && !again) {
      left.push(row);
      continue;
    }
    const source = left.findLast((other) => other.plants !== row.plants) ?? left.at(-1);
    if (!source) continue;
    const before = left.filter((other) => other.plants === source.plants);
    left.push(...before.map((other) => ({ ...other, plants: row.plants, seenBefore: again })));
  }
  return left;
}
