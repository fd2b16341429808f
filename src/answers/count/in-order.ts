/** One answer for several things that were asked for: "120 and 40", "about 120, 40 flowers", "60 each". */
import type { Count } from '../../../shared/record.js';
import type { Words } from '../../../shared/words.js';
import { anyOf } from '../any-of.js';
import { readCount } from '../count.js';
import { findNumbers } from '../numbers.js';
import type { Context } from '../reading.js';
import { fold, madeOnce } from '../text.js';

const wordsOf = (text: string): string[] => text.match(/[\p{L}']+/gu) ?? [];

/** Words that part two numbers, and words that say of a number only that it counts flowers, about. */
const listsOf = madeOnce(({ count, hedges, tally }: Words) => {
  const beside = [count.about, count.aboutAfter, count.atLeast, count.atMost, count.flowers, count.open, hedges.soft];
  const ands: ReadonlySet<string> = new Set(tally.ands);
  const all: ReadonlySet<string> = new Set([...beside.flat().flatMap(wordsOf), ...ands]);
  const and = anyOf(tally.ands);
  const each = new RegExp(`${anyOf(count.forEach)}(?![\\p{L}\\d])`, 'gu');
  return { ands, all, each, around: new RegExp(`^[\\s,;]*(?:${and}\\s)?|[\\s,;&+]+$|\\s${and}\\s*$`, 'gu') };
});

/**
 * The counts of `wanted` things, two or more, where the text is exactly as many numbers in a row; null for any other text:
 * "20 white and 15 pink" is one sum.
 */
export function readCountsInOrder(text: string, wanted: number, context: Context): Count[] | null {
  const folded = fold(text);
  const numbers = findNumbers(folded, context.words);
  if (wanted < 2 || numbers.length !== wanted) return null;
  const { ands, all, around } = listsOf(context.words);
  const starts = [0];
  for (const [at, { span }] of numbers.slice(1).entries()) {
    const [, from] = numbers[at]!.span;
    const between = folded.slice(from, span[0]);
    const sign = /[,;&+\n]/.exec(between);
    const word = [...between.matchAll(/\p{L}+/gu)].find(([typed]) => ands.has(typed));
    const end = sign ? sign.index + 1 : word ? word.index + word[0].length : null;
    if (end === null) return null;
    starts.push(from + end);
  }
  const counts = starts.map((from, at): Count | null => {
    const piece = folded.slice(from, starts[at + 1]);
    const [begin, end] = numbers[at]!.span;
    const beside = folded.slice(from, begin) + ' ' + folded.slice(end, starts[at + 1]);
    if (!wordsOf(beside).every((word) => all.has(word))) return null;
    const reading = readCount(piece.replace(around, ''), context);
    return reading.state === 'sure' ? reading.value : null;
  });
  return counts.includes(null) ? null : (counts as Count[]);
}

/** `wanted` times the one count of "60 each", "both about 75", "same for both, 60"; null for any other text. */
export function readCountForEach(text: string, wanted: number, context: Context): Count[] | null {
  const folded = fold(text);
  const { all, each } = listsOf(context.words);
  const bare = folded.replace(each, (found) => ' '.repeat(found.length));
  const numbers = findNumbers(bare, context.words);
  if (wanted < 2 || bare === folded || numbers.length === 0) return null;
  const beside = numbers.reduce(
    (left, { span: [from, to] }) => left.slice(0, from) + ' '.repeat(to - from) + left.slice(to),
    bare,
  );
  if (!wordsOf(beside).every((word) => all.has(word))) return null;
  const reading = readCount(bare, context);
  return reading.state === 'sure' ? Array.from({ length: wanted }, () => reading.value) : null;
}
