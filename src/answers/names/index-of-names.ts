/** All names of a list made ready to be looked up: built once for each list, in some ten milliseconds. */
import type { Bee, Names, Plant } from '../../../shared/names.js';
import { fold, madeOnce } from '../text.js';
import { lettersIn, soundOf, type Spelled } from './similarity.js';
import {
  BOMBUS,
  OTHER_INSECT,
  genusOf,
  namesOfBee,
  namesOfPlant,
  plantTaxon,
  type Kind,
  type Named,
  type Taxon,
} from './taxa.js';
import { wordsOf } from './tokens.js';
import { vocabularyOf, type NameWords, type Vocabulary } from './vocabulary.js';

/**
 * How much a name says by itself. `strong` stands anywhere; `placing` ("American") must not describe a word after it;
 * `describing` ("yellow") is a name only as "yellow bumble bee", for any bee could be described so.
 */
export type Strength = 'strong' | 'placing' | 'describing';

export interface Use {
  readonly taxon: Taxon;
  readonly kind: Kind;
  readonly strength: Strength;
  readonly place: number;
  /** Every word of the name describes: "half black". */
  readonly allDescribing: boolean;
}

/** A name to compare misspelled ones with. */
export interface Key {
  /** The words that say something, where there are several. */
  readonly words: readonly string[];
  readonly whole: Spelled;
  readonly letters: number;
  readonly sounds: number;
  readonly uses: Use[];
}

/** A bee's has one word, the genus left out. */
export interface Scientific {
  readonly first: string;
  readonly last: string;
  readonly taxon: Taxon;
}

/** Letters of a scientific name's first word by which it is kept: one in the lists of bees, three in those of plants. */
const FIRST_LETTERS = { any: 1, ends: 3 };

export type KeysByLength = readonly (readonly Key[] | undefined)[];

/** Last letters by which a name is found whose first is misspelled. */
export const END_LETTERS = 3;

export interface NameIndex {
  /** By the stems of the words that say something, written as one: "halfblack", "blackgold". */
  readonly exact: ReadonlyMap<string, readonly Use[]>;
  /** By the same stems sorted, for "plum, American". */
  readonly anyOrder: ReadonlyMap<string, readonly Use[]>;
  /** By the first sound, then by length in letters. */
  readonly byStart: ReadonlyMap<string, KeysByLength>;
  /** By the last three letters, then by length: the first letter may be the misspelled one. */
  readonly byEnd: ReadonlyMap<string, KeysByLength>;
  /** Scientific names by the first letters of their first word, for "B. imp" and "mert. virg.". */
  readonly byBeginning: ReadonlyMap<string, readonly Scientific[]>;
  /** Scientific names by their last word, for "M. virginica". */
  readonly byEpithet: ReadonlyMap<string, readonly Scientific[]>;
  /** Stems of the first and of the last words of all names. */
  readonly firsts: ReadonlySet<string>;
  readonly lasts: ReadonlySet<string>;
  readonly taxa: ReadonlyMap<string, Taxon>;
  /** The name shown to people. */
  readonly labels: ReadonlyMap<string, string>;
}

export const anyOrderKey = (stems: readonly string[]): string => [...stems].sort().join(' ');

/** Words of a name that may be missing, at most: "large-flowered white trillium" is known by four subsets. */
const MOST_WORDS_WITH_PARTS = 10;

/** "white trillium", "trillium" of "large white trillium": the ends of a name, and the name less one word. */
function partsOf(words: readonly string[], which: 'any' | 'ends'): string[][] {
  if (words.length < 2 || words.length > MOST_WORDS_WITH_PARTS) return [];
  const parts = new Map<string, string[]>();
  const add = (part: string[]): void => void parts.set(part.join(' '), part);
  for (let from = 1; from < words.length; from++) add(words.slice(from));
  if (words.length >= 3) {
    for (const leftOut of words.keys()) add(words.filter((_, at) => at !== leftOut));
  }
  if (which === 'any') {
    for (const word of words) add([word]);
    for (let to = 1; to < words.length; to++) add(words.slice(0, to));
  }
  return [...parts.values()];
}

const SHORTEST_PART_MISSPELLED = 6;

class Building {
  readonly exact = new Map<string, Use[]>();
  readonly anyOrder = new Map<string, Use[]>();
  readonly byStart = new Map<string, (Key[] | undefined)[]>();
  readonly byEnd = new Map<string, (Key[] | undefined)[]>();
  readonly byBeginning = new Map<string, Scientific[]>();
  readonly byEpithet = new Map<string, Scientific[]>();
  readonly firsts = new Set<string>();
  readonly lasts = new Set<string>();
  readonly taxa = new Map<string, Taxon>();
  readonly labels = new Map<string, string>();
  private readonly keys = new Map<string, Key>();

  constructor(
    private readonly names: NameWords,
    private readonly vocabulary: Vocabulary,
    private readonly leftOut: (word: string) => boolean,
    private readonly parts: 'any' | 'ends',
  ) {}

  add({ taxon, kind, name, place }: Named, partsToo: 'any' | 'ends' | 'none' = this.parts): void {
    if (taxon.name !== '') {
      if (!this.taxa.has(taxon.name)) this.taxa.set(taxon.name, taxon);
      if (kind === 'common' && place === 0) this.labels.set(taxon.name, name);
    }
    const words = wordsOf(fold(name), this.names);
    const saying = words.filter((word) => !this.leftOut(word.plain));
    if (saying.length === 0) return;
    const stems = saying.map((word) => word.stem);
    this.firsts.add(stems[0]!);
    this.lasts.add(stems.at(-1)!);
    const { describing, placing } = this.vocabulary;
    const describes = (word: { plain: string; stem: string }): boolean =>
      describing.has(word.plain) || describing.has(word.stem);
    const allDescribing = kind !== 'scientific' && saying.every(describes);
    let strength: Strength = 'strong';
    if (saying.length === 1 && kind === 'common') {
      if (allDescribing) strength = 'describing';
      else if (placing.has(saying[0]!.plain)) strength = 'placing';
    }
    const use: Use = { taxon, kind, strength, place, allDescribing };
    push(this.exact, stems.join(''), use);
    if (stems.length > 1) push(this.anyOrder, anyOrderKey(stems), use);
    const letters = saying.map((word) => word.plain);
    if (kind !== 'short' || letters.join('').length > 4) this.addKey(letters, letters.join(''), use);
    const whole = words.map((word) => word.plain).join('');
    if (whole !== letters.join('')) this.addKey([], whole, use);
    if (kind === 'scientific' && saying.length <= 2) {
      const scientific = { first: saying[0]!.plain, last: saying.at(-1)!.plain, taxon };
      pushTo(this.byBeginning, scientific.first.slice(0, FIRST_LETTERS[this.parts]), scientific);
      pushTo(this.byEpithet, scientific.last, scientific);
    }
    if (kind === 'common' && partsToo !== 'none') this.addParts(saying, taxon, place, partsToo);
  }

  private addParts(
    saying: readonly { plain: string; stem: string }[],
    taxon: Taxon,
    place: number,
    which: 'any' | 'ends',
  ): void {
    const { describing, placing, ordinary, faint, aroundPlants } = this.vocabulary;
    const stemOfPlain = new Map(saying.map((word) => [word.plain, word.stem]));
    const strong: Use = { taxon, kind: 'part', strength: 'strong', place, allDescribing: false };
    for (const part of partsOf(
      saying.map((word) => word.plain),
      which,
    )) {
      const says = part.some((word) => {
        const stem = stemOfPlain.get(word)!;
        const saysNothing =
          describing.has(word) || describing.has(stem) || ordinary.has(word) || aroundPlants.has(stem);
        return faint.has(word) || !saysNothing;
      });
      if (!says) continue;
      const stems = part.map((word) => stemOfPlain.get(word)!);
      const use: Use = part.length === 1 && placing.has(part[0]!) ? { ...strong, strength: 'placing' } : strong;
      push(this.exact, stems.join(''), use);
      // a misspelled part of a name is looked for only among the few names that are known by any part
      const letters = part.join('');
      if (which === 'any' && letters.length >= SHORTEST_PART_MISSPELLED) this.addKey(part, letters, use);
    }
  }

  private addKey(words: readonly string[], whole: string, use: Use): void {
    const id = `${words.length} ${whole}`;
    let key = this.keys.get(id);
    if (!key) {
      const sound = soundOf(whole);
      key = {
        words: words.length > 1 ? words : [],
        whole: { letters: whole, sound },
        letters: lettersIn(whole),
        sounds: lettersIn(sound),
        uses: [],
      };
      this.keys.set(id, key);
      keep(this.byStart, sound.slice(0, 1), key);
      keep(this.byEnd, whole.slice(-END_LETTERS), key);
    }
    pushOnce(key.uses, use);
  }

  done(): NameIndex {
    return this;
  }
}

function keep(map: Map<string, (Key[] | undefined)[]>, by: string, key: Key): void {
  let byLength = map.get(by);
  if (!byLength) map.set(by, (byLength = []));
  (byLength[key.whole.letters.length] ??= []).push(key);
}

function pushTo<Item>(map: Map<string, Item[]>, key: string, item: Item): void {
  const items = map.get(key);
  if (items) items.push(item);
  else map.set(key, [item]);
}

function push(map: Map<string, Use[]>, key: string, use: Use): void {
  const uses = map.get(key);
  if (!uses) map.set(key, [use]);
  else pushOnce(uses, use);
}

/** The names of one taxon come one after the other: only the last uses can be the same. */
function pushOnce(uses: Use[], use: Use): void {
  for (let at = uses.length - 1; at >= 0 && uses[at]!.taxon === use.taxon; at--) {
    if (uses[at]!.kind === use.kind) return;
  }
  uses.push(use);
}

/** Both lists and the words of a language belong together: the index is kept for each pair. */
const keptFor = <List extends object>(
  build: (list: List, names: NameWords) => NameIndex,
): ((list: List, names: NameWords) => NameIndex) => {
  const forList = madeOnce((list: List) => madeOnce((names: NameWords) => build(list, names)));
  return (list, names) => forList(list)(names);
};

const indexBees = keptFor((bees: readonly Bee[], names) => {
  const vocabulary = vocabularyOf(names);
  const leftOut = (word: string): boolean => vocabulary.joining.has(word) || vocabulary.bumblebee.has(word);
  const building = new Building(names, vocabulary, leftOut, 'any');
  building.taxa.set(BOMBUS.name, BOMBUS);
  for (const bee of bees) for (const named of namesOfBee(bee)) building.add(named);
  for (const insect of names.otherInsects) {
    building.add({ taxon: OTHER_INSECT, kind: 'insect', name: insect, place: 0 });
  }
  for (const [heard, said] of Object.entries(names.heardAs)) {
    const stems = wordsOf(fold(said), names)
      .filter((word) => !leftOut(word.plain))
      .map((word) => word.stem);
    for (const { taxon } of building.exact.get(stems.join('')) ?? []) {
      building.add({ taxon, kind: 'short', name: heard, place: 8 });
    }
  }
  return building.done();
});

const indexPlants = keptFor((plants: readonly Plant[], names) => {
  const vocabulary = vocabularyOf(names);
  const building = new Building(names, vocabulary, (word) => vocabulary.joining.has(word), 'ends');
  const rows = new Set(plants.map((plant) => plant.name));
  for (const plant of plants) {
    for (const named of namesOfPlant(plant)) building.add(named);
    const genus = genusOf(plant.name);
    if (rows.has(genus)) continue;
    rows.add(genus);
    building.add({ taxon: plantTaxon(genus), kind: 'genus', name: genus, place: 0 });
  }
  return building.done();
});

export interface WithNames {
  readonly names: Names;
  readonly words: { readonly names: NameWords };
}

export const beesOf = ({ names, words }: WithNames): NameIndex => indexBees(names.bees, words.names);
export const plantsOf = ({ names, words }: WithNames): NameIndex => indexPlants(names.plants, words.names);

/** The few plants of the patch, known by any part of their names; one that the list lacks by the words typed for it. */
const indexWatched = madeOnce((watched: readonly string[]) =>
  madeOnce((names: Names) =>
    madeOnce((words: NameWords): NameIndex => {
      const vocabulary = vocabularyOf(words);
      const building = new Building(words, vocabulary, (word) => vocabulary.joining.has(word), 'any');
      const known = indexPlants(names.plants, words);
      for (const name of watched) {
        const taxon = known.taxa.get(name);
        const rows = names.plants.filter((plant) => plant.name === name);
        for (const row of rows) for (const named of namesOfPlant(row)) building.add(named);
        if (taxon) continue;
        const typed: Taxon = { name, rank: null, genus: '', regions: [], cuckoo: false };
        building.add({ taxon: typed, kind: 'common', name, place: 0 });
      }
      return building.done();
    }),
  ),
);

export const watchedOf = (context: WithNames & { readonly watched: readonly string[] }): NameIndex =>
  indexWatched(context.watched)(context.names)(context.words.names);
