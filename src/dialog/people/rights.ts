/** What people may ask about their own data: all of it in a file, or to be forgotten. Each after a second yes. */
import { readYesNo } from '../../answers/index.js';
import { say } from '../../../shared/wording.js';
import { contextOf } from '../hear.js';
import type { Outcome, Scene, Thread } from '../types.js';

export type Right = 'give' | 'forget';

/** Asks for the second yes; where the channel does not vouch for who writes, says so. */
export function askRight(thread: Thread, right: Right, scene: Scene): Outcome {
  const { wording } = scene.survey;
  if (!scene.message.proven) return { thread, said: [say(wording, 'right-not-proven')], effects: [], then: 'rest' };
  return { thread: { ...thread, asking: { kind: 'right', right } }, said: [], effects: [], then: 'repeat' };
}

export function answerRight(thread: Thread, right: Right, text: string, scene: Scene): Outcome {
  const { wording } = scene.survey;
  const reading = readYesNo(text, contextOf(scene, null));
  const agreed = reading.state === 'sure' && reading.value.answer === 'yes' && reading.value.rest === null;
  const still: Thread = { ...thread, asking: null };
  if (!agreed) {
    return {
      thread: still,
      said: [say(wording, 'right-not-done')],
      effects: [],
      then: still.report === null ? 'rest' : 'ask',
    };
  }
  if (right === 'give') {
    const then = still.report === null ? 'rest' : 'ask';
    return { thread: still, said: [], effects: [{ do: 'give-data' }], then };
  }
  return { thread: still, said: [say(wording, 'forgotten')], effects: [{ do: 'forget-person' }], then: 'rest' };
}
