/**
 * Reads how many flowers or queens: "about 100", "40 to 60", "none", "20 white and 15 pink". Whole numbers; `low` and
 * `high` are what was said, null where an end is open. Of queens an inexact count is unsure. "Several" is not
 * understood, and of flowers it is asked back with round numbers to choose from.
 */
import type { Count } from '../../shared/record.js';
import { blankElsewhere } from './count/elsewhere.js';
import { exactly, mentionsIn, type Mention } from './count/mentions.js';
import { countPhrases, REACH, type CountPhrases } from './count/phrases.js';
import { findNumbers } from './numbers.js';
import { none, sure, unsure, type Context, type Reader, type Reading, type Span } from './reading.js';
import { blank, fold } from './text.js';

/** More numbers than this are no answer to "how many". */
const MOST_NUMBERS = 12;
/** "A million flowers" is a manner of speaking. */
const MOST_COUNTED = 999_999;

/** "1.200", "1 200": how some write 1,200; others mean something else. */
const THOUSANDS_BY_POINT_OR_BLANK =
  /(?<![\d.,]|\d\s)\d{1,3}(?:\.\d{3})+(?![\d.])|^\s*\d{1,3}(?:\s\d{3})+(?=\s*\p{L}*\s*$)/u;

/** A mention in its context: the words from it to the next, and the words between it and the one before. */
interface Labelled extends Mention {
  readonly label: string;
  readonly lead: string;
}

/** Blanks what a later number replaces: "50, no 60", "make that 60", "not 50". */
function withoutCorrected(folded: string, context: Context, phrases: CountPhrases): string {
  const number = (text: string): boolean => findNumbers(text, context.words).length > 0;
  let left = folded;
  const corrections = new RegExp(
    `${phrases.correcting}|(?<=[,.;\\n-]\\s*)no(?:\\s+wait)?[\\s,.-]+(?=[\\d~a-z])|->|\\*(?=\\d)`,
    'gu',
  );
  for (const match of [...folded.matchAll(corrections)].reverse()) {
    const end = match.index + match[0].length;
    if (number(folded.slice(end)) && number(folded.slice(0, match.index))) {
      left = blank(folded, [[0, end]]);
      break;
    }
  }
  const denied = [...left.matchAll(/(?<!if\s)\bnot\s+(?:\d[\d,]*)\b(?!\s*(?:%|percent))/gu)];
  const spans: Span[] = denied.map((match) => [match.index, match.index + match[0].length]);
  return number(blank(left, spans)) ? blank(left, spans) : left;
}

/** Leaves out numbers that count something else: minutes, ages, "patch 2", "the other one". */
function counting(folded: string, mentions: readonly Mention[], context: Context, phrases: CountPhrases): Mention[] {
  const { minutes } = context.survey.protocol;
  const strong = mentions.filter((mention) => {
    const before = folded.slice(Math.max(0, mention.span[0] - REACH), mention.span[0]);
    const after = folded.slice(mention.span[1], mention.span[1] + REACH);
    return !phrases.otherAfter.test(after) && !phrases.otherBefore.test(before);
  });
  if (strong.length < 2) return strong;
  const others = (left: readonly Mention[]): readonly Mention[] => (left.length === 0 ? strong : left);
  return [
    ...others(
      strong.filter(({ span, value }) => {
        const before = folded.slice(Math.max(0, span[0] - REACH), span[0]);
        const pronoun = /one\b/u.test(folded.slice(...span)) && value === 1 && phrases.beforePronounOne.test(before);
        const clock =
          (value <= 12 || value === minutes || !Number.isInteger(value)) && phrases.clockBefore.test(before);
        return !pronoun && !clock;
      }),
    ),
  ];
}

function labelled(folded: string, mentions: readonly Mention[]): Labelled[] {
  return mentions.map((mention, at) => ({
    ...mention,
    label: folded.slice(mention.span[1], mentions[at + 1]?.span[0] ?? folded.length),
    lead: folded.slice(mentions[at - 1]?.span[1] ?? 0, mention.span[0]),
  }));
}

/** The words of a label that say what was counted: up to the next mark, and not "and" or "then". */
const kindOfThing = (label: string): string => /^[^,;.\n():+]*/u.exec(label)?.[0] ?? '';

/** Leaves out what was counted but not asked for: buds, workers, the flowers a bee sat on. */
function askedFor(mentions: readonly Labelled[], context: Context, phrases: CountPhrases): readonly Labelled[] {
  const things = (mention: Labelled): string => kindOfThing(mention.label);
  const isOther = (mention: Labelled): boolean => {
    const thing = things(mention);
    if (context.of === 'queens')
      return phrases.notQueens.test(thing) || (phrases.flowers.test(thing) && !phrases.queens.test(thing));
    if (context.of === 'flowers') return phrases.queens.test(thing) && !phrases.flowers.test(thing);
    return false;
  };
  let left: readonly Labelled[] = mentions.filter((mention) => !isOther(mention));
  if (left.length === 0) return left;
  if (context.of !== 'queens') {
    const opened = left.filter((mention) => !phrases.notOpen.test(things(mention)));
    if (opened.length > 0) left = opened;
    const bearing = left.filter(
      (mention) => phrases.bearers.test(things(mention)) && !phrases.flowers.test(things(mention)),
    );
    if (
      bearing.length < left.length &&
      !phrases.each.test(mentions.map(things).join(' ')) &&
      left.some((mention) => phrases.flowers.test(things(mention)))
    ) {
      left = left.filter((mention) => !bearing.includes(mention));
    }
  }
  return left;
}

const countOf = ({ value, low, high, about }: Mention): Count => ({ value, low, high, about });

function sumOf(mentions: readonly Mention[]): Count {
  const add = (part: (mention: Mention) => number | null): number | null =>
    mentions.reduce<number | null>((sum, mention) => {
      const more = part(mention);
      return sum === null || more === null ? null : sum + more;
    }, 0);
  return {
    value: mentions.reduce((sum, mention) => sum + mention.value, 0),
    low: add((mention) => mention.low),
    high: add((mention) => mention.high),
    about: mentions.some((mention) => mention.about),
  };
}

/** Several numbers: a total with its parts, parts that add up, or a question. */
function readSeveral(folded: string, mentions: readonly Labelled[], phrases: CountPhrases): Reading<Count> {
  const [first, ...rest] = mentions;
  const used = mentions.map((mention) => mention.span);
  if (!first) return none('count-no-number');
  const sum = sumOf(mentions);
  const whole = mentions.find((mention) => mention.value * 2 === sum.value);
  if (whole) return sure(countOf(whole), used);
  const total = mentions.find((mention, at) => {
    const after = folded.slice(mention.number[1], mentions[at + 1]?.number[0] ?? folded.length);
    const before = folded.slice(mentions[at - 1]?.number[1] ?? 0, mention.number[0]);
    return phrases.totals.test(kindOfThing(after)) || phrases.totals.test(/[^,;.\n]*$/u.exec(before)?.[0] ?? '');
  });
  if (total) return unsure([countOf(total), sum], 'count-several', used);
  const text = mentions.map((mention) => mention.lead + mention.label).join(' ');
  if (phrases.each.test(text)) {
    const product = mentions.reduce((so, mention) => so * mention.value, 1);
    return unsure([{ ...exactly(product), about: mentions.some((mention) => mention.about) }], 'count-several', used);
  }
  const words = (mention: Labelled): string => kindOfThing(mention.label).replace(phrases.together, '').trim();
  const added = rest.every((mention) => phrases.plus.test(mention.lead));
  const joined = rest.every(
    (mention) =>
      phrases.together.test(mention.lead) || phrases.togetherAtEnd.test(mention.lead) || words(mention) !== '',
  );
  const labelsAfter = mentions.every((mention) => /\p{L}{2}/u.test(words(mention)));
  const labelsBefore = mentions.every((mention) => /\p{L}{2}/u.test(mention.lead.replace(phrases.together, '')));
  const generic = (mention: Labelled): boolean =>
    phrases.queens.test(words(mention)) || phrases.flowers.test(words(mention));
  const partOfFirst = generic(first) && !rest.some(generic) && rest.every((mention) => mention.value < first.value);
  if (partOfFirst) return unsure([countOf(first), sum], 'count-several', used);
  if ((added || (joined && (labelsAfter || labelsBefore))) && !phrases.moments.test(text)) return sure(sum, used);
  return unsure([sum, ...mentions.map(countOf)], 'count-several', used);
}

/** The words that say that nothing was there: "none", "no queens", "didn't see any". */
function noneSaid(folded: string, context: Context, phrases: CountPhrases): readonly Span[] {
  const text = folded.replace(phrases.notZero, (found) => ' '.repeat(found.length));
  const patterns = [phrases.zero, phrases.sawNone];
  if (context.of !== 'flowers') patterns.push(phrases.noQueens);
  if (context.of !== 'queens') patterns.push(phrases.noFlowers);
  return patterns.flatMap((pattern): Span[] => {
    const match = pattern.exec(text);
    return match ? [[match.index, match.index + match[0].length]] : [];
  });
}

/** An answer without a number. */
function readWithoutNumber(folded: string, empty: boolean, context: Context, phrases: CountPhrases): Reading<Count> {
  const all: Span[] = [[0, folded.length]];
  const doubted = phrases.doubts.test(folded);
  const counted = (value: number): Reading<Count> =>
    doubted ? unsure([exactly(value)], 'count-doubt', all) : sure(exactly(value), all);
  const vague = context.of === 'flowers' ? 'count-vague-flowers' : 'count-vague';
  if (/^\W*no\W*$/u.test(folded)) return unsure([exactly(0)], 'count-doubt', all);
  if (/^\W*o\W*$/u.test(folded)) return unsure([exactly(0)], 'count-doubt', all);
  if (empty && !(doubted && phrases.unknown.test(folded))) return counted(0);
  if (phrases.one.test(folded)) return counted(1);
  const fewest = phrases.few.exec(folded);
  const vaguest = phrases.vague.exec(folded);
  if (fewest && !(vaguest && vaguest.index <= fewest.index && vaguest[0].length > fewest[0].length)) {
    return unsure([{ value: 3, low: 3, high: 3, about: true }], 'count-few', all);
  }
  if (vaguest) return none(vague);
  if (phrases.unknown.test(folded)) return none('count-unknown');
  if (phrases.articleAndThing.test(folded) && doubted) return none('count-no-number');
  if (phrases.articleAndThing.test(folded))
    return folded.length > REACH ? unsure([exactly(1)], 'count-doubt', all) : counted(1);
  if (phrases.articleAndWords.test(folded)) return unsure([exactly(1)], 'count-doubt', all);
  return none('count-no-number');
}

export const readCount: Reader<Count> = (text, context) => {
  const phrases = countPhrases(context.words);
  const folded = fold(text);
  if (folded.trim() === '') return none('empty');
  const free = blankElsewhere(withoutCorrected(folded, context, phrases));
  // "-3" at the beginning, "minus 3"; a dash after a word is no sign
  if (/^\s*-\d|\b(?:minus|negative)\s+\d/u.test(free) && !phrases.plusOrMinus.test(free))
    return none('count-not-whole');
  const pointed = THOUSANDS_BY_POINT_OR_BLANK.exec(free);
  if (pointed) {
    const value = Number(pointed[0].replace(/[.\s]/g, ''));
    return unsure([exactly(value)], 'count-doubt', [[pointed.index, pointed.index + pointed[0].length]]);
  }
  if (findNumbers(free, context.words).length > MOST_NUMBERS) return none('too-long');

  const nothing = noneSaid(free, context, phrases);
  // the "one" of "not one" is no number; the 0 of "0 queens" is
  const numbered = blank(
    free,
    nothing.filter(([from, to]) => !/\d/.test(free.slice(from, to))),
  );
  const vagueDigits = /\d+(?:'s|s)\b/u.test(free);
  const found = vagueDigits ? [] : mentionsIn(numbered, context.words, phrases);
  if (vagueDigits || found.some((mention) => mention.vague || mention.value > MOST_COUNTED)) {
    return none(context.of === 'flowers' ? 'count-vague-flowers' : 'count-vague');
  }
  const counted = counting(numbered, found, context, phrases);
  const mentions = askedFor(labelled(numbered, counted), context, phrases);
  if (mentions.length === 0) return readWithoutNumber(free, nothing.length > 0, context, phrases);
  if (mentions.some(({ value, low, high }) => [value, low ?? 0, high ?? 0].some((end) => !Number.isInteger(end)))) {
    return none('count-not-whole');
  }
  const used = mentions.map((mention) => mention.span);
  const [only] = mentions;
  const reading = only && mentions.length === 1 ? sure(countOf(only), used) : readSeveral(free, mentions, phrases);
  if (reading.state !== 'sure') return reading;

  const { value } = reading;
  const [alternatives] = mentions.filter((mention) => mention.alternatives.length > 0);
  if (alternatives) {
    return unsure(alternatives.alternatives, 'count-either', used);
  }
  if (
    only &&
    context.of !== 'queens' &&
    phrases.notOpen.test(kindOfThing(only.label)) &&
    !/[,;.(]/u.test(only.label.slice(0, 3))
  ) {
    return unsure([exactly(0), value], 'count-not-open', used);
  }
  if (mentions.some((mention) => mention.doubted)) return unsure([value], 'count-doubt', used);
  if (phrases.doubts.test(free)) return unsure([value], 'count-doubt', used);
  if (value.value > 0 && nothing.length > 0) return unsure([value, exactly(0)], 'count-doubt', used);
  if (context.of === 'queens' && value.about) return unsure([value], 'count-inexact-queens', used);
  return sure(value, used);
};
