/**
 * From rows with their plants to the tally: bees said once are given to the rows that name none, sums are checked,
 * "each", "same" and "none" are spread over the plants, and what could be meant in two ways is a doubt.
 */
import type { Ask } from '../../../shared/phrases.js';
import { corrected } from './corrections.js';
import { giveBees, withSame } from './giving-bees.js';
import type { Row, RowMeant, TallyMeant } from './meant.js';
import { merged } from './merging.js';
import type { Placed, Placing } from './placing.js';
import { Spread } from './spreading.js';
import {
  withCountSaidLater,
  withoutNamelessOnes,
  withoutParts,
  withoutRestated,
  withoutTotals,
  withRemainders,
} from './totals.js';

/** What is asked back first where several things are in doubt. */
const ORDER: readonly Ask[] = [
  'tally-unknown-guess',
  'tally-bees-guess',
  'tally-bee-shared',
  'tally-plant-shared',
  'tally-unknown-plant',
  'tally-how-many',
  'tally-total-differs',
  'tally-each-or-together',
  'tally-inexact',
  'tally-unclear',
];

export function settle({ rows: placed, allBees, nothingElse, bare }: Placing, watched: readonly string[]): TallyMeant {
  const doubts = new Set<Ask>();
  let rows = corrected(placed.map(begun), doubts);
  for (const { unclear } of placed) if (unclear) doubts.add('tally-unclear');
  rows = withoutParts(rows);
  rows = withoutRestated(rows, doubts);
  rows = withoutNamelessOnes(withRemainders(rows));
  rows = withoutTotals(rows, watched, doubts);
  rows = withCountSaidLater(rows);
  const beesMissing = giveBees(rows, allBees, doubts);
  rows = withSame(rows);
  const spread = new Spread(watched, rows, bare, doubts);
  const meant = rows.flatMap((row) => spread.row(row));
  if (nothingElse) meant.push(...spread.rest());
  const settled = withoutContradictions(meant, doubts);
  return { rows: merged(settled, doubts), doubts: ORDER.filter((ask) => doubts.has(ask)), beesMissing };
}

function begun({ row: said, plants }: Placed): Row {
  const counts = said.count?.values ?? (said.role === 'zero' ? [0] : said.plural ? [] : [1]);
  return {
    said,
    plants,
    bee: said.bee,
    counts,
    pollen: said.pollen,
    worker: said.worker,
    seenBefore: said.role === 'same-one' || said.role === 'same-ones',
  };
}

/** "2 imp on the phlox … nothing on the phlox": the queens are offered, and asked back. */
function withoutContradictions(rows: readonly RowMeant[], doubts: Set<Ask>): RowMeant[] {
  const plantOf = ({ plant }: RowMeant): string | null => plant?.names[0]?.name ?? null;
  const isNone = ({ bees }: RowMeant): boolean => bees.length === 0;
  const seenOn = new Set(rows.filter((row) => !isNone(row) && row.counts[0] !== 0).map(plantOf));
  return rows.filter((row) => {
    if (!isNone(row) || plantOf(row) === null || !seenOn.has(plantOf(row))) return true;
    doubts.add('tally-unclear');
    return false;
  });
}
