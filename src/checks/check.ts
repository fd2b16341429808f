/** What a check is: it looks at what is known of one watch so far and may notice something. */
import type { History } from '../../shared/history.js';
import type { Finding, Place, Temperature } from '../../shared/record.js';
import type { Survey } from '../../shared/survey.js';

/** What a check may know of a watch: a stored `Watch` fits, and so does a report with fields still open (null). */
export interface Draft {
  readonly id: string | null;
  /** The observer's key. */
  readonly observer: string | null;
  /** Local day, `2026-05-02`. */
  readonly date: string | null;
  /** Local times, `HH:MM`; `end` is null while only the start is known. */
  readonly times: { readonly start: string; readonly end: string | null } | null;
  /** Minutes watched, pauses out; null takes the span of the times. */
  readonly minutes: number | null;
  readonly place: Readonly<Place> | null;
  readonly temperature: Readonly<Temperature> | null;
}

export const CHECK_NAMES = ['length', 'temperature', 'season', 'region', 'same-watch', 'same-spot'] as const;
export type CheckName = (typeof CHECK_NAMES)[number];

/**
 * What was noticed. The weights rise: `keep` only stands in the record; `ask` is put to the observer, whose word
 * settles it; `query` is put to the observer and, if they stand by it, to the coordinator. `values` are the numbers
 * and words of its sentences, with units in their names. Whoever stores it adds when, and what was replied.
 */
export type CheckFinding = Pick<Finding, 'weight' | 'values'> & { readonly check: CheckName };

export interface Check {
  readonly name: CheckName;
  /** The weights it can give. */
  readonly weights: readonly Finding['weight'][];
  /** Null where nothing is odd, and where what it looks at is not known yet. */
  check(watch: Draft, history: History, survey: Survey): CheckFinding | null;
}
