/** One text as the answer to a question of the dialog. */
import { fold, readCount, readYesNo, saysAnyOf, type Context } from '../answers/index.js';
import type { Ask } from '../../shared/phrases.js';
import { fill, say } from '../../shared/wording.js';
import { nextOpen } from './fields.js';
import { contextOf, hear } from './hear.js';
import { notUnderstood, outcome } from './outcome.js';
import { answerTotal } from './respond-tally.js';
import { briefly, labelOfField } from './summary.js';
import { changed } from './thread.js';
import type { Asking, Outcome, Report, Scene, Thread } from './types.js';

/** The question as a whole: takes what it can, says it back, goes on with what is still open. */
export function answerQuestion(
  thread: Thread,
  report: Report,
  asking: Asking & { kind: 'question' },
  text: string,
  scene: Scene,
): Outcome {
  if (report.plantsOpen && asking.fields.includes('plants') && saysNo(text, contextOf(scene, report))) {
    return outcome(thread, changed(report, { plantsOpen: false }));
  }
  const isAskedAlone = asking.fields.every((field) => scene.survey.dialog.fields[field]?.optional === true);
  const heard = hear(report, text, asking.fields, scene, asking.again);
  const isOpen = (field: string): boolean =>
    heard.report.fields[field] === undefined && !heard.report.doubts.some((doubt) => doubt.field === field);
  const skipped = unknownAmong(asking.fields, text, scene).filter(isOpen);
  if (isAskedAlone && !asking.fields.some((field) => heard.taken.includes(field))) {
    const without = leftOut(report, asking.fields);
    const next = nextOpen(without, scene);
    // "bluebells 120": what comes next is told already
    if (saysNo(text, contextOf(scene, report))) return outcome(thread, without);
    const answered = next?.kind === 'question' ? answerQuestion(thread, without, next, text, scene) : null;
    if (answered !== null)
      return answered.thread === thread ? notUnderstood(thread, 'not-that', text, scene) : answered;
  }
  if (!heard.understood && skipped.length === 0) {
    const total = asking.fields.includes('tally') ? answerTotal(thread, report, text, scene) : null;
    if (total) return total;
    const earlier = correctEarlier(thread, report, asking.question, text, scene);
    if (earlier) return earlier;
    return notUnderstood(thread, tooLong(heard.ask, text) ? 'not-that' : (heard.ask ?? 'not-that'), text, scene);
  }
  const done = changed(heard.report, {
    asked: [...heard.report.asked.filter((question) => question !== asking.question), asking.question],
    skipped: [...new Set([...heard.report.skipped, ...skipped])],
  });
  const labels = skipped.map((field) => labelOfField(field, scene)).join(', ');
  const said = skipped.length === 0 ? null : say(scene.survey.wording, 'left-out', { field: labels });
  return { ...outcome(thread, done, [missed(heard, text, scene), said]), echo: briefly(heard.taken, done, scene) };
}

/** "I don't have a thermometer": what may be left out and is not known, whatever else is told. */
function unknownAmong(fields: readonly string[], text: string, { survey }: Scene): string[] {
  const { unknownOf } = survey.words.wishes;
  return fields.filter(
    (field) => survey.dialog.fields[field]?.skippable === true && saysAnyOf(text, unknownOf[field] ?? []),
  );
}

/** What is asked once by itself and not told then is not asked again. */
const leftOut = (report: Report, fields: readonly string[]): Report =>
  changed(report, {
    skipped: [...report.skipped, ...fields.filter((field) => report.fields[field] === undefined)],
  });

/** "Actually make that 66" when the next question stands already: it is about the answer before. */
function correctEarlier(thread: Thread, report: Report, question: string, text: string, scene: Scene): Outcome | null {
  const { hedges } = scene.survey.words;
  const folded = fold(text);
  const leads = hedges.correcting.filter(
    (word) => folded.trim().startsWith(`${word} `) || folded.includes(` ${word} `),
  );
  if (leads.length === 0) return null;
  const { dialog } = scene.survey;
  const before = report.asked.filter((name) => name !== question).at(-1);
  const fields = dialog.questions.find((entry) => entry.question === before)?.fields ?? [];
  const heard = hear(report, text, fields, scene, true);
  return heard.taken.length === 0
    ? null
    : { ...outcome(thread, heard.report), echo: briefly(heard.taken, heard.report, scene) };
}

/** The longest message of a phone thread. */
const LONGEST_MESSAGE = 4096;

/** A reader of one answer takes less than a message may hold: that such a one was sent is no mistake of theirs. */
const tooLong = (ask: Ask | null, text: string): boolean => ask === 'too-long' && text.length <= LONGEST_MESSAGE;

/** What was said of a field and cannot be, where others were taken; that nothing was said of it is no such word. */
function missed({ ask }: { ask: Ask | null }, text: string, { survey }: Scene): string | null {
  if (ask === null || /^no-|-no-|-unknown$|-unclear$|^not-that$|^too-long$/.test(ask)) return null;
  return fill(survey.wording, survey.wording.asks[ask], { typed: text, offer: '' });
}

/** "No" and "none": no other flowers. */
function saysNo(text: string, context: Context): boolean {
  const yesNo = readYesNo(text, context);
  if (yesNo.state === 'sure') return yesNo.value.answer === 'no' && yesNo.value.rest === null;
  const count = readCount(text, { ...context, of: 'flowers' });
  return count.state === 'sure' && count.value.value === 0;
}
