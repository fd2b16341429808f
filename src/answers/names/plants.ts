/** Names of plants in the words of a text; those being watched are known by any part of their names. */
import { plantsOf, watchedOf, type WithNames } from './index-of-names.js';
import type { NameIndex } from './name-index.js';
import { isBacked, isGenusDescribed, PLANT_RULES } from './plant-rules.js';
import { codeHits, pairHits } from './plant-short.js';
import { isAroundPlants } from './plant-words.js';
import { placeOf, ruled } from './rules.js';
import { withoutOverlaps, type Hit, type Manner, type SearchIn } from './hit.js';
import { hitsIn } from './search.js';
import { OTHER_PLANT, type Taxon } from './taxa.js';
import { countedUpTo, type Word } from './tokens.js';
import { vocabularyOf } from './vocabulary.js';

export interface PlantContext extends WithNames {
  readonly watched: readonly string[];
}

/** A plant known by name that the list lacks. */
export const isUnlisted = (hit: Hit): boolean => hit.fits.some(({ use }) => use.taxon === OTHER_PLANT);

const touches = (left: Hit, right: Hit): boolean => left.from < right.to && right.from < left.to;

/** Plants named in the words, left to right, none overlapping. Those that the list lacks are told in an answer only. */
export function plantHits(words: readonly Word[], context: PlantContext, manner: Manner): Hit[] {
  const vocabulary = vocabularyOf(context.words);
  const index = plantsOf(context);
  const { joining, bumblebee, aroundBees, aroundPlants, placeNouns } = vocabulary;
  const searchFor = (list: NameIndex): SearchIn => ({
    index: list,
    manner,
    leftOut: (word) => joining.has(word.plain),
    behind: ({ plain, stem }) => aroundPlants.has(stem) || placeNouns.has(plain),
    plain: (word) => isAroundPlants(word, vocabulary) || bumblebee.has(word.plain) || aroundBees.has(word.plain),
    everyday: (word) => vocabulary.dictionary.has(word.plain),
  });
  const hits = [...hitsIn(words, searchFor(index)), ...pairHits(words, index, vocabulary, manner)];
  if (manner === 'answer') {
    const codes = codeHits(words, index, vocabulary);
    hits.push(...codes.filter((code) => !hits.some((hit) => touches(hit, code))));
  }
  if (context.watched.length > 0) {
    hits.push(...hitsIn(words, searchFor(watchedOf(context))).map((hit) => ({ ...hit, watched: true })));
  }
  const strangers = countedUpTo(words, (word) => !isAroundPlants(word, vocabulary));
  const standing = hits.flatMap((hit) => {
    const inside = strangers[hit.to]! - strangers[hit.from]!;
    const place = { ...placeOf(hit, words, vocabulary, manner), strangersElsewhere: strangers.at(-1)! > inside };
    return ruled(place, PLANT_RULES) ?? [];
  });
  const apart = withoutOverlaps(standing.filter((hit) => !isGenusDescribed(hit, standing, words, vocabulary)));
  if (manner === 'answer') return apart;
  const backed: Hit[] = [];
  for (const hit of apart.filter((each) => !isUnlisted(each)))
    if (isBacked(hit, words, backed, vocabulary)) backed.push(hit);
  return backed;
}

/** The plants being watched, as taxa. */
export function watchedTaxa(context: PlantContext): Taxon[] {
  const index = watchedOf(context);
  return context.watched.flatMap((name) => index.taxa.get(name) ?? []);
}
