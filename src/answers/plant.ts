/** Reads which plant somebody watched: "Trillium grandiflorum", "juneberries", "the dandelions by the gate". */
import {
  afterCorrection,
  agreed,
  isAroundPlants,
  isDoubted,
  isNegated,
  isTalk,
  LONGEST_ANSWER,
  type Named,
  offering,
  plantHits,
  plantsOf,
  settlePlant,
  sideBySide,
  usedBy,
  vocabularyOf,
  watchedTaxa,
  type Word,
  wordsOf,
} from './names/index.js';
import type { Taxon } from './names/taxa.js';
import { none, sure, unsure, type Context, type Reader, type Reading } from './reading.js';
import { fold } from './text.js';

export interface PlantName {
  /** Accepted name; null for a plant that the list does not hold: its words as typed say which. */
  readonly name: string | null;
  readonly rank: string | null;
  /** They hedged. */
  readonly doubt?: true;
}

const valueOf = ({ name, rank }: Taxon, doubt: boolean): PlantName => ({
  name: rank === null ? null : name,
  rank,
  ...(doubt ? { doubt: true as const } : {}),
});

/**
 * One plant, by any name. A bare name that stands for a genus is the genus; one that a few species share is unsure
 * with them offered, the genus last, unless one of them is being watched. Words that name a plant we do not know are
 * sure with name null; talk and a bare "dunno" are not understood.
 */
export const readPlant: Reader<PlantName> = (text, context) => {
  const folded = fold(text);
  if (folded.trim() === '') return none('empty');
  if (folded.length > LONGEST_ANSWER) return none('too-long');
  const words = wordsOf(folded, context.words.names);
  if (words.length === 0 || isTalk(folded, words, context)) return none('plant-no-name');

  const index = plantsOf(context);
  const watched = watchedTaxa(context);
  const all = plantHits(words, context, 'answer')
    .filter((hit) => !isNegated(hit, words, context))
    .map((hit): Named => ({ hit, settled: settlePlant(hit, watched, index) }));
  const named = ofThisPlant(afterCorrection(folded, all, context), words, context);
  if (named.length === 0) return asTyped(folded, words, context);

  const hedges = isDoubted(folded, named, context);
  const used = usedBy(named, hedges);
  const value = (taxon: Taxon): PlantName => valueOf(taxon, hedges.length > 0);
  const meant = agreed(named);
  if (!meant) {
    const said = sideBySide(
      named.flatMap(({ settled }) => settled.taxa),
      index,
    );
    return unsure(said.map(value), 'plant-several', used);
  }
  if (meant.clear) return sure(value(meant.taxa[0]!), used);
  const offered = offering(meant.taxa, index).map(value);
  const isShared = named.some(({ hit }) => hit.firm && (hit.exactness === 'exact' || hit.watched));
  return unsure(offered, isShared ? 'plant-shared' : 'plant-near', used);
};

/** Without the plants that only say where it stands ("violets under the apple") or name a place ("lilac, Plum Street"). */
function ofThisPlant(named: readonly Named[], words: readonly Word[], context: Context): readonly Named[] {
  const { elsewhere, placeEnds } = vocabularyOf(context.words.names);
  if (named.length < 2) return named;
  return named.filter(({ hit }, at) => {
    const after = words[hit.to];
    if (after?.gap === 'none' && placeEnds.has(after.plain)) return false;
    const before = named[at - 1];
    if (!before) return true;
    return !words.slice(before.hit.to, hit.from).some((word) => elsewhere.has(word.plain));
  });
}

/** No plant of the list: its words as typed where they say something of a plant, nothing where they do not. */
function asTyped(folded: string, words: readonly Word[], context: Context): Reading<PlantName> {
  const vocabulary = vocabularyOf(context.words.names);
  const unknown = vocabulary.unknown(folded).map(({ span }) => span);
  const outside = words.filter((word) => !unknown.some(([from, to]) => word.span[0] >= from && word.span[1] <= to));
  const isNoun = (word: Word): boolean => vocabulary.plantNouns.has(word.stem);
  const describes = (word: Word): boolean =>
    !isNoun(word) && (vocabulary.describing.has(word.plain) || vocabulary.describing.has(word.stem));
  const strange = outside.filter((word) => !isAroundPlants(word, vocabulary) && word.plain.length >= 3);
  const describing = outside.filter(describes).length;
  const says =
    strange.length > 0 || describing > 1 || (describing === 1 && (unknown.length > 0 || outside.some(isNoun)));
  if (!says) return none('plant-no-name');
  return sure({ name: null, rank: null }, [[words[0]!.span[0], words.at(-1)!.span[1]]]);
}
