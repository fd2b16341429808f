/** When words that match a bee's name are one: "a rusty patched", not "with a rusty patch on its back". */
import { isAroundBees, isBeeGenus, isBumble } from './bee-words.js';
import type { NameIndex } from './name-index.js';
import type { Home } from './region.js';
import type { Place, Ruling } from './rules.js';
import { HEARD_AS } from './taxa.js';
import { wordBefore, type Word } from './tokens.js';

export interface BeePlace extends Place {
  readonly home: Home;
  readonly plants: NameIndex;
}

/** Letters of a badly misspelled word from which a bee is offered in running text. */
const SHORTEST_OFFERED_IN_RUNNING_TEXT = 8;
/** Fewer letters of a bee of elsewhere say nothing, but after "B.". */
const SHORTEST_FAR = 5;
/** Words after a mark among which its place on the body is told: "on the back". */
const WORDS_TO_BODY = 4;

const namesBee = ({ after, vocabulary }: Place): boolean => isBumble(after, vocabulary);

const describes = (word: Word | undefined, { vocabulary }: Place): boolean =>
  word !== undefined &&
  vocabulary.describing.has(word.stem) &&
  !vocabulary.bumblebee.has(word.plain) &&
  !vocabulary.aroundBees.has(word.plain);

/** Nothing follows that the name could describe. */
const endsName = ({ after, vocabulary }: Place): boolean =>
  after === undefined ||
  after.digits ||
  vocabulary.bumblebee.has(after.plain) ||
  vocabulary.aroundBees.has(after.plain) ||
  vocabulary.afterBombus.has(after.plain) ||
  vocabulary.elsewhere.has(after.plain);

const isAfterGenus = ({ before, vocabulary }: Place): boolean => before !== undefined && isBeeGenus(before, vocabulary);

/** "1 yellow", "two confusing": a small number, and nothing behind that it could describe. Beside other bees it is a name. */
export const isCountedName = (place: BeePlace, units: Readonly<Record<string, number>>): boolean => {
  const { hit, use, before, home } = place;
  if (use.strength !== 'describing' || home !== 'local' || hit.exactness !== 'exact' || !before) return false;
  const isSmall = before.digits ? before.span[1] - before.span[0] === 1 : Object.hasOwn(units, before.plain);
  return isSmall && endsName(place);
};

const badlyMisspelled = ({ hit, manner, single }: BeePlace): Ruling =>
  hit.exactness === 'near' &&
  manner === 'running' &&
  !hit.firm &&
  (!single || hit.letters < SHORTEST_OFFERED_IN_RUNNING_TEXT)
    ? 'drop'
    : null;

/** A bee of elsewhere must be named outright. */
const ofElsewhere = (place: BeePlace): Ruling => {
  const { hit, use, home, manner } = place;
  if (home === 'local') return null;
  if (hit.exactness === 'near' && (!hit.firm || use.kind === 'short')) return 'drop';
  if (isAfterGenus(place)) return null;
  if (hit.exactness !== 'exact' && manner === 'running') return 'drop';
  return hit.exactness === 'short' && hit.letters < SHORTEST_FAR ? 'drop' : null;
};

/** "centralised" has the stem of "centralis", and is none. */
const otherEnding = ({ use, single, first: { plain, stem } }: BeePlace): Ruling => {
  if (!single || (use.kind !== 'short' && use.kind !== 'scientific')) return null;
  return plain !== stem && plain.replace(/e?s$/, '') !== stem && plain.endsWith('ed') ? 'drop' : null;
};

/** "I left my pen" is no pensylvanicus, "2 pens" and "pens 2" are. */
const everydayWord = ({ hit, use, manner, before, after, first, vocabulary }: BeePlace): Ruling => {
  const isCut = hit.exactness === 'short' && vocabulary.dictionary.has(first.plain);
  // "thank you for your patience"
  const isByEar = use.place === HEARD_AS && vocabulary.dictionary.has(first.plain);
  const isTalk = use.kind === 'short' && (vocabulary.isPlain(first.plain) || isByEar);
  if (manner !== 'running' || (!isCut && !isTalk)) return null;
  const isBehind = after?.digits === true && !first.dotted;
  const counted = before?.digits === true || isBehind || vocabulary.numbers.has(before?.plain ?? '');
  return counted || (before !== undefined && isBeeGenus(before, vocabulary)) ? null : 'drop';
};

/** "Jon" is rather a person. */
const givenName = ({ use, manner, first, vocabulary }: BeePlace): Ruling =>
  manner === 'running' && use.kind === 'short' && vocabulary.loose.has(first.plain) ? 'drop' : null;

const isFaint = ({ single, first, vocabulary }: BeePlace): boolean =>
  single && (vocabulary.faint.has(first.stem) || vocabulary.faint.has(first.plain));

/** "my dog Rusty" */
const namesake = (place: BeePlace): Ruling =>
  isFaint(place) && place.before && place.vocabulary.people.has(place.before.plain) ? 'drop' : null;

const saysItself = ({ use }: BeePlace): Ruling => (use.kind === 'insect' || use.kind === 'scientific' ? 'keep' : null);

/** "confusing", "a perplexing one" with no other word: no look, so it is the name. */
const saysNoMore = ({ hit, words, manner, home, vocabulary }: BeePlace): boolean =>
  manner === 'answer' &&
  home === 'local' &&
  vocabulary.states.has(words[hit.from]!.plain) &&
  words.every(
    ({ plain }, at) =>
      at === hit.from ||
      vocabulary.joining.has(plain) ||
      vocabulary.aroundBees.has(plain) ||
      vocabulary.bumblebee.has(plain),
  );

/** "yellow bumble bee", but not "big yellow bumble bee" or "black and yellow bumble bee". */
const describingWord = (place: BeePlace): Ruling => {
  const { hit, use, words, before, vocabulary } = place;
  if (use.strength !== 'describing') return null;
  if (saysNoMore(place)) return 'keep';
  let at = hit.from - 1;
  while (at >= 0 && vocabulary.joining.has(words[at]!.plain)) at--;
  const more = describes(words[at], place) || (before !== undefined && !isAroundBees(before, vocabulary));
  return namesBee(place) && !more ? 'keep' : 'drop';
};

/** "the eastern side", "an American robin" */
const ofNextWord = (place: BeePlace): Ruling =>
  (place.use.strength === 'placing' || (place.use.kind === 'part' && isFaint(place))) && !endsName(place)
    ? 'drop'
    : null;

/** A part of a name among strange words is part of another; one word that may only describe is offered. */
const partOfName = (place: BeePlace): Ruling => {
  const { use, single, before, after, vocabulary } = place;
  if (use.kind !== 'part') return null;
  if ((before && !isAroundBees(before, vocabulary)) || (after && !isAroundBees(after, vocabulary))) return 'drop';
  if (single && describes(before, place)) return 'drop';
  return isFaint(place) ? 'offer' : null;
};

/** "rusty" is a bee, "rusty colored" and "it had a rusty bit" are not. */
const colouredLike = (place: BeePlace): Ruling => {
  const { use, hit, words, vocabulary } = place;
  if (use.kind !== 'short' || !isFaint(place)) return null;
  let at = hit.from;
  while (wordBefore(words, at) && vocabulary.joining.has(words[at - 1]!.plain)) at--;
  const owner = wordBefore(words, at);
  if (owner && vocabulary.having.has(owner.plain)) return 'drop';
  return describes(place.before, place) || describes(place.after, place) ? 'drop' : null;
};

/** "had a yellow band", "two spots on its back" tell marks, "a yellow banded", "two spot" bees. */
const mark = (place: BeePlace): Ruling => {
  const { hit, use, words, single, first, last, before, after, vocabulary, home } = place;
  if (single || use.kind !== 'common') return null;
  if (use.allDescribing && after && vocabulary.marks.has(after.plain)) return 'drop';
  if (vocabulary.marks.has(last.plain)) {
    let at = hit.from;
    while (wordBefore(words, at) && vocabulary.joining.has(words[at - 1]!.plain)) at--;
    const owner = wordBefore(words, at);
    if (owner && vocabulary.having.has(owner.plain)) return use.allDescribing ? 'drop' : 'offer';
    const next = words.slice(hit.to, hit.to + WORDS_TO_BODY);
    if (next.some((word) => vocabulary.body.has(word.plain))) return 'offer';
  }
  // a "yellow-faced bee" is most often no bumble bee, and "black tailed" describes many
  if (use.allDescribing && home !== 'local' && !namesBee(place)) return 'offer';
  // "half black half yellow"
  if (use.allDescribing && words[hit.to]?.plain === first.plain) return 'offer';
  return use.allDescribing && describes(before, place) && !namesBee(place) ? 'offer' : null;
};

/** "heather" and "apple" are plants, but for "heather bumble bee". */
const alsoPlant = (place: BeePlace): Ruling => {
  const { use, single, first, plants } = place;
  if (!single || namesBee(place) || (use.kind !== 'common' && use.kind !== 'part')) return null;
  const asPlant = plants.exact.get(first.stem) ?? [];
  return asPlant.some(({ kind }) => kind === 'common' || kind === 'genus') ? 'drop' : null;
};

const shortMisspelled = (place: BeePlace): Ruling => {
  const { hit, use, manner, single } = place;
  if (manner !== 'running' || !single || use.kind !== 'common' || hit.exactness !== 'near') return null;
  return !namesBee(place) && hit.letters < SHORTEST_OFFERED_IN_RUNNING_TEXT ? 'drop' : null;
};

/** "Franklin" and "Hunt" are people and places, but for somebody who says nothing else. */
const personOrPlace = (place: BeePlace): Ruling => {
  const { use, single, manner, home, words, vocabulary } = place;
  if (!single || home === 'local' || use.kind !== 'common' || namesBee(place)) return null;
  if (manner === 'running' || home === 'foreign') return 'drop';
  const says = words.filter((word) => !vocabulary.joining.has(word.plain) && !vocabulary.aroundBees.has(word.plain));
  return says.length > 1 ? 'drop' : null;
};

/** In the order in which they speak: what is misspelled or far off, what says itself, then what only describes. */
export const BEE_RULES: readonly ((place: BeePlace) => Ruling)[] = [
  badlyMisspelled,
  ofElsewhere,
  otherEnding,
  everydayWord,
  givenName,
  namesake,
  saysItself,
  describingWord,
  ofNextWord,
  partOfName,
  colouredLike,
  mark,
  alsoPlant,
  shortMisspelled,
  personOrPlace,
];
