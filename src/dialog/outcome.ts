/** What an answer came to, in its two simplest forms. */
import type { Ask } from '../../shared/phrases.js';
import { fill } from '../../shared/wording.js';
import { withReport } from './thread.js';
import type { Outcome, Report, Scene, Thread } from './types.js';

export const outcome = (
  thread: Thread,
  report: Report,
  said: readonly (string | null)[] = [],
  then: Outcome['then'] = 'ask',
): Outcome => ({
  thread: withReport(thread, report),
  said: said.filter((text) => text !== null),
  effects: [],
  then,
});

/** Says what was not understood; the same is still asked. */
export function notUnderstood(
  thread: Thread,
  ask: Ask,
  text: string,
  scene: Scene,
  values: Readonly<Record<string, number>> = {},
): Outcome {
  const { wording } = scene.survey;
  const typed = text.length > 60 ? `${text.slice(0, 57)}…` : text;
  return {
    thread,
    said: [fill(wording, wording.asks[ask], { typed, offer: '', ...values })],
    effects: [],
    then: 'rest',
  };
}
