/** How something was said: doubted, corrected, told of another time, under a label, or in a clause of its own. */
import type { Words } from '../../../shared/words.js';
import { madeOnce, phraseFinder } from '../text.js';
import type { Reading, Span } from '../reading.js';
import { hitFinder, inAny } from './phrases.js';
import { clauseAt, tokenAt, type Spoken, type Token } from './spoken.js';

const doubtsAndLookalikes = madeOnce(({ hedges, weather }: Words) =>
  phraseFinder([
    ...[...hedges.doubting, ...weather.doubting].map((phrase) => [phrase, true] as const),
    ...weather.notDoubting.map((phrase) => [phrase, false] as const),
  ]),
);
const doubts =
  (words: Words) =>
  (folded: string): readonly { readonly span: Span }[] =>
    doubtsAndLookalikes(words)(folded).filter(({ value }) => value);
const corrections = madeOnce(({ hedges, weather }: Words) =>
  phraseFinder([...hedges.correcting, ...weather.correcting].map((phrase) => [phrase, true] as const)),
);
const otherTimes = madeOnce((words: Words) =>
  hitFinder(
    words.weather.otherTime.map((phrase) => [phrase, true] as const),
    words,
  ),
);
const changes = madeOnce((words: Words) => {
  const phrases = [
    ...words.weather.noChanges.map((phrase) => [phrase, false] as const),
    ...words.weather.changes.map((phrase) => [phrase, true] as const),
  ];
  return hitFinder(phrases, words);
});
const fillerWords = madeOnce(
  ({ weather, hedges }: Words) =>
    new Set([
      ...weather.fillers,
      ...weather.skipped,
      ...weather.breaks,
      ...hedges.soft.flatMap((phrase) => phrase.split(' ')),
    ]),
);

/** "today", "about": says nothing of weather by itself. */
export const isFiller = ({ word, typed, skipped }: Token, words: Words): boolean =>
  skipped || fillerWords(words).has(word) || fillerWords(words).has(typed);

/** A clause with more words than this is not made of small words, whatever they are. */
const LONGEST_ASIDE = 40;

/** Tells whether a token belongs to words of doubt: the "not" of "not sure". */
export function inDoubtWords(text: Spoken, words: Words): (token: number) => boolean {
  return inAny(
    doubts(words)(text.folded).map(({ span }) => ({ from: tokenAt(text, span[0]), to: tokenAt(text, span[1]) })),
  );
}

const partsOfTime = madeOnce((words: Words) =>
  hitFinder(
    words.weather.partOfTheTime.map((phrase) => [phrase, true] as const),
    words,
  ),
);

/** Tells whether what is said there held only for a part of the watch: "calm at first", "turned cloudy". */
export function partlySo(
  text: Spoken,
  words: Words,
): (told: { readonly from: number; readonly clause: number }) => boolean {
  const clauses = new Set(partsOfTime(words)(text).map((hit) => hit.clause));
  return ({ from, clause }) =>
    clauses.has(clause) || words.weather.becoming.includes(text.tokens[from - 1]?.word ?? '');
}

/** Clauses in which, or just before which, a doubt stands: "maybe 68, sunny" doubts the 68 only. */
export function doubtedClauses(text: Spoken, words: Words): ReadonlySet<number> {
  const doubted = new Set<number>();
  for (const { span } of doubts(words)(text.folded)) {
    const at = clauseAt(text, span[0]);
    doubted.add(at);
    const clause = text.clauses[at];
    if (!clause) continue;
    if (clause.to - clause.from > LONGEST_ASIDE) continue;
    const rest = text.tokens
      .slice(clause.from, clause.to)
      .filter((token) => token.span[1] <= span[0] || token.span[0] >= span[1]);
    // "calm, is 0 ok?"
    const opening = text.tokens[clause.from];
    const asks = opening && text.folded[span[0]] === '?' && words.weather.asking.includes(opening.typed);
    // "65. Do you need the humidity too?" asks something else
    if (asks && !/[.!]/.test(clause.gap)) doubted.add(at - 1);
    if (asks && /[.!]/.test(clause.gap) && !/\d/.test(text.folded.slice(...clause.span))) {
      doubted.delete(at);
      continue;
    }
    // "not sure, around 70" · "70, maybe"
    if (rest.every((token) => isFiller(token, words))) {
      doubted.add(at + 1 < text.clauses.length ? at + 1 : at - 1);
    }
  }
  return doubted;
}

/** Clauses that tell of another time: "rain later", "high of 75 tomorrow". */
export const otherTimeClauses = (text: Spoken, words: Words): ReadonlySet<number> =>
  new Set(otherTimes(words)(text).map((hit) => hit.clause));

const reports = madeOnce((words: Words) =>
  hitFinder(
    words.weather.reported.map((phrase) => [phrase, true] as const),
    words,
  ),
);
const beforehand = madeOnce((words: Words) =>
  hitFinder(
    words.weather.beforehand.map((phrase) => [phrase, true] as const),
    words,
  ),
);

/** All but what other clauses make a matter of another time or place: "48 this morning, but 66 by noon". */
export function withoutBeforehand<Told extends { readonly clause: number }>(
  told: readonly Told[],
  text: Spoken,
  words: Words,
): readonly Told[] {
  if (told.length < 2) return told;
  const before = new Set(beforehand(words)(text).map((hit) => hit.clause));
  const left = told.filter((each) => !before.has(each.clause));
  return left.length > 0 ? left : told;
}

/**
 * What is told of the watch itself, where some is and some is not: "cloudy earlier, sunny now" is sunny. All of it where
 * a word says that it changed meanwhile.
 */
export function ofTheWatch<Told extends { readonly clause: number }>(
  told: readonly Told[],
  text: Spoken,
  words: Words,
): readonly Told[] {
  const [first, last] = [told[0], told.at(-1)];
  if (!first || !last || first === last) return told;
  // "fog burned off later, but foggy while I watched"
  const during = new Set(watching(words)(text).map((hit) => hit.clause));
  const then = told.filter((each) => during.has(each.clause));
  if (then.length > 0) return then;
  if (changesIn(text, words)(first.clause, last.clause)) return told;
  const otherTimes = otherTimeClauses(text, words);
  const now = told.filter((each) => !otherTimes.has(each.clause));
  if (now.length === 0) return told;
  // "the app said cloudy but it was sunny"
  const reported = new Set(reports(words)(text).map((hit) => hit.clause));
  const seen = now.filter((each) => !reported.has(each.clause));
  return withoutBeforehand(seen.length > 0 ? seen : now, text, words);
}

/** Tells whether a word for a change stands in one of the clauses `[from, to]`, or an arrow between them. */
export function changesIn(text: Spoken, words: Words): (from: number, to: number) => boolean {
  const changed = new Set(changes(words)(text).flatMap((hit) => (hit.value ? [hit.clause] : [])));
  for (const [at, { word, clause }] of text.tokens.entries()) {
    const next = text.tokens[at + 1];
    if (words.weather.changedBy.includes(word) && next?.clause === clause && isClock(text, next, words))
      changed.add(clause);
  }
  const arrows = new Set(text.clauses.flatMap(({ gap }, clause) => (/→|➡|->|=>/.test(gap) ? [clause] : [])));
  return (from, to) => {
    for (let clause = from; clause <= to; clause++) {
      if (changed.has(clause) || (clause > from && arrows.has(clause))) return true;
    }
    return false;
  };
}

/** "10:15" (its hour), "1015", "noon"; not the 12 of "10 by 12". */
const isClock = ({ folded }: Spoken, { word, span }: Token, { times }: Words): boolean =>
  /^\d{3,4}(?:[ap]m)?$|^\d{1,2}[ap]m$/.test(word) ||
  /^:\d/.test(folded.slice(span[1], span[1] + 2)) ||
  word in times.noon;

const questions = madeOnce((words: Words) =>
  phraseFinder(words.weather.questions.map((phrase) => [phrase, true] as const)),
);

/** True for a question what a word means: "what counts as breezy?" */
export const asksMeaning = (folded: string, words: Words): boolean => questions(words)(folded).length > 0;

const watching = madeOnce((words: Words) =>
  hitFinder(
    words.weather.duringWatch.map((phrase) => [phrase, true] as const),
    words,
  ),
);

/** True where a word that does not count stands beside a change or an "or": "light breeze, then nothing" was not all one. */
export function changedInto(
  left: readonly { readonly from: number; readonly clause: number; readonly negated: boolean }[],
  text: Spoken,
  words: Words,
): boolean {
  if (left.length === 0) return false;
  const changed = changesIn(text, words);
  const { alternativeJoins } = words.weather;
  return left.some(
    ({ from, clause, negated }) =>
      !negated && (changed(clause, clause) || alternativeJoins.includes(text.tokens[from - 1]?.word ?? '')),
  );
}

/** Tells whether "another", "the other" stands between two positions: two sources that may disagree. */
export const otherSourceBetween = ({ tokens }: Spoken, { weather }: Words) => {
  const at = tokens.flatMap(({ word }, token) => (weather.otherSources.includes(word) ? [token] : []));
  return (from: number, to: number): boolean => at.some((token) => token >= from && token < to);
};

/** True where all tokens of the clause are small words, but for those that `known` takes. */
export const restIsFiller = (
  text: Spoken,
  words: Words,
  clause: number,
  known: (token: number) => boolean,
): boolean => {
  const { from, to } = text.clauses[clause]!;
  if (to - from > LONGEST_ASIDE) return false;
  for (let at = from; at < to; at++) {
    const token = text.tokens[at]!;
    if (!known(at) && !/^\d/.test(token.word) && !isFiller(token, words)) return false;
  }
  return true;
};

/** Behind a correction, a number that is all of the first clause: "sorry, about 15", not "sorry, 15 violets". */
export const isAllThatIsPut = ({ clause }: { readonly clause: number }, text: Spoken, words: Words): boolean =>
  clause === 0 && restIsFiller(text, words, clause, () => false);

/** True where a clause of its own is only what `isLabel` takes, and leads over to the next: "sky: clear", "wind - light". */
export function labelledBefore(text: Spoken, clause: number, isLabel: (token: number) => boolean): boolean {
  const before = text.clauses[clause - 1];
  const here = text.clauses[clause];
  if (!before || !here || !/^[^\n]*(?:[:=(]|-)\s*$/.test(here.gap)) return false;
  if (before.to - before.from > LONGEST_ASIDE) return false;
  let labels = 0;
  for (let at = before.from; at < before.to; at++) {
    if (isLabel(at)) labels++;
    else if (!text.tokens[at]!.skipped) return false;
  }
  return labels > 0;
}

/**
 * What corrects itself means the last said: reads what stands behind each word of correction, from the last on, and
 * takes the first that reads as anything; else the whole. The parts keep their positions: what is before is blank, and
 * given apart.
 */
export function lastSaid<Value>(
  text: string,
  folded: string,
  words: Words,
  read: (part: string, before: string) => Reading<Value>,
): Reading<Value> {
  const corrected = corrections(words)(folded);
  for (const { span } of [...corrected].reverse().slice(0, MOST_CORRECTIONS)) {
    // "70 rather than 75"
    if (/^\s{0,3}than\b/.test(folded.slice(span[1], span[1] + 10))) continue;
    // "it was rather windy", "rather cloudy"
    const adverb = words.weather.notCorrecting.includes(folded.slice(...span));
    if (adverb && /(?:^|[\p{L}\p{N}'])\s*$/u.test(folded.slice(0, span[0]))) continue;
    const reading = read(' '.repeat(span[1]) + text.slice(span[1]), text.slice(0, span[0]));
    if (reading.state !== 'none') return reading;
  }
  return read(text, '');
}

/** Nobody corrects themselves more often in one answer; a text that seems to is read from its end. */
const MOST_CORRECTIONS = 4;
