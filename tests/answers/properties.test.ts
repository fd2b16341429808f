/** What holds for any text and any value: a value written out reads back to itself, and no text does any harm. */
import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import { describe, expect, test } from 'vitest';
import { printed, PRINTED_KINDS, readFields, readTally, type PrintedReading } from '../../src/answers/index.js';
import { readBee } from '../../src/answers/bee.js';
import { readCount } from '../../src/answers/count.js';
import { readDate } from '../../src/answers/date.js';
import { readPatch } from '../../src/answers/patch.js';
import { readPlace } from '../../src/answers/place.js';
import { readPlant } from '../../src/answers/plant.js';
import { readSky } from '../../src/answers/sky.js';
import { readTemperature } from '../../src/answers/temperature.js';
import { readTimes } from '../../src/answers/times.js';
import { readWind } from '../../src/answers/wind.js';
import { readYesNo } from '../../src/answers/yes-no.js';
import { demo, survey } from '../demo-survey.js';

/** Seeded: the same cases at each run. */
const RUNS = { seed: 20260506, numRuns: 150 };

const pad = (n: number): string => String(n).padStart(2, '0');
const today = Temporal.PlainDate.from(demo.today);
const oneOf = <Value, Form>(value: fc.Arbitrary<Value>, forms: readonly ((value: Value) => Form)[]) =>
  fc.tuple(value, fc.integer({ min: 0, max: forms.length - 1 })).map(([v, at]) => ({ value: v, typed: forms[at]!(v) }));

const reads = (kind: Parameters<typeof printed>[0], typed: string, context = demo): PrintedReading =>
  printed(kind, typed, context);

describe('written out and read back', () => {
  const long = new Intl.DateTimeFormat('en-US', { month: 'long', day: 'numeric', timeZone: 'UTC' });
  const short = new Intl.DateTimeFormat('en-US', { month: 'short', day: 'numeric', timeZone: 'UTC' });
  const british = new Intl.DateTimeFormat('en-GB', { month: 'long', day: 'numeric', timeZone: 'UTC' });
  const full = new Intl.DateTimeFormat('en-US', { weekday: 'long', month: 'long', day: 'numeric', timeZone: 'UTC' });
  const written = (format: Intl.DateTimeFormat) => (day: Temporal.PlainDate) =>
    format.format(Date.UTC(day.year, day.month - 1, day.day));
  const days = fc.integer({ min: 0, max: 200 }).map((back) => today.subtract({ days: back }));

  test('days', () => {
    const forms = oneOf(days, [
      (day) => day.toString(),
      (day) => `${day.month}/${day.day}`,
      (day) => `${pad(day.month)}/${pad(day.day)}/${day.year}`,
      (day) => `${day.month}-${day.day}-${String(day.year).slice(2)}`,
      written(long),
      written(short),
      written(british),
      written(full),
      (day) => `on ${written(long)(day)}, ${day.year}.`,
      (day) => `it was ${written(short)(day).toLowerCase()}`,
    ]);
    fc.assert(
      fc.property(forms, ({ value, typed }) => {
        expect(reads('date', typed), typed).toMatchObject({ state: 'sure', value: value.toString() });
      }),
      RUNS,
    );
  });

  test('times', () => {
    const starts = fc.record({
      minute: fc.integer({ min: 8 * 60, max: 20 * 60 }),
      length: fc.integer({ min: 10, max: 45 }),
    });
    const clock = (minute: number): string => `${pad(Math.floor(minute / 60))}:${pad(minute % 60)}`;
    const half = (minute: number, gap = ' '): string => {
      const hour = Math.floor(minute / 60);
      return `${hour % 12 === 0 ? 12 : hour % 12}:${pad(minute % 60)}${gap}${hour < 12 ? 'am' : 'pm'}`;
    };
    const forms = oneOf(starts, [
      ({ minute, length }) => `${clock(minute)}-${clock(minute + length)}`,
      ({ minute, length }) => `${clock(minute)} to ${clock(minute + length)}`,
      ({ minute, length }) => `${half(minute)} to ${half(minute + length)}`,
      ({ minute, length }) => `from ${half(minute, '')} until ${half(minute + length, '')}`,
      ({ minute, length }) => `${half(minute)}, ${length} minutes`,
      ({ minute, length }) => `started ${half(minute)} and ended ${half(minute + length)}`,
    ]);
    fc.assert(
      fc.property(forms, ({ value, typed }) => {
        const times = { start: clock(value.minute), end: clock(value.minute + value.length) };
        expect(reads('times', typed), typed).toMatchObject({ state: 'sure', value: times });
      }),
      RUNS,
    );
  });

  test('temperatures', () => {
    const round = (celsius: number): number => Math.round(celsius * 10) / 10;
    const fahrenheit = oneOf(fc.integer({ min: 45, max: 120 }), [
      (f) => `${f}`,
      (f) => `${f} F`,
      (f) => `${f}°F`,
      (f) => `about ${f} degrees`,
      (f) => `it was ${f}f`,
    ]);
    fc.assert(
      fc.property(fahrenheit, ({ value, typed }) => {
        expect(reads('temperature', typed), typed).toMatchObject({
          state: 'sure',
          value: { celsius: round(((value - 32) * 5) / 9) },
        });
      }),
      RUNS,
    );
    const celsius = oneOf(
      fc.integer({ min: -90, max: 490 }).map((tenths) => tenths / 10),
      [(c) => `${c} C`, (c) => `${c.toFixed(1)}°C`, (c) => `${c} degrees celsius`],
    );
    fc.assert(
      fc.property(celsius, ({ value, typed }) => {
        expect(reads('temperature', typed), typed).toMatchObject({ state: 'sure', value: { celsius: value } });
      }),
      RUNS,
    );
  });

  test('winds', () => {
    // WMO No. 306, code table 1100 in m/s from memory: the first speed of each force
    const FROM = [0, 0.3, 1.6, 3.4, 5.5, 8, 10.8, 13.9, 17.2];
    const forms = oneOf(fc.integer({ min: 0, max: 8 }), [
      (force) => `Beaufort ${force}`,
      (force) => `force ${force}`,
      (force) => `bft ${force}`,
      (force) => `${((FROM[force]! + (FROM[force + 1] ?? 20.8)) / 2).toFixed(1)} m/s`,
    ]);
    fc.assert(
      fc.property(forms, ({ value, typed }) => {
        expect(reads('wind', typed), typed).toMatchObject({ state: 'sure', value: { beaufort: value } });
      }),
      RUNS,
    );
  });

  test('skies', () => {
    const classOf = (oktas: number): string =>
      oktas === 0 ? 'clear' : oktas < 3 ? 'few' : oktas < 5 ? 'scattered' : oktas < 8 ? 'broken' : 'overcast';
    const forms = oneOf(fc.integer({ min: 0, max: 8 }), [(n) => `${n}/8`, (n) => `${n} oktas`, (n) => `cloud ${n}/8`]);
    fc.assert(
      fc.property(forms, ({ value, typed }) => {
        expect(reads('sky', typed), typed).toMatchObject({
          state: 'sure',
          value: { cloud: classOf(value), rain: false },
        });
      }),
      RUNS,
    );
  });

  test('patches', () => {
    const side = fc.integer({ min: 1, max: 60 });
    const forms = oneOf(fc.tuple(side, side), [
      ([a, b]) => ({ typed: `${a} by ${b} feet`, metres: 0.3048 }),
      ([a, b]) => ({ typed: `${a}x${b} ft`, metres: 0.3048 }),
      ([a, b]) => ({ typed: `${a}' x ${b}'`, metres: 0.3048 }),
      ([a, b]) => ({ typed: `about ${a} m by ${b} m`, metres: 1 }),
      ([a, b]) => ({ typed: `${a} yards by ${b} yards`, metres: 0.9144 }),
    ]);
    fc.assert(
      fc.property(forms, ({ value: [a, b], typed: { typed, metres } }) => {
        const reading = reads('patch', typed);
        expect(reading.state, typed).toBe('sure');
        const { squareMetres, shape } = reading.value as { squareMetres: number; shape: string };
        expect(shape).toBe('rectangle');
        expect(squareMetres).toBeCloseTo(a * b * metres * metres, 2);
      }),
      RUNS,
    );
  });

  test('positions', () => {
    const at = fc.record({
      latitude: fc.integer({ min: 4_240_000, max: 4_620_000 }),
      longitude: fc.integer({ min: 8_860_000, max: 9_360_000 }),
    });
    const degrees = (n: number): string => (n / 100_000).toFixed(5);
    const forms = oneOf(at, [
      ({ latitude, longitude }) => `${degrees(latitude)}, -${degrees(longitude)}`,
      ({ latitude, longitude }) => `${degrees(latitude)} N, ${degrees(longitude)} W`,
      ({ latitude, longitude }) => `N${degrees(latitude)} W${degrees(longitude)}`,
      ({ latitude, longitude }) => `geo:${degrees(latitude)},-${degrees(longitude)}`,
      ({ latitude, longitude }) => `lat ${degrees(latitude)} lon -${degrees(longitude)}`,
    ]);
    fc.assert(
      fc.property(forms, ({ value, typed }) => {
        const reading = reads('place', typed);
        expect(reading.state, typed).toBe('sure');
        const { latitude, longitude, words } = reading.value as { latitude: number; longitude: number; words: string };
        expect([latitude, longitude, words]).toEqual([value.latitude / 100_000, -value.longitude / 100_000, '']);
      }),
      RUNS,
    );
  });

  test('counts', () => {
    const forms = oneOf(fc.integer({ min: 0, max: 9999 }), [
      (n) => String(n),
      (n) => n.toLocaleString('en-US'),
      (n) => `${n} flowers`,
      (n) => `I counted ${n}`,
      (n) => `${n} open ones.`,
    ]);
    fc.assert(
      fc.property(forms, ({ value, typed }) => {
        const exact = { value, low: value, high: value, about: false };
        expect(reads('count', typed, { ...demo, of: 'flowers' }), typed).toMatchObject({ state: 'sure', value: exact });
      }),
      RUNS,
    );
  });

  test('tallies', () => {
    const bees = survey.names.bees.map(({ name }) => name).filter((name) => name !== 'Bombus');
    const plants = ['Mertensia virginica', 'Geranium maculatum', 'Aquilegia canadensis'];
    const rows = fc.uniqueArray(
      fc.record({
        count: fc.integer({ min: 1, max: 9 }),
        bee: fc.constantFrom(
          'Bombus impatiens',
          'Bombus bimaculatus',
          'Bombus griseocollis',
          'Bombus vagans',
          'Bombus affinis',
        ),
        plant: fc.constantFrom(...plants),
      }),
      { minLength: 1, maxLength: 4, selector: ({ bee, plant }) => `${bee} ${plant}` },
    );
    expect(bees).toContain('Bombus affinis');
    const forms = oneOf(rows, [
      (all) => all.map(({ count, bee, plant }) => `${count} ${bee} on ${plant}`).join(', '),
      (all) =>
        all.map(({ count, bee, plant }) => `${count} ${bee.replace('Bombus', 'B.')} on the ${plant}`).join(' and '),
      (all) => all.map(({ count, bee, plant }) => `${plant}: ${count} ${bee}`).join('\n'),
    ]);
    fc.assert(
      fc.property(forms, ({ value, typed }) => {
        const reading = readTally(typed, { ...demo, watched: plants });
        expect(reading.state, typed).toBe('sure');
        const read =
          reading.state === 'sure' ? reading.value.map(({ count, bee, plant }) => ({ count, bee, plant })) : [];
        expect(read, typed).toEqual(value);
      }),
      RUNS,
    );
  });
});

/** Readers by themselves, with the spans they used. */
const READERS = {
  readBee,
  readCount,
  readDate,
  readPatch,
  readPlace,
  readPlant,
  readSky,
  readTally,
  readTemperature,
  readTimes,
  readWind,
  readYesNo,
};

const anyText = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 120 }),
  fc.string({ unit: 'grapheme', maxLength: 120 }),
  fc
    .array(
      fc.constantFrom(
        '2',
        '3:20',
        'pm',
        'to',
        'F',
        '68',
        'sunny',
        'no',
        'yes',
        'on',
        'the',
        'phlox',
        'imp',
        ',',
        '.',
        '/',
        '-',
        'x',
        "'",
        '"',
        'ft',
        'half',
        'about',
        'B.',
        'not',
        'and',
        '\n',
        '🐝',
        '%',
        '(',
        ')',
        '°',
      ),
      { maxLength: 25 },
    )
    .map((words) => words.join(' ')),
);

describe('any text', () => {
  test.each(Object.entries(READERS))('%s gives one of three readings, with spans inside the text', (_name, reader) => {
    fc.assert(
      fc.property(anyText, (text) => {
        const reading = reader(text, { ...demo, watched: ['Phlox'] });
        expect(['sure', 'unsure', 'none']).toContain(reading.state);
        for (const [from, to] of reading.used) expect(0 <= from && from < to && to <= text.length).toBe(true);
      }),
      RUNS,
    );
  });

  test.each(PRINTED_KINDS)('%s is a function of its arguments', (kind) => {
    fc.assert(
      fc.property(anyText, anyText, (text, between) => {
        const first = JSON.stringify(printed(kind, text, demo));
        printed(kind, between, { ...demo, watched: ['Phlox'], of: 'queens' });
        expect(JSON.stringify(printed(kind, text, demo))).toBe(first);
      }),
      { ...RUNS, numRuns: 60 },
    );
  });

  test('no word of a message is lost: each is used or left', () => {
    const wordsIn = (text: string): string[] => text.match(/[\p{L}\p{N}]+/gu) ?? [];
    const said = fc
      .uniqueArray(
        fc.constantFrom(
          'yesterday',
          '2:10 to 2:25 pm',
          '66 F',
          'mostly sunny',
          'light breeze',
          '12 by 8 feet',
          'Virginia bluebells 120',
          'qzx',
          'wvq',
        ),
        { minLength: 1, maxLength: 7 },
      )
      .map((parts) => parts.join(', '));
    fc.assert(
      fc.property(said, (text) => {
        const { fields, left } = readFields(text, demo, ['date', 'times']);
        const used = Object.values(fields).flatMap((reading) =>
          reading.used.flatMap(([from, to]) => wordsIn(text.slice(from, to))),
        );
        for (const word of wordsIn(text)) expect([...used, ...wordsIn(left)], text).toContain(word);
      }),
      RUNS,
    );
  });
});
