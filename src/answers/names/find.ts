/** Finds the bees and plants named in running text. */
import type { Context, Span } from '../reading.js';
import { fold, madeOnce } from '../text.js';
import { isBeeGenus, withBumble, withInitials } from './bee-words.js';
import { beeHits, isInsect } from './bees.js';
import { doubted, hedgesIn } from './hedges.js';
import { beesOf, plantsOf } from './index-of-names.js';
import { plantHits, watchedTaxa } from './plants.js';
import type { Exactness, Hit } from './hit.js';
import { settleBee, settlePlant, type Settled } from './settle.js';
import { BOMBUS } from './taxa.js';
import { wordsOf, type Word } from './tokens.js';
import { vocabularyOf } from './vocabulary.js';

/** An accepted name; rank null for a plant that no list holds. */
export interface NameValue {
  readonly name: string;
  readonly rank: string | null;
}

export interface FoundName {
  /** Best first. One where `clear`; else the few it could be, the genus last. */
  readonly names: readonly NameValue[];
  readonly clear: boolean;
  readonly span: Span;
  /** A hedge is about it. */
  readonly doubt: boolean;
  /** `unknown`: "couldn't tell which"; `group`: "bumble bees", "Bombus sp.", which a count may say without naming any. */
  readonly exactness: Exactness | 'unknown' | 'group';
}

export interface FoundNames {
  readonly bees: readonly FoundName[];
  readonly plants: readonly FoundName[];
}

const valuesOf = (settled: Settled): NameValue[] => settled.taxa.map(({ name, rank }) => ({ name, rank }));
const found = (hit: Hit, settled: Settled): FoundName => ({
  names: valuesOf(settled),
  clear: settled.clear,
  span: hit.span,
  doubt: false,
  exactness: hit.exactness,
});

const touches = (left: Span, right: Span): boolean => left[0] < right[1] && right[0] < left[1];
const lengthOf = (span: Span): number => span[1] - span[0];

/** "Bombus", "bumble bees", "couldn't tell which": Bombus with no more said. */
export function genusMentions(folded: string, words: readonly Word[], context: Context): FoundName[] {
  const vocabulary = vocabularyOf(context.words);
  const mention = (span: Span, exactness: 'unknown' | 'group'): FoundName => ({
    names: [{ name: BOMBUS.name, rank: BOMBUS.rank }],
    clear: true,
    span,
    doubt: false,
    exactness,
  });
  const unknown = vocabulary.unknown(folded).map(({ span }) => mention(span, 'unknown'));
  const groups: FoundName[] = [];
  for (const [at, word] of words.entries()) {
    const after = words[at + 1];
    const speciesNext = after?.gap === 'none' && /^(?:spp?|species)$/.test(after.plain);
    const isGenus = isBeeGenus(word, vocabulary) && (word.plain.length > 3 || speciesNext);
    const isNoun = vocabulary.bumblebee.has(word.plain) && word.plain.startsWith('bumb');
    if (!isGenus && !isNoun) continue;
    const to = isNoun && after?.gap === 'none' && vocabulary.bumblebee.has(after.plain) ? after.span[1] : word.span[1];
    groups.push(mention([word.span[0], to], 'group'));
  }
  return [...unknown, ...groups];
}

const sorted = (names: readonly FoundName[]): FoundName[] => [...names].sort((a, b) => a.span[0] - b.span[0]);

function search(folded: string, context: Context): FoundNames {
  const vocabulary = vocabularyOf(context.words);
  const words = withBumble(wordsOf(folded, context.words.names), vocabulary);
  const { region } = context.survey;
  const beeIndex = beesOf(context);
  const plantIndex = plantsOf(context);
  const watched = watchedTaxa(context);
  const beeWords = withInitials(words, context.words.names, vocabulary, beeIndex);
  const beesAndInsects = beeHits(beeWords, context, 'running');
  const insects = beesAndInsects.filter(isInsect);
  const beeNames = beesAndInsects
    .filter((hit) => !isInsect(hit))
    .map((hit) => found(hit, settleBee(hit, region, beeIndex)));
  const plantNames = plantHits(words, context, 'running').map((hit) =>
    found(hit, settlePlant(hit, watched, plantIndex)),
  );

  const isWatched = (plant: FoundName): boolean => plant.names.some(({ name }) => context.watched.includes(name));
  const bees = beeNames.filter(
    (bee) => !plantNames.some((plant) => touches(plant.span, bee.span) && weightOf(plant) > weightOf(bee)),
  );
  // a "cabbage white" is no cabbage
  const isOfInsect = ({ span }: FoundName): boolean =>
    insects.some((insect) => touches(insect.span, span) && lengthOf(insect.span) > lengthOf(span));
  const plants = plantNames.filter(
    (plant) =>
      !isOfInsect(plant) &&
      (isWatched(plant) || !bees.some((bee) => touches(plant.span, bee.span) && weightOf(bee) >= weightOf(plant))),
  );

  const mentions = joined(genusMentions(folded, words, context).filter((mention) => isMention(folded, mention, bees)));
  const named = sorted([...bees, ...plants, ...mentions]);
  const unknown = mentions.filter(({ exactness }) => exactness === 'unknown');
  const hedges = hedgesIn(folded, context.words).filter(
    ({ span }) => !unknown.some((mention) => touches(mention.span, span)),
  );
  const spans = named.map(({ span }) => span);
  const inDoubt = new Set([...doubted(folded, spans, hedges, context.words)].map((at) => named[at]));
  const withDoubt = (name: FoundName): FoundName => (inDoubt.has(name) ? { ...name, doubt: true } : name);
  return { bees: sorted([...bees, ...mentions]).map(withDoubt), plants: plants.map(withDoubt) };
}

/** Letters that a misspelled or doubtful name gives way by where a bee and a plant claim the same words. */
const LETTERS_FOR_NEAR = 3;

/** Of "American plum" the plum has both words, of "common eastern" the bee: the longer name, rightly spelled. */
const weightOf = ({ span, exactness, clear }: FoundName): number =>
  lengthOf(span) - (exactness === 'near' ? LETTERS_FOR_NEAR : 0) - (clear ? 0 : LETTERS_FOR_NEAR);

/** Between "Bombus" and its species: nothing, or a subgenus in brackets. */
const WITHIN_NAME = /^[\s.(]*(?:[a-z]{5,}\)\s*)?$/;
/** Between a name and "not sure" where that is about another: "1 bimac, one I couldn't tell". */
const ANOTHER = /[;\n\d]|(?<![a-z])(?:one|another|other|others|and|two|three|a|some|rest)(?![a-z])/;
const MOST_TO_DOUBT = 24;

/** "Bombus" before a name is part of it; "not sure" beside a name is a doubt about it. */
function isMention(folded: string, mention: FoundName, bees: readonly FoundName[]): boolean {
  return !bees.some((bee) => {
    if (touches(bee.span, mention.span)) return true;
    const beeFirst = bee.span[0] < mention.span[0];
    const between = beeFirst ? folded.slice(bee.span[1], mention.span[0]) : folded.slice(mention.span[1], bee.span[0]);
    if (mention.exactness === 'group') return WITHIN_NAME.test(between);
    return between.length <= MOST_TO_DOUBT && !ANOTHER.test(between);
  });
}

/** "unknown" and "bumble bee" of "unknown bumble bee" are one mention. */
function joined(mentions: readonly FoundName[]): FoundName[] {
  const all: FoundName[] = [];
  for (const mention of sorted(mentions)) {
    const last = all.at(-1);
    if (last && mention.span[0] <= last.span[1] + 1) {
      const exactness = last.exactness === 'unknown' || mention.exactness === 'unknown' ? 'unknown' : 'group';
      all[all.length - 1] = { ...last, exactness, span: [last.span[0], Math.max(last.span[1], mention.span[1])] };
    } else all.push(mention);
  }
  return all;
}

/** The last text searched in each context: a reader of tallies asks for bees, then for plants, of the same text. */
const lastSearch = madeOnce((_context: Context) => ({ folded: '', names: null as FoundNames | null }));

/**
 * Bees and plants named in folded text, left to right, none overlapping within a list. Plants being watched are
 * preferred, and found by any part of their names that says something ("the geranium").
 */
export function findNames(folded: string, context: Context): FoundNames {
  const last = lastSearch(context);
  if (last.names === null || last.folded !== folded) {
    last.names = search(folded, context);
    last.folded = folded;
  }
  return last.names;
}

/** The bees and plants that a text names clearly, each once and as typed first. */
export interface NamedIn {
  readonly bees: readonly string[];
  /** Where each bee stands. */
  readonly at: readonly Span[];
  readonly plants: readonly string[];
}

export function namedIn(text: string, context: Context): NamedIn {
  const { bees, plants } = findNames(fold(text), context);
  const isName = ({ clear, exactness }: FoundName): boolean => clear && exactness !== 'group';
  const first = (found: FoundName, at: number, all: readonly FoundName[]): boolean =>
    all.findIndex(({ names }) => names[0]?.name === found.names[0]?.name) === at;
  const namedBees = bees.filter(isName).filter(first);
  return {
    bees: namedBees.map(({ names }) => names[0]!.name),
    at: namedBees.map(({ span }) => span),
    plants: plants
      .filter(isName)
      .filter(first)
      .map(({ names }) => names[0]!.name),
  };
}

export const findBees = (folded: string, context: Context): readonly FoundName[] => findNames(folded, context).bees;
export const findPlants = (folded: string, context: Context): readonly FoundName[] => findNames(folded, context).plants;
