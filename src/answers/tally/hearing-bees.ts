/** Hears what a tally says of its bees: names, roles ("the same one"), queens, pollen, doubts. */
import type { Span } from '../reading.js';
import { changeLastRow } from './behind-plant.js';
import { headOf, type Head } from './heads.js';
import { nextMeaning } from './looking-on.js';
import type { Mark, MarkOf } from './mark.js';
import { bombusAt, type NameSaid } from './names-said.js';
import type { Run } from './run.js';
import type { RowSaid } from './said.js';
import { nothingWaits } from './waiting.js';

type RoleKind = Exclude<RowSaid['role'], 'new'>;

/** "Maybe another", "might be the same one": how many there were is in doubt. */
const OF_QUEENS_BEFORE: ReadonlySet<Mark['kind']> = new Set(['another', 'same', 'same-one', 'same-ones']);

const isNone = ({ role, count }: Head): boolean => role === 'zero' || count?.values[0] === 0;

export function hearBee(run: Run, { bee, plural, span }: MarkOf<'bee'>): void {
  const { touching } = run;
  if (touching?.type !== 'role' || touching.bee !== null) {
    // "1 perplexus but could be vagans"
    const alternative = run.waiting.doubt && run.last?.type === 'bee';
    const head = run.take(headOf('bee', span));
    head.orBefore ||= alternative;
    head.bee = bee;
    head.plural = plural;
    return;
  }
  // "the same imp"
  if (touching.role === 'same') touching.role = 'same-one';
  touching.bee = bee;
  touching.span = [touching.span[0], span[1]];
  touching.doubt ||= run.waiting.doubt;
  touching.worker ||= run.waiting.worker;
  run.waiting = nothingWaits();
}

export function hearCannotTell(run: Run, span: Span, marks: readonly Mark[], at: number): void {
  const { last } = run;
  if (last?.type === 'bee') last.doubt = true;
  // "and another that flew off before I could tell"
  else if (last?.type === 'role' && last.role === 'another' && last.bee === null) last.bee = bombusAt(span);
  else if (last?.type === 'count' && last.bee === null && (run.openCount || last.queens || run.heads.length === 1)) {
    last.bee = bombusAt(span);
    last.unresolved = null;
    last.span = [last.span[0], span[1]];
    // the doubt is about these, not about bees named before
    for (const head of run.heads) {
      if (head !== last && !head.doubt && head.bee?.doubt) head.bee = { ...head.bee, doubt: false };
    }
    run.waiting = nothingWaits();
  } else if (last?.type === 'count' && last.bee === null) {
    // "impatiens 3, unknown 1": a name of its own
    run.take(headOf('bee', span)).bee = bombusAt(span);
  }
  if (last) return;
  const next = nextMeaning(marks, at);
  const nothingFollows = next === undefined || next.kind === 'break';
  const row = run.said.findLast((item) => item.kind === 'row');
  const isOfRow =
    run.waiting.gap !== null ||
    (row?.kind === 'row' && (row.orBees.length > 0 || (row.bee === null && row.role === 'new')));
  const nothingNamed = run.said.every((item) => item.kind !== 'row' || item.bee === null);
  // "three. couldn't tell what kind"
  const isNextSentence =
    row?.kind === 'row' && row.bee === null && row.role === 'new' && run.said.at(-1)?.kind === 'end';
  if (isOfRow && (run.behindPlant || isNextSentence) && nothingFollows) {
    // "2 imp on phlox, couldn't tell which …", "one on the phlox I couldn't identify": about the row before
    changeLastRow(run.said, row?.bee ? { doubt: true } : { bee: bombusAt(span) });
    if (nothingNamed && next === undefined) giveToAll(run, bombusAt(span));
    return;
  }
  // "unknown on the phlox"; "not sure which, 2 on the phlox" waits for its count
  const head = run.take(headOf('bee', span));
  head.bee = bombusAt(span);
  head.all = next?.kind === 'break';
}

/** "3 on the phlox, 1 on the plum, couldn't tell which": said of all, where none has a name. */
function giveToAll(run: Run, bee: NameSaid): void {
  run.said.forEach((item, at) => {
    if (item.kind === 'row' && item.role === 'new' && item.count?.values[0] !== 0) run.said[at] = { ...item, bee };
  });
}

/** True of a bee without a number that was told before. */
function isToldAgain({ heads, said }: Run, { bee, gap }: Head): boolean {
  const isSame = (other: { readonly bee: NameSaid | null }): boolean =>
    other.bee?.names[0]?.name === bee?.names[0]?.name;
  const counted = heads.at(-2)?.type === 'count' && gap === null;
  return !counted && (heads.slice(0, -1).some(isSame) || said.some((item) => item.kind === 'row' && isSame(item)));
}

export function hearRole(run: Run, kind: RoleKind, span: Span): void {
  const { touching, openCount } = run;
  // "none, the same one": not a queen of its own
  if (kind === 'same-one' && touching?.type === 'role' && touching.role === 'zero') touching.role = 'same-one';
  // "a half-black, then the half-black came back"
  else if (kind === 'same-one' && touching?.type === 'bee' && isToldAgain(run, touching)) touching.role = 'same-one';
  // "1 of the same": its bee is the one said last
  else if (openCount && kind === 'same') return;
  // "1 of them also", "2 more"
  else if (openCount && (kind === 'same-one' || kind === 'another')) {
    openCount.role = kind;
    openCount.uncertain ||= run.waiting.uncertain;
  } else run.take(headOf('role', span)).role = kind;
}

export function hearQueens(run: Run, { plural }: MarkOf<'queens'>): void {
  const { touching } = run;
  if (!touching) {
    run.waiting.queens = true;
    return;
  }
  touching.queens = true;
  if (touching.type === 'bee' && plural) touching.plural = true;
  if (touching.type === 'count') touching.unresolved = null;
}

/** "1 bimac, small one", "2 imps, small ones": said of the bee before, as many as it counts. */
function isOfBeeBefore(run: Run, plural: boolean, next: Mark | undefined): boolean {
  const { last } = run;
  const counted = run.heads.at(-2)?.type === 'count' ? run.heads.at(-2)?.count?.values[0] : 1;
  const ends = next === undefined || (next.kind === 'break' && next.strength !== 'and' && next.strength !== 'or');
  return last?.type === 'bee' && run.waiting.gap === 'comma' && ends && plural === (counted !== 1 || last.plural);
}

export function hearWorker(run: Run, { plural }: MarkOf<'worker'>, next: Mark | undefined): void {
  const { touching, last } = run;
  if (touching && !(touching.type === 'count' && next?.kind === 'bee')) touching.worker = true;
  else if (last && isOfBeeBefore(run, plural, next)) last.worker = true;
  // "2 imps, both small"
  else if (last?.type === 'bee' && run.waiting.all) {
    last.worker = true;
    run.waiting.all = false;
  } else run.waiting.worker = true;
}

export function hearPollen(run: Run, had: boolean, marks: readonly Mark[], at: number): void {
  const told = had ? true : 'none';
  if (run.last && !run.waiting.all) run.last.pollen = told;
  else if (run.last) {
    // "2 imp and 1 bimac, all with pollen"
    for (const head of run.heads) if (head.type !== 'insect') head.pollen = told;
    run.waiting.all = false;
  } else if (marks[at + 1]?.kind === 'bee' || run.said.every((item) => item.kind !== 'row')) {
    run.waiting.pollen = had;
  } else {
    changeLastRow(run.said, { pollen: had ? 'all' : 0 });
    run.waiting.all = false;
  }
}

export function hearDoubtful(
  run: Run,
  { ofZero, behind }: MarkOf<'doubtful'>,
  marks: readonly Mark[],
  at: number,
): void {
  // "2 imp? 1 bimac"
  if (behind && run.last?.bee) {
    run.last.doubt = true;
    return;
  }
  const next = nextMeaning(marks, at);
  if (next?.kind === 'bee' || next?.kind === 'all-bees') run.waiting.doubt = true;
  // "I think 2 imps"
  else if (next?.kind === 'count' && nextMeaning(marks, marks.indexOf(next))?.kind === 'bee') run.waiting.doubt = true;
  else if (next && OF_QUEENS_BEFORE.has(next.kind)) run.waiting.uncertain = true;
  else if (run.last?.bee) run.last.doubt = true;
  else if (run.last && isNone(run.last)) run.last.uncertain ||= ofZero;
  else if (!run.last && run.behindPlant) changeLastRow(run.said, { doubt: true });
}

/** "2 bimacs flew past", "dead: 1 bimac", "1 bimac on the plum, didn't land" */
export function hearUnsettling(run: Run): void {
  if (run.last) run.last.uncertain = true;
  else if (run.behindPlant) changeLastRow(run.said, { uncertain: true });
  else run.waiting.uncertain = true;
}
