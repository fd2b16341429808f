/** `export` and `import` as people run them: the copy of a copy, what is refused, and who may open the files. */
import { mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Package } from 'datapackage';
import { describe, expect, test, vi } from 'vitest';
import type { Watch } from '../../shared/record.js';
import { CommandError } from '../../src/commands/command.js';
import { exportPackage } from '../../src/commands/export.js';
import { importPackage } from '../../src/commands/import.js';
import { season } from '../../src/commands/season.js';
import { writePackage } from '../../src/publish/package/index.js';
import { keepWatch, openStore, watchesOf } from '../../src/store/index.js';
import { plantWatched, queensRow, watch } from '../a-watch.js';
import { uuid } from '../store/sample.js';
import { newFolder, run } from './program.js';

const AT = '2026-05-03T08:00:00.125Z';
const FILES = ['datapackage.json', 'determinations.csv', 'findings.csv', 'plants.csv', 'queens.csv', 'watches.csv'];

const place = {
  latitude: 43.5121,
  longitude: -90.6402,
  uncertaintyMetres: 11.1,
  words: 'pond',
  site: null,
  private: false,
};
const determined = { qualifier: null, count: 1, caste: null, by: 'ines', role: 'coordinator', at: AT } as const;

/** Whatever makes a CSV file break, or a copy lose something. */
const SEASON: readonly Watch[] = [
  watch({
    remark: 'she said "wait",\nthen left; 5,5 m off\r\nbye ',
    habitat: ' räin-wet Wiese 🐝 ',
    place: { ...place, words: 'garden, "the back"', site: 'oak-rise', private: true },
    plants: [
      plantWatched(1, 'Mertensia virginica', 80),
      plantWatched(2, 'white, "fuzzy" thing\n(tall)', 125, {
        name: null,
        rank: null,
        flowers: { value: 125, low: 100, high: 150, about: true, asTyped: '100–150' },
      }),
      plantWatched(3, 'Salix', 9, { rank: 'genus', unit: 'catkin', asTyped: 'willow' }),
    ],
    total: 3,
    queens: [
      queensRow(2, 'Bombus', 3, {
        rank: 'genus',
        asTyped: '3 unknown, "fuzzy"',
        doubt: true,
        withPollen: 1,
        caste: 'queen',
        determinations: [
          { ...determined, taxa: ['Bombus bimaculatus', 'Bombus impatiens'], from: 'photograph' },
          { ...determined, taxa: [], role: 'helper', qualifier: 'cf.', caste: 'worker', from: 'description' },
          { ...determined, taxa: ['Bombus vagans'], count: 2, from: 'photograph' },
        ],
      }),
      queensRow(1, 'Bombus impatiens', 1, { row: 2, seenBefore: 1, asTyped: 'same one' }),
    ],
    photographs: [{ sha256: 'a', type: 'image/jpeg', takenAt: null, queensRow: 1, licence: null }],
    asTyped: { remark: 'bye' },
  }),
  watch({
    number: 2,
    date: '2026-05-03',
    sky: { cloud: 'few', rain: false },
    place: { ...place, latitude: null, longitude: null, words: 'the pond' },
  }),
  watch({ number: 3, date: '2026-05-04', status: 'unconfirmed', statusReason: 'no yes', minutes: 14.5 }),
  watch({ number: 4, date: '2026-05-05', status: 'practice', temperature: null, wind: null, watchers: 3 }),
  watch({
    number: 6,
    date: '2026-05-06',
    status: 'set-aside',
    patch: {
      squareMetres: 9.290304,
      shape: 'rectangle',
      lengthMetres: 3.048,
      widthMetres: 3.048,
      diameterMetres: null,
    },
  }),
  // Told twice, and cold: what the checks notice stands in the findings already.
  watch({
    number: 7,
    date: '2026-05-03',
    temperature: { celsius: 2 },
    findings: [
      {
        check: 'temperature',
        weight: 'ask',
        values: { celsius: 2, leastCelsius: 18.3, mostCelsius: 37.8 },
        reply: 'yes, "cold"',
        at: AT,
      },
      { check: 'same-watch', weight: 'ask', values: { number: 2 }, reply: null, at: AT },
    ],
  }),
].map((one) => ({ ...one, id: uuid(one.number) }));

async function dataWith(watches: readonly Watch[]): Promise<string> {
  const data = newFolder();
  const store = await openStore(join(data, 'queenpost.sqlite'));
  store.writing((transaction) => watches.forEach((one) => keepWatch(transaction, one)));
  store.close();
  return data;
}

async function stored(data: string): Promise<Watch[]> {
  const store = await openStore(join(data, 'queenpost.sqlite'), { readonly: true });
  const watches = [...watchesOf(store, 'kestrel-fen')];
  store.close();
  return watches;
}

const contents = (folder: string): Record<string, string> =>
  Object.fromEntries(readdirSync(folder).map((file) => [file, readFileSync(join(folder, file), 'utf8')]));

const COMMANDS = [exportPackage, importPackage, season];

type Then = BufferEncoding | ((error?: Error | null) => void);

/** Runs a command in this process, which takes a tenth of the time of one of its own. */
async function ran(name: string, args: readonly string[]): Promise<{ stdout: string; error: string }> {
  let stdout = '';
  const spy = vi.spyOn(process.stdout, 'write').mockImplementation((text: string | Uint8Array, then?: Then) => {
    stdout += String(text);
    if (typeof then === 'function') then();
    return true;
  });
  try {
    await COMMANDS.find((command) => command.name === name)?.run(args);
    return { stdout, error: '' };
  } catch (error) {
    if (!(error instanceof CommandError)) throw error;
    return { stdout, error: error.message };
  } finally {
    spy.mockRestore();
  }
}

/** Runs a command that must do its work; its output. */
async function done(name: string, ...args: string[]): Promise<string> {
  const { stdout, error } = await ran(name, args);
  expect(error).toBe('');
  return stdout;
}

/** Runs a command that must not; the lines of its error. */
async function refused(name: string, ...args: string[]): Promise<string[]> {
  const { stdout, error } = await ran(name, args);
  expect(stdout).toBe('');
  return error.split('\n');
}

async function exported(watches: readonly Watch[]): Promise<string> {
  const folder = join(newFolder(), 'copy');
  await done('export', folder, '--data', await dataWith(watches));
  return folder;
}

describe('export', () => {
  test('says what it did, for whose eyes it is, and what is not in it', async () => {
    const folder = join(newFolder(), 'copy');
    const said = await done('export', folder, '--data', await dataWith(SEASON));
    expect(said.trimEnd().split('\n')).toHaveLength(1);
    expect(said).toMatch(/^Wrote 6 watches of Kestrel Fen Spring Queen Survey to .*copy\. Owner's eyes only/);
    expect(said).toMatch(/Not in it: names and addresses, photographs, queries, history/);
    expect(readdirSync(folder).sort()).toEqual(FILES);
  });

  test('nobody but the owner can open the files, in a folder that was there before too', async () => {
    const folder = newFolder();
    mkdirSync(join(folder, 'copy'), { mode: 0o755 });
    writeFileSync(join(folder, 'copy', 'watches.csv'), 'old', { mode: 0o644 });
    await done('export', join(folder, 'copy'), '--data', await dataWith([watch()]));
    const modes = ['.', ...FILES].map((file) => (statSync(join(folder, 'copy', file)).mode & 0o777).toString(8));
    expect(modes).toEqual(['700', ...FILES.map(() => '600')]);
    expect(readdirSync(join(folder, 'copy')).sort()).toEqual(FILES);
  });

  test('leaves a folder alone that holds anything else', async () => {
    const folder = newFolder();
    for (const file of ['thesis.txt', 'a', 'b', 'c']) writeFileSync(join(folder, file), 'mine');
    expect(await refused('export', folder, '--data', await dataWith([watch()]))).toEqual([
      `${folder} holds other files (a, b, c and more); give a new or empty folder.`,
    ]);
    expect(readdirSync(folder).sort()).toEqual(['a', 'b', 'c', 'thesis.txt']);
  });

  test('needs a folder that can be written, and watches', async () => {
    const file = join(newFolder(), 'file');
    writeFileSync(file, '');
    const data = await dataWith([]);
    expect((await refused('export', file, '--data', data))[0]).toContain('cannot be written');
    expect((await refused('export', '--data', data))[0]).toContain('Say where to. Usage: queenpost export DIR');
    expect((await refused('export', 'a', 'b', '--data', data))[0]).toContain('"b" is not expected');
    expect((await refused('export', file, '--data', newFolder()))[0]).toContain('No watches are stored');
  });

  test('the files are what their description says, by another reader of the specification', async () => {
    const folder = await exported(SEASON);
    const { valid, errors, resources } = await Package.load(join(folder, 'datapackage.json'));
    expect({ valid, errors }).toEqual({ valid: true, errors: [] });
    const rows: Record<string, Record<string, unknown>[]> = {};
    for (const resource of resources) {
      expect(resource.valid, resource.name).toBe(true);
      rows[resource.name] = await resource.read({ keyed: true });
      expect(await resource.checkRelations(), resource.name).toBe(true);
    }
    expect(Object.entries(rows).map(([name, all]) => `${name} ${all.length}`)).toEqual([
      'watches 6',
      'plants 8',
      'queens 2',
      'determinations 3',
      'findings 2',
    ]);
    expect(rows['watches']?.[0]).toMatchObject({ watch: 1, private: true, latitude: 43.5121, site: 'oak-rise' });
    expect(rows['plants']?.[1]).toMatchObject({ plant: 'white, "fuzzy" thing\n(tall)', rank: null, flowers_low: 100 });
    expect(rows['determinations']?.[0]).toMatchObject({
      on: new Date(AT),
      taxa: 'Bombus bimaculatus / Bombus impatiens',
    });
    expect(rows['findings']?.[0]?.['values']).toEqual({ celsius: 2, leastCelsius: 18.3, mostCelsius: 37.8 });
  });
});

describe('import', () => {
  test('export, import, export: not a letter differs', async () => {
    const first = await exported(SEASON);
    const data = newFolder();
    expect(await done('import', first, '--data', data)).toMatch(
      /^Took in 6 watches \(8 plants, 2 rows of queens\) from .*; the checks noticed 0 things more\.\n$/,
    );
    const second = join(newFolder(), 'copy');
    await done('export', second, '--data', data);
    expect(contents(second)).toEqual(contents(first));
  });

  test('the watches are those of the files: new ids, the same numbers, stored now, by import', async () => {
    const data = newFolder();
    const before = Date.now();
    await done('import', await exported(SEASON), '--data', data);
    const watches = await stored(data);
    expect(watches.map(({ number }) => number)).toEqual([1, 2, 3, 4, 6, 7]);
    for (const [index, one] of watches.entries()) {
      expect(one.id).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-7/);
      expect(Date.parse(one.storedAt)).toBeGreaterThanOrEqual(before);
      expect(one).toMatchObject({ via: 'import', asTyped: {}, more: {}, history: [], queries: [], photographs: [] });
      const { date, times, status, total, observer, watchers, minutes, remark, habitat } = SEASON[index]!;
      expect(one).toMatchObject({ date, times, status, total, observer, watchers, minutes, remark, habitat });
    }
    expect(new Set(watches.map(({ id }) => id)).size).toBe(6);
    const withoutWords = ({ plants }: Watch) =>
      plants.map((one) => ({ ...one, flowers: { ...one.flowers, asTyped: '' } }));
    expect(watches[0]?.plants).toEqual(withoutWords(SEASON[0]!));
    expect(watches[0]?.queens).toEqual(SEASON[0]?.queens);
    expect(watches[5]?.findings.map(({ check, reply }) => [check, reply])).toEqual([
      ['temperature', 'yes, "cold"'],
      ['same-watch', null],
    ]);
  });

  test('the season is the same', async () => {
    const [data, copy] = [await dataWith(SEASON), newFolder()];
    const folder = join(newFolder(), 'copy');
    await done('export', folder, '--data', data);
    await done('import', folder, '--data', copy);
    expect(await done('season', '--json', '--data', copy)).toBe(await done('season', '--json', '--data', data));
  });

  test('what the checks notice is raised where the files do not say it', async () => {
    const odd = [
      watch({ id: uuid(1), temperature: { celsius: 2 } }),
      watch({ id: uuid(2), number: 2, date: '2026-07-30' }),
    ];
    const data = newFolder();
    expect(await done('import', await exported(odd), '--data', data)).toContain('the checks noticed 2 things more');
    expect((await stored(data)).map(({ findings }) => findings.map(({ check }) => check))).toEqual([
      ['temperature'],
      ['season'],
    ]);
  });

  test('plants that no list has are taken, and told', async () => {
    const plants = [
      plantWatched(1, 'Novaplanta fenensis', 9),
      plantWatched(2, 'pink thing', 3, { name: null, rank: null }),
    ];
    const said = await done('import', await exported([watch({ plants })]), '--data', newFolder());
    expect(said.split('\n')[1]).toBe('Not on the list of plants, taken as written: Novaplanta fenensis.');
  });

  test('nothing is taken in where anything is wrong, and all of it is told', async () => {
    const folder = await exported(SEASON);
    const data = newFolder();
    const edit = (file: string, from: string, to: string) => {
      const path = join(folder, file);
      const text = readFileSync(path, 'utf8');
      expect(text).toContain(from);
      writeFileSync(path, text.replace(from, to));
    };
    edit('watches.csv', '3,wren,2026-05-04', '3,wren,2026-05-44');
    edit('queens.csv', 'Mertensia virginica', 'Viola sororia');
    expect(await refused('import', folder, '--data', data)).toEqual([
      `Nothing was taken in: 2 things are wrong in ${folder}.`,
      'watches.csv, line 6, column date: "2026-05-44" is no day; write it like 2026-05-02',
      'queens.csv, line 4, column plant: watch 1 has no plant "Viola sororia" in plants.csv; it has "Mertensia virginica", "white, \\"fuzzy\\" thing\\n(tall)", "Salix"',
    ]);
    expect(readdirSync(data)).toEqual([]);
  });

  test('numbers that are taken are told beside all else, and what stands is left alone', async () => {
    const data = await dataWith([watch({ id: uuid(6), number: 6 })]);
    const folder = await exported(SEASON);
    writeFileSync(join(folder, 'findings.csv'), 'watch,check,weight,values\n');
    expect(await refused('import', folder, '--data', data)).toEqual([
      `Nothing was taken in: 2 things are wrong in ${folder}.`,
      'watches.csv, line 8, column watch: the survey has a watch 6 already; give this one another number in all files, or import into empty data',
      'findings.csv, line 1, column reply: is missing',
    ]);
    expect((await stored(data)).map(({ number, via }) => [number, via])).toEqual([[6, 'terminal']]);
  });

  test('into data with other numbers it adds its own', async () => {
    const data = await dataWith([watch({ id: uuid(5), number: 5 })]);
    const folder = await exported([watch({ id: uuid(2), number: 2 })]);
    expect(await done('import', folder, '--data', data)).toContain('the checks noticed 1 thing more');
    const [first, second] = await stored(data);
    expect([first?.number, second?.number]).toEqual([2, 5]);
    expect(first?.findings).toMatchObject([{ check: 'same-watch', values: { number: 5 } }]);
  });

  test('of very much that is wrong the first fifty are told', async () => {
    const folder = newFolder();
    const columns =
      'watch,observer,date,start,end,time_zone,minutes,place,latitude,longitude,uncertainty_m,temperature_c,cloud,rain,wind_beaufort,patch_m2,habitat,status,remark';
    const row = (number: number) =>
      `${number},wren,2026-05-02,13:00,13:15,America/Chicago,15,,,,,warm,,,,,,confirmed,\n`;
    const rows = Array.from({ length: 60 }, (_, index) => row(index + 1)).join('');
    writeFileSync(join(folder, 'watches.csv'), `${columns}\n${rows}`);
    writeFileSync(
      join(folder, 'plants.csv'),
      'watch,plant,rank,as_typed,flowers,flowers_low,flowers_high,flowers_about\n',
    );
    writeFileSync(join(folder, 'queens.csv'), 'watch,plant,bee,rank,as_typed,count,doubt\n');
    const said = await refused('import', folder, '--data', newFolder());
    expect(said).toHaveLength(52);
    expect(said[1]).toBe('watches.csv, line 2, column temperature_c: "warm" is no number; write it like 21.5');
    expect(said.at(-1)).toBe('and 10 more.');
  });

  test('a file in another encoding is told by its line, and what it holds does not steer the terminal', async () => {
    const folder = await exported([watch()]);
    const queens = join(folder, 'queens.csv');
    const header = readFileSync(queens, 'utf8');
    writeFileSync(
      queens,
      Buffer.from(`${header}1,1,Mertensia virginica,Bombus,genus,fl\xfcgel,1,0,,,false\n`, 'latin1'),
    );
    const plants = join(folder, 'plants.csv');
    writeFileSync(plants, readFileSync(plants, 'utf8').replace(',false', ',\u009b31m'));
    expect(await refused('import', folder, '--data', newFolder())).toEqual([
      `Nothing was taken in: 2 things are wrong in ${folder}.`,
      'plants.csv, line 2, column flowers_about: " 31m" is not understood; write true or false',
      'queens.csv, line 2: is not UTF-8; save the file with that encoding',
    ]);
  });

  test('needs a folder with the files', async () => {
    const folder = newFolder();
    expect(await refused('import', join(folder, 'nowhere'))).toEqual([
      `There is no folder ${join(folder, 'nowhere')}.`,
    ]);
    expect((await refused('import'))[0]).toContain('Say from where. Usage: queenpost import DIR');
    expect(await refused('import', folder, '--data', newFolder())).toEqual([
      `Nothing was taken in: 3 things are wrong in ${folder}.`,
      'watches.csv: is missing',
      'plants.csv: is missing',
      'queens.csv: is missing',
    ]);
  });
});

test('the program does the same, and ends with an error where it could not', async () => {
  const first = await exported(SEASON);
  const data = newFolder();
  const took = await run(['import', first, '--data', data]);
  expect([took.stderr, took.code]).toEqual(['', 0]);
  const second = join(newFolder(), 'copy');
  const wrote = await run(['export', second, '--data', data]);
  expect([wrote.stderr, wrote.code]).toEqual(['', 0]);
  expect(contents(second)).toEqual(contents(first));
  const again = await run(['import', first, '--data', data]);
  expect([again.stdout, again.code]).toEqual(['', 1]);
  expect(again.stderr).toMatch(/^Nothing was taken in: 6 things are wrong/);
}, 120_000);

/** 10,000 watches of 400 observers over 80 days, three plants and two rows of queens each. */
function* wholeSeason(): Generator<Watch> {
  const digits = (number: number) => String(number).padStart(2, '0');
  for (let number = 1; number <= 10_000; number++) {
    const day = number % 80;
    const hour = digits(8 + (number % 11));
    yield watch({
      number,
      observer: `observer ${number % 400}`,
      date: `2026-${digits(4 + Math.floor(day / 30))}-${digits(1 + (day % 30))}`,
      times: { start: `${hour}:00`, end: `${hour}:15` },
      place: { ...place, latitude: 43 + (number % 1000) / 1000, site: `site ${number % 50}` },
      remark: number % 7 === 0 ? 'windy, "gusts"' : null,
      plants: ['Mertensia virginica', 'Cercis canadensis', 'Viola sororia'].map((name, at) =>
        plantWatched(at + 1, name, 80),
      ),
      queens: [queensRow(1, 'Bombus impatiens', 2), queensRow(2, 'Bombus', 1, { row: 2, rank: 'genus' })],
    });
  }
}

test('a season of 10,000 watches is taken in within ten seconds', async () => {
  const folder = newFolder();
  for (const { file, text } of writePackage(wholeSeason())) writeFileSync(join(folder, file), text, { flag: 'a' });
  const data = newFolder();
  // Time of the processor: what else this machine does is not the program's.
  const before = process.cpuUsage();
  await done('import', folder, '--data', data);
  const { user, system } = process.cpuUsage(before);
  expect((user + system) / 1e6).toBeLessThan(10);
  expect(JSON.parse(await done('season', '--json', '--data', data))).toMatchObject({ effort: { watches: 10_000 } });
}, 300_000);
