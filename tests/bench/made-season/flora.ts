/**
 * What flowers where and when in the invented survey: from memory of springs at about 43° N in the upper Midwest. Names,
 * ranks and counting units come from the list of plants; a name that is not on it is refused.
 */
import type { Names } from '../../../shared/names.js';
import type { CountingUnit } from '../../../shared/vocabularies.js';
import type { Chance } from './chance.js';
import { dayOfYear } from './calendar.js';

export const KINDS = ['wet', 'woods', 'prairie', 'garden'] as const;
/** What kind of place it is. */
export type Kind = (typeof KINDS)[number];
/** How deep the nectar lies: who has a short tongue does not reach it. */
export const DEPTHS = ['open', 'middling', 'deep'] as const;
export type Depth = (typeof DEPTHS)[number];

interface Flower {
  readonly name: string;
  /** Days of the year. */
  readonly first: number;
  readonly last: number;
  readonly where: readonly Kind[];
  readonly depth: Depth;
  /** Open flowers in a patch, in its counting unit. */
  readonly usual: number;
  /** How often a patch has it. */
  readonly common: number;
  /** How queens like it, 1 being usual. */
  readonly liked: number;
}

type Row = [
  name: string,
  from: string,
  to: string,
  where: string,
  depth: Depth,
  usual: number,
  common: number,
  liked: number,
];
const ROWS: readonly Row[] = [
  ['Salix discolor', '03-25', '04-22', 'wet prairie', 'open', 120, 1, 1.2],
  ['Salix', '04-02', '05-10', 'wet prairie woods', 'open', 150, 1, 1.2],
  ['Crocus', '03-25', '04-22', 'garden', 'open', 25, 1, 0.8],
  ['Scilla siberica', '03-28', '05-02', 'garden woods', 'open', 150, 0.9, 0.7],
  ['Pulsatilla nuttalliana', '04-03', '05-02', 'prairie', 'open', 30, 0.9, 0.9],
  ['Sanguinaria canadensis', '04-07', '04-30', 'woods', 'open', 35, 0.9, 0.3],
  ['Dicentra cucullaria', '04-10', '05-08', 'woods', 'deep', 90, 1.2, 1.9],
  ['Claytonia virginica', '04-10', '05-12', 'woods', 'open', 120, 0.9, 0.4],
  ['Enemion biternatum', '04-15', '05-16', 'woods', 'open', 60, 0.4, 0.3],
  ['Erythronium albidum', '04-15', '05-08', 'woods', 'open', 30, 0.5, 0.5],
  ['Pulmonaria', '04-10', '05-18', 'garden', 'middling', 60, 0.7, 1.6],
  ['Caltha palustris', '04-18', '05-20', 'wet', 'open', 80, 0.8, 0.3],
  ['Mertensia virginica', '04-18', '05-20', 'woods wet garden', 'middling', 120, 1.6, 1.7],
  ['Taraxacum officinale', '04-16', '06-05', 'garden prairie wet', 'open', 60, 1.1, 0.8],
  ['Ribes missouriense', '04-22', '05-18', 'woods prairie', 'middling', 90, 0.6, 1.5],
  ['Amelanchier', '04-22', '05-12', 'woods prairie garden', 'open', 200, 0.4, 0.6],
  ['Glechoma hederacea', '04-22', '06-05', 'garden', 'middling', 140, 1, 1],
  ['Prunus americana', '04-24', '05-10', 'prairie woods', 'open', 250, 0.5, 0.8],
  ['Uvularia grandiflora', '04-24', '05-20', 'woods', 'middling', 25, 0.6, 1.2],
  ['Cercis canadensis', '04-26', '05-16', 'garden woods', 'middling', 300, 0.7, 1.3],
  ['Viola sororia', '04-20', '05-30', 'woods garden', 'middling', 50, 0.7, 0.4],
  ['Viola pedata', '04-28', '05-26', 'prairie', 'middling', 40, 0.5, 0.5],
  ['Polemonium reptans', '04-28', '05-30', 'woods wet', 'middling', 70, 0.8, 1],
  ['Malus', '04-30', '05-20', 'garden prairie', 'open', 300, 0.9, 1.1],
  ['Malus domestica', '05-03', '05-22', 'garden', 'open', 250, 0.7, 1.1],
  ['Phlox divaricata', '05-01', '06-01', 'woods garden', 'deep', 80, 0.9, 0.7],
  ['Phlox', '05-06', '06-08', 'garden', 'deep', 90, 0.5, 0.6],
  ['Lamprocapnos spectabilis', '05-01', '06-06', 'garden', 'deep', 60, 0.7, 1.5],
  ['Pedicularis canadensis', '05-04', '06-05', 'prairie', 'deep', 45, 0.6, 1.7],
  ['Lithospermum canescens', '05-05', '06-08', 'prairie', 'middling', 60, 0.8, 0.7],
  ['Vaccinium angustifolium', '05-05', '06-02', 'wet prairie', 'middling', 150, 0.6, 1.6],
  ['Geranium maculatum', '05-06', '06-12', 'woods prairie', 'open', 45, 1.2, 0.9],
  ['Aquilegia canadensis', '05-06', '06-12', 'woods prairie garden', 'deep', 40, 0.9, 1],
  ['Primula meadia', '05-07', '06-08', 'prairie', 'middling', 70, 1.1, 1.4],
  ['Syringa vulgaris', '05-08', '05-30', 'garden', 'deep', 14, 0.7, 0.6],
  ['Caragana arborescens', '05-10', '06-02', 'garden', 'deep', 120, 0.4, 1.6],
  ['Zizia aurea', '05-10', '06-15', 'wet prairie', 'open', 35, 0.6, 0.2],
  ['Lupinus perennis', '05-12', '06-14', 'prairie', 'deep', 250, 1.2, 1.6],
  ['Hydrophyllum virginianum', '05-14', '06-16', 'woods wet', 'middling', 90, 1.2, 1.7],
  ['Symphytum officinale', '05-14', '06-25', 'garden wet', 'deep', 110, 0.9, 1.9],
  ['Lonicera', '05-14', '06-16', 'woods garden', 'deep', 200, 0.8, 1.2],
  ['Lonicera × bella', '05-16', '06-12', 'woods', 'deep', 220, 0.5, 1.2],
  ['Phlox pilosa', '05-15', '06-25', 'prairie', 'deep', 110, 0.9, 0.6],
  ['Baptisia bracteata', '05-15', '06-12', 'prairie', 'deep', 80, 0.8, 1.8],
  ['Allium schoenoprasum', '05-18', '06-16', 'garden', 'open', 40, 0.8, 1.3],
  ['Cornus sericea', '05-18', '06-16', 'wet', 'open', 30, 0.6, 0.4],
  ['Nepeta × faassenii', '05-18', '06-30', 'garden', 'middling', 60, 1, 1.6],
  ['Tradescantia ohiensis', '05-20', '06-30', 'prairie garden', 'open', 40, 0.9, 1],
  ['Baptisia australis', '05-22', '06-18', 'garden', 'deep', 120, 0.7, 1.7],
  ['Trifolium repens', '05-22', '07-10', 'garden prairie', 'open', 120, 0.6, 0.9],
  ['Hesperis matronalis', '05-20', '06-20', 'woods garden', 'middling', 120, 0.5, 0.4],
  ['Trifolium pratense', '05-25', '07-10', 'prairie wet', 'deep', 60, 0.8, 1.5],
  ['Penstemon grandiflorus', '05-25', '06-25', 'prairie', 'middling', 50, 0.8, 1.6],
  ['Rubus idaeus', '05-25', '06-18', 'garden wet', 'open', 90, 0.7, 1.4],
  ['Iris virginica', '05-25', '06-22', 'wet', 'deep', 30, 1, 1],
  ['Salvia × sylvestris', '05-25', '06-30', 'garden', 'middling', 45, 0.8, 1.5],
  ['Vicia villosa', '05-28', '06-30', 'prairie', 'deep', 300, 0.5, 1.8],
  ['Rosa blanda', '05-28', '06-25', 'prairie wet', 'open', 20, 0.7, 1],
  ['Penstemon digitalis', '06-01', '06-30', 'prairie garden', 'middling', 90, 1, 1.6],
  ['Baptisia alba', '06-04', '07-05', 'prairie', 'deep', 100, 0.9, 1.8],
];

const FLOWERS: readonly Flower[] = ROWS.map(([name, from, to, where, depth, usual, common, liked]) => ({
  name,
  first: dayOfYear(from),
  last: dayOfYear(to),
  where: KINDS.filter((kind) => where.split(' ').includes(kind)),
  depth,
  usual,
  common,
  liked,
}));

/** Where nothing of the list is in flower. */
const ALWAYS = 'Taraxacum officinale';

export interface Plant extends Flower {
  readonly rank: string;
  readonly unit: CountingUnit;
  /** What observers type for it; the first most often. */
  readonly words: readonly string[];
}

export interface InFlower {
  readonly plants: readonly Plant[];
  readonly weights: readonly number[];
  readonly total: number;
}

/** Each plant with what the survey's list says of it. Throws for a name that the list does not have. */
function plantsOf(names: Names): Plant[] {
  const listed = new Map(names.plants.map((plant) => [plant.name, plant]));
  return FLOWERS.map((flower) => {
    const plant = listed.get(flower.name);
    if (plant === undefined) throw new Error(`The list of plants has no "${flower.name}", which the made season uses.`);
    const words = plant.rank === 'genus' ? plant.common.slice(0, 1) : plant.common.slice(0, 2);
    return { ...flower, rank: plant.rank, unit: plant.unit, words: [...words, ...words.slice(0, 1), plant.name] };
  });
}

/** Half as common at the ends of its days as in their middle. */
function shareInFlower({ first, last }: Flower, day: number): number {
  if (day < first || day > last) return 0;
  const away = (2 * (day - first)) / (last - first) - 1;
  return 1 - 0.5 * away * away;
}

/** What is in flower on a day of the year at each kind of place. */
export function flora(names: Names): (day: number) => Readonly<Record<Kind, InFlower>> {
  const plants = plantsOf(names);
  const at = (day: number, kind: Kind): InFlower => {
    const here = plants
      .filter(({ where }) => where.includes(kind))
      .map((plant) => ({ plant, weight: plant.common * shareInFlower(plant, day) }))
      .filter(({ weight }) => weight > 0);
    const some =
      here.length > 0 ? here : plants.filter(({ name }) => name === ALWAYS).map((plant) => ({ plant, weight: 1 }));
    const weights = some.map(({ weight }) => weight);
    return { plants: some.map(({ plant }) => plant), weights, total: weights.reduce((sum, weight) => sum + weight, 0) };
  };
  return (day) => ({
    wet: at(day, 'wet'),
    woods: at(day, 'woods'),
    prairie: at(day, 'prairie'),
    garden: at(day, 'garden'),
  });
}

const HOW_MANY = [0.42, 0.33, 0.17, 0.08];

/** One to four different plants. */
export function plantsFrom({ plants, weights, total }: InFlower, chance: Chance): Plant[] {
  const wanted = Math.min(plants.length, 1 + chance.placeIn(HOW_MANY, 1));
  const chosen: Plant[] = [];
  while (chosen.length < wanted) {
    const plant = plants[chance.placeIn(weights, total)];
    if (plant !== undefined && !chosen.includes(plant)) chosen.push(plant);
  }
  return chosen;
}
