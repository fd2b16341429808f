/** What a part of the report is made of. A section is a file in `sections/`, a line in `index.ts`. */
import type { TopLevelSpec } from 'vega-lite';

/** Shown for every figure that the data cannot give. */
export const NOT_ENOUGH = 'not enough data';

export interface Section {
  readonly title: string;
  /** One sentence: what it shows. */
  readonly shows: string;
  /** One sentence: what it does not show. */
  readonly limits: string;
  readonly computed: string;
  /** Null where there is nothing to draw. */
  readonly chart: TopLevelSpec | null;
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** A number as the report prints it. */
export const figure = (value: number | null, digits = 2): string =>
  value === null || !Number.isFinite(value) ? NOT_ENOUGH : value.toFixed(digits);

/** An interval as the report prints it; `missing` says why there is none. */
export const interval = (
  ends: { readonly low95: number; readonly high95: number } | null,
  missing = NOT_ENOUGH,
): string => (ends === null ? missing : `${figure(ends.low95)} to ${figure(ends.high95)}`);
