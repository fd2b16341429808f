/**
 * What kind of place somebody watched, without the words around it: of "and it is a wet meadow I think" the "wet meadow".
 * Its words are known by their beginning and by a slip of the thumb too: "oak sav", "praire".
 */
import {
  editsBetween,
  fold,
  labelOf,
  namedIn,
  readPlants,
  saysAnyOf,
  type Context,
  type Span,
} from '../answers/index.js';
import { withoutAround } from './doubts/choosing.js';

/** Words behind a size in passing that can be a kind of place: "at the edge of the woods". */
const MOST_WORDS = 6;
/** A word that may be cut short stands at the end of so few words, and has so many letters at least. */
const CUT_SHORT = { mostWords: 3, leastLetters: 3 };
/** Shorter words are other words as often as slips: "shore" and "short". */
const LEAST_LETTERS = 5;
const LEAST_FOR_TWO_SLIPS = 8;

const PART = /[^,;.\n]+/g;
const WORD = /\p{L}[\p{L}'’-]*/gu;

const wordsIn = (text: string): { word: string; at: number }[] =>
  [...text.matchAll(WORD)].map((match) => ({ word: fold(match[0]), at: match.index }));

/** "medow" lacks a letter of "meadow", "feild" has two changed about; a letter in place of another is another word. */
function isSlip(word: string, known: string): boolean {
  if (word.length < LEAST_LETTERS || known.length < LEAST_LETTERS || word[0] !== known[0]) return false;
  const most = word.length < LEAST_FOR_TWO_SLIPS ? 1 : 2;
  if (editsBetween(word, known, most) > most) return false;
  const sorted = (letters: string): string => [...letters].sort().join('');
  return word.length > LEAST_LETTERS || known.length > word.length || sorted(word) === sorted(known);
}

/** The words with those of a kind of place as they are spelled. */
function respelled(part: string, { words }: Context): string {
  const known = words.wishes.habitat.flatMap((phrase) => phrase.split(' '));
  const namesKind = saysAnyOf(part, words.wishes.habitat);
  const said = wordsIn(part);
  const last = said.at(-1);
  return part.replace(WORD, (typed: string, at: number) => {
    const word = fold(typed);
    if (known.includes(word)) return typed;
    const mayBeCut =
      !namesKind && at === last?.at && said.length <= CUT_SHORT.mostWords && word.length >= CUT_SHORT.leastLetters;
    // the "plant" of "bleeding heart, 1 plant" is no planting, a "gravel bar" no barnyard
    if (words.dictionary.has(word)) return typed;
    const isCut = (whole: string): boolean =>
      mayBeCut && !words.wishes.habitatAround.includes(word) && whole.startsWith(word);
    return known.find((whole) => isSlip(word, whole)) ?? known.find(isCut) ?? typed;
  });
}

/** The plants that a text names by a name of theirs. */
function plantsIn(text: string, context: Context): string[] {
  const told = readPlants(text, context);
  const plants = told.state === 'sure' ? told.value : told.state === 'unsure' ? (told.offer[0] ?? []) : [];
  return plants.flatMap(({ name }) => name ?? []);
}

/** The kind of place of one part, and what tells more of it; "" where it names none. */
function kindIn(said: string, context: Context): string {
  const { habitat, habitatAround } = context.words.wishes;
  const part = respelled(said, context);
  if (!saysAnyOf(part, habitat)) return '';
  const heads = new Set(habitat.map((phrase) => phrase.split(' ').at(-1)));
  const words = wordsIn(part);
  let first = words.findIndex(({ word }) => heads.has(word) || heads.has(word.replace(/s$/, '')));
  // "prairie smoke" is no prairie
  const plantWords = plantsIn(part, context).flatMap((name) => fold(labelOf(name, context)).split(' '));
  if (first === -1 || plantWords.includes(words[first]!.word)) return '';
  while (first > 0 && !habitatAround.includes(words[first - 1]!.word)) first--;
  // "a meadow. … the" of what was told of the queens
  const { determiners } = context.words.place;
  const last = words.findLastIndex(({ word }) => !determiners.includes(word));
  const end = words[last + 1]?.at ?? part.length;
  return withoutAround(part.slice(words[first]?.at ?? 0, end).trimEnd(), context);
}

/** Told along with something else: the parts that name a kind of place. */
export function habitatIn(text: string, context: Context): string {
  // "woodland edge, not road verge"
  const { denies } = context.words.tally;
  const isDenied = (part: string): boolean => denies.some((word) => fold(part).trim().startsWith(`${word} `));
  const parts = (text.match(PART) ?? []).filter((part) => !isDenied(part));
  const kinds = parts.map((part) => kindIn(part, context)).filter((kind) => kind !== '');
  return [...new Set(kinds)].join(', ');
}

/** Asked for by itself: known words where there are any, else all that was said. */
export function habitatSaid(text: string, context: Context): string {
  if (text.includes('?')) return '';
  // "bluebells and phlox" are told already where the kind of place was asked
  return habitatIn(text, context) || (plantsIn(text, context).length > 0 ? '' : withoutAround(text, context));
}

/** Told in passing right behind the size of the patch: "12x8 ft at the woodland edge", "12x8 ft, meadow". */
export function habitatBehind(text: string, used: readonly Span[], context: Context): string {
  const end = Math.max(0, ...used.map(([, to]) => to));
  for (const [part] of text.slice(end).matchAll(PART)) {
    if (part.trim() === '') continue;
    // "4x4 ft meadow 20 violets"
    const said = part.replace(/\d.*$/s, '');
    const isKind = wordsIn(said).length <= MOST_WORDS && namedIn(said, context).plants.length === 0;
    return isKind ? kindIn(said, context) : '';
  }
  return '';
}
