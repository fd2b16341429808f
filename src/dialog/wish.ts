/** What people ask of the conversation itself. Null where, at this point, the words are an answer after all. */
import { saysAnyOf, type Wish } from '../answers/index.js';
import { fill, say } from '../../shared/wording.js';
import { beginAnother, begun, openWatch, reportFor, startWatch } from './begin.js';
import { correctByWish } from './corrections/correct.js';
import { applies, nextOpen, tell } from './fields.js';
import { samePlace } from './hear-place.js';
import { askForCode } from './people/joining.js';
import { chooseLicence } from './people/licence.js';
import { chooseNameShown } from './people/name-shown.js';
import { personOf } from './people/person-of.js';
import { startReminders, stopReminders } from './people/reminders.js';
import { askRight } from './people/rights.js';
import { outcome } from './outcome.js';
import { answerTo } from './questions.js';
import { photographLines } from './photographs.js';
import { reportOf } from './store-watch.js';
import { exampleLine, labelOfField, shown, summaryLines } from './summary.js';
import { changed, isEmpty } from './thread.js';
import type { Outcome, Report, Scene, Thread } from './types.js';

export function answerWish(thread: Thread, wish: Wish, scene: Scene): Outcome | null {
  const { survey, history } = scene;
  const { wording } = survey;
  const { report, asking } = thread;
  const stay = (said: readonly string[], then: Outcome['then'] = 'rest'): Outcome => ({
    thread,
    said,
    effects: [],
    then,
  });
  switch (wish.wish) {
    case 'help':
      return helpAt(thread, scene);
    case 'example':
      return exampleAt(thread, scene);
    case 'my-data':
      return askRight(thread, 'give', scene);
    case 'forget-me':
      return askRight(thread, 'forget', scene);
    case 'photograph':
      return stay(
        [say(wording, 'photograph-welcome')],
        asking === null || asking.kind === 'confirm' ? 'rest' : 'repeat',
      );
    case 'licences':
      return chooseLicence(thread, null, scene);
    case 'licence':
      return chooseLicence(thread, wish.licence, scene);
    case 'show-name':
      return chooseNameShown(thread, true, scene);
    case 'hide-name':
      return chooseNameShown(thread, false, scene);
    case 'remind-me':
      return startReminders(thread, personOf(scene), scene);
    case 'no-reminders':
      return stopReminders(thread, personOf(scene), scene);
    case 'new-code':
      return askForCode(thread, scene);
    case 'greeting':
      if (report === null && saysAnyOf(wordsOf(scene), survey.words.wishes.thanks))
        return stay([say(wording, 'thanked')]);
      return report === null || isEmpty(report)
        ? { ...stay([]), thread: begun(thread, scene), then: 'ask' }
        : stay([say(wording, 'hello-again')], 'repeat');
    // "not yet" to a question about a report that is begun is its answer
    case 'not-yet': {
      const isEarly = isEmpty(report) && (asking === null || asksWhen(asking) || asking.kind === 'person');
      return isEarly ? stay([answerTo('watch', scene)]) : null;
    }
    case 'new':
      return beginAnother(thread, scene);
    case 'start':
      return startWatch(thread, scene);
    case 'pause':
      return report === null || isEmpty(report) ? stay([say(wording, 'nothing-open')]) : stay([say(wording, 'paused')]);
    case 'go-on':
      return goOn(thread, scene);
    case 'so-far':
      if (report === null || isEmpty(report)) {
        const { watches, target } = history.progress;
        return stay([say(wording, 'progress', { watches, target })]);
      }
      return nextOpen(report, scene) === null
        ? { ...stay([], 'ask') }
        : stay([say(wording, 'so-far'), ...summaryLines(report, scene), ...photographLines(report, scene)], 'repeat');
    case 'change-what':
      return askChange(thread, scene);
    case 'throw-away':
      if (report === null || isEmpty(report)) return stay([say(wording, 'nothing-open')]);
      return { ...stay([], 'repeat'), thread: { ...thread, asking: { kind: 'throw-away' } } };
    case 'practice':
    case 'real': {
      const practice = wish.wish === 'practice';
      const current = report ?? reportFor(thread, scene);
      const said = say(wording, practice ? 'now-practice' : 'now-real');
      return outcome(thread, changed(current, { practice }), [said]);
    }
    case 'fix':
      return openStored(thread, wish.number, scene);
    case 'remark': {
      if (report !== null && !isEmpty(report))
        return outcome(thread, tell(report, 'remark', wish.what, wish.what, scene.message.id), [
          say(wording, 'remark-kept'),
        ]);
      const last = history.lastWatches[0];
      if (last === undefined) return null;
      return outcome(thread, tell(reportOf(last, scene), 'remark', wish.what, wish.what, scene.message.id), [
        say(wording, 'remark-kept'),
      ]);
    }
    default:
      break;
  }
  if (report === null) return null;
  switch (wish.wish) {
    case 'back':
    case 'undo':
      return goBack(thread, report, scene);
    case 'skip':
      if (asksPrivate(asking)) return keptPrivate(thread, report, scene);
      return skip(thread, report, scene);
    case 'unknown':
      if (asksPrivate(asking)) return keptPrivate(thread, report, scene);
      return asking?.kind === 'question' &&
        skippable(asking.fields, scene).length > 0 &&
        !asking.fields.includes('tally')
        ? skip(thread, report, scene)
        : null;
    case 'same-place': {
      if (asking?.kind !== 'question' || !asking.fields.includes('place')) return null;
      const placed = samePlace(report, wordsOf(scene), scene);
      if (placed === null) return stay([say(wording, 'no-last-place')]);
      return outcome(thread, changed(placed, { asked: [...placed.asked, asking.question] }), [
        shown('place', placed, scene),
      ]);
    }
    case 'all-done':
      if (asking?.kind === 'rest') return outcome(thread, changed(report, { restNone: true }));
      return report.plantsOpen && asksPlants(asking) ? outcome(thread, changed(report, { plantsOpen: false })) : null;
    case 'change':
    case 'add':
    case 'take-out':
      return correctByWish(thread, report, wish, scene);
    default:
      return null;
  }
}

/** Something is to be put right, and it is not said what: asked, below what is known where no summary stands right above. */
function askChange(thread: Thread, scene: Scene): Outcome {
  const { wording } = scene.survey;
  const { report, asking } = thread;
  if (report === null || isEmpty(report)) {
    const last = scene.history.lastWatches[0];
    const said =
      last === undefined ? say(wording, 'nothing-open') : say(wording, 'stored-fix', { number: last.number });
    return { thread, said: [said], effects: [], then: asking === null ? 'rest' : 'repeat' };
  }
  const isShown = asking?.kind === 'confirm' || asking?.kind === 'correct';
  const said = isShown ? [] : [say(wording, 'so-far'), ...summaryLines(report, scene)];
  return { thread: { ...thread, asking: { kind: 'correct' } }, said, effects: [], then: 'repeat' };
}

const asksWhen = (asking: Thread['asking']): boolean => asking?.kind === 'question' && asking.fields.includes('date');

const asksPrivate = (asking: Thread['asking']): boolean =>
  asking?.kind === 'question' && asking.fields.length === 1 && asking.fields[0] === 'private';

/** Whether a place is private is not known: taken for private, which publishes the least. */
const keptPrivate = (thread: Thread, report: Report, scene: Scene): Outcome =>
  outcome(thread, tell(report, 'private', true, wordsOf(scene), scene.message.id), [
    say(scene.survey.wording, 'private-careful'),
  ]);

const wordsOf = ({ message: { what } }: Scene): string => (what.kind === 'text' ? what.text : '');

const asksPlants = (asking: Thread['asking']): boolean =>
  asking?.kind === 'question' && asking.fields.includes('plants');

function helpAt(thread: Thread, scene: Scene): Outcome {
  const { wording } = scene.survey;
  const { asking } = thread;
  const own = asking?.kind === 'question' ? wording.questions[asking.question]?.help : undefined;
  const said = [own === undefined ? null : fill(wording, own), say(wording, 'help'), say(wording, 'cautions')];
  return { thread, said: said.filter((text) => text !== null), effects: [], then: asking === null ? 'rest' : 'repeat' };
}

function exampleAt(thread: Thread, scene: Scene): Outcome | null {
  const { wording } = scene.survey;
  const { asking, report } = thread;
  const quiet = (example: string): Outcome => ({
    thread,
    said: [say(wording, 'example', { example: fill(wording, example) })],
    effects: [],
    then: 'rest',
  });
  if (asking?.kind === 'question') {
    const one = asking.fields.length === 1 ? wording.fields[asking.fields[0]!]?.example : undefined;
    const example = one ?? wording.questions[asking.question]?.example;
    return example === undefined ? null : quiet(example);
  }
  if (asking?.kind === 'flowers') return quiet(wording.fields['flowers']?.example ?? '40');
  if (asking?.kind === 'bees-of-total' || asking?.kind === 'rest' || asking?.kind === 'live')
    return quiet(wording.fields['tally']?.example ?? '');
  if (asking?.kind === 'confirm' || asking?.kind === 'correct')
    return quiet(say(wording, 'example-change', { line: report === null ? 1 : exampleLine(report, scene) }));
  return helpAt(thread, scene);
}

function goOn(thread: Thread, scene: Scene): Outcome {
  const { wording } = scene.survey;
  const { report, parked } = thread;
  const last = parked.at(-1);
  if (isEmpty(report) && last !== undefined) {
    const back: Thread = { ...thread, report: last, parked: parked.slice(0, -1) };
    return { thread: back, said: [say(wording, 'so-far'), ...summaryLines(last, scene)], effects: [], then: 'ask' };
  }
  if (report === null) return { thread: begun(thread, scene), said: [], effects: [], then: 'ask' };
  return { thread, said: [], effects: [], then: 'ask' };
}

function openStored(thread: Thread, number: number | null, scene: Scene): Outcome {
  const { wording } = scene.survey;
  const watches = scene.history.lastWatches;
  const watch = number === null ? watches[0] : watches.find((candidate) => candidate.number === number);
  if (watch === undefined) {
    const known = watches.map((candidate) => candidate.number).join(', ');
    return { thread, said: [say(wording, 'no-such-watch', { number: number ?? 0, known })], effects: [], then: 'rest' };
  }
  return openWatch(thread, watch, scene);
}

function goBack(thread: Thread, report: Report, scene: Scene): Outcome {
  const { asking } = thread;
  const { fields: known } = scene.survey.dialog;
  // what is asked by itself belongs to the question before
  const isAskedAlone = asking?.kind === 'question' && asking.fields.every((field) => known[field]?.askedAlone === true);
  const current = asking?.kind === 'question' && !isAskedAlone ? asking.question : null;
  const before = report.asked.filter((question) => question !== current).at(-1);
  if (before === undefined)
    return { thread, said: [say(scene.survey.wording, 'nothing-before')], effects: [], then: 'repeat' };
  const fields = (scene.survey.dialog.questions.find(({ question }) => question === before)?.fields ?? []).filter(
    (field) => applies(field, report, scene),
  );
  const told = fields.flatMap((field) => shown(field, report, scene) ?? []).join(' · ');
  const next = changed(report, {
    asked: report.asked.filter((question) => question !== before),
    doubts: report.doubts.filter(({ field }) => !fields.includes(field)),
    restNone: fields.includes('tally') ? false : report.restNone,
  });
  return {
    thread: { ...thread, report: next, asking: { kind: 'question', question: before, fields, again: true } },
    said: told === '' ? [] : [say(scene.survey.wording, 'back-to', { known: told })],
    effects: [],
    then: 'repeat',
  };
}

const skippable = (fields: readonly string[], scene: Scene): string[] =>
  fields.filter((field) => scene.survey.dialog.fields[field]?.skippable === true);

function skip(thread: Thread, report: Report, scene: Scene): Outcome {
  const { asking } = thread;
  const { wording } = scene.survey;
  const doubt = asking?.kind === 'doubt' ? report.doubts[0] : undefined;
  const asked = doubt !== undefined ? [doubt.field] : asking?.kind === 'question' ? asking.fields : [];
  if (doubt?.ask === 'tally-unread-live') return outcome(thread, changed(report, { doubts: report.doubts.slice(1) }));
  const left = skippable(asked, scene);
  if (left.length === 0) return { thread, said: [say(wording, 'cannot-skip')], effects: [], then: 'repeat' };
  const question = asking?.kind === 'question' ? [asking.question] : [];
  const next = changed(report, {
    skipped: [...new Set([...report.skipped, ...left])],
    asked: [...report.asked, ...question],
    doubts: report.doubts.filter(({ field }) => !left.includes(field)),
  });
  return outcome(thread, next, [
    say(wording, 'left-out', { field: left.map((field) => labelOfField(field, scene)).join(', ') }),
  ]);
}
