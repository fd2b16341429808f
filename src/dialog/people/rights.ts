/** What people may ask about their own data: all of it in a file, or to be forgotten. Each after a second yes. */
import { readWish, readYesNo, type Wish } from '../../answers/index.js';
import { say } from '../../../shared/wording.js';
import { contextOf } from '../hear.js';
import { stillLive } from '../live/index.js';
import { isEmpty } from '../thread.js';
import type { Asking, Outcome, Scene, Thread } from '../types.js';

export type Right = 'give' | 'forget';
type AskingRight = Asking & { readonly kind: 'right' };

/** Which right is asked for; null for any other wish. */
export const rightOf = (wish: Wish | null): Right | null =>
  wish?.wish === 'my-data' ? 'give' : wish?.wish === 'forget-me' ? 'forget' : null;

/**
 * Asks for the second yes; where the channel does not vouch for who writes, says so. What was asked comes back after it,
 * and a clock that runs goes on.
 */
export function askRight(thread: Thread, right: Right, scene: Scene): Outcome {
  const { wording } = scene.survey;
  if (!scene.message.proven) return { thread, said: [say(wording, 'right-not-proven')], effects: [], then: 'rest' };
  const { asking } = thread;
  const before = asking?.kind === 'right' ? (asking.before ?? null) : asking;
  return { thread: { ...thread, asking: { kind: 'right', right, before } }, said: [], effects: [], then: 'repeat' };
}

/** Only a plain yes does it. Words that are no answer are about something else: `readOn` takes them as if not asked. */
export function answerRight(
  thread: Thread,
  { right, before = null }: AskingRight,
  text: string,
  scene: Scene,
  readOn: (thread: Thread, text: string) => Outcome,
): Outcome {
  const { wording, words } = scene.survey;
  const reading = readYesNo(text, contextOf(scene, null));
  const rest = reading.state === 'sure' ? reading.value.rest : reading.state === 'none' ? text : null;
  const still: Thread = { ...thread, asking: before };
  const again = rightOf(readWish(rest ?? '', words));
  // "yes, delete everything"
  if (reading.state === 'sure' && reading.value.answer === 'yes' && (rest === null || again === right)) {
    if (right === 'give') return { ...goingOn(still, [], scene), effects: [{ do: 'give-data' }] };
    const watched = scene.history.lastWatches.length > 0;
    const isStranger = scene.history.person?.consent == null;
    const said = say(wording, isStranger ? 'forgotten-before-consent' : 'forgotten', { watched });
    return { thread: still, said: [said], effects: [{ do: 'forget-person' }], then: 'rest' };
  }
  if (again !== null) return askRight(still, again, scene);
  const notDone = say(wording, 'right-not-done');
  if (rest === null) return goingOn(still, [notDone], scene);
  const { slot: _slot, silent: _silent, ...read } = readOn(still, rest);
  const { report, held } = read.thread;
  const tellsNothing =
    still.report === null && held.length === still.held.length && read.effects.length === 0 && isEmpty(report);
  return tellsNothing ? goingOn(still, [notDone], scene) : { ...read, said: [notDone, ...read.said] };
}

/** What was asked before comes back. */
function goingOn(thread: Thread, said: readonly string[], scene: Scene): Outcome {
  const { report, asking } = thread;
  if (report?.live) return stillLive(thread, { ...report, live: report.live }, said, scene);
  if (asking !== null) return { thread, said, effects: [], then: 'repeat' };
  return { thread, said, effects: [], then: report === null ? 'rest' : 'ask' };
}
