/** "Throw this report away for good?": a yes, a no, or a queen that came meanwhile. */
import { readYesNo, type Wish } from '../answers/index.js';
import { say } from '../../shared/wording.js';
import { noSummaryTimers } from './confirm.js';
import { contextOf } from './hear.js';
import { hearLive, stillLive } from './live/index.js';
import { tellSecond } from './second-watch.js';
import type { Outcome, Scene, Thread } from './types.js';

export function answerThrowAway(thread: Thread, text: string, wish: Wish | null, scene: Scene): Outcome {
  const reading = readYesNo(text, contextOf(scene, thread.report));
  const { wording } = scene.survey;
  if (reading.state === 'sure' && reading.value.answer === 'yes') {
    const gone = thread.report?.stored != null ? 'changes-thrown-away' : 'thrown-away';
    const live = ['five-left', 'time-up', 'left-open'].map((key) => ({ do: 'clear-timer', key }) as const);
    const effects = [...noSummaryTimers, ...live];
    if (thread.report?.second !== undefined) {
      const next = tellSecond(thread, thread.report, thread.report.second, scene);
      return { ...next, said: [say(wording, gone), ...next.said], effects: [...effects, ...next.effects] };
    }
    return { thread: { ...thread, report: null, asking: null }, said: [say(wording, gone)], effects, then: 'rest' };
  }
  const { report } = thread;
  // a queen came meanwhile
  if (report?.live && reading.state !== 'sure')
    return hearLive(thread, { ...report, live: report.live }, text, wish, scene);
  if (report?.live) return stillLive(thread, { ...report, live: report.live }, [], scene);
  return { thread, said: [say(wording, 'kept-it')], effects: [], then: 'ask' };
}
