/** A made season is the same each time, valid, and as uneven as a real one. */
import { Temporal } from 'temporal-polyfill';
import { describe, expect, test } from 'vitest';
import { withinProtocol } from '../../shared/protocol.js';
import { watchSchema, type QueensRow, type Watch } from '../../shared/record.js';
import { phenology } from '../../src/season/phenology.js';
import { countedWatch } from '../../src/season/counted.js';
import { survey } from '../demo-survey.js';
import { madeSeason } from './made-season.js';

const SMALL = { observers: 40, watches: 240, survey };
const small = [...madeSeason({ seed: 5, ...SMALL })];
/** Large enough for shares to settle. */
const large = [...madeSeason({ seed: 6, observers: 600, watches: 4000, survey })];

const confirmed = (watches: readonly Watch[]): Watch[] => watches.filter(({ status }) => status === 'confirmed');
const share = <Item>(of: readonly Item[], which: (item: Item) => boolean): number =>
  of.filter(which).length / of.length;
const rowsOf = (watches: readonly Watch[]): QueensRow[] => watches.flatMap(({ queens }) => queens);

function expectBetween(value: number, from: number, to: number): void {
  expect(value).toBeGreaterThanOrEqual(from);
  expect(value).toBeLessThanOrEqual(to);
}

describe('from a seed', () => {
  test('the same gives the same, another gives another', () => {
    expect([...madeSeason({ seed: 5, ...SMALL })]).toEqual(small);
    const other = [...madeSeason({ seed: 4, ...SMALL })];
    expect(other.filter(({ id }, index) => id === small[index]?.id)).toEqual([]);
  });

  test('watches come one by one: the first of a million are there at once', () => {
    const million = madeSeason({ seed: 1, observers: 1000, watches: 1_000_000, survey });
    expect([million.next(), million.next()].map(({ value }) => value?.number)).toEqual([1, 2]);
  });

  test.each([
    [0, 3],
    [1, 1],
    [2, 5],
    [30, 1],
    [100, 7],
  ])('%i watches by %i observers', (watches, observers) => {
    const season = [...madeSeason({ seed: 9, observers, watches, survey })];
    expect(season.length).toBe(watches);
    expect(new Set(season.map(({ observer }) => observer)).size).toBe(Math.min(watches, observers));
  });

  test('without an observer there is no season', () => {
    expect(() => madeSeason({ seed: 1, observers: 0, watches: 1, survey }).next()).toThrow('not 0 and 1');
  });
});

test('every watch is valid', () => {
  for (const watch of [...small, ...large]) expect(watchSchema.parse(watch)).toEqual(watch);
});

test('numbers, ids and storing are in one order, each watch stored on its own evening', () => {
  expect(small.map(({ number }) => number)).toEqual(small.map((_, index) => index + 1));
  for (const watches of [small, large]) {
    const ids = watches.map(({ id }) => id);
    expect(ids).toEqual([...new Set(ids)].sort());
    expect(ids.filter((id) => !/^[0-9a-f-]{14}7[0-9a-f]{3}-[89ab]/.test(id))).toEqual([]);
    const stored = watches.map(({ storedAt }) => storedAt);
    expect(stored).toEqual([...stored].sort());
  }
  for (const { storedAt, date, times, timeZone } of small) {
    const evening = Temporal.Instant.from(storedAt).toZonedDateTimeISO(timeZone);
    expect(evening.toPlainDate().toString()).toBe(date);
    expect(evening.toPlainTime().toString() > times.end).toBe(true);
  }
});

describe('observers', () => {
  const made = new Map<string, Watch[]>();
  for (const watch of small) made.set(watch.observer, [...(made.get(watch.observer) ?? []), watch]);
  const numbers = [...made.values()].map((watches) => watches.length);

  test('forty, by key', () => {
    const keys = Array.from({ length: 40 }, (_, index) => `kf-${String(index + 1).padStart(2, '0')}`);
    expect([...made.keys()].sort()).toEqual(keys);
  });

  test('some watch once, most three to eight times, a few about twenty', () => {
    expect(numbers.filter((number) => number === 1).length).toBeGreaterThan(1);
    expect(share(numbers, (number) => number >= 3 && number <= 9)).toBeGreaterThan(0.6);
    expectBetween(numbers.filter((number) => number >= 15).length, 1, 6);
  });

  test('nobody watches twice at a time', () => {
    for (const watches of made.values()) {
      for (const one of watches) {
        const clash = watches.find(
          ({ number, date, times }) =>
            number > one.number && date === one.date && times.start < one.times.end && one.times.start < times.end,
        );
        expect(clash).toBeUndefined();
      }
    }
  });

  test('a dozen practise, on their first watch', () => {
    const practice = small.filter(({ status }) => status === 'practice');
    expect(practice.length).toBe(12);
    for (const watch of practice) expect(made.get(watch.observer)?.[0]).toBe(watch);
  });

  test('they watch sites and their own gardens', () => {
    const sites = new Set(small.flatMap(({ place }) => place?.site ?? []));
    expect([...sites].sort()).toEqual(survey.settings.sites.map(({ key }) => key).sort());
    expectBetween(
      share(small, ({ place }) => place?.private === true),
      0.2,
      0.7,
    );
    expect(small.filter(({ place }) => place?.private === true && place.site !== null)).toEqual([]);
  });
});

describe('weather and time', () => {
  const degrees = (month: string): number => {
    const read = large.flatMap(({ date, temperature }) =>
      temperature !== null && date.slice(5, 7) === month ? [temperature.celsius] : [],
    );
    return read.reduce((sum, celsius) => sum + celsius, 0) / read.length;
  };

  test('it gets warmer', () => {
    expect(degrees('04')).toBeLessThan(degrees('05'));
    expect(degrees('05')).toBeLessThan(degrees('06'));
  });

  test('some watches are below the protocol, most are within', () => {
    expectBetween(
      share(large, (watch) => withinProtocol(watch, survey.settings)),
      0.55,
      0.85,
    );
    const least = survey.settings.protocol.leastCelsius;
    expectBetween(
      share(large, ({ temperature }) => temperature !== null && temperature.celsius < least),
      0.05,
      0.35,
    );
  });

  test('from nine to six, most about midday', () => {
    const starts = large.map(({ times }) => times.start);
    expect(starts.filter((start) => start < '09:00' || start >= '18:00')).toEqual([]);
    expect(share(starts, (start) => start >= '11:00' && start < '16:00')).toBeGreaterThan(0.6);
  });

  test('all within the season', () => {
    const { from, to } = survey.settings.season;
    expect(large.filter(({ date }) => date < from || date > to)).toEqual([]);
  });
});

describe('plants', () => {
  const listed = new Map(survey.names.plants.map((plant) => [plant.name, plant]));

  test('one to four, each with flowers, named as the list names them', () => {
    for (const { plants } of large) {
      expectBetween(plants.length, 1, 4);
      expect(plants.map(({ plant }) => plant)).toEqual(plants.map((_, index) => index + 1));
      for (const { name, rank, unit, asTyped, flowers } of plants) {
        expect(flowers.value).toBeGreaterThan(0);
        expect(asTyped).not.toBe('');
        const known = name === null ? { rank: null, unit: 'flower' } : listed.get(name);
        expect({ rank, unit }).toEqual({ rank: known?.rank, unit: known?.unit });
      }
    }
  });

  test('many counts are rough, a few are ranges or open upwards, a few plants are on no list', () => {
    const plants = large.flatMap((watch) => watch.plants);
    expectBetween(
      share(plants, ({ flowers }) => flowers.about),
      0.4,
      0.75,
    );
    expect(plants.some(({ flowers: { low, high } }) => low !== null && high !== null && low < high)).toBe(true);
    expect(plants.some(({ flowers: { high } }) => high === null)).toBe(true);
    expectBetween(
      share(plants, ({ name }) => name === null),
      0.001,
      0.02,
    );
  });

  test('what flowers early is seen before what flowers late', () => {
    const datesOf = (name: string): string[] =>
      large.filter(({ plants }) => plants.some((plant) => plant.name === name)).map(({ date }) => date);
    const [breeches, indigo] = [datesOf('Dicentra cucullaria'), datesOf('Baptisia alba')];
    expectBetween(breeches.length, 20, 400);
    expectBetween(indigo.length, 20, 400);
    expect(breeches.filter((date) => date < '2026-04-10' || date > '2026-05-08')).toEqual([]);
    expect(indigo.filter((date) => date < '2026-06-04')).toEqual([]);
  });
});

describe('queens', () => {
  test('about two watches of five have none', () => {
    const zero = share(confirmed(large), ({ queens }) => queens.every(({ caste }) => caste === 'worker'));
    expectBetween(zero, 0.35, 0.45);
  });

  test('counts vary more than chance alone would let them', () => {
    const totals = confirmed(large).map(({ total }) => total);
    const mean = totals.reduce((sum, total) => sum + total, 0) / totals.length;
    const variance = totals.reduce((sum, total) => sum + (total - mean) ** 2, 0) / (totals.length - 1);
    expect(variance / mean).toBeGreaterThan(2.5);
  });

  test('each row is on a plant of its watch, and its parts fit its count', () => {
    for (const { plants, queens, total } of large) {
      expect(queens.map(({ row }) => row)).toEqual(queens.map((_, index) => index + 1));
      for (const { plant, count, seenBefore, withPollen, determinations } of queens) {
        expect(plants.some((one) => one.plant === plant)).toBe(true);
        expect(seenBefore).toBeLessThanOrEqual(count);
        expect(withPollen ?? 0).toBeLessThanOrEqual(count);
        for (const determination of determinations) expect(determination.count).toBeLessThanOrEqual(count);
      }
      expect(total).toBe(queens.reduce((sum, { count, seenBefore }) => sum + count - seenBefore, 0));
    }
  });

  test('a bee is told about on each plant once', () => {
    const keys = large.flatMap(({ number, queens }) =>
      queens.map(({ plant, bee, caste }) => `${number} ${plant} ${bee} ${caste === 'worker'}`),
    );
    expect(keys.length).toBe(new Set(keys).size);
  });

  test('doubts, queens followed to a second plant, and pollen occur here and there', () => {
    const rows = rowsOf(large);
    expectBetween(
      share(rows, ({ doubt }) => doubt),
      0.05,
      0.2,
    );
    expectBetween(
      share(rows, ({ seenBefore }) => seenBefore > 0),
      0.005,
      0.08,
    );
    expectBetween(
      share(rows, ({ withPollen }) => withPollen !== null),
      0.05,
      0.2,
    );
    expectBetween(
      share(rows, ({ bee }) => bee === 'Bombus'),
      0.02,
      0.15,
    );
  });

  test('workers come late', () => {
    const first = large.find(({ queens }) => queens.some(({ caste }) => caste === 'worker'));
    expect(first?.date.slice(5) ?? '').toMatch(/^05/);
  });

  test('nobody is told about long before she can fly', () => {
    const from = new Map(survey.names.bees.map(({ name, queens_from }) => [name, queens_from]));
    for (const { date, queens } of large) {
      for (const { bee } of queens) {
        const first = from.get(bee ?? '') ?? null;
        if (first === null) continue;
        const earliest = Temporal.PlainDate.from(`2026-${first}`).subtract({ days: 3 }).toString();
        expect(date >= earliest, `${bee} on ${date}`).toBe(true);
      }
    }
  });

  test.each([
    ['early', 'Bombus bimaculatus', 'Bombus griseocollis'],
    ['late', 'Bombus griseocollis', 'Bombus fervidus'],
    ['later', 'Bombus auricomus', 'Bombus borealis'],
  ])('half of the %s ones, %s, are seen before half of %s', (_, early, late) => {
    for (const watches of [small, large]) {
      const figure = phenology();
      for (const watch of confirmed(watches)) figure.add(countedWatch(watch));
      const dates = figure.result()?.dates ?? [];
      const half = (bee: string): string => dates.find((one) => one.bee === bee)?.p50 ?? 'never';
      expect(half(early) < half(late), `${half(early)} ${half(late)}`).toBe(true);
    }
  });

  test('the rusty patched one is very rare', () => {
    expectBetween(
      share(rowsOf(large), ({ bee }) => bee === 'Bombus affinis'),
      0.0005,
      0.03,
    );
  });
});

describe('the desk', () => {
  const rows = rowsOf(large);
  const determined = rows.filter(({ determinations }) => determinations.length > 0);
  const isAgainst = ({ bee, determinations }: QueensRow): boolean =>
    bee !== 'Bombus' && determinations.some(({ taxa }) => taxa.length === 1 && taxa[0] !== bee);

  test('about a quarter of the rows are determined, about a fifth of these against the report', () => {
    expectBetween(determined.length / rows.length, 0.2, 0.3);
    expectBetween(share(determined, isAgainst), 0.15, 0.25);
    expect(rowsOf(small).filter(isAgainst).length).toBeGreaterThan(3);
  });

  test('names taken for one another look alike', () => {
    const alike = new Map(survey.names.bees.map(({ name, look_alikes }) => [name, look_alikes]));
    for (const { bee, determinations } of determined) {
      for (const [name, other] of determinations.map(({ taxa }) => taxa)) {
        if (name === undefined || bee === null || bee === 'Bombus' || other !== undefined) continue;
        expect(name === bee || alike.get(name)?.includes(bee), `${name} for ${bee}`).toBe(true);
      }
    }
  });

  test('some are pairs, some cannot be told, some rows are split, some are judged by two', () => {
    const all = determined.flatMap(({ determinations }) => determinations);
    expect(new Set(all.map(({ taxa }) => taxa.length))).toEqual(new Set([0, 1, 2]));
    expect(new Set(all.map(({ role }) => role))).toEqual(new Set(['coordinator', 'helper']));
    expect(determined.some(({ determinations }) => new Set(determinations.map(({ by }) => by)).size > 1)).toBe(true);
    const split = determined.filter(
      ({ determinations: [one, other] }) => one?.by === other?.by && one?.at === other?.at && other !== undefined,
    );
    expect(split.length).toBeGreaterThan(0);
  });

  test('some that were reported as queens turn out to be workers', () => {
    const mended = determined.filter(
      ({ caste, determinations }) => caste !== 'worker' && determinations.some((one) => one.caste === 'worker'),
    );
    expect(mended.length).toBeGreaterThan(0);
  });

  test('a determination from a photograph has one, and all come after the watch was stored', () => {
    for (const { queens, photographs, storedAt, changedAt } of large) {
      for (const { row, determinations } of queens) {
        for (const { at, from } of determinations) {
          expect(at > storedAt && at <= changedAt).toBe(true);
          if (from === 'photograph') expect(photographs.some(({ queensRow }) => queensRow === row)).toBe(true);
        }
      }
    }
  });

  test('a few watches do not count, and it is told why', () => {
    const aside = large.filter(({ status }) => status === 'unconfirmed' || status === 'set-aside');
    expectBetween(aside.length / large.length, 0.015, 0.045);
    expect(aside.every(({ statusReason }) => statusReason !== null)).toBe(true);
    expect(new Set(aside.map(({ status }) => status)).size).toBe(2);
  });

  test('a plant that no list names is put before the coordinator', () => {
    for (const { plants, queries } of large) {
      const unnamed = plants.filter(({ name }) => name === null);
      const asked = queries.filter(({ to }) => to === 'coordinator');
      expect(asked.length).toBe(unnamed.length);
      for (const [index, { asTyped }] of unnamed.entries()) expect(asked[index]?.question).toContain(asTyped);
    }
  });

  test('queries are open, put off and answered; nothing was checked', () => {
    const queries = large.flatMap((watch) => watch.queries.filter(({ to }) => to === 'observer'));
    expect(new Set(queries.map(({ state }) => state))).toEqual(new Set(['open', 'later', 'answered']));
    expect(queries.filter(({ state, answer }) => (state === 'answered') !== (answer !== null))).toEqual([]);
    expect(small.flatMap((watch) => watch.queries).some(({ state }) => state === 'open')).toBe(true);
    expect(large.filter(({ findings }) => findings.length > 0)).toEqual([]);
  });

  test('changes stand in the order in which they were made', () => {
    for (const { history, storedAt } of large) {
      const moments = history.map(({ at }) => at);
      expect(moments).toEqual([...moments].sort());
      expect(moments.filter((at) => at <= storedAt)).toEqual([]);
    }
  });
});
