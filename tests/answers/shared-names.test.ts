/**
 * Bare names that two or three species of the upper Midwest share: each is asked back with all of them, unless exactly
 * one is being watched. That the species of a row all grow in the region is told by the source beside it:
 * MF: all in Voss and Reznicek, Field Manual of Michigan Flora (2012); CR: all in Swink and Wilhelm, Plants of the
 * Chicago Region (4th edition, 1994); CP: planted, common practice, no source. That people use the bare name for each
 * of them is common practice, no source.
 */
import { expect, test } from 'vitest';
import { readPlant } from '../../src/answers/plant.js';
import { brief, demo } from '../demo-survey.js';

type Source = 'MF' | 'CR' | 'CP';

const table: [typed: string, source: Source, species: string[]][] = [
  // woods in spring
  ['trout lily', 'MF', ['Erythronium albidum', 'Erythronium americanum']],
  ['dogtooth violets', 'MF', ['Erythronium albidum', 'Erythronium americanum']],
  ["adder's tongue", 'MF', ['Erythronium albidum', 'Erythronium americanum']],
  ['spring beauties', 'MF', ['Claytonia caroliniana', 'Claytonia virginica']],
  ['toothwort', 'MF', ['Cardamine concatenata', 'Cardamine diphylla']],
  ['mayflowers', 'MF', ['Epigaea repens', 'Maianthemum canadense']],
  ["solomon's seal", 'MF', ['Polygonatum biflorum', 'Polygonatum pubescens']],
  ['meadow rue', 'MF', ['Thalictrum dasycarpum', 'Thalictrum dioicum']],
  ['cohosh', 'CP', ['Actaea racemosa', 'Caulophyllum thalictroides']],
  ['red trillium', 'MF', ['Trillium erectum', 'Trillium recurvatum', 'Trillium sessile']],
  ['purple trillium', 'MF', ['Trillium erectum', 'Trillium recurvatum']],
  ['wood violets', 'MF', ['Viola palmata', 'Viola sororia']],
  ['bog violet', 'MF', ['Viola cucullata', 'Viola nephrophylla']],
  ['marigolds', 'CP', ['Caltha palustris', 'Tagetes']],
  ['purple rocket', 'CR', ['Hesperis matronalis', 'Iodanthus pinnatifidus']],
  // shrubs and trees
  ['elderberry', 'MF', ['Sambucus canadensis', 'Sambucus racemosa']],
  ['wild cherry', 'MF', ['Prunus pensylvanica', 'Prunus serotina', 'Prunus virginiana']],
  ['wild gooseberry', 'MF', ['Ribes cynosbati', 'Ribes missouriense']],
  ['black currants', 'MF', ['Ribes americanum', 'Ribes nigrum']],
  ['wild raspberry', 'MF', ['Rubus idaeus', 'Rubus occidentalis']],
  ['mountain ash', 'MF', ['Sorbus americana', 'Sorbus aucuparia', 'Sorbus decora']],
  ['arrowwood', 'MF', ['Viburnum dentatum', 'Viburnum rafinesqueanum']],
  ['wild honeysuckle', 'MF', ['Lonicera dioica', 'Lonicera reticulata']],
  ['silky dogwood', 'CP', ['Cornus amomum', 'Cornus obliqua']],
  ['red willow', 'CP', ['Cornus sericea', 'Salix']],
  // prairie, wet ground and weeds
  ['wild iris', 'MF', ['Iris versicolor', 'Iris virginica']],
  ['dogbane', 'MF', ['Apocynum androsaemifolium', 'Apocynum cannabinum']],
  ['sweet clover', 'MF', ['Melilotus albus', 'Melilotus officinalis']],
  ['prairie clover', 'CR', ['Dalea candida', 'Dalea purpurea']],
  ['jewelweed', 'MF', ['Impatiens capensis', 'Impatiens pallida']],
  ['teasel', 'MF', ['Dipsacus fullonum', 'Dipsacus laciniatus']],
  ['burdock', 'MF', ['Arctium lappa', 'Arctium minus']],
  ['figwort', 'MF', ['Scrophularia lanceolata', 'Scrophularia marilandica']],
  ['horse gentian', 'MF', ['Triosteum aurantiacum', 'Triosteum perfoliatum']],
  ['purple vetch', 'MF', ['Vicia americana', 'Vicia cracca', 'Vicia villosa']],
  ['yellow mustard', 'CR', ['Barbarea vulgaris', 'Sinapis alba', 'Sinapis arvensis']],
  ['bittersweet', 'MF', ['Celastrus', 'Solanum dulcamara']],
  ['betony', 'CP', ['Betonica officinalis', 'Pedicularis canadensis']],
  ['oxeye', 'MF', ['Heliopsis helianthoides', 'Leucanthemum vulgare']],
  ["turk's cap lily", 'CP', ['Lilium michiganense', 'Lilium superbum']],
  ['tiger lilies', 'CP', ['Hemerocallis fulva', 'Lilium lancifolium', 'Lilium michiganense']],
  ['snow on the mountain', 'CR', ['Aegopodium podagraria', 'Euphorbia marginata']],
  // gardens
  ['dwarf iris', 'CP', ['Iris cristata', 'Iris pumila', 'Iris reticulata']],
  ['yellow iris', 'CP', ['Iris pseudacorus', 'Iris × germanica']],
  ['bachelor buttons', 'CP', ['Centaurea cyanus', 'Centaurea montana']],
  ['bridal wreath', 'CP', ['Spiraea prunifolia', 'Spiraea × vanhouttei']],
  ['white spirea', 'CP', ['Spiraea alba', 'Spiraea × vanhouttei']],
  ['flowering currant', 'CP', ['Ribes aureum', 'Ribes sanguineum']],
  ['flowering plum', 'CP', ['Prunus cerasifera', 'Prunus triloba']],
  ['snowball', 'CP', ['Hydrangea arborescens', 'Viburnum opulus', 'Viburnum plicatum']],
  ['red poppies', 'CP', ['Papaver orientale', 'Papaver rhoeas']],
  ['potentilla', 'CP', ['Dasiphora fruticosa', 'Potentilla']], // the shrub of every parking lot, and the genus it left
];

test.each(table)('"%s" (%s) may be any of %j', (typed, _source, species) => {
  const reading = readPlant(typed, demo);
  expect(reading.state).toBe('unsure');
  const offered = reading.state === 'unsure' ? reading.offer.map(({ name }) => name) : [];
  expect(offered.filter((name) => species.includes(name ?? '')).sort()).toEqual(species);
  const others = offered.filter((name) => !species.includes(name ?? ''));
  expect(others.every((name) => species.some((each) => each.startsWith(`${name} `)))).toBe(true);
});

const pairs = table.flatMap(([typed, , species]) => species.map((name): [string, string] => [typed, name]));
test.each(pairs)('"%s" is %s where that alone is watched', (typed, watched) => {
  expect(brief(readPlant(typed, { ...demo, watched: [watched] }), ({ name }) => String(name))).toBe(`sure ${watched}`);
});

/** The other way: names that everybody uses for one plant, though others are called so in books. */
const ofOne: [typed: string, name: string][] = [
  ['apple', 'Malus domestica'],
  ['pear', 'Pyrus communis'],
  ['lilac', 'Syringa vulgaris'],
  ['redbud', 'Cercis canadensis'],
  ['columbine', 'Aquilegia canadensis'],
  ['bleeding heart', 'Lamprocapnos spectabilis'],
  ["jacob's ladder", 'Polemonium reptans'],
  ['shooting star', 'Primula meadia'],
  ['bluebells', 'Mertensia virginica'],
  ['yarrow', 'Achillea millefolium'],
  ["bishop's cap", 'Mitella diphylla'],
  ['asparagus', 'Asparagus officinalis'],
  ['squill', 'Scilla siberica'],
  ['periwinkle', 'Vinca minor'],
  // names that only describe are the genus
  ['climbing rose', 'Rosa'],
  ['pink azalea', 'Rhododendron'],
  ['yellow daylily', 'Hemerocallis'],
  ['late tulips', 'Tulipa'],
  ['early crocus', 'Crocus'],
  ['pale violet', 'Viola'],
  // and so are names of many
  ['willow', 'Salix'],
  ['violet', 'Viola'],
  ['crabapple', 'Malus'],
  ['honeysuckle', 'Lonicera'],
  ['currant', 'Ribes'],
  ['hepatica', 'Hepatica'],
  ['lupine', 'Lupinus'],
];
test.each(ofOne)('"%s" is %s', (typed, name) => {
  expect(brief(readPlant(typed, demo), (value) => String(value.name))).toBe(`sure ${name}`);
});
