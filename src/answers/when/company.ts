/**
 * What the words around a date or a time say of it: that it is denied, planned, doubted, corrected, or only the
 * background of another. Shared by dates and times, so that "no wait" means the same to both.
 */
import type { Words } from '../../../shared/words.js';
import { madeOnce } from '../text.js';
import { phraseSet, sentenceEndsBefore, smallNumberAt, type PhraseIndex, type Token } from './tokens.js';

/** Something found among the tokens: from its first to the one after its last. */
export interface Place {
  readonly at: number;
  readonly next: number;
}

/** How far a word reaches to the date it speaks of, in tokens: "I couldn't get out to the patch on Monday". */
const REACH = 12;
/** A doubt behind a date stands close: "Monday, not sure". */
const REACH_BACK = 4;

const whenWords = madeOnce(({ when, hedges }: Words) => ({
  correcting: phraseSet([...hedges.correcting, ...when.correcting]),
  doubting: phraseSet([...hedges.doubting, ...when.doubting]),
  fillers: phraseSet([...when.fillers, ...hedges.soft]),
  not: phraseSet(when.not),
  didNot: phraseSet(when.didNot),
  sawNone: phraseSet(when.sawNone),
  clauseBreaks: phraseSet(when.clauseBreaks),
  plans: phraseSet(when.plans),
  notPlans: phraseSet(when.notPlans),
  notYet: phraseSet(when.notYet),
  backgroundBefore: phraseSet(when.backgroundBefore),
  weather: phraseSet(when.weather),
}));

const CLAUSE_SIGNS = new Set([',', ';', '(', ')', '!', '?']);

/** The first token of the clause that holds `at`, no further back than a word reaches. */
function clauseFrom(tokens: readonly Token[], at: number, breaks: PhraseIndex<true>): number {
  let from = at;
  while (from > 0 && at - from < REACH) {
    if (sentenceEndsBefore(tokens, from) || CLAUSE_SIGNS.has(tokens[from - 1]?.text ?? '')) break;
    if (breaks(tokens, from - 1)) break;
    from--;
  }
  return from;
}

function clauseTo(tokens: readonly Token[], next: number, breaks: PhraseIndex<true>): number {
  let to = next;
  while (to < tokens.length && to - next < REACH) {
    if (sentenceEndsBefore(tokens, to) || CLAUSE_SIGNS.has(tokens[to]?.text ?? '') || breaks(tokens, to)) break;
    to++;
  }
  return to;
}

/** Ends right before `at`, small words left out. */
function endsBefore(
  tokens: readonly Token[],
  at: number,
  phrases: PhraseIndex<true>,
  fillers: PhraseIndex<true>,
): boolean {
  let end = at;
  for (let skipped = 0; skipped <= 3; skipped++) {
    for (let from = Math.max(0, end - 4); from < end; from++) {
      if (phrases(tokens, from)?.next === end) return true;
    }
    if (end === 0 || !fillers(tokens, end - 1)) return false;
    end--;
  }
  return false;
}

/** "not 2:20, 3:20": the first is not meant. */
export function isNot(tokens: readonly Token[], { at }: Place, words: Words): boolean {
  const { not, fillers } = whenWords(words);
  return endsBefore(tokens, at, not, fillers);
}

/** "not Monday", "didn't get out today", "yesterday I couldn't go"; "didn't see any yesterday" denies no day. */
export function isDenied(tokens: readonly Token[], { at, next }: Place, words: Words): boolean {
  const { didNot, sawNone, clauseBreaks } = whenWords(words);
  if (isNot(tokens, { at, next }, words)) return true;
  const denies = (from: number, to: number): boolean => {
    for (let i = from; i < to; i++) {
      const found = didNot(tokens, i);
      if (found && !sawNone(tokens, found.next) && !sawNone(tokens, found.next + 1)) return true;
    }
    return false;
  };
  return denies(clauseFrom(tokens, at, clauseBreaks), at) || denies(next, clauseTo(tokens, next, clauseBreaks));
}

/** True where the whole text says that there has been no watch. */
export function isNotYet(tokens: readonly Token[], words: Words): boolean {
  const { notYet } = whenWords(words);
  return tokens.some((_, at) => notYet(tokens, at) !== null);
}

/** "I'll go on Saturday", "Saturday hopefully". */
export function isPlanned(tokens: readonly Token[], { at, next }: Place, words: Words): boolean {
  const { plans, notPlans } = whenWords(words);
  let from = at;
  while (from > 0 && at - from < REACH && !sentenceEndsBefore(tokens, from)) from--;
  let to = next;
  while (to < tokens.length && to - next < REACH_BACK && !sentenceEndsBefore(tokens, to)) to++;
  for (let i = from; i < to; i++) {
    if (notPlans(tokens, i)) return false;
    if (plans(tokens, i)) return true;
  }
  return false;
}

/** "colder than yesterday", "since Monday". */
export function isBackground(tokens: readonly Token[], { at }: Place, words: Words): boolean {
  const { backgroundBefore } = whenWords(words);
  for (let from = Math.max(0, at - 3); from < at; from++) {
    if (backgroundBefore(tokens, from)?.next === at) return true;
  }
  return false;
}

/** "it rained yesterday", "last night's frost". */
export function isWeatherOnly(tokens: readonly Token[], { at, next }: Place, words: Words): boolean {
  const { weather } = whenWords(words);
  for (let from = Math.max(0, at - 3); from < at; from++) {
    const found = weather(tokens, from);
    const between = tokens.slice(found?.next ?? at, at);
    if (found && between.every((token) => token.kind === 'word')) return true;
  }
  const last = tokens[next - 1];
  return last !== undefined && last.text !== last.stem && weather(tokens, next) !== null;
}

const hasNumber = (tokens: readonly Token[], from: number, to: number, words: Words): boolean =>
  tokens.slice(from, to).some((_, i) => smallNumberAt(tokens, from + i, words.numbers) !== null);

const sameSentence = (tokens: readonly Token[], from: number, to: number): boolean =>
  tokens.slice(from, to).every((_, i) => !sentenceEndsBefore(tokens, from + i));

/** "maybe Monday", "Monday?", "not sure, the 2nd", "2:15 I'm not sure": a doubt that speaks of one of the places. */
export function isDoubted(tokens: readonly Token[], places: readonly Place[], words: Words): boolean {
  const { doubting } = whenWords(words);
  return tokens.some((token, from) => {
    const found = doubting(tokens, from);
    if (!found) return false;
    const after = places.find(({ at }) => at >= found.next);
    const before = places.findLast(({ next }) => next <= from);
    if (token.text === '?') {
      if (!before || from - before.next > REACH || hasNumber(tokens, before.next, from, words)) return false;
      return sameSentence(tokens, before.next + 1, from);
    }
    const speaksOfNext =
      after !== undefined && after.at - found.next <= REACH && !hasNumber(tokens, found.next, after.at, words);
    if (speaksOfNext) return true;
    if (!before || from - before.next > REACH_BACK || !sameSentence(tokens, before.next + 1, from)) return false;
    const sentenceTo = tokens.findIndex((_, i) => i > found.next && sentenceEndsBefore(tokens, i));
    const to = Math.min(sentenceTo < 0 ? tokens.length : sentenceTo, found.next + REACH);
    return !hasNumber(tokens, found.next, to, words);
  });
}

/** The tokens right after "sorry", "no wait" and the like. */
function correctionEnds(tokens: readonly Token[], words: Words): ReadonlySet<number> {
  const { correcting } = whenWords(words);
  return new Set(tokens.map((_, at) => correcting(tokens, at)?.next ?? -1));
}

/** True where a correction stands right before `at`, small words and signs left out, and after `floor`. */
function isCorrection(
  tokens: readonly Token[],
  at: number,
  floor: number,
  ends: ReadonlySet<number>,
  fillers: PhraseIndex<true>,
): boolean {
  for (let end = at; end > floor; end--) {
    if (ends.has(end)) return true;
    if (tokens[end - 1]?.kind !== 'sign' && !fillers(tokens, end - 1)) return false;
  }
  return false;
}

/** "2:20 to 2:35 am, I mean pm": where one of those phrases is last said in place of something before it; or null. */
export function correctedWord(tokens: readonly Token[], phrases: PhraseIndex<true>, words: Words): number | null {
  const { fillers } = whenWords(words);
  const ends = correctionEnds(tokens, words);
  const last = tokens.findLastIndex(
    (_, at) => phrases(tokens, at) !== null && isCorrection(tokens, at, 0, ends, fillers),
  );
  return last < 0 ? null : last;
}

/**
 * The place that a correction brings: the last one that follows "sorry", "no wait" or the like at once, small words
 * left out. What stands before it is taken back. Null where nothing is corrected.
 */
export function correctedPlace(tokens: readonly Token[], places: readonly Place[], words: Words): number | null {
  const { fillers } = whenWords(words);
  const ends = correctionEnds(tokens, words);
  const last = places.findLastIndex((place, i) => {
    const before = places[i - 1];
    return before !== undefined && isCorrection(tokens, place.at, before.next, ends, fillers);
  });
  return last < 0 ? null : last;
}
