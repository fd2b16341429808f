/**
 * Reads yes and no: "yep", "looks good", "👍", "not quite". `rest` is what else was said, as typed: after a no the
 * correction ("no, it was 68"), after a yes only what may change something ("yes, but the wind was stronger"); chat is
 * passed over. A correction by itself is neither.
 */
import type { Words } from '../../shared/words.js';
import { anyOf } from './any-of.js';
import { ownText } from './note/mail-text.js';
import { findNumbers } from './numbers.js';
import { none, sure, unsure, type Context, type Reader, type Span } from './reading.js';
import { fold, madeOnce } from './text.js';

export interface YesNo {
  readonly answer: 'yes' | 'no';
  readonly rest: string | null;
}

/** Longer texts are no yes or no. */
const MOST_CHARACTERS = 2000;

type Kind =
  | 'yes'
  | 'yesAlone'
  | 'no'
  | 'noAlone'
  | 'bareNo'
  | 'doubtful'
  | 'fillers'
  | 'leads'
  | 'chat'
  | 'contrasts'
  | 'corrections';

/** Later ones win where a phrase stands in two lists. */
const KINDS: readonly Kind[] = [
  'chat',
  'fillers',
  'leads',
  'contrasts',
  'corrections',
  'doubtful',
  'yesAlone',
  'noAlone',
  'yes',
  'no',
  'bareNo',
];

const yesNoPhrases = madeOnce((yesNo: Words['yesNo']) => {
  // "thats" for "that's"
  const both = (phrases: readonly string[]): string[] => phrases.flatMap((one) => [one, one.replaceAll("'", '')]);
  const kinds = new Map<string, Kind>();
  for (const kind of KINDS) for (const phrase of both(yesNo[kind])) kinds.set(phrase, kind);
  const startsWith = (phrases: readonly string[]): RegExp => new RegExp(`^\\s*${anyOf(both(phrases))}`, 'u');
  return {
    kinds,
    /** What may follow a yes before its change, too. */
    chat: new Set(both([...yesNo.chat, ...yesNo.fillers])),
    bareNo: new RegExp(anyOf(yesNo.bareNo), 'uy'),
    any: new RegExp(anyOf([...kinds.keys()]), 'uy'),
    chatAt: new RegExp(anyOf(both([...yesNo.chat, ...yesNo.fillers])), 'uy'),
    afterNo: startsWith(yesNo.afterNo),
    nothings: startsWith(yesNo.nothings),
    changes: new RegExp(anyOf(both(yesNo.changes)), 'u'),
    wrongLater: new RegExp(anyOf(both(yesNo.wrongLater)), 'u'),
    tapbackYes: new RegExp(`^\\s*${anyOf(yesNo.tapbackYes)}\\s+"`, 'u'),
    tapbackNo: new RegExp(`^\\s*${anyOf(yesNo.tapbackNo)}\\s+"`, 'u'),
  };
});
type YesNoPhrases = ReturnType<typeof yesNoPhrases>;

/** Marks, white space and what modifies an emoji: skin tone, variation, joiner. */
const GAP = /[\s.,;:!…\-()"'*\u200d\ufe0f\u{1f3fb}-\u{1f3ff}]*/uy;
/** The clause ends here, or a question mark. */
const CLAUSE_ENDS = /^(?:\s*[.,;:!?…()"\n-]|\s*$|\s*\p{Extended_Pictographic})/u;

const skip = (folded: string, at: number): number => {
  GAP.lastIndex = at;
  return at + (GAP.exec(folded)?.[0].length ?? 0);
};

interface Walked {
  readonly answers: readonly { readonly answer: 'yes' | 'no'; readonly span: Span }[];
  /** Where the words begin that are neither answer nor chat. */
  readonly rest: number;
  readonly contrast: boolean;
  readonly doubtful: boolean;
}

interface PhraseFound {
  readonly kind: Kind;
  readonly length: number;
}

/** The phrase at that position; "yesss" and "noooo" are tried with their letters drawn together. */
function phraseAt(folded: string, at: number, phrases: YesNoPhrases): PhraseFound | null {
  phrases.any.lastIndex = at;
  const match = phrases.any.exec(folded);
  const kind = match && phrases.kinds.get(match[0].replace(/\s+/g, ' '));
  if (match && kind) return { kind, length: match[0].length };
  const word = /^\p{L}{3,40}/u.exec(folded.slice(at, at + 41))?.[0];
  const drawn = word?.replace(/(\p{L})\1{2,}/gu, '$1');
  const meant = drawn === undefined || drawn === word ? undefined : phrases.kinds.get(drawn);
  return word !== undefined && meant ? { kind: meant, length: word.length } : null;
}

const clauseEnds = (folded: string, at: number, phrases: YesNoPhrases): boolean =>
  CLAUSE_ENDS.test(folded.slice(at, at + 20)) || phraseAt(folded, skip(folded, at), phrases) !== null;

/** "no changes" is a yes by itself; in "no change the date" only its "no" counts. */
function endingClause(folded: string, at: number, found: PhraseFound, phrases: YesNoPhrases): PhraseFound {
  if (found.kind !== 'yesAlone' || clauseEnds(folded, at + found.length, phrases)) return found;
  phrases.bareNo.lastIndex = at;
  const bareNo = phrases.bareNo.exec(folded);
  return bareNo ? { kind: 'bareNo', length: bareNo[0].length } : found;
}

/** True where the "no" that ends at `end` answers; null where that cannot be told. */
function answersNo(folded: string, end: number, phrases: YesNoPhrases): boolean | null {
  const after = folded.slice(end, end + 60);
  if (CLAUSE_ENDS.test(after) || /^\s*\d/u.test(after)) return true;
  if (phrases.nothings.test(after)) return false;
  const next = skip(folded, end);
  return phrases.afterNo.test(after) || phraseAt(folded, next, phrases) !== null ? true : null;
}

/** Goes through the text from its beginning, phrase by phrase, up to the first word that is none. */
function walk(folded: string, phrases: YesNoPhrases): Walked {
  let answers: Walked['answers'] = [];
  let doubtful = false;
  let at = skip(folded, 0);
  while (at < folded.length) {
    const found = phraseAt(folded, at, phrases);
    if (!found) break;
    const { kind, length } = endingClause(folded, at, found, phrases);
    const span: Span = [at, at + length];
    const next = skip(folded, span[1]);
    const ends = clauseEnds(folded, span[1], phrases);
    if (kind === 'contrasts') {
      if (answers.length > 0) return { answers, rest: next, contrast: true, doubtful };
      break;
    }
    if (kind === 'corrections') {
      // "yes, wait, no": only what follows counts, where an answer follows
      const following = phraseAt(folded, next, phrases)?.kind;
      if (following && following !== 'fillers' && following !== 'chat') answers = [];
    } else if (kind === 'doubtful') doubtful = true;
    else if (kind === 'yes' || (kind === 'yesAlone' && ends)) answers = [...answers, { answer: 'yes', span }];
    else if (kind === 'no' || (kind === 'noAlone' && ends)) answers = [...answers, { answer: 'no', span }];
    else if (kind === 'bareNo') {
      const answering = answersNo(folded, span[1], phrases);
      if (answering === false) break;
      if (answering === null) doubtful = true;
      answers = [...answers, { answer: 'no', span }];
    } else if (kind === 'yesAlone' || kind === 'noAlone' || (kind === 'chat' && answers.length === 0)) break;
    else if (kind === 'leads' && answers.length > 0) break;
    at = next;
  }
  return { answers, rest: at, contrast: false, doubtful };
}

/** True where the words say nothing but pleasantries. */
function isChat(folded: string, phrases: YesNoPhrases): boolean {
  let at = skip(folded, 0);
  while (at < folded.length) {
    phrases.chatAt.lastIndex = at;
    const match = phrases.chatAt.exec(folded);
    if (!match) return false;
    at = skip(folded, at + match[0].length);
  }
  return true;
}

/** The rest as typed, or null where it changes nothing. */
function restOf(
  text: string,
  walked: Walked,
  answer: 'yes' | 'no',
  phrases: YesNoPhrases,
  context: Context,
): string | null {
  const said = text.slice(walked.rest).trim();
  const typed = said.includes('(') ? said : said.replace(/\)+$/u, ''); // "no (it was 68)"
  const folded = fold(typed);
  if (folded.trim() === '' || isChat(folded, phrases)) return null;
  if (answer === 'no' || walked.contrast) return typed;
  const changes = phrases.changes.test(folded) || findNumbers(folded, context.words).length > 0 || /\d/.test(folded);
  return changes ? typed : null;
}

export const readYesNo: Reader<YesNo> = (text, context) => {
  if (text.trim() === '') return none('empty');
  if (text.length > MOST_CHARACTERS) return none('too-long');
  const phrases = yesNoPhrases(context.words.yesNo);
  const all: Span[] = [[0, text.length]];
  const tapped = fold(text);
  if (phrases.tapbackYes.test(tapped)) return sure({ answer: 'yes', rest: null }, all);
  if (phrases.tapbackNo.test(tapped)) return sure({ answer: 'no', rest: null }, all);

  const own = ownText(text, context.words).text;
  const typed = own.trim() === '' ? text : own; // a greeting alone is nobody's signature
  const folded = fold(typed);
  const walked = walk(folded, phrases);
  const { answers, doubtful } = walked;
  const last = answers.at(-1);
  if (!last) {
    const wrong = phrases.wrongLater.exec(folded);
    if (wrong && !folded.includes('?')) {
      return sure({ answer: 'no', rest: typed.trim() }, [[wrong.index, wrong.index + wrong[0].length]]);
    }
    const maybe: readonly YesNo[] = [
      { answer: 'yes', rest: null },
      { answer: 'no', rest: null },
    ];
    return doubtful && skip(folded, walked.rest) >= folded.length
      ? unsure(maybe, 'yes-no-doubt', all)
      : none('yes-no-unclear');
  }
  const value: YesNo = { answer: last.answer, rest: restOf(typed, walked, last.answer, phrases, context) };
  const used = answers.map(({ span }) => span);
  const other: YesNo = { answer: last.answer === 'yes' ? 'no' : 'yes', rest: value.rest };
  if (answers.some(({ answer }) => answer !== last.answer)) return unsure([value, other], 'yes-no-doubt', used);
  const asked = /^\s*\?/u.test(folded.slice(last.span[1]));
  if (doubtful || asked) return unsure([value], 'yes-no-doubt', used);
  return sure(value, used);
};
