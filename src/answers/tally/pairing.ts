/**
 * From the heads of one run to its rows: "2 imp, 1 bimac" and "imp 2, bimac 1" are told apart by what stands first and
 * last. A run ends with its sentence, its line or its plant.
 */
import type { Head } from './heads.js';
import type { RowSaid, Said } from './said.js';

/** "2 common easterns (B. impatiens)" names one bee twice; "2 imp (or bimac)" could be either. */
function withoutSynonyms(heads: readonly Head[]): Head[] {
  const left: Head[] = [];
  for (const head of heads) {
    const before = left.at(-1);
    const same = head.bee !== null && before?.type === 'bee' && before.bee?.names[0]?.name === head.bee.names[0]?.name;
    const counted = left.at(-2)?.type === 'count';
    if (head.type === 'bee' && before?.type === 'bee' && head.gap === 'open' && !same) head.orBefore = true;
    if (!(head.type === 'bee' && same && (head.gap === 'open' || (head.gap === 'comma' && counted)))) left.push(head);
  }
  return left;
}

/** Pairs counts and bees of one run: without a plant, a line end or a full stop in between. */
export function rowsOf(run: readonly Head[]): Said[] {
  const heads = withoutSynonyms(run);
  const rows: Said[] = [];
  const bound = new Set<Head>();
  const partner = new Map<Head, Head>();
  const pair = (count: Head, bee: Head): void => {
    bound.add(count).add(bee);
    partner.set(count, bee);
  };
  // "a bimac": an article belongs to the name behind it in any order
  heads.forEach((head, at) => {
    const next = heads[at + 1];
    if (head.count?.article && next && (next.type === 'bee' || next.type === 'insect')) pair(head, next);
  });
  const open = heads.filter(
    (head) =>
      !bound.has(head) &&
      // "impatiens not bimac, 2 of them"
      !(head.denied && head.type === 'bee') &&
      (head.type === 'count' || head.type === 'bee' || head.type === 'insect') &&
      !(head.total && head.type === 'count' && totalStandsAlone(heads, head)),
  );
  const counts = open.filter((head) => head.type === 'count' && !head.bee);
  const names = open.filter((head) => head.type !== 'count');
  const behind =
    open.length > 1 &&
    open[0]!.type !== 'count' &&
    open.at(-1)!.type === 'count' &&
    counts.length === names.length &&
    alternates(open);
  const unclear = new Set<Head>();
  open.forEach((head, at) => {
    if (bound.has(head) || head.type !== 'count' || head.bee) return;
    const before = open[at - 1];
    const next = open[at + 1];
    const nameBefore = before && before.type !== 'count' && !bound.has(before) ? before : null;
    // "violets 2, bimac: redbud 1" begins anew with the bimac
    const beginsAnew = next?.leads === true && next.gap !== null;
    const nameNext = next && next.type !== 'count' && !bound.has(next) && !beginsAnew ? next : null;
    if (isSumOfNames(heads, head)) return;
    if (behind && nameBefore) {
      pair(head, nameBefore);
      return;
    }
    if (
      nameNext &&
      // "phlox 2 plum 1 all imps"
      !(nameNext.all && nameNext.gap === null && !head.all) &&
      (nameNext.gap === null || nameNext.gap === 'open' || nameNext.gap === 'dash' || nameNext.gap === 'colon')
    ) {
      if (nameBefore && head.gap === null && nameNext.gap === null) unclear.add(head);
      pair(head, nameNext);
      return;
    }
    // "both common eastern, one of them with pollen": a bee of all is nobody's
    if (nameBefore && !(nameBefore.all && head.gap !== null) && head.gap !== 'and' && head.gap !== 'or') {
      pair(head, nameBefore);
      return;
    }
    if (nameNext && nameNext.gap === 'comma' && !nameNext.all && heads[0] === head) pair(head, nameNext);
  });

  const partnerOfBee = new Map([...partner].map(([count, bee]) => [bee, count]));
  for (const head of heads) {
    // "2 imp, not 3 bimac"
    if (head.denied || partner.get(head)?.denied || partnerOfBee.get(head)?.denied) continue;
    if (head.type === 'insect') continue;
    if (head.type === 'role') {
      rows.push(row(head, null, {}));
      continue;
    }
    if (head.type === 'count') {
      const bee = partner.get(head);
      if (bee?.type === 'insect') continue;
      // with its name behind it, the row stands where the name does
      if (bee) continue;
      rows.push(row(head, null, { unclear: unclear.has(head) }));
      continue;
    }
    const count = partnerOfBee.get(head) ?? null;
    // "2 imps on the redbud. scratch that, they were griseos" changes what was said
    if (head.all && count === null && head.bee && head.takesBack === 'no') {
      rows.push({
        kind: 'all-bees',
        bee: head.doubt ? { ...head.bee, doubt: true } : head.bee,
        number: head.allNumber,
        span: head.span,
      });
      continue;
    }
    rows.push(row(head, count, { unclear: count !== null && unclear.has(count) }));
  }
  return withEach(withEitherOr(rows));
}

/** "5 total": no name stands right behind it. */
function totalStandsAlone(heads: readonly Head[], head: Head): boolean {
  const next = heads[heads.indexOf(head) + 1];
  return next === undefined || next.type === 'count' || (next.gap !== null && next.gap !== 'open');
}

/** "two, an impatiens and a bimac", "3: impatiens, bimac and one unknown": the names behind it add up to it. */
function isSumOfNames(heads: readonly Head[], head: Head): boolean {
  const behind = heads.slice(heads.indexOf(head) + 1).filter(({ count, bee }) => count?.article !== true || bee);
  if (behind[0]?.type !== 'bee' || behind[0].gap === null) return false;
  // "2 yellow ones (fervidus) and 1 half-black": the bracket names the two
  if (behind[0].gap === 'open' && behind.some(({ type }) => type !== 'bee')) return false;
  let sum = 0;
  let names = 0;
  for (const [at, { type, count, bee, plural, gap }] of behind.entries()) {
    const before = behind[at - 1];
    const counted = before?.type === 'count' && before.bee === null && gap === null;
    if (type === 'bee' && plural && !counted) return false;
    // "one no idea" is a count with its bee, "2 imp" a count before it
    if (type === 'bee' && !counted) sum += 1;
    else if (type === 'count' && (bee || behind[at + 1]?.gap === null)) sum += count?.values[0] ?? 0;
    else if (type !== 'bee') return false;
    if (type === 'bee' || bee) names++;
  }
  return names > 1 && sum === head.count?.values[0];
}

/** Counts and names in turn: "imp 2 bimac 1". */
const alternates = (heads: readonly Head[]): boolean =>
  heads.every((head, at) => at === 0 || (head.type === 'count') !== (heads[at - 1]!.type === 'count'));

export function row(head: Head, other: Head | null, more: Partial<RowSaid>): RowSaid {
  const both = other ? [head, other] : [head];
  const any = (test: (each: Head) => boolean): boolean => both.some(test);
  const from = Math.min(...both.map(({ span }) => span[0]));
  const to = Math.max(...both.map(({ span }) => span[1]));
  const count = other?.count ?? head.count;
  const bee = head.bee ?? other?.bee ?? null;
  const pollen = any((each) => each.pollen === true) ? 'all' : any((each) => each.pollen === 'none') ? 0 : null;
  const takesBack = both.find((each) => each.takesBack !== 'no')?.takesBack ?? 'no';
  // "one with pollen", "(1 worker)", "1 of them a worker": some of the row before
  const inBrackets = head.gap === 'open';
  const ofThem = any((each) => each.ofThem);
  // "one of the brown-belted had pollen": of those told before
  const isOfTold = bee !== null && ofThem;
  const partOfLast =
    (bee === null || isOfTold) &&
    head.role === 'new' &&
    count !== null &&
    (isOfTold || pollen === 'all' || (any((each) => each.worker) && (inBrackets || ofThem)));
  return {
    kind: 'row',
    count,
    bee,
    plural: head.plural,
    role: head.role,
    each: any((each) => each.each),
    queens: any((each) => each.queens),
    ofThem,
    again: both.find((each) => each.again !== null)?.again ?? null,
    worker: any((each) => each.worker),
    pollen,
    doubt: any((each) => each.doubt),
    uncertain: any((each) => each.uncertain),
    unresolved: bee === null ? (head.unresolved ?? other?.unresolved ?? null) : null,
    partOfLast,
    bracketed: both.every((each) => each.bracketed),
    tours: any((each) => each.tours),
    listed: both.some(({ span, gap }) => span[0] === from && (gap === 'colon' || gap === 'dash')),
    total: any((each) => each.total),
    takesBack,
    orBees: bee && any(({ orBefore }) => orBefore) ? [bee] : [],
    unclear: false,
    span: [from, to],
    ...more,
  };
}

/** "2 imp or bimac" is one row that could be either. */
function withEitherOr(rows: readonly Said[]): Said[] {
  const joined: Said[] = [];
  for (const said of rows) {
    const last = joined.at(-1);
    if (said.kind === 'row' && said.orBees.length > 0 && last?.kind === 'row' && last.bee) {
      // "2 imp or 3 bimac" could be anything
      const counted = said.count && !said.count.article;
      const both = counted && last.count && !last.count.article;
      joined[joined.length - 1] = {
        ...last,
        // "vagans or perplexus, 2 of them"
        count: counted ? said.count : last.count,
        unclear: last.unclear || Boolean(both),
        orBees: [...last.orBees, ...said.orBees],
        span: [last.span[0], said.span[1]],
      };
    } else joined.push(said.kind === 'row' ? { ...said, orBees: [] } : said);
  }
  return joined;
}

/** "1 each of imp and bimac", "imp and bimac, 1 each": the count is every name's. */
function withEach(rows: readonly Said[]): Said[] {
  const at = rows.findIndex((said) => said.kind === 'row' && said.each && said.count !== null);
  const distributed = rows[at];
  if (distributed?.kind !== 'row') return [...rows];
  const uncounted = rows.filter(
    (said) => said.kind === 'row' && said.role === 'new' && said.bee !== null && said.count === null && !said.plural,
  );
  if (uncounted.length === 0) return [...rows];
  return rows.flatMap((said, index): Said[] => {
    if (index === at && distributed.bee === null) return [];
    if (said.kind !== 'row') return [said];
    return uncounted.includes(said) || index === at ? [{ ...said, count: distributed.count, each: false }] : [said];
  });
}
