/** Counts, bees and roles of one run of a tally, each with what was said beside it, before they are made into rows. */
import type { Span } from '../reading.js';
import type { CountSaid } from './counts.js';
import type { Break } from './mark.js';
import type { NameSaid } from './names-said.js';
import type { RowSaid, TakesBack } from './said.js';

/** A count, a bee or a role with all that was said beside it, before counts and bees are paired. */
export interface Head {
  type: 'count' | 'bee' | 'role' | 'insect';
  count: CountSaid | null;
  bee: NameSaid | null;
  plural: boolean;
  role: RowSaid['role'];
  /** What stands between it and the head before. */
  gap: Break | null;
  /** "possibly another" */
  uncertain: boolean;
  queens: boolean;
  worker: boolean;
  pollen: boolean | 'none';
  doubt: boolean;
  each: boolean;
  total: boolean;
  all: boolean;
  /** "both" 2, "all three" 3. */
  allNumber: number | null;
  /** "3 of them" */
  ofThem: boolean;
  /** "so 2 imps" counts again; "my wife says 2 imps" may. */
  again: RowSaid['again'];
  unresolved: Span | null;
  takesBack: TakesBack;
  /** "not 3 impatiens" */
  denied: boolean;
  orBefore: boolean;
  /** The bee of "bimac: redbud 1", with its sign behind it. */
  leads: boolean;
  bracketed: boolean;
  /** "she went to both": one queen, on one plant after the other. */
  tours: boolean;
  span: Span;
}

export const headOf = (type: Head['type'], span: Span): Head => ({
  type,
  count: null,
  bee: null,
  plural: false,
  role: 'new',
  gap: null,
  uncertain: false,
  queens: false,
  worker: false,
  pollen: false,
  doubt: false,
  each: false,
  total: false,
  all: false,
  allNumber: null,
  ofThem: false,
  again: null,
  unresolved: null,
  takesBack: 'no',
  denied: false,
  orBefore: false,
  leads: false,
  bracketed: false,
  tours: false,
  span,
});
