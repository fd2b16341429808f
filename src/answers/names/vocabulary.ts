/** The words around names, made ready to be asked "is this one of them?". */
import type { Words } from '../../../shared/words.js';
import { madeOnce, phraseFinder, type PhraseFinder } from '../text.js';
import { editsBetween } from './similarity.js';
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
  readonly otherKinds: ReadonlySet<string>;
  readonly mock: ReadonlySet<string>;
  readonly people: ReadonlySet<string>;
  readonly elsewhere: ReadonlySet<string>;
  readonly placeEnds: ReadonlySet<string>;
  readonly negating: ReadonlySet<string>;
  readonly having: ReadonlySet<string>;
  readonly marks: ReadonlySet<string>;
  readonly body: ReadonlySet<string>;
  readonly loose: ReadonlySet<string>;
  readonly plantNouns: ReadonlySet<string>;
  readonly unknown: PhraseFinder<true>;
  readonly chat: PhraseFinder<true>;
  readonly asking: ReadonlySet<string>;
  /** "purpel", "beautifull": nearly a word that describes. */
  readonly almostDescribes: (word: string) => boolean;
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

/** "don't know" is also typed "dont know". */
const phrasesOf = (phrases: readonly string[]): PhraseFinder<true> =>
  phraseFinder(
    phrases.flatMap((phrase) => [phrase, phrase.replaceAll("'", '')]).map((phrase) => [phrase, true] as const),
  );

export const vocabularyOf = madeOnce((names: NameWords): Vocabulary => {
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
    ordinary: setOf([...names.ordinary, ...wordsWithin(names.unknown, names.hedges, names.chat)]),
    heads: setOf(names.heads),
    otherKinds: setOf(names.otherKinds),
    mock: setOf(names.mock),
    people: setOf(names.people),
    elsewhere: setOf(names.elsewhere),
    placeEnds: setOf(names.placeEnds),
    negating: setOf(names.negating),
    having: setOf(names.having),
    marks: new Set(names.marks),
    body: new Set(names.body),
    loose: setOf(names.loose),
    plantNouns: setOf(names.plantNouns),
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
    ].flatMap((set) => [...set]),
  );
  return {
    ...sets,
    unknown: phrasesOf(names.unknown),
    chat: phrasesOf(names.chat),
    almostDescribes: (word) =>
      word.length >= SHORTEST_MISSPELLED &&
      names.describing.some((known) => known.length >= 4 && editsBetween(word, known, 1) <= 1),
    isPlain: (word) => plain.has(word),
  };
});
