/** A message that was changed after it had been read. */
import { say } from '../../shared/wording.js';
import { untell } from './fields.js';
import { hear } from './hear.js';
import { recountLive } from './live/index.js';
import { outcome } from './outcome.js';
import { briefly } from './summary.js';
import type { Outcome, Scene, Thread } from './types.js';

/** The fields that were told by the message `earlier` are read anew from its new words; null where none were. */
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
  const heard = hear(without, text, fields, same, true);
  return outcome(thread, heard.report, [
    say(scene.survey.wording, 'reread'),
    briefly(heard.taken, heard.report, scene),
  ]);
}
