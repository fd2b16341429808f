/** The reference lists as a whole: what must hold in every row and between rows, and a sample of facts checked by hand. */
import { describe, expect, test } from 'vitest';
import { loadNames } from '../../src/settings/load.js';

// a row that the schema refuses makes this throw, naming file, line and column
const { bees, plants } = loadNames();

const namesOf = (rows: readonly { readonly name: string }[]): string[] => rows.map((row) => row.name);
const genusOf = (name: string): string => name.split(' ')[0]!;
const isInEurope = (regions: readonly string[]): boolean => regions.includes('europe');
const isInAmerica = (regions: readonly string[]): boolean =>
  ['east', 'central', 'west', 'north'].some((region) => regions.includes(region));

/** As a person's words are compared: case, hyphens, apostrophes and full stops do not count. */
const plain = (name: string): string => name.toLowerCase().replaceAll('-', ' ').replace(/['’.]/g, '');

interface Row {
  readonly name: string;
  readonly common: readonly string[];
  readonly former: readonly string[];
  readonly short: readonly string[];
  readonly source: string;
}
const lists: [list: string, rows: readonly Row[]][] = [
  ['bees', bees],
  ['plants', plants],
];

/** Each name of a column, made plain, with the accepted names it leads to. */
function ledTo(rows: readonly Row[], column: 'common' | 'former' | 'short'): Map<string, string[]> {
  const leads = new Map<string, string[]>();
  for (const row of rows) {
    for (const name of row[column]) {
      const key = column === 'former' ? name : plain(name);
      leads.set(key, [...(leads.get(key) ?? []), row.name]);
    }
  }
  return leads;
}

/** Names that several taxa share, and people use for each of them. Any other name at two taxa is a slip. */
const SHARED: ReadonlySet<string> = new Set([
  'marigold',
  // genera of which the region has several: who says only this is asked which
  'adders tongue',
  'arrowwood',
  'burdock',
  'dogbane',
  'dogs tooth violet',
  'dogtooth violet',
  'elder',
  'elderberry',
  'false foxglove',
  'fawn lily',
  'feverwort',
  'figwort',
  'horse gentian',
  'jewelweed',
  'meadow rue',
  'melilot',
  'mountain ash',
  'prairie clover',
  'solomons seal',
  'sweet clover',
  'sweetclover',
  'teasel',
  'touch me not',
  'trout lily',
  'troutlily',
  'baneberry',
  'bellwort',
  'cranberry',
  'merry bells',
  'merrybells',
  'paintbrush',
  'painted cup',
  'puccoon',
  'sweet cicely',
  'sweet william',
  'water leaf',
  'waterleaf',
  // woodland and prairie
  'aconite',
  'betony',
  'bittersweet',
  'black currant',
  'black elderberry',
  'black snakeroot',
  'blackcurrant',
  'bog violet',
  'bugleweed',
  'cohosh',
  'common columbine',
  'common daisy',
  'common honeysuckle',
  'dwarf honeysuckle',
  'flowering currant',
  'hyssop',
  'mayflower',
  'oxeye',
  'purple rocket',
  'purple trillium',
  'purple vetch',
  'red honeysuckle',
  'red trillium',
  'red willow',
  'silky dogwood',
  'snow on the mountain',
  'thrift',
  'tiger lily',
  'turks cap lily',
  'turkscap lily',
  'wild cherry',
  'wild gooseberry',
  'wild honeysuckle',
  'wild iris',
  'wild pea',
  'wild raspberry',
  'wild sweet pea',
  'wood violet',
  'yellow mustard',
  'bird cherry',
  'blue flag',
  'blue flag iris',
  'buffalo bean',
  'buckthorn',
  'bush honeysuckle',
  'cowslip',
  'creeping phlox',
  'daisy fleabane',
  'dewberry',
  'diamond willow',
  'dogberry',
  'false indigo',
  'field thistle',
  'fly honeysuckle',
  'goats beard',
  'goatsbeard',
  'goats rue',
  'green milkweed',
  'apple tree',
  'pear tree',
  'locust',
  'loosestrife',
  'moose maple',
  'pale corydalis',
  'pasture thistle',
  'possumhaw',
  'prairie buttercup',
  'prairie rose',
  'sand violet',
  'soft maple',
  'spring beauty',
  'sticky catchfly',
  'swamp dogwood',
  'thimbleweed',
  'toothwort',
  'water willow',
  'wild foxglove',
  'wild garlic',
  'wild onion',
  'wild senna',
  'wild sweet william',
  'windflower',
  'woodbine',
  'yellow corydalis',
  'yellow honeysuckle',
  'yellow wild indigo',
  // gardens and hedges
  'bachelor button',
  'bachelors button',
  'blue sage',
  'bridal wreath',
  'dwarf iris',
  'flowering plum',
  'japanese flowering quince',
  'japanese quince',
  'pink spirea',
  'red poppy',
  'snowball',
  'white daisy',
  'white spirea',
  'yellow foxglove',
  'yellow iris',
  'yellow poppy',
  'bridal wreath spirea',
  'creeping thyme',
  'english hawthorn',
  'flowering almond',
  'glory of the snow',
  'japanese rose',
  'jerusalem sage',
  'lenten rose',
  'quince',
  'snowball bush',
  // the genus in books, one species to whoever stands before it
  'bishops cap',
  'miterwort',
  'mitrewort',
  'yarrow',
]);

describe.each(lists)('the list of %s', (_list, rows) => {
  const accepted = new Set(rows.map((row) => row.name));

  test('is sorted by name', () => {
    const names = rows.map((row) => row.name);
    expect(names).toEqual([...names].sort());
  });

  test('has each accepted name once', () => {
    expect(rows.length).toBe(accepted.size);
  });

  test('has no former name that is accepted for some taxon', () => {
    expect(rows.flatMap((row) => row.former.filter((former) => accepted.has(former)))).toEqual([]);
  });

  test('has no former name that leads to two taxa', () => {
    expect([...ledTo(rows, 'former')].filter(([, names]) => names.length > 1)).toEqual([]);
  });

  test('has no short form that leads to two taxa', () => {
    expect([...ledTo(rows, 'short')].filter(([, names]) => names.length > 1)).toEqual([]);
  });

  test('has no English name at two taxa but the shared ones', () => {
    const twice = [...ledTo(rows, 'common')].filter(([name, names]) => names.length > 1 && !SHARED.has(name));
    expect(twice).toEqual([]);
  });

  test('has English names of letters, with a capital only in proper nouns', () => {
    const written = /^[A-Za-z][A-Za-z'-]*\.?(?: [A-Za-z][A-Za-z'-]*\.?)*$/;
    const neverCapital = new Set(
      'aster bean bee beebalm bells berry bluebell bumble bush cherry clover cuckoo daisy dogwood flower geranium grass holly honeysuckle hyacinth indigo iris lily maple mint onion orchid pea phlox plum poppy rose sage sedum spotted thistle trillium tree vetch violet weed wild willow wort yellow'.split(
        ' ',
      ),
    );
    const malformed = rows.flatMap((row) =>
      row.common.filter((name) => {
        if (!written.test(name)) return true;
        return name.split(/[ -]/).some((word) => word !== word.toLowerCase() && neverCapital.has(word.toLowerCase()));
      }),
    );
    expect(malformed).toEqual([]);
  });

  test('says where each row is from', () => {
    expect(namesOf(rows.filter((row) => row.source === ''))).toEqual([]);
  });
});

test('every shared name is shared', () => {
  const counts = new Map(
    [...ledTo(bees, 'common'), ...ledTo(plants, 'common')].map(([name, names]) => [name, names.length]),
  );
  expect([...SHARED].filter((name) => (counts.get(name) ?? 0) < 2)).toEqual([]);
});

describe('bees', () => {
  test('are all of North America and Europe', () => {
    expect(bees.filter((bee) => isInAmerica(bee.regions)).length).toBeGreaterThanOrEqual(46);
    expect(bees.filter((bee) => isInEurope(bee.regions)).length).toBeGreaterThanOrEqual(60);
  });

  test('have former names that look like names', () => {
    const written = /^[A-Z][a-z]+ [a-z]+(?: [a-z]+)?$/;
    expect(bees.flatMap((bee) => bee.former.filter((former) => !written.test(former)))).toEqual([]);
  });

  test('occur in known regions', () => {
    const known = new Set(['east', 'central', 'west', 'north', 'mexico', 'europe']);
    const unknown = bees.filter((bee) => bee.regions.length === 0 || bee.regions.some((region) => !known.has(region)));
    expect(namesOf(unknown)).toEqual([]);
  });

  test('have look-alikes that are listed and point back', () => {
    const byName = new Map(bees.map((bee) => [bee.name, bee]));
    const oneSided = bees.flatMap((bee) =>
      bee.look_alikes
        .filter((other) => other === bee.name || byName.get(other)?.look_alikes.includes(bee.name) !== true)
        .map((other) => `${bee.name} > ${other}`),
    );
    expect(oneSided).toEqual([]);
  });

  test('that are cuckoos have no workers', () => {
    expect(namesOf(bees.filter((bee) => bee.cuckoo && bee.workers_from !== null))).toEqual([]);
    expect(namesOf(bees.filter((bee) => bee.subgenus === 'Psithyrus' && !bee.cuckoo))).toEqual([]);
  });

  test('have workers weeks after the first queens', () => {
    const days = bees.filter((bee) => bee.workers_from !== null);
    expect(days.length).toBeGreaterThanOrEqual(14);
    const early = days.filter((bee) => bee.queens_from === null || bee.queens_from >= bee.workers_from!);
    expect(namesOf(early)).toEqual([]);
  });

  test('belong to subgenera in use, each spelled one way', () => {
    const subgenera = new Set(bees.map((bee) => bee.subgenus));
    expect([...subgenera].sort()).toEqual([
      'Alpinobombus',
      'Bombias',
      'Bombus',
      'Cullumanobombus',
      'Kallobombus',
      'Megabombus',
      'Melanobombus',
      'Mendacibombus',
      'Psithyrus',
      'Pyrobombus',
      'Sibiricobombus',
      'Subterraneobombus',
      'Thoracobombus',
    ]);
  });
});

describe('plants', () => {
  test('are at least 520', () => {
    expect(plants.length).toBeGreaterThanOrEqual(520);
  });

  test('have names of the form of their rank', () => {
    const form = {
      species: /^[A-Z][a-z]+ [a-z]+(?:-[a-z]+)?$/,
      hybrid: /^[A-Z][a-z]+ × [a-z]+$/,
      genus: /^[A-Z][a-z]+$/,
    };
    expect(namesOf(plants.filter((plant) => !form[plant.rank].test(plant.name)))).toEqual([]);
  });

  test('have former names that look like names', () => {
    const written = /^[A-Z][a-z]+(?: (?:× )?[a-z]+(?:-[a-z]+)?(?: (?:var\.|subsp\.)? ?[a-z]+)?)?$/;
    expect(plants.flatMap((plant) => plant.former.filter((former) => !written.test(former)))).toEqual([]);
  });

  test('have an English name each', () => {
    expect(namesOf(plants.filter((plant) => plant.common.length === 0))).toEqual([]);
  });

  test('have a genus row wherever two species of a genus are listed', () => {
    const genera = new Set(plants.filter((plant) => plant.rank === 'genus').map((plant) => plant.name));
    const counts = new Map<string, number>();
    for (const { name, rank } of plants) {
      if (rank !== 'genus') counts.set(genusOf(name), (counts.get(genusOf(name)) ?? 0) + 1);
    }
    expect([...counts].filter(([genus, count]) => count > 1 && !genera.has(genus))).toEqual([]);
  });

  test('have one family for a genus', () => {
    const families = new Map<string, Set<string>>();
    for (const { name, family } of plants) {
      families.set(genusOf(name), (families.get(genusOf(name)) ?? new Set()).add(family));
    }
    expect([...families].filter(([, known]) => known.size > 1)).toEqual([]);
  });

  test('have no English name that is the scientific name of a listed genus, but that genus itself', () => {
    const genera = new Set(plants.filter((plant) => plant.rank === 'genus').map((plant) => plant.name.toLowerCase()));
    const strayed = plants.flatMap((plant) =>
      plant.common.filter((common) => genera.has(plain(common)) && plain(common) !== plant.name.toLowerCase()),
    );
    expect(strayed).toEqual([]);
  });

  test('have no former genus that is still in use', () => {
    const used = new Set(plants.map((plant) => genusOf(plant.name)));
    expect(plants.flatMap((plant) => plant.former.filter((former) => used.has(former)))).toEqual([]);
  });

  test('are counted alike: a genus in the unit of most of its species', () => {
    const odd = plants.filter((genus) => {
      const species = plants.filter((plant) => plant.rank !== 'genus' && genusOf(plant.name) === genus.name);
      const inItsUnit = species.filter((plant) => plant.unit === genus.unit);
      return genus.rank === 'genus' && inItsUnit.length * 2 < species.length;
    });
    expect(namesOf(odd)).toEqual([]);
  });

  test('are counted by families: composites never by the flower, umbels always by the cluster or head', () => {
    const allowed: Record<string, readonly string[]> = {
      Asteraceae: ['head', 'cluster'],
      Apiaceae: ['cluster', 'head'],
      Salicaceae: ['catkin'],
    };
    expect(namesOf(plants.filter((plant) => allowed[plant.family]?.includes(plant.unit) === false))).toEqual([]);
    expect(namesOf(plants.filter((plant) => genusOf(plant.name) === 'Trifolium' && plant.unit !== 'head'))).toEqual([]);
  });
});

// Worked out by hand from what is well known; both ways a row could be wrong are in it.
const beeOf: [name: string, accepted: string[]][] = [
  ['common eastern bumble bee', ['Bombus impatiens']],
  ['two-spotted bumble bee', ['Bombus bimaculatus']],
  ['brown-belted bumble bee', ['Bombus griseocollis']],
  ['half-black bumble bee', ['Bombus vagans']],
  ['tricolored bumble bee', ['Bombus ternarius']],
  ['orange-belted bumble bee', ['Bombus ternarius']],
  ['red-belted bumble bee', ['Bombus rufocinctus']],
  ['golden northern bumble bee', ['Bombus fervidus']],
  ['northern amber bumble bee', ['Bombus borealis']],
  ['southern plains bumble bee', ['Bombus fraternus']],
  ['buff-tailed bumble bee', ['Bombus terrestris']],
  ['common carder bee', ['Bombus pascuorum']],
  ['white-tailed bumble bee', ['Bombus lucorum']],
  ['Bombus fernaldae', ['Bombus flavidus']],
  ['Psithyrus ashtoni', ['Bombus bohemicus']],
  ['Bombus separatus', ['Bombus griseocollis']],
  ['Bombus americanorum', ['Bombus pensylvanicus']],
  ['Bombus sonorus', ['Bombus pensylvanicus']],
  ['Bombus edwardsii', ['Bombus melanopygus']],
  ['Bombus bifarius nearcticus', ['Bombus vancouverensis']],
  ['Bombus agrorum', ['Bombus pascuorum']],
  ['imp', ['Bombus impatiens']],
  ['bimac', ['Bombus bimaculatus']],
  ['terri', ['Bombus terricola']],
  ['ter', []], // ternarius, terricola, terrestris
];
const plantOf: [name: string, accepted: string[]][] = [
  ['redbud', ['Cercis canadensis']],
  ["Dutchman's breeches", ['Dicentra cucullaria']],
  ['squirrel corn', ['Dicentra canadensis']],
  ['Virginia bluebells', ['Mertensia virginica']],
  ['creeping Charlie', ['Glechoma hederacea']],
  ['ground ivy', ['Glechoma hederacea']],
  ["Jacob's ladder", ['Polemonium reptans']],
  ['shooting star', ['Primula meadia']],
  ['spring beauty', ['Claytonia caroliniana', 'Claytonia virginica']],
  ['creeping phlox', ['Phlox stolonifera', 'Phlox subulata']],
  ['bush honeysuckle', ['Diervilla lonicera', 'Lonicera maackii', 'Lonicera morrowii', 'Lonicera tatarica']],
  ['phlox', ['Phlox']],
  ['willow', ['Salix']],
  ['pussy willow', ['Salix discolor']],
  ['lilac', ['Syringa vulgaris']],
  ['apple', ['Malus domestica']],
  ['apple tree', ['Malus', 'Malus domestica']],
  ['crabapple', ['Malus']],
  ['juneberry', ['Amelanchier']],
  ['azalea', ['Rhododendron']],
  ['currant', ['Ribes']],
  ['gooseberry', ['Ribes']],
  ['clover', ['Trifolium']],
  ['wild lupine', ['Lupinus perennis']],
  ['Dodecatheon meadia', ['Primula meadia']],
  ['Dicentra spectabilis', ['Lamprocapnos spectabilis']],
  ['Senecio aureus', ['Packera aurea']],
  ['Sedum spectabile', ['Hylotelephium spectabile']],
  ['Aster novae-angliae', ['Symphyotrichum novae-angliae']],
  ['Rosmarinus officinalis', ['Salvia rosmarinus']],
  ['Pisum sativum', ['Lathyrus oleraceus']],
  ['daffodil', ['Narcissus']],
  ['pink', []], // a colour before it is a Dianthus
];
const leadingTo = (rows: readonly Row[], name: string): string[] =>
  rows
    .filter((row) =>
      [row.name, ...row.common, ...row.former, ...row.short].some((known) => plain(known) === plain(name)),
    )
    .map((row) => row.name);
test.each(beeOf)('the bee "%s" is %j', (name, accepted) => {
  expect(leadingTo(bees, name)).toEqual(accepted);
});
test.each(plantOf)('the plant "%s" is %j', (name, accepted) => {
  expect(leadingTo(plants, name)).toEqual(accepted);
});

const unitOf: [plant: string, unit: string][] = [
  ['Salix discolor', 'catkin'],
  ['Taraxacum officinale', 'head'],
  ['Trifolium pratense', 'head'],
  ['Allium schoenoprasum', 'head'],
  ['Zizia aurea', 'cluster'],
  ['Viburnum lentago', 'cluster'],
  ['Geranium maculatum', 'flower'],
  ['Cercis canadensis', 'flower'],
];
test.each(unitOf)('%s is counted by the %s', (name, unit) => {
  expect(plants.find((plant) => plant.name === name)?.unit).toBe(unit);
});
