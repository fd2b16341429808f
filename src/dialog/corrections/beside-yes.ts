/** What is said beside a yes to the summary: "yes, also saw a monarch", "yes, 2 imps", "yes, but it was calm". */
import { namedIn, saysAnyOf } from '../../answers/index.js';
import { corrected, setField } from './correct.js';
import { nextOpen, valueOf } from '../fields.js';
import { contextOf } from '../hear.js';
import { notUnderstood } from '../outcome.js';
import { exampleLine, summaryLines } from '../summary.js';
import type { Outcome, Report, Scene, Thread } from '../types.js';

const REMARK = 'remark';

/**
 * 'same' where it says what is known already, a remark where it says nothing of a watch ("also
 * saw a monarch"), else a correction.
 */
export function besideYes(thread: Thread, report: Report, typed: string, scene: Scene): Outcome | 'same' {
  const done = corrected(thread, report, typed, scene);
  const { bees, plants } = namedIn(typed, contextOf(scene, report));
  const line = exampleLine(report, scene);
  const notUnderstoodAtAll = notUnderstood(thread, 'not-a-change', typed, scene, { line }).said.join();
  const isRemark =
    done.said.join() === notUnderstoodAtAll &&
    !/[\d?]/.test(typed) &&
    // "yes one"
    !saysAnyOf(typed, Object.keys(scene.survey.words.numbers.units)) &&
    bees.length + plants.length === 0 &&
    !saysAnyOf(typed, scene.survey.words.yesNo.topics);
  if (isRemark) {
    const before = valueOf<string>(report, REMARK);
    return setField(thread, report, { field: REMARK, value: before === null ? typed : `${before}; ${typed}` }, scene);
  }
  const after = done.thread.report;
  const isSame =
    done.then === 'ask' &&
    done.said.length === 0 &&
    after !== null &&
    nextOpen(after, scene) === null &&
    summaryLines(after, scene).join('\n') === summaryLines(report, scene).join('\n');
  return isSame ? 'same' : done;
}
