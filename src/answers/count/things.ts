/** What each number of an answer counts: which numbers are left out, and the words that belong to those that stay. */
import { findNumbers } from '../numbers.js';
import type { Context, Span } from '../reading.js';
import { blank } from '../text.js';
import type { Mention } from './mentions.js';
import { REACH, type CountPhrases } from './phrases.js';

/** A mention in its context. */
export interface Labelled extends Mention {
  /** From the mention to the next. */
  readonly label: string;
  /** From the bare number to the next bare number. */
  readonly gap: string;
  /** Between the mention before and this one. */
  readonly lead: string;
  /** The first words of the label, that say what was counted. */
  readonly thing: string;
}

/** "just one big fat one", "eighteen on the far one": at the end of a clause that has its number. */
function isPronounOne(folded: string, { number }: Mention, mentions: readonly Mention[]): boolean {
  if (!/^\s*(?:$|[,.;:!?)\n])/u.test(folded.slice(number[1], number[1] + 4))) return false;
  const before = mentions.findLast((other) => other.number[1] <= number[0]);
  // "the two spotted one" counts nothing
  if (before === undefined || /(?<!\p{L})the\s+$/u.test(folded.slice(0, before.number[0]))) return false;
  return ADJECTIVES.test(folded.slice(before.number[1], number[0]));
}
const ADJECTIVES = /^(?:\s+(?!and\b|n\b|then\b|plus\b|or\b)[\p{L}-]+){1,4}\s+$/u;

/** Leaves out numbers that count something else: minutes, ages, "patch 2", "the other one", "at 3". */
export function withoutOtherNumbers(
  folded: string,
  mentions: readonly Mention[],
  context: Context,
  phrases: CountPhrases,
): readonly Mention[] {
  const before = ({ span }: Mention): string => folded.slice(Math.max(0, span[0] - REACH), span[0]);
  const counting = mentions.filter((mention) => {
    const after = folded.slice(mention.span[1], mention.span[1] + REACH);
    const labelled = folded.slice(Math.max(0, mention.number[0] - REACH), mention.number[0]);
    return !phrases.otherAfter.test(after) && !phrases.otherBefore.test(labelled);
  });
  if (counting.length < 2) return counting;
  const { minutes } = context.survey.protocol;
  const surer = counting.filter((mention) => {
    const { value } = mention;
    const typed = folded.slice(...mention.number);
    const pronoun =
      value === 1 &&
      /^\p{L}/u.test(typed) &&
      (phrases.beforePronounOne.test(before(mention)) || isPronounOne(folded, mention, counting));
    const clock =
      (value <= 12 || value === minutes || !Number.isInteger(value)) && phrases.clockBefore.test(before(mention));
    // "plant 1: 15"
    const numbering =
      /\p{L}\s$/u.test(before(mention)) && /^\s?[:)]\s/u.test(folded.slice(mention.span[1], mention.span[1] + 3));
    return !pronoun && !clock && !numbering;
  });
  return surer.length === 0 ? counting : surer;
}

/** The words right before a number that name what it counts: "open: 10", "white - 20"; "" where none do. */
const nameBefore = (lead: string): string =>
  /(?<name>[\p{L}' ]{2,40}?)\s*(?:[:=]|\s-)\s*$/u.exec(lead)?.groups?.['name']?.trim() ?? '';

export function labelled(folded: string, mentions: readonly Mention[], phrases: CountPhrases): Labelled[] {
  const start = mentions[0]?.number[0] ?? 0;
  // names stand before all numbers or behind all: "3 bees: 2 queens" names the three
  const namesFirst = nameBefore(folded.slice(0, start)) !== '';
  return mentions.map((mention, at) => {
    const label = folded.slice(mention.span[1], mentions[at + 1]?.span[0] ?? folded.length);
    const lead = folded.slice(mentions[at - 1]?.span[1] ?? 0, mention.span[0]);
    const gap = folded.slice(mention.number[1], mentions[at + 1]?.number[0] ?? folded.length);
    const name = namesFirst ? nameBefore(folded.slice(mentions[at - 1]?.number[1] ?? 0, mention.number[0])) : '';
    const behind = label.slice(0, phrases.breaks.exec(label)?.index ?? label.length).trim();
    return { ...mention, label, lead, gap, thing: name === '' ? behind : name };
  });
}

/** Leaves out what was counted but not asked for: buds, workers, stems, the flowers a bee sat on. */
export function askedFor(mentions: readonly Labelled[], context: Context, phrases: CountPhrases): readonly Labelled[] {
  const wanted = mentions.filter(({ thing }) => {
    const flowers = phrases.flowers.test(thing);
    const bees = phrases.bees.test(thing);
    if (context.of === 'queens') return !phrases.notQueens.test(thing) && (bees || !flowers);
    return context.of === 'flowers' ? flowers || !bees : true;
  });
  if (context.of === 'queens') {
    // "5 queens over two plants"
    if (!wanted.some(({ thing }) => phrases.bees.test(thing))) return wanted;
    return wanted.filter(({ thing }) => phrases.bees.test(thing) || !phrases.bearers.test(thing));
  }
  const open = wanted.filter(({ thing }) => !phrases.notOpen.test(thing));
  const asked = open.length > 0 ? open : wanted;
  // "26 total, 2 of them chewed"
  const left = asked.filter(
    ({ thing, label }, at) => at === 0 || !phrases.ofThem.test(label) || phrases.open.test(thing),
  );
  // "5 plants with 6 flowers each" needs both numbers
  const multiplied = mentions.some(({ thing, gap }) => phrases.each.test(thing) || phrases.multiplying.test(gap));
  if (multiplied) return left;
  const flowers = left.filter(({ thing }) => !phrases.bearers.test(thing) || phrases.flowers.test(thing));
  return flowers.length > 0 ? flowers : left;
}

/** Blanks what a later number replaces: "50, no 60", "make that 60", "not 50". `numbers` are those of the text. */
export function withoutCorrected(folded: string, numbers: readonly Span[], phrases: CountPhrases): string {
  const first = numbers[0];
  const last = numbers.at(-1);
  if (!first || !last || first === last) return folded;
  const correction = [...folded.matchAll(phrases.corrections)].findLast((match) => {
    const end = match.index + match[0].length;
    return first[1] <= match.index && end <= last[0];
  });
  const left = correction ? blank(folded, [[0, correction.index + correction[0].length]]) : folded;
  const denied = [...left.matchAll(phrases.denied), ...left.matchAll(new RegExp(phrases.partOf, 'gu'))].map(
    (match): Span => [match.index, match.index + match[0].length],
  );
  const all = numbers.every((number) => denied.some(([from, to]) => from <= number[0] && number[1] <= to));
  return all ? left : blank(left, denied);
}

/** Blanks a question of its own behind the count: in "40. Can I send a photo?" the mark doubts nothing. */
export function withoutQuestions(folded: string, context: Context, phrases: CountPhrases): string {
  if (!folded.includes('?')) return folded;
  const spans = [...folded.matchAll(/(?<=[.!?\n]\s{0,3})[^.!?\n]+\?/gu)]
    .filter(([question]) => phrases.questions.test(question) && findNumbers(question, context.words).length === 0)
    .map((match): Span => [match.index, match.index + match[0].length]);
  return blank(folded, spans);
}
