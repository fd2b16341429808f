import { expect, test } from 'vitest';
import { beeRow, plantRow } from '../../shared/names.js';
import { seasonTable } from '../../src/commands/season-table.js';
import { survey } from '../demo-survey.js';

// Names of our own, so that the lists can grow without moving a column here.
const bee = (name: string, common: string) =>
  beeRow.parse({
    name,
    common,
    subgenus: '',
    cuckoo: 'no',
    former: '',
    short: '',
    regions: '',
    queens_from: '',
    workers_from: '',
    look_alikes: '',
    source: 'a test',
  });
const plant = (name: string, common: string) =>
  plantRow.parse({
    name,
    common,
    rank: 'species',
    family: 'Testaceae',
    former: '',
    short: '',
    unit: 'flower',
    source: 'a test',
  });
const named = {
  wording: survey.wording,
  names: {
    bees: [bee('Bombus impatiens', 'common eastern bumble bee | eastern'), bee('Bombus rufocinctus', '')],
    plants: [
      plant('Cercis canadensis', 'redbud'),
      plant('Geranium maculatum', 'wild geranium'),
      plant('Mertensia virginica', 'Virginia bluebells'),
      plant('Viola', 'violet'),
      plant('Viola sororia', 'violet'),
    ],
  },
};
const effort = { watches: 9, minutes: 1135.5, observers: 3, sites: 2, zeroWatches: 2, withinProtocol: 8 };
const table = {
  bees: ['Bombus impatiens', 'Bombus rufocinctus', 'Bombus'],
  plants: [
    'Cercis canadensis',
    'Geranium maculatum',
    'Mertensia virginica',
    'Viola',
    'Viola sororia',
    'white\u001bones',
  ],
  counts: [
    [3, 0, 12, 0, 0, 1],
    [0, 1, 0, 0, 0, 0],
    [0, 0, 1, 0, 0, 0],
  ],
  queens: [14, 1, 1],
  flowers: [1200, 80, 300, 20, 0, 45],
  watches: [4, 2, 5, 1, 1, 1],
};

test('a table of two blocks in 80 columns', () => {
  const drawn = seasonTable({ effort, table }, named, { protocolOnly: false, columns: 80 });
  expect(`\n${drawn}\n`).toBe(`
Queens seen, bees by plants: 9 watches, 1,135.5 minutes.

                                           wild   Virginia           Viola
                               redbud  geranium  bluebells  Viola  sororia
common eastern (B. impatiens)       3         ·         12      ·        ·
B. rufocinctus                      ·         1          ·      ·        ·
not told apart (Bombus)             ·         ·          1      ·        ·

all bees                            3         1         13      0        0
flowers watched                 1,200        80        300     20        0
watches                             4         2          5      1        1

                               white ones  visits  queens
common eastern (B. impatiens)           1      16      14
B. rufocinctus                          ·       1       1
not told apart (Bombus)                 ·       1       1

all bees                                1      18      16
flowers watched                        45
watches                                 1

· means none seen. Visits count a queen on each plant that she went to; queens
count her once in a watch. Not shown: workers, and watches that are for
practice, set aside or unconfirmed.
`);
});

test('a narrow terminal takes more blocks; no line is longer than it', () => {
  for (const columns of [60, 80, 100, 200]) {
    const lines = seasonTable({ effort, table }, named, { protocolOnly: true, columns }).split('\n');
    expect(Math.max(...lines.map((line) => [...line].length)), `${columns} columns`).toBeLessThanOrEqual(columns);
  }
});

test('it says when only watches inside the protocol are in it', () => {
  const drawn = seasonTable({ effort, table }, named, { protocolOnly: true, columns: 200 });
  expect(drawn.replaceAll('\n', ' ')).toContain('watches that are outside the protocol, for practice');
});

test('a season without a watch has no table', () => {
  const none = { bees: [], plants: [], counts: [], queens: [], flowers: [], watches: [] };
  const drawn = seasonTable({ effort: { ...effort, watches: 0 }, table: none }, named, {
    protocolOnly: false,
    columns: 80,
  });
  expect(drawn).toBe(`No watches to show yet. Not shown: workers, and watches that are for practice,
set aside or unconfirmed.`);
});

test('a season without a queen still shows its plants', () => {
  const none = { bees: [], plants: ['Cercis canadensis'], counts: [], queens: [], flowers: [50], watches: [2] };
  const drawn = seasonTable({ effort, table: none }, named, { protocolOnly: false, columns: 80 });
  expect(drawn).toContain('all bees              0       0       0');
});
