/** A message that was changed after it had been read. */
import { readWish } from '../answers/index.js';
import { say } from '../../shared/wording.js';
import { forAnotherPlace, tell, untell, valueOf } from './fields.js';
import { hear } from './hear.js';
import { recountLive } from './live/index.js';
import { outcome } from './outcome.js';
import type { ToldPlace } from './places.js';
import { briefly } from './summary.js';
import type { Outcome, Report, Scene, Thread } from './types.js';

/**
 * The fields that were told by the message `earlier` are read anew from its new words; null where none were. Words that
 * tell none of them any more are no correction: what was told stays, and that is said.
 */
export function reread(thread: Thread, earlier: string, text: string, scene: Scene): Outcome | null {
  const { report } = thread;
  if (report === null) return null;
  if (report.live !== null) return recountLive(thread, { ...report, live: report.live }, earlier, text, scene);
  const fields = Object.entries(report.fields)
    .filter(([, told]) => told.message === earlier)
    .map(([field]) => field);
  if (report.plantsMessage === earlier) fields.push('plants');
  if (report.tallyMessage === earlier) fields.push('tally');
  if (fields.length === 0) return null;
  const without = fields.reduce(untell, report);
  // told by the message as before, so that a second change of it is read again too
  const same: Scene = { ...scene, message: { ...scene.message, id: earlier } };
  const wish = readWish(text, scene.survey.words);
  if (wish?.wish === 'remark' && fields.includes('remark'))
    return again(thread, tell(report, 'remark', wish.what, wish.what, earlier), ['remark'], scene);
  const heard = hear(without, text, fields, same, true);
  const isRetold = fields.some(
    (name) => heard.taken.includes(name) || heard.report.doubts.some(({ field }) => field === name),
  );
  if (!isRetold) return { thread, said: [say(scene.survey.wording, 'edited-too-late')], effects: [], then: 'rest' };
  return again(thread, withPrivateOf(report, heard.report, earlier), heard.taken, scene);
}

const again = (thread: Thread, report: Report, taken: readonly string[], scene: Scene): Outcome =>
  outcome(thread, report, [say(scene.survey.wording, 'reread'), briefly(taken, report, scene)]);

/** What another message said of a place is not said of another one. */
function withPrivateOf(before: Report, report: Report, earlier: string): Report {
  const place = valueOf<ToldPlace>(report, 'place');
  const isOwn = report.fields['private']?.message === earlier;
  return place === null || isOwn ? report : forAnotherPlace(report, before, place);
}
