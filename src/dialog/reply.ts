/** What is sent back: what was said, the next question and its buttons in one message, with what tells them from older ones. */
import { Temporal } from 'temporal-polyfill';
import type { Reply } from '../../shared/message.js';
import { questionText } from './ask.js';
import { summaryTimers } from './confirm.js';
import { applies, nextOpen, openFields } from './fields.js';
import { liveChoices } from './live/index.js';
import { PHOTOGRAPH_PLACE, wantsPictures } from './photographs.js';
import { summaryLines } from './summary.js';
import { changed, withReport } from './thread.js';
import type { Asking, Effect, Outcome, Scene, Step, Thread } from './types.js';
import { begun } from './begin.js';

/** What can be asked while there is no report. */
const ASKED_WITHOUT_REPORT = [
  'consent',
  'name',
  'mail',
  'join-photograph',
  'give',
  'forget',
  'licence',
  'name-shown',
  'place-name',
  'open-replied',
  'open-stored',
  'remind',
];

/**
 * Tells a button of the present question from an older one: raised with each change of the report and each new
 * question. Without a report, a number of its own for each question.
 */
export function revisionOf({ report, asking }: Thread): number {
  if (report !== null) return report.revision;
  if (asking === null) return 0;
  const asked = asking.kind === 'person' ? asking.field : asking.kind === 'right' ? asking.right : asking.kind;
  return 1 + ASKED_WITHOUT_REPORT.indexOf(asked);
}

/** Adds the next question to what was said, and puts both into one message. */
export function reply(
  before: Thread,
  { thread: heard, said, echo, effects, then, silent, slot }: Outcome,
  scene: Scene,
): Step {
  const { message } = scene;
  // a changed message has the moment at which it was first sent
  const isLater = before.lastAt === null || Temporal.Instant.compare(message.at, before.lastAt) > 0;
  let thread: Thread = message.what.kind === 'time' || !isLater ? heard : { ...heard, lastAt: message.at };
  const all = [...effects];
  let choices: readonly string[] = [];
  const texts = [...said];
  if (then === 'ask') {
    thread = begun(thread, scene);
    thread = { ...thread, asking: nextAsking(thread, scene) };
  }
  // the offer is made once, which is kept with the person; it is not repeated, nor brought back
  const isOffered = effects.some((effect) => effect.do === 'keep-person');
  if (thread.asking?.kind === 'remind' && !isOffered) thread = { ...thread, asking: null };
  const { asking, report } = thread;
  if (echo != null && asking?.kind !== 'confirm') texts.push(echo);
  if (report?.live && asking?.kind === 'live') {
    // not when five minutes are left: those of the last acknowledgement stand right above
    const isTold = message.what.kind !== 'time' || report.live.pausedAt !== null;
    choices = isTold ? liveChoices({ ...report, live: report.live }, scene) : [];
  } else if (then !== 'rest' && asking !== null) {
    const isSame = asking.kind === 'confirm' && readsAsBefore(before, thread, scene);
    const shown = isSame && report !== null ? withReport(thread, { ...report, summarised: false }) : thread;
    const question = questionText(asking, shown, scene);
    if (question.text !== '') texts.push(question.text);
    choices = question.choices;
    if (asking.kind === 'confirm' && report !== null) {
      if (report.stored === null) all.push(...summaryTimers(report, scene));
      const pictures = wantsPictures(report, scene) ? { picturesWanted: 'asked' as const } : {};
      thread = withReport(thread, changed(report, { summarised: true, ...pictures }));
    }
  }
  thread = withNewQuestion(before, thread);
  const replies: Reply[] =
    texts.length === 0
      ? []
      : [
          {
            text: texts.join('\n'),
            choices: [...choices],
            silent: silent === true,
            report: thread.report?.id ?? null,
            revision: revisionOf(thread),
            ...watchSaid(thread, all),
            ...(slot === undefined ? {} : { slot }),
            ...(offersPicturesPlace(thread) ? { erase: true } : {}),
          },
        ];
  return { thread, replies, effects: all };
}

/** The stored watch that is being mended, or was stored or changed by this step. */
function watchSaid({ report }: Thread, effects: readonly Effect[]): Pick<Reply, 'watch'> {
  const kept = effects.flatMap((effect) => (effect.do === 'keep-watch' ? [effect.watch.id] : []));
  const watch = report?.stored?.id ?? kept.at(-1);
  return watch === undefined ? {} : { watch };
}

/** A summary shown once more, not because it was changed. */
function readsAsBefore(before: Thread, { report }: Thread, scene: Scene): boolean {
  if (report?.summarised !== true || before.report?.id !== report.id) return false;
  return summaryLines(before.report, scene).join('\n') === summaryLines(report, scene).join('\n');
}

/** The place of a picture is not kept in what was said either, before a yes. */
const offersPicturesPlace = ({ asking, report }: Thread): boolean =>
  asking?.kind === 'doubt' && report?.doubts[0]?.ask === PHOTOGRAPH_PLACE;

/** Buttons of another question about the same report become stale: its “yes” meant something else. */
function withNewQuestion(before: Thread, thread: Thread): Thread {
  const { report, asking } = thread;
  if (report === null || report.id !== before.report?.id || report.revision !== before.report.revision) return thread;
  const isSame = JSON.stringify(asking) === JSON.stringify(before.asking);
  return isSame ? thread : withReport(thread, changed(report, {}));
}

/** What is asked next; the manner of mail asks everything that is open in one list. */
export function nextAsking(thread: Thread, scene: Scene): Asking {
  const { report } = thread;
  if (report === null) throw new Error('There is nothing to ask without a report.');
  const next = nextOpen(report, scene);
  if (next === null) return { kind: 'confirm' };
  if (scene.message.manner === 'one' || next.kind !== 'question') return next;
  const items = scene.survey.dialog.questions
    .map(({ question }) => ({
      question,
      fields: openFields(question, report, scene).filter((field) => applies(field, report, scene)),
    }))
    .filter(({ fields }) => fields.length > 0);
  return items.length > 1 ? { kind: 'list', items } : next;
}
