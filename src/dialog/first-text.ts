/** The first text of a report: whatever it tells of a watch. */
import { say } from '../../shared/wording.js';
import { openFields } from './fields.js';
import { hear } from './hear.js';
import { outcome } from './outcome.js';
import { briefly } from './summary.js';
import { changed } from './thread.js';
import type { Outcome, Report, Scene, Thread } from './types.js';

/** Read as the answer to the dialog's first question, then for all else it says. */
export function tellAll(thread: Thread, report: Report, text: string, scene: Scene): Outcome {
  const first = scene.survey.dialog.questions[0]!;
  const heard = hear(report, text, first.fields, scene);
  if (!heard.understood) return outcome(thread, report, [], 'ask');
  const asked = openFields(first.question, heard.report, scene).length < first.fields.length ? [first.question] : [];
  return { ...outcome(thread, changed(heard.report, { asked })), echo: briefly(heard.taken, heard.report, scene) };
}

/** A text out of the blue begins a report; words that tell nothing of a watch are met with the first question. */
export function firstText(thread: Thread, report: Report, text: string, scene: Scene): Outcome {
  const told = tellAll(thread, report, text, scene);
  return told.said.length > 0 || told.thread.report !== report
    ? told
    : { ...told, said: [say(scene.survey.wording, 'hello')] };
}
