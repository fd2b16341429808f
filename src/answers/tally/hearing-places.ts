/** Hears what a tally says beside its bees: how many, on which plants, and where a sentence ends. */
import type { Span } from '../reading.js';
import { headOf } from './heads.js';
import { articleCounts, nextMeaning } from './looking-on.js';
import type { Mark, MarkOf } from './mark.js';
import type { Placed, Run } from './run.js';
import { nothingWaits, stronger } from './waiting.js';

export function hearPause(run: Run, { strength, span }: MarkOf<'break'>): void {
  if (strength === 'open') run.inBracket = true;
  else if (strength === 'close' || strength === 'stop' || strength === 'line') run.inBracket = false;
  if (strength === 'line' || strength === 'stop') {
    run.flush();
    run.said.push({ kind: 'end', strength, span });
    run.waiting = { ...nothingWaits(), takesBack: run.waiting.takesBack, again: run.waiting.again };
    run.joinedBy = strength;
    return;
  }
  // "(2) impatiens"
  if (strength === 'close') return;
  if (strength === 'colon' && run.touching?.type === 'bee') run.touching.leads = true;
  run.waiting.gap = stronger(run.waiting.gap, strength);
  if (strength === 'or') run.waiting.or = true;
  run.joinedBy = stronger(run.joinedBy, strength);
}

export function hearCount(run: Run, mark: MarkOf<'count'>, marks: readonly Mark[], at: number, placed: Placed): void {
  if (!mark.count.article) run.placed = 'no';
  else if (!articleCounts(marks, at)) return;
  else run.placed = 'no';
  const next = nextMeaning(marks, at);
  // "none of them had a bee"
  if (mark.count.article && next?.kind === 'queens' && run.touching?.role === 'zero') return;
  // "on one bush"
  if (placed !== 'no' && !mark.count.article && next?.kind === 'thing') return;
  // "on 40 bluebells": the flowers watched
  if (placed !== 'no' && next?.kind === 'plant') {
    run.placed = placed;
    return;
  }
  // "at 3", "between 2 and …": a time
  if (placed === 'loosely' && !mark.count.article && next?.kind !== 'bee' && next?.kind !== 'queens') return;
  const { touching } = run;
  if (touching?.type === 'role' && touching.count === null && touching.role !== 'zero') {
    touching.count = mark.count;
    touching.span = [touching.span[0], mark.span[1]];
    return;
  }
  run.take({ ...headOf('count', mark.span), count: mark.count, unresolved: unknownLabel(marks, at) });
  run.joinedBy = null;
}

/** "confusing - 1": a word that nobody knows, in the place of a bee. */
function unknownLabel(marks: readonly Mark[], at: number): Span | null {
  const [label, sign] = marks.slice(Math.max(0, at - 2), at);
  const isSign = sign?.kind === 'break' && (sign.strength === 'dash' || sign.strength === 'colon');
  return isSign && label?.kind === 'unknown' ? label.span : null;
}

/** "None at all. Windy on the ridge.": a sentence that tells no bees, with other words before its "on". */
function isOfSomethingElse(run: Run, marks: readonly Mark[], at: number): boolean {
  if (run.tellsInSentence || !run.said.some(({ kind }) => kind === 'row')) return false;
  const ends = (mark: Mark): boolean => mark.kind === 'break' && (mark.strength === 'stop' || mark.strength === 'line');
  const from = marks.slice(0, at).findLastIndex(ends) + 1;
  const end = marks.findIndex((mark, later) => later > at && ends(mark));
  const sentence = marks.slice(from, end === -1 ? undefined : end);
  const preposition = sentence.findIndex(({ kind }) => kind === 'preposition');
  return (
    sentence.slice(0, preposition).some(({ kind }) => kind === 'unknown') &&
    sentence.every(
      (mark) =>
        ['unknown', 'thing', 'preposition', 'break'].includes(mark.kind) ||
        (mark.kind === 'count' && mark.count.article),
    )
  );
}

export function hearUnknown(run: Run, span: Span, marks: readonly Mark[], at: number, placed: Placed): void {
  const { openCount } = run;
  if (openCount && run.waiting.gap === null && !openCount.queens && openCount.count?.article !== true) {
    openCount.unresolved = openCount.unresolved ? [openCount.unresolved[0], span[1]] : span;
  }
  const before = run.said.at(-1);
  const goesOn = before?.kind === 'plants' && before.plants.length === 0 && marks[at - 1]?.span[1] === before.span[1];
  if (goesOn) {
    run.said[run.said.length - 1] = { ...before, span: [before.span[0], span[1]] };
  } else if (placed === 'firmly' && nextMeaning(marks, at)?.kind === 'plant') {
    // "on the neighbour's phlox"
    run.placed = placed;
  } else if (placed === 'firmly' && !isOfSomethingElse(run, marks, at)) {
    run.flush(true);
    run.waiting = nothingWaits();
    run.pushPlants({ span });
  }
}

/** "2 imps on the chives, zork on the lilac": words that nobody knows, where a count of the plant should be. */
function standsBehindUnknown(run: Run, marks: readonly Mark[], at: number): boolean {
  const before = marks.slice(0, at).filter((mark) => !(mark.kind === 'count' && mark.count.article));
  if (before.pop()?.kind !== 'preposition' || !run.tellsInSentence) return false;
  const head = before.findLastIndex(({ kind }) => kind !== 'unknown');
  const gap = before[head];
  return head < before.length - 1 && gap?.kind === 'break' && gap.strength === 'comma';
}

export function hearPlants(
  run: Run,
  mark: MarkOf<'plant' | 'plants'>,
  marks: readonly Mark[],
  at: number,
  placed: Placed,
): void {
  const { takesBack } = run.waiting;
  const unread = standsBehindUnknown(run, marks, at);
  run.flush(true);
  run.waiting = nothingWaits();
  const behind = marks[at + 1];
  const strength = behind?.kind === 'break' ? behind.strength : null;
  run.pushPlants({
    plants: mark.kind === 'plant' ? [mark.plant] : mark.which,
    each: mark.kind === 'plants' && mark.each,
    placed: placed !== 'no',
    comma: strength === 'comma',
    sign: strength === 'colon' || strength === 'dash' || strength === 'line' ? strength : null,
    joinedBy: unread ? null : run.joinedBy,
    unread,
    takesBack,
    span: mark.span,
  });
}

/** "3 griseos on the same": the plant said last. False where there is none. */
export function hearSamePlant(run: Run, span: Span): boolean {
  const before = run.said.findLast((item) => item.kind === 'plants');
  const { touching } = run;
  // "B. pensylvanicus 2 on same"
  const counted = touching?.type === 'count' && run.heads.some(({ bee }) => bee !== null);
  if (before?.kind !== 'plants' || (touching?.bee == null && !counted)) return false;
  run.flush(true);
  run.waiting = nothingWaits();
  run.pushPlants({ plants: before.plants, each: before.each, span });
  return true;
}
