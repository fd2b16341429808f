/** Corrections: "2 imp, no wait, 3" keeps the last said. */
import type { Ask } from '../../../shared/phrases.js';
import type { Row } from './meant.js';

/** Rows that a later one takes back are replaced by it: by bee where both name one, else the row just before. */
export function corrected(rows: readonly Row[], doubts: Set<Ask>): Row[] {
  const left: Row[] = [];
  let corrects: Row | null = null;
  for (const row of rows) {
    const { takesBack, bee, count } = row.said;
    if (takesBack === 'no' || left.length === 0) {
      // "2 imp on phlox, correction: 1 imp, 1 bimac"
      const goesOn: boolean = corrects !== null && row.plants === null && bee !== null;
      left.push(goesOn ? { ...row, plants: corrects!.plants } : row);
      if (!goesOn) corrects = null;
      continue;
    }
    const same = bee ? left.findLast((other) => other.bee?.names[0]?.name === bee.names[0]?.name) : undefined;
    const target = same ?? left.at(-1)!;
    const elsewhere = row.plants !== null && target.plants !== null && row.plants !== target.plants;
    if (takesBack === 'weakly' && elsewhere) doubts.add('tally-unclear');
    const corrected = {
      ...row,
      bee: bee ?? (row.said.role === 'zero' ? null : target.bee),
      // "2 imp, I mean bimac" keeps the two
      counts: count || row.said.role === 'zero' ? row.counts : target.counts,
      said: { ...row.said, count: count ?? (row.said.role === 'zero' ? null : target.said.count), plural: false },
      plants: row.plants ?? target.plants,
    };
    left[left.indexOf(target)] = corrected;
    corrects = corrected;
  }
  return left;
}
