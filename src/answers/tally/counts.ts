/** Finds the numbers of a tally with what makes them inexact: "2", "3 or 4", "about 5", "a few", "several". */
import type { Words } from '../../../shared/words.js';
import { findNumbers } from '../numbers.js';
import type { Span } from '../reading.js';
import type { Token } from './lexicon.js';
import { tallyLexicons } from './vocabulary.js';

export interface CountSaid {
  /** Possible values, best first; empty where only "several" was said. */
  readonly values: readonly number[];
  /** False: it must be asked back. */
  readonly exact: boolean;
  /** "a", "an" or "the": one, but only before a name. */
  readonly article: boolean;
  /** "the rest": what a sum said before leaves over. */
  readonly remainder?: true;
  readonly span: Span;
}

/** More queens than this on one plant in one watch nobody has counted; such a number is something else. */
const MOST_QUEENS = 500;

/** A count and the tokens `[from, to)` it takes. */
export interface CountAt {
  readonly count: CountSaid;
  readonly from: number;
  readonly to: number;
  /** Where its number begins, and the count without what is said before it: the "like" of "looked like 2 imps". */
  readonly number: { readonly from: number; readonly count: CountSaid };
}

/** The middle of a range, a half rounded up. */
const middle = (low: number, high: number): number => Math.floor((low + high) / 2 + 0.5);

/**
 * Counts by the token they begin at. `folded` has names blanked out, so that no number of a name is taken; `beesFrom` is
 * where bees' names begin. Numbers that have a unit of something else behind them ("15 minutes") are left out.
 */
export function countsIn(
  folded: string,
  tokens: readonly Token[],
  beesFrom: ReadonlySet<number>,
  words: Words,
): ReadonlyMap<number, CountAt> {
  const { meanings, inexactBefore, inexactAfter, either, units } = tallyLexicons(words.tally);
  const { between, labelsBefore } = words.tally;
  const listNumbers = numbersOfLists(folded);
  const firstToken = new Map(tokens.map(({ span }, at) => [span[0], at]));
  const end = tokens.length;
  const found = new Map<number, CountAt>();
  const numbers = findNumbers(folded, words);
  const tokenAfter = (position: number, from: number): number => {
    let at = from;
    while (at < end && tokens[at]!.span[0] < position) at++;
    return at;
  };
  for (let index = 0; index < numbers.length; index++) {
    const number = numbers[index]!;
    let from = firstToken.get(number.span[0]);
    if (from === undefined) continue;
    let to = tokenAfter(number.span[1], from);
    if (isClockOrCode(folded, number.span) || listNumbers.has(number.span[0])) continue;
    const isLabel =
      labelsBefore.includes(tokens[from - 1]?.text ?? '') &&
      tokens[to]?.isWord !== true &&
      !beesFrom.has(tokens[to]?.span[0] ?? -1);
    if (isLabel) continue;
    if (!Number.isInteger(number.value) || number.decimals > 0 || number.value > MOST_QUEENS) {
      // "2.5 imps" counts something, but who knows what
      if (!beesFrom.has(tokens[to]?.span[0] ?? -1)) continue;
      const span: Span = [tokens[from]!.span[0], tokens[to - 1]!.span[1]];
      const count = { values: [], exact: false, article: false, span };
      found.set(from, { count, from, to, number: { from, count } });
      continue;
    }
    const values = [number.value];
    let exact = true;
    let next = numbers[index + 1];
    const closed = next ? tokenAfter(next.span[1], to) : to;
    const again =
      next?.value === number.value && tokens[to]?.text === '(' && closed === to + 2 && tokens[closed]?.text === ')';
    if (again) {
      // "one (1) auricomus"
      to = closed + 1;
      index++;
      next = numbers[index + 1];
    }
    if (next && next.decimals === 0) {
      const open = tokens[to]?.text === '(' || tokens[to]?.text === ',' ? 1 : 0;
      const joined = either.at(tokens, to + open);
      const sign = joined?.phrase === '-' || joined?.phrase === '/';
      // the columns of "columbine / 45 / 1 two-spotted" are no range
      const isColumn = joined?.phrase === '/' && /^\s+\/\s/.test(folded.slice(number.span[1], next.span[0]));
      // "imp 2 - bimac 1" is no range either; "2-3" and "2 - 3" are
      const near = joined !== null && !isColumn && tokens[joined.to]?.span[0] === next.span[0];
      const within =
        between.includes(tokens[from - 1]?.text ?? '') &&
        words.tally.ands.includes(tokens[to]?.text ?? '') &&
        tokens[to + 1]?.span[0] === next.span[0];
      // "3 - two common eastern and one brown belted"
      const isSumAhead = number.value > next.value && /^\s+[-–]\s/.test(folded.slice(number.span[1], next.span[0]));
      if (within && next.value !== number.value) {
        values.splice(0, 1, middle(number.value, next.value), number.value, next.value);
        exact = false;
        to = tokenAfter(next.span[1], to + 1);
        index++;
      } else if (joined && near && !(sign && open) && next.value !== number.value && !isSumAhead) {
        const low = Math.min(number.value, next.value);
        const high = Math.max(number.value, next.value);
        const range = sign || joined.phrase === 'to';
        values.splice(0, 1, ...(range ? [middle(low, high), low, high] : [number.value, next.value]));
        exact = false;
        to = tokenAfter(next.span[1], joined.to);
        index++;
      }
    }
    const unit = units.at(tokens, to);
    // "2 visits by impatiens"; the "am" of "1 am bumble" is no hour
    const saysQueens = unit !== null && meanings.at(tokens, unit.to)?.kinds.has('queens') === true;
    // "3 c eastern" is no 3 °C
    const initial = unit !== null && unit.phrase.length === 1 && beesFrom.has(tokens[unit.to]?.span[0] ?? -1);
    if (unit && !saysQueens && !initial && !beesFrom.has(tokens[unit.to + 1]?.span[0] ?? -1)) continue;
    const numberFrom = from;
    const exactNumber = exact;
    for (let before = from - 1; before >= Math.max(0, from - 4); before--) {
      if (inexactBefore.at(tokens, before)?.to === from) {
        exact = false;
        from = before;
      }
    }
    const numberTo = to;
    const after = inexactAfter.at(tokens, to);
    // "2 maybe impatiens", "one maybe a tricolored": the doubt is about the name
    const isAboutName = (): boolean => {
      const hedge = meanings.at(tokens, to);
      if (hedge?.kinds.has('doubtful') !== true) return false;
      const article = words.numbers.articles.includes(tokens[hedge.to]?.text ?? '') ? 1 : 0;
      return beesFrom.has(tokens[hedge.to + article]?.span[0] ?? -1);
    };
    // "5+ imps" is inexact, "2 + 1" are two counts
    const behind = after === null ? null : (tokens[after.to]?.span[0] ?? -1);
    const adds =
      after?.phrase === '+' &&
      ((beesFrom.has(behind ?? -1) && tokens[to]!.span[0] > tokens[to - 1]!.span[1]) ||
        numbers.some(({ span }) => span[0] === tokens[after.to]?.span[0]));
    if (after && !adds && !isAboutName()) {
      exact = false;
      to = after.to;
    }
    const countFrom = (at: number, isExact: boolean): CountSaid => ({
      values: [...new Set(values)],
      exact: isExact,
      article: false,
      span: [tokens[at]!.span[0], tokens[to - 1]!.span[1]],
    });
    const numberExact = exactNumber && to === numberTo;
    found.set(from, {
      count: countFrom(from, exact),
      from,
      to,
      number: { from: numberFrom, count: countFrom(numberFrom, numberExact) },
    });
  }
  return found;
}

/** "3:15", "4/27", "12%", "$5": a number that is part of a time, a date or a sum. */
function isClockOrCode(folded: string, [from, to]: Span): boolean {
  return (
    /(?:\d[:/]|[$#])$/.test(folded.slice(Math.max(0, from - 2), from)) || /^(?::\d|\/\d)/.test(folded.slice(to, to + 2))
  );
}

/** Where "1." and "2." number the items of a list: at the head of lines, or with brackets anywhere. */
function numbersOfLists(folded: string): ReadonlySet<number> {
  for (const pattern of [/(?:^|\n)[ \t]*(\d)[.)](?=[ \t])/g, /(?:^|[\s(])(\d)\)(?=[ \t])/g]) {
    const found = [...folded.matchAll(pattern)].map(({ index, 0: typed, 1: digit }) => ({
      at: index + typed.indexOf(digit!),
      number: Number(digit),
    }));
    if (found.length > 1 && found.every(({ number }, at) => number === at + 1))
      return new Set(found.map(({ at }) => at));
  }
  return new Set();
}
