/** Hears a tally mark by mark and gathers what was said: the heads of each run, its rows, the plants beside them. */
import { headOf } from './heads.js';
import {
  hearBee,
  hearCannotTell,
  hearDoubtful,
  hearPollen,
  hearQueens,
  hearRole,
  hearUnsettling,
  hearWorker,
} from './hearing-bees.js';
import { hearCount, hearPause, hearPlants, hearSamePlant, hearUnknown } from './hearing-places.js';
import { isCountedBehind, nextMeaning } from './looking-on.js';
import type { Mark } from './mark.js';
import { Run } from './run.js';
import type { Said, TakesBack } from './said.js';
import { nothingWaits } from './waiting.js';

export function saidIn(marks: readonly Mark[]): readonly Said[] {
  const run = new Run();
  marks.forEach((mark, at) => hear(run, marks, mark, at));
  run.flush();
  return run.said;
}

function hear(run: Run, marks: readonly Mark[], mark: Mark, at: number): void {
  const { placed } = run;
  if (mark.kind === 'count') {
    hearCount(run, mark, marks, at, placed);
    return;
  }
  run.placed = 'no';
  switch (mark.kind) {
    case 'break':
      // "the bees do not read lists: two brown-belted"
      if (mark.strength !== 'comma' && mark.strength !== 'open') run.waiting.denied = false;
      hearPause(run, mark);
      return;
    case 'preposition':
      run.placed = mark.strong ? 'firmly' : 'loosely';
      return;
    case 'unknown':
      hearUnknown(run, mark.span, marks, at, placed);
      return;
    case 'plant':
    case 'plants':
      hearPlants(run, mark, marks, at, placed);
      break;
    case 'bee':
      hearBee(run, mark);
      break;
    case 'cannot-tell':
      hearCannotTell(run, mark.span, marks, at);
      break;
    case 'same':
    case 'same-one':
      if ((placed !== 'no' || marks[at + 1]?.kind === 'thing') && hearSamePlant(run, mark.span)) break;
      hearRole(run, mark.kind, mark.span);
      break;
    case 'zero':
    case 'another':
    case 'same-ones':
      hearRole(run, mark.kind, mark.span);
      break;
    case 'moved-on':
      // "2 imps on the phlox, one of them then went to the plum"
      if (run.openCount) run.openCount.role = 'same-one';
      // "1 half-black. she went to the plum": her first plant
      else if (run.said.some(({ kind }) => kind === 'plants')) run.take(headOf('role', mark.span)).role = 'same-one';
      else if (run.last) run.last.tours = true;
      run.placed = 'firmly';
      break;
    case 'insect':
      run.take(headOf('insect', mark.span));
      break;
    case 'queens':
      hearQueens(run, mark);
      break;
    case 'worker':
      hearWorker(run, mark, marks[at + 1]);
      break;
    case 'pollen':
    case 'no-pollen':
      hearPollen(run, mark.kind === 'pollen', marks, at);
      break;
    case 'each':
      if (run.last) run.last.each = true;
      else run.waiting.each = true;
      break;
    case 'total':
      if (run.touching && run.touching.type !== 'role') run.touching.total = true;
      else run.waiting.total = true;
      break;
    case 'all-bees':
      run.waiting.all = true;
      run.waiting.allNumber = mark.number;
      break;
    case 'of-them':
      if (run.openCount) run.openCount.ofThem = true;
      break;
    case 'says':
    case 'concludes':
      run.waiting.again = mark.kind;
      break;
    case 'doubtful':
      hearDoubtful(run, mark, marks, at);
      break;
    case 'mostly':
      if (nextMeaning(marks, at)?.kind === 'bee' && !isCountedBehind(marks, at)) run.waiting.uncertain = true;
      break;
    case 'inexact':
      if (run.touching) run.touching.uncertain = true;
      break;
    case 'unsettling':
      hearUnsettling(run);
      break;
    case 'denies':
      run.waiting.denied = true;
      break;
    case 'takes-back':
    case 'takes-back-weakly': {
      const takesBack: TakesBack = mark.kind === 'takes-back' ? 'strongly' : 'weakly';
      run.waiting = { ...nothingWaits(), gap: 'comma', takesBack };
      break;
    }
    case 'nothing-else':
      run.flush();
      run.said.push({ kind: 'nothing-else', span: mark.span });
      break;
    case 'that-is-all':
    case 'thing':
      break;
  }
  run.joinedBy = null;
}
