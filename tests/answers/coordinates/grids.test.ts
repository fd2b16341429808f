/**
 * UTM, MGRS and plus codes against sources that do not share our code: values printed elsewhere (from memory where it
 * is said), the series of Snyder worked here, and another library.
 */
import { decode } from 'pluscodes';
import { expect, test } from 'vitest';
import { readPlace } from '../../../src/answers/place.js';
import { brief, demo } from '../../demo-survey.js';

const show = ({
  latitude,
  longitude,
  uncertaintyMetres,
  words,
}: {
  latitude: number | null;
  longitude: number | null;
  uncertaintyMetres: number | null;
  words: string;
}): string =>
  `${latitude?.toFixed(5)} ${longitude?.toFixed(5)} ±${uncertaintyMetres}${words === '' ? '' : ` [${words}]`}`;

const table: [typed: string, expected: string][] = [
  // CN Tower, Toronto: 17T 630084 4833438 is 43°38'33.24"N 79°23'13.7"W (the article on UTM in Wikipedia, from memory)
  ['17T 630084 4833438', 'sure 43.64256 -79.38714 ±5'],
  ['UTM 17T 630084 4833438', 'sure 43.64256 -79.38714 ±5'],
  ['utm zone 17 north, 630084 E 4833438 N', 'sure 43.64256 -79.38714 ±5'],
  ['17T 630084mE 4833438mN', 'sure 43.64256 -79.38714 ±5'],
  ['17T E630084 N4833438', 'sure 43.64256 -79.38714 ±5'],
  ['zone 17 easting 630084 northing 4833438', 'sure 43.64256 -79.38714 ±5'],
  ['Easting: 630084, Northing: 4833438, Zone: 17T', 'sure 43.64256 -79.38714 ±5'],
  ['630084 E, 4833438 N, zone 17', 'sure 43.64256 -79.38714 ±5'],
  ['630084 4833438 17N', 'sure 43.64256 -79.38714 ±5'],
  ['17 N 630084 4833438', 'sure 43.64256 -79.38714 ±5'],
  ['N 4833438 E 630084 zone 17T', 'sure 43.64256 -79.38714 ±5'],
  ['17T 630,084 4,833,438', 'sure 43.64256 -79.38714 ±5'],
  ['17T 0630084 4833438', 'sure 43.64256 -79.38714 ±5'],
  ['17t 630084 4833438 accurate to 12 m', 'sure 43.64256 -79.38714 ±12'],
  ['tower, 17T 630084 4833438', 'sure 43.64256 -79.38714 ±5 [tower]'],
  // Sydney Opera House, 33.8570° S 151.2150° E (from memory): a letter before N is south
  ['56H 334873 6252266', 'sure -33.85700 151.21500 ±5'],
  ['zone 56 south 334873 6252266', 'sure -33.85700 151.21500 ±5'],
  ['630084 E 4833438 N', 'not understood, place-zone'],
  ['UTM 630084 4833438', 'not understood, place-zone'],
  ['17T630084 4833438', 'sure 43.64256 -79.38714 ±5'],
  ['17T 6300844833438', 'not understood, place-impossible'],
  ['61T 630084 4833438', 'not understood, place-impossible'],
  ['17T PJ 3008 334', 'not understood, place-impossible'],
  ['17T AJ 3008 3343', 'not understood, place-impossible'], // no column A in zone 17
  ['32X MK 3008 3343', 'not understood, place-impossible'], // zone 32 has no band X
];
test.each(table)('grid reference "%s" is %s', (typed, expected) => {
  expect(brief(readPlace(typed, demo), show)).toBe(expected);
});

test('words with numbers are no grid reference', () => {
  expect(readPlace('15 the 12 oaks', demo)).not.toMatchObject({ value: { latitude: expect.any(Number) as number } });
  expect(readPlace('12 Oaks Farm', demo)).toMatchObject({ state: 'sure', value: { latitude: null } });
});

/** Snyder, Map Projections: A Working Manual (USGS Professional Paper 1395), equations 8-17 to 8-25, from memory. */
function bySnyder(zone: number, east: number, north: number): { latitude: number; longitude: number } {
  const a = 6378137;
  const e2 = 0.00669437999;
  const e1 = (1 - Math.sqrt(1 - e2)) / (1 + Math.sqrt(1 - e2));
  const ep2 = e2 / (1 - e2);
  const mu = north / 0.9996 / (a * (1 - e2 / 4 - (3 * e2 ** 2) / 64 - (5 * e2 ** 3) / 256));
  const foot =
    mu +
    ((3 * e1) / 2 - (27 * e1 ** 3) / 32) * Math.sin(2 * mu) +
    ((21 * e1 ** 2) / 16 - (55 * e1 ** 4) / 32) * Math.sin(4 * mu) +
    ((151 * e1 ** 3) / 96) * Math.sin(6 * mu);
  const c = ep2 * Math.cos(foot) ** 2;
  const t = Math.tan(foot) ** 2;
  const w = 1 - e2 * Math.sin(foot) ** 2;
  const n = a / Math.sqrt(w);
  const r = (a * (1 - e2)) / w ** 1.5;
  const d = (east - 500000) / (n * 0.9996);
  const latitude =
    foot -
    ((n * Math.tan(foot)) / r) *
      (d ** 2 / 2 -
        ((5 + 3 * t + 10 * c - 4 * c ** 2 - 9 * ep2) * d ** 4) / 24 +
        ((61 + 90 * t + 298 * c + 45 * t ** 2 - 252 * ep2 - 3 * c ** 2) * d ** 6) / 720);
  const east0 =
    (d - ((1 + 2 * t + c) * d ** 3) / 6 + ((5 - 2 * c + 28 * t - 3 * c ** 2 + 8 * ep2 + 24 * t ** 2) * d ** 5) / 120) /
    Math.cos(foot);
  const degrees = 180 / Math.PI;
  return { latitude: latitude * degrees, longitude: zone * 6 - 183 + east0 * degrees };
}

test.each([
  [15, 471230, 4960112],
  [15, 690800, 4820300],
  [16, 300000, 4750000],
  [13, 812345, 4512345],
])('UTM zone %i %i %i agrees with the printed series', (zone, east, north) => {
  const reading = readPlace(`${zone}T ${east} ${north}`, demo);
  const expected = bySnyder(zone, east, north);
  if (reading.state !== 'sure') throw new Error(reading.ask);
  expect(reading.value.latitude).toBeCloseTo(expected.latitude, 5);
  expect(reading.value.longitude).toBeCloseTo(expected.longitude, 5);
});

/** Column P of zone 17 begins at 600 000 m east, row J at 4 800 000 m north; the square's middle and half its diagonal. */
test.each([
  ['17TPJ3008433438', 630084.5, 4833438.5, 5],
  ['17T PJ 30084 33438', 630084.5, 4833438.5, 5],
  ['17tpj3008433438', 630084.5, 4833438.5, 5],
  ['MGRS 17T PJ 3008 3343', 630085, 4833435, 7.1],
  ['USNG: 17T PJ 3008 3343', 630085, 4833435, 7.1],
  ['17T PJ 300 334', 630050, 4833450, 70.7],
  ['17TPJ3033', 630500, 4833500, 707.1],
  ['17T PJ 3 3', 635000, 4835000, 7071.1],
])('the square %s has its middle at %d east %d north', (typed, east, north, uncertaintyMetres) => {
  const expected = bySnyder(17, east, north);
  const reading = readPlace(typed, demo);
  if (reading.state !== 'sure') throw new Error(reading.ask);
  expect(reading.value.latitude).toBeCloseTo(expected.latitude, 5);
  expect(reading.value.longitude).toBeCloseTo(expected.longitude, 5);
  expect(reading.value.uncertaintyMetres).toBe(uncertaintyMetres);
});

test('S is the band from 32° N where the northing fits it', () => {
  const reading = readPlace('16S 500000 3800000', demo);
  if (reading.state !== 'sure') throw new Error(reading.ask);
  expect(reading.value.latitude).toBeCloseTo(bySnyder(16, 500000, 3800000).latitude, 5);
});

/** From the test data published with Open Location Code (decoding; from memory): code, and the edges of its cell. */
const published: [code: string, south: number, west: number, north: number, east: number][] = [
  ['7FG49Q00+', 20.35, 2.75, 20.4, 2.8],
  ['7FG49QCJ+2V', 20.37, 2.782125, 20.370125, 2.78225],
  ['7FG49QCJ+2VX', 20.3701, 2.78221875, 20.370125, 2.78225],
  ['8FVC2222+22', 47.0, 8.0, 47.000125, 8.000125],
  ['4VCPPQGP+Q9', -41.273125, 174.785875, -41.273, 174.786],
  ['62G20000+', 0.0, -180.0, 1, -179],
  ['22220000+', -90, -180, -89, -179],
];
test.each(published)('plus code %s is the middle of its cell', (code, south, west, north, east) => {
  const reading = readPlace(code, demo);
  if (reading.state !== 'sure') throw new Error(reading.ask);
  expect(reading.value.latitude).toBeCloseTo((south + north) / 2, 5);
  expect(reading.value.longitude).toBeCloseTo((west + east) / 2, 5);
  const high = (north - south) * 111_320;
  const wide = (east - west) * 111_320 * Math.cos((((south + north) / 2) * Math.PI) / 180);
  expect(reading.value.uncertaintyMetres).toBeCloseTo(Math.max(5, Math.hypot(high, wide) / 2), 1);
});

test.each(['86P8G9PH+2C', '86p8g9ph+2c', '86PFC4X2+R9', '86P88W00+', '86P8G9PH+2CQ', '86P8G9PH+'])(
  'plus code %s agrees with another library',
  (code) => {
    const reading = readPlace(code, demo);
    const expected = decode(code.toUpperCase());
    if (reading.state !== 'sure' || !expected) throw new Error(reading.state);
    expect(reading.value.latitude).toBeCloseTo(expected.latitude, 4);
    expect(reading.value.longitude).toBeCloseTo(expected.longitude, 4);
  },
);
