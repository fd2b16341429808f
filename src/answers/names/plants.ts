/** Names of plants in the words of a text; those being watched are known by any part of their names. */
import { plantsOf, watchedOf, type NameIndex, type Scientific, type Use, type WithNames } from './index-of-names.js';
import { hitsIn, nearFits, withoutOverlaps, type Hit, type Manner, type Near, type SearchIn } from './search.js';
import { wordAfter, wordBefore } from './bees.js';
import type { Taxon } from './taxa.js';
import type { Word } from './tokens.js';
import { vocabularyOf, type Vocabulary } from './vocabulary.js';

export interface PlantContext extends WithNames {
  readonly watched: readonly string[];
}

/** The endings of most epithets: "canadense", "recurvatum", "macrophylla", "biflorus", "thunbergii". */
const LATIN = /^[a-z]{3,}(?:us|um|a|is|i|ae|ans|ens|ense|ale|oides|ior|olor)$/;

const looksLatin = (word: Word, vocabulary: Vocabulary): boolean =>
  word.plain.length >= 5 &&
  LATIN.test(word.plain) &&
  !vocabulary.isPlain(word.plain) &&
  !vocabulary.aroundPlants.has(word.plain);

/** A word that says nothing of which plant it is. */
export const isAroundPlants = (word: Word, vocabulary: Vocabulary): boolean =>
  word.digits ||
  vocabulary.isPlain(word.plain) ||
  vocabulary.isPlain(word.stem) ||
  vocabulary.aroundPlants.has(word.plain) ||
  vocabulary.aroundPlants.has(word.stem);

/** Letters from which the beginnings of both words of a scientific name are one: "mert virg", "mervir". */
const SHORTEST_BEGINNING = 3;

function shortHit(words: readonly Word[], from: number, to: number, fits: readonly Near[], firm = true): Hit[] {
  if (fits.length === 0) return [];
  return [
    {
      from,
      to,
      span: [words[from]!.span[0], words[to - 1]!.span[1]],
      fits,
      exactness: 'short',
      letters: words.slice(from, to).reduce((sum, word) => sum + word.plain.length, 0),
      firm,
      watched: false,
    },
  ];
}

const shortFits = (scientific: readonly Scientific[]): Near[] =>
  [...new Set(scientific.map(({ taxon }) => taxon))].map((taxon) => ({
    use: { taxon, kind: 'short', strength: 'strong', place: 0, allDescribing: false },
    cost: 0,
    letters: 0,
    words: 0,
  }));

/** "Mert. virg.": two words that a scientific name's two begin with; "M. virginica": the genus by its first letter. */
function pairHits(words: readonly Word[], index: NameIndex, vocabulary: Vocabulary, manner: Manner): Hit[] {
  const hits: Hit[] = [];
  for (let at = 0; at + 1 < words.length; at++) {
    const [genus, epithet] = [words[at]!, words[at + 1]!];
    if (epithet.gap !== 'none' || epithet.plain.length < SHORTEST_BEGINNING || genus.digits || epithet.digits) continue;
    if (genus.plain.length === 1) {
      const known = (index.byEpithet.get(epithet.plain) ?? []).filter(({ first }) => first.startsWith(genus.plain));
      const initial = genus.plain.toUpperCase();
      const isOfGenus = (use: Use): boolean => use.kind === 'epithet' && use.taxon.genus.startsWith(initial);
      const misspelled =
        known.length === 0 && manner === 'answer' && epithet.plain.length >= SHORTEST_EPITHET_MISSPELLED;
      const near = misspelled ? nearFits([epithet], epithet.plain, index, isOfGenus) : [];
      const fits = near.map((each): Near => ({ ...each, use: { ...each.use, kind: 'short' } }));
      hits.push(...shortHit(words, at, at + 2, misspelled ? fits : shortFits(known)));
      continue;
    }
    if (genus.plain.length < SHORTEST_BEGINNING) continue;
    if (isAroundPlants(genus, vocabulary) || isAroundPlants(epithet, vocabulary)) continue;
    const known = index.byBeginning.get(genus.plain.slice(0, SHORTEST_BEGINNING)) ?? [];
    const begins = known.filter(({ first, last }) => first.startsWith(genus.plain) && last.startsWith(epithet.plain));
    hits.push(...shortHit(words, at, at + 2, shortFits(begins)));
  }
  return hits;
}
/** Letters of an epithet that may be misspelled after the genus's first letter alone. */
const SHORTEST_EPITHET_MISSPELLED = 6;

/** "mervir": three letters of the genus and three of the species, as botanists mark their plots. */
function codeHits(words: readonly Word[], index: NameIndex, vocabulary: Vocabulary): Hit[] {
  return words.flatMap((word, at) => {
    if (word.plain.length !== 2 * SHORTEST_BEGINNING || word.digits || isAroundPlants(word, vocabulary)) return [];
    const known = index.byBeginning.get(word.plain.slice(0, SHORTEST_BEGINNING)) ?? [];
    const rest = word.plain.slice(SHORTEST_BEGINNING);
    return shortHit(words, at, at + 1, shortFits(known.filter(({ last }) => last.startsWith(rest))));
  });
}

/** A shorter short form ("pens", "hep") is taken out of running text only for a plant being watched. */
const SHORTEST_SHORT_IN_RUNNING_TEXT = 6;

/** Letters of a single word, the end of a longer name, by which that name is offered: "cohosh" of "black cohosh". */
const SHORTEST_PART = 6;
/** Letters of a misspelled name that stands among words we do not know. */
const SHORTEST_NEAR_AMONG_STRANGERS = 7;

/** In running text a misspelled word is one plant's name, and nearly right: "hester" is no heather. */
const isCloseEnough = ({ letters, fits }: Hit): boolean => {
  const { cost } = fits[0]!;
  return cost <= (letters < SHORTEST_NEAR_AMONG_STRANGERS ? 0.5 : 1) && (fits.length === 1 || cost <= 0.5);
};

/** What a hit may stand on, in this text: null where its words belong to something else or say too little. */
function standing(hit: Hit, words: readonly Word[], vocabulary: Vocabulary, manner: Manner): Hit | null {
  const { use } = hit.fits[0]!;
  const last = words[hit.to - 1]!;
  const before = wordBefore(words, hit.from);
  const after = wordAfter(words, hit.to);
  const single = hit.to - hit.from === 1;

  // "Rose's garden", "Aunt Lily"
  if (single && last.possessive && hit.to < words.length) return null;
  if (before && vocabulary.people.has(before.plain) && (single || words[hit.from]!.possessive)) return null;
  if (manner === 'running' && after && vocabulary.placeEnds.has(after.plain)) return null;
  if (before && vocabulary.mock.has(before.plain) && hit.exactness !== 'near') return null;
  if (hit.watched) return hit;

  if (use.strength === 'describing') {
    // "lavender" is a plant where nothing else is said, a colour beside "flowers"
    const alone = words.every((word, at) => at === hit.from || saysNoMore(word, vocabulary));
    return alone && manner === 'answer' ? hit : null;
  }
  const unknownAfter = after !== undefined && !isAroundPlants(after, vocabulary);
  // "Bloomerang lilac" may be no common lilac, "rose gentian" no rose; "Nan's lilac" and "purpel lilac" are
  const strangerBefore =
    before !== undefined &&
    !isAroundPlants(before, vocabulary) &&
    !before.possessive &&
    !vocabulary.almostDescribes(before.plain);
  const otherKindBefore = before !== undefined && vocabulary.otherKinds.has(before.plain);
  const bare = hit.fits.every((near) => near.use.taxon.rank === 'genus');
  const strangerMakesOther = strangerBefore && use.kind === 'common' && (!bare || vocabulary.heads.has(last.stem));
  if (use.kind === 'epithet') {
    const alone = words.every((word, at) => at === hit.from || isAroundPlants(word, vocabulary));
    return alone && single && manner === 'answer' ? { ...hit, firm: false } : null;
  }
  const strangers = words.some((word, at) => (at < hit.from || at >= hit.to) && !isAroundPlants(word, vocabulary));
  if (use.kind === 'part') {
    if (manner === 'running' || strangers || otherKindBefore) return null;
    if (!single) return hit;
    return vocabulary.heads.has(last.stem) || last.plain.length < SHORTEST_PART ? null : { ...hit, firm: false };
  }
  if (hit.exactness === 'near' && single) {
    // a strange word alone is a plant we do not know rather than a name with many letters wrong
    const { cost } = hit.fits[0]!;
    const several = hit.fits.length > 1;
    if ((!hit.firm || (several && cost > 1)) && (strangers || several || manner === 'running')) return null;
    if (strangers && (last.plain.length < SHORTEST_NEAR_AMONG_STRANGERS || cost > 1)) return null;
  }
  if (use.kind === 'genus' && single && after && looksLatin(after, vocabulary)) return null;
  if (use.kind === 'common' && single && otherKindBefore && !bare) return null;
  if (manner === 'running') {
    if (use.kind === 'short' && hit.exactness === 'exact' && hit.letters < SHORTEST_SHORT_IN_RUNNING_TEXT) return null;
    if (hit.exactness === 'near' && !(hit.firm && (!single || isCloseEnough(hit)))) return null;
    return hit;
  }
  const firm = hit.firm && !(single && (unknownAfter || strangerMakesOther));
  return { ...hit, firm };
}

const saysNoMore = (word: Word, { joining, aroundPlants, plantNouns }: Vocabulary): boolean =>
  joining.has(word.plain) || (aroundPlants.has(word.stem) && !plantNouns.has(word.stem) && !/^ones?$/.test(word.plain));

/**
 * "Lily" may be a person and "sage" wise; "lilies", "the lily", "4 lily", "sage flowers", "rose: 3" are plants, and so
 * is what an "and" joins to a plant.
 */
function isBacked(hit: Hit, words: readonly Word[], kept: readonly Hit[], vocabulary: Vocabulary): boolean {
  const last = words[hit.to - 1]!;
  if (hit.to - hit.from > 1 || hit.watched || !vocabulary.loose.has(last.plain) || last.plain !== last.stem)
    return true;
  const next = words[hit.to];
  if (next && (next.digits || (next.gap === 'none' && vocabulary.aroundPlants.has(next.stem)))) return true;
  const before = wordBefore(words, hit.from);
  if (!before) return false;
  if (before.plain === 'and' || before.plain === 'n') return kept.at(-1)?.to === hit.from - 1;
  return (
    before.digits ||
    vocabulary.joining.has(before.plain) ||
    vocabulary.describing.has(before.plain) ||
    before.plain === 'on'
  );
}

/** "white violet" is a violet that is white, though "sweet white violet" less one word is a part of a name. */
function isGenusDescribed(hit: Hit, hits: readonly Hit[], words: readonly Word[], { describing }: Vocabulary): boolean {
  if (hit.exactness !== 'part' || hit.watched) return false;
  return hits.some((other) => {
    const endsIt = other.exactness === 'exact' && other.to === hit.to && other.from > hit.from;
    if (!endsIt || !other.fits.some(({ use }) => use.taxon.rank === 'genus')) return false;
    return words.slice(hit.from, other.from).every((word) => describing.has(word.plain));
  });
}

export function plantHits(words: readonly Word[], context: PlantContext, manner: Manner): Hit[] {
  const vocabulary = vocabularyOf(context.words.names);
  const index = plantsOf(context);
  const searchFor = (list: NameIndex): SearchIn => ({
    index: list,
    vocabulary,
    manner,
    leftOut: (word) => vocabulary.joining.has(word.plain),
    plain: (word) =>
      isAroundPlants(word, vocabulary) || vocabulary.bumblebee.has(word.plain) || vocabulary.aroundBees.has(word.plain),
  });
  const hits = hitsIn(words, searchFor(index));
  hits.push(...pairHits(words, index, vocabulary, manner));
  if (manner === 'answer')
    hits.push(
      ...codeHits(words, index, vocabulary).filter((code) =>
        hits.every((hit) => hit.to <= code.from || hit.from >= code.to),
      ),
    );
  if (context.watched.length > 0) {
    hits.push(...hitsIn(words, searchFor(watchedOf(context))).map((hit) => ({ ...hit, watched: true })));
  }
  const standingHits = hits.flatMap((hit) => {
    const kept = standing(hit, words, vocabulary, manner);
    return kept ? [kept] : [];
  });
  const apart = withoutOverlaps(standingHits.filter((hit) => !isGenusDescribed(hit, standingHits, words, vocabulary)));
  if (manner === 'answer') return apart;
  const backed: Hit[] = [];
  for (const hit of apart) if (isBacked(hit, words, backed, vocabulary)) backed.push(hit);
  return backed;
}

/** The plants being watched, as taxa. */
export function watchedTaxa(context: PlantContext): Taxon[] {
  const index = watchedOf(context);
  return context.watched.flatMap((name) => index.taxa.get(name) ?? []);
}
