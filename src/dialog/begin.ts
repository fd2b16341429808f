/**
 * A report is begun: the first one, one beside another that is put aside for it, a stored watch opened again, or one with
 * the clock running.
 */
import type { Watch } from '../../shared/record.js';
import { say } from '../../shared/wording.js';
import { startLive } from './live/index.js';
import { reportOf } from './store-watch.js';
import { isEmpty, newReport } from './thread.js';
import type { Outcome, Report, Scene, Thread } from './types.js';

/** A fresh report, with the photographs that waited for it. */
export function reportFor(thread: Thread, scene: Scene): Report {
  return { ...newReport(scene.history.fresh.report, scene.message), photographs: thread.photographs };
}

/** The thread with a report to tell into. */
export const begun = (thread: Thread, scene: Scene): Thread =>
  thread.report === null ? { ...thread, report: reportFor(thread, scene), photographs: [] } : thread;

/** Puts a report that holds something aside, so that another can be the current one. */
export function aside(thread: Thread): Thread {
  const { report } = thread;
  return report === null || isEmpty(report)
    ? { ...thread, report: null }
    : { ...thread, report: null, parked: [...thread.parked, report] };
}

/** A stored watch opened again, to be mended. */
export const openWatch = (thread: Thread, watch: Watch, scene: Scene): Outcome => ({
  thread: { ...aside(thread), report: reportOf(watch, scene), asking: { kind: 'confirm' } },
  said: [say(scene.survey.wording, 'opened', { number: watch.number })],
  effects: [],
  then: 'repeat',
});

/** A new report, whatever the current one holds. */
export function beginAnother(thread: Thread, scene: Scene): Outcome {
  const put = aside(thread);
  const said = put.parked.length > thread.parked.length ? [say(scene.survey.wording, 'put-aside')] : [];
  return { thread: begun(put, scene), said, effects: [], then: 'ask' };
}

/**
 * Starts the clock: for what was told of the patch before it, else for a new report beside one that has its times, or is
 * stored already. Null by mail, where a word among answers is no wish for a clock.
 */
export function startWatch(thread: Thread, scene: Scene): Outcome | null {
  const { report } = thread;
  if (report === null || isEmpty(report)) return startIn(begun(thread, scene), scene);
  if (scene.message.manner === 'all') return null;
  if (report.stored === null && report.fields['times'] === undefined) return startIn(thread, scene);
  const { thread: another, said } = beginAnother(thread, scene);
  const started = startIn(another, scene);
  return { ...started, said: [...said, ...started.said] };
}

const startIn = (thread: Thread, scene: Scene): Outcome =>
  startLive(thread, thread.report ?? reportFor(thread, scene), scene);
