/**
 * Reads how many flowers or queens: "about 100", "40 to 60", "none", "20 white and 15 pink". Whole numbers; `low` and
 * `high` are what was said, null where an end is open. Of queens an inexact count is unsure. "Several" is not
 * understood, and of flowers it is asked back with round numbers to choose from.
 */
import type { Count } from '../../shared/record.js';
import { blankElsewhere } from './count/elsewhere.js';
import { countOf, exactly, halfUp, mentionsIn } from './count/mentions.js';
import { countPhrases, type CountPhrases } from './count/phrases.js';
import { readSeveral } from './count/several.js';
import { byEar, sayings, strokesOrRoman } from './count/by-ear.js';
import {
  askedFor,
  labelled,
  withoutCorrected,
  withoutOtherNumbers,
  withoutQuestions,
  type Labelled,
} from './count/things.js';
import { noneSaid, readWithoutNumber } from './count/without-number.js';
import { findNumbers } from './numbers.js';
import { none, sure, unsure, type Reader, type Span } from './reading.js';
import { blank, fold } from './text.js';

/** Longer texts are no answer to "how many"; ordinary ones stay under a hundred characters. */
const MOST_CHARACTERS = 2000;
/** More numbers than this are no answer to "how many". */
const MOST_NUMBERS = 12;
/** "A million flowers" is a manner of speaking. */
const MOST_COUNTED = 999_999;
/** "1.200", "1 200": how some write 1,200; others mean something else. */
const THOUSANDS_BY_POINT_OR_BLANK =
  /(?<![\d.,]|\d\s)\d{1,3}(?:\.\d{3})+(?![\d.])|^\s*\d{1,3}(?:\s\d{3})+(?=\s*\p{L}*\s*$)/u;

/** "60 open, lots still in bud": of other flowers than those counted. */
function othersNotOpen(
  free: string,
  from: number,
  to: number,
  mentions: readonly Labelled[],
  phrases: CountPhrases,
): boolean {
  if (!phrases.notOpen.test(free.slice(from, to))) return false;
  return mentions.some(({ thing }) => phrases.open.test(thing)) || phrases.othersAtEnd.test(free.slice(0, from));
}

export const readCount: Reader<Count> = (text, context) => {
  const phrases = countPhrases(context.words);
  const folded = byEar(sayings(fold(text), context, phrases), context, phrases);
  if (folded.trim() === '') return none('empty');
  if (text.length > MOST_CHARACTERS) return none('too-long');
  const strokes = strokesOrRoman(text);
  if (strokes !== null) return sure(exactly(strokes), [[0, text.length]]);
  const numbers = findNumbers(folded, context.words).map(({ span }) => span);
  const free = withoutQuestions(blankElsewhere(withoutCorrected(folded, numbers, phrases), numbers), context, phrases);
  if (phrases.negative.test(free)) return none('count-not-whole');
  const pointed = THOUSANDS_BY_POINT_OR_BLANK.exec(free);
  if (pointed) {
    const value = Number(pointed[0].replace(/[.\s]/g, ''));
    const span: Span = [pointed.index, pointed.index + pointed[0].length];
    // "1.100, eleven hundred"
    const again = findNumbers(blank(free, [span]), context.words).some((number) => number.value === value);
    return again ? sure(exactly(value), [span]) : unsure([exactly(value)], 'count-doubt', [span]);
  }
  if (findNumbers(free, context.words).length > MOST_NUMBERS) return none('too-long');

  const nothing = noneSaid(free, context, phrases);
  // the "one" of "not one" is no number; the 0 of "0 queens" is
  const numbered = blank(
    free,
    nothing.filter(([from, to]) => !/\d/.test(free.slice(from, to))),
  );
  const found = mentionsIn(numbered, context.words, phrases);
  const dozens = /\d'?s\b/u.test(numbered); // "100s"
  if (dozens || found.some(({ vague, value }) => vague || value > MOST_COUNTED)) {
    return none(context.of === 'flowers' ? 'count-vague-flowers' : 'count-vague');
  }
  const counting = withoutOtherNumbers(numbered, found, context, phrases);
  const mentions = askedFor(labelled(numbered, counting, phrases), context, phrases);
  const [only, ...more] = mentions;
  if (!only) return readWithoutNumber(free, nothing.length > 0, context, phrases);
  if (mentions.some(({ value, low, high }) => [value, low ?? 0, high ?? 0].some((end) => !Number.isInteger(end)))) {
    return none('count-not-whole');
  }
  const used = mentions.map(({ span }) => span);
  const either = mentions.find(({ alternatives }) => alternatives.length > 0);
  // of flowers "20 or 30" is a range as good as any
  const [best] = either?.alternatives ?? [];
  if (best?.about && mentions.length === 1 && context.of === 'flowers' && !phrases.doubts.test(free))
    return sure(best, used);
  if (either) return unsure(either.alternatives, 'count-either', used);

  const reading = more.length === 0 ? sure(countOf(only), used) : readSeveral(numbered, mentions, context, phrases);
  if (reading.state !== 'sure') return reading;
  const { value } = reading;
  if (more.length === 0) {
    const { label, thing } = only;
    // "a queen or two"
    if (phrases.oneOrTwo.test(numbered.slice(0, only.number[0])) && value.value > 1) {
      const range: Count = { value: halfUp((1 + value.value) / 2), low: 1, high: value.value, about: true };
      return unsure([range, exactly(1), value], 'count-either', used);
    }
    // "two visits, same queen"
    if (context.of === 'queens' && value.value > 1 && phrases.same.test(free))
      return unsure([exactly(1), value], 'count-doubt', used);
    // "20 more than last time"
    if (phrases.relative.test(label)) return none('count-no-number');
    if (context.of !== 'queens' && phrases.notOpen.test(thing))
      return unsure([exactly(0), value], 'count-not-open', used);
    // "15 per stem", "100, half open", "20 % of 500"
    const partly = context.of === 'flowers' && phrases.partly.test(blank(numbered, used));
    if (partly || phrases.each.test(thing)) return unsure([value], 'count-doubt', used);
    // "60 minus a few"
    if (phrases.few.test(blank(numbered, used))) return unsure([value], 'count-doubt', used);
    // "one at 3:05 and another at 3:12"
    if (phrases.more.test(blank(numbered, used)) || (context.of === 'queens' && phrases.andOne.test(numbered)))
      return unsure([exactly(value.value + 1), value], 'count-doubt', used);
  }
  if (mentions.some(({ doubted }) => doubted) || phrases.doubts.test(free)) return unsure([value], 'count-doubt', used);
  // "none on the plum, 2 on the willow" is two
  const noneAtAll = nothing.some(
    ([from, to]) => !phrases.where.test(free.slice(to)) && !othersNotOpen(free, from, to, mentions, phrases),
  );
  if (value.value > 0 && noneAtAll) return unsure([value, exactly(0)], 'count-doubt', used);
  if (context.of === 'queens' && value.about) return unsure([value], 'count-inexact-queens', used);
  return sure(value, used);
};
