/** Rules that say whether words which match a name are one, in the text where they stand. */
import type { Use } from './use.js';
import type { Hit, Manner } from './hit.js';
import { wordAfter, wordBefore, type Word } from './tokens.js';
import type { Vocabulary } from './vocabulary.js';

/** `keep` and `drop` end the matter, `offer` lets the name be offered but not taken, null says nothing. */
export type Ruling = 'keep' | 'offer' | 'drop' | null;

/** A hit and what stands around it. */
export interface Place {
  readonly hit: Hit;
  readonly use: Use;
  readonly words: readonly Word[];
  readonly vocabulary: Vocabulary;
  readonly manner: Manner;
  readonly first: Word;
  readonly last: Word;
  /** The neighbours, where nothing but a blank or hyphen is between. */
  readonly before: Word | undefined;
  readonly after: Word | undefined;
  /** One word long. */
  readonly single: boolean;
}

export function placeOf(hit: Hit, words: readonly Word[], vocabulary: Vocabulary, manner: Manner): Place {
  return {
    hit,
    use: hit.fits[0]!.use,
    words,
    vocabulary,
    manner,
    first: words[hit.from]!,
    last: words[hit.to - 1]!,
    before: wordBefore(words, hit.from),
    after: wordAfter(words, hit.to),
    single: hit.to - hit.from === 1,
  };
}

/** The hit as the rules leave it, in their order; null where one drops it. */
export function ruled<Where extends Place>(place: Where, rules: readonly ((place: Where) => Ruling)[]): Hit | null {
  let { firm } = place.hit;
  for (const rule of rules) {
    const ruling = rule(place);
    if (ruling === 'drop') return null;
    if (ruling === 'keep') break;
    if (ruling === 'offer') firm = false;
  }
  return { ...place.hit, firm };
}
