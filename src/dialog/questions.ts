/**
 * Questions that people ask back: what is kept, who sees it, how long it takes. Which there are and how they are answered
 * is data (`wishes.questions`, the phrases `answer-…`); what else the message tells is read as ever.
 */
import { anyOf, fold, madeOnce, readFields, readYesNo, saysAnyOf, type FieldName } from '../answers/index.js';
import { say } from '../../shared/wording.js';
import type { Words } from '../../shared/words.js';
import { QUESTION_TOPICS, type QuestionTopic } from '../../shared/words/questions.js';
import { contextOf } from './hear.js';
import type { Scene, Thread } from './types.js';

export interface Asked {
  readonly answers: readonly string[];
  /** The message without its questions; "" where nothing is left. */
  readonly rest: string;
}

/** A sentence with its mark. */
const SENTENCE = /[^.!?;\n]+(?:\.(?=\d)[^.!?;\n]+)*[.!?;\n]*/g;
/** Longer messages are notes; questions in them are for the coordinator. */
const LONGEST = 400;
/** Before a question and no part of its beginning: "ok but what …". */
const MOST_FILLERS = 3;

/** The words a question begins with, at the beginning of a sentence or behind a comma. */
const openerOf = madeOnce(({ place, wishes, yesNo }: Words) => {
  const fillers = `(?:(?:${anyOf(yesNo.fillers, wishes.polite)})[\\s,]+){0,${MOST_FILLERS}}`;
  return new RegExp(`(?:^|[,:-]\\s)\\s*${fillers}${anyOf(place.questions, place.questionVerbs)}(?![\\p{L}])`, 'u');
});

/** Where a question begins in the sentence; -1 where none does. */
const questionFrom = (sentence: string, { survey }: Scene): number =>
  openerOf(survey.words).exec(fold(sentence))?.index ?? -1;

/** "What does that mean" about a question of its own kind is answered there. */
const HAS_OWN_ANSWERS: ReadonlySet<string> = new Set(['licence', 'name-shown', 'right', 'throw-away']);

function topicOf(question: string, { asking }: Thread, { survey }: Scene): QuestionTopic | undefined {
  const topic = QUESTION_TOPICS.find((name) => saysAnyOf(question, survey.words.wishes.questions[name]));
  return topic === 'example' && asking !== null && HAS_OWN_ANSWERS.has(asking.kind) ? undefined : topic;
}

/** Whether the words may be an answer in the form of a question: "was it Tuesday?", "is a gentle breeze when leaves move?" */
function mayAnswer(question: string, thread: Thread, scene: Scene): boolean {
  const context = contextOf(scene, thread.report);
  const asked = thread.asking?.kind === 'question' ? (thread.asking.fields as readonly FieldName[]) : [];
  const { fields } = readFields(
    question,
    context,
    asked.filter((field) => field !== 'place'),
  );
  return (
    /\d/.test(question) ||
    Object.values(fields).some(({ state }) => state !== 'none') ||
    readYesNo(question, context).state !== 'none'
  );
}

/** Null where the message asks nothing that could be answered, or referred to the coordinator. */
export function questionsIn(text: string, thread: Thread, scene: Scene): Asked | null {
  if (text.length > LONGEST) return null;
  const answers: string[] = [];
  const rest = text.replace(SENTENCE, (sentence) => {
    const from = questionFrom(sentence, scene);
    if (from === -1) return sentence;
    const question = sentence.slice(from);
    const topic = topicOf(question, thread, scene);
    const isAsked = question.includes('?') && (topic !== undefined || !mayAnswer(question, thread, scene));
    // "what do you keep" is a question without its mark too, where it is all that was said
    if (!isAsked && (topic === undefined || sentence.trim() !== text.trim())) return sentence;
    answers.push(answerTo(topic ?? null, scene));
    // "can I tell you about my watch from Sunday" tells the day too
    const { fields } = readFields(question, contextOf(scene, thread.report), []);
    const tells = topic === 'report' && Object.values(fields).some(({ state }) => state === 'sure');
    return tells ? sentence : ` ${sentence.slice(0, from)} `;
  });
  return answers.length === 0
    ? null
    : { answers: [...new Set(answers)], rest: rest.replace(/^[\s,;:-]+|[\s,;:-]+$/g, '') };
}

export function answerTo(topic: QuestionTopic | null, { survey }: Scene): string {
  const { settings, wording } = survey;
  return say(wording, topic === null ? 'answer-other' : `answer-${topic}`, {
    survey: settings.name,
    coordinator: settings.coordinator.name,
    mail: settings.coordinator.mail,
    minutes: settings.protocol.minutes,
    sites: settings.sites.map(({ name }) => name).join(', '),
  });
}
