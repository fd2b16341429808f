/** Names of bumble bees in the words of a text, and other insects, which are none. */
import type { SurveySettings } from '../../../shared/survey.js';
import type { Span } from '../reading.js';
import { BEE_RULES } from './bee-rules.js';
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
  };
  const named = hitsIn(words, search);
  const exactAt = new Set(named.filter((hit) => hit.exactness === 'exact').map((hit) => hit.from));
  const short = shortHits(words, index, vocabulary, manner).filter((hit) => !exactAt.has(hit.from));
  const pieced = piecedHits(words, index, vocabulary, manner);
  const plants = plantsOf(context);
  const standing = [...named, ...short, ...pieced].flatMap((hit) => {
    // "terr" begins the name of a bee that lives here, though one of elsewhere begins so too
    const fits = hit.exactness === 'short' ? hit.fits : hit.fits.slice(0, 1);
    const homes = fits.map(({ use }) => homeOf(use.taxon, context.survey.region));
    const home = homes.includes('local') ? 'local' : homes[0]!;
    const place = { ...placeOf(hit, words, vocabulary, manner), home, plants };
    return ruled(place, BEE_RULES) ?? [];
  });
  const hits = withoutOverlaps(standing);
  const insectsFrom = new Set(hits.filter(isInsect).map((hit) => hit.from));
  const belongsToInsect = (hit: Hit): boolean => {
    if (isInsect(hit) || hit.fits[0]!.use.kind === 'scientific') return false;
    return insectsFrom.has(hit.to) && words[hit.to]!.gap === 'none';
  };
  return hits
    .filter((hit) => !belongsToInsect(hit))
    .map((hit) => ({ ...hit, span: spanWithBee(hit, words, vocabulary) }));
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
