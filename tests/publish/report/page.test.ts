/** The report page of the demo season. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { CHECK_NAMES } from '../../../src/checks/index.js';
import { LAYOUTS } from '../../../shared/columns.js';
import type { Watch } from '../../../shared/record.js';
import { readPackage } from '../../../src/publish/package/index.js';
import { observerKeys, publicWatch, withoutPlantWords } from '../../../src/publish/public/index.js';
import { doubts, reportPage, watching, type Season } from '../../../src/publish/report/index.js';
import { COVERAGE, seasonFigures } from '../../../src/season/index.js';
import { plantWatched, queensRow, watch } from '../../a-watch.js';
import { survey } from '../../demo-survey.js';
import { uuid } from '../../store/sample.js';

const FOLDER = join(import.meta.dirname, '..', '..', '..', 'demo', 'season');
const texts = Object.fromEntries(LAYOUTS.map(({ file }) => [file, readFileSync(join(FOLDER, file), 'utf8')]));
let ids = 0;
const { watches } = readPackage(texts, {
  survey,
  now: '2026-07-01T00:00:00Z',
  newId: () => uuid((ids += 1)),
  siteOf: () => null,
});

function seasonOf(stored: readonly Watch[]): Season {
  const [where, doubtful, keyOf] = [watching(survey.settings), doubts(survey.settings), observerKeys()];
  for (const one of stored) {
    const shown = publicWatch(one, survey, keyOf);
    if (shown !== null) where.add(shown);
    doubtful.add(one);
  }
  const figures = (protocolOnly: boolean) =>
    seasonFigures(stored.map(withoutPlantWords), { survey, protocolOnly, seed: 1 });
  return { all: figures(false), within: figures(true), watching: where.result(), doubts: doubtful.result() };
}

let season: Season;
let page: string;
beforeAll(async () => {
  season = seasonOf(watches);
  page = await reportPage(season, survey);
});

/** The numbers behind a row's name, of the first row that has it in the section. */
function rowOf(section: string, name: string): string[] {
  const inside = page.split(`<section id="${section}">`)[1]?.split('</section>')[0] ?? '';
  const row = inside.split('<tr>').find((one) => one.startsWith(`<th scope="row">${name}</th>`)) ?? '';
  return [...row.matchAll(/<td[^>]*>(?<cell>[^<]*)<\/td>/g)].map(({ groups }) => groups!['cell']!);
}

describe('the demo season', () => {
  test('is read', () => expect(watches.length).toBeGreaterThan(0));

  test('the page needs nothing from elsewhere, and comes out the same twice', async () => {
    // a link that begins with # leads within the page
    expect(page).not.toMatch(/<script|NaN|undefined|(?:src|href)="(?!#)|url\(|@import/);
    expect(page.match(/<h2>/g)).toHaveLength(10);
    expect(page.match(/<svg/g)?.length).toBeGreaterThan(10);
    expect(await reportPage(season, survey)).toBe(page);
  });

  test('every link leads to a section', () => {
    const links = [...page.matchAll(/href="#(?<id>[^"]+)"/g)].map(({ groups }) => groups!['id']!);
    expect(links).toHaveLength(10);
    for (const id of links) expect(page.split(`id="${id}"`)).toHaveLength(2);
  });

  test('all charts are as wide as the page of a small phone', () => {
    const widths = [...page.matchAll(/viewBox="0 0 (?<width>[\d.]+) /g)].map(({ groups }) => groups!['width']);
    expect(new Set(widths)).toEqual(new Set(['328']));
  });

  test('its numbers are the figures', () => {
    const all = season.all.rates?.find(({ bee, plant }) => bee === null && plant === null);
    expect(rowOf('rates', 'all bees').slice(0, 2)).toEqual([String(all?.queens), all?.per15min?.toFixed(2)]);
  });

  test('what the intervals reached in drawn seasons is quoted', () => {
    const headline = COVERAGE.rows.flatMap(({ headline: share }) => share ?? []);
    expect(page).toContain(`held it in ${Math.min(...headline).toFixed(1)} to ${Math.max(...headline).toFixed(1)} %`);
    // the least and the most of the table that DEVELOPERS.md shows
    expect(page).toContain('held it in 88.5 to 95.6 % of them, the last column in 33.2 to 95.3 %');
  });

  test('a preference is told as it was computed', () => {
    const one = season.all.preference?.find(({ low95, bee }) => low95 !== null && bee === 'Bombus bimaculatus');
    expect(one?.plant).toBe('Cercis canadensis');
    const cells = [one?.used, one?.expected.toFixed(1), one?.ratio?.toFixed(2)].map(String);
    const part = page.split('<h3>two-spotted (B. bimaculatus)</h3>')[1] ?? '';
    const row =
      part.split('<tr>').find((text) => text.startsWith('<th scope="row">redbud (Cercis canadensis)</th>')) ?? '';
    expect(row).toContain(cells.map((cell) => `<td class="n">${cell}</td>`).join(''));
  });

  test('a rate for a hundred flowers is told as it was computed', () => {
    const bluebells = season.all.perFlowers.find(({ plant, bee }) => bee === null && plant === 'Mertensia virginica');
    expect(rowOf('per-flowers', 'Virginia bluebells (Mertensia virginica)')).toEqual([
      String(bluebells?.visits),
      (bluebells!.flowerMinutes / 1500).toFixed(1),
      bluebells?.per15minPer100?.toFixed(2),
      `${bluebells?.poisson?.low95.toFixed(2)} – ${bluebells?.poisson?.high95.toFixed(2)}`,
    ]);
  });

  test('heads and catkins are not drawn beside flowers', () => {
    const flowers = page.split('<h3>On plants counted in flowers</h3>')[1]?.split('<h3>')[0] ?? '';
    expect(flowers).toContain('Mertensia virginica');
    expect(flowers).not.toContain('Taraxacum officinale'); // counted in heads
  });

  test('watches add up over weeks, hours and cells', () => {
    const { watches: all } = season.all.effort;
    const section = (id: string): string => page.split(`<section id="${id}">`)[1]?.split('</section>')[0] ?? '';
    const tables = [...section('when').split('</table>'), ...section('where').split('</table>')];
    const sums = tables.map((table) =>
      [...table.matchAll(/<th scope="row">[^<]*<\/th><td class="n">(?<watches>\d+)</g)].reduce(
        (sum, { groups }) => sum + Number(groups!['watches']),
        0,
      ),
    );
    expect(sums.filter((sum) => sum > 0)).toEqual([all, all, all - season.watching.unplaced]);
  });

  test('the figures stand with and without watches outside the protocol', () => {
    expect(season.within.effort.watches).toBeLessThan(season.all.effort.watches);
    expect(rowOf('doubts', 'watches')).toEqual([
      String(season.all.effort.watches),
      String(season.within.effort.watches),
      String(season.all.effort.watches + season.doubts.unconfirmed.watches),
      '·',
    ]);
  });

  test('nothing of a single place, person or word is on it', () => {
    for (const one of watches) {
      expect(page).not.toContain(one.observer);
      for (const degrees of [one.place?.latitude, one.place?.longitude])
        if (degrees != null) expect(page).not.toContain(String(degrees));
    }
    for (const words of ['my front yard', 'our garden', 'Counted from the bench']) expect(page).not.toContain(words);
  });
});

test('every check has its words', () => {
  expect(Object.keys(survey.report.sections.doubts.checks.names).sort()).toEqual([...CHECK_NAMES].sort());
});

test('without watches it says so', async () => {
  const empty = await reportPage(seasonOf([]), survey);
  expect(empty).toContain('No watch is in this report yet.');
  expect(empty).toContain('There are not enough data for this yet.');
  expect(empty).not.toMatch(/NaN|undefined|Infinity|<svg/);
});

test('one watch is a small sample, and every section says so that has a number of it', async () => {
  const one = watch({
    plants: [plantWatched(1, 'Mertensia virginica', 80), plantWatched(2, 'Salix', 30)],
    queens: [queensRow(1, 'Bombus impatiens', 1)],
    place: {
      latitude: 43.5121,
      longitude: -90.6402,
      uncertaintyMetres: 12,
      words: 'pond',
      site: null,
      private: true,
    },
  });
  const small = await reportPage(seasonOf([one]), survey);
  expect(small).not.toMatch(/NaN|undefined|Infinity/);
  expect(small).toContain('This is a small sample, from one person only');
  expect(small.match(/class="small"/g)).toHaveLength(1 + 9); // the page, and all sections but the map's one cell
  expect(small).toContain('one person made one watch, 15 minutes in all');
  expect(small).toContain('43.550° N, 90.650° W'); // the cell's middle
});

test('watches of two years do not share a week', async () => {
  const two = [watch({ number: 1 }), watch({ number: 2, id: uuid(2), date: '2025-05-02' })];
  const both = await reportPage(seasonOf(two), survey);
  expect(both).toContain('Apr 27 – May 3, 2026');
  expect(both).toContain('Apr 28 – May 4, 2025');
});

test('a language without a word for a check shows its name, and what people typed is shown, not run', async () => {
  const findings = [
    { check: '<script>alert(1)</script>', weight: 'ask', values: {}, reply: null, at: '2026-05-02T00:00:00Z' },
  ] as const;
  const odd = await reportPage(seasonOf([watch({ findings: [...findings] })]), survey);
  expect(odd).toContain('&lt;script&gt;alert(1)&lt;/script&gt;');
  expect(odd).not.toContain('<script');
});
