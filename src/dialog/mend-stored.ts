/** Words about a watch that is stored already: whether they tell another one, and the watch opened with what they correct. */
import { readWish, readYesNo, type Wish } from '../answers/index.js';
import { showDay } from '../../shared/display.js';
import type { Watch } from '../../shared/record.js';
import { openWatch } from './begin.js';
import { correct } from './corrections/correct.js';
import { contextOf, hear } from './hear.js';
import { summaryLines } from './summary.js';
import { newReport } from './thread.js';
import { answerWish } from './wish.js';
import type { Outcome, Scene, Thread } from './types.js';

/** What is about the watch it is said to, and means something without a correction. */
const OF_A_WATCH: ReadonlySet<Wish['wish']> = new Set<Wish['wish']>(['remark', 'practice', 'real']);

/** How the watch is named in a question. */
export const aboutOf = ({ number, date }: Watch, { survey, local }: Scene) => ({
  number,
  day: showDay(date, survey.wording.locale, local.date),
});

/** When and something else of a watch: another one is told, whatever message the reply was written under. */
export function tellsAnother(text: string, scene: Scene): boolean {
  const { taken } = hear(newReport('', scene.message), text, [], scene);
  return taken.includes('times') && taken.length > 1;
}

/** The watch opened with the correction that the text is; null where it corrects nothing. */
export function mend(thread: Thread, watch: Watch, text: string, scene: Scene): Outcome | null {
  const opened = openWatch(thread, watch, scene);
  const { report } = opened.thread;
  if (report === null) return null;
  const reading = readYesNo(text, contextOf(scene, report));
  const rest = reading.state === 'sure' ? (reading.value.rest ?? text) : text;
  const wish = readWish(text, scene.survey.words);
  const done =
    (wish !== null && OF_A_WATCH.has(wish.wish) ? answerWish(opened.thread, wish, scene) : null) ??
    correct(opened.thread, report, rest, scene);
  const after = done.thread.report;
  if (after === null) return null;
  const isRead =
    after.doubts.length > 0 ||
    after.practice !== report.practice ||
    summaryLines(after, scene).join('\n') !== summaryLines(report, scene).join('\n');
  return isRead ? { ...done, said: [...opened.said, ...done.said] } : null;
}
