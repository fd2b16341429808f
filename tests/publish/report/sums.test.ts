/** What the report counts by itself: cells, hours, weeks and doubts, each worked by hand. */
import { describe, expect, test } from 'vitest';
import type { Finding, Query, Watch } from '../../../shared/record.js';
import { observerKeys, publicWatch } from '../../../src/publish/public/index.js';
import { doubts, watching } from '../../../src/publish/report/index.js';
import { mondayOf, weeksThrough } from '../../../src/publish/report/weeks.js';
import { queensRow, watch } from '../../a-watch.js';
import { survey } from '../../demo-survey.js';

const at = (latitude: number, longitude: number, isPrivate: boolean): Watch['place'] => ({
  latitude,
  longitude,
  uncertaintyMetres: 10,
  words: 'here',
  site: null,
  private: isPrivate,
});

function watched(all: readonly Partial<Watch>[]) {
  const sums = watching(survey.settings);
  const keyOf = observerKeys();
  for (const one of all) sums.add(publicWatch(watch(one), survey, keyOf)!);
  return sums.result();
}

describe('where and when', () => {
  test('open and private places fall into the same cells of 0.1 degrees', () => {
    const { cells, unplaced } = watched([
      { place: at(43.5121, -90.6402, true) },
      { place: at(43.5999, -90.6001, false), minutes: 14 },
      { place: at(43.6, -90.6001, false) }, // on the edge: the next cell to the north
      { place: null },
    ]);
    expect(cells).toEqual([
      { latitude: 43.55, longitude: -90.65, watches: 2, minutes: 29 },
      { latitude: 43.65, longitude: -90.65, watches: 1, minutes: 15 },
    ]);
    expect(unplaced).toBe(1);
  });

  test('hours between the first and the last stand with none', () => {
    const { hours, first, last } = watched([
      { date: '2026-05-04', times: { start: '09:59', end: '10:14' } },
      { date: '2026-05-02', times: { start: '11:00', end: '11:15' } },
    ]);
    expect(hours).toEqual([
      { hour: 9, watches: 1, minutes: 15 },
      { hour: 10, watches: 0, minutes: 0 },
      { hour: 11, watches: 1, minutes: 15 },
    ]);
    expect([first, last]).toEqual(['2026-05-02', '2026-05-04']);
  });

  test('without a watch there is nothing', () => {
    expect(watched([])).toMatchObject({ cells: [], hours: [], first: null, last: null, unplaced: 0 });
  });
});

describe('a week', () => {
  // ISO 8601: week 1 holds the year's first Thursday; 2026 has 53 weeks
  const table: [week: string, monday: string][] = [
    ['2026-W01', '2025-12-29'],
    ['2026-W18', '2026-04-27'],
    ['2026-W53', '2026-12-28'],
    ['2027-W01', '2027-01-04'],
    ['2024-W01', '2024-01-01'],
  ];
  test.each(table)('%s begins on %s', (week, monday) => expect(mondayOf(week).toString()).toBe(monday));

  test('those between two are there, over the end of a year too', () => {
    expect(weeksThrough(['2027-W01', '2026-W52'])).toEqual(['2026-W52', '2026-W53', '2027-W01']);
    expect(weeksThrough([])).toEqual([]);
  });
});

const finding = (check: string, weight: Finding['weight'], reply: string | null): Finding => ({
  check,
  weight,
  values: {},
  reply,
  at: '2026-05-02T18:30:00Z',
});
const query = (check: string | null, state: Query['state'], answer: string | null): Query => ({
  number: 1,
  check,
  to: 'observer',
  question: 'Is that right?',
  state,
  answer,
  by: null,
  openedAt: '2026-05-02T18:30:00Z',
  closedAt: null,
});

function doubted(all: readonly Partial<Watch>[]) {
  const sums = doubts(survey.settings);
  for (const one of all) sums.add(watch(one));
  return sums.result();
}

describe('doubts', () => {
  test('a finding that is only kept asks nobody; one that was put to somebody has an answer or none', () => {
    const { noticed } = doubted([
      { findings: [finding('temperature', 'keep', null)] },
      { findings: [finding('length', 'ask', 'yes'), finding('temperature', 'keep', null)] },
      { findings: [finding('length', 'query', null)], queries: [query('length', 'later', null)] },
      { queries: [query('length', 'answered', 'it was so'), query(null, 'open', null)] },
      { status: 'set-aside', findings: [finding('length', 'ask', null)] },
    ]);
    expect(noticed).toEqual([
      { check: 'length', watches: 3, asked: 3, answered: 2, open: 1 },
      { check: 'temperature', watches: 2, asked: 0, answered: 0, open: 0 },
      { check: null, watches: 1, asked: 1, answered: 0, open: 1 },
    ]);
  });

  test('outside the protocol: by any reason, by wind, and because it was not told', () => {
    const { outside } = doubted([
      {},
      { wind: { beaufort: 4 } }, // the most that the protocol takes
      { wind: { beaufort: 5 } },
      { wind: null },
      { temperature: { celsius: 5 } },
      { temperature: null, status: 'unconfirmed' },
    ]);
    expect(outside).toEqual({ any: 3, wind: 1, untold: 1 });
  });

  test('names on one person’s word, workers and watches left out', () => {
    const by = {
      taxa: ['Bombus bimaculatus'],
      qualifier: null,
      count: 2,
      caste: null,
      by: 'ines',
      role: 'coordinator',
      at: '2026-05-03T08:00:00Z',
      from: 'photograph',
    } as const;
    const { queens, workers, unconfirmed, practice, setAside } = doubted([
      // two of three determined; the third is doubted and was seen before on another plant
      {
        queens: [
          queensRow(1, 'Bombus impatiens', 3, {
            doubt: true,
            seenBefore: 1,
            determinations: [{ ...by, taxa: [...by.taxa] }],
          }),
        ],
      },
      { queens: [queensRow(1, 'Bombus impatiens', 4, { doubt: true }), queensRow(1, null, 1, { row: 2 })] },
      { queens: [queensRow(1, 'Bombus impatiens', 5, { caste: 'worker' })] },
      { status: 'unconfirmed', minutes: 20, queens: [queensRow(1, 'Bombus impatiens', 7, { seenBefore: 1 })] },
      { status: 'practice', queens: [queensRow(1, 'Bombus impatiens', 9)] },
      { status: 'set-aside', queens: [queensRow(1, 'Bombus impatiens', 9)] },
    ]);
    expect(queens).toEqual({ all: 7, byObserver: 5, doubted: 4, genus: 1 });
    expect(workers).toBe(5);
    expect(unconfirmed).toEqual({ watches: 1, minutes: 20, queens: 6 });
    expect([practice, setAside]).toEqual([1, 1]);
  });
});
