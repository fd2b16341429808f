/** What is kept of a watch is what is read: every field, in every form the record may take. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Watch } from '../../shared/record.js';
import {
  keepWatch,
  lastWatchesOf,
  nextWatchNumber,
  progressOf,
  queensPerWatch,
  watchByNumber,
  watchesNearOn,
  watchesOf,
  type Store,
} from '../../src/store/index.js';
import { openScratch, scratchPath } from './scratch.js';
import { anyWatch, sampleWatch, SURVEY, uuid } from './sample.js';

const keep = (store: Store, ...watches: Watch[]) =>
  store.writing((transaction) => {
    for (const watch of watches) keepWatch(transaction, watch);
  });
const numbers = (watches: Iterable<Watch>) => [...watches].map(({ number }) => number);

test('any watch comes back as it was kept', async () => {
  const store = await openScratch();
  fc.assert(
    fc.property(anyWatch, (watch) => {
      const undo = new Error('undo');
      expect(() =>
        store.writing((transaction) => {
          keepWatch(transaction, watch);
          expect(watchByNumber(transaction, watch.survey, watch.number)).toEqual(watch);
          throw undo;
        }),
      ).toThrow(undo);
    }),
    { numRuns: 300, seed: 20260506 },
  );
});

test('any watch kept over another leaves nothing of it', async () => {
  const store = await openScratch();
  fc.assert(
    fc.property(anyWatch, anyWatch, (first, second) => {
      const { id, survey, number } = sampleWatch();
      keep(store, { ...first, id, survey, number }, { ...second, id, survey, number });
      expect([...watchesOf(store, survey)]).toEqual([{ ...second, id, survey, number }]);
    }),
    { numRuns: 100, seed: 20260506 },
  );
});

test('a watch that does not fit the schema is refused, and nothing of it kept', async () => {
  const store = await openScratch();
  expect(() => keep(store, sampleWatch({ minutes: -1 }))).toThrow(/minutes/);
  expect(watchByNumber(store, SURVEY, 1)).toBeNull();
});

test('two watches cannot have one number in a survey, and can in two', async () => {
  const store = await openScratch();
  keep(store, sampleWatch({ number: 1 }));
  expect(() => keep(store, sampleWatch({ number: 1, id: uuid(77) }))).toThrow(/UNIQUE/);
  keep(store, sampleWatch({ number: 1, id: uuid(77), survey: 'other-fen' }));
  expect(watchByNumber(store, SURVEY, 1)?.id).toBe(uuid(1));
  expect(watchByNumber(store, 'other-fen', 1)?.id).toBe(uuid(77));
});

test('the next number follows the last, survey by survey', async () => {
  const store = await openScratch();
  expect(nextWatchNumber(store, SURVEY)).toBe(1);
  keep(store, sampleWatch({ number: 1 }), sampleWatch({ number: 2, status: 'set-aside' }));
  expect(nextWatchNumber(store, SURVEY)).toBe(3);
  expect(nextWatchNumber(store, 'other-fen')).toBe(1);
});

test('all watches come by number, of every status, however many there are', async () => {
  const store = await openScratch();
  const statuses = ['confirmed', 'unconfirmed', 'set-aside', 'practice'] as const;
  const watches = Array.from({ length: 401 }, (_, index) =>
    sampleWatch({ number: index + 1, status: statuses[index % 4]! }),
  );
  keep(store, ...watches.toReversed());
  expect([...watchesOf(store, SURVEY)]).toEqual(watches);
  expect([...watchesOf(store, 'other-fen')]).toEqual([]);
});

test('a listing within one reading does not see what is kept meanwhile', async () => {
  const path = scratchPath();
  const store = await openScratch(path);
  const other = await openScratch(path);
  keep(store, ...Array.from({ length: 201 }, (_, index) => sampleWatch({ number: index + 1 })));
  store.reading((connection) => {
    const listing = watchesOf(connection, SURVEY);
    listing.next();
    keep(other, sampleWatch({ number: 202 }));
    expect(numbers(listing).at(-1)).toBe(201);
  });
  expect(numbers(watchesOf(store, SURVEY)).at(-1)).toBe(202);
});

test('the last watches are the observer’s own, the newest first', async () => {
  const store = await openScratch();
  const [wren, lark] = [uuid(1_000_001), uuid(1_000_002)];
  keep(
    store,
    ...Array.from({ length: 25 }, (_, index) =>
      sampleWatch({ number: index + 1, observer: index === 10 ? lark : wren }),
    ),
  );
  const last = lastWatchesOf(store, { survey: SURVEY, observer: wren, most: 20 });
  expect(numbers(last)).toEqual([25, 24, 23, 22, 21, 20, 19, 18, 17, 16, 15, 14, 13, 12, 10, 9, 8, 7, 6, 5]);
  expect(last[0]).toEqual(sampleWatch({ number: 25 }));
  expect(numbers(lastWatchesOf(store, { survey: SURVEY, observer: lark, most: 20 }))).toEqual([11]);
  expect(lastWatchesOf(store, { survey: SURVEY, observer: uuid(9), most: 20 })).toEqual([]);
});

test('progress counts confirmed watches from the first day to the last', async () => {
  const store = await openScratch();
  const observer = uuid(1_000_001);
  const days: [date: string, status: Watch['status']][] = [
    ['2026-04-09', 'confirmed'], // the day before
    ['2026-04-10', 'confirmed'],
    ['2026-05-01', 'practice'],
    ['2026-05-01', 'unconfirmed'],
    ['2026-05-01', 'set-aside'],
    ['2026-06-30', 'confirmed'],
    ['2026-07-01', 'confirmed'], // the day after
  ];
  keep(store, ...days.map(([date, status], index) => sampleWatch({ number: index + 1, date, status })));
  const season = { from: '2026-04-10', to: '2026-06-30' };
  expect(progressOf(store, { survey: SURVEY, observer, ...season })).toBe(2);
  expect(progressOf(store, { survey: SURVEY, observer: uuid(9), ...season })).toBe(0);
});

test('watches near by are of that day and within the distance, the nearest first', async () => {
  const store = await openScratch();
  const place = sampleWatch().place!;
  // A kilometre is 0.0089932° of latitude (6371.0088 km radius), and 0.0123° of longitude at 43.05° N.
  const at = (north: number, east: number) => ({
    ...place,
    latitude: place.latitude! + north,
    longitude: place.longitude! + east,
  });
  keep(
    store,
    sampleWatch({ number: 1, place: at(0.0089, 0) }), // 990 m
    sampleWatch({ number: 2, place: at(0.0091, 0) }), // 1012 m
    sampleWatch({ number: 3, place: at(0, 0.0122) }), // 991 m
    sampleWatch({ number: 4, place: at(0, 0.0124) }), // 1008 m
    sampleWatch({ number: 5, place: at(0, 0), date: '2026-05-05' }),
    sampleWatch({ number: 6, place: at(0, 0), status: 'practice' }),
    sampleWatch({ number: 7, place: at(0.0001, 0), status: 'unconfirmed' }),
    sampleWatch({ number: 8, place: { ...place, latitude: null, longitude: null } }),
    sampleWatch({ number: 9, place: null }),
  );
  const near = { survey: SURVEY, date: '2026-05-04', latitude: place.latitude!, longitude: place.longitude! };
  const found = watchesNearOn(store, { ...near, metres: 1000, most: 50 });
  expect(found.map(({ number }) => number)).toEqual([7, 1, 3]);
  expect(found[1]).toEqual({
    number: 1,
    observer: uuid(1_000_001),
    start: '13:10',
    end: '13:25',
    latitude: place.latitude! + 0.0089,
    longitude: place.longitude,
  });
  expect(watchesNearOn(store, { ...near, metres: 1000, most: 1 })).toHaveLength(1);
});

test('near holds across the 180th meridian', async () => {
  const store = await openScratch();
  keep(store, sampleWatch({ place: { ...sampleWatch().place!, latitude: -16.8, longitude: 179.999 } }));
  const near = { survey: SURVEY, date: '2026-05-04', latitude: -16.8, longitude: -179.999 };
  expect(watchesNearOn(store, { ...near, metres: 1000, most: 50 })).toHaveLength(1); // 213 m
});

test('confirmed watches are counted by their queens, also when they change', async () => {
  const store = await openScratch();
  keep(
    store,
    sampleWatch({ number: 1, total: 0 }),
    sampleWatch({ number: 2, total: 3 }),
    sampleWatch({ number: 3, total: 3 }),
    sampleWatch({ number: 4, total: 3, status: 'practice' }),
  );
  expect(queensPerWatch(store, SURVEY)).toEqual([
    { queens: 0, watches: 1 },
    { queens: 3, watches: 2 },
  ]);
  keep(store, sampleWatch({ number: 1, total: 0 })); // kept again, unchanged
  keep(store, sampleWatch({ number: 2, total: 4 }));
  keep(store, sampleWatch({ number: 3, total: 3, status: 'set-aside' }));
  keep(store, sampleWatch({ number: 4, total: 3, status: 'confirmed' }));
  expect(queensPerWatch(store, SURVEY)).toEqual([
    { queens: 0, watches: 1 },
    { queens: 3, watches: 1 },
    { queens: 4, watches: 1 },
  ]);
  expect(queensPerWatch(store, 'other-fen')).toEqual([]);
});
