/** "1 two-spotted, maybe 2, on the bluebells": two counts of the same queens are two meanings, not two rows. */
import type { TallyRow } from '../../answers/index.js';

const isSame = (one: TallyRow, other: TallyRow): boolean =>
  one.bee !== null && one.bee === other.bee && one.plant === other.plant && one.caste === other.caste;

/** Each offer with every such pair told apart: once with the first count, once with the second. */
export function apart(offers: readonly (readonly TallyRow[])[]): readonly (readonly TallyRow[])[] {
  return offers.flatMap((rows) => {
    const second = rows.findIndex((row, at) => rows.slice(0, at).some((before) => isSame(before, row)));
    if (second === -1) return [rows];
    const first = rows.findIndex((row) => isSame(row, rows[second]!));
    const others = rows.filter((_, at) => at !== second);
    return apart([others, others.map((row, at) => (at === first ? { ...row, count: rows[second]!.count } : row))]);
  });
}
