/**
 * Reads yes and no: "yep", "looks good", "👍", "not quite". `rest` is what else was said, as typed: after a no the
 * correction ("no, it was 68"), after a yes only what may change something ("yes, but the wind was stronger"); chat is
 * passed over. A correction by itself
 * ("it was 70") is neither, but where its words say that something shown is wrong ("the temp should be 70").
 */
import { ownText } from './note/mail-text.js';
import { none, sure, unsure, type Context, type Reader, type Reading, type Span } from './reading.js';
import { fold } from './text.js';
import { skip, yesNoPhrases, type YesNoPhrases } from './yes-no/phrases.js';
import { restOf } from './yes-no/rest.js';
import { isCorrection } from './yes-no/correction.js';
import { walk } from './yes-no/walk.js';

export interface YesNo {
  readonly answer: 'yes' | 'no';
  readonly rest: string | null;
}

/** Longer texts are no yes or no. */
const MOST_CHARACTERS = 2000;

/** True of "the temp should be 70": it contradicts what was shown, and is no "no" to a question of another kind. */
export const correctsOnly = (reading: Reading<YesNo>, text: string): boolean =>
  reading.state === 'sure' && reading.value.answer === 'no' && reading.value.rest === text.trim();

/** "I checked it against my notebook and it matches, so yes": nothing but a yes behind the last comma, no value before it. */
function endsInYes(folded: string, phrases: YesNoPhrases): boolean {
  const comma = folded.lastIndexOf(',');
  if (comma === -1 || /[\d?]/.test(folded)) return false;
  const tail = folded.slice(comma + 1);
  const { answers, rest, doubtful, unknowing } = walk(tail, phrases);
  const isYes = answers.length > 0 && answers.every(({ answer, alone }) => answer === 'yes' && !alone);
  const changes = phrases.changes.in(folded.slice(0, comma)) !== null;
  return isYes && skip(tail, rest) >= tail.length && !doubtful && !unknowing && !changes;
}

/** Without what is quoted or no answer; a line with a number that is passed over stands: "we were 2 people" is no "we were". */
function ownWords(text: string, { words }: Context): string {
  const own = ownText(text, words).text.split('\n');
  const typed = text.split('\n');
  if (own.length !== typed.length) return own.join('\n');
  const hidesNumber = (line: string, at: number): boolean =>
    own[at]!.trim() !== '' && (line.match(/\d/g)?.length ?? 0) > (own[at]!.match(/\d/g)?.length ?? 0);
  return typed.map((line, at) => (hidesNumber(line, at) ? line : own[at]!)).join('\n');
}

export const readYesNo: Reader<YesNo> = (text, context) => {
  if (text.trim() === '') return none('empty');
  if (text.length > MOST_CHARACTERS) return none('too-long');
  const phrases = yesNoPhrases(context.words.yesNo);
  const all: Span[] = [[0, text.length]];
  const tapped = fold(text);
  if (phrases.tapbackYes.test(tapped)) return sure({ answer: 'yes', rest: null }, all);
  if (phrases.tapbackNo.test(tapped)) return sure({ answer: 'no', rest: null }, all);

  const own = ownWords(text, context);
  const typed = own.trim() === '' ? text : own; // a greeting alone is nobody's signature
  const { text: folded, typedAt } = phrases.respell(fold(typed));
  const { answers, doubtful, unknowing, rest, contrast } = walk(folded, phrases);
  const last = answers.at(-1);
  if (!last) {
    if (isCorrection(folded, phrases, context)) {
      // "one thing is wrong" tells no change, only that there is one
      const tells = restOf(typed, 'no', false, phrases, context) !== null;
      return sure({ answer: 'no', rest: tells ? typed.trim() : null }, all);
    }
    if (endsInYes(folded, phrases)) return sure({ answer: 'yes', rest: null }, all);
    const maybe: readonly YesNo[] = [
      { answer: 'yes', rest: null },
      { answer: 'no', rest: null },
    ];
    return doubtful && !unknowing && /^[?\s]*$/u.test(folded.slice(skip(folded, rest)))
      ? unsure(maybe, 'yes-no-doubt', all)
      : none('yes-no-unclear');
  }
  const value: YesNo = {
    answer: last.answer,
    rest: restOf(typed.slice(typedAt(rest)), last.answer, contrast, phrases, context),
  };
  const used = answers.map(({ span: [from, to] }): Span => [typedAt(from), typedAt(to)]);
  const other: YesNo = { answer: last.answer === 'yes' ? 'no' : 'yes', rest: value.rest };
  if (answers.some(({ answer }) => answer !== last.answer)) return unsure([value, other], 'yes-no-doubt', used);
  // "no, sorry, misread it. Yes, it's right."
  const later = (value.rest ?? '').split(/[.!?;\n]+\s/u).slice(1);
  const answersLater = later.map(
    (sentence) => walk(phrases.respell(fold(sentence)).text, phrases).answers.at(-1)?.answer,
  );
  if (answersLater.includes(other.answer))
    return unsure(
      [other, value].map(({ answer }) => ({ answer, rest: null })),
      'yes-no-doubt',
      used,
    );
  // "yes?", "yes, I think?", and "ok, what now?", which is no yes to what was shown
  const behindLead = rest + (phrases.leads.at(folded, rest)?.length ?? 0);
  const asked =
    [last.span[1], rest, behindLead].some((end) => /^[\s!.]*\?/u.test(folded.slice(end))) ||
    (last.alone && folded.slice(rest).includes('?'));
  if (doubtful || unknowing || asked) return unsure([value], 'yes-no-doubt', used);
  return sure(value, used);
};
