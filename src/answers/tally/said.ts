/** What was said in a tally, left to right: rows, the plants they stand beside, and where a sentence or line ends. */
import type { Span } from '../reading.js';
import type { CountSaid } from './counts.js';
import type { Break } from './mark.js';
import type { NameSaid } from './names-said.js';

export type TakesBack = 'no' | 'weakly' | 'strongly';

export interface RowSaid {
  readonly kind: 'row';
  /** Null where none was said: one bee, unless the name is a plural. */
  readonly count: CountSaid | null;
  /** Null where none was said: the bee said before, or all bees. */
  readonly bee: NameSaid | null;
  readonly plural: boolean;
  readonly role: 'new' | 'zero' | 'same' | 'same-one' | 'same-ones' | 'another';
  /** Once for each plant. */
  readonly each: boolean;
  /** "2 queens", "3 bees": counted as queens though no bee is named. */
  readonly queens: boolean;
  /** "3 of them": of queens told already. */
  readonly ofThem: boolean;
  /** Said before it: "so", that it counts again what was counted; "my wife says", that others may count the same. */
  readonly again: 'concludes' | 'says' | null;
  readonly worker: boolean;
  /** How many had pollen; `all` of the row's count; null where not said. */
  readonly pollen: number | 'all' | null;
  /** A hedge beside the name. */
  readonly doubt: boolean;
  /** A hedge beside the number: "possibly another". */
  readonly uncertain: boolean;
  /** Words where a bee should be, which nobody knows. */
  readonly unresolved: Span | null;
  /** One of the row before, not one more: "one with pollen", "(1 worker)". */
  readonly partOfLast: boolean;
  readonly bracketed: boolean;
  /** One queen, on one of its plants after the other. */
  readonly tours: boolean;
  /** Behind a colon or dash: it may tell what the row before consists of, as one in brackets. */
  readonly listed: boolean;
  /** "2 queens … in all": a sum. */
  readonly total: boolean;
  readonly takesBack: TakesBack;
  /** Bees of an "either … or" with this one. */
  readonly orBees: readonly NameSaid[];
  /** True where the order of counts and names could be read in two ways. */
  readonly unclear: boolean;
  readonly span: Span;
}

export interface PlantsSaid {
  readonly kind: 'plants';
  /** Empty: words in the place of a plant that nobody knows. */
  readonly plants: readonly NameSaid[] | 'all' | 'rest';
  readonly each: boolean;
  /** "on the phlox": a preposition stands before it. */
  readonly placed: boolean;
  /** A comma stands right behind it. */
  readonly comma: boolean;
  /** What stands behind it and makes it a heading. */
  readonly sign: 'colon' | 'dash' | 'line' | null;
  /** "or", "and" before it: it may belong with the plant before. */
  readonly joinedBy: Break | null;
  /** Words that nobody knows stand where its count should be. */
  readonly unread: boolean;
  readonly bracketed: boolean;
  readonly takesBack: TakesBack;
  readonly span: Span;
}

/** One bee for every count that names none: "they're all impatiens". */
export interface AllBeesSaid {
  readonly kind: 'all-bees';
  readonly bee: NameSaid;
  /** "both" 2, "all three" 3; null where it says no number. */
  readonly number: number | null;
  readonly span: Span;
}

export interface EndSaid {
  readonly kind: 'end';
  readonly strength: 'line' | 'stop';
  readonly span: Span;
}

export interface NothingElseSaid {
  readonly kind: 'nothing-else';
  readonly span: Span;
}

export type Said = RowSaid | PlantsSaid | AllBeesSaid | EndSaid | NothingElseSaid;
