/** When words that match a plant's name are one: "roses", not "Rose's garden"; "Nan's lilac", not "false lilac". */
import { isBeeGenus } from './bee-words.js';
import { isAroundPlants, looksLatin } from './plant-words.js';
import type { Place, Ruling } from './rules.js';
import type { Hit } from './hit.js';
import { wordAfter, wordBefore, type Word } from './tokens.js';
import type { Vocabulary } from './vocabulary.js';

/** A shorter short form ("pens", "hep") is taken out of running text only for a plant being watched. */
const SHORTEST_SHORT_IN_RUNNING_TEXT = 6;
/** Letters of a single word, the end of a longer name, by which that name is offered: "cohosh" of "black cohosh". */
const SHORTEST_PART = 6;
/** Letters of a misspelled name that stands among words we do not know. */
const SHORTEST_NEAR_AMONG_STRANGERS = 7;

export interface PlantPlace extends Place {
  /** There are words anywhere else in the text that we do not know. */
  readonly strangersElsewhere: boolean;
}

const isStranger = (word: Word | undefined, { vocabulary }: Place): boolean =>
  word !== undefined && !isAroundPlants(word, vocabulary);

const isGenus = ({ hit }: Place): boolean => hit.fits.every(({ use }) => use.taxon.rank === 'genus');

const isOtherKind = ({ before, vocabulary }: Place): boolean =>
  before !== undefined && vocabulary.otherKinds.has(before.plain);

/** "Rose's garden", "Aunt Lily" */
const person = ({ hit, words, first, last, before, single, vocabulary }: PlantPlace): Ruling => {
  if (single && last.possessive && hit.to < words.length) return 'drop';
  return before && vocabulary.people.has(before.plain) && (single || first.possessive) ? 'drop' : null;
};

/** "Plum Street" */
const placeName = ({ after, manner, vocabulary }: PlantPlace): Ruling =>
  manner === 'running' && after && vocabulary.placeEnds.has(after.plain) ? 'drop' : null;

/** "shaded" has the stem of "shad", and is none. */
const otherEnding = ({ single, last: { plain, stem } }: PlantPlace): Ruling =>
  single && plain.endsWith('ed') && !stem.endsWith('ed') ? 'drop' : null;

/** "Bombus impatiens" is a bee. */
const ofBee = ({ before, vocabulary }: PlantPlace): Ruling =>
  before && before.plain.length > 2 && isBeeGenus(before, vocabulary) ? 'drop' : null;

/** "false lilac" is none; "false indigo" is a name of its own. */
const mock = ({ hit, before, vocabulary }: PlantPlace): Ruling =>
  before && vocabulary.mock.has(before.plain) && hit.exactness !== 'near' ? 'drop' : null;

/** "mint family", "a lilac relative", "daisy-like flowers" are like it. */
const kin = ({ hit, words, after, vocabulary }: PlantPlace): Ruling => {
  if (!after) return null;
  if (vocabulary.kin.has(after.plain)) return 'drop';
  const next = wordAfter(words, hit.to + 1);
  return after.plain === 'like' && next && vocabulary.plantNouns.has(next.stem) ? 'drop' : null;
};

const watched = ({ hit }: PlantPlace): Ruling => (hit.watched ? 'keep' : null);

/** "lavender" is a plant where nothing else is said, a colour beside "flowers". */
const colour = ({ hit, use, words, manner, vocabulary }: PlantPlace): Ruling => {
  if (use.strength !== 'describing') return null;
  const { joining, aroundPlants, plantNouns } = vocabulary;
  const saysNoMore = (word: Word): boolean =>
    joining.has(word.plain) || (aroundPlants.has(word.stem) && !plantNouns.has(word.stem));
  return manner === 'answer' && words.every((word, at) => at === hit.from || saysNoMore(word)) ? 'keep' : 'drop';
};

/** "canadensis" alone is offered with the species that have it. */
const epithetAlone = (place: PlantPlace): Ruling => {
  if (place.use.kind !== 'epithet') return null;
  const saysItself = place.single && place.manner === 'answer' && !place.vocabulary.isPlain(place.last.plain);
  return saysItself && !place.strangersElsewhere ? 'offer' : 'drop';
};

/** A name with words left out says too little among strange words; one word of it is only offered. */
const partOfName = (place: PlantPlace): Ruling => {
  const { use, manner, single, last, vocabulary } = place;
  if (use.kind !== 'part') return null;
  if (manner === 'running' || place.strangersElsewhere || isOtherKind(place)) return 'drop';
  if (!single) return null;
  return vocabulary.heads.has(last.stem) || last.plain.length < SHORTEST_PART ? 'drop' : 'offer';
};

/** A strange word alone is a plant we do not know rather than a name with many letters wrong. */
const misspelled = (place: PlantPlace): Ruling => {
  const { hit, manner, single, last } = place;
  if (hit.exactness !== 'near') return null;
  if (!single) return manner === 'running' && !hit.firm ? 'drop' : null;
  const { cost } = hit.fits[0]!;
  const several = hit.fits.length > 1;
  const strangers = place.strangersElsewhere;
  const far = !hit.firm || (several && cost > 1);
  if (far && (strangers || several || manner === 'running')) return 'drop';
  if (strangers && (last.plain.length < SHORTEST_NEAR_AMONG_STRANGERS || cost > 1)) return 'drop';
  return manner === 'running' && !isCloseEnough(hit) ? 'drop' : null;
};

/** In running text a misspelled word is one plant's name, and nearly right: "hester" is no heather. */
const isCloseEnough = ({ letters, fits }: Hit): boolean => {
  const { cost } = fits[0]!;
  return cost <= (letters < SHORTEST_NEAR_AMONG_STRANGERS ? 0.5 : 1) && (fits.length === 1 || cost <= 0.5);
};

/** "Trillium pusillum": a species that the list lacks is not its genus. */
const unknownSpecies = ({ use, single, after, vocabulary }: PlantPlace): Ruling =>
  use.kind === 'genus' && single && after && looksLatin(after, vocabulary) ? 'drop' : null;

/** "Persian lilac" is no common lilac, yet "Persian roses" are roses; a "toad lily" may be any. */
const otherKind = (place: PlantPlace): Ruling => {
  if (place.use.kind !== 'common' || !place.single || !isOtherKind(place)) return null;
  if (!isGenus(place)) return 'drop';
  return place.vocabulary.manyKinds.has(place.last.stem) ? 'offer' : null;
};

const shortInRunningText = ({ hit, use, manner }: PlantPlace): Ruling => {
  if (manner !== 'running') return null;
  const tooShort = use.kind === 'short' && hit.exactness === 'exact' && hit.letters < SHORTEST_SHORT_IN_RUNNING_TEXT;
  return tooShort ? 'drop' : 'keep';
};

/** "Bloomerang lilac" may be no common lilac, "Peruvian lily" no Lilium; "Nan's lilac", "knockout roses" are. */
const strangerBeside = (place: PlantPlace): Ruling => {
  const { use, single, before, after, last, vocabulary } = place;
  if (!single) return null;
  if (isStranger(after, place)) return isGenus(place) ? null : 'offer';
  const adds = isStranger(before, place) && !before!.possessive && !vocabulary.almostDescribes(before!.plain);
  return adds && use.kind === 'common' && (!isGenus(place) || vocabulary.manyKinds.has(last.stem)) ? 'offer' : null;
};

/** In the order in which they speak. */
export const PLANT_RULES: readonly ((place: PlantPlace) => Ruling)[] = [
  person,
  placeName,
  otherEnding,
  ofBee,
  mock,
  kin,
  watched,
  colour,
  epithetAlone,
  partOfName,
  misspelled,
  unknownSpecies,
  otherKind,
  shortInRunningText,
  strangerBeside,
];

/**
 * "Lily" may be a person and "sage" wise; "lilies", "the lily", "4 lily", "sage flowers", "rose: 3" are plants, and so
 * is what an "and" joins to a plant. Asked in running text, of each hit after those before it.
 */
export function isBacked(hit: Hit, words: readonly Word[], kept: readonly Hit[], vocabulary: Vocabulary): boolean {
  const { loose, aroundPlants, joining, describing, having, givenNames, owning } = vocabulary;
  const last = words[hit.to - 1]!;
  if (hit.to - hit.from > 1 || hit.watched || !loose.has(last.plain) || last.plain !== last.stem) return true;
  const next = words[hit.to];
  if (next && (next.digits || (next.gap === 'none' && aroundPlants.has(next.stem)))) return true;
  // "redbud has 40", but "Lily had two"
  if (next?.gap === 'none' && having.has(next.plain) && !givenNames.has(last.plain)) return true;
  const before = wordBefore(words, hit.from);
  // "70F, redbud, sunny": a name between commas, that nobody bears
  const opens = words[hit.from]!.gap !== 'none' || hit.from === 0;
  if (opens && !givenNames.has(last.plain) && next?.gap !== 'none' && words.length > 1) return true;
  if (!before) return false;
  if (owning.has(before.plain)) return !givenNames.has(last.plain);
  if (before.plain === 'and' || before.plain === 'n') return kept.at(-1)?.to === hit.from - 1;
  return before.digits || joining.has(before.plain) || describing.has(before.plain) || before.plain === 'on';
}

/**
 * "white violet" is a violet that is white and a "climbing rose" one that climbs, though "sweet white violet" and
 * "climbing prairie rose" less one word are parts of names.
 */
export function isGenusDescribed(
  hit: Hit,
  hits: readonly Hit[],
  words: readonly Word[],
  { describing, otherKinds }: Vocabulary,
): boolean {
  if (hit.exactness !== 'part' || hit.watched) return false;
  return hits.some((other) => {
    const endsIt = other.exactness === 'exact' && other.to === hit.to && other.from > hit.from;
    if (!endsIt || !other.fits.some(({ use }) => use.taxon.rank === 'genus')) return false;
    return words.slice(hit.from, other.from).every(({ plain }) => describing.has(plain) || otherKinds.has(plain));
  });
}
