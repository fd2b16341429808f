/** Tells plants that were watched from those a note only mentions: "the crocuses were done, so I did the squill, 60". */
import type { Words } from '../../../shared/words.js';
import { anyOf } from '../any-of.js';
import type { FoundName } from '../names/index.js';
import { findNumbers } from '../numbers.js';
import type { Span } from '../reading.js';
import { blank, madeOnce } from '../text.js';
import type { FloraSaid } from './flowers.js';
import { plantsWords } from '../plants/vocabulary.js';
import { isLong } from './asides.js';
import { isWithin, sentencesIn } from './sentences.js';
import { noteWords } from './vocabulary.js';

/** "my", "the old", "a big": words, at most, between "next to" and the plant. */
const MOST_BEFORE = "(?:[ ]+[\\p{L}']+){0,2}[ ]+";
/** How much of the text before a plant is looked at, in letters. */
const MOST_LETTERS_BEFORE = 60;
/** Words of a sentence that are enough for a story; "phlox and columbine" tells what was watched. */
const LEAST_WORDS_OF_STORY = { short: 5, long: 3 };

const patternsOf = madeOnce((words: Words) => {
  const { note, count, tally } = words;
  return {
    notInFlower: new RegExp(anyOf(note.notInFlower), 'u'),
    beside: new RegExp(`${anyOf(note.besidePlants)}${MOST_BEFORE}$`, 'u'),
    // in a long mail "sitting there" and "the 2nd" are of no plant in their sentence
    tellsFlowers: new RegExp(anyOf(note.ofWatch, count.flowers, count.open, count.vague, tally.zero), 'u'),
    tellsWatch: new RegExp(`\\d|${anyOf(note.watching, count.flowers, count.open, count.vague, tally.zero)}`, 'u'),
  };
});

/** The clause behind a name: up to a sign or to a word that leads on. */
const REST_OF_CLAUSE = /^[^,;.!?\n]*/;

/**
 * Mentions of plants that were not watched. Only where flowers of another plant are counted: a note that tells of one
 * plant alone tells of its watch.
 */
export function onlyMentioned(folded: string, { bees, plants, flowers }: FloraSaid, words: Words): FoundName[] {
  const keyOf = (found: FoundName): string => found.names[0]?.name ?? '';
  const counted = new Set(flowers.flatMap(({ plant }) => (plant === null ? [] : [keyOf(plants[plant]!)])));
  if (counted.size === 0) return [];
  const patterns = patternsOf(words);
  const { small } = noteWords(words);
  const { onlyCorrects } = plantsWords(words);
  const sentences = sentencesIn(folded);

  const isMentioned = (found: FoundName, at: number): boolean => {
    const [from, to] = found.span;
    const clause = REST_OF_CLAUSE.exec(folded.slice(to, to + MOST_LETTERS_BEFORE * 2))![0];
    const next = plants[at + 1];
    const beforeNext = next ? clause.slice(0, Math.max(0, next.span[0] - to)) : clause;
    if (patterns.notInFlower.test(beforeNext)) return true;
    if (next && onlyCorrects(folded.slice(to, next.span[0]))) return true;
    const sentence = sentences.find(([, end]) => end > from) ?? [0, folded.length];
    const before = folded.slice(Math.max(sentence[0], from - MOST_LETTERS_BEFORE), from);
    const beside = bees.some(({ span }) => isWithin(span, sentence));
    if (patterns.beside.test(before) && !beside) return true;
    const tells = isLong(folded, sentences) ? patterns.tellsFlowers : patterns.tellsWatch;
    if (tells.test(folded.slice(...sentence)) || beside) return false;
    const others = (folded.slice(...sentence).match(/[\p{L}']+/gu) ?? []).filter((word) => !small(word));
    return others.length >= LEAST_WORDS_OF_STORY[isLong(folded, sentences) ? 'long' : 'short'];
  };
  const mentioned = plants.filter((found, at) => !counted.has(keyOf(found)) && isMentioned(found, at));
  // one mention in earnest is enough
  const kept = new Set(plants.filter((found) => !mentioned.includes(found)).map(keyOf));
  return mentioned.filter((found) => !kept.has(keyOf(found)));
}

/**
 * Mentions of plants that the next one takes back: the violets of "40 violets, sorry, 40 trillium", and of one plant told
 * twice ("phlox 20, violets 40, sorry phlox 30") what was told first.
 */
export function takenBack(folded: string, { plants, flowers }: FloraSaid, words: Words): FoundName[] {
  const { onlyCorrects } = plantsWords(words);
  // words before a number of flowers may be what corrects
  const spans = flowers.map(({ span: [from, to] }): Span => {
    const [number] = findNumbers(folded.slice(from, to), words);
    return [from + (number?.span[0] ?? 0), to];
  });
  const unnumbered = blank(folded, spans);
  const keyOf = (found: FoundName): string => found.names[0]?.name ?? '';
  return plants.flatMap((found, at) => {
    const next = plants[at + 1];
    const isCounted = flowers.some(({ plant }) => plant === at + 1);
    if (!next || !isCounted || !onlyCorrects(unnumbered.slice(found.span[1], next.span[0]))) return [];
    const earlier = plants.slice(0, at + 1).filter((other) => keyOf(other) === keyOf(next));
    return earlier.length > 0 ? earlier : [found];
  });
}

/** What is said of the flora without those plants and their flowers. */
export function withoutPlants({ bees, plants, flowers }: FloraSaid, dropped: readonly FoundName[]): FloraSaid {
  if (dropped.length === 0) return { bees, plants, flowers };
  const kept = plants.filter((found) => !dropped.includes(found));
  return {
    bees,
    plants: kept,
    flowers: flowers
      .filter(({ plant }) => plant === null || !dropped.includes(plants[plant]!))
      .map(({ span, plant }) => ({ span, plant: plant === null ? null : kept.indexOf(plants[plant]!) })),
  };
}
