/** The taxa of the reference lists and what each may be called, as rows to be looked up. */
import type { Bee, Plant } from '../../../shared/names.js';

/** A species, hybrid or genus; `rank` is null for a plant that no list holds and that a person named themselves. */
export interface Taxon {
  readonly name: string;
  readonly rank: string | null;
  readonly genus: string;
  /** Where a bee occurs; empty for plants. */
  readonly regions: readonly string[];
  readonly cuckoo: boolean;
}

/**
 * What a name is: `scientific` a binomial or a bee's epithet, `genus` a bare genus, `epithet` a plant's alone,
 * `common` an English name, `short` a code or short form, `part` an English name with words left out, `insect` one
 * that is no bumble bee, `unlisted` a plant that the list lacks.
 */
export type Kind = 'scientific' | 'genus' | 'epithet' | 'common' | 'short' | 'part' | 'insect' | 'unlisted';

/** One name of one taxon. `place` is its place among the taxon's English names, 0 the one shown to people. */
export interface Named {
  readonly taxon: Taxon;
  readonly kind: Kind;
  readonly name: string;
  readonly place: number;
}

/** The place of names as a telephone hears them: "in patience". */
export const HEARD_AS = 8;

export const BOMBUS: Taxon = { name: 'Bombus', rank: 'genus', genus: 'Bombus', regions: [], cuckoo: false };
/** Any insect that is no bumble bee. */
export const OTHER_INSECT: Taxon = { name: '', rank: null, genus: '', regions: [], cuckoo: false };
/** Any plant that is known by name though the list lacks it. */
export const OTHER_PLANT: Taxon = { name: '', rank: null, genus: '', regions: [], cuckoo: false };

/** "Bombus vagans bolsteri" is called "vagans bolsteri"; the genus before it adds nothing. */
const withoutGenus = (scientific: string): string => scientific.split(' ').slice(1).join(' ');

/** First letters of the English name, the bee's own two included: "rpbb". Under four letters they are too many things. */
function initialsOf(common: string): string | null {
  const initials = common
    .split(/[\s-]+/)
    .map((word) => word[0]!.toLowerCase())
    .join('');
  return common.endsWith('bumble bee') && initials.length >= 4 ? initials : null;
}

export function* namesOfBee(bee: Bee): Generator<Named> {
  const { name, regions, cuckoo } = bee;
  const taxon: Taxon = { name, rank: 'species', genus: 'Bombus', regions, cuckoo };
  for (const [place, scientific] of [name, ...bee.former].entries()) {
    yield { taxon, kind: 'scientific', name: withoutGenus(scientific) || scientific, place };
    // as a tag has it: "#bombusimpatiens"
    yield { taxon, kind: 'short', name: scientific.replaceAll(' ', ''), place };
  }
  for (const [place, common] of bee.common.entries()) {
    yield { taxon, kind: 'common', name: common, place };
    const initials = initialsOf(common);
    if (initials !== null) yield { taxon, kind: 'short', name: initials, place };
  }
  for (const [place, short] of bee.short.entries()) yield { taxon, kind: 'short', name: short, place };
  yield { taxon, kind: 'short', name: `bom${withoutGenus(name).slice(0, 3)}`, place: 9 };
}

const RANK_OF_WORDS = (name: string): string => {
  if (name.includes('×')) return 'hybrid';
  return name.includes(' ') ? 'species' : 'genus';
};

export const genusOf = (name: string): string => name.split(' ')[0]!;

/** A genus or species of plants by its accepted name alone. */
export const plantTaxon = (name: string): Taxon => ({
  name,
  rank: RANK_OF_WORDS(name),
  genus: genusOf(name),
  regions: [],
  cuckoo: false,
});

/** A binomial, and its epithet alone; a former genus alone. Marks of rank add nothing. */
function* scientificNames(taxon: Taxon, scientific: string, place: number): Generator<Named> {
  const parts = scientific.replace(/ (?:×|x|var\.|subsp\.|ssp\.|f\.) /g, ' ').split(' ');
  yield { taxon, kind: parts.length === 1 ? 'genus' : 'scientific', name: parts.join(' '), place };
  if (parts.length === 2) yield { taxon, kind: 'epithet', name: parts[1]!, place };
}

export function* namesOfPlant(plant: Plant): Generator<Named> {
  const { name, rank } = plant;
  const taxon: Taxon = { name, rank, genus: genusOf(name), regions: [], cuckoo: false };
  yield* scientificNames(taxon, name, 0);
  for (const former of plant.former) yield* scientificNames(taxon, former, 1);
  for (const [place, common] of plant.common.entries()) yield { taxon, kind: 'common', name: common, place };
  for (const [place, short] of plant.short.entries()) yield { taxon, kind: 'short', name: short, place };
}
