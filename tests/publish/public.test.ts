/** What the public may see: exact and blurred places, observers' keys, and nothing private in any file. */
import Excel from 'exceljs';
import { describe, expect, test } from 'vitest';
import type { Watch } from '../../shared/record.js';
import { archiveFiles } from '../../src/publish/archive/index.js';
import {
  columnsTable,
  csvOf,
  observerKeys,
  publicTables,
  publicWatch,
  spreadsheet,
} from '../../src/publish/public/index.js';
import { verbatimName } from '../../src/publish/public/verbatim.js';
import { MEANINGS } from '../../src/publish/public/meanings.js';
import { publicPlace } from '../../src/publish/public/place.js';
import { plantWatched, queensRow, watch } from '../a-watch.js';
import { survey } from '../demo-survey.js';
import { uuid } from '../store/sample.js';

const place = {
  latitude: 43.5121,
  longitude: -90.6402,
  uncertaintyMetres: 12,
  words: 'pond behind our house',
  site: 'fen-boardwalk',
  private: false,
};
const rusty = [queensRow(1, 'Bombus affinis', 1)];

describe('a place', () => {
  // Half the diagonal of a cell of 0.1° at 43.55° N: (11,132 m, 11,132 m × cos 43.55° = 8,068 m), 6,874.2 m.
  const cell = { latitude: 43.55, longitude: -90.65, uncertaintyMetres: 6875, site: null };
  const table: [what: string, more: Partial<Watch>, expected: object | null][] = [
    ['open', { place }, { latitude: 43.5121, longitude: -90.6402, uncertaintyMetres: 12, site: 'fen-boardwalk' }],
    ['private', { place: { ...place, private: true } }, cell],
    ['of a protected bee', { place, queens: rusty }, cell],
    [
      'less sure than the cell',
      { place: { ...place, private: true, uncertaintyMetres: 9000 } },
      { ...cell, uncertaintyMetres: 9000 },
    ],
    [
      'on the edge of a cell',
      { place: { ...place, latitude: 43.5, longitude: -90.6, private: true } },
      { latitude: 43.55, longitude: -90.55 },
    ],
    ['in words alone', { place: { ...place, latitude: null, longitude: null } }, null],
    ['not told', { place: null }, null],
  ];
  test.each(table)('%s', (_what, more, expected) => {
    const shown = publicPlace(watch(more), survey.settings);
    if (expected === null) expect(shown).toBeNull();
    else expect(shown).toMatchObject(expected);
  });

  test('a protected bee that only a determination names blurs it too', () => {
    const determined = queensRow(1, 'Bombus griseocollis', 1, {
      determinations: [
        {
          taxa: ['Bombus affinis'],
          qualifier: 'cf.',
          count: 1,
          caste: null,
          by: 'ines',
          role: 'coordinator',
          at: '2026-05-03T08:00:00Z',
          from: 'photograph',
        },
      ],
    });
    expect(publicPlace(watch({ place, queens: [determined] }), survey.settings)?.generalized).toContain('0.1 degrees');
  });

  test('blurring twice changes nothing', () => {
    for (let step = 0; step < 500; step++) {
      const secret = { ...place, private: true, latitude: -80 + step * 0.3137, longitude: -170 + step * 0.6791 };
      const once = publicPlace(watch({ place: secret }), survey.settings);
      const twice = publicPlace(watch({ place: { ...secret, ...once } }), survey.settings);
      expect(twice).toEqual(once);
    }
  });
});

const PRIVATE = [
  'pond behind our house',
  'my back hedge',
  'call me at noon',
  'kf-secret',
  'zz-tamsin',
  '43.5121',
  'zzwords',
  '/photos',
];

test('no published text holds words of places, remarks, stored keys, names of experts or a private position', () => {
  const secret = watch({
    id: uuid(4),
    observer: 'kf-secret',
    status: 'confirmed',
    remark: 'call me at noon',
    habitat: 'my back hedge',
    place: { ...place, private: true },
    asTyped: { place: 'zzwords' },
    plants: [
      plantWatched(1, 'Mertensia virginica', 80),
      { ...plantWatched(2, 'zzwords', 5), name: null, asTyped: 'zzwords' },
    ],
    queens: [
      queensRow(1, 'Bombus impatiens', 2, {
        asTyped: 'the one by zzwords fence was an impatiens',
        determinations: [
          {
            taxa: ['Bombus bimaculatus'],
            qualifier: null,
            count: 1,
            caste: null,
            by: 'zz-tamsin',
            role: 'helper',
            at: '2026-05-03T08:00:00Z',
            from: 'photograph',
          },
        ],
      }),
    ],
  });
  const shown = publicWatch(secret, survey, observerKeys());
  expect(shown).not.toBeNull();
  // the coordinator's own name and address are the survey's public contact
  const { 'eml.xml': _contact, ...files } = archiveFiles([shown!], survey, '2026-07-01');
  const all = [...publicTables([shown!]).map(csvOf), ...Object.values(files)].join('\n');
  expect(all).toContain('Bombus bimaculatus');
  for (const words of PRIVATE) expect(all).not.toContain(words);
});

const called: [typed: string, published: boolean][] = [
  ['common eastern?', true],
  ['Two-spotted bumble bees', true],
  ['B. bimac', true],
  ['Bombus ashtoni', true], // a former name
  ['the columbine one was a ternarius, not an impatiens', false],
  ['impatiens at 12 Elm Street', false],
  ['2 impatiens', false],
  ['', false],
];
test.each(called)('what a bee was called is published where it is a name: "%s" %s', (typed, published) => {
  expect(verbatimName(typed, survey.names)).toBe(published ? typed : null);
});

test('every column of the tables has a meaning, and no other is explained', () => {
  const tables = publicTables([publicWatch(watch(), survey, observerKeys())!]);
  const { columns, rows } = columnsTable(tables);
  expect(columns).toEqual(['table', 'column', 'meaning']);
  expect(rows.every((row) => row.every((cell) => cell !== null && cell !== ''))).toBe(true);
  const explained = Object.entries(MEANINGS).flatMap(([name, of]) => Object.keys(of).map((column) => [name, column]));
  expect(rows.map((row) => row.slice(0, 2)).sort()).toEqual(explained.sort());
});

test('only confirmed watches are published', () => {
  for (const status of ['practice', 'set-aside', 'unconfirmed'] as const)
    expect(publicWatch(watch({ status }), survey, observerKeys())).toBeNull();
});

test('a name stands beside the key of who said so, and of nobody else', () => {
  const names = new Map([['wren', 'Wren']]);
  const keyOf = observerKeys();
  const shown = ['wren', 'lark'].map((observer, at) =>
    publicWatch(watch({ observer, number: at + 1, id: uuid(at + 1) }), survey, keyOf, names)!,
  );
  const [table] = publicTables(shown);
  expect(table!.columns.slice(0, 3)).toEqual(['watch', 'observer', 'observer_name']);
  expect(table!.rows.map((row) => row.slice(0, 3))).toEqual([
    [1, 'observer-1', 'Wren'],
    [2, 'observer-2', null],
  ]);
  const files = archiveFiles(shown, survey, '2026-07-01');
  expect(files['effort.csv']).toContain(',Wren (observer-1),');
  expect(files['effort.csv']).toContain(',observer-2,');
  expect(files['event.csv']).toMatch(/:1,.*"words of the place, remarks and photographs"/);
  expect(files['event.csv']).toMatch(/:2,.*photographs and the name of the observer/);
});

describe('an observer’s public key', () => {
  const told = (number: number, observer: string, status: Watch['status'] = 'confirmed'): Watch =>
    watch({ number, observer, status });
  const keysIn = (watches: readonly Watch[]): Record<number, string> => {
    const keyOf = observerKeys();
    const shown = watches.flatMap((one) => publicWatch(one, survey, keyOf) ?? []);
    return Object.fromEntries(shown.map(({ number, observer }) => [number, observer]));
  };

  test('is the number of the first watch they told', () => {
    const watches = [told(3, 'b'), told(4, 'a'), told(5, 'b'), told(9, 'c')];
    expect(keysIn(watches)).toEqual({ 3: 'observer-3', 4: 'observer-4', 5: 'observer-3', 9: 'observer-9' });
  });

  test.each(['set-aside', 'practice', 'unconfirmed'] as const)('stays when their first watch is %s', (status) => {
    const before = keysIn([told(3, 'b'), told(4, 'a'), told(5, 'b'), told(6, 'a')]);
    const after = keysIn([told(3, 'b', status), told(4, 'a'), told(5, 'b'), told(6, 'a')]);
    expect(after).toEqual({ 4: before[4], 5: before[5], 6: before[6] });
  });

  test('stays when somebody else comes, goes, or turns out to be a third person', () => {
    expect(keysIn([told(4, 'a'), told(7, 'd')])).toMatchObject({ 4: 'observer-4' });
    expect(keysIn([told(2, 'e'), told(4, 'a'), told(7, 'e')])).toMatchObject({ 4: 'observer-4' });
  });

  test('is refused where watches do not come by number, for it would depend on their order', () => {
    const keyOf = observerKeys();
    keyOf({ observer: 'a', number: 5 });
    expect(() => keyOf({ observer: 'a', number: 4 })).toThrow('Watch 4 came after watch 5');
  });
});

test('the spreadsheet holds the tables and the bees by plants, and a word that looks like a formula stays a word', async () => {
  const plants = [plantWatched(1, 'Mertensia virginica', 80), plantWatched(2, 'Salix', 30)];
  const queens = [
    queensRow(1, 'Bombus impatiens', 2, { asTyped: '=1+1' }),
    queensRow(2, 'Bombus impatiens', 1, { row: 2, seenBefore: 1 }),
    queensRow(2, 'Bombus impatiens', 5, { row: 3, caste: 'worker' }),
  ];
  const shown = publicWatch(watch({ status: 'confirmed', plants, queens }), survey, observerKeys())!;
  const book = new Excel.Workbook();
  const bytes = await spreadsheet(publicTables([shown]), [shown], '2026-07-01');
  // a copy: exceljs types its own Buffer
  await book.xlsx.load(new Uint8Array(bytes).buffer);
  expect(book.worksheets.map(({ name }) => name)).toEqual(['watches', 'plants', 'queens', 'bees by plants']);
  const rowsOf = (name: string): unknown[][] =>
    (book.getWorksheet(name)!.getSheetValues() as unknown[][]).slice(1).map((row) => row.slice(1));
  // visits: two on the bluebells, one on the willow though she was counted before; workers are no queens
  expect(rowsOf('bees by plants')).toEqual([
    ['bee', 'Mertensia virginica', 'Salix'],
    ['Bombus impatiens', 2, 1],
  ]);
  expect(rowsOf('plants')).toHaveLength(3);
});
