/** Watches for tests: a plain one, and any that the schema lets through. */
import fc from 'fast-check';
import type { Watch } from '../../shared/record.js';
import {
  CASTES,
  CHANGE_ROLES,
  CLOUDS,
  COUNTING_UNITS,
  PATCH_SHAPES,
  QUERY_STATES,
  ROLES,
  STATUSES,
  WEIGHTS,
} from '../../shared/vocabularies.js';
import { queensRow, watch } from '../a-watch.js';

export const SURVEY = 'kestrel-fen';

/** The n-th id: always the same one. */
export const uuid = (n: number) => `01969f00-0000-7000-8000-${n.toString(16).padStart(12, '0')}`;

/** A watch with a place and one queen; its id follows from its number. */
export const sampleWatch = (changes: Partial<Watch> = {}): Watch =>
  watch({
    id: uuid(changes.number ?? 1),
    survey: SURVEY,
    observer: uuid(1_000_001),
    date: '2026-05-04',
    times: { start: '13:10', end: '13:25' },
    place: {
      latitude: 43.0512,
      longitude: -89.4021,
      uncertaintyMetres: 12.5,
      words: 'boardwalk, north end',
      site: null,
      private: false,
    },
    total: 1,
    queens: [queensRow(1, 'Bombus impatiens', 1)],
    ...changes,
  });

// Text as it can be typed: any letters of any script, quotes, line ends. No lone halves of a letter, which UTF-8 lacks.
const text = fc.string({ unit: 'binary', maxLength: 20 });
const textOrNull = fc.option(text);
const whole = fc.nat({ max: 100_000 });
const wholeOrNull = fc.option(whole);
const atLeastOne = fc.integer({ min: 1, max: 1000 });
// SQLite keeps no minus zero, and JSON neither.
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true }).map((value) => value + 0);
const measure = number(0.001, 1e6);
const twoDigits = (n: number) => String(n).padStart(2, '0');
const time = fc.tuple(fc.nat({ max: 23 }), fc.nat({ max: 59 })).map((parts) => parts.map(twoDigits).join(':'));
const date = fc.integer({ min: 0, max: 20_000 }).map((day) => new Date(day * 86_400_000).toISOString().slice(0, 10));
const instant = fc
  .integer({ min: 0, max: 2_000_000_000_000 })
  .chain((at) => fc.constantFrom(new Date(at).toISOString(), new Date(at).toISOString().replace(/\.\d+Z$/, 'Z')));
const key = fc.stringMatching(/^[a-z][a-z-]{0,8}$/);
const json = fc.jsonValue({ maxDepth: 2 }).map((value) => JSON.parse(JSON.stringify(value)) as never);
const values = fc.dictionary(key, json, { maxKeys: 3, noNullPrototype: true });
const list = <Value>(of: fc.Arbitrary<Value>) => fc.array(of, { maxLength: 3 });

const count = { value: whole, low: wholeOrNull, high: wholeOrNull, about: fc.boolean() };

const plant = fc.record({
  plant: atLeastOne,
  name: textOrNull,
  rank: textOrNull,
  asTyped: text,
  unit: fc.constantFrom(...COUNTING_UNITS),
  flowers: fc.record({ ...count, asTyped: text }),
});

const determination = fc.record({
  taxa: fc.array(text, { maxLength: 2 }),
  qualifier: textOrNull,
  count: atLeastOne,
  caste: fc.option(fc.constantFrom(...CASTES)),
  by: text,
  role: fc.constantFrom(...ROLES),
  at: instant,
  from: fc.constantFrom('photograph' as const, 'description' as const),
});

const queens = fc.record({
  row: atLeastOne,
  plant: atLeastOne,
  bee: textOrNull,
  rank: textOrNull,
  asTyped: text,
  count: atLeastOne,
  seenBefore: whole,
  withPollen: wholeOrNull,
  caste: fc.option(fc.constantFrom(...CASTES)),
  doubt: fc.boolean(),
  determinations: list(determination),
});

/** Any watch that fits the record's schema. */
export const anyWatch: fc.Arbitrary<Watch> = fc.record({
  id: fc.uuid({ version: 7 }),
  number: atLeastOne,
  survey: fc.constantFrom(SURVEY, 'other-fen'),
  dialog: text,
  dialogVersion: atLeastOne,
  observer: text,
  via: text,
  status: fc.constantFrom(...STATUSES),
  statusReason: textOrNull,
  date,
  times: fc.record({ start: time, end: time }),
  timeZone: text,
  minutes: number(0, 300),
  place: fc.option(
    fc.record({
      latitude: fc.option(number(-90, 90)),
      longitude: fc.option(number(-180, 180)),
      uncertaintyMetres: fc.option(measure),
      words: text,
      site: textOrNull,
      private: fc.boolean(),
    }),
  ),
  temperature: fc.option(fc.record({ celsius: number(-10, 50) })),
  sky: fc.option(fc.record({ cloud: fc.constantFrom(...CLOUDS), rain: fc.boolean() })),
  wind: fc.option(fc.record({ beaufort: fc.integer({ min: 0, max: 12 }) })),
  patch: fc.option(
    fc.record({
      squareMetres: measure,
      shape: fc.constantFrom(...PATCH_SHAPES),
      lengthMetres: fc.option(measure),
      widthMetres: fc.option(measure),
      diameterMetres: fc.option(measure),
    }),
  ),
  habitat: textOrNull,
  remark: textOrNull,
  watchers: atLeastOne,
  more: values,
  asTyped: fc.dictionary(key, text, { maxKeys: 3, noNullPrototype: true }),
  plants: list(plant),
  total: whole,
  queens: list(queens),
  photographs: list(
    fc.record({
      sha256: text,
      type: text,
      takenAt: fc.option(instant),
      queensRow: fc.option(atLeastOne),
      licence: textOrNull,
    }),
  ),
  findings: list(
    fc.record({ check: text, weight: fc.constantFrom(...WEIGHTS), values, reply: textOrNull, at: instant }),
  ),
  queries: list(
    fc.record({
      number: atLeastOne,
      check: textOrNull,
      to: fc.constantFrom('observer' as const, 'coordinator' as const),
      question: text,
      state: fc.constantFrom(...QUERY_STATES),
      answer: textOrNull,
      by: textOrNull,
      openedAt: instant,
      closedAt: fc.option(instant),
    }),
  ),
  history: list(
    fc.record({
      at: instant,
      by: text,
      role: fc.constantFrom(...CHANGE_ROLES),
      through: text,
      path: text,
      from: json,
      to: json,
      why: textOrNull,
    }),
  ),
  storedAt: instant,
  changedAt: instant,
});
