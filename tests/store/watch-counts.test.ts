/** What the figures are made of is read as it was kept: confirmed watches, every value of theirs that counts. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Watch } from '../../shared/record.js';
import { confirmedCountsOf, keepWatch, type Store } from '../../src/store/index.js';
import { openScratch } from './scratch.js';
import { anyWatch, sampleWatch, SURVEY, uuid } from './sample.js';

const keep = (store: Store, ...watches: Watch[]) =>
  store.writing((transaction) => {
    for (const watch of watches) keepWatch(transaction, watch);
  });
const numbers = (store: Store, survey = SURVEY) => [...confirmedCountsOf(store, survey)].map(({ number }) => number);

/** Of a whole record, what the figures are made of. */
const countsOf = ({ number, observer, status, date, minutes, temperature, wind, place, plants, queens }: Watch) => ({
  number,
  observer,
  status,
  date,
  minutes,
  temperature,
  wind,
  place: place && { site: place.site, latitude: place.latitude, longitude: place.longitude, words: place.words },
  plants: plants.map(({ plant, name, asTyped, unit, flowers: { value } }) => ({
    plant,
    name,
    asTyped,
    unit,
    flowers: { value },
  })),
  queens: queens.map(({ row, plant, bee, count, seenBefore, caste, determinations }) => ({
    row,
    plant,
    bee,
    count,
    seenBefore,
    caste,
    determinations: determinations.map(({ taxa, count: of, caste: as, role, at }) => ({
      taxa,
      count: of,
      caste: as,
      role,
      at,
    })),
  })),
});

test('of any watch, what counts comes back as it was kept', async () => {
  const store = await openScratch();
  fc.assert(
    fc.property(anyWatch, (any) => {
      const watch: Watch = { ...any, status: 'confirmed' };
      const undo = new Error('undo');
      expect(() =>
        store.writing((transaction) => {
          keepWatch(transaction, watch);
          expect([...confirmedCountsOf(transaction, watch.survey)]).toEqual([countsOf(watch)]);
          throw undo;
        }),
      ).toThrow(undo);
    }),
    { numRuns: 300, seed: 20260506 },
  );
});

test('confirmed watches of the survey only, each once, however many there are', async () => {
  const store = await openScratch();
  const statuses = ['confirmed', 'unconfirmed', 'confirmed', 'set-aside', 'practice'] as const;
  const watches = Array.from({ length: 3001 }, (_, index) =>
    sampleWatch({ number: index + 1, status: statuses[index % statuses.length]! }),
  );
  keep(store, ...watches, sampleWatch({ number: 1, id: uuid(9999), survey: 'other-fen' }));
  const confirmed = watches.filter(({ status }) => status === 'confirmed').map(({ number }) => number);
  expect(confirmed.length % 500).not.toBe(0); // a last chunk that is not full
  expect(numbers(store)).toEqual(confirmed);
  expect(numbers(store, 'other-fen')).toEqual([1]);
  expect(numbers(store, 'no-fen')).toEqual([]);
});

test('a full last chunk is the end', async () => {
  const store = await openScratch();
  keep(store, ...Array.from({ length: 1000 }, (_, index) => sampleWatch({ number: index + 1 })));
  expect(numbers(store)).toHaveLength(1000);
});

test('a row that does not fit is said with its watch', async () => {
  const store = await openScratch();
  keep(store, sampleWatch({ number: 7 }));
  store.prepared(`update plants set unit = 'bunch'`).run();
  expect(() => numbers(store)).toThrow(/^Watch 7 does not fit its schema: [^]*unit/);
});
