/** Goes through an answer from its beginning, phrase by phrase, up to the first word that is neither answer nor chat. */
import type { Span } from '../reading.js';
import { skip, type Kind, type YesNoPhrases } from './phrases.js';

/** The clause ends here, or a question mark. */
const CLAUSE_ENDS = /^(?:\s*[.,;:!?…()"\n-]|\s*$|\s*\p{Extended_Pictographic})/u;

export interface Answer {
  readonly answer: 'yes' | 'no';
  readonly span: Span;
  /** Of a word that is an answer only by itself: "ok", "good". */
  readonly alone: boolean;
}

export interface Walked {
  readonly answers: readonly Answer[];
  /** Where the words begin that are neither answer nor chat. */
  readonly rest: number;
  readonly contrast: boolean;
  readonly doubtful: boolean;
  /** "I don't know": no answer at all. */
  readonly unknowing: boolean;
}

interface PhraseFound {
  readonly kind: Kind | 'half' | 'half-no';
  readonly length: number;
}

/** The phrase at that position; "yesss" and "noooo" are tried with their letters drawn together. */
function phraseAt(folded: string, at: number, phrases: YesNoPhrases): PhraseFound | null {
  const found = phrases.any.at(folded, at);
  if (found) return { kind: phrases.kinds.get(found.phrase)!, length: found.length };
  const word = /^\p{L}{3,40}/u.exec(folded.slice(at, at + 41))?.[0];
  const drawn = word?.replace(/(\p{L})\1{2,}/gu, '$1');
  const meant = drawn === undefined || drawn === word ? undefined : phrases.kinds.get(drawn);
  return word !== undefined && meant ? { kind: meant, length: word.length } : null;
}

const clauseEnds = (folded: string, at: number, phrases: YesNoPhrases): boolean =>
  CLAUSE_ENDS.test(folded.slice(at, at + 20)) || phraseAt(folded, skip(folded, at), phrases) !== null;

/** A whole clause that says what is found of it goes before the phrases in it. */
function foundAt(folded: string, at: number, phrases: YesNoPhrases): PhraseFound | null {
  const phrase = phraseAt(folded, at, phrases);
  const assessed = phrases.assess(folded, at);
  if (assessed && assessed.length >= (phrase?.length ?? 0) && clauseEnds(folded, at + assessed.length, phrases))
    return { kind: assessed.verdict, length: assessed.length };
  return phrase && endingClause(folded, at, phrase, phrases);
}

/** "no changes" is a yes by itself; in "no change the date" only its "no" counts. */
function endingClause(folded: string, at: number, found: PhraseFound, phrases: YesNoPhrases): PhraseFound {
  if (found.kind !== 'yesAlone' || clauseEnds(folded, at + found.length, phrases)) return found;
  const bareNo = phrases.bareNo.at(folded, at);
  return bareNo ? { kind: 'bareNo', length: bareNo.length } : found;
}

/** "it was partly cloudy": what seems an answer goes on. */
function isQualified(folded: string, end: number, phrases: YesNoPhrases): boolean {
  if (CLAUSE_ENDS.test(folded.slice(end, end + 20))) return false;
  const next = foundAt(folded, skip(folded, end), phrases)?.kind;
  return next === 'noAlone' || next === 'half';
}

/** True where the "no" that ends at `end` answers; null where that cannot be told. */
function answersNo(folded: string, end: number, phrases: YesNoPhrases): boolean | null {
  const after = folded.slice(end, end + 60);
  if (folded[end - 1] === '.' || CLAUSE_ENDS.test(after) || /^\s*\d/u.test(after)) return true;
  const word = end + after.search(/\S/u);
  if (phrases.nothings.at(folded, word)) return false;
  const next = skip(folded, end);
  const follows = [phrases.afterNo, phrases.wanting, phrases.futures].some((set) => set.at(folded, word));
  return follows || foundAt(folded, next, phrases) !== null ? true : null;
}

/** The answer that a phrase gives at that place; null for none. */
function answerOf(
  { kind, length }: PhraseFound,
  folded: string,
  at: number,
  phrases: YesNoPhrases,
): { answer: 'yes' | 'no'; doubtful: boolean } | null {
  const end = at + length;
  switch (kind) {
    case 'yes':
    case 'no':
      return { answer: kind, doubtful: false };
    case 'half':
      return { answer: 'yes', doubtful: true };
    case 'half-no':
    case 'doubtfulNo':
      return { answer: 'no', doubtful: true };
    case 'yesAlone':
      return clauseEnds(folded, end, phrases) && !isQualified(folded, end, phrases)
        ? { answer: 'yes', doubtful: false }
        : null;
    case 'noAlone': // "n 15:20"
      return clauseEnds(folded, end, phrases) || (length === 1 && /^\s*\d/u.test(folded.slice(end, end + 9)))
        ? { answer: 'no', doubtful: false }
        : null;
    case 'bareNo': {
      const answering = answersNo(folded, end, phrases);
      return answering === false ? null : { answer: 'no', doubtful: answering === null };
    }
    default:
      return null;
  }
}

const ANSWERS: readonly PhraseFound['kind'][] = [
  'yes',
  'no',
  'half',
  'half-no',
  'doubtfulNo',
  'yesAlone',
  'noAlone',
  'bareNo',
];

/** True where what was answered before a "wait" is taken back: another answer follows. */
function answersAgain(folded: string, at: number, phrases: YesNoPhrases): boolean {
  const following = foundAt(folded, at, phrases);
  if (!following) return false;
  if (ANSWERS.includes(following.kind)) return answerOf(following, folded, at, phrases) !== null;
  return following.kind !== 'fillers' && following.kind !== 'chat';
}

/** The "no" that a correction ends in: "wait no". */
function noAtEnd(folded: string, [from, to]: Span, phrases: YesNoPhrases): Answer | null {
  const at = folded.lastIndexOf(' ', to - 1) + 1;
  const no = at > from ? phrases.bareNo.at(folded, at) : null;
  return no && at + no.length === to ? { answer: 'no', span: [at, to], alone: false } : null;
}

/** The "no" that a correction begins with, where it goes on: "yes no wait the date is wrong". */
function noAtStart(folded: string, [from, to]: Span, phrases: YesNoPhrases): Answer | null {
  const no = skip(folded, to) < folded.length ? phrases.bareNo.at(folded, from) : null;
  return no ? { answer: 'no', span: [from, from + no.length], alone: false } : null;
}

/** What stands behind "but": a change, or only another answer ("yes, but that's fine", "yes but no"). */
function contrasted(
  folded: string,
  at: number,
  before: Pick<Walked, 'answers' | 'doubtful' | 'unknowing'>,
  phrases: YesNoPhrases,
): Walked {
  const after = walk(folded.slice(at), phrases);
  const nothingElse = skip(folded, at + after.rest) >= folded.length;
  if (!nothingElse) return { ...before, rest: at, contrast: true };
  const moved = after.answers.map((answer): Answer => ({
    ...answer,
    span: [answer.span[0] + at, answer.span[1] + at],
  }));
  // "yes, but" alone is not yet a yes
  const doubtful = before.doubtful || after.doubtful || moved.length === 0;
  return { ...before, answers: [...before.answers, ...moved], rest: folded.length, contrast: true, doubtful };
}

export function walk(folded: string, phrases: YesNoPhrases): Walked {
  let answers: Walked['answers'] = [];
  let doubtful = false;
  let unknowing = false;
  let at = skip(folded, 0);
  while (at < folded.length) {
    const found = foundAt(folded, at, phrases);
    if (!found) break;
    const { kind, length } = found;
    const next = skip(folded, at + length);
    if (kind === 'contrasts') {
      if (answers.length > 0) return contrasted(folded, next, { answers, doubtful, unknowing }, phrases);
      if (!doubtful && !unknowing) break; // "not sure but I'd say yes"
    } else if (kind === 'corrections') {
      // "yes, sorry for the wait"
      if (phrases.pleasantries.at(folded, at)) break;
      // "yes, wait, no": only what follows counts
      if (answersAgain(folded, next, phrases)) answers = [];
      else if (answers.length > 0) {
        // "yes wait no"
        const correction: Span = [at, at + length];
        const no = noAtEnd(folded, correction, phrases) ?? noAtStart(folded, correction, phrases);
        if (no) answers = [no];
        // "yes, wait": what shall change comes next, and a yes would store
        else if (next >= folded.length && phrases.halting.at(folded, at)?.length === length) doubtful = true;
      }
    } else if (kind === 'doubtful') doubtful = true;
    else if (kind === 'unknowing') unknowing = true;
    else if (ANSWERS.includes(kind)) {
      const given = answerOf(found, folded, at, phrases);
      if (!given) break;
      doubtful ||= given.doubtful;
      answers = [...answers, { answer: given.answer, span: [at, at + length], alone: kind === 'yesAlone' }];
    } else if (kind === 'chat' && answers.length === 0) {
      // "that's everything, yes"
      const after = walk(folded.slice(next), phrases);
      if (after.answers.length === 0) break;
    } else if (kind === 'leads' && answers.length > 0) break;
    at = next;
  }
  return { answers, rest: at, contrast: false, doubtful, unknowing };
}
