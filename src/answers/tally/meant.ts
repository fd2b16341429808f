/** What a row of a tally can mean, while its bee and counts still come from elsewhere and once they are settled. */
import type { Ask } from '../../../shared/phrases.js';
import type { NameValue } from '../names/index.js';
import type { Span } from '../reading.js';
import type { NameSaid } from './names-said.js';
import type { PlantsSaid, RowSaid } from './said.js';

/** One plant of a row: names it could have, best first; null where none was said. */
export interface PlantMeant {
  readonly names: readonly NameValue[];
  readonly clear: boolean;
  readonly span: Span | null;
}

/** A row of the tally with all that it could mean. */
export interface RowMeant {
  /** Possible counts, best first; empty where only "several" was said. */
  readonly counts: readonly number[];
  /** Names the bee could have, best first; empty for a zero. */
  readonly bees: readonly NameValue[];
  readonly beeSpan: Span | null;
  readonly doubt: boolean;
  readonly plant: PlantMeant | null;
  readonly seenBefore: boolean;
  /** How many had pollen. */
  readonly pollen: number | 'all' | null;
  readonly worker: boolean;
}

export interface TallyMeant {
  readonly rows: readonly RowMeant[];
  /** The first of these is asked back; none: the tally is sure. */
  readonly doubts: readonly Ask[];
  /** Counts that no bee goes with; a tally cannot be made of them. */
  readonly beesMissing: boolean;
}

/** A row on its way: its bee and counts may still come from elsewhere. */
export interface Row {
  readonly said: RowSaid;
  readonly plants: PlantsSaid | null;
  bee: NameSaid | null;
  counts: readonly number[];
  pollen: number | 'all' | null;
  worker: boolean;
  seenBefore: boolean;
  /** One queen, on one of the plants after the other. */
  tours: boolean;
}

export const isZero = (row: Row): boolean =>
  row.said.role === 'zero' || (row.counts.length === 1 && row.counts[0] === 0);
export const positive = (counts: readonly number[]): number => counts[0] ?? 0;
export const sumOf = (rows: readonly Row[]): number => rows.reduce((sum, row) => sum + positive(row.counts), 0);

export const pollenOf = ({ pollen, counts }: RowMeant): number => (pollen === 'all' ? positive(counts) : (pollen ?? 0));
