/** All names of a list made ready to be looked up: built once for each list. */
import type { Bee, Names, Plant } from '../../../shared/names.js';
import type { Words } from '../../../shared/words.js';
import { lately, madeOnce } from '../text.js';
import { Building } from './building.js';
import type { NameIndex } from './name-index.js';
import {
  BOMBUS,
  genusOf,
  HEARD_AS,
  namesOfBee,
  namesOfPlant,
  OTHER_INSECT,
  OTHER_PLANT,
  plantTaxon,
  type Taxon,
} from './taxa.js';
import { vocabularyOf } from './vocabulary.js';

/** Both lists and the words of a language belong together: the index is kept for each pair. */
const keptFor = <List extends object>(
  build: (list: List, words: Words) => NameIndex,
): ((list: List, words: Words) => NameIndex) => {
  const forList = madeOnce((list: List) => madeOnce((words: Words) => build(list, words)));
  return (list, words) => forList(list)(words);
};

const indexBees = keptFor((bees: readonly Bee[], words) => {
  const { names } = words;
  const vocabulary = vocabularyOf(words);
  const leftOut = (word: string): boolean => vocabulary.joining.has(word) || vocabulary.bumblebee.has(word);
  const building = new Building(names, vocabulary, leftOut, 'any');
  building.taxa.set(BOMBUS.name, BOMBUS);
  for (const bee of bees) for (const named of namesOfBee(bee)) building.add(named);
  for (const insect of names.otherInsects) {
    building.add({ taxon: OTHER_INSECT, kind: 'insect', name: insect, place: 0 });
  }
  for (const [heard, said] of Object.entries(names.heardAs)) {
    const stems = building.saying(said).map((word) => word.stem);
    for (const { taxon } of building.exact.get(stems.join('')) ?? []) {
      building.add({ taxon, kind: 'short', name: heard, place: HEARD_AS });
    }
  }
  return building;
});

const indexPlants = keptFor((plants: readonly Plant[], words) => {
  const vocabulary = vocabularyOf(words);
  const building = new Building(words.names, vocabulary, (word) => vocabulary.joining.has(word), 'ends');
  const rows = new Set(plants.map((plant) => plant.name));
  for (const plant of plants) {
    for (const named of namesOfPlant(plant)) building.add(named);
    const genus = genusOf(plant.name);
    if (rows.has(genus)) continue;
    rows.add(genus);
    building.add({ taxon: plantTaxon(genus), kind: 'genus', name: genus, place: 0 });
  }
  for (const name of words.names.otherPlants) building.add({ taxon: OTHER_PLANT, kind: 'unlisted', name, place: 0 });
  return building;
});

export interface WithNames {
  readonly names: Names;
  readonly words: Words;
}

export const beesOf = ({ names, words }: WithNames): NameIndex => indexBees(names.bees, words);
export const plantsOf = ({ names, words }: WithNames): NameIndex => indexPlants(names.plants, words);

/** Between the names of a list that is remembered; in no name. */
const APART = '\u0000';

/** The few plants of the patch, known by any part of their names; one that the list lacks by the words typed for it. */
const indexWatched = madeOnce((names: Names) =>
  madeOnce((words: Words) =>
    // each message brings its list anew: remembered by what it says
    lately((watched): NameIndex => {
      const vocabulary = vocabularyOf(words);
      const building = new Building(words.names, vocabulary, (word) => vocabulary.joining.has(word), 'any');
      const known = indexPlants(names.plants, words);
      for (const name of watched === '' ? [] : watched.split(APART)) {
        const rows = names.plants.filter((plant) => plant.name === name);
        for (const row of rows) for (const named of namesOfPlant(row)) building.add(named);
        if (known.taxa.has(name)) continue;
        const typed: Taxon = { name, rank: null, genus: '', regions: [], cuckoo: false };
        building.add({ taxon: typed, kind: 'common', name, place: 0 });
        // "the blue one"
        const noun = building.saying(name).at(-1);
        if (!noun || !vocabulary.plantNouns.has(noun.stem) || noun.span[0] === 0) continue;
        const asOne = `${name.slice(0, noun.span[0])}one`;
        building.add({ taxon: typed, kind: 'common', name: asOne, place: 1 });
      }
      return building;
    }),
  ),
);

export const watchedOf = (context: WithNames & { readonly watched: readonly string[] }): NameIndex =>
  indexWatched(context.names)(context.words)(context.watched.join(APART), undefined);
