/**
 * From rows with their plants to the tally: bees said once are given to the rows that name none, sums are checked,
 * "each", "same" and "none" are spread over the plants, and what could be meant in two ways is a doubt.
 */
import type { Ask } from '../../../shared/phrases.js';
import type { NameValue } from '../names/index.js';
import type { Span } from '../reading.js';
import type { NameSaid } from './names-said.js';
import { bombusAt } from './names-said.js';
import type { Placed, Placing } from './placing.js';
import type { PlantsSaid, RowSaid } from './said.js';

/** One plant of a row: names it could have, best first; null where none was said. */
export interface PlantMeant {
  readonly names: readonly NameValue[];
  readonly clear: boolean;
  readonly span: Span | null;
}

/** A row of the tally with all that it could mean. */
export interface RowMeant {
  /** Possible counts, best first; empty where only "several" was said. */
  readonly counts: readonly number[];
  /** Names the bee could have, best first; empty for a zero. */
  readonly bees: readonly NameValue[];
  readonly beeSpan: Span | null;
  readonly doubt: boolean;
  readonly plant: PlantMeant | null;
  readonly seenBefore: boolean;
  /** How many had pollen. */
  readonly pollen: number | 'all' | null;
  readonly worker: boolean;
}

export interface TallyMeant {
  readonly rows: readonly RowMeant[];
  /** The first of these is asked back; none: the tally is sure. */
  readonly doubts: readonly Ask[];
  /** Counts that no bee goes with; a tally cannot be made of them. */
  readonly beesMissing: boolean;
}

/** A row on its way: its bee and counts may still come from elsewhere. */
interface Row {
  readonly said: RowSaid;
  readonly plants: PlantsSaid | null;
  bee: NameSaid | null;
  counts: readonly number[];
  pollen: number | 'all' | null;
  worker: boolean;
  seenBefore: boolean;
}

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

const isZero = (row: Row): boolean => row.said.role === 'zero' || (row.counts.length === 1 && row.counts[0] === 0);
const positive = (counts: readonly number[]): number => counts[0] ?? 0;

export function settle({ rows: placed, allBees, nothingElse, bare }: Placing, watched: readonly string[]): TallyMeant {
  const doubts = new Set<Ask>();
  let rows = corrected(placed.map(begun), doubts);
  for (const { unclear } of placed) if (unclear) doubts.add('tally-unclear');
  rows = withoutParts(rows);
  rows = withoutTotals(rows, doubts);
  rows = withCountSaidLater(rows);
  const beesMissing = giveBees(rows, allBees, doubts);
  rows = withSame(rows);
  const spread = new Spread(watched, rows, bare, doubts);
  const meant = rows.flatMap((row) => spread.row(row));
  if (nothingElse) meant.push(...spread.rest());
  return { rows: merged(meant, doubts), doubts: ORDER.filter((ask) => doubts.has(ask)), beesMissing };
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

/** Rows that a later one takes back are replaced by it: by bee where both name one, else the row just before. */
function corrected(rows: readonly Row[], doubts: Set<Ask>): Row[] {
  const left: Row[] = [];
  for (const row of rows) {
    const { takesBack, bee, count } = row.said;
    if (takesBack === 'no' || left.length === 0) {
      left.push(row);
      continue;
    }
    const same = bee ? left.findLast((other) => other.bee?.names[0]?.name === bee.names[0]?.name) : undefined;
    const target = same ?? left.at(-1)!;
    const elsewhere = row.plants !== null && target.plants !== null && row.plants !== target.plants;
    if (takesBack === 'weakly' && elsewhere) doubts.add('tally-unclear');
    left[left.indexOf(target)] = {
      ...row,
      bee: bee ?? (row.said.role === 'zero' ? null : target.bee),
      // "2 imp, I mean bimac" keeps the two
      counts: count || row.said.role === 'zero' ? row.counts : target.counts,
      said: { ...row.said, count: count ?? (row.said.role === 'zero' ? null : target.said.count), plural: false },
      plants: row.plants ?? target.plants,
    };
  }
  return left;
}

/** "one with pollen" and "(1 worker)" belong to the row before. */
function withoutParts(rows: readonly Row[]): Row[] {
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

const sumOf = (rows: readonly Row[]): number => rows.reduce((sum, row) => sum + positive(row.counts), 0);

/** "5 queens: 3 imp, 2 bimac" and "3 imp: 2 on the plum, 1 on the phlox": a sum is no row, and must be right. */
function withoutTotals(rows: readonly Row[], doubts: Set<Ask>): Row[] {
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
function withCountSaidLater(rows: readonly Row[]): Row[] {
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

/** Gives each row that names no bee the one said for all, or the one said last. True where there is none to give. */
function giveBees(rows: readonly Row[], allBees: NameSaid | null, doubts: Set<Ask>): boolean {
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
  const given = allBees ?? afterwards;
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
    if (row.bee && !given && row.said.role === 'new' && row.plants === null && !row.worker) doubts.add('tally-unclear');
    if (row.bee === null) {
      if (row.said.role === 'same' || row.said.role === 'same-ones') continue;
      doubts.add('tally-bees-guess');
      row.bee = bombusAt(row.said.span);
      missing = true;
    } else if (row.said.queens && !given && row.said.role === 'new') {
      // "2 imp on the plum, 1 queen on the phlox": perhaps an imp too
      doubts.add('tally-bees-guess');
      row.bee = bombusAt(row.said.span);
    }
  }
  return missing;
}

/** "Same on the redbud": the rows of the plant before, again; "the same two": the same queens. */
function withSame(rows: readonly Row[]): Row[] {
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

/** Spreads rows over their plants. */
class Spread {
  /** Watched plants that some row names. */
  private readonly mentioned = new Set<string>();

  constructor(
    private readonly watched: readonly string[],
    private readonly rows: readonly Row[],
    bare: readonly PlantsSaid[],
    private readonly doubts: Set<Ask>,
  ) {
    for (const { plants } of [...rows, ...bare.map((said) => ({ plants: said }))]) {
      if (plants === null || typeof plants.plants === 'string') continue;
      for (const plant of plants.plants) if (plant.names[0]) this.mentioned.add(plant.names[0].name);
    }
  }

  /** A zero for each plant that no row names. */
  rest(): RowMeant[] {
    const unnamed = this.watched.filter((name) => !this.mentioned.has(name));
    const everywhere = this.rows.some(
      (row) => row.plants?.plants === 'all' || (row.plants === null && this.watched.length !== 1),
    );
    return everywhere ? [] : unnamed.map((name) => zeroOn(meantOf(name)));
  }

  row(row: Row): RowMeant[] {
    return isZero(row) ? this.zero(row) : this.counted(row);
  }

  private zero(row: Row): RowMeant[] {
    const others = this.rows.filter((other) => other !== row && !isZero(other));
    const plants = this.plantsOf(row.plants);
    if (plants !== null) {
      const free = plants.filter((plant) => !others.some((other) => this.stands(other, plant)));
      const said = row.plants !== null && row.plants.plants !== 'all' && row.plants.plants !== 'rest';
      // "nothing on the phlox … 2 imps on the phlox"; "no bimacs on the phlox, 2 imps" is plain
      if (said && row.bee === null && free.length < plants.length) this.doubts.add('tally-unclear');
      return free.map(zeroOn);
    }
    if (others.length > 0) return row.bee === null ? this.rest() : [];
    if (row.bee !== null && this.rows.length === 1 && row.said.role === 'zero') this.doubts.add('tally-unclear');
    return this.watched.length === 0 ? [zeroOn(null)] : this.watched.map((name) => zeroOn(meantOf(name)));
  }

  private stands(row: Row, plant: PlantMeant | null): boolean {
    const plants = this.plantsOf(row.plants);
    if (plants === null) return this.watched.length === 1;
    return plants.some((other) => other?.names[0]?.name === plant?.names[0]?.name);
  }

  private counted(row: Row): RowMeant[] {
    const { said } = row;
    if (row.counts.length === 0) this.doubts.add('tally-how-many');
    else if (said.uncertain || (said.count && !said.count.exact)) this.doubts.add('tally-inexact');
    const bee = row.bee ?? bombusAt(said.span);
    const others = said.orBees.flatMap(({ names }) => names);
    if (!bee.clear || others.length > 0) this.doubts.add('tally-bee-shared');
    const rowOn = (plant: PlantMeant | null): RowMeant => ({
      counts: row.counts,
      bees: others.length > 0 ? withGenus([...bee.names, ...others]) : bee.names,
      beeSpan: bee.span,
      doubt: bee.doubt || said.doubt,
      plant,
      seenBefore: row.seenBefore,
      pollen: row.pollen,
      worker: row.worker,
    });
    const plants = this.plantsOf(row.plants);
    if (plants === null) {
      if (said.each && this.watched.length > 0) return this.watched.map((name) => rowOn(meantOf(name)));
      const [only] = this.watched;
      return [rowOn(this.watched.length === 1 && only !== undefined ? meantOf(only) : null)];
    }
    if (plants.length > 1 && !said.each && row.plants?.each !== true && positive(row.counts) > 1) {
      this.doubts.add('tally-each-or-together');
    }
    for (const plant of plants) if (plant && !plant.clear) this.doubts.add('tally-plant-shared');
    return plants.map(rowOn);
  }

  /** Null where no plant was said, or one that nobody knows while several are watched. */
  private plantsOf(said: PlantsSaid | null): (PlantMeant | null)[] | null {
    if (said === null) return null;
    if (said.plants === 'all') return this.watched.length === 0 ? [null] : this.watched.map(meantOf);
    if (said.plants === 'rest') {
      const unnamed = this.watched.filter((name) => !this.mentioned.has(name));
      return unnamed.map(meantOf);
    }
    if (said.plants.length === 0) {
      const [only] = this.watched;
      if (this.watched.length !== 1 || only === undefined) return [{ names: [], clear: true, span: said.span }];
      this.doubts.add('tally-unknown-plant');
      return [meantOf(only)];
    }
    return said.plants.map(({ names, clear, span }) => ({ names, clear, span }));
  }
}

const meantOf = (name: string): PlantMeant => ({ names: [{ name, rank: null }], clear: true, span: null });
const zeroOn = (plant: PlantMeant | null): RowMeant => ({
  counts: [0],
  bees: [],
  beeSpan: null,
  doubt: false,
  plant,
  seenBefore: false,
  pollen: null,
  worker: false,
});

/** Offers with the genus at the end, each once. */
function withGenus(names: readonly NameValue[]): NameValue[] {
  const seen = new Map(names.filter(({ name }) => name !== 'Bombus').map((value) => [value.name, value]));
  return [...seen.values(), { name: 'Bombus', rank: 'genus' }];
}

/** Rows of the same bee on the same plant are one; an exact count is added, a doubtful one stays by itself. */
function merged(rows: readonly RowMeant[], doubts: ReadonlySet<Ask>): RowMeant[] {
  const left: RowMeant[] = [];
  for (const row of rows) {
    const plantOf = ({ plant }: RowMeant): string | null => plant?.names[0]?.name ?? null;
    // "the same one came back": seen again on its own plant, which is no visit
    const again =
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

export const pollenOf = ({ pollen, counts }: RowMeant): number => (pollen === 'all' ? positive(counts) : (pollen ?? 0));
