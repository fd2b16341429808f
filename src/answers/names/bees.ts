/** Names of bumble bees in the words of a text, and other insects, which are none. */
import type { SurveySettings } from '../../../shared/survey.js';
import type { Span } from '../reading.js';
import { BEE_RULES, isCountedName, type BeePlace } from './bee-rules.js';
import { piecedHits, shortHits } from './bee-short.js';
import { isBeeGenus } from './bee-words.js';
import { beesOf, plantsOf, type WithNames } from './index-of-names.js';
import { homeOf } from './region.js';
import { placeOf, ruled } from './rules.js';
import { withoutOverlaps, type Hit, type Manner, type SearchIn } from './hit.js';
import { hitsIn } from './search.js';
import { OTHER_INSECT } from './taxa.js';
import { wordAfter, wordBefore, type Word } from './tokens.js';
import { vocabularyOf, type Vocabulary } from './vocabulary.js';

export interface BeeContext extends WithNames {
  readonly survey: SurveySettings;
}

export const isInsect = (hit: Hit): boolean => hit.fits.some(({ use }) => use.taxon === OTHER_INSECT);

/**
 * Bumble bees and other insects named in the words, left to right, none overlapping. What stands right before another
 * insect ("eastern carpenter") belongs to it.
 */
export function beeHits(words: readonly Word[], context: BeeContext, manner: Manner): Hit[] {
  const vocabulary = vocabularyOf(context.words);
  const index = beesOf(context);
  const { joining, bumblebee, aroundBees } = vocabulary;
  const search: SearchIn = {
    index,
    manner,
    leftOut: (word) => joining.has(word.plain) || bumblebee.has(word.plain),
    behind: () => false,
    plain: (word) => vocabulary.isPlain(word.plain) || aroundBees.has(word.plain) || isBeeGenus(word, vocabulary),
    everyday: (word) => vocabulary.dictionary.has(word.plain),
  };
  const named = hitsIn(words, search);
  const exactAt = new Set(named.filter((hit) => hit.exactness === 'exact').map((hit) => hit.from));
  const short = shortHits(words, index, vocabulary, manner).filter((hit) => !exactAt.has(hit.from));
  const pieced = piecedHits(words, index, vocabulary, manner);
  const plants = plantsOf(context);
  const places = [...withBrackets(named, words, vocabulary), ...short, ...pieced].map((hit): BeePlace => {
    // "terr" begins the name of a bee that lives here, though one of elsewhere begins so too
    const fits = hit.exactness === 'short' ? hit.fits : hit.fits.slice(0, 1);
    const homes = fits.map(({ use }) => homeOf(use.taxon, context.survey.region));
    const home = homes.includes('local') ? 'local' : homes[0]!;
    return { ...placeOf(hit, words, vocabulary, manner), home, plants };
  });
  const standing = places.flatMap((place) => ruled(place, BEE_RULES) ?? []);
  // "3 common eastern, 1 yellow": the second is a name beside the first
  const isBesideBees = standing.some((hit) => hit.firm && !isInsect(hit));
  const { units } = context.words.numbers;
  const counted = isBesideBees ? places.filter((place) => isCountedName(place, units)).map(({ hit }) => hit) : [];
  const hits = withoutOverlaps([...standing, ...counted]);
  const insectsFrom = new Set(hits.filter(isInsect).map((hit) => hit.from));
  const belongsToInsect = (hit: Hit): boolean => {
    if (isInsect(hit) || hit.fits[0]!.use.kind === 'scientific') return false;
    return insectsFrom.has(hit.to) && words[hit.to]!.gap === 'none';
  };
  return hits
    .filter((hit) => !belongsToInsect(hit))
    .map((hit) => ({ ...hit, span: spanWithBee(hit, words, vocabulary) }));
}

/** "apple (B. pomorum)", as a summary prints it, is one name: the one in brackets says which. */
function withBrackets(hits: readonly Hit[], words: readonly Word[], vocabulary: Vocabulary): Hit[] {
  return hits.map((hit) => {
    const genus = words[hit.from - 1];
    if (hit.exactness !== 'exact' || genus?.gap !== 'bracket' || !isBeeGenus(genus, vocabulary)) return hit;
    const { taxon } = hit.fits[0]!.use;
    const before = hits.find(
      ({ to, fits }) => to === hit.from - 1 && fits.some(({ use }) => use.taxon === taxon && use.kind === 'common'),
    );
    return before === undefined ? hit : { ...hit, from: before.from, letters: hit.letters + before.letters };
  });
}

/** "bumble bee" is two words. */
const MOST_WORDS_BESIDE = 2;

/** "B." before a name and "bumble bee" after it are part of it. */
function spanWithBee(hit: Hit, words: readonly Word[], vocabulary: Vocabulary): Span {
  let { from, to } = hit;
  for (let more = 0; more < MOST_WORDS_BESIDE; more++) {
    const before = wordBefore(words, from);
    if (before && isBeeGenus(before, vocabulary)) from--;
    const after = wordAfter(words, to);
    if (after && vocabulary.bumblebee.has(after.plain)) to++;
  }
  return [words[from]!.span[0], words[to - 1]!.span[1]];
}
