/** The CSV data package as text: what is written, what is read, and how each thing that is wrong is told. */
import { parse } from 'csv-parse/sync';
import { stringify } from 'csv-stringify/sync';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { LAYOUTS, type FileName } from '../../shared/columns.js';
import type { Determination, Watch } from '../../shared/record.js';
import { descriptorOf, readPackage, sayProblem, writePackage, type Texts } from '../../src/publish/package/index.js';
import { plantWatched, queensRow, watch } from '../a-watch.js';
import { survey } from '../demo-survey.js';
import { anyWatch, uuid } from '../store/sample.js';

const NOW = '2026-06-30T12:00:00Z';

function read(texts: Texts) {
  let ids = 0;
  return readPackage(texts, {
    survey,
    now: NOW,
    newId: () => uuid(++ids),
    siteOf: ({ words }) => (words === 'Heron Bend Landing' ? 'heron-bend' : null),
  });
}

function written(watches: readonly Watch[]): Record<FileName, string> {
  const texts: Record<FileName, string> = {
    'watches.csv': '',
    'plants.csv': '',
    'queens.csv': '',
    'determinations.csv': '',
    'findings.csv': '',
  };
  for (const { file, text } of writePackage(watches)) texts[file] += text;
  return texts;
}

const determination: Determination = {
  taxa: ['Bombus bimaculatus', 'Bombus impatiens'],
  qualifier: 'cf.',
  count: 1,
  caste: null,
  by: 'ines',
  role: 'coordinator',
  at: '2026-05-03T08:00:00.250Z',
  from: 'photograph',
};

/** Two watches, the second with a line break in its remark, so that lines are not rows. */
const SEASON: readonly Watch[] = [
  watch({
    id: uuid(1),
    number: 1,
    remark: 'windy,\nthen "calm"',
    sky: { cloud: 'few', rain: false },
    place: { latitude: 43.5, longitude: -90.6, uncertaintyMetres: 12, words: 'pond', site: null, private: true },
    plants: [plantWatched(1, 'Mertensia virginica', 80), plantWatched(2, 'Cercis canadensis', 30)],
    queens: [
      queensRow(1, 'Bombus impatiens', 2, { determinations: [determination] }),
      queensRow(2, 'Bombus', 1, { row: 2, rank: 'genus', seenBefore: 1 }),
    ],
    findings: [{ check: 'temperature', weight: 'keep', values: { celsius: 15 }, reply: null, at: NOW }],
  }),
  watch({ id: uuid(2), number: 2, observer: 'lark' }),
];
const TEXTS = written(SEASON);

test('a watch is written in the columns of the format, in their order', () => {
  expect(TEXTS).toEqual({
    'watches.csv': `watch,observer,date,start,end,time_zone,minutes,place,site,private,latitude,longitude,uncertainty_m,temperature_c,cloud,rain,wind_beaufort,patch_m2,habitat,watchers,status,remark
1,wren,2026-05-02,13:00,13:15,America/Chicago,15,pond,,true,43.5,-90.6,12,20,few,false,2,,,1,confirmed,"windy,
then ""calm"""
2,lark,2026-05-02,13:00,13:15,America/Chicago,15,,,,,,,20,,,2,,,1,confirmed,
`,
    'plants.csv': `watch,plant,rank,as_typed,unit,flowers,flowers_low,flowers_high,flowers_about
1,Mertensia virginica,species,Mertensia virginica,flower,80,80,80,false
1,Cercis canadensis,species,Cercis canadensis,flower,30,30,30,false
2,Mertensia virginica,species,Mertensia virginica,flower,80,80,80,false
`,
    'queens.csv': `watch,row,plant,bee,rank,as_typed,count,seen_before,with_pollen,caste,doubt
1,1,Mertensia virginica,Bombus impatiens,species,Bombus impatiens,2,0,,,false
1,2,Cercis canadensis,Bombus,genus,Bombus,1,1,,,false
`,
    'determinations.csv': `watch,row,taxa,qualifier,count,caste,by,role,on,from
1,1,Bombus bimaculatus / Bombus impatiens,cf.,1,,ines,coordinator,2026-05-03T08:00:00.250Z,photograph
`,
    'findings.csv': `watch,check,weight,values,reply
1,temperature,keep,"{""celsius"":15}",
`,
  });
});

test('what is read is what was written, as far as the files can hold it', () => {
  const { watches, problems } = read(TEXTS);
  expect(problems).toEqual([]);
  const [first, second] = SEASON;
  expect(watches[0]).toEqual({
    ...first,
    via: 'import',
    storedAt: NOW,
    changedAt: NOW,
    total: 2,
    plants: first?.plants.map((plant) => ({ ...plant, flowers: { ...plant.flowers, asTyped: '' } })),
  });
  expect(watches[1]).toMatchObject({ observer: second?.observer, place: null, sky: null, queens: [], total: 0 });
});

/** The file with its rows changed. */
const changed = (file: FileName, change: (rows: readonly string[][]) => string[][]): Texts => ({
  ...TEXTS,
  [file]: stringify(change(parse(TEXTS[file]))),
});

/** The cell of a column in the first row, replaced. */
const withCell = (file: FileName, column: string, cell: string): Texts =>
  changed(file, ([header = [], first = [], ...rest]) => [
    header,
    first.map((before, at) => (header[at] === column ? cell : before)),
    ...rest,
  ]);

const withoutColumn = (file: FileName, column: string): Texts =>
  changed(file, (rows) => rows.map((row) => row.filter((_, at) => rows[0]?.[at] !== column)));

describe('a cell that is wrong is told with its file, line, column, value and what would do', () => {
  const BEES = 'is no accepted name of a bumble bee; write it like "Bombus impatiens", or "Bombus"';
  const table: [file: FileName, column: string, cell: string, said: string][] = [
    ['watches.csv', 'watch', '', 'is empty; write it like 12'],
    ['watches.csv', 'watch', 'one', '"one" is no whole number; write it like 12'],
    ['watches.csv', 'watch', '1.5', '"1.5" is no whole number; write it like 12'],
    ['watches.csv', 'watch', '0', '"0" is too low; the least is 1'],
    ['watches.csv', 'watch', '99999999999999999999', '"99999999999999999999" is no whole number; write it like 12'],
    ['watches.csv', 'observer', '', 'is empty; write it like observer-7'],
    ['watches.csv', 'date', '2026-02-30', '"2026-02-30" is no day; write it like 2026-05-02'],
    ['watches.csv', 'date', '5/2/2026', '"5/2/2026" is no day; write it like 2026-05-02'],
    ['watches.csv', 'start', '1:00 PM', '"1:00 PM" is no time; write it like 13:00'],
    ['watches.csv', 'end', '24:00', '"24:00" is no time; write it like 13:15'],
    ['watches.csv', 'end', '12:59', '"12:59" is before the start, "13:00"; a watch ends on the day on which it began'],
    ['watches.csv', 'time_zone', 'Fenland', '"Fenland" is no time zone; write an IANA name like America/Chicago'],
    ['watches.csv', 'minutes', '-1', '"-1" is too low; the least is 0'],
    ['watches.csv', 'private', 'maybe', '"maybe" is not understood; write true or false'],
    ['watches.csv', 'latitude', '90.1', '"90.1" is too high; the most is 90'],
    ['watches.csv', 'latitude', '', 'is empty, but longitude is not; give both or neither'],
    ['watches.csv', 'longitude', '', 'is empty, but latitude is not; give both or neither'],
    ['watches.csv', 'longitude', '-180.5', '"-180.5" is too low; the least is -180'],
    ['watches.csv', 'uncertainty_m', '0', '"0" is too low; it must be above 0'],
    ['watches.csv', 'temperature_c', '7O', '"7O" is no number; write it like 21.5'],
    ['watches.csv', 'temperature_c', '21,5', '"21,5" is no number; write it like 21.5'],
    ['watches.csv', 'temperature_c', '1e999', '"1e999" is no number; write it like 21.5'],
    ['watches.csv', 'cloud', 'sunny', '"sunny" is not known here; write clear, few, scattered, broken or overcast'],
    ['watches.csv', 'cloud', '', 'is empty, but rain is not; give both or neither'],
    ['watches.csv', 'rain', '', 'is empty, but cloud is not; give both or neither'],
    ['watches.csv', 'wind_beaufort', '13', '"13" is too high; the most is 12'],
    ['watches.csv', 'patch_m2', '-2', '"-2" is too low; it must be above 0'],
    ['watches.csv', 'watchers', '0', '"0" is too low; the least is 1'],
    ['watches.csv', 'status', 'done', '"done" is not known here; write confirmed, unconfirmed, set-aside or practice'],
    ['plants.csv', 'plant', '', 'is empty; write it like Mertensia virginica'],
    ['plants.csv', 'unit', 'bush', '"bush" is not known here; write flower, head, catkin or cluster'],
    ['plants.csv', 'flowers', '', 'is empty; write it like 80'],
    ['plants.csv', 'flowers', 'many', '"many" is no whole number; write it like 80'],
    ['plants.csv', 'flowers_low', '81', '81 is more than flowers, 80'],
    ['plants.csv', 'flowers_high', '79', 'column flowers: 80 is more than flowers_high, 79'],
    ['plants.csv', 'flowers_about', '', 'is empty; write true or false'],
    ['queens.csv', 'row', '', 'is empty; number all rows, or leave the column out'],
    ['queens.csv', 'bee', 'Bombus nowhere', `"Bombus nowhere" ${BEES}`],
    ['queens.csv', 'bee', 'two-spotted', `"two-spotted" ${BEES}`],
    ['queens.csv', 'bee', 'Bombus ashtoni', '"Bombus ashtoni" is now called "Bombus bohemicus"; write that'],
    ['queens.csv', 'count', '0', '"0" is too low; the least is 1'],
    ['queens.csv', 'seen_before', '3', '3 is more than count, 2'],
    ['queens.csv', 'with_pollen', '3', '3 is more than count, 2'],
    ['queens.csv', 'caste', 'drone', '"drone" is not known here; write queen or worker'],
    ['determinations.csv', 'taxa', 'Bombus nowhere', `"Bombus nowhere" ${BEES}`],
    ['determinations.csv', 'taxa', 'a bee', `"a bee" ${BEES}`],
    [
      'determinations.csv',
      'taxa',
      'Bombus impatiens / Bombus griseocollis / Bombus vagans',
      '"Bombus impatiens / Bombus griseocollis / Bombus vagans" is more than a pair; write one name, two, or none',
    ],
    ['determinations.csv', 'count', '3', '3 is more than the row has in queens.csv, 2'],
    ['determinations.csv', 'role', 'observer', '"observer" is not known here; write coordinator or helper'],
    ['determinations.csv', 'on', 'May 3', '"May 3" is no moment; write it like 2026-05-02T18:30:00Z'],
    ['determinations.csv', 'from', 'memory', '"memory" is not known here; write photograph or description'],
    ['findings.csv', 'weight', 'heavy', '"heavy" is not known here; write keep, ask or query'],
    ['findings.csv', 'values', '[1]', '"[1]" is no JSON object; write it like {"celsius": 3}'],
    ['findings.csv', 'values', 'warm', '"warm" is no JSON object; write it like {"celsius": 3}'],
  ];
  test.each(table)('%s, column %s: %j', (file, column, cell, said) => {
    const { problems, watches } = read(withCell(file, column, cell));
    const where = said.startsWith('column') ? `${file}, line 2, ` : `${file}, line 2, column ${column}: `;
    expect(problems.map(sayProblem)).toEqual([where + said]);
    expect(watches).toEqual([]);
  });
});

describe('a cell that is taken', () => {
  const first = (texts: Texts): Watch => {
    const { watches, problems } = read(texts);
    expect(problems.map(sayProblem)).toEqual([]);
    return watches[0]!;
  };
  const table: [file: FileName, column: string, cell: string, part: (watch: Watch) => unknown, value: unknown][] = [
    ['watches.csv', 'watch', ' 1.0 ', ({ number }) => number, 1], // as written by what knows no whole numbers
    ['watches.csv', 'end', '13:00', ({ times }) => times.end, '13:00'],
    ['watches.csv', 'minutes', '0', ({ minutes }) => minutes, 0],
    ['watches.csv', 'private', 'FALSE', ({ place }) => place?.private, false],
    ['watches.csv', 'private', '1', ({ place }) => place?.private, true],
    ['watches.csv', 'private', '', ({ place }) => place?.private, false],
    ['watches.csv', 'latitude', '-90', ({ place }) => place?.latitude, -90],
    ['watches.csv', 'temperature_c', '-.5e1', ({ temperature }) => temperature?.celsius, -5],
    ['watches.csv', 'temperature_c', '', ({ temperature }) => temperature, null],
    ['watches.csv', 'wind_beaufort', '12', ({ wind }) => wind?.beaufort, 12],
    ['watches.csv', 'patch_m2', '0.5', ({ patch }) => [patch?.squareMetres, patch?.shape], [0.5, 'area']],
    ['watches.csv', 'habitat', ' a fen ', ({ habitat }) => habitat, ' a fen '],
    ['watches.csv', 'watchers', '', ({ watchers }) => watchers, 1],
    ['plants.csv', 'flowers', '80.0', ({ plants }) => plants[0]?.flowers.value, 80],
    ['plants.csv', 'unit', '', ({ plants }) => plants[0]?.unit, 'flower'],
    ['queens.csv', 'bee', '', ({ queens }) => queens[0]?.bee, null],
    ['queens.csv', 'seen_before', '', ({ queens }) => queens[0]?.seenBefore, 0],
    ['queens.csv', 'seen_before', '2', ({ queens, total }) => [queens[0]?.seenBefore, total], [2, 0]],
    ['queens.csv', 'with_pollen', '2', ({ queens }) => queens[0]?.withPollen, 2],
    ['determinations.csv', 'taxa', '', ({ queens }) => queens[0]?.determinations[0]?.taxa, []],
    ['determinations.csv', 'taxa', 'Xylocopa', ({ queens }) => queens[0]?.determinations[0]?.taxa, ['Xylocopa']],
    ['determinations.csv', 'taxa', 'Bombus', ({ queens }) => queens[0]?.determinations[0]?.taxa, ['Bombus']],
    ['determinations.csv', 'count', '2', ({ queens }) => queens[0]?.determinations[0]?.count, 2],
    // Midnight of 3 May in Chicago, five hours behind UTC.
    [
      'determinations.csv',
      'on',
      '2026-05-03',
      ({ queens }) => queens[0]?.determinations[0]?.at,
      '2026-05-03T05:00:00Z',
    ],
    ['findings.csv', 'values', '', ({ findings }) => findings[0]?.values, {}],
  ];
  test.each(table)('%s, column %s: %j', (file, column, cell, part, value) => {
    expect(part(first(withCell(file, column, cell)))).toEqual(value);
  });
});

describe('the name of a plant', () => {
  /** plant, rank and as_typed of the second watch's only plant, as read: `name (rank) as typed`. */
  const table: [cells: string, read: string, offList: string[]][] = [
    ['Viola sororia,species,violets', 'Viola sororia (species) violets', []],
    ['Viola sororia,,Viola sororia', 'Viola sororia (null) Viola sororia', []],
    ['Viola sororia,species,', 'Viola sororia (species) ', []],
    // Words as typed: nobody has named it.
    ['white thing,,white thing', 'null (null) white thing', []],
    ['white thing,,', 'null (null) white thing', []],
    // Named by somebody, though not by the list: taken, and told.
    ['Novaplanta fenensis,species,white thing', 'Novaplanta fenensis (species) white thing', ['Novaplanta fenensis']],
    ['Novaplanta fenensis,,white thing', 'Novaplanta fenensis (null) white thing', ['Novaplanta fenensis']],
    ['Novaplanta,genus,Novaplanta', 'Novaplanta (genus) Novaplanta', ['Novaplanta']],
  ];
  test.each(table)('%s is read as %s', (cells, said, offList) => {
    const plants = TEXTS['plants.csv'].replace('2,Mertensia virginica,species,Mertensia virginica', `2,${cells}`);
    const { watches, problems, plantsOffList } = read({ ...TEXTS, 'plants.csv': plants });
    expect(problems).toEqual([]);
    const plant = watches[1]?.plants[0];
    expect(`${plant?.name} (${plant?.rank}) ${plant?.asTyped}`).toBe(said);
    expect(plantsOffList).toEqual(offList);
  });
});

describe('columns', () => {
  const missing: [file: FileName, column: string, part: (watch: Watch) => unknown, value: unknown][] = [
    ['watches.csv', 'site', ({ place }) => place?.site, null],
    ['watches.csv', 'private', ({ place }) => place?.private, false],
    ['watches.csv', 'watchers', ({ watchers }) => watchers, 1],
    ['plants.csv', 'unit', ({ plants }) => plants.map(({ unit }) => unit), ['flower', 'flower']],
    ['queens.csv', 'row', ({ queens }) => queens.map(({ row }) => row), [1, 2]],
    ['queens.csv', 'seen_before', ({ queens, total }) => [...queens.map((row) => row.seenBefore), total], [0, 0, 3]],
    ['queens.csv', 'with_pollen', ({ queens }) => queens[0]?.withPollen, null],
    ['queens.csv', 'caste', ({ queens }) => queens[0]?.caste, null],
    ['determinations.csv', 'caste', ({ queens }) => queens[0]?.determinations[0]?.caste, null],
  ];
  test.each(missing)('%s can do without %s', (file, column, part, value) => {
    const { watches, problems } = read(withoutColumn(file, column));
    expect(problems.map(sayProblem)).toEqual([]);
    expect(part(watches[0]!)).toEqual(value);
  });

  test('every other column is needed', () => {
    for (const { file, columns } of LAYOUTS) {
      const able = missing.filter(([of]) => of === file).map(([, column]) => column);
      for (const column of Object.keys(columns).filter((name) => !able.includes(name))) {
        const said = read(withoutColumn(file, column)).problems.map(sayProblem);
        expect(said, `${file} without ${column}`).toEqual([`${file}, line 1, column ${column}: is missing`]);
      }
    }
  });

  test('without the column for it, the site follows from the place; an empty cell says that there is none', () => {
    const place = 'Heron Bend Landing';
    const named = { ...TEXTS, 'watches.csv': TEXTS['watches.csv'].replace(',pond,', `,${place},`) };
    expect(read(named).watches[0]?.place?.site).toBeNull();
    const { 'watches.csv': text } = withoutColumn('watches.csv', 'site');
    const without = { ...TEXTS, 'watches.csv': text!.replace(',pond,', `,${place},`) };
    expect(read(without).watches[0]?.place?.site).toBe('heron-bend');
  });

  test('they may stand in any order', () => {
    const { watches, problems } = read(changed('plants.csv', (rows) => rows.map((row) => [...row].reverse())));
    expect(problems).toEqual([]);
    expect(written(watches)).toEqual(TEXTS);
  });

  const headers: [file: FileName, header: string, said: string[]][] = [
    [
      'findings.csv',
      'watch,check,weight,values,reply,colour',
      ['findings.csv, line 1: no column is called "colour". Known: watch, check, weight, values, reply'],
    ],
    [
      'findings.csv',
      'watch,check,weight,values,reply,check',
      ['findings.csv, line 1, column check: stands there more than once'],
    ],
    [
      'findings.csv',
      'watch,check,heft,values,reply',
      [
        'findings.csv, line 1: no column is called "heft". Known: watch, check, weight, values, reply',
        'findings.csv, line 1, column weight: is missing',
      ],
    ],
    [
      'findings.csv',
      'watch;check;weight;values;reply',
      ['findings.csv, line 1: its columns are parted by ";"; save it with commas between them'],
    ],
    // Who cannot be found there is not blamed for it.
    ['queens.csv', 'Watch,row', ['no column is called "Watch"']],
  ];
  test.each(headers)('%s with the header %s', (file, header, said) => {
    const { problems } = read({ ...TEXTS, [file]: `${header}\n` });
    if (file === 'queens.csv') expect(new Set(problems.map((problem) => problem.line))).toEqual(new Set([1]));
    else expect(problems.map(sayProblem)).toEqual(said);
  });
});

describe('files', () => {
  test('the last two may be missing', () => {
    const { 'determinations.csv': _, 'findings.csv': __, ...rest } = TEXTS;
    const { watches, problems } = read(rest);
    expect(problems).toEqual([]);
    expect([watches[0]?.queens[0]?.determinations, watches[0]?.findings]).toEqual([[], []]);
  });

  const needed = ['watches.csv', 'plants.csv', 'queens.csv'] as const;
  test.each(needed)('%s may not, and what refers to it is not blamed', (file) => {
    expect(read({ ...TEXTS, [file]: undefined }).problems.map(sayProblem)).toEqual([`${file}: is missing`]);
  });

  test('a season of no watches is one', () => {
    expect(read(written([]))).toMatchObject({ watches: [], problems: [] });
  });

  const broken: [what: string, text: string, said: string][] = [
    [
      'nothing',
      '',
      'plants.csv, line 1: is empty; its first line is watch,plant,rank,as_typed,unit,flowers,flowers_low,flowers_high,flowers_about',
    ],
    ['an open quote', `${TEXTS['plants.csv']}2,"a\nb`, 'plants.csv, line 5: a quote (") is opened and never closed'],
    [
      'text after a quote',
      `${TEXTS['plants.csv']}2,"a"b,c\n`,
      'plants.csv, line 5: after the closing quote (") of a cell comes more; double a quote that belongs to the text',
    ],
    [
      'a quote within text',
      `${TEXTS['plants.csv']}2,6" tall,c\n`,
      'plants.csv, line 5: a quote (") stands within a cell; put the cell into quotes and double that quote',
    ],
    [
      'a cell too many',
      TEXTS['plants.csv'].replace('2,Mertensia', '2,Oh, Mertensia'),
      'plants.csv, line 4: has 10 cells where the header has 9; put a cell that holds a comma into quotes',
    ],
  ];
  test.each(broken)('plants.csv with %s', (_, text, said) => {
    expect(read({ ...TEXTS, 'plants.csv': text }).problems.map(sayProblem)).toEqual([said]);
  });

  test('as spreadsheets save them: a mark at the beginning, other line ends, no last one, empty rows', () => {
    const saved = Object.fromEntries(
      Object.entries(TEXTS).map(([file, text]) => [
        file,
        `\ufeff${text.trimEnd().replaceAll(/\n(?!then)/g, '\r\n')}\r\n,,,,\r\n\r\n`.replace(/\r\n$/, ''),
      ]),
    ) as Texts;
    const { watches, problems } = read(saved);
    expect(problems.map(sayProblem)).toEqual([]);
    expect(written(watches)).toEqual(TEXTS);
  });

  test('the last cell may be in quotes and the last line without its end', () => {
    const turned = 'watch,check,weight,reply,values\n1,length,ask,,"{""minutes"":3}"';
    const { watches, problems } = read({ ...TEXTS, 'findings.csv': turned });
    expect(problems.map(sayProblem)).toEqual([]);
    expect(watches[0]?.findings.map(({ values }) => values)).toEqual([{ minutes: 3 }]);
  });

  const ends: [name: string, end: string][] = [
    ['line feeds', '\n'],
    ['pairs', '\r\n'],
  ];
  test.each(ends)('lines are those of the text, whatever stands in cells before: %s', (_, end) => {
    const bad = TEXTS['watches.csv'].replace('2,lark,2026-05-02', '2,lark,yesterday').replaceAll('\n', end);
    expect(read({ ...TEXTS, 'watches.csv': bad }).problems.map(sayProblem)).toEqual([
      'watches.csv, line 4, column date: "yesterday" is no day; write it like 2026-05-02',
    ]);
  });
});

describe('rows that do not fit each other', () => {
  const QUEENS_2 = '2,1,Mertensia virginica,Bombus,genus,bee,1,0,,,false';
  const table: [what: string, file: FileName, row: string, said: string[]][] = [
    [
      'a number twice',
      'watches.csv',
      '2,finch,2026-05-02,14:00,14:15,America/Chicago,15,,,,,,,20,,,2,,,1,confirmed,',
      ['watches.csv, line 5, column watch: 2 stands in line 4; leave one out'],
    ],
    [
      'a plant twice',
      'plants.csv',
      '2,Mertensia virginica,species,Mertensia virginica,head,9,,,true',
      ['plants.csv, line 5: this row has the same watch, plant and as_typed as line 4; leave one out'],
    ],
    ['one plant by two names', 'plants.csv', '2,Mertensia virginica,species,bluebells,flower,9,,,true', []],
    [
      'a plant of nobody',
      'plants.csv',
      '7,Viola,genus,violet,flower,9,,,true',
      ['plants.csv, line 5, column watch: watch 7 is not in watches.csv'],
    ],
    ['queens on a plant', 'queens.csv', QUEENS_2, []],
    [
      'queens on a plant that was not watched',
      'queens.csv',
      '1,3,Viola sororia,Bombus,genus,bee,1,0,,,false',
      [
        'queens.csv, line 4, column plant: watch 1 has no plant "Viola sororia" in plants.csv; it has "Mertensia virginica", "Cercis canadensis"',
      ],
    ],
    [
      'queens of no watch',
      'queens.csv',
      '7,1,Viola sororia,Bombus,genus,bee,1,0,,,false',
      ['queens.csv, line 4, column watch: watch 7 is not in watches.csv'],
    ],
    [
      'a row twice',
      'queens.csv',
      '1,2,Mertensia virginica,Bombus,genus,bee,1,0,,,false',
      ['queens.csv, line 4: this row has the same watch and row as line 3; leave one out'],
    ],
    [
      'a determination of no row',
      'determinations.csv',
      '1,3,Bombus,,1,,ines,helper,2026-05-03,photograph',
      ['determinations.csv, line 3, column row: watch 1 has no row 3 in queens.csv; it has 1, 2'],
    ],
    [
      'a determination of a watch without queens',
      'determinations.csv',
      '2,1,Bombus,,1,,ines,helper,2026-05-03,photograph',
      ['determinations.csv, line 3, column row: watch 2 has no row 1 in queens.csv; it has none there'],
    ],
    [
      'a determination twice',
      'determinations.csv',
      '1,1,Bombus bimaculatus / Bombus impatiens,cf.,1,,ines,coordinator,2026-05-03T08:00:00.250Z,photograph',
      ['determinations.csv, line 3: this row is the same as line 2; leave one out'],
    ],
    [
      'a finding of no watch',
      'findings.csv',
      '9,length,ask,{},',
      ['findings.csv, line 3, column watch: watch 9 is not in watches.csv'],
    ],
    // Nobody can say that a watch is not there where one has no number.
    [
      'a watch without a number',
      'watches.csv',
      ',finch,2026-05-02,14:00,14:15,America/Chicago,15,,,,,,,20,,,2,,,1,confirmed,',
      ['watches.csv, line 5, column watch: is empty; write it like 12'],
    ],
  ];
  test.each(table)('%s', (_, file, row, said) => {
    expect(read({ ...TEXTS, [file]: `${TEXTS[file]}${row}\n` }).problems.map(sayProblem)).toEqual(said);
  });

  test('a watch of which not all can be read is there all the same', () => {
    const { problems } = read(withCell('watches.csv', 'minutes', 'long'));
    expect(problems.map(sayProblem)).toEqual([
      `watches.csv, line 2, column minutes: "long" is no number; write it like 15`,
    ]);
  });

  test('all that is wrong is told, by file and line', () => {
    const { problems } = read({
      ...withCell('queens.csv', 'count', 'two'),
      'watches.csv': TEXTS['watches.csv'].replace('1,wren', 'x').replace('2,lark', '2,'),
      'findings.csv': 'watch,check,weight,values,reply\n1,,keep,{},\n',
    });
    expect(problems.map(({ file, line, column }) => `${file} ${line} ${column}`)).toEqual([
      'watches.csv 2 null',
      'watches.csv 4 observer',
      'queens.csv 2 count',
      'findings.csv 2 check',
    ]);
  });
});

test('numbers out of order come in by number', () => {
  const [header, ...rows] = written([SEASON[1]!, { ...SEASON[1]!, number: 1, observer: 'wren' }])['plants.csv'].split(
    '\n',
  );
  const watches = written([SEASON[1]!, { ...SEASON[1]!, number: 1, observer: 'wren' }]);
  expect(read({ ...watches, 'plants.csv': [header, ...rows].join('\n') }).watches.map(({ number }) => number)).toEqual([
    1, 2,
  ]);
});

test('the description of the files has every column, and follows from the settings alone', () => {
  const described = descriptorOf(survey.settings);
  expect(descriptorOf({ ...survey.settings })).toBe(described);
  const { resources } = JSON.parse(described) as {
    resources: { path: string; schema: { fields: { name: string }[]; primaryKey?: string[] } }[];
  };
  expect(resources.map(({ path, schema }) => [path, schema.fields.map(({ name }) => name)])).toEqual(
    LAYOUTS.map(({ file, columns }) => [file, Object.keys(columns)]),
  );
  // The specification lets no cell of a primary key be empty, and as_typed may be.
  expect(resources.map(({ schema }) => schema.primaryKey)).toEqual([
    ['watch'],
    undefined,
    ['watch', 'row'],
    undefined,
    undefined,
  ]);
});

/** Any watch made possible: plants by number, queens on them, parts no more than their wholes. */
function possible(given: Watch, number: number): Watch {
  const bees = ['Bombus impatiens', 'Bombus', null];
  const plants = given.plants.map((plant, index) => ({
    ...plant,
    plant: index + 1,
    // An empty name is none, and words as typed are what is left then.
    name: plant.name === '' ? null : plant.name,
    rank: plant.rank === '' ? null : plant.rank,
    asTyped: `${plant.asTyped}${index}`,
    flowers: { ...plant.flowers, low: null, high: null },
  }));
  const queens = plants.length === 0 ? [] : given.queens;
  const { latitude, longitude } = given.place ?? { latitude: null, longitude: null };
  return {
    ...given,
    number,
    observer: `${given.observer}o`,
    timeZone: 'Europe/Oslo',
    times: { start: '00:00', end: given.times.end },
    place: given.place && {
      ...given.place,
      latitude: longitude === null ? null : latitude,
      longitude: latitude === null ? null : longitude,
    },
    plants,
    queens: queens.map((row, index) => ({
      ...row,
      row: index + 1,
      plant: (row.plant % plants.length) + 1,
      bee: bees[row.row % bees.length] ?? null,
      seenBefore: row.seenBefore % (row.count + 1),
      withPollen: row.withPollen === null ? null : row.withPollen % (row.count + 1),
      determinations: row.determinations.map((determination, at) => ({
        ...determination,
        taxa: determination.taxa.map(() => 'Bombus vagans'),
        count: Math.min(determination.count, row.count),
        by: `helper ${at}`,
      })),
    })),
    findings: given.findings.map((finding, index) => ({ ...finding, check: `${finding.check}${index}` })),
  };
}

test('whatever can be stored is written, read and written again without a letter changed', () => {
  fc.assert(
    fc.property(fc.array(anyWatch, { maxLength: 4 }), (given) => {
      const texts = written(given.map((one, index) => possible(one, index + 1)));
      const { watches, problems } = read(texts);
      expect(problems.map(sayProblem)).toEqual([]);
      expect(written(watches)).toEqual(texts);
    }),
    { numRuns: 200, seed: 7 },
  );
});

test('a plant on which queens are, and that the watch does not have, cannot have been stored', () => {
  expect(() => written([watch({ queens: [queensRow(3, 'Bombus', 1)] })])).toThrow(
    'Watch 1, row 1 of its queens names plant 3. Its plants: 1.',
  );
});
