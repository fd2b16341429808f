/**
 * The Darwin Core Archive against the published lists of terms and the schema of the text guide
 * (tests/standards/README.md), and its rows worked by hand.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { beforeAll, describe, expect, test } from 'vitest';
import { validateXML } from 'xmllint-wasm';
import { archiveFiles, zipped } from '../../src/publish/archive/index.js';
import { observerKeys, publicWatch } from '../../src/publish/public/index.js';
import { plantWatched, queensRow, watch } from '../a-watch.js';
import { survey } from '../demo-survey.js';
import { uuid } from '../store/sample.js';

const STANDARDS = join(import.meta.dirname, '..', 'standards');
const standard = (file: string): string => readFileSync(join(STANDARDS, file), 'utf8');
const termsIn = (file: string): Set<string> =>
  new Set(
    standard(file)
      .split(/\r?\n/)
      .filter((line) => line !== ''),
  );

const by = {
  qualifier: null,
  count: 2,
  caste: null,
  by: 'ines',
  role: 'coordinator',
  at: '2026-05-03T08:00:00Z',
  from: 'photograph',
} as const;
const plants = [plantWatched(1, 'Mertensia virginica', 80), plantWatched(2, 'Salix', 30)];

/** One all determined, one in part, one without queens, one with a cuckoo and a queen counted before. */
const SEASON = [
  watch({
    id: uuid(1),
    number: 1,
    status: 'confirmed',
    date: '2026-05-02',
    times: { start: '13:00', end: '13:15' },
    plants,
    queens: [queensRow(1, 'Bombus impatiens', 2, { determinations: [{ ...by, taxa: ['Bombus bimaculatus'] }] })],
  }),
  watch({
    id: uuid(2),
    number: 2,
    status: 'confirmed',
    date: '2026-05-03',
    plants,
    queens: [queensRow(1, 'Bombus impatiens', 3, { determinations: [{ ...by, taxa: ['Bombus impatiens'] }] })],
  }),
  watch({ id: uuid(3), number: 3, status: 'confirmed', date: '2026-05-04', plants, queens: [] }),
  watch({
    id: uuid(4),
    number: 4,
    status: 'confirmed',
    date: '2026-05-05',
    plants,
    queens: [queensRow(1, 'Bombus citrinus', 1), queensRow(2, 'Bombus citrinus', 1, { row: 2, seenBefore: 1 })],
  }),
];

let files: Readonly<Record<string, string>>;
let rows: (file: string) => Record<string, string>[];
beforeAll(() => {
  const keyOf = observerKeys();
  files = archiveFiles(
    SEASON.flatMap((one) => publicWatch(one, survey, keyOf) ?? []),
    survey,
    '2026-07-01',
  );
  rows = (file) => parse(files[file]!, { columns: true });
});

test('meta.xml is valid by the schema of the text guide', async () => {
  const schema = [standard('darwin-core-text-guide.xsd')];
  const result = await validateXML({ xml: [{ fileName: 'meta.xml', contents: files['meta.xml']! }], schema });
  expect(result.errors).toEqual([]);
  const broken = files['meta.xml']!.replace(/<id index="0"\/>/, '<key index="0"/>');
  expect((await validateXML({ xml: [{ fileName: 'meta.xml', contents: broken }], schema })).valid).toBe(false);
});

describe('eml.xml holds what the Ecological Metadata Language 2.2.0 asks for, in its order', () => {
  // written by hand: what it rests on, and how far it goes, stands at its top
  const schema = [readFileSync(join(import.meta.dirname, 'eml-used.xsd'), 'utf8')];
  const errorsOf = async (contents: string): Promise<string[]> =>
    (await validateXML({ xml: [{ fileName: 'eml.xml', contents }], schema })).errors.map(({ message }) => message);

  test('of a season with and without places, and of one without a watch', async () => {
    expect(await errorsOf(files['eml.xml']!)).toEqual([]);
    const placed = watch({
      id: uuid(9),
      place: {
        latitude: 43.5121,
        longitude: -90.6402,
        uncertaintyMetres: 12,
        words: 'here',
        site: null,
        private: false,
      },
    });
    for (const season of [[placed], []]) {
      const shown = season.flatMap((one) => publicWatch(one, survey, observerKeys()) ?? []);
      const { 'eml.xml': eml } = archiveFiles(shown, survey, '2026-07-01');
      expect(await errorsOf(eml!)).toEqual([]);
    }
  });

  const broken: [what: string, from: RegExp, to: string][] = [
    ['no title', /<title>.*<\/title>/, ''],
    ['no creator', /<creator>[^]*?<\/creator>/, ''],
    ['no contact', /<contact>[^]*?<\/contact>/, ''],
    ['a creator without a name', /<individualName>[^]*?<\/individualName>/, ''],
    ['a day that is none', /2026-07-01<\/pubDate>/, 'July 1</pubDate>'],
    [
      'the rights before the abstract',
      /(<abstract>[^]*<\/abstract>)\s*(<intellectualRights>[^]*<\/intellectualRights>)/,
      '$2$1',
    ],
    ['no identifier of the package', / packageId="[^"]*"/, ''],
    ['two things in one place for more', /<\/metadata>/, '<also/></metadata>'],
  ];
  test.each(broken)('%s is not taken', async (_what, from, to) => {
    const changed = files['eml.xml']!.replace(from, to);
    expect(changed).not.toBe(files['eml.xml']);
    expect(await errorsOf(changed)).not.toEqual([]);
  });
});

test('eml.xml says what the dataset is, whatever stands in the settings', () => {
  const settings = { ...survey.settings, name: 'Fen & <Bog>' };
  const { 'eml.xml': eml } = archiveFiles([], { ...survey, settings }, '2026-07-01');
  expect(eml).toContain('<title>Fen &amp; &lt;Bog&gt;</title>');
  expect(files['eml.xml']).toContain('<pubDate>2026-07-01</pubDate>');
});

test('every term is on the published lists', () => {
  const darwinCore = termsIn('darwin-core-terms.csv');
  const humboldt = termsIn('humboldt-terms.csv');
  const terms = [...files['meta.xml']!.matchAll(/ term="(?<base>[^"]+\/)(?<name>\w+)"/g)].map(({ groups }) => groups!);
  expect(terms.length).toBeGreaterThan(50);
  for (const { base, name } of terms) {
    const list = base === 'http://rs.tdwg.org/eco/terms/' ? humboldt : darwinCore;
    expect(list.has(name!), `${base}${name}`).toBe(true);
  }
});

test('every file is described, and every row belongs to an event', () => {
  const events = new Set(rows('event.csv').map(({ eventID }) => eventID));
  for (const file of ['occurrence.csv', 'visits.csv', 'effort.csv']) {
    expect(files['meta.xml']).toContain(`<location>${file}</location>`);
    for (const { id } of rows(file)) expect(events.has(id)).toBe(true);
  }
  const parents = rows('event.csv').filter(({ parentEventID }) => parentEventID !== '');
  expect(parents).toHaveLength(SEASON.length);
  for (const { parentEventID } of parents) expect(events.has(parentEventID)).toBe(true);
  const known = rows('occurrence.csv').map(({ occurrenceID }) => occurrenceID);
  expect(new Set(known).size).toBe(known.length);
  for (const { resourceID, relatedResourceID } of rows('visits.csv')) {
    expect(known).toContain(resourceID);
    expect(known).toContain(relatedResourceID);
  }
});

describe('rows worked by hand', () => {
  test('a watch has its interval with the offset of the day', () => {
    const first = rows('event.csv').find(({ eventID }) => eventID === 'kestrel-fen:2026:1');
    expect(first?.['eventDate']).toBe('2026-05-02T13:00-05:00/2026-05-02T13:15-05:00'); // daylight time: UTC − 5
  });
  test('a queen has her standing name, what she was called before, and who named her', () => {
    const queen = rows('occurrence.csv').find(({ occurrenceID }) => occurrenceID === 'kestrel-fen:2026:1:queens-1-1');
    expect(queen).toMatchObject({
      scientificName: 'Bombus bimaculatus',
      individualCount: '2',
      sex: 'female',
      caste: 'queen',
      previousIdentifications: 'Bombus impatiens',
      identifiedBy: 'coordinator of the Kestrel Fen Spring Queen Survey',
      dateIdentified: '2026-05-03',
    });
  });
  test('a row that is determined in part is two occurrences', () => {
    const parts = rows('occurrence.csv').filter(({ occurrenceID }) =>
      occurrenceID!.startsWith('kestrel-fen:2026:2:queens'),
    );
    expect(parts.map(({ individualCount, identifiedBy }) => [individualCount, identifiedBy])).toEqual([
      ['2', 'coordinator of the Kestrel Fen Spring Queen Survey'],
      ['1', 'observer-1'],
    ]);
  });
  test('a cuckoo has no caste, and a queen counted before is no further individual', () => {
    const cuckoos = rows('occurrence.csv').filter(({ scientificName }) => scientificName === 'Bombus citrinus');
    expect(cuckoos.map(({ caste, individualCount }) => [caste, individualCount])).toEqual([
      ['', '1'],
      ['', ''],
    ]);
  });
  test('the genus is absent from a watch without queens, a species only where all queens were determined', () => {
    const absent = rows('occurrence.csv').filter(({ occurrenceStatus }) => occurrenceStatus === 'absent');
    expect(absent.map(({ id, scientificName }) => [id, scientificName])).toEqual([
      ['kestrel-fen:2026:1', 'Bombus impatiens'],
      ['kestrel-fen:2026:3', 'Bombus'],
    ]);
  });
});

test('the same season gives the same bytes', async () => {
  expect((await zipped(files, '2026-07-01')).equals(await zipped(files, '2026-07-01'))).toBe(true);
});
