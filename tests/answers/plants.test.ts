import { expect, test } from 'vitest';
import { readPlants, type PlantTold } from '../../src/answers/plants.js';
import { brief, demo } from '../demo-survey.js';

/** "Mertensia virginica 85", "- <as typed> ?", "~" for about, "+" and "-" for an open end. */
function line({ name, asTyped, flowers, doubt }: PlantTold): string {
  const count =
    flowers === null
      ? '?'
      : `${flowers.about ? '~' : ''}${flowers.value}${flowers.about && flowers.high === null ? '+' : ''}${flowers.about && flowers.low === null ? '-' : ''}`;
  return [name ?? `<${asTyped}>`, count, doubt ? 'doubt' : ''].filter((part) => part !== '').join(' ');
}
const lines = (plants: readonly PlantTold[]): string => plants.map(line).join(', ');

const table: [typed: string, expected: string][] = [
  // one plant
  ['lilac', 'sure Syringa vulgaris ?'],
  ['just dandelions, 25 heads', 'sure Taraxacum officinale 25'],
  ['the lilac by the gate', 'sure Syringa vulgaris ?'],
  ['azaleas, those hot pink ones by the door', 'sure Rhododendron ?'],
  ['Virginia bluebells (Mertensia virginica), about 85 flowers', 'sure Mertensia virginica ~85'],
  ['bleeding heart. 45 flowers.', 'sure Lamprocapnos spectabilis 45'],
  ['wild strawberry, count: 35', 'sure Fragaria virginiana 35'],
  ['10 mayapples', 'sure Podophyllum peltatum 10'],
  ['bluebells, 60 open, 20 in bud', 'sure Mertensia virginica 60'],
  ['20 white and 15 pink phlox', 'sure Phlox 35'],
  ['1 lilac bush with about 40 clusters', 'sure Syringa vulgaris ~40'],
  ['just the one lilac, about 60 clusters', 'sure Syringa vulgaris ~60'],
  ['butter and eggs 40', 'sure Linaria vulgaris 40'], // one plant, though an "and" stands in it
  ['violets 30, and violets 40', 'sure Viola 40'], // said last
  // several: the count before, behind, in brackets, on the next line
  ['violet 60, bloodroot 30', 'sure Viola 60, Sanguinaria canadensis 30'],
  ['60 violets, 30 bloodroot', 'sure Viola 60, Sanguinaria canadensis 30'],
  ['60 violets 30 bloodroot', 'sure Viola 60, Sanguinaria canadensis 30'],
  ['violet 60 bloodroot 30', 'sure Viola 60, Sanguinaria canadensis 30'],
  ['violet, 60, bloodroot, 30', 'sure Viola 60, Sanguinaria canadensis 30'],
  ['60, violet, 30, bloodroot', 'sure Viola 60, Sanguinaria canadensis 30'],
  ['violet (60) bloodroot (30)', 'sure Viola 60, Sanguinaria canadensis 30'],
  ['violet=60 bloodroot=30', 'sure Viola 60, Sanguinaria canadensis 30'],
  ['violet x 60, bloodroot x 30', 'sure Viola 60, Sanguinaria canadensis 30'],
  ['violet - 60 flowers\nbloodroot ~30', 'sure Viola 60, Sanguinaria canadensis ~30'],
  ['- violet ~60\n- bloodroot ~30', 'sure Viola ~60, Sanguinaria canadensis ~30'],
  ['1. violet 60\n2. bloodroot 30', 'sure Viola 60, Sanguinaria canadensis 30'],
  ['violet 60 / bloodroot 30 / phlox 12', 'sure Viola 60, Sanguinaria canadensis 30, Phlox 12'],
  [
    'trout lily 60, bloodroot 30',
    'unsure Erythronium albidum 60, Sanguinaria canadensis 30 | Erythronium americanum 60, Sanguinaria canadensis 30 | Erythronium 60, Sanguinaria canadensis 30, plants-shared',
  ],
  ['white trout lily 60, bloodroot 30', 'sure Erythronium albidum 60, Sanguinaria canadensis 30'],
  ['honeysuckle (tatarian) 60, clover (white) 30', 'sure Lonicera tatarica 60, Trifolium repens 30'],
  ['Erythronium albidum - 60; Sanguinaria canadensis - 30', 'sure Erythronium albidum 60, Sanguinaria canadensis 30'],
  ['phlox divaricata seventy, geranium maculatum twenty-two', 'sure Phlox divaricata 70, Geranium maculatum 22'],
  ['a dozen columbine flowers and half a dozen phlox', 'sure Aquilegia canadensis 12, Phlox 6'],
  ['prairie smoke 12 blooms, shooting star 8 blooms, lupine 4', 'sure Geum triflorum 12, Primula meadia 8, Lupinus 4'],
  ['lilac and phlox, 60 each', 'sure Syringa vulgaris 60, Phlox 60'],
  ['lilac and phlox, 60 and 40', 'sure Syringa vulgaris 60, Phlox 40'],
  ['apple, plum and cherry', 'sure Malus domestica ?, Prunus ?, Prunus ?'],
  ['lilac, phlox 60', 'sure Syringa vulgaris ?, Phlox 60'],
  ['we had 85 bluebells and about 100 to 150 dandelions', 'sure Mertensia virginica 85, Taraxacum officinale ~125'],
  ['between 40 and 60 phlox', 'sure Phlox ~50'],
  ['two hundred and five dandelions', 'sure Taraxacum officinale 205'],
  ['bluebells: 1,200\nlilac: 30', 'sure Mertensia virginica 1200, Syringa vulgaris 30'],
  ['dandelions 50 heads and lilac over 500', 'sure Taraxacum officinale 50, Syringa vulgaris ~500+'],
  ['creeping charlie up to 300', 'sure Glechoma hederacea ~300-'],
  ['creeping charlie, 300+', 'sure Glechoma hederacea ~300+'],
  // no number: asked for plant by plant
  ['trilliums, lots', 'sure Trillium ?'],
  ['bluebells: 40\nlilac: hundreds', 'sure Mertensia virginica 40, Syringa vulgaris ?'],
  ["bluebells - didn't count", 'sure Mertensia virginica ?'],
  ['bluebells, not sure how many', 'sure Mertensia virginica ?'],
  ['3 redbud trees', 'sure Cercis canadensis ?'], // trees, not flowers
  ['crabapple - hundreds of blossoms', 'sure Malus ?'],
  // not on the list: as typed
  ["Grandma Tolly's Mystery Bells 20, lilac 100", "sure <Grandma Tolly's Mystery Bells> 20, Syringa vulgaris 100"],
  ["Grandma Tolly's Mystery Bells, pale pink, no tag", "sure <Grandma Tolly's Mystery Bells> ?"],
  ["a tall purple flower I didn't know, 12 blossoms", "sure <tall purple flower I didn't know> 12"],
  ['one unknown pink flower with 12 blooms; wild geranium 30', 'sure <unknown pink flower> 12, Geranium maculatum 30'],
  ["dame's rocket 70, unknown white flower 20", 'sure Hesperis matronalis 70, <unknown white flower> 20'],
  [
    "dame's rocket 70 and a little white star flower I don't know, 20",
    "sure Hesperis matronalis 70, <white star flower I don't know> 20",
  ],
  ['some odd blue thing 3', 'sure <odd blue thing> ~3'],
  ['trillium 30, zorbleflower, phlox 20', 'sure Trillium 30, <zorbleflower> ?, Phlox 20'],
  // talk beside plants that are counted is no plant
  [
    'I do love the lupines, there must have been 90 of them open! And some hoary puccoon, about 25 flowers, such a cheerful yellow.',
    'sure Lupinus 90, Lithospermum canescens ~25',
  ],
  ['bluebells about 120, they smell wonderful, and violet 15', 'sure Mertensia virginica ~120, Viola 15'],
  // words behind a number belong to it
  ['serviceberry, 200 or so blossoms, and dandelion, 30', 'sure Amelanchier ~200, Taraxacum officinale 30'],
  ['60 odd bluebells and some violets', 'sure Mertensia virginica ~60, Viola ?'],
  ['bluebells 120, violet 15 or 20', 'sure Mertensia virginica 120, Viola ~18'],
  // what is corrected stands last
  ['phlox 40, sorry, 60', 'sure Phlox 60'],
  ['anemone... sorry, bloodroot 50', 'sure Sanguinaria canadensis 50'],
  ['40 violets, no wait, 40 trillium', 'sure Trillium 40'],
  ['300 spring beauties... sorry i mean about 30 bloodroot', 'sure Sanguinaria canadensis ~30'],
  ['20 phlox and 40 violets, sorry 40 trillium', 'sure Phlox 20, Trillium 40'],
  ['20 phlox, 40 violets, sorry phlox 30', 'sure Phlox 30, Viola 40'],
  ['20 phlox, 40 violets, sorry also 30 trillium', 'sure Phlox 20, Viola 40, Trillium 30'],
  ['2 crabapple trees, 500 blossoms each', 'sure Malus ?'], // how many in all is not said
  // asked back
  ['lilac, maybe 400 blossoms', 'unsure Syringa vulgaris 400, plants-count-doubt'],
  ['serviceberry - maybe a couple hundred blossoms', 'unsure Amelanchier ~200, plants-count-doubt'],
  ['about 40 bluebells and a few dozen violets', 'unsure Mertensia virginica ~40, Viola ~36, plants-count-doubt'],
  [
    'spring beauty 60, phlox 20',
    'unsure Claytonia caroliniana 60, Phlox 20 | Claytonia virginica 60, Phlox 20 | Claytonia 60, Phlox 20, plants-shared',
  ],
  // named first, counted later
  [
    'redbud and dandelions. 250 flowers on the redbud, 60 on the dandelions',
    'sure Cercis canadensis 250, Taraxacum officinale 60',
  ],
  [
    'redbud and creeping charlie, 250 on the redbud and 60 on the charlie',
    'sure Cercis canadensis 250, Glechoma hederacea 60',
  ],
  ['the redbud had about 250 flowers, the charlie 60', 'sure Cercis canadensis ~250, Glechoma hederacea 60'],
  // no plant
  ['dunno', 'not understood, plants-no-name'],
  ['30', 'not understood, plants-no-name'],
  ['lots of flowers', 'not understood, plants-no-name'],
  ['none', 'not understood, plants-no-name'],
  ['actually make that 66', 'not understood, plants-no-name'],
  ['sorry, 66', 'not understood, plants-no-name'],
  ['', 'not understood, empty'],
  ['x'.repeat(5000), 'not understood, too-long'],
];
test.each(table)('plants "%s" are %s', (typed, expected) => {
  expect(brief(readPlants(typed, demo), lines)).toBe(expected);
});

test('a shared name that fits a plant being watched is that one', () => {
  const watching = { ...demo, watched: ['Claytonia virginica'] };
  expect(brief(readPlants('spring beauty 60', watching), lines)).toBe('sure Claytonia virginica 60');
});

test('the words of the name and of the count are kept', () => {
  const reading = readPlants('about 40 Bluebells', demo);
  expect(reading.state === 'sure' && reading.value[0]).toMatchObject({
    asTyped: 'Bluebells',
    flowersTyped: 'about 40',
  });
});
