/** The shape of an index: the names of a list by all the ways in which they are looked up. */
import type { KnownName } from './known-name.js';
import type { Taxon } from './taxa.js';
import type { Use } from './use.js';

/** A bee's has one word, the genus left out. */
export interface Scientific {
  readonly first: string;
  readonly last: string;
  readonly taxon: Taxon;
}

export type NamesByLength = readonly (readonly KnownName[])[];

export interface NameIndex {
  /** By the stems of the words that say something, written as one: "halfblack", "blackgold". */
  readonly exact: ReadonlyMap<string, readonly Use[]>;
  /** By the same stems sorted, for "plum, American". */
  readonly anyOrder: ReadonlyMap<string, readonly Use[]>;
  /** By the first sound, then by length in letters. */
  readonly byStart: ReadonlyMap<string, NamesByLength>;
  /** By the last three letters: the first letter may be the misspelled one. */
  readonly byEnd: ReadonlyMap<string, readonly KnownName[]>;
  /** Scientific names by the first letters of their first word, for "B. imp" and "mert. virg.". */
  readonly byBeginning: ReadonlyMap<string, readonly Scientific[]>;
  /** Scientific names by their last word, for "M. virginica". */
  readonly byEpithet: ReadonlyMap<string, readonly Scientific[]>;
  /** Stems of the first and of the last words of all names. */
  readonly firsts: ReadonlySet<string>;
  readonly lasts: ReadonlySet<string>;
  readonly taxa: ReadonlyMap<string, Taxon>;
  /** The name shown to people. */
  readonly labels: ReadonlyMap<string, string>;
}
