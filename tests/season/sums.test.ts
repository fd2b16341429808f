/**
 * The figures of a made season, which come from sums over rows of the database, against the same worked out watch by
 * watch from their definitions, with all watches at hand; and against what the program gave when it still read them all.
 */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import student from '@stdlib/stats-base-dists-t-quantile';
import { beforeAll, expect, test } from 'vitest';
import type { QueensRow, Watch } from '../../shared/record.js';
import { seasonFigures, type SeasonFigures } from '../../src/season/index.js';
import { confirmedCountsOf, keepWatch } from '../../src/store/index.js';
import { madeSeason } from '../bench/made-season.js';
import { survey } from '../demo-survey.js';
import { openScratch } from '../store/scratch.js';

const WISH = { survey, protocolOnly: false, seed: 1 };
const watches = [...madeSeason({ seed: 7, observers: 40, watches: 400, survey })];
let figures: SeasonFigures;

beforeAll(async () => {
  const store = await openScratch();
  store.writing((transaction) => {
    for (const watch of watches) keepWatch(transaction, watch);
  });
  figures = seasonFigures(confirmedCountsOf(store, survey.settings.key), { ...WISH, planFor: -50 });
});

/** Equal but for the last digits of sums made in another order. */
function expectClose(found: unknown, expected: unknown, path = ''): void {
  if (typeof expected === 'number') {
    expect(typeof found, path).toBe('number');
    expect(Math.abs((found as number) - expected), path).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(expected)));
  } else if (expected !== null && typeof expected === 'object') {
    expect(Object.keys(found ?? {}), path).toEqual(Object.keys(expected));
    for (const [key, value] of Object.entries(expected)) {
      expectClose((found as Record<string, unknown>)[key], value, `${path}/${key}`);
    }
  } else expect(found, path).toBe(expected);
}

interface OneQueen {
  readonly bee: string;
  readonly before: boolean;
}

/** Queen by queen: the experts name theirs in turn, the coordinator first, the latest first; those seen before stand last. */
function queensOf({ bee, count, seenBefore, caste, determinations }: QueensRow): OneQueen[] {
  const rank = (role: string) => (role === 'coordinator' ? 0 : 1);
  const experts = determinations
    .map((one, given) => ({ ...one, given }))
    .sort((a, b) => rank(a.role) - rank(b.role) || Date.parse(b.at) - Date.parse(a.at) || b.given - a.given);
  const named = experts.flatMap((one) => Array.from({ length: one.count }, () => one));
  return Array.from({ length: count }, (_, at) => {
    const expert = named[at];
    const [name, other] = expert?.taxa ?? [bee ?? 'Bombus'];
    return {
      bee: name === undefined || other !== undefined ? 'Bombus' : name,
      caste: expert?.caste ?? caste,
      before: at >= count - seenBefore,
    };
  }).filter((queen) => queen.caste !== 'worker');
}

const plantName = ({ plants }: Watch, plant: number) => {
  const { name, asTyped } = plants.find((one) => one.plant === plant)!;
  return name ?? asTyped;
};

const season = watches
  .filter(({ status }) => status === 'confirmed')
  .map((watch) => ({
    watch,
    plants: new Set(watch.plants.map(({ plant }) => plantName(watch, plant))),
    queens: watch.queens.flatMap((row) =>
      queensOf(row).map((queen) => ({ ...queen, plant: plantName(watch, row.plant) })),
    ),
  }));
type Counted = (typeof season)[number];
const sum = (numbers: readonly number[]) => numbers.reduce((total, one) => total + one, 0);

/** Queens of a bee in a watch; on a plant visits. Null stands for all. */
const seen = ({ queens }: Counted, bee: string | null, plant: string | null): number =>
  queens.filter((one) => (bee ?? one.bee) === one.bee && (plant === null ? !one.before : one.plant === plant)).length;

test('the season has what makes counting hard', () => {
  expect(season.length).toBeGreaterThan(300);
  expect(watches.some(({ status }) => status !== 'confirmed')).toBe(true);
  const rows = season.flatMap(({ watch }) => watch.queens);
  expect(rows.some(({ determinations }) => determinations.length > 1)).toBe(true);
  expect(rows.some(({ seenBefore }) => seenBefore > 0)).toBe(true);
  expect(rows.some(({ caste }) => caste === 'worker')).toBe(true);
});

test('rows of the database and whole records give the same figures, in whatever order watches come', () => {
  const { planning: _, ...others } = figures;
  expectClose(others, seasonFigures(watches, WISH));
  expectClose(others, seasonFigures(watches.toReversed(), WISH));
});

test('effort and table, watch by watch', () => {
  const { effort, table } = figures;
  expect(effort).toMatchObject({
    watches: season.length,
    minutes: sum(season.map(({ watch }) => watch.minutes)),
    observers: new Set(season.map(({ watch }) => watch.observer)).size,
    zeroWatches: season.filter(({ queens }) => queens.length === 0).length,
  });
  const all = season.flatMap(({ queens }) => queens);
  expect(new Set(table.bees)).toEqual(new Set(all.map(({ bee }) => bee)));
  expect(new Set(table.plants)).toEqual(new Set(season.flatMap(({ plants }) => [...plants])));
  table.bees.forEach((bee, i) => {
    expect(table.queens[i], bee).toBe(all.filter((one) => one.bee === bee && !one.before).length);
    table.plants.forEach((plant, j) => {
      const visits = all.filter((one) => one.bee === bee && one.plant === plant).length;
      expect(table.counts[i]?.[j], `${bee} on ${plant}`).toBe(visits);
    });
  });
});

/** Headline and clustered interval with each cluster's watches at hand. */
function intervalsOf(watched: readonly Counted[], countOf: (one: Counted) => number) {
  const grouped = (keyOf: (one: Counted) => string) =>
    [...new Set(watched.map(keyOf))].map((key) => watched.filter((one) => keyOf(one) === key));
  const observers = grouped(({ watch }) => watch.observer);
  const sites = grouped(({ watch: { observer, place } }) => {
    if (place === null) return `observer ${observer}`;
    if (place.site !== null) return `site ${place.site}`;
    const { latitude, longitude, words } = place;
    if (latitude === null || longitude === null) return `words ${observer} ${words.trim().toLowerCase()}`;
    return `spot ${latitude.toFixed(3)} ${longitude.toFixed(3)}`;
  });
  const rateOf = (some: readonly Counted[]) => sum(some.map(countOf)) / sum(some.map(({ watch }) => watch.minutes));
  const rate = rateOf(watched);

  const by = sites.length < observers.length ? 'site' : 'observer';
  const clusters = by === 'site' ? sites : observers;
  const logs = clusters.map((left) => Math.log(rateOf(watched.filter((one) => !left.includes(one)))));
  const mean = sum(logs) / logs.length;
  const se = Math.sqrt(((logs.length - 1) / logs.length) * sum(logs.map((log) => (log - mean) ** 2)));
  const times = Math.exp(student(0.975, logs.length - 1) * se);
  const none = clusters.length < 10 || rate === 0 || logs.some((log) => !Number.isFinite(log));
  const interval = none
    ? null
    : { low95: (rate * 15) / times, high95: rate * 15 * times, clusters: clusters.length, by };

  const groups = observers.length;
  const minutes = sum(watched.map(({ watch }) => watch.minutes));
  const residuals = observers.map((own) => sum(own.map((one) => countOf(one) - rate * one.watch.minutes)));
  const error = Math.sqrt((groups / (groups - 1)) * sum(residuals.map((one) => one ** 2))) / minutes;
  return { interval, se: groups < 10 ? null : error * 15 };
}

test('rates with their intervals, watch by watch', () => {
  const rates = figures.rates ?? [];
  expect(rates.some(({ interval }) => interval?.by === 'site')).toBe(true);
  let pairs = 0;
  for (const { bee, plant, queens, watches: count, minutes, clustered, interval } of rates) {
    // of the pairs those with some queens, the others are many and all alike
    if (bee !== null && plant !== null && (queens < 3 || pairs++ > 40)) continue;
    const watched = season.filter(({ plants }) => plant === null || plants.has(plant));
    const expected = intervalsOf(watched, (one) => seen(one, bee, plant));
    const said = `${bee} on ${plant}`;
    expect(queens, said).toBe(sum(watched.map((one) => seen(one, bee, plant))));
    expect({ count, minutes }).toEqual({
      count: watched.length,
      minutes: sum(watched.map((one) => one.watch.minutes)),
    });
    expectClose(
      interval && [interval.low95, interval.high95],
      expected.interval && [expected.interval.low95, expected.interval.high95],
      said,
    );
    expect([interval?.clusters, interval?.by], said).toEqual([expected.interval?.clusters, expected.interval?.by]);
    expectClose(clustered?.se ?? null, expected.se, said);
  }
  expect(pairs).toBeGreaterThan(20);
});

test('dispersion and weekly counts, watch by watch', () => {
  const counts = season.map((one) => ({ y: seen(one, null, null), x: one.watch.minutes }));
  const rate = sum(counts.map(({ y }) => y)) / sum(counts.map(({ x }) => x));
  const index = sum(counts.map(({ y, x }) => (y - rate * x) ** 2 / (rate * x))) / (counts.length - 1);
  expectClose(figures.dispersion?.index, index);
  const week = figures.phenology?.weeks.find((one) => one.bee === null && one.week === '2026-W19');
  // 4 May 2026 is a Monday, week 19 by ISO 8601
  const within = season.filter(({ watch }) => watch.date >= '2026-05-04' && watch.date <= '2026-05-10');
  expect(week).toMatchObject({ watches: within.length, queens: sum(within.map((one) => seen(one, null, null))) });
});

test('preference, watch by watch', () => {
  const preference = figures.preference ?? [];
  expect(preference.length).toBeGreaterThan(50);
  const choices = season.filter(({ watch, plants }) => {
    const units = new Set(watch.plants.map(({ unit }) => unit));
    return plants.size > 1 && units.size === 1 && watch.plants.some(({ flowers }) => flowers.value > 0);
  });
  for (const { bee, plant, used, expected } of preference) {
    const visits = (one: Counted, on: string | null) =>
      one.queens.filter((queen) => queen.bee === bee && (on ?? queen.plant) === queen.plant).length;
    const share = ({ watch }: Counted) => {
      const open = watch.plants.map(({ plant: entry, flowers }) => ({ name: plantName(watch, entry), ...flowers }));
      return (
        sum(open.filter(({ name }) => name === plant).map(({ value }) => value)) / sum(open.map(({ value }) => value))
      );
    };
    expect(used, `${bee} on ${plant}`).toBe(sum(choices.map((one) => visits(one, plant))));
    expectClose(expected, sum(choices.map((one) => visits(one, null) * share(one))), `${bee} on ${plant}`);
  }
});

test('every kind of figure is what it was when all watches were read into memory', () => {
  const path = fileURLToPath(new URL('recorded/made-season.json', import.meta.url));
  const recorded = JSON.parse(readFileSync(path, 'utf8')) as Record<string, never>;
  const { diversity, network, phenology } = figures;
  const { richness, shannon, simpson, hill, chao1, coverage } = diversity!;
  const found: Record<string, unknown> = {
    names: figures.names,
    preference: figures.preference?.filter(({ used, se }) => used >= 4 && se !== null),
    network: {
      connectance: network?.connectance,
      nodf: network?.nodf,
      shannon: network?.shannon,
      evenness: network?.evenness,
      h2: network?.h2,
    },
    d: network?.d.bees,
    diversity: { richness, shannon, simpson, hill, chao1, coverage },
    byWatches: diversity?.byWatches.filter((_, at) => at % 40 === 0),
    dispersion: figures.dispersion,
    dates: phenology?.dates.slice(0, 4),
    datesByEffort: phenology?.datesByEffort.slice(0, 4),
    planning: figures.planning,
    intervals: figures.rates
      ?.filter(({ plant }) => plant === null)
      .map(({ bee, plant, clustered, interval }) => ({ bee, plant, clustered, interval })),
  };
  expectClose(found, recorded);
});
