/** The words of counting, made into patterns once for each loaded language. */
import type { Words } from '../../../shared/words.js';
import { anyAfterDigits, anyOf } from '../any-of.js';
import { madeOnce } from '../text.js';

/** How far from a number its own words are looked for, in characters: longer than any phrase of `words.yaml`. */
export const REACH = 60;

const endsWith = (words: readonly string[]): RegExp => new RegExp(`${anyOf(words)}[\\s:,]*$`, 'u');
const startsWith = (words: readonly string[]): RegExp => new RegExp(`^[\\s,(]*${anyAfterDigits(words)}`, 'u');
const wholly = (words: readonly string[]): RegExp => new RegExp(`^[\\s,:(]*${anyOf(words)}[\\s,:]*$`, 'u');
const anywhere = (...lists: readonly (readonly string[])[]): RegExp => new RegExp(anyOf(...lists), 'u');

export const countPhrases = madeOnce((words: Words) => {
  const { count, hedges, numbers, yesNo } = words;
  const bumbles = anyOf(count.queens, count.bees);
  const flowers = anyOf(count.flowers);
  const noThing = (things: string): RegExp =>
    new RegExp(`${anyOf(count.noBefore)}\\s+(?:(?!${anyOf(count.notQueens)})[\\p{L}'-]+\\s+){0,3}?${things}`, 'u');
  const articles = anyOf(numbers.articles);
  const another = count.together.filter((phrase) => count.more.some((more) => phrase.endsWith(` ${more}`)));
  return {
    zero: anywhere(count.zero),
    zeros: new RegExp(anyOf(count.zero), 'gu'),
    /** Before "in bud" they make it other flowers: "the rest in bud". */
    othersAtEnd: new RegExp(`${anyOf(count.vague, count.others)}\\s+(?:[\\p{L}']+\\s+){0,2}$`, 'u'),
    notZero: new RegExp(anyOf(count.notZero), 'gu'),
    zeroLike: new RegExp(`^\\W*${anyOf(count.zeroLike)}\\W*$`, 'u'),
    /** "-3" at the beginning, "minus 3"; a dash after a word is no sign, nor is "plus or minus 3". */
    negative: new RegExp(
      `^\\s*-\\d|(?<!\\p{L}\\s)${anyOf(count.negative)}\\s+(?:\\d|${anyOf(Object.keys(numbers.units), Object.keys(numbers.tens))})`,
      'u',
    ),
    partOf: new RegExp(`^\\W*${anyOf(count.partOf)}\\s+\\d[\\d,]*(?![\\d.%])`, 'u'),
    denied: new RegExp(`${anyOf(count.denied)}\\s+\\d[\\d,]*(?![\\d.])(?!\\s*%)`, 'gu'),
    noQueens: noThing(bumbles),
    noFlowers: noThing(flowers),
    sawNone: new RegExp(
      `${anyOf(count.negations)}\\s+(?:[\\p{L}']+\\s+){0,2}?${anyOf(count.seeing)}\\s+(?:[\\p{L}']+\\s+){0,2}?${anyOf(count.anything)}` +
        `|${anyOf(count.seeing)}\\s+(?:absolutely\\s+)?(?:no|zero)\\s+(?:[\\p{L}'-]+\\s+){0,2}?(?:${bumbles}|${flowers})`,
      'u',
    ),
    one: new RegExp(`^\\W*${anyOf(count.passedOver)}?\\s*${anyOf(count.one)}\\W*$`, 'u'),
    articleAndThing: new RegExp(
      `(?:^|\\s)${articles}\\s+(?:(?!${anyOf(count.notQueens)})[\\p{L}'-]+\\s+){0,2}?(?:${bumbles}|${flowers})`,
      'u',
    ),
    /** "a queen or two" */
    oneOrTwo: new RegExp(`(?:^|\\s)${articles}\\s+(?:[\\p{L}'-]+\\s+){1,3}${anyOf(count.either)}\\s*$`, 'u'),
    articleAndWords: new RegExp(
      `^\\W*(?:${anyOf(count.passedOver)}\\s+)?${articles}\\s+[\\p{L}'-]+(?:\\s+[\\p{L}'-]+){0,2}\\W*$`,
      'u',
    ),
    beforePronounOne: endsWith(count.beforePronounOne),
    queens: anywhere(count.queens),
    bees: anywhere(count.queens, count.bees),
    breaks: new RegExp(`${anyOf(count.breaks)}|[,;.\\n():+]|\\s-\\s`, 'u'),
    more: anywhere(count.more),
    where: startsWith(count.where),
    flowers: anywhere(count.flowers),
    thingAtStart: startsWith([...count.flowers, ...count.queens, ...count.bees]),
    notQueens: anywhere(count.notQueens),
    notOpen: anywhere(count.notOpen),
    open: anywhere(count.open),
    bearers: new RegExp(`^(?:(?!${anyOf(count.where)})[\\p{L}'-]+\\s+){0,2}?${anyOf(count.bearers)}`, 'u'),
    sayings: new RegExp(anyOf(Object.keys(count.sayings)), 'gu'),
    byEar: new RegExp(
      `^(?<before>\\W*(?:(?:${anyOf(count.passedOver)})\\s+){0,3})` +
        `(?<tens>(?:${anyOf(Object.keys(numbers.tens))}[\\s-]+)?)(?<heard>${anyOf(Object.keys(count.byEar))})` +
        `(?=(?<scale>\\s+${anyOf(Object.keys(numbers.scales), Object.keys(numbers.groups))})?\\s*(?:${bumbles}|${flowers}|${anyOf(count.ofThem)}|${anyOf(count.totals)})?[\\s.,!)]*$)`,
      'u',
    ),
    ofThem: startsWith(count.ofThem),
    questions: startsWith(yesNo.questions),
    before: {
      about: endsWith(count.about),
      atLeast: endsWith(count.atLeast),
      atMost: endsWith(count.atMost),
      passedOver: endsWith(count.passedOver),
      doubting: endsWith(hedges.doubting),
      few: endsWith(count.few),
      vague: endsWith(count.vague),
      between: endsWith(count.between),
    },
    after: {
      about: startsWith(count.aboutAfter),
      atLeast: startsWith(count.atLeastAfter),
      atMost: startsWith(count.atMostAfter),
    },
    ranges: wholly(count.ranges),
    and: wholly(numbers.joins.concat('&', '-')),
    plusOrMinus: wholly(count.plusOrMinus),
    plusOrMinusAtEnd: endsWith(count.plusOrMinus),
    either: wholly(count.either),
    together: new RegExp(`^[\\s)]*${anyOf(count.together)}`, 'u'),
    togetherAtEnd: new RegExp(
      `(?:${anyOf(count.together)}|[\\n(:])\\s*(?:${anyOf(count.about, count.passedOver)}\\s*){0,2}$`,
      'u',
    ),
    /** "20 + 15" · "20 and another 15" */
    plus: new RegExp(`^[\\s]*(?:\\+|plus|${anyOf(another)})\\s*$`, 'u'),
    /** "two bigs and a small" */
    andOne: new RegExp(
      `${anyOf(numbers.joins.concat('&', 'plus'))}\\s+${articles}\\s+${anyOf(count.beforePronounOne)}(?:\\s+(?:one|${bumbles}))?(?=\\s*(?:$|[,.;!)]))`,
      'u',
    ),
    totals: anywhere(count.totals),
    totalsBefore: anywhere(count.totals, count.totalsBefore),
    multiplying: new RegExp(
      `${anyOf(count.multiplying)}\\s*(?:${anyOf(count.about, count.passedOver)}\\s*){0,2}$`,
      'u',
    ),
    partly: new RegExp(`${anyOf(Object.keys(numbers.fractions), ['percent'])}|\\d\\s?%`, 'u'),
    relative: startsWith(count.relative),
    /** "each", "a stem". */
    each: new RegExp(`${anyOf(count.each)}|(?<!\\p{L})${articles}\\s+${anyOf(count.bearers)}`, 'u'),
    few: anywhere(count.few),
    vague: anywhere(count.vague),
    doubts: anywhere(count.doubts, hedges.doubting),
    unknown: anywhere(count.unknown),
    otherBefore: endsWith(count.otherBefore),
    otherAfter: startsWith(count.otherAfter),
    clockBefore: endsWith(count.clockBefore),
    moments: anywhere(count.moments),
    same: anywhere(count.same),
    corrections: new RegExp(
      `${anyOf(hedges.correcting, count.correcting)}|(?<=[,.;?!…\\n-]\\s{0,3})${anyOf(yesNo.bareNo)}[\\s,.-]+(?=[\\d~\\p{L}])|->|\\*(?=\\d)`,
      'gu',
    ),
    scale: new RegExp(
      `^(?<base>.*?)[\\s-]*(?<scale>${anyOf(Object.keys(numbers.scales), Object.keys(numbers.groups), Object.keys(numbers.manyGroups))}|k)$`,
      'u',
    ),
    looseGroup: new RegExp(
      `${anyOf(count.loose)}[\\s\\w]*${anyOf(Object.keys(numbers.scales), Object.keys(numbers.groups), Object.keys(numbers.manyGroups))}`,
      'u',
    ),
    startsWithScale: new RegExp(`^${anyOf(Object.keys(numbers.scales), Object.keys(numbers.groups))}`, 'u'),
  };
});
export type CountPhrases = ReturnType<typeof countPhrases>;
