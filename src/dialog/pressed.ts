/** Whether a pressed button still means what it meant when it was shown, and what is said where it does not. */
import { say } from '../../shared/wording.js';
import { meansTheSame, staleInLive } from './live/index.js';
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

/** Changes nothing, and says so. */
export function stale(thread: Thread, scene: Scene): Outcome {
  const { report, asking } = thread;
  if (report?.live && asking?.kind === 'live') return staleInLive(thread, { ...report, live: report.live }, scene);
  return { thread, said: [say(scene.survey.wording, 'stale-button')], effects: [], then: 'rest' };
}
