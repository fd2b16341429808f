/** Makes one row of those that count the same bee on the same plant. */
import type { Ask } from '../../../shared/phrases.js';
import { pollenOf, positive, type RowMeant } from './meant.js';

/**
 * Rows of the same bee on the same plant are one; an exact count is added, a doubtful one stays by itself. `returned`: the
 * same one is said to have come back to its own plant, which is no visit.
 */
export function merged(rows: readonly RowMeant[], doubts: ReadonlySet<Ask>, returned: boolean): RowMeant[] {
  const left: RowMeant[] = [];
  for (const row of rows) {
    const plantOf = ({ plant }: RowMeant): string | null => plant?.names[0]?.name ?? null;
    const again =
      // … and one that may be the same is asked for anyhow
      (returned || doubts.has('tally-inexact')) &&
      row.seenBefore &&
      left.some((other) => other.bees[0]?.name === row.bees[0]?.name && plantOf(other) === plantOf(row));
    if (again) continue;
    const at = left.findIndex(
      (other) =>
        other.bees[0]?.name === row.bees[0]?.name &&
        other.plant?.names[0]?.name === row.plant?.names[0]?.name &&
        (other.plant === null) === (row.plant === null) &&
        other.seenBefore === row.seenBefore &&
        other.worker === row.worker &&
        // "2 with pollen and one without" are told apart
        (other.pollen === null || row.pollen === null || (other.pollen === 0) === (row.pollen === 0)) &&
        other.doubt === row.doubt,
    );
    const other = left[at];
    if (!other || doubts.has('tally-inexact') || doubts.has('tally-how-many')) left.push(row);
    else {
      const count = positive(other.counts) + positive(row.counts);
      const pollen = other.pollen === null && row.pollen === null ? null : pollenOf(other) + pollenOf(row);
      left[at] = { ...other, counts: [count], pollen };
    }
  }
  return left;
}
