/** The reference lists of bees and plants: one row a taxon, read from `shared/names/*.csv` by `src/settings`. */
import { z } from 'zod';
import { COUNTING_UNITS } from './vocabularies.js';

/** The genus: what is known to it alone, a pair that cannot be told apart, and what cannot be told. */
export const GENUS = 'Bombus';

/** Where a list lives in one cell, its items are joined by ` | `. */
const list = z.string().transform((cell) =>
  cell
    .split('|')
    .map((item) => item.trim())
    .filter((item) => item !== ''),
);
const text = z.string();
const day = z.union([z.literal(''), z.string().regex(/^\d\d-\d\d$/)]).transform((cell) => (cell === '' ? null : cell));

/** A row of `shared/names/bees.csv`. Days are `MM-DD`, usual at about 43° N; null where not known. */
export const beeRow = z.strictObject({
  name: z.string().regex(/^Bombus [a-z]+$/, 'a bee is named like "Bombus impatiens"'),
  subgenus: text,
  /** A cuckoo has no workers and founds no nest. */
  cuckoo: z.enum(['yes', 'no']).transform((cell) => cell === 'yes'),
  common: list,
  /** Former and other scientific names that lead to this one, as "Bombus ashtoni" or "Psithyrus ashtoni". */
  former: list,
  /** Short forms observers type: "bimac", "imp". */
  short: list,
  /** Where it occurs: `east`, `central`, `west`, `north`, `mexico`, `europe`. */
  regions: list,
  queens_from: day,
  workers_from: day,
  /** Accepted names it is easily taken for; each points back. */
  look_alikes: list,
  source: text,
});

/** A row of `shared/names/plants.csv`. */
export const plantRow = z.strictObject({
  /** Accepted scientific name of a species, hybrid (`Prunus × yedoensis`) or genus. */
  name: text,
  rank: z.enum(['species', 'genus', 'hybrid']),
  family: z.string().regex(/^[A-Z][a-z]+aceae$/, 'a plant family ends in -aceae, for example "Ericaceae"'),
  /** Common names, the one shown to people first. A name several taxa share stands at each of them. */
  common: list,
  former: list,
  short: list,
  unit: z.enum(COUNTING_UNITS),
  source: text,
});

export type Bee = z.infer<typeof beeRow>;
export type Plant = z.infer<typeof plantRow>;

/** Both lists, as loaded. */
export interface Names {
  readonly bees: readonly Bee[];
  readonly plants: readonly Plant[];
}
