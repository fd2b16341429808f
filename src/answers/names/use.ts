/** One name of one taxon as it stands in an index, and how much it says. */
import type { Kind, Taxon } from './taxa.js';

/**
 * How much a name says by itself. `strong` stands anywhere; `placing` ("American") must not describe a word after it;
 * `describing` ("yellow") is a name only as "yellow bumble bee", for any bee could be described so.
 */
export type Strength = 'strong' | 'placing' | 'describing';

export interface Use {
  readonly taxon: Taxon;
  readonly kind: Kind;
  readonly strength: Strength;
  readonly place: number;
  /** Every word of the name describes: "half black". */
  readonly allDescribing: boolean;
}
