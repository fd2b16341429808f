/**
 * From marks to what was said: rows (a count with its bee, "none", "same", "another"), the plants they stand beside, and
 * where a sentence or line ends. "2 imp, 1 bimac" and "imp 2, bimac 1" are told apart by what stands first and last.
 */
import type { Span } from '../reading.js';
import type { CountSaid } from './counts.js';
import type { Break, Mark } from './marks.js';
import type { NameSaid } from './names-said.js';

export type TakesBack = 'no' | 'weakly' | 'strongly';

export interface RowSaid {
  readonly kind: 'row';
  /** Null where none was said: one bee, unless the name is a plural. */
  readonly count: CountSaid | null;
  /** Null where none was said: the bee said before, or all bees. */
  readonly bee: NameSaid | null;
  readonly plural: boolean;
  readonly role: 'new' | 'zero' | 'same' | 'same-one' | 'same-ones' | 'another';
  /** Once for each plant. */
  readonly each: boolean;
  /** "2 queens", "3 bees": counted as queens though no bee is named. */
  readonly queens: boolean;
  readonly worker: boolean;
  /** How many had pollen; `all` of the row's count; null where not said. */
  readonly pollen: number | 'all' | null;
  /** A hedge beside the name. */
  readonly doubt: boolean;
  /** A hedge beside the number: "possibly another". */
  readonly uncertain: boolean;
  /** Words where a bee should be, which nobody knows. */
  readonly unresolved: Span | null;
  /** One of the row before, not one more: "one with pollen", "(1 worker)". */
  readonly partOfLast: boolean;
  /** "2 queens … in all": a sum. */
  readonly total: boolean;
  readonly takesBack: TakesBack;
  /** Bees of an "either … or" with this one. */
  readonly orBees: readonly NameSaid[];
  /** True where the order of counts and names could be read in two ways. */
  readonly unclear: boolean;
  readonly span: Span;
}

export interface PlantsSaid {
  readonly kind: 'plants';
  /** Empty: words in the place of a plant that nobody knows. */
  readonly plants: readonly NameSaid[] | 'all' | 'rest';
  readonly each: boolean;
  /** "on the phlox": a preposition stands before it. */
  readonly placed: boolean;
  /** What stands behind it and makes it a heading. */
  readonly sign: 'colon' | 'dash' | 'line' | null;
  /** "or", "and" before it: it may belong with the plant before. */
  readonly joinedBy: Break | null;
  readonly takesBack: TakesBack;
  readonly span: Span;
}

/** One bee for every count that names none: "they're all impatiens". */
export interface AllBeesSaid {
  readonly kind: 'all-bees';
  readonly bee: NameSaid;
  readonly span: Span;
}

export interface EndSaid {
  readonly kind: 'end';
  readonly strength: 'line' | 'stop';
  readonly span: Span;
}

export interface NothingElseSaid {
  readonly kind: 'nothing-else';
  readonly span: Span;
}

export type Said = RowSaid | PlantsSaid | AllBeesSaid | EndSaid | NothingElseSaid;

/** A count, a bee or a role with all that was said beside it, before counts and bees are paired. */
interface Head {
  type: 'count' | 'bee' | 'role' | 'insect';
  count: CountSaid | null;
  bee: NameSaid | null;
  plural: boolean;
  role: RowSaid['role'];
  /** What stands between it and the head before. */
  gap: Break | null;
  /** "possibly another" */
  uncertain: boolean;
  queens: boolean;
  worker: boolean;
  pollen: boolean | 'none';
  doubt: boolean;
  each: boolean;
  total: boolean;
  all: boolean;
  unresolved: Span | null;
  takesBack: TakesBack;
  orBefore: boolean;
  span: Span;
}

const headOf = (type: Head['type'], span: Span): Head => ({
  type,
  count: null,
  bee: null,
  plural: false,
  role: 'new',
  gap: null,
  uncertain: false,
  queens: false,
  worker: false,
  pollen: false,
  doubt: false,
  each: false,
  total: false,
  all: false,
  unresolved: null,
  takesBack: 'no',
  orBefore: false,
  span,
});

const STRENGTH: Readonly<Record<Break, number>> = {
  and: 1,
  or: 1,
  dash: 2,
  colon: 2,
  open: 2,
  close: 0,
  comma: 3,
  stop: 4,
  line: 5,
};
const stronger = (left: Break | null, right: Break): Break =>
  left === null || STRENGTH[right] >= STRENGTH[left] ? right : left;

/** What came between two heads and waits for the next one. */
interface Waiting {
  gap: Break | null;
  or: boolean;
  doubt: boolean;
  worker: boolean;
  all: boolean;
  pollen: boolean;
  each: boolean;
  total: boolean;
  queens: boolean;
  takesBack: TakesBack;
  uncertain: boolean;
}

const nothingWaits = (): Waiting => ({
  gap: null,
  or: false,
  doubt: false,
  worker: false,
  all: false,
  pollen: false,
  each: false,
  total: false,
  queens: false,
  takesBack: 'no',
  uncertain: false,
});

/** True where, looking on from `at`, a name or "queen" comes before any break: the article there counts. */
function articleCounts(marks: readonly Mark[], at: number): boolean {
  for (let next = at + 1; next < marks.length; next++) {
    const mark = marks[next]!;
    switch (mark.kind) {
      case 'bee':
      case 'insect':
      case 'queens':
      case 'cannot-tell':
        return true;
      case 'worker':
      case 'doubtful':
      case 'unknown':
        continue;
      default:
        return false;
    }
  }
  return false;
}

/** The next mark that is no article, thing or unknown word. */
function nextMeaning(marks: readonly Mark[], at: number): Mark | undefined {
  return marks
    .slice(at + 1, at + 6)
    .find((mark) => !(mark.kind === 'count' && mark.count.article) && mark.kind !== 'unknown');
}

/** Plants of which nothing is known but that they were said. */
const nowhere: PlantsSaid = {
  kind: 'plants',
  plants: [],
  each: false,
  placed: false,
  sign: null,
  joinedBy: null,
  takesBack: 'no',
  span: [0, 0],
};

/** All that was said, left to right. */
export function saidIn(marks: readonly Mark[], bombus: (span: Span) => NameSaid): Said[] {
  const said: Said[] = [];
  let heads: Head[] = [];
  let waiting = nothingWaits();
  /** A preposition came right before; `firmly` one that only a plant can follow ("visiting"). */
  let placed: 'no' | 'loosely' | 'firmly' = 'no';
  let joinedBy: Break | null = null;
  const flush = (plantFollows = false): void => {
    said.push(...rowsOf(withoutSynonyms(behindPlant(heads, said, plantFollows))));
    heads = [];
  };
  const take = (head: Head): Head => {
    head.gap = waiting.gap;
    head.orBefore = waiting.or;
    head.worker ||= waiting.worker;
    head.all ||= waiting.all;
    head.each ||= waiting.each && head.type === 'count';
    head.total ||= waiting.total;
    head.queens ||= waiting.queens;
    head.takesBack = waiting.takesBack;
    head.uncertain = waiting.uncertain;
    if (waiting.pollen) head.pollen = true;
    if (waiting.doubt && (head.type === 'bee' || head.count?.article === true)) head.doubt = true;
    waiting = nothingWaits();
    heads.push(head);
    return head;
  };

  for (let at = 0; at < marks.length; at++) {
    const mark = marks[at]!;
    const { span } = mark;
    const last = heads.at(-1);
    const touching = last !== undefined && (waiting.gap === null || waiting.gap === 'open');
    const placing: 'no' | 'loosely' | 'firmly' = placed;
    const wasPlaced = placing !== 'no';
    if (mark.kind !== 'count' || !mark.count.article) placed = 'no';
    switch (mark.kind) {
      case 'break':
        if (mark.strength === 'line' || mark.strength === 'stop') {
          flush();
          said.push({ kind: 'end', strength: mark.strength, span });
          waiting = { ...nothingWaits(), takesBack: waiting.takesBack };
          joinedBy = mark.strength;
        } else {
          waiting.gap = stronger(waiting.gap, mark.strength);
          if (mark.strength === 'or') waiting.or = true;
          joinedBy = stronger(joinedBy, mark.strength);
        }
        continue;
      case 'count': {
        if (mark.count.article) {
          if (!articleCounts(marks, at)) continue;
          placed = 'no';
        }
        const next = nextMeaning(marks, at);
        // "on 40 bluebells": the flowers watched
        if (wasPlaced && next?.kind === 'plant') {
          placed = placing;
          continue;
        }
        // "at 3", "between 2 and …": a time
        if (placing === 'loosely' && !mark.count.article && next?.kind !== 'bee' && next?.kind !== 'queens') continue;
        if (last && touching && last.type === 'role' && last.count === null && last.role !== 'zero') {
          last.count = mark.count;
          last.span = [last.span[0], span[1]];
          continue;
        }
        const head = take(headOf('count', span));
        head.count = mark.count;
        break;
      }
      case 'bee': {
        if (last && touching && last.type === 'role' && last.bee === null) {
          // "the same imp"
          if (last.role === 'same') last.role = 'same-one';
          last.bee = mark.bee;
          last.span = [last.span[0], span[1]];
          last.doubt ||= waiting.doubt;
          last.worker ||= waiting.worker;
          waiting = nothingWaits();
          break;
        }
        const head = take(headOf('bee', span));
        head.bee = mark.bee;
        head.plural = mark.plural;
        break;
      }
      case 'cannot-tell': {
        if (last?.type === 'bee') {
          last.doubt = true;
          break;
        }
        if (last?.type === 'count' && last.bee === null) {
          last.bee = bombus(span);
          for (const head of heads)
            if (head.bee?.doubt && head !== last && !head.doubt) head.bee = { ...head.bee, doubt: false };
          last.unresolved = null;
          last.span = [last.span[0], span[1]];
          waiting = nothingWaits();
          break;
        }
        if (last) break;
        const next = nextMeaning(marks, at);
        // "2 imp on phlox, couldn't tell which …": a doubt about the row before
        if (waiting.gap !== null && said.at(-1)?.kind === 'plants' && (next === undefined || next.kind === 'break')) {
          changeLastRow(
            said,
            said.findLast((item) => item.kind === 'row')?.bee ? { doubt: true } : { bee: bombus(span) },
          );
          break;
        }
        // "unknown on the phlox"; "not sure which, 2 on the phlox" waits for its count
        const head = take(headOf('bee', span));
        head.bee = bombus(span);
        head.all = next?.kind === 'break';
        break;
      }
      case 'zero':
      case 'another':
      case 'same':
      case 'same-one':
      case 'same-ones': {
        if (mark.kind === 'same-one' && last?.type === 'role' && last.role === 'zero' && touching) {
          // "none, the same one": not a queen of its own
          last.role = 'same-one';
          break;
        }
        // "2 more"
        if (mark.kind === 'another' && last?.type === 'count' && last.bee === null && touching) {
          last.role = 'another';
          break;
        }
        const head = take(headOf('role', span));
        head.role = mark.kind;
        break;
      }
      case 'moved-on': {
        const head = take(headOf('role', span));
        head.role = 'same-one';
        placed = 'firmly';
        break;
      }
      case 'insect':
        take(headOf('insect', span));
        break;
      case 'queens':
        if (last && touching) {
          last.queens = true;
          if (last.type === 'bee' && mark.plural) last.plural = true;
          if (last.type === 'count') last.unresolved = null;
        } else waiting.queens = true;
        break;
      case 'worker':
        if (last && touching && !(last.type === 'count' && marks[at + 1]?.kind === 'bee')) last.worker = true;
        else waiting.worker = true;
        break;
      case 'pollen':
      case 'no-pollen':
        if (last && !waiting.all) last.pollen = mark.kind === 'pollen' ? true : 'none';
        else if (last) {
          const rows = heads.filter((head) => head.type !== 'insect');
          for (const head of rows) head.pollen = mark.kind === 'pollen' ? true : 'none';
          waiting.all = false;
        } else if (marks[at + 1]?.kind === 'bee' || said.every((item) => item.kind !== 'row')) {
          waiting.pollen = mark.kind === 'pollen';
        } else {
          changeLastRow(said, { pollen: mark.kind === 'pollen' ? 'all' : 0 });
          waiting.all = false;
        }
        break;
      case 'each':
        if (last) last.each = true;
        else waiting.each = true;
        break;
      case 'total':
        if (last && last.type !== 'role' && touching) last.total = true;
        else waiting.total = true;
        break;
      case 'all-bees':
        waiting.all = true;
        break;
      case 'doubtful': {
        const next = nextMeaning(marks, at);
        if (next?.kind === 'bee' || next?.kind === 'all-bees') waiting.doubt = true;
        else if (next?.kind === 'another') waiting.uncertain = true;
        else if (last?.type === 'bee' || last?.bee) last.doubt = true;
        else if (!last && said.at(-1)?.kind === 'plants') changeLastRow(said, { doubt: true });
        break;
      }
      case 'takes-back':
      case 'takes-back-weakly':
        waiting = { ...nothingWaits(), gap: 'comma', takesBack: mark.kind === 'takes-back' ? 'strongly' : 'weakly' };
        break;
      case 'nothing-else':
        flush();
        said.push({ kind: 'nothing-else', span });
        break;
      case 'preposition':
        placed = mark.strong ? 'firmly' : 'loosely';
        continue;
      case 'thing':
        break;
      case 'unknown':
        if (
          last?.type === 'count' &&
          waiting.gap === null &&
          !last.queens &&
          last.bee === null &&
          last.count?.article !== true
        ) {
          last.unresolved = last.unresolved ? [last.unresolved[0], span[1]] : span;
        }
        if (placing === 'firmly') {
          flush();
          waiting = nothingWaits();
          let to = at;
          while (marks[to + 1]?.kind === 'unknown') to++;
          at = to;
          said.push({ ...nowhere, plants: [], placed: true, span: [span[0], marks[to]!.span[1]] });
        }
        continue;
      case 'plant':
      case 'plants': {
        const takesBack = waiting.takesBack;
        const between = joinedBy;
        flush(true);
        waiting = nothingWaits();
        const behind = marks[at + 1];
        const sign =
          behind?.kind === 'break' &&
          (behind.strength === 'colon' || behind.strength === 'dash' || behind.strength === 'line')
            ? behind.strength
            : null;
        said.push({
          kind: 'plants',
          plants: mark.kind === 'plant' ? [mark.plant] : mark.which,
          each: mark.kind === 'plants' && mark.each,
          placed: wasPlaced,
          sign,
          joinedBy: between,
          takesBack,
          span,
        });
        joinedBy = null;
        continue;
      }
    }
    joinedBy = null;
  }
  flush();
  return said;
}

/**
 * What stands right behind a plant and belongs to the row before it: the count of "bimac on phlox 2, imp on plum 1", the
 * bee of "2 on the phlox (bimac)" and "one on the phlox, an impatiens". Gives the heads that are left.
 */
function behindPlant(heads: readonly Head[], said: Said[], plantFollows: boolean): readonly Head[] {
  const [first, second, third] = heads;
  const before = said.at(-2);
  if (!first || said.at(-1)?.kind !== 'plants' || before?.kind !== 'row' || before.role !== 'new') return heads;
  if (before.bee === null && before.count !== null) {
    const article = first.type === 'count' && first.count?.article === true && second?.type === 'bee' ? second : null;
    const named = first.type === 'bee' ? first : article;
    const alone = named !== null && (named === first ? second : third)?.type !== 'count';
    const apart = first.gap === 'open' || (first.gap === 'comma' && !plantFollows);
    if (!named?.bee || !alone || !apart || (article && before.count.values[0] !== 1)) return heads;
    said[said.length - 2] = { ...before, bee: named.bee, doubt: before.doubt || named.doubt };
    return heads.slice(named === first ? 1 : 2);
  }
  const counts =
    first.type === 'count' &&
    first.gap === null &&
    first.count?.article === false &&
    first.bee === null &&
    !first.queens &&
    before.bee !== null &&
    before.count === null &&
    (second === undefined || (second.gap !== null && second.gap !== 'open' && second.gap !== 'dash'));
  if (!counts) return heads;
  said[said.length - 2] = { ...before, count: first.count };
  return heads.slice(1);
}

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

/** What is said of queens after their plant ("2 imp on phlox, both with pollen") goes to the last row. */
function changeLastRow(said: Said[], change: Partial<RowSaid>): void {
  const at = said.findLastIndex((item) => item.kind === 'row' && item.role !== 'zero');
  const row = said[at];
  if (row?.kind === 'row') said[at] = { ...row, ...change };
}

/** Pairs counts and bees of one run: without a plant, a line end or a full stop in between. */
function rowsOf(heads: readonly Head[]): Said[] {
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
    const nameNext = next && next.type !== 'count' && !bound.has(next) ? next : null;
    if (behind && nameBefore) {
      pair(head, nameBefore);
      return;
    }
    if (
      nameNext &&
      (nameNext.gap === null || nameNext.gap === 'open' || nameNext.gap === 'dash' || nameNext.gap === 'colon')
    ) {
      if (nameBefore && head.gap === null && nameNext.gap === null) unclear.add(head);
      pair(head, nameNext);
      return;
    }
    if (nameBefore && head.gap !== 'and' && head.gap !== 'or') {
      pair(head, nameBefore);
      return;
    }
    if (nameNext && nameNext.gap === 'comma' && !nameNext.all && heads[0] === head) pair(head, nameNext);
  });

  const partnerOfBee = new Map([...partner].map(([count, bee]) => [bee, count]));
  for (const head of heads) {
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
    if (head.all && count === null && head.bee) {
      rows.push({ kind: 'all-bees', bee: head.doubt ? { ...head.bee, doubt: true } : head.bee, span: head.span });
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

/** Counts and names in turn: "imp 2 bimac 1". */
const alternates = (heads: readonly Head[]): boolean =>
  heads.every((head, at) => at === 0 || (head.type === 'count') !== (heads[at - 1]!.type === 'count'));

function row(head: Head, other: Head | null, more: Partial<RowSaid>): RowSaid {
  const both = other ? [head, other] : [head];
  const any = (test: (each: Head) => boolean): boolean => both.some(test);
  const from = Math.min(...both.map(({ span }) => span[0]));
  const to = Math.max(...both.map(({ span }) => span[1]));
  const count = other?.count ?? head.count;
  const bee = head.bee ?? other?.bee ?? null;
  const pollen = any((each) => each.pollen === true) ? 'all' : any((each) => each.pollen === 'none') ? 0 : null;
  const takesBack = both.find((each) => each.takesBack !== 'no')?.takesBack ?? 'no';
  // "one with pollen", "(1 worker)": some of the row before
  const inBrackets = head.gap === 'open';
  const partOfLast =
    bee === null &&
    head.role === 'new' &&
    count !== null &&
    (pollen === 'all' || (inBrackets && any((each) => each.worker)));
  return {
    kind: 'row',
    count,
    bee,
    plural: head.plural,
    role: head.role,
    each: any((each) => each.each),
    queens: any((each) => each.queens),
    worker: any((each) => each.worker),
    pollen,
    doubt: any((each) => each.doubt),
    uncertain: any((each) => each.uncertain),
    unresolved: bee === null ? (head.unresolved ?? other?.unresolved ?? null) : null,
    partOfLast,
    total: any((each) => each.total),
    takesBack,
    orBees: head.orBefore && bee && count === null ? [bee] : [],
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
      joined[joined.length - 1] = {
        ...last,
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
