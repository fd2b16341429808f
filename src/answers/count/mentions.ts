/** Each number in an answer with the words that belong to it: "about 50", "200+", "under 20", "maybe 2 to 3 hundred". */
import type { Count } from '../../../shared/record.js';
import type { Words } from '../../../shared/words.js';
import { findNumbers, type NumberFound } from '../numbers.js';
import type { Span } from '../reading.js';
import { REACH, type CountPhrases } from './phrases.js';

export interface Mention {
  /** In the middle of what was said; may be a fraction, which no count is. */
  readonly value: number;
  readonly low: number | null;
  readonly high: number | null;
  readonly about: boolean;
  /** Said with "maybe" or "a few": not to be taken without a yes. */
  readonly doubted: boolean;
  /** "several hundred": a scale with nothing to multiply. */
  readonly vague: boolean;
  /** What "3 or 4" may mean, best first; none for other numbers. */
  readonly alternatives: readonly Count[];
  /** The number by itself. */
  readonly number: Span;
  /** The number and the words taken with it. */
  readonly span: Span;
}

/** What stands before and after a number says about it. */
interface Qualified {
  readonly kind: 'exact' | 'about' | 'at-least' | 'at-most';
  readonly doubted: boolean;
  readonly between: boolean;
  readonly few: boolean;
  readonly vague: boolean;
  readonly span: Span;
}

type Kind = Qualified['kind'];

/** "just under" is nearer than "under": the longest of the phrases that fit. */
function longest(
  patterns: Readonly<Record<'about' | 'atLeast' | 'atMost', RegExp>>,
  reached: (pattern: RegExp) => number,
): { readonly kind: Kind; readonly length: number } | null {
  const fitting: { readonly kind: Kind; readonly length: number }[] = [
    { kind: 'at-most', length: reached(patterns.atMost) },
    { kind: 'at-least', length: reached(patterns.atLeast) },
    { kind: 'about', length: reached(patterns.about) },
  ];
  const most = Math.max(...fitting.map(({ length }) => length));
  return most === 0 ? null : (fitting.find(({ length }) => length === most) ?? null);
}

/** "at least about 50" is at least 50. */
const firmer = (said: Kind, more: Kind): Kind => (more === 'about' && said !== 'exact' ? said : more);

/** Takes the qualifying words off both sides, one by one: "well, I'd say maybe about", "or so, give or take". */
function qualified(folded: string, number: Span, from: number, to: number, phrases: CountPhrases): Qualified {
  let kind: Kind = 'exact';
  let doubted = false;
  let between = false;
  let few = false;
  let vague = false;
  let start = number[0];
  let end = number[1];
  const scaleAlone = phrases.startsWithScale.test(folded.slice(number[0], number[1]));
  for (let round = 0; round < 6; round++) {
    const before = folded.slice(Math.max(from, start - REACH), start);
    const reached = (pattern: RegExp): number => pattern.exec(before)?.[0].length ?? 0;
    const taken = (pattern: RegExp): boolean => {
      const length = reached(pattern);
      start -= length;
      return length > 0;
    };
    const bound = longest(phrases.before, reached);
    if (scaleAlone && start === number[0] && phrases.before.few.test(before)) few = taken(phrases.before.few);
    else if (scaleAlone && start === number[0] && phrases.before.vague.test(before))
      vague = taken(phrases.before.vague);
    else if (bound) {
      kind = firmer(kind, bound.kind);
      start -= bound.length;
    } else if (taken(phrases.before.doubting)) doubted = true;
    else if (taken(phrases.before.between)) {
      between = true;
      break;
    } else if (!taken(phrases.before.passedOver)) break;
  }
  // "300 flowers or so"
  const thing = phrases.thingAtStart.exec(folded.slice(end, Math.min(to, end + REACH)))?.[0].length ?? 0;
  const behindThing = phrases.after.about.exec(folded.slice(end + thing, Math.min(to, end + thing + REACH)));
  if (thing > 0 && behindThing && to === folded.length) kind = firmer(kind, 'about');
  for (let round = 0; round < 3; round++) {
    const after = folded.slice(end, Math.min(to, end + REACH));
    const bound = longest(phrases.after, (pattern) => pattern.exec(after)?.[0].length ?? 0);
    // what stands right before the next number is that number's: "20 plus 15", "40~60"
    if (!bound || (to < folded.length && folded.slice(end + bound.length, to).trim() === '')) break;
    kind = firmer(kind, bound.kind);
    end += bound.length;
  }
  return { kind, doubted, between, few, vague, span: [start, end] };
}

/** "2 to 3 hundred": what multiplies the second multiplies the first. */
function scaledLike(low: NumberFound, high: NumberFound, folded: string, phrases: CountPhrases, words: Words): number {
  // "2-300" are hundreds, "1-100" are not
  const hundreds = /^-$/.test(folded.slice(low.span[1], high.span[0])) && low.value < 10 && high.value % 100 === 0;
  if (hundreds && low.value >= 1 && low.value * 100 < high.value && high.value < 1000) return low.value * 100;
  const base = phrases.scale.exec(folded.slice(high.span[0], high.span[1]).trim())?.groups?.['base'];
  const counted = base === undefined ? undefined : findNumbers(base, words)[0];
  if (!counted || low.value >= counted.value || counted.value === 0) return low.value;
  return low.value * (high.value / counted.value);
}

export const countOf = ({ value, low, high, about }: Mention): Count => ({ value, low, high, about });

export const exactly = (value: number): Count => ({ value, low: value, high: value, about: false });

export const halfUp = (value: number): number => Math.floor(value + 0.5);

/** Two numbers this near each other, joined by "or", may as well be a range: "3 or 4", "30 or 40". */
const near = (low: number, high: number): boolean => high - low <= Math.max(1, low / 2);

/** All mentions, left to right. `folded` has everything blanked that is no count. */
export function mentionsIn(folded: string, words: Words, phrases: CountPhrases): Mention[] {
  const numbers = findNumbers(folded, words);
  const mentions: Mention[] = [];
  for (let at = 0; at < numbers.length; at++) {
    const first = numbers[at]!;
    const from = at === 0 ? 0 : numbers[at - 1]!.span[1];
    const second = numbers[at + 1];
    const own = qualified(folded, first.span, from, second?.span[0] ?? folded.length, phrases);
    const common = { doubted: own.doubted || own.few, vague: own.vague, alternatives: [], number: first.span };
    if (second) {
      const ahead = numbers[at + 2]?.span[0] ?? folded.length;
      const other = qualified(folded, second.span, first.span[1], ahead, phrases);
      const span: Span = [own.span[0], other.span[1]];
      const number: Span = [first.span[0], second.span[1]];
      const between = [folded.slice(first.span[1], second.span[0]), folded.slice(own.span[1], other.span[0])];
      const joined = (pattern: RegExp): boolean => between.some((words) => pattern.test(words));
      // "100 flowers, give or take 20"
      const margin = second.value < first.value && phrases.plusOrMinusAtEnd.test(between[0] ?? '');
      if (joined(phrases.plusOrMinus) || margin) {
        const [low, high] = [Math.max(0, first.value - second.value), first.value + second.value];
        mentions.push({ ...common, value: first.value, low, high, about: true, number, span });
        at++;
        continue;
      }
      const ranged =
        joined(phrases.ranges) ||
        (own.between && joined(phrases.and)) ||
        (own.kind === 'at-least' && other.kind === 'at-most' && second.span[0] - first.span[1] < REACH);
      const either = !ranged && joined(phrases.either);
      if (ranged || either) {
        const start = scaledLike(first, second, folded, phrases, words);
        const [low, high] = start <= second.value ? [start, second.value] : [second.value, start];
        const doubted = common.doubted || other.doubted;
        if (ranged && low < high) {
          mentions.push({ ...common, doubted, value: halfUp((low + high) / 2), low, high, about: true, number, span });
          at++;
          continue;
        }
        if (either && low < high) {
          const range: Count = { value: halfUp((low + high) / 2), low, high, about: true };
          const each = [exactly(start), exactly(second.value)];
          const alternatives = near(low, high) ? [range, ...each] : each;
          mentions.push({ ...common, ...range, doubted: true, alternatives, number, span });
          at++;
          continue;
        }
      }
    }
    const value = own.few ? first.value * 3 : first.value;
    // "a couple hundred" is no exact two hundred
    const loose = phrases.looseGroup.test(folded.slice(...first.span));
    mentions.push({
      ...common,
      value,
      low: own.kind === 'at-most' ? null : value,
      high: own.kind === 'at-least' ? null : value,
      about: own.kind !== 'exact' || own.few || loose,
      span: own.span,
    });
  }
  return mentions;
}
