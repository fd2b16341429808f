/** Whether a pressed button still means what it meant when it was shown, and what is said where it does not. */
import { choiceOf } from '../../shared/button-text.js';
import { say } from '../../shared/wording.js';
import { questionText } from './ask.js';
import { liveWords, meansTheSame, staleInLive } from './live/index.js';
import { revisionOf } from './reply.js';
import type { Outcome, Scene, Thread } from './types.js';

export function isCurrent(
  thread: Thread,
  pressed: { readonly report: string; readonly revision: number; readonly words: string },
  scene: Scene,
): boolean {
  const { report } = thread;
  if ((report?.id ?? '') !== pressed.report) return false;
  if (revisionOf(thread) === pressed.revision) return true;
  return report?.live != null && meansTheSame({ ...report, live: report.live }, pressed.words, scene);
}

/** The words of a pressed button, which may stand shortened on it. */
export function wholeWords(thread: Thread, pressed: string, scene: Scene): string {
  const { asking, report } = thread;
  if (asking === null || !pressed.includes('…')) return pressed;
  if (report?.live && asking.kind === 'live') return liveWords({ ...report, live: report.live }, pressed, scene);
  return choiceOf(pressed, questionText(asking, thread, scene).choices);
}

/** Changes nothing, and says so. */
export function stale(thread: Thread, scene: Scene): Outcome {
  const { report, asking } = thread;
  if (report?.live && asking?.kind === 'live') return staleInLive(thread, { ...report, live: report.live }, scene);
  return { thread, said: [say(scene.survey.wording, 'stale-button')], effects: [], then: 'rest' };
}
