/** Reads which plant somebody watched: "Trillium grandiflorum", "juneberries", "the dandelions by the gate". */
import {
  afterCorrection,
  agreed,
  alternativesIn,
  besideSmallTalk,
  beeHits,
  type Hit,
  isAroundPlants,
  isDescribed,
  isDoubted,
  isNegated,
  isTalk,
  isUnlisted,
  leavesChoice,
  LONGEST_ANSWER,
  type Named,
  offering,
  plantHits,
  plantsOf,
  settlePlant,
  sideBySide,
  strangersIn,
  usedBy,
  vocabularyOf,
  watchedTaxa,
  type Word,
  wordAfter,
  wordsOf,
} from './names/index.js';
import type { Taxon } from './names/taxa.js';
import { answersOtherQuestion } from './other-answers.js';
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
  const whole = fold(text);
  if (whole.trim() === '') return none('empty');
  if (whole.length > LONGEST_ANSWER) return none('too-long');
  const folded = besideSmallTalk(whole, context);
  const words = wordsOf(folded, context.words.names);
  const isLink = /(?<![a-z])https?:/.test(folded);
  if (words.length === 0 || isLink || isTalk(folded, words, context)) return none('plant-no-name');

  const index = plantsOf(context);
  const watched = watchedTaxa(context);
  const hits = plantHits(words, context, 'answer').filter((hit) => !isNegated(hit, words, context));
  const all = hits
    .filter((hit) => !isUnlisted(hit))
    .map((hit): Named => ({ hit, settled: settlePlant(hit, watched, index) }));
  const named = ofThisPlant(afterCorrection(folded, all, context), words, context);
  if (named.length === 0) {
    if (hits.some((hit) => isUnlisted(hit) && isNamedOutright(hit, words, context))) {
      return answersOtherQuestion(text, context) ? none('plant-no-name') : sureAsTyped(words);
    }
    const isChat = folded !== whole && !describesPlant(folded, words, context);
    return isChat ? none('plant-no-name') : asTyped(text, folded, words, context);
  }
  if (named.every(({ hit }) => hit.exactness === 'near' && !hit.watched)) {
    const isGuess = named.every(({ hit }) => !hit.firm);
    if (isGuess && describesPlant(folded, words, context)) return asTyped(text, folded, words, context);
    const { joining } = vocabularyOf(context.words);
    const isBeside = (word: Word, at: number): boolean =>
      !joining.has(word.plain) && named.every(({ hit }) => at < hit.from || at >= hit.to);
    if (words.some(isBeside) && answersOtherQuestion(text, context)) return none('plant-no-name');
  }

  const hedges = isDoubted(folded, named, context);
  const used = usedBy(named, hedges);
  const value = (taxon: Taxon): PlantName => valueOf(taxon, hedges.length > 0);
  const species = alternativesIn(words, folded, named, index, vocabularyOf(context.words));
  if (species.length > 0) return unsure(sideBySide(species, index).map(value), 'plant-several', used);
  const meant = agreed(named);
  if (!meant) {
    const said = sideBySide(
      named.flatMap(({ settled }) => settled.taxa),
      index,
    );
    return unsure(said.map(value), 'plant-several', used);
  }
  // "solomon's seal or the false one"
  if (leavesChoice(words, named, hedges, plantSays(context), vocabularyOf(context.words)))
    return unsure(offering(meant.taxa, index).map(value), 'plant-several', used);
  if (meant.clear) return sure(value(meant.taxa[0]!), used);
  const offered = offering(meant.taxa, index).map(value);
  const isShared = named.some(({ hit }) => hit.firm && (hit.exactness === 'exact' || hit.watched));
  return unsure(offered, isShared ? 'plant-shared' : 'plant-near', used);
};

/** Without the plants that only say where it stands ("violets under the apple") or name a place ("lilac, Plum Street"). */
function ofThisPlant(named: readonly Named[], words: readonly Word[], context: Context): readonly Named[] {
  const { elsewhere, placeEnds } = vocabularyOf(context.words);
  if (named.length < 2) return named;
  return named.filter(({ hit }, at) => {
    const after = words[hit.to];
    if (after?.gap === 'none' && placeEnds.has(after.plain)) return false;
    const before = named[at - 1];
    if (!before) return true;
    return !words.slice(before.hit.to, hit.from).some((word) => elsewhere.has(word.plain));
  });
}

/** A word that, to choose from, is another plant: "the false one", "a frumpet". */
function plantSays(context: Context): (word: Word) => boolean {
  const vocabulary = vocabularyOf(context.words);
  return (word) => vocabulary.mock.has(word.plain) || !isAroundPlants(word, vocabulary);
}

/** The words of an answer besides "no idea" and the like. */
function besideUnknown(folded: string, words: readonly Word[], context: Context): readonly Word[] {
  const unknown = vocabularyOf(context.words).unknown(folded);
  return words.filter(({ span }) => !unknown.some((said) => span[0] >= said.span[0] && span[1] <= said.span[1]));
}

function describesPlant(folded: string, words: readonly Word[], context: Context): boolean {
  const said = besideUnknown(folded, words, context);
  return isDescribed(said, said.length < words.length, vocabularyOf(context.words));
}

/** No plant of the list: its words as typed where they name or describe a plant, nothing where they do not. */
function asTyped(text: string, folded: string, words: readonly Word[], context: Context): Reading<PlantName> {
  const vocabulary = vocabularyOf(context.words);
  const said = besideUnknown(folded, words, context);
  // what follows "behind" only tells where it stands
  const away = said.findIndex(({ plain }) => vocabulary.elsewhere.has(plain));
  const strangers = strangersIn(away === -1 ? said : said.slice(0, away), text, plantsOf(context), vocabulary);
  if (!describesPlant(folded, words, context)) {
    if (strangers.length === 0 || answersOtherQuestion(text, context)) return none('plant-no-name');
  }
  if (isBee(words, strangers, context)) return none('plant-no-name');
  return sureAsTyped(words);
}

const sureAsTyped = (words: readonly Word[]): Reading<PlantName> =>
  sure({ name: null, rank: null }, [[words[0]!.span[0], words.at(-1)!.span[1]]]);

/** "bur oak", but neither "by the big oak" nor "Oak Street". */
function isNamedOutright(hit: Hit, words: readonly Word[], context: Context): boolean {
  const { elsewhere, placeNouns } = vocabularyOf(context.words);
  const after = wordAfter(words, hit.to);
  return !words.slice(0, hit.from).some(({ plain }) => elsewhere.has(plain)) && !(after && placeNouns.has(after.plain));
}

/** A bumble bee or another insect by its name, and no word of a plant: not "Carex pensylvanica", "yellow-banded flower". */
function isBee(words: readonly Word[], strangers: readonly Word[], context: Context): boolean {
  const { plantNouns } = vocabularyOf(context.words);
  if (words.some(({ stem, plain }) => plantNouns.has(stem) && plain !== 'one')) return false;
  const bees = beeHits(words, context, 'answer').filter((hit) => hit.firm && hit.exactness !== 'part');
  const isOfBee = (word: Word): boolean => bees.some(({ from, to }) => words.slice(from, to).includes(word));
  return bees.length > 0 && strangers.every(isOfBee);
}
