/** What a mark is: a count, a bee, a plant, a zero, a break: whatever means something in a tally. */
import type { Span } from '../reading.js';
import type { CountSaid } from './counts.js';
import type { NameSaid } from './names-said.js';

export type Break = 'line' | 'stop' | 'comma' | 'and' | 'or' | 'colon' | 'dash' | 'open' | 'close';

export type Mark = { readonly span: Span } & (
  | { readonly kind: 'bee'; readonly bee: NameSaid; readonly plural: boolean }
  | { readonly kind: 'plant'; readonly plant: NameSaid }
  /** All plants watched, or those not named. `each`: once for each. */
  | { readonly kind: 'plants'; readonly which: 'all' | 'rest'; readonly each: boolean }
  | { readonly kind: 'count'; readonly count: CountSaid }
  | { readonly kind: 'queens'; readonly plural: boolean }
  /** "they're all"; "both" and "all three" say how many, too. */
  | { readonly kind: 'all-bees'; readonly number: number | null }
  /** `ofZero`: behind a zero it is a doubt about that too. `behind`: always about what stands before it. */
  | { readonly kind: 'doubtful'; readonly ofZero: boolean; readonly behind: boolean }
  | { readonly kind: 'worker'; readonly plural: boolean }
  /** "on": `strong` where only a plant can follow. */
  | { readonly kind: 'preposition'; readonly strong: boolean }
  | { readonly kind: 'break'; readonly strength: Break }
  | {
      readonly kind:
        | 'zero'
        | 'nothing-else'
        | 'that-is-all'
        | 'mostly'
        /** "or so" behind a bee. */
        | 'inexact'
        | 'of-them'
        | 'says'
        | 'concludes'
        | 'each'
        | 'same'
        | 'same-one'
        | 'same-ones'
        | 'moved-on'
        | 'another'
        | 'pollen'
        | 'no-pollen'
        | 'cannot-tell'
        | 'total'
        | 'thing'
        /** "dead", "flew past": whether it counts is in doubt. */
        | 'unsettling'
        | 'insect'
        | 'takes-back'
        | 'denies'
        | 'takes-back-weakly'
        /** A word that nobody knows. */
        | 'unknown';
    }
);

export type MarkKind = Mark['kind'];
export type MarkOf<Kind extends MarkKind> = Extract<Mark, { kind: Kind }>;

/** "a", "the": counts one only where nothing else does. */
export const isArticle = (mark: Mark | undefined): boolean => mark?.kind === 'count' && mark.count.article;
export const namesBee = (mark: Mark | undefined): boolean => mark?.kind === 'bee' || mark?.kind === 'cannot-tell';
/** Whether it is a break of one of those strengths. */
export const ends = (mark: Mark | undefined, ...strengths: Break[]): boolean =>
  mark?.kind === 'break' && strengths.includes(mark.strength);
