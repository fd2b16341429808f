/**
 * From rows with their plants to the tally: bees said once are given to the rows that name none, sums are checked,
 * "each", "same" and "none" are spread over the plants, and what could be meant in two ways is a doubt.
 */
import type { Ask } from '../../../shared/phrases.js';
import { corrected } from './corrections.js';
import { giveBees, withSame } from './giving-bees.js';
import { positive, type Row, type RowMeant, type TallyMeant } from './meant.js';
import { merged } from './merging.js';
import { withFirstSame, withMoved, withPartPlaced, withTouring, type Moving } from './moving.js';
import type { Placed, Placing } from './placing.js';
import { Spread } from './spreading.js';
import {
  withCountSaidLater,
  withoutNamelessOnes,
  withoutParts,
  withoutRestated,
  withoutRetold,
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

export function settle(
  { rows: placed, allBees, nothingElse, bare }: Placing,
  watched: readonly string[],
  moving: Moving,
): TallyMeant {
  const doubts = new Set<Ask>();
  let rows = corrected(placed.map(begun), doubts);
  if (bare.some(({ unread }) => unread)) doubts.add('tally-unclear');
  for (const { unclear } of placed) if (unclear) doubts.add('tally-unclear');
  rows = withFirstSame(rows, moving, doubts);
  rows = withoutParts(withoutCries(withSameSaidBehind(withTours(withoutSameAgain(withTouring(rows, moving))))));
  rows = withPartPlaced(withMoved(rows));
  rows = withoutRestated(withoutRetold(rows), doubts);
  rows = withoutNamelessOnes(withRemainders(rows));
  rows = withoutTotals(rows, watched, doubts);
  rows = withCountSaidLater(rows);
  const beesMissing = giveBees(rows, allBees, doubts);
  rows = withSame(rows);
  const spread = new Spread(watched, rows, bare, doubts);
  const meant = rows.flatMap((row) => spread.row(row));
  if (nothingElse) meant.push(...spread.rest());
  const settled = onPlantLeft(withoutContradictions(meant, doubts), watched);
  return {
    rows: merged(settled, doubts, moving.returned),
    doubts: ORDER.filter((ask) => doubts.has(ask)),
    beesMissing,
  };
}

/** "… the same one went over to the squirrel corn (same bee)": said twice that it is the same one. */
const withoutSameAgain = (rows: readonly Row[]): Row[] =>
  rows.filter(({ said, plants, seenBefore }, at) => {
    const before = rows[at - 1];
    const again = seenBefore && before?.seenBefore === true && said.count === null && said.bee === null;
    return !(again && (plants === null || plants === before.plants));
  });

/** "1 imp, same one on both": one queen, on one plant after the other. */
function withTours(rows: readonly Row[]): Row[] {
  const left: Row[] = [];
  for (const row of rows) {
    const before = left.at(-1);
    const isSameOne = row.seenBefore && row.said.count === null && row.said.bee === null;
    const plants = before?.plants;
    const isOfMany = plants?.plants === 'all' || (plants?.plants.length ?? 0) > 1;
    const isThere = row.plants === null || row.plants === plants;
    if (before?.seenBefore === false && isSameOne && isOfMany && isThere)
      left[left.length - 1] = { ...before, tours: true };
    else left.push(row);
  }
  return left;
}

/** "… imp on the bells, phlox 1 imp but it was the same one": the last row's queen is the one of before. */
const withSameSaidBehind = (rows: readonly Row[]): Row[] => {
  const left: Row[] = [];
  for (const row of rows) {
    const before = left.at(-1);
    const bare = row.seenBefore && row.said.count === null && row.said.bee === null;
    const again =
      bare &&
      before !== undefined &&
      before.said.role === 'new' &&
      before.bee !== null &&
      positive(before.counts) === 1 &&
      before.plants !== null &&
      (row.plants === null || row.plants === before.plants) &&
      left.some(
        (other) =>
          other !== before &&
          other.plants !== before.plants &&
          other.bee?.names[0]?.name === before.bee?.names[0]?.name,
      );
    if (again) before.seenBefore = true;
    else left.push(row);
  }
  return left;
};

/** "Rusty patched!!! … 1 affinis, 2 impatiens": cried out first, counted later. */
const withoutCries = (rows: readonly Row[]): Row[] =>
  rows.filter(
    ({ said, plants, bee }, at) =>
      !(
        said.role === 'new' &&
        said.count === null &&
        !said.plural &&
        bee !== null &&
        rows
          .slice(at + 1)
          .some(
            (later) =>
              later.said.count?.article === false &&
              later.bee?.names[0]?.name === bee.names[0]?.name &&
              (plants === null || later.plants === null || plants === later.plants),
          )
      ),
  );

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
    tours: said.tours,
  };
}

/** "2 bimac, none on the phlox": with no queens on any other plant watched, they were on the one that is left. */
function onPlantLeft(rows: readonly RowMeant[], watched: readonly string[]): readonly RowMeant[] {
  const placed = rows.filter(({ plant }) => plant !== null);
  const named = new Set(placed.flatMap(({ plant }) => plant?.names[0]?.name ?? []));
  const [left, ...others] = watched.filter((name) => !named.has(name));
  const noneElsewhere = placed.length > 0 && placed.every(({ bees }) => bees.length === 0);
  if (left === undefined || others.length > 0 || !noneElsewhere) return rows;
  const plant = { names: [{ name: left, rank: null }], clear: true, span: null };
  return rows.map((row) => (row.plant === null && row.bees.length > 0 ? { ...row, plant } : row));
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
