/** What stays of a watch whose observer was forgotten. */
import { expect, test } from 'vitest';
import { watchSchema, type Place } from '../../shared/record.js';
import { blurred, withoutObserver } from '../../src/exchange/forget.js';
import { plantWatched, queensRow, watch } from '../a-watch.js';

const place: Place = {
  latitude: 43.51234,
  longitude: -90.64321,
  uncertaintyMetres: 10,
  words: 'my garden',
  site: null,
  private: true,
};

test('a place becomes the centre of its tenth of a degree, as unsure as that is wide', () => {
  // half the diagonal: 0.05° of the meridian is 5,566 m, of the parallel at 43.55° 5,566 × cos 43.55° = 4,034 m
  expect(blurred(place)).toEqual({ ...place, latitude: 43.55, longitude: -90.65, uncertaintyMetres: 6875, words: '' });
});

test('blurring twice changes nothing', () => {
  expect(blurred(blurred(place))).toEqual(blurred(place));
  expect(blurred({ ...place, latitude: null, longitude: null })).toEqual({
    ...place,
    latitude: null,
    longitude: null,
    words: '',
  });
});

test('a site, and that the place was public, do not tell where it was', () => {
  expect(blurred({ ...place, site: 'fen-boardwalk', private: false })).toMatchObject({ site: null, private: true });
});

test('a place that was less sure than its cell stays so', () => {
  expect(blurred({ ...place, uncertaintyMetres: 50_000 }).uncertaintyMetres).toBe(50_000);
});

test('the science stays, words and key go', () => {
  const personal = watch({
    place,
    habitat: 'behind our house',
    remark: 'Maud came by',
    more: { 'shade-hours': 3, neighbour: 'Maud' },
    asTyped: { place: 'my garden' },
    plants: [plantWatched(1, 'Mertensia virginica', 80, { asTyped: "Maud's bluebells" })],
    queens: [queensRow(1, 'Bombus impatiens', 2, { asTyped: 'the one Maud likes' })],
    history: [
      {
        at: '2026-05-03T00:00:00Z',
        by: 'wren',
        role: 'observer',
        through: 'terminal',
        path: '/remark',
        from: 'Maud',
        to: 'Maud came by',
        why: 'Maud said so',
      },
      {
        at: '2026-05-03T00:00:00Z',
        by: 'wren',
        role: 'observer',
        through: 'terminal',
        path: '/wind',
        from: { beaufort: 1 },
        to: { beaufort: 2 },
        why: null,
      },
    ],
  });
  const left = watchSchema.parse(withoutObserver(personal, 'somebody'));
  expect(JSON.stringify(left)).not.toMatch(/Maud|garden|house|wren/);
  expect(left).toMatchObject({
    observer: 'somebody',
    date: personal.date,
    total: personal.total,
    more: { 'shade-hours': 3 },
    plants: [{ name: 'Mertensia virginica', flowers: { value: 80 } }],
    queens: [{ bee: 'Bombus impatiens', count: 2 }],
    history: [
      { path: '/remark', from: null, to: null },
      { path: '/wind', from: { beaufort: 1 }, to: { beaufort: 2 } },
    ],
  });
});
