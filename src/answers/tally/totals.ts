/** Sums and parts: a number that counts again what other rows count is no row of its own. */
import type { Ask } from '../../../shared/phrases.js';
import { isZero, positive, sumOf, type Row } from './meant.js';

/** "one with pollen" and "(1 worker)" belong to the row before. */
export function withoutParts(rows: readonly Row[]): Row[] {
  const left: Row[] = [];
  let told = 0;
  for (const row of rows) {
    // "one of the brown-belted had pollen"
    const isOfNamed = row.said.ofThem && row.bee !== null;
    const before = isOfNamed ? left.findLast((other) => sameBee(row, other) && other.said.count !== null) : left.at(-1);
    const within = before !== undefined && !isZero(before) && positive(row.counts) <= positive(before.counts);
    // "2 imp, one with pollen and one without"
    const rest = row.pollen === 0 && row.said.bee === null && row.said.count !== null && told > 0;
    if (rest && before !== undefined && told + positive(row.counts) <= positive(before.counts)) continue;
    told = row.said.partOfLast && row.pollen !== null ? positive(row.counts) : 0;
    // "six on the redbud, two of them with pollen, and one … on the phlox": the two are not on the phlox
    const isOfThose = isOfNamed || (row.said.ofThem && row.pollen !== null);
    if (!row.said.partOfLast || !within || (row.plants !== null && row.plants !== before.plants && !isOfThose)) {
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

/** "2 eastern and 1 rusty patched! I'm sure about the rusty": a bee told with its number before is no other queen. */
export function withoutRetold(rows: readonly Row[]): Row[] {
  return rows.filter((row, at) => {
    const isBare = row.bee !== null && row.said.count === null && row.said.role === 'new' && !row.said.plural;
    if (!isBare || row.pollen !== null) return true;
    const told = rows
      .slice(0, at)
      .find(
        (other) =>
          sameBee(row, other) &&
          other.said.count !== null &&
          !other.said.count.article &&
          (row.plants === null || isSamePlace(row, other)),
      );
    // "2 vagans on the lilac, the vagans were workers"
    if (told && row.worker) told.worker = true;
    return told === undefined;
  });
}

/** "5 bees, 3 imps and the rest bimacs": the rest is what the sum leaves over. */
export function withRemainders(rows: readonly Row[]): Row[] {
  return rows.map((row, at) => {
    const total = rows[0];
    if (row.said.count?.remainder !== true || total === undefined || at === 0) return row;
    const left = positive(total.counts) - sumOf(rows.slice(1, at));
    return left > 0 ? { ...row, counts: [left] } : row;
  });
}

/** "One had an orange band, maybe a tricolored": the bee named next is that one. */
export function withoutNamelessOnes(rows: readonly Row[]): Row[] {
  const left: Row[] = [];
  rows.forEach((row, at) => {
    const before = left.at(-1);
    const isThatOne =
      before !== undefined &&
      before.bee === null &&
      before.said.role === 'new' &&
      before.said.count !== null &&
      // "a single queen, a half-black, on the plum"
      (!before.said.count.article || before.said.queens) &&
      positive(before.counts) === 1 &&
      before.said.count.exact &&
      (before.said.unresolved === null || row.said.doubt || row.bee?.doubt === true) &&
      row.bee !== null &&
      isUncounted(row) &&
      !(rows[at + 1]?.bee && isUncounted(rows[at + 1]!)) &&
      (row.plants === null || before.plants === null || row.plants === before.plants);
    if (isThatOne) left[left.length - 1] = { ...row, plants: row.plants ?? before.plants };
    else left.push(row);
  });
  return left;
}

const isUncounted = ({ said }: Row): boolean =>
  said.role === 'new' && !said.plural && (said.count === null || said.count.article);

/** "1 half-black on the plum … the half-black on the plum sat still" */
const isSamePlace = ({ plants: one }: Row, { plants: other }: Row): boolean => {
  if (one === null || other === null || typeof one.plants === 'string' || typeof other.plants === 'string')
    return false;
  return one.plants[0]?.names[0]?.name === other.plants[0]?.names[0]?.name;
};

const sameBee = (left: Row, right: Row): boolean => left.bee?.names[0]?.name === right.bee?.names[0]?.name;
const samePlants = (left: Row, right: Row): boolean =>
  left.plants === null || right.plants === null || left.plants === right.plants;

/** "My wife says two imps and I say two imps, so two imps": the same queens each time. */
export function withoutRestated(rows: readonly Row[], doubts: Set<Ask>): Row[] {
  let left: Row[] = [];
  for (const row of rows) {
    const { again } = row.said;
    const earlier = left.filter((other) => !isZero(other) && samePlants(row, other));
    if (again === 'says' && earlier.some(({ said }) => said.again === 'says')) {
      const agrees = earlier.some((other) => sameBee(row, other) && positive(other.counts) === positive(row.counts));
      if (agrees) continue;
      doubts.add('tally-unclear');
    }
    const known = again === 'concludes' && row.bee ? earlier.filter((other) => sameBee(row, other)) : [];
    if (known.length === 0) {
      left.push(row);
      continue;
    }
    const count = positive(row.counts);
    if (sumOf(known) === count || row.said.count === null) continue;
    if (known.every((other) => positive(other.counts) === count))
      left = left.filter((other) => !known.slice(1).includes(other));
    else {
      left.push(row);
      doubts.add('tally-unclear');
    }
  }
  return left;
}

/** "5 queens: 3 imp, 2 bimac" and "3 imp: 2 on the plum, 1 on the phlox": a sum is no row, and must be right. */
export function withoutTotals(rows: readonly Row[], watched: readonly string[], doubts: Set<Ask>): Row[] {
  const isTotal = (row: Row): boolean => row.said.total && row.bee === null;
  const left = withoutTotalAhead(rows.filter((row) => !isTotal(row)));
  const sum = (parts: readonly Row[]): number =>
    parts.reduce((all, part) => all + positive(part.counts) * timesCounted(part, watched), 0);
  for (const total of rows.filter(isTotal)) {
    if (left.length === 0) return [...rows];
    if (sum(left) !== positive(total.counts)) doubts.add('tally-total-differs');
  }
  for (let at = 0; at < left.length - 1; at++) {
    const head = withoutGenus(left, at);
    if (head.said.role !== 'new' || head.said.count === null || head.said.count.article || isZero(head)) continue;
    const every = partsBehind(head, left.slice(at + 1), false);
    // "plum 3 queens (2 imp, 1 bimac), phlox 1 bimac": the phlox's are no part of them
    const all = sum(every) === positive(head.counts) ? every : every.slice(0, countHere(head, every));
    // "3 imps: 2 queens, 1 worker" and "4 imps on both, 2 each"; without the right sum these are more of them
    const unplaced = head.bee && all.length === 0 ? partsBehind(head, left.slice(at + 1), true) : [];
    const parts = unplaced.length > 1 || unplaced[0]?.said.each ? unplaced : all;
    const equal = sum(parts) === positive(head.counts);
    if (parts === unplaced && !equal) {
      if (parts[0]?.said.each) doubts.add('tally-unclear');
      continue;
    }
    const shared = head.plants === null || head.plants === parts[0]?.plants;
    // "five queens on the plum: three imp, two bimac"
    const restated =
      (head.bee === null && (head.said.queens || equal) && parts.every(({ plants }) => plants === null)) ||
      parts === unplaced;
    const sums =
      parts.length > 0 && (shared || head.said.total || restated) && (head.bee !== null || at === 0 || equal);
    if (!sums || (restated && !shared && !equal)) continue;
    if (restated && !shared) for (const part of parts) left[left.indexOf(part)] = { ...part, plants: head.plants };
    if (equal) {
      if (head.bee) for (const part of left.slice(at + 1, at + 1 + parts.length)) part.bee = head.bee;
      left.splice(at, 1);
    } else if (!head.bee) {
      doubts.add('tally-total-differs');
      left.splice(at, 1);
    } else if (head.plants !== null && parts.length > 0) doubts.add('tally-unclear');
  }
  return left;
}

/** "4 Bombus sp. (2 bimac, 2 unknown)": the genus that the bracket tells apart names no bee. */
function withoutGenus(rows: readonly Row[], at: number): Row {
  const [head, first, second] = rows.slice(at, at + 3);
  const isGenus = head!.bee?.names[0]?.name === 'Bombus' && head!.said.count !== null;
  // "1 Bombus. Lilac: 2 imp" tells nothing apart
  const headed = first!.plants !== null && !first!.plants.placed && first!.plants.span[1] <= first!.said.span[0];
  const isPart = first!.said.bracketed || (first!.said.listed && (!headed || head!.plants === first!.plants));
  const toldApart = isPart && first!.said.count !== null && first!.bee !== null;
  const named = !sameBee(head!, first!) || (second !== undefined && second.bee !== null && !sameBee(head!, second));
  return isGenus && toldApart && named ? { ...head!, bee: null, said: { ...head!.said, queens: true } } : head!;
}

/** "Four. 2 on the lilac, 2 on the plum. All imps": a number by itself that those behind it add up to. */
function withoutTotalAhead(rows: readonly Row[]): Row[] {
  const [head, ...parts] = rows;
  const places = new Set(parts.map(({ plants }) => plants));
  const isSum =
    head?.bee === null &&
    head.said.role === 'new' &&
    head.plants === parts[0]?.plants &&
    places.size > 1 &&
    !places.has(null) &&
    parts.every(({ bee, said }) => bee === null && said.role === 'new' && !said.each) &&
    sumOf(parts) === positive(head.counts);
  return isSum ? parts : [...rows];
}

/** Rows behind a sum that could be its parts: each names its bee, or where the sum names one, its plant. */
function partsBehind(head: Row, rows: readonly Row[], unplaced: boolean): Row[] {
  const parts: Row[] = [];
  for (const next of rows) {
    // "1 half-black and 1 wibble": of another kind, whatever it is
    const ofHead = next.bee === null && next.said.role === 'new' && next.said.unresolved === null;
    const part = head.bee ? ofHead : next.bee !== null;
    const said = unplaced ? next.worker || next.said.queens || next.said.each : next.plants !== null;
    if (!part || (head.bee && !head.said.total && !said)) break;
    parts.push(next);
  }
  return parts;
}

/** How many of the parts stand where their sum stands. */
function countHere(head: Row, parts: readonly Row[]): number {
  if (head.bee || head.plants === null || head.said.total) return parts.length;
  const elsewhere = parts.findIndex(({ plants }) => plants !== null && plants !== head.plants);
  return elsewhere === -1 ? parts.length : elsewhere;
}

/** "2 each": on how many plants. */
function timesCounted({ said, plants }: Row, watched: readonly string[]): number {
  if (!said.each && plants?.each !== true) return 1;
  return plants !== null && typeof plants.plants !== 'string' ? plants.plants.length : Math.max(1, watched.length);
}

/** "A two-spotted on the plum! 1 queen", "bimaculatus! just 1", "a half-black, one, on the plum": the number of the one bee named. */
export function withCountSaidLater(rows: readonly Row[]): Row[] {
  const [named, counted] = rows;
  const bare = (row: Row): boolean => row.said.count !== null && !row.said.count.article && row.said.count.exact;
  const restates =
    rows.length === 2 &&
    named?.bee &&
    named.said.role === 'new' &&
    counted?.bee === null &&
    counted.said.role === 'new' &&
    (named.said.count === null
      ? counted.plants === null && (counted.said.queens || counted.said.ofThem || bare(counted))
      : named.said.count.article && bare(counted) && positive(counted.counts) === 1 && !counted.said.each) &&
    (counted.plants === null || counted.plants === named.plants);
  if (!restates) return [...rows];
  return [{ ...named, counts: counted.counts, said: { ...named.said, count: counted.said.count, plural: false } }];
}
