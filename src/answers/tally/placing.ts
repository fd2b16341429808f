/**
 * Which plant each row stands on. A plant said behind its rows covers them back to the last plant; one said first, with
 * a colon, "on the …" or on a line of its own, covers what follows up to the next.
 */
import type { EndSaid, NothingElseSaid, PlantsSaid, RowSaid, Said } from './said.js';
import type { NameSaid } from './names-said.js';

/** A row with the plants it stands on; null where none was said. */
export interface Placed {
  readonly row: RowSaid;
  readonly plants: PlantsSaid | null;
  /** True where the words could place it otherwise too. */
  readonly unclear: boolean;
}

export interface Placing {
  readonly rows: readonly Placed[];
  readonly allBees: NameSaid | null;
  /** "nothing else": the plants not named had no queens. */
  readonly nothingElse: boolean;
  /** Plants that no row stands on. */
  readonly bare: readonly PlantsSaid[];
}

interface Open {
  row: RowSaid;
  plants: PlantsSaid | null;
  byHeading: boolean;
  sentence: number;
  unclear: boolean;
}

type Item = RowSaid | PlantsSaid | EndSaid | NothingElseSaid;

/** One plant on either side, of the same name. */
function isSame(one: PlantsSaid | null, other: PlantsSaid): boolean {
  const nameOf = (said: PlantsSaid | null): string | null => {
    const [only, second] = Array.isArray(said?.plants) ? (said.plants as readonly NameSaid[]) : [];
    return second === undefined && only?.clear === true ? (only.names[0]?.name ?? null) : null;
  };
  return nameOf(one) !== null && nameOf(one) === nameOf(other);
}

/** Rows between `at` and the next plant or end; with `lines`, past the ends of lines too. */
function rowsAfter(items: readonly Item[], at: number, lines: boolean): RowSaid[] {
  const rows: RowSaid[] = [];
  for (let next = at + 1; next < items.length; next++) {
    const item = items[next]!;
    if (item.kind === 'row') rows.push(item);
    else if (item.kind === 'plants' || (item.kind === 'end' && !(lines && rows.length === 0))) break;
  }
  return rows;
}

/** The next plant before an end stands behind its rows: "… 3 bimac on the redbud" with nothing after it. */
function nextIsBehindItsRows(items: readonly Item[], at: number): boolean {
  let rows = 0;
  for (let next = at + 1; next < items.length; next++) {
    const item = items[next]!;
    if (item.kind === 'row') rows++;
    else if (item.kind === 'plants') return rows > 0 && item.placed && rowsAfter(items, next, false).length === 0;
    else if (item.kind === 'end') return false;
  }
  return false;
}

const isZero = ({ role, count }: RowSaid): boolean => role === 'zero' || count?.values[0] === 0;

const joinsList = (said: PlantsSaid): boolean =>
  said.joinedBy === 'and' || said.joinedBy === 'or' || said.joinedBy === 'comma';

/** "phlox and redbud" as one. */
function together(left: PlantsSaid, right: PlantsSaid): PlantsSaid {
  const plants =
    Array.isArray(left.plants) && Array.isArray(right.plants)
      ? [...(left.plants as readonly NameSaid[]), ...(right.plants as readonly NameSaid[])]
      : typeof left.plants === 'string'
        ? left.plants
        : right.plants;
  return { ...left, plants, each: left.each || right.each, sign: right.sign, span: [left.span[0], right.span[1]] };
}

/** "4 queens on the phlox (2 imp, 2 bimac), plum none": the row is of the plant right before the bracket. */
function isInBracketOf(items: readonly Item[], plantAt: number, at: number): boolean {
  const isInside = (item: Item | undefined): boolean => item?.kind === 'row' && item.bracketed && item.role === 'new';
  if (!items.slice(plantAt + 1, at + 1).every(isInside)) return false;
  const next = items.slice(at + 1).find((item) => !isInside(item));
  return !(next?.kind === 'plants' && next.bracketed);
}

export function place(said: readonly Said[]): Placing {
  const items = said.filter((item): item is Item => item.kind !== 'all-bees');
  const allBees = said.find((item) => item.kind === 'all-bees')?.bee ?? null;
  const rows: Open[] = [];
  const bare = new Set<PlantsSaid>();
  let pending: Open[] = [];
  let heading: PlantsSaid | null = null;
  let headingSentence = -1;
  let last: { plants: PlantsSaid; at: number } | null = null;
  let sentence = 0;
  let nothingElse = false;

  const replace = (from: PlantsSaid, to: PlantsSaid): void => {
    for (const open of rows) if (open.plants === from) open.plants = to;
    if (heading === from) heading = to;
    if (bare.delete(from)) bare.add(to);
  };
  const open = (plants: PlantsSaid): void => {
    heading = plants;
    headingSentence = sentence;
    pending = [];
  };
  const cover = (unplaced: readonly Open[], plants: PlantsSaid): void => {
    // "2 imp but nothing on the plum": only the nothing is the plum's
    const zero = unplaced.at(-1);
    const targets = zero && isZero(zero.row) && unplaced.some(({ row }) => !isZero(row)) ? [zero] : unplaced;
    for (const target of targets) {
      target.plants = plants;
      target.byHeading = false;
    }
    heading = null;
    pending = [];
  };

  items.forEach((item, at) => {
    if (item.kind === 'end') {
      // "Watched the phlox and the redbud." heads nothing; "Phlox:" and "Phlox" on its own line do
      const alone = (items[at - 2]?.kind ?? 'end') === 'end' && items[at - 1]?.kind === 'plants';
      if (heading && bare.has(heading) && heading.sign !== 'colon' && !heading.placed && !alone) heading = null;
      sentence++;
      return;
    }
    if (item.kind === 'nothing-else') {
      nothingElse = true;
      return;
    }
    if (item.kind === 'row' && heading === null && last && isInBracketOf(items, last.at, at)) {
      rows.push({ row: item, plants: last.plants, byHeading: true, sentence, unclear: item.unclear });
      return;
    }
    if (item.kind === 'row') {
      const added: Open = { row: item, plants: heading, byHeading: heading !== null, sentence, unclear: item.unclear };
      rows.push(added);
      // "3 bimac on the bluebells, actually 2. And 1 imp on the geranium": two on the bluebells
      const endsHere = items.slice(at + 1).find(({ kind }) => kind === 'plants' || kind === 'end')?.kind !== 'plants';
      const putsRight = heading === null && last !== null && item.takesBack !== 'no' && item.bee === null;
      // where it stands is said by what it puts right
      if (!(putsRight && endsHere)) pending.push(added);
      if (heading) bare.delete(heading);
      return;
    }
    const after = rowsAfter(items, at, false);
    const afterLines = rowsAfter(items, at, true);
    const previous = items[at - 1];
    if (item.takesBack !== 'no' && last && pending.every(({ byHeading }) => byHeading)) {
      replace(last.plants, item);
      last = { plants: item, at };
      return;
    }
    if (previous?.kind === 'plants' && last?.at === at - 1 && joinsList(item) && previous.sign === null) {
      const zero = rows
        .filter((row) => row.plants === last!.plants)
        .every(({ row }) => row.role === 'zero' || row.count?.values[0] === 0);
      const headed = heading === last.plants;
      // "4 imp on phlox and geranium, 2 each"
      const eachOfBoth = after.length === 1 && after[0]!.each && after[0]!.bee === null;
      const alone = after.length === 0 || eachOfBoth || nextIsBehindItsRows(items, at);
      if (alone || headed || item.joinedBy === 'or' || (zero && item.joinedBy === 'and' && !item.placed)) {
        const both = together(last.plants, item);
        // "2 imp on phlox, redbud 3 bimac": the comma parts them
        if (!(item.joinedBy === 'comma' && !headed && !zero && after.length > 0)) {
          replace(last.plants, both);
          last = { plants: both, at };
          return;
        }
      }
    }
    bare.add(item);
    last = { plants: item, at };
    const inSentence = pending.filter((row) => row.sentence === sentence);
    // "2 imp on the plum, no, 3 imp, dandelion nothing": the nothing is the dandelion's, and nothing else is
    const [next, behindNext] = items.slice(at + 1, at + 3);
    const ownNone =
      item.joinedBy === 'comma' &&
      !item.placed &&
      next?.kind === 'row' &&
      isZero(next) &&
      next.bee === null &&
      !(behindNext?.kind === 'plants' && behindNext.placed);
    if (ownNone && inSentence.some(({ row, byHeading }) => byHeading || row.takesBack !== 'no')) {
      open(item);
      return;
    }
    const unplaced = pending.filter(({ byHeading }) => !byHeading);
    const headedHere = heading !== null && headingSentence === sentence;
    if (
      (item.sign === 'colon' && afterLines.length > 0) ||
      (item.sign === 'dash' && after.length > 0 && unplaced.length === 0)
    ) {
      open(item);
      return;
    }
    if (inSentence.length === 0) {
      if (after.length > 0 && !(unplaced.length > 0 && nextIsBehindItsRows(items, at))) open(item);
      else if (unplaced.length > 0) {
        cover(unplaced, item);
        bare.delete(item);
      } else open(item);
      return;
    }
    if (headedHere || (heading !== null && unplaced.length === 0)) {
      const newHeading = after.length > 0 && !(item.placed && inSentence.length >= 2 && nextIsBehindItsRows(items, at));
      if (newHeading) {
        open(item);
        return;
      }
      // "phlox: 2 imp, 1 bimac on redbud": the last row is the redbud's
      const target = inSentence.at(-1)!;
      // "redbud 300, 2 imp on the redbud" names one plant twice
      if (inSentence.length === 1 && headedHere && !isSame(target.plants, item)) target.unclear = true;
      bare.delete(item);
      target.plants = item;
      target.byHeading = false;
      pending = [];
      return;
    }
    cover(unplaced, item);
    bare.delete(item);
  });
  return {
    rows: rows.map(({ row, plants, unclear }) => ({ row, plants, unclear })),
    allBees,
    nothingElse,
    bare: [...bare],
  };
}
