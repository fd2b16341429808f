/** One table a check: both sides of each boundary, and what is not known yet. */
import { expect, test } from 'vitest';
import { CHECK_NAMES, CHECKS, findingsOf, sayFinding, type CheckName, type Draft } from '../../src/checks/index.js';
import type { History, NearbyWatch } from '../../shared/history.js';
import type { Place, Watch } from '../../shared/record.js';
import { survey } from '../demo-survey.js';
import { watch } from '../a-watch.js';

const nothingKnown: Draft = {
  id: null,
  observer: null,
  date: null,
  times: null,
  minutes: null,
  place: null,
  temperature: null,
};
const noHistory: History = {
  person: null,
  places: [],
  lastWatches: [],
  sameDayNearby: [],
  progress: { watches: 0, target: 3 },
  fresh: { observer: 'a', report: 'b', watchNumber: 1 },
};

/** `weight {values}`, or `nothing`. */
function finding(name: CheckName, known: Partial<Draft>, past: Partial<History> = {}): string {
  const check = CHECKS.find((one) => one.name === name);
  const found = check?.check({ ...nothingKnown, ...known }, { ...noHistory, ...past }, survey);
  if (!found) return 'nothing';
  expect(check?.weights).toContain(found.weight);
  return `${found.weight} ${JSON.stringify(found.values)}`;
}

const place = (latitude: number | null, longitude: number | null, more: Partial<Place> = {}): Place => ({
  latitude,
  longitude,
  uncertaintyMetres: null,
  words: '',
  site: null,
  private: false,
  ...more,
});

test('every check has a name of the list, and stands once', () => {
  expect(CHECKS.map((check) => check.name)).toEqual([...CHECK_NAMES]);
});

test('nothing is odd about what is not known yet', () => {
  expect(findingsOf(nothingKnown, noHistory, survey)).toEqual([]);
});

test('nothing is odd about an ordinary watch, stored or not', () => {
  expect(findingsOf(watch(), noHistory, survey)).toEqual([]);
});

test('a watch can be odd in several ways', () => {
  const odd = watch({ date: '2026-07-01', minutes: 5, temperature: { celsius: 2 } });
  expect(findingsOf(odd, noHistory, survey).map(({ check, weight }) => `${check} ${weight}`)).toEqual([
    'length query',
    'temperature ask',
    'season query',
  ]);
});

// The protocol of the demo: 15 minutes, 2 more or less.
const lengths: [minutes: number, expected: string][] = [
  [15, 'nothing'],
  [13, 'nothing'],
  [17, 'nothing'],
  [12.9, 'ask'],
  [17.1, 'ask'],
  [7.5, 'ask'], // half
  [7.4, 'query'],
  [30, 'ask'], // double
  [31, 'query'],
  [0, 'query'],
];
test.each(lengths)('%d minutes watched: %s', (minutes, expected) => {
  expect(finding('length', { minutes }).split(' ')[0]).toBe(expected);
});

const spans: [start: string, end: string | null, minutes: number | null, expected: string][] = [
  ['10:40', '10:55', null, 'nothing'],
  ['10:40', '11:00', null, 'ask {"minutes":20,"protocolMinutes":15,"toleranceMinutes":2}'],
  ['10:40', '11:40', null, 'query {"minutes":60,"protocolMinutes":15,"toleranceMinutes":2}'],
  ['10:40', '11:40', 15, 'nothing'], // the clock was stopped in between
  ['10:40', null, null, 'nothing'],
];
test.each(spans)('from %s to %s, %s minutes by the clock: %s', (start, end, minutes, expected) => {
  expect(finding('length', { times: { start, end }, minutes })).toBe(expected);
});

// The protocol of the demo: 18.3 to 37.8 °C.
const temperatures: [celsius: number, expected: string][] = [
  [18.3, 'nothing'],
  [37.8, 'nothing'],
  [18.2, 'keep {"celsius":18.2,"leastCelsius":18.3,"mostCelsius":37.8}'],
  [5, 'keep {"celsius":5,"leastCelsius":18.3,"mostCelsius":37.8}'],
  [4.9, 'ask {"celsius":4.9,"leastCelsius":18.3,"mostCelsius":37.8}'],
  [37.9, 'keep {"celsius":37.9,"leastCelsius":18.3,"mostCelsius":37.8}'],
  [38, 'keep {"celsius":38,"leastCelsius":18.3,"mostCelsius":37.8}'],
  [38.1, 'ask {"celsius":38.1,"leastCelsius":18.3,"mostCelsius":37.8}'],
];
test.each(temperatures)('%d °C: %s', (celsius, expected) => {
  expect(finding('temperature', { temperature: { celsius } })).toBe(expected);
});

const days: [date: string, expected: string][] = [
  ['2026-04-01', 'nothing'],
  ['2026-06-20', 'nothing'],
  ['2026-03-31', 'query {"date":"2026-03-31","fromDate":"2026-04-01","toDate":"2026-06-20"}'],
  ['2026-06-21', 'query {"date":"2026-06-21","fromDate":"2026-04-01","toDate":"2026-06-20"}'],
  ['2025-05-01', 'query {"date":"2025-05-01","fromDate":"2026-04-01","toDate":"2026-06-20"}'],
];
test.each(days)('a watch on %s: %s', (date, expected) => {
  expect(finding('season', { date })).toBe(expected);
});

// The region of the demo: 42.4 to 46.2 north, 93.6 to 88.6 west. One degree north is 111.32 km.
const places: [latitude: number | null, longitude: number | null, uncertaintyMetres: number | null, string][] = [
  [43.5, -90.6, null, 'nothing'],
  [42.4, -90, null, 'nothing'], // on its border
  [46.2, -93.6, null, 'nothing'], // on its corner
  [42.39, -90, null, 'ask {"latitude":42.39,"longitude":-90,"outsideMetres":1113}'],
  [42.39, -90, 1112, 'ask {"latitude":42.39,"longitude":-90,"outsideMetres":1113}'],
  [42.39, -90, 1114, 'nothing'], // may lie inside
  [41.502, -90, null, 'ask {"latitude":41.502,"longitude":-90,"outsideMetres":99965}'],
  [41.501, -90, null, 'query {"latitude":41.501,"longitude":-90,"outsideMetres":100077}'],
  [null, null, null, 'nothing'],
];
test.each(places)('a place at %s, %s ± %s m: %s', (latitude, longitude, uncertaintyMetres, expected) => {
  expect(finding('region', { place: place(latitude, longitude, { uncertaintyMetres }) })).toBe(expected);
});

test('a longitude without its minus is far outside', () => {
  expect(finding('region', { place: place(43.5, 90.6) })).toMatch(/^query/);
});

// What the observer told before: no. 4, 2 May, 13:00 to 13:15, in a garden at 43.5, -90.6.
const told = (more: Partial<Watch> = {}): Partial<History> => ({
  lastWatches: [watch({ number: 4, date: '2026-05-02', place: place(43.5, -90.6, { words: 'garden' }), ...more })],
});
const again: Partial<Draft> = { observer: 'wren', date: '2026-05-02', times: { start: '13:00', end: '13:15' } };
const found = 'ask {"number":4,"date":"2026-05-02","times":{"start":"13:00","end":"13:15"}}';
const sameWatches: [what: string, known: Partial<Draft>, past: Partial<History>, expected: string][] = [
  ['the same again', again, told(), found],
  ['one that ends as it starts', { ...again, times: { start: '12:45', end: '13:00' } }, told(), 'nothing'],
  ['one that ends a minute later', { ...again, times: { start: '12:45', end: '13:01' } }, told(), found],
  ['one that starts as it ends', { ...again, times: { start: '13:15', end: '13:30' } }, told(), 'nothing'],
  ['one that starts a minute before', { ...again, times: { start: '13:14', end: '13:30' } }, told(), found],
  ['the day after', { ...again, date: '2026-05-03' }, told(), 'nothing'],
  ['by somebody else', { ...again, observer: 'robin' }, told(), 'nothing'],
  ['that very watch, mended', { ...again, id: watch().id }, told(), 'nothing'],
  ['one set aside before', again, told({ status: 'set-aside' }), 'nothing'],
  ['one for practice before', again, told({ status: 'practice' }), 'nothing'],
  ['one left unconfirmed before', again, told({ status: 'unconfirmed' }), found],
  ['44 m away', { ...again, place: place(43.5004, -90.6) }, told(), found],
  ['56 m away', { ...again, place: place(43.5005, -90.6) }, told(), 'nothing'],
  ['56 m away, unsure by 60 m', { ...again, place: place(43.5005, -90.6, { uncertaintyMetres: 60 }) }, told(), found],
  ['a place known by words alone', { ...again, place: place(null, null, { words: 'at home' }) }, told(), found],
  ['a start alone', { ...again, times: { start: '13:00', end: null } }, told(), 'nothing'],
  [
    'another site',
    { ...again, place: place(43.5, -90.6, { site: 'oak-rise' }) },
    told({ place: place(43.5, -90.6, { site: 'heron-bend' }) }),
    'nothing',
  ],
];
test.each(sameWatches)('told once already, then %s', (_what, known, past, expected) => {
  expect(finding('same-watch', known, past)).toBe(expected);
});

const nearby = (more: Partial<NearbyWatch> = {}): NearbyWatch => ({
  number: 7,
  observer: 'robin',
  start: '13:00',
  end: '13:15',
  latitude: 43.5,
  longitude: -90.6,
  ...more,
});
const here: Partial<Draft> = { ...again, place: place(43.5, -90.6) };
const sameSpots: [what: string, known: Partial<Draft>, others: NearbyWatch[], expected: string][] = [
  ['at the same time', here, [nearby()], 'query {"number":7,"times":{"start":"13:00","end":"13:15"},"apartMetres":0}'],
  ['just after', here, [nearby({ start: '13:15', end: '13:30' })], 'nothing'],
  [
    'for the last minute',
    here,
    [nearby({ start: '13:14', end: '13:29' })],
    'query {"number":7,"times":{"start":"13:14","end":"13:29"},"apartMetres":0}',
  ],
  [
    '44 m away',
    here,
    [nearby({ latitude: 43.5004 })],
    'query {"number":7,"times":{"start":"13:00","end":"13:15"},"apartMetres":44}',
  ],
  ['56 m away', here, [nearby({ latitude: 43.5005 })], 'nothing'],
  ['being the same person', here, [nearby({ observer: 'wren' })], 'nothing'],
  ['but this place has words alone', { ...again, place: place(null, null) }, [nearby()], 'nothing'],
  [
    'in two places, the nearer told of',
    here,
    [nearby({ number: 6, latitude: 43.5003 }), nearby({ number: 8, latitude: 43.5001 })],
    'query {"number":8,"times":{"start":"13:00","end":"13:15"},"apartMetres":11}',
  ],
];
test.each(sameSpots)('somebody else was there %s', (_what, known, others, expected) => {
  expect(finding('same-spot', known, { sameDayNearby: others })).toBe(expected);
});

test('each finding is said to the observer and to the coordinator, in the units of the survey', () => {
  const odd = { ...again, minutes: 1, temperature: { celsius: 3 }, date: '2026-07-01', place: place(46.3, -90) };
  const past = {
    ...told({ date: '2026-07-01', place: null }),
    sameDayNearby: [nearby({ latitude: 46.3, longitude: -90.0001 })],
  };
  const findings = findingsOf({ ...nothingKnown, ...odd }, { ...noHistory, ...past }, survey);
  expect(findings.map(({ check }) => check)).toEqual([...CHECK_NAMES]);
  expect(findings.map((one) => sayFinding(one, 'observer', survey))).toEqual([
    'That makes 1 minute, and a watch here lasts 15. Is that right?',
    '37 °F would be unusual for a watch. Is that right?',
    'Jul 1, 2026 is outside the season, which runs from Apr 1, 2026 to Jun 20, 2026. Is that the right day?',
    'That place is 6.9 mi outside the area of this survey. Is it right?',
    'You already told me about a watch on Jul 1, 2026, 1:00 – 1:15 PM (no. 4). Is this a different one?',
    'Somebody else told me about a watch at that spot, 1:00 – 1:15 PM. Were those flowers watched twice at the same time?',
  ]);
  expect(findings.map((one) => sayFinding(one, 'coordinator', survey))).toEqual([
    '1 minute was watched; the protocol asks for 15 ± 2. Does this watch count?',
    'It was 37 °F; the protocol asks for 65 °F to 100 °F. Does this watch count?',
    'The day, Jul 1, 2026, is outside the season from Apr 1, 2026 to Jun 20, 2026. Does this watch count?',
    'The place, 46.3, -90, is 6.9 mi outside the region. Does this watch count?',
    'The same observer has watch 4 on Jul 1, 2026, 1:00 – 1:15 PM, which overlaps this one. Are they two watches?',
    'Watch 7, by somebody else, was 26 ft away, 1:00 – 1:15 PM. Did two people report one watch?',
  ]);
});

test('a metric survey reads metric', () => {
  const metric = {
    ...survey,
    settings: { ...survey.settings, temperatureUnit: 'C' as const, lengthUnit: 'm' as const },
  };
  const odd = findingsOf(
    { ...nothingKnown, temperature: { celsius: 3.5 }, place: place(42.39, -90) },
    noHistory,
    metric,
  );
  expect(odd.map((one) => sayFinding(one, 'observer', metric))).toEqual([
    '3.5 °C would be unusual for a watch. Is that right?',
    'That place is 1.1 km outside the area of this survey. Is it right?',
  ]);
});
