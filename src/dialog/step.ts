/**
 * One message, one step. Nothing is sent or stored here: replies and effects say what should be. The order of the
 * functions below is the order in which a message is understood.
 */
import { Temporal } from 'temporal-polyfill';
import { fold, readFields, readWish, readYesNo, type Wish } from '../answers/index.js';
import type { History } from '../../shared/history.js';
import type { Message } from '../../shared/message.js';
import type { Survey } from '../../shared/survey.js';
import { say } from '../../shared/wording.js';
import { hearClosing, isFarewell } from './closing.js';
import { answerConfirm } from './confirm.js';
import { correct, correctDoubt } from './corrections/correct.js';
import { reread } from './edited.js';
import { firstText } from './first-text.js';
import { contextOf } from './hear.js';
import { hearCode } from './people/joining.js';
import { answerLicence } from './people/licence.js';
import { answerOpenStored, hearJustStored } from './just-stored.js';
import { hearLive, inLive } from './live/index.js';
import { answerNameShown } from './people/name-shown.js';
import { onPlace } from './on-place.js';
import { open, otherSurvey } from './opening.js';
import { beforeConsent, photographBeforeConsent, placeBeforeConsent } from './people/consent.js';
import { answerPerson } from './people/person.js';
import { answerPlaceName } from './people/place-name.js';
import { answerJoin, takePhotograph, withPhotographs } from './photographs.js';
import { correctMeanwhile } from './corrections/meanwhile.js';
import { notUnderstood, outcome } from './outcome.js';
import { ownWords } from './own-words.js';
import { isCurrent, stale, wholeWords } from './pressed.js';
import { answerTo, questionsIn } from './questions.js';
import { answerOpenReplied, hearReplied, takeRepliedPhotograph } from './replied.js';
import { reply } from './reply.js';
import { answerQuestion } from './respond.js';
import { answerFlowers } from './respond-flowers.js';
import { answerDoubt } from './doubts/respond-doubt.js';
import { answerList } from './respond-list.js';
import { answerBees, answerLinePlant, answerRest } from './respond-tally.js';
import { isEmpty, upToDate } from './thread.js';
import { answerThrowAway } from './throw-away.js';
import { onTime } from './timers.js';
import { answerRemind } from './people/reminders.js';
import { answerRight } from './people/rights.js';
import { begun } from './begin.js';
import { answerWish } from './wish.js';
import type { Asking, Outcome, Report, Scene, Step, Thread } from './types.js';

/** Longest text read at once; a whole watch in prose is about a tenth of it. */
const LONGEST_TEXT = 8000;
export function step(thread: Thread, message: Message, history: History, survey: Survey, now: string): Step {
  const moment = Temporal.Instant.from(message.at).toZonedDateTimeISO(survey.settings.timeZone);
  const local = {
    date: moment.toPlainDate().toString(),
    time: moment.toPlainTime().toString({ smallestUnit: 'minute' }),
  };
  const scene: Scene = { message, history, survey, now, local };
  const { thread: current, told } = upToDate(thread, survey);
  const heard = understand(current, scene);
  const news = told ? [say(survey.wording, 'dialog-changed')] : [];
  return reply(current, { ...heard, said: [...news, ...heard.said] }, scene);
}

function understand(thread: Thread, scene: Scene): Outcome {
  const { what } = scene.message;
  const consented = scene.history.person?.consent != null;
  switch (what.kind) {
    case 'opened':
      return otherSurvey(thread, what.survey, scene) ?? open(thread, consented, scene);
    case 'time':
      return onTime(thread, what.key, what.report, scene);
    case 'pressed': {
      const words = wholeWords(thread, what.words, scene);
      if (isCurrent(thread, { ...what, words }, scene)) return onText(thread, words, consented, scene);
      // of who declined nothing is known, their old question neither
      return consented || thread.asking !== null ? stale(thread, scene) : open(thread, consented, scene);
    }
    case 'text':
      return onText(thread, what.text, consented, scene);
    case 'place':
      if (!consented) return placeBeforeConsent(thread, what, scene);
      return (
        hearReplied(thread, null, null, scene, (back) => onPlace(back, scene, what)) ??
        onPlace(begun(thread, scene), scene, what)
      );
    case 'photo':
      if (!consented) return photographBeforeConsent(thread, what.sha256, scene);
      return takeRepliedPhotograph(thread, what, scene) ?? takePhotograph(thread, what, scene);
    case 'file':
      if (what.problem === 'not-agreed' && !consented) return photographBeforeConsent(thread, null, scene);
      return {
        thread,
        said: [say(scene.survey.wording, NO_PHOTOGRAPH[what.problem ?? 'other'])],
        effects: [],
        // what is asked still is; a whole summary stands right above
        then: thread.report?.live || thread.asking?.kind === 'confirm' ? 'rest' : 'repeat',
        ...inLive(thread.report),
      };
  }
}

const NO_PHOTOGRAPH = {
  'too-big': 'photograph-too-big',
  'not-fetched': 'photograph-not-fetched',
  'not-agreed': 'photograph-not-fetched', // agreed meanwhile
  other: 'not-a-photograph',
} as const;

/** Control characters but line ends, and marks of writing direction, are noise of the channel, not words. */
const NOISE = /(?![\n\r\t\u200d])[\p{Cc}\p{Cf}]/gu;
const clean = (text: string): string => text.replace(NOISE, '');

function onText(thread: Thread, raw: string, consented: boolean, scene: Scene): Outcome {
  const text = clean(ownWords(raw, thread, scene));
  if (text.trim() === '') return { ...notUnderstood(thread, 'empty', '', scene), then: 'repeat' };
  if (text.length > LONGEST_TEXT) return notUnderstood(thread, 'too-long', '', scene);
  const wish = readWish(text, scene.survey.words);
  const mayAsk = wish === null && scene.message.edits === null && thread.report?.live == null;
  const asked = mayAsk ? questionsIn(text, thread, scene) : null;
  if (asked === null) return onWords(thread, text, wish, consented, scene);
  const answered = onWords(thread, asked.rest, readWish(asked.rest, scene.survey.words), consented, scene);
  // the welcome says what a watch is
  const isWelcomed = !consented && thread.lastAt === null;
  const answers = asked.answers.filter((said) => !isWelcomed || said !== answerTo('watch', scene));
  return { ...answered, said: [...answers, ...answered.said] };
}

/** The words of a message but for the questions in it, which were answered. */
function onWords(thread: Thread, text: string, wish: Wish | null, consented: boolean, scene: Scene): Outcome {
  // nothing but questions: what was asked stands
  if (text === '' && (consented || thread.asking?.kind === 'consent'))
    return { thread, said: [], effects: [], then: 'repeat' };
  if (!consented) return beforeConsent(thread, text, wish, scene);
  const { edits } = scene.message;
  if (edits === null) return converse(thread, text, wish, scene);
  return reread(thread, edits, text, scene) ?? readEdited(thread, text, wish, scene);
}

/**
 * A message was changed that told nothing of the current report. The last one is read like a new answer; an older one
 * answered something that is not being asked any more.
 */
function readEdited(thread: Thread, text: string, wish: Wish | null, scene: Scene): Outcome {
  const { lastAt } = thread;
  const isOld = lastAt !== null && Temporal.Instant.compare(scene.message.at, lastAt) < 0;
  if (!isOld) return converse(thread, text, wish, scene);
  return { thread, said: [say(scene.survey.wording, 'edited-too-late')], effects: [], then: 'rest' };
}

/** About the person, not the watch: these are never an answer, whatever is being asked, and the clock may run on. */
const AT_ANY_TIME: ReadonlySet<Wish['wish']> = new Set<Wish['wish']>([
  'licence',
  'licences',
  'show-name',
  'hide-name',
  'remind-me',
  'no-reminders',
  'new-code',
  'my-data',
  'forget-me',
]);

/** Asked of the person, or of what is to become of something: no words under a picture are meant for these. */
const NOT_OF_A_WATCH: ReadonlySet<Asking['kind'] | undefined> = new Set<Asking['kind']>([
  'person',
  'licence',
  'name-shown',
  'place-name',
  'join-photograph',
  'throw-away',
  'right',
  'open-replied',
  'open-stored',
  'remind',
]);

/** Words under a picture that tell of no watch begin none, and answer nothing: the picture is answered. */
function isOnlyCaption({ report, asking }: Thread, text: string, scene: Scene): boolean {
  const { what } = scene.message;
  if (what.kind !== 'text' || what.caption !== true || report?.live != null) return false;
  const isOpen = !isEmpty(report) || (report?.doubts.length ?? 0) > 0;
  if (isOpen && !NOT_OF_A_WATCH.has(asking?.kind)) return false;
  return Object.keys(readFields(text, contextOf(scene, null), []).fields).length === 0;
}

/** A text from somebody who has agreed. */
function converse(before: Thread, text: string, wish: Wish | null, scene: Scene): Outcome {
  const { asking } = before;
  const coded = hearCode(before, scene);
  if (coded) return coded;
  if (wish === null && isOnlyCaption(before, text, scene))
    return { thread: before, said: [], effects: [], then: 'rest' };
  const aside = wish && AT_ANY_TIME.has(wish.wish) ? answerWish(before, wish, scene) : null;
  if (aside) return aside;
  const replied = hearReplied(before, text, wish, scene, (back) => converse(back, text, wish, scene));
  if (replied) return replied;
  if (asking?.kind === 'open-replied')
    return answerOpenReplied(before, asking, text, scene, (still) => converse(still, text, wish, scene));
  if (asking?.kind === 'right')
    return answerRight(before, asking, text, scene, (still, rest) =>
      converse(still, rest, readWish(rest, scene.survey.words), scene),
    );
  if (asking?.kind === 'throw-away') return answerThrowAway(before, text, wish, scene);
  if (before.report?.live) return hearLive(before, { ...before.report, live: before.report.live }, text, wish, scene);
  if (asking?.kind === 'open-stored') return answerOpenStored(before, asking, text, scene);
  if (asking?.kind === 'remind' && wish === null && !isFarewell(text, scene)) {
    const settled = answerRemind(before, text, scene);
    if (settled) return settled;
  }
  const aboutStored = hearJustStored(before, text, wish, scene);
  if (aboutStored) return aboutStored;
  const closing = hearClosing(before, text, wish, scene);
  if (closing) return closing;
  if (asking?.kind === 'person') {
    const answered = answerPerson(before, asking.field, text, wish, scene);
    if (answered) return answered;
  }
  if (asking?.kind === 'join-photograph') {
    const joined = answerJoin(before, asking, text, scene);
    if (joined) return joined;
    if (before.report !== null) return converse(withPhotographs({ ...before, asking: null }), text, wish, scene);
  }
  if (asking?.kind === 'licence') {
    const chosen = answerLicence(before, text, wish, scene);
    if (chosen) return chosen;
  }
  if (asking?.kind === 'place-name') {
    const named = answerPlaceName(before, asking.key, text, wish, scene);
    if (named) return named;
  }
  if (asking?.kind === 'name-shown') {
    const settled = answerNameShown(before, text, wish, scene);
    if (settled) return settled;
  }
  const isAskedOnce = wasJustAskedOnce(before, scene);
  if (isAskedOnce && wish?.wish === 'greeting') return askedStill(before, scene);
  if (wish) {
    const done = answerWish(before, wish, scene);
    if (done) return done;
  }
  const thread = begun(before, scene);
  const { report } = thread;
  if (report === null) throw new Error(`No report was begun for message ${scene.message.id}.`);
  const answered = answer(thread, report, thread.report === before.report ? asking : null, text, scene);
  const told = answered.thread.report;
  return isAskedOnce && isEmpty(told) && told?.doubts.length === 0 ? askedStill(before, scene) : answered;
}

/** How long such a question stands; who comes back later has other things to tell. */
const STANDS_MINUTES = 60;

/** Whether what is asked is asked once in a life: what is no answer, and begins no watch, does not do away with it. */
function wasJustAskedOnce({ asking, report, lastAt }: Thread, { message }: Scene): boolean {
  if (report !== null || lastAt === null || (asking?.kind !== 'licence' && asking?.kind !== 'name-shown')) return false;
  return Temporal.Instant.from(lastAt).until(message.at).total('minutes') < STANDS_MINUTES;
}

/** The same question once more; of a licence only what can be answered, since the question is long. */
function askedStill(thread: Thread, scene: Scene): Outcome {
  if (thread.asking?.kind !== 'licence') return { thread, said: [], effects: [], then: 'repeat' };
  return { thread, said: [say(scene.survey.wording, 'licence-which')], effects: [], then: 'rest' };
}

/** What is asked may be passed over for a correction of what was told before. */
const PASSED_OVER: ReadonlySet<Asking['kind']> = new Set<Asking['kind']>([
  'question',
  'flowers',
  'line-plant',
  'bees-of-total',
  'rest',
]);

function answer(thread: Thread, report: Report, asking: Asking | null, text: string, scene: Scene): Outcome {
  const meanwhile =
    asking !== null && PASSED_OVER.has(asking.kind) ? correctMeanwhile(thread, report, asking, text, scene) : null;
  if (meanwhile !== null) return meanwhile;
  switch (asking?.kind) {
    case 'question':
      return answerQuestion(thread, report, asking, text, scene);
    case 'list':
      return answerList(thread, report, asking, text, scene);
    case 'doubt':
      return report.doubts[0] === undefined
        ? outcome(thread, report)
        : answerDoubt(thread, report, report.doubts[0], text, scene);
    case 'flowers':
      return answerFlowers(thread, report, asking.plant, text, scene);
    case 'line-plant':
      return answerLinePlant(thread, report, asking.line, text, scene);
    case 'bees-of-total':
      return answerBees(thread, report, text, scene);
    case 'rest':
      return answerRest(thread, report, asking.plants, text, scene);
    case 'confirm':
      return answerConfirm(thread, report, text, scene);
    case 'correct':
      return answerCorrect(thread, report, text, scene);
    default:
      return firstText(thread, report, text, scene);
  }
}

/** Asked what to change: "nothing" and "it is right" lead back to the summary. */
function answerCorrect(thread: Thread, report: Report, text: string, scene: Scene): Outcome {
  const doubt = correctDoubt(thread, report, text, scene);
  if (doubt !== null) return doubt;
  const isNothing = scene.survey.words.tally.zero.includes(fold(text).replace(/[\s.!]+$/, ''));
  const yesNo = readYesNo(text, contextOf(scene, report));
  if (isNothing || (yesNo.state === 'sure' && yesNo.value.rest === null)) return outcome(thread, report);
  return correct(thread, report, yesNo.state === 'sure' ? (yesNo.value.rest ?? text) : text, scene);
}
