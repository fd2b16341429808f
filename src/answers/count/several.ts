/** Several numbers in one answer: a total with its parts, parts that add up, a product, or a question. */
import type { Count } from '../../../shared/record.js';
import { findAmounts } from '../numbers.js';
import { none, sure, unsure, type Context, type Reading } from '../reading.js';
import { countOf, exactly, type Mention } from './mentions.js';
import type { CountPhrases } from './phrases.js';
import type { Labelled } from './things.js';

/** An open end stays open in the sum. */
function sumOf(mentions: readonly Mention[]): Count {
  const add = (part: (mention: Mention) => number | null): number | null =>
    mentions.reduce<number | null>((sum, mention) => {
      const more = part(mention);
      return sum === null || more === null ? null : sum + more;
    }, 0);
  return {
    value: mentions.reduce((sum, mention) => sum + mention.value, 0),
    low: add(({ low }) => low),
    high: add(({ high }) => high),
    about: mentions.some(({ about }) => about),
  };
}

/** "35 (20 white, 15 pink)", "3 queens: two and one", "20 + 15 = 35": the whole and its parts agree. Null where none is. */
function wholeWithParts(
  folded: string,
  mentions: readonly Labelled[],
  phrases: CountPhrases,
): { readonly whole: Labelled; readonly parts: Count; readonly agree: boolean } | null {
  const [first, ...rest] = mentions;
  if (!first) return null;
  const gaps = mentions.slice(0, -1).map(({ gap }) => gap);
  const total = mentions.find((mention, at) => {
    const before = folded.slice(mentions[at - 1]?.number[1] ?? 0, mention.number[0]);
    return (
      phrases.totals.test(gaps[at]?.split(/[,;.\n(]/u)[0] ?? mention.thing) ||
      (at === 0 ? phrases.totals : phrases.totalsBefore).test(/[^,;.\n]*$/u.exec(before)?.[0] ?? '')
    );
  });
  if (total) {
    const parts = sumOf(mentions.filter((mention) => mention !== total));
    return { whole: total, parts, agree: parts.value === total.value };
  }
  const [gap = ''] = gaps;
  const generic = phrases.bees.test(first.thing) || phrases.flowers.test(first.thing);
  const opened = /^[^,;+&\n]*[:(=]/u.test(gap) || ((generic || /^\s*[,.-]/u.test(gap)) && rest.length > 1);
  const parts = sumOf(rest);
  return opened && parts.value === first.value ? { whole: first, parts, agree: true } : null;
}

export function readSeveral(
  folded: string,
  mentions: readonly Labelled[],
  context: Context,
  phrases: CountPhrases,
): Reading<Count> {
  const [first, second, ...further] = mentions;
  const used = mentions.map(({ span }) => span);
  if (!first || !second) return none('count-no-number');
  const sum = sumOf(mentions);
  const offering = (...offers: readonly Count[]): Reading<Count> => unsure(offers, 'count-several', used);

  if (sum.value === 0 && sum.high === 0) return sure(exactly(0), used); // "0 queens 0 workers"

  // "3 x 50 = 150", "150 (3 x 50)"
  const product = (of: readonly Mention[]): number => of.reduce((so, { value }) => so * value, 1);
  const multiplied = mentions.find(
    (mention) =>
      further.length > 0 &&
      mention.value > 1 &&
      product(mentions.filter((other) => other !== mention)) === mention.value &&
      mention.value * 2 !== sum.value,
  );
  if (multiplied) return sure({ ...countOf(multiplied), about: sum.about }, used);

  // "~350 (counted 35 on a tenth of it)", "a quarter of it was 20, so about 80"
  const shares = findAmounts(folded, context.words).filter(({ value }) => value > 0 && value < 1);
  if (shares.length > 0 && further.length === 0) {
    const [whole, part] = first.value > second.value ? [first, second] : [second, first];
    const reckoned = shares.some(({ value }) => Math.abs(whole.value * value - part.value) < 0.5);
    return reckoned ? sure(countOf(whole), used) : offering(countOf(whole), countOf(part), sum);
  }

  const known = wholeWithParts(folded, mentions, phrases);
  if (known?.agree) return sure(countOf(known.whole), used);
  if (known) return offering(countOf(known.whole), known.parts);

  const gaps = mentions.slice(0, -1).map(({ gap }) => gap);
  const [gap = ''] = gaps;
  // "one fifty"
  if (further.length === 0 && first.value < 10 && second.value >= 10 && second.value < 100 && /^[\s-]$/.test(gap)) {
    const spoken = exactly(first.value * 100 + second.value);
    // nobody counts fifty-one flowers as "one fifty"
    const words = !/\d/u.test(folded.slice(first.number[0], second.number[1]));
    return words && context.of === 'flowers' ? sure({ ...spoken, about: sum.about }, used) : offering(spoken, sum);
  }
  const text = mentions.map(({ lead, label }) => lead + label).join(' ');
  if (phrases.each.test(text) || gaps.some((words) => phrases.multiplying.test(words))) {
    const times = { ...exactly(product(mentions)), about: sum.about };
    // "62 of 80" may be a part, "62 out of 80" is
    const part =
      !phrases.each.test(text) && first.thing === '' && /^\s*\p{L}[\p{L}\s]*$/u.test(gap) && first.value < second.value;
    return part && further.length === 0 ? offering(countOf(first), times) : offering(times);
  }
  const rest = mentions.slice(1);
  const generic = ({ thing }: Labelled): boolean => phrases.bees.test(thing) || phrases.flowers.test(thing);
  // "3 queens, one with pollen": part of the three?
  const opening = generic(first) || (first.thing === '' && !phrases.plus.test(gap));
  if (opening && !rest.some(generic) && sumOf(rest).value <= first.value && rest.some(({ thing }) => thing !== '')) {
    return offering(countOf(first), sum);
  }
  // "6 visits from 2 queens"
  const queens = mentions.filter(({ thing }) => phrases.queens.test(thing));
  const bees = mentions.filter(({ thing }) => !phrases.queens.test(thing) && phrases.bees.test(thing));
  if (queens.length > 0 && bees.length > 0) return offering(sumOf(queens), sum);

  const added = gaps.every((words) => phrases.plus.test(words));
  const joined = rest.every(
    ({ lead, thing }) => phrases.together.test(lead) || phrases.togetherAtEnd.test(lead) || thing !== '',
  );
  const labelsAfter = mentions.every(({ thing }) => /\p{L}{2}/u.test(thing));
  const labelsBefore = mentions.every(({ lead }) => /\p{L}{2}/u.test(lead.replace(phrases.together, '')));
  const adds = added || (joined && (labelsAfter || labelsBefore));
  if (adds && !phrases.moments.test(text)) return sure(sum, used);
  return offering(sum, ...mentions.map(countOf));
}
