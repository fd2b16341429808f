/** A day that a text speaks of, and what the rules that find one are given. */
import type { Ask } from '../../../shared/phrases.js';
import type { DateOrder } from '../../../shared/vocabularies.js';
import type { Words } from '../../../shared/words.js';
import type { DayWords } from './day-words.js';
import type { Token } from './tokens.js';

export interface Scan {
  readonly tokens: readonly Token[];
  readonly words: Words;
  readonly dayWords: DayWords;
  /** ISO date and `HH:MM`, local to the survey. */
  readonly today: string;
  readonly time: string;
  readonly order: DateOrder;
}

interface Where {
  /** Its first token, and the one after its last. */
  readonly at: number;
  readonly next: number;
  /** Unmistakable: counts in a long note too, not only as the answer to the question for a date. */
  readonly inPassing: boolean;
}

/** A bare weekday; two where a slip is as near to two names. */
export type WeekdayMention = Where & { readonly is: 'weekday'; readonly weekdays: readonly number[] };

export type DayMention = Where & {
  readonly is: 'day';
  /** What it can mean, best first; never empty. */
  readonly dates: readonly [string, ...string[]];
  /** Why it is not sure by itself. */
  readonly doubt: Ask | null;
  /** With a year, or counted from today: which year is meant needs no guess. */
  readonly yearSaid: boolean;
  /** Day and month were said. */
  readonly explicit: boolean;
  /** "5-3", "5.3": a day only where nothing else is one, for it may be times or a measure. */
  readonly weak: boolean;
};

export type Mention =
  | WeekdayMention
  | DayMention
  /** A day that no calendar has: "4/31". */
  | (Where & { readonly is: 'impossible' })
  /** A time that is no day: "the other day". */
  | (Where & { readonly is: 'vague' });

/** Tells what begins at a token, or null. */
export type DayRule = (scan: Scan, at: number) => Mention | null;

export const dayMention = (
  where: { readonly at: number; readonly next: number },
  dates: readonly string[],
  more: Partial<Pick<DayMention, 'doubt' | 'yearSaid' | 'explicit' | 'weak' | 'inPassing'>> = {},
): Mention => {
  const [first, ...others] = dates;
  if (first === undefined) return { is: 'impossible', inPassing: true, ...where };
  return {
    is: 'day',
    doubt: null,
    yearSaid: true,
    explicit: false,
    weak: false,
    inPassing: true,
    ...more,
    dates: [first, ...others.filter((date) => date !== first)],
    at: where.at,
    next: where.next,
  };
};
