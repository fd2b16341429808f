/** Asked for the flowers of one plant, people answer for all that they watched: each number stays with its plant. */
import { expect, test } from 'vitest';
import { Conversation } from './converse.js';

function flowersAfter(plants: string, typed: string): (number | null)[] {
  const conversation = new Conversation().agreed();
  conversation.all('today 2:10 to 2:25 pm', 'Fen Boardwalk', 'skip', 'skip');
  conversation.say(plants);
  conversation.say(typed);
  return (conversation.thread.report?.plants ?? []).map(({ flowers }) => flowers?.value ?? null);
}

test.each([
  ['Phlox divaricata, Geranium maculatum', '80 on the phlox, 35 on the geranium', [80, 35]],
  ['Mertensia virginica, Trillium grandiflorum', 'I counted 62 bluebells and 18 trilliums', [62, 18]],
  ['Cercis canadensis, Taraxacum officinale', 'redbud about 500, dandelions 22', [500, 22]],
  ['Viola sororia, Claytonia virginica', 'forty violets and a dozen spring beauties', [40, 12]],
  ['Cercis canadensis, Viola sororia', '200+ on the redbud and 45 violets', [200, 45]],
  ['Phlox divaricata, Polemonium reptans', 'both around 75', [75, 75]],
  ['Mertensia virginica, Phlox divaricata', 'bluebells one fifty, phlox ninety', [150, 90]],
  ['Dicentra cucullaria, Dicentra canadensis', 'The breeches had 110 and the squirrel corn had 24.', [110, 24]],
  ['Lamprocapnos spectabilis, Aquilegia canadensis', '33 bleeding heart, none open on the columbine yet', [33, 0]],
  ['Prunus virginiana, Lonicera tatarica', '~400 chokecherry ~150 honeysuckle', [400, 150]],
  ['Lamium purpureum, Taraxacum officinale', 'hundred or so on the dead nettle, 20 dandelions', [100, 20]],
  ['Malus, Syringa vulgaris', '1,000 on the crab and 60 on the lilac', [1000, 60]],
  ['Lupinus perennis, Lithospermum canescens', '28 open on the lupine. 41 open on the puccoon.', [28, 41]],
  [
    'Geranium maculatum, Polemonium reptans',
    "There are roughly sixty-five on the wild geranium and twenty on the Jacob's ladder.",
    [65, 20],
  ],
  ['Salix, Caltha palustris', 'on the willow 70 catkins, on the marsh marigold 26 flowers', [70, 26]],
  ['Amelanchier, Prunus americana', '100-120 on the serviceberry and 40-50 on the plum', [110, 45]],
  ['Phlox subulata, Muscari', 'same for both, 60', [60, 60]],
  [
    'Pedicularis canadensis, Phlox pilosa, Lithospermum canescens',
    'just counted, 19 on the betony, 77 on the prairie phlox, 5 on the puccoon',
    [19, 77, 5],
  ],
  [
    'Ajuga reptans, Pulmonaria officinalis, Brunnera macrophylla',
    'ajuga 230; lungwort 48; brunnera 160',
    [230, 48, 160],
  ],
  ['Viola sororia, Taraxacum officinale', 'twenty each', [20, 20]],
  [
    'Geranium maculatum, Hydrophyllum virginianum, Podophyllum peltatum',
    '37 geranium 51 waterleaf 8 mayapple',
    [37, 51, 8],
  ],
  ['Cercis canadensis, Viola sororia', 'Redbud: 600 or so\nViolets: 40', [600, 40]],
  ['Malus domestica, Taraxacum officinale', '3 hundred on the apple, 50 dandelions under it', [300, 50]],
  [
    'Syringa vulgaris, Malus, Lamprocapnos spectabilis',
    'the lilac has 30 and the crab has about 700 and the bleeding heart has 55',
    [30, 700, 55],
  ],
  ['Alliaria petiolata, Viola sororia', '70 garlic mustard, no wait 90, and 16 violets', [90, 16]],
  ['Tulipa, Narcissus', '20 red and 15 yellow tulips, 40 daffs', [35, 40]],
  ['Geum triflorum, Lupinus perennis', 'prairie smoke 58, lupine not open, so 0', [58, 0]],
])('of %s, "%s"', (plants, typed, flowers) => {
  expect(flowersAfter(plants, typed)).toEqual(flowers);
});

test.each([
  // numbers that belong to the plant that was asked about
  ['Tulipa, Narcissus', '20 red and 15 yellow', [35, null]],
  ['Tulipa, Narcissus', 'about 20 on the tulips', [20, null]],
  ['Tulipa, Narcissus', 'daffs 40', [null, 40]],
  ['Tulipa', '20 each', [null]],
  // a name that only tells where the others are
  ['Tulipa', 'about 80, right next to the lilac', [80]],
  ['Tulipa', '80 tulips next to the lilac', [80]],
  ['Tulipa, Viola', '60, same as the violets', [60, null]],
  ['Tulipa, Viola', '80, i did not count the violets', [80, null]],
  // of the one asked about without its name, of others with theirs
  ['Tulipa, Viola', '80, violets 30', [80, 30]],
  ['Tulipa, Viola', '80 and 30 violets', [80, 30]],
  ['Tulipa, Viola', '20 each, and 10 dandelions', [20, 20, 10]],
  ['Tulipa', '80. oh and 20 dandelions', [80, 20]],
  ['Tulipa, Viola', 'none on the violets, 80 tulips', [80, 0]],
  // may be of either, and is asked about; "per plant" counts the flowers of one tulip
  ['Tulipa', '20 under the redbud', [null]],
  ['Tulipa, Viola', '5 per plant', [null, null]],
  // one more than was told before
  ['Tulipa, Narcissus', '20 tulips, 40 daffs and 12 dandelions', [20, 40, 12]],
] as [string, string, (number | null)[]][])('of %s, "%s" (what it does not say is open)', (plants, typed, flowers) => {
  expect(flowersAfter(plants, typed)).toEqual(flowers);
});

/** A number that was not sure, and what is said when it is asked about. */
test.each([
  ['yes', [200]],
  ['100', [100]],
  ['5', [5]],
  ['no just 8 flowers', [8]],
  ['no, more like 8', [8]],
  // a bee, not a flower
  ['one big one, all yellow on top', [null]],
  ['two of them were on it', [null]],
])('of "200 maybe", "%s" makes %j', (typed, flowers) => {
  const conversation = new Conversation().agreed();
  conversation.all('today 2:10 to 2:25 pm', 'Fen Boardwalk', 'skip', 'skip', 'bluebells', '200 maybe', typed);
  expect((conversation.thread.report?.plants ?? []).map(({ flowers: told }) => told?.value ?? null)).toEqual(flowers);
});
