/** The words around names, made ready to be asked "is this one of them?". */
import type { Words } from '../../../shared/words.js';
import { madeOnce, phraseFinder, type PhraseFinder } from '../text.js';
import { wordsOfOtherKinds } from './other-kinds.js';
import { editsBetween, lettersApart, lettersIn } from './similarity.js';
import { stemOf } from './tokens.js';

export type NameWords = Words['names'];

export interface Vocabulary {
  readonly joining: ReadonlySet<string>;
  readonly beeGenera: ReadonlySet<string>;
  readonly bumblebee: ReadonlySet<string>;
  readonly aroundBees: ReadonlySet<string>;
  readonly beforeBumblebee: ReadonlySet<string>;
  readonly afterBombus: ReadonlySet<string>;
  readonly aroundPlants: ReadonlySet<string>;
  readonly describing: ReadonlySet<string>;
  readonly placing: ReadonlySet<string>;
  readonly faint: ReadonlySet<string>;
  readonly ordinary: ReadonlySet<string>;
  readonly heads: ReadonlySet<string>;
  readonly manyKinds: ReadonlySet<string>;
  readonly otherKinds: ReadonlySet<string>;
  readonly mock: ReadonlySet<string>;
  readonly givenNames: ReadonlySet<string>;
  readonly owning: ReadonlySet<string>;
  readonly people: ReadonlySet<string>;
  readonly elsewhere: ReadonlySet<string>;
  readonly placeEnds: ReadonlySet<string>;
  /** Those and the other words for places: "bog", "boardwalk". */
  readonly placeNouns: ReadonlySet<string>;
  readonly choosing: ReadonlySet<string>;
  readonly adding: ReadonlySet<string>;
  readonly kin: ReadonlySet<string>;
  readonly negating: ReadonlySet<string>;
  readonly having: ReadonlySet<string>;
  readonly marks: ReadonlySet<string>;
  readonly body: ReadonlySet<string>;
  readonly loose: ReadonlySet<string>;
  readonly plantNouns: ReadonlySet<string>;
  readonly states: ReadonlySet<string>;
  readonly sizes: ReadonlySet<string>;
  readonly unknown: PhraseFinder<true>;
  readonly chat: PhraseFinder<true>;
  readonly smallTalk: PhraseFinder<true>;
  /** What corrects a name, besides what corrects anything: "turned out to be". */
  readonly correcting: PhraseFinder<true>;
  readonly asking: ReadonlySet<string>;
  /** "purpel", "beautifull": nearly a word that describes. */
  readonly almostDescribes: (word: string) => boolean;
  /** "nonee", "thrity": nearly a word of talk or of another kind of answer. */
  readonly almostKnown: (word: string) => boolean;
  /** Small numbers in words. */
  readonly numbers: ReadonlySet<string>;
  /** Everyday words, which are no slips of others. */
  readonly dictionary: ReadonlySet<string>;
  /** Words by their stems, for "is this word of a plant or of the talk around it". */
  readonly isPlain: (word: string) => boolean;
}

/** Letters from which a word one slip away from another is taken for it. */
const SHORTEST_MISSPELLED = 5;

/** Words as listed, and by their stems, so that a plural need not be listed. */
const setOf = (words: readonly string[]): ReadonlySet<string> => new Set(words.flatMap((word) => [word, stemOf(word)]));

/** The words of phrases are no names either: "idea" of "no idea" is no misspelled Itea. */
const wordsWithin = (...phrases: (readonly string[])[]): string[] =>
  phrases.flat().flatMap((phrase) => phrase.replaceAll("'", '').match(/\p{L}+/gu) ?? []);

/** One slip away from one of them. Letters are compared first: most words have others. */
function almostOneOf(word: string, words: ReadonlySet<string>): boolean {
  const letters = lettersIn(word);
  for (const known of words) {
    const close = Math.abs(known.length - word.length) <= 1 && known.length >= SHORTEST_MISSPELLED;
    if (close && lettersApart(letters, lettersIn(known)) <= 2 && editsBetween(word, known, 1) <= 1) return true;
  }
  return false;
}

/** "don't know" is also typed "dont know". */
const phrasesOf = (phrases: readonly string[]): PhraseFinder<true> =>
  phraseFinder(
    phrases.flatMap((phrase) => [phrase, phrase.replaceAll("'", '')]).map((phrase) => [phrase, true] as const),
  );

export const vocabularyOf = madeOnce((words: Words): Vocabulary => {
  const { names } = words;
  const sets = {
    joining: setOf(names.joining),
    beeGenera: setOf(names.beeGenera),
    bumblebee: setOf(names.bumblebee),
    aroundBees: setOf(names.aroundBees),
    beforeBumblebee: setOf(names.beforeBumblebee),
    afterBombus: setOf(names.afterBombus.map((word) => word.replaceAll("'", ''))),
    aroundPlants: setOf(names.aroundPlants),
    describing: setOf(names.describing),
    placing: setOf(names.placing),
    faint: setOf(names.faint),
    ordinary: setOf([
      ...names.ordinary,
      ...wordsWithin(names.unknown, names.hedges, names.chat, names.smallTalk, names.correcting),
    ]),
    heads: setOf(names.heads),
    manyKinds: setOf(names.manyKinds),
    otherKinds: setOf(names.otherKinds),
    mock: setOf(names.mock),
    givenNames: setOf(names.givenNames),
    owning: setOf(names.owning),
    people: setOf(names.people),
    elsewhere: setOf(names.elsewhere),
    placeEnds: setOf(names.placeEnds),
    placeNouns: setOf([...names.placeEnds, ...words.place.nouns.map((noun) => noun.split(' ').at(-1)!)]),
    choosing: setOf(names.choosing),
    adding: setOf(names.adding),
    kin: setOf(names.kin),
    negating: setOf(names.negating),
    having: setOf(names.having),
    marks: new Set(names.marks),
    body: new Set(names.body),
    loose: setOf(names.loose),
    plantNouns: setOf(names.plantNouns),
    states: setOf(names.states),
    sizes: setOf(names.sizes),
    asking: setOf(names.asking),
  };
  const plain = new Set(
    [
      sets.joining,
      sets.describing,
      sets.ordinary,
      sets.elsewhere,
      sets.people,
      sets.negating,
      sets.having,
      sets.asking,
      new Set(names.everyday),
    ].flatMap((set) => [...set]),
  );
  for (const word of wordsOfOtherKinds(words)) if (!sets.loose.has(word) && !sets.heads.has(word)) plain.add(word);
  return {
    ...sets,
    numbers: new Set(Object.keys(words.numbers.units)),
    dictionary: words.dictionary,
    unknown: phrasesOf(names.unknown),
    chat: phrasesOf(names.chat),
    smallTalk: phrasesOf(names.smallTalk),
    correcting: phrasesOf([...words.hedges.correcting, ...names.correcting]),
    almostDescribes: (word) =>
      word.length >= SHORTEST_MISSPELLED &&
      names.describing.some((known) => known.length >= 4 && editsBetween(word, known, 1) <= 1),
    almostKnown: (word) => word.length > SHORTEST_MISSPELLED && almostOneOf(word, plain),
    isPlain: (word) => plain.has(word),
  };
});
