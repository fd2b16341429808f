/**
 * Under which names the queens of one row count: the one place where determinations are weighed. A determination
 * speaks for `count` of the row's queens, so a row can be split. A coordinator's goes before a helper's, among equals
 * the latest; each takes its queens from what is left, and what none speaks for counts as reported.
 */
import { Temporal } from 'temporal-polyfill';
import { GENUS } from '../../shared/names.js';
import type { Determination, QueensRow } from '../../shared/record.js';
import type { DeterminationCounts, QueensCounts } from '../../shared/watch-counts.js';

export { GENUS };

/** Queens of a row that count under one name. */
export interface Standing<By = Determination> {
  readonly bee: string;
  /** Queens on this plant, those already seen on another among them. */
  readonly visits: number;
  /** Queens not seen before: these add up over plants. */
  readonly queens: number;
  readonly caste: QueensRow['caste'];
  /** Named by an expert; else as the observer reported. */
  readonly determined: boolean;
  /** What the observer called it. */
  readonly reported: string;
  /** The determination that speaks for these queens; null where they count as reported. */
  readonly by: By | null;
}

const nameOf = (taxa: readonly string[]): string => (taxa.length === 1 ? (taxa[0] ?? GENUS) : GENUS);

/** Those that go before others first. */
function byAuthority<By extends DeterminationCounts>(determinations: readonly By[]): readonly By[] {
  if (determinations.length < 2) return determinations;
  const authority = ({ role }: By): number => (role === 'coordinator' ? 0 : 1);
  // The list is in the order in which they were given, so of two with one stamp the later in it is the latest.
  return [...determinations]
    .reverse()
    .sort((a, b) => authority(a) - authority(b) || Temporal.Instant.compare(b.at, a.at));
}

/** Works on whole rows of queens and on what the figures keep of them. */
export function standingOf<By extends DeterminationCounts>(
  row: Omit<QueensCounts, 'determinations'> & { readonly determinations: readonly By[] },
): Standing<By>[] {
  const reported = row.bee ?? GENUS;
  // nearly every row: nobody determined it, so nothing need be weighed
  if (row.determinations.length === 0) {
    const queens = row.count - Math.min(row.seenBefore, row.count);
    return [{ bee: reported, visits: row.count, caste: row.caste, determined: false, by: null, queens, reported }];
  }
  let left = row.count;
  const named = byAuthority(row.determinations).map((by) => {
    const visits = Math.min(by.count, left);
    left -= visits;
    return { bee: nameOf(by.taxa), visits, caste: by.caste ?? row.caste, determined: true, by };
  });
  const parts = [...named, { bee: reported, visits: left, caste: row.caste, determined: false, by: null }];

  // Which of a split row's queens were seen before nobody said: first those nobody determined, then the weaker names.
  let seenBefore = row.seenBefore;
  return parts
    .reverse()
    .map((part) => {
      const before = Math.min(seenBefore, part.visits);
      seenBefore -= before;
      return { ...part, queens: part.visits - before, reported };
    })
    .reverse()
    .filter(({ visits }) => visits > 0);
}
