/** What is said of the sky, word by word: hits that `readSky` puts together, and by which others know sky words. */
import type { Cloud } from '../../../shared/vocabularies.js';
import { CLOUDS } from '../../../shared/vocabularies.js';
import type { Words } from '../../../shared/words.js';
import { madeOnce } from '../text.js';
import { hitFinder, type Hit } from './phrases.js';
import type { Spoken } from './spoken.js';

/** How far a word is to be trusted outside an answer about the sky: anywhere, among other weather, or only alone. */
export type Trust = 'anywhere' | 'in-place' | 'alone';

/** What is said of a part of the sky, or of its mood. */
export type SkyPart =
  'gloom' | 'sun' | 'bright' | 'gaps' | 'haze' | 'some-cloud' | 'few-clouds' | 'many-clouds' | 'bare-cloud';

export type SkyWord =
  | { readonly says: 'cloud'; readonly cloud: Cloud; readonly trust: Trust }
  | { readonly says: 'part'; readonly part: SkyPart }
  | { readonly says: 'vague'; readonly offer: readonly Cloud[]; readonly rain: boolean }
  | { readonly says: 'rain'; readonly trust: Trust }
  | { readonly says: 'no-rain' | 'nothing' };

export type SkyHit = Hit<SkyWord>;

function* skyTable({ sky }: Words): Iterable<readonly [string, SkyWord]> {
  const sections = [
    [sky.clouds, 'anywhere'],
    [sky.cloudsInPlace, 'in-place'],
    [sky.cloudsAlone, 'alone'],
  ] as const;
  for (const phrase of sky.passedOver) yield [phrase, { says: 'nothing' }];
  for (const phrase of sky.noRain) yield [phrase, { says: 'no-rain' }];
  for (const { words, offer, rain } of sky.vague) {
    for (const phrase of words) yield [phrase, { says: 'vague', offer, rain }];
  }
  for (const [section, trust] of sections) {
    for (const cloud of CLOUDS) for (const phrase of section[cloud]) yield [phrase, { says: 'cloud', cloud, trust }];
  }
  const parts = [
    ['gloom', sky.gloom],
    ['sun', sky.sun],
    ['bright', sky.bright],
    ['gaps', sky.gaps],
    ['haze', sky.haze],
    ['some-cloud', sky.someCloud],
    ['few-clouds', sky.fewClouds],
    ['many-clouds', sky.manyClouds],
    ['bare-cloud', sky.bareCloud],
  ] as const;
  for (const [part, phrases] of parts) for (const phrase of phrases) yield [phrase, { says: 'part', part }];
  for (const phrase of sky.rain) yield [phrase, { says: 'rain', trust: 'anywhere' }];
  for (const phrase of sky.rained) yield [phrase, { says: 'rain', trust: 'alone' }];
}

const skyFinder = madeOnce((words: Words) => hitFinder(skyTable(words), words));
const placeNouns = madeOnce(({ notWeatherBefore }: Words['weather']) => new Set(notWeatherBefore));
const dayWords = madeOnce(({ date }: Words) => new Set([...Object.keys(date.months), ...Object.keys(date.weekdays)]));

/** A day of the month or an hour, as in "Sun 3 May", "Sun 10:15"; not the 68 of "sun, 68". */
const isDayNumber = (word: string): boolean => /^\d/.test(word) && Number.parseInt(word, 10) <= 31;

/** "Sun May 3", "Sun 5/3", "Sun," before a date: the day of the week. */
function isDay(hit: SkyHit, { tokens }: Spoken, words: Words): boolean {
  const [only] = tokens.slice(hit.from, hit.to);
  if (!only || hit.to - hit.from !== 1 || !words.sky.alsoDays.includes(only.word)) return false;
  const next = tokens[hit.to];
  return next !== undefined && (isDayNumber(next.word) || dayWords(words).has(next.word));
}

/** "Clear Lake", "Blue Sky Farm", "a sunny hillside": the word belongs to a place. */
export const isPlaceName = (hit: Hit<unknown>, { tokens }: Spoken, words: Words): boolean => {
  const next = tokens[hit.to];
  return next?.clause === hit.clause && placeNouns(words.weather).has(next.word);
};

/** "sunny, mostly" is few, "cloudy mostly" is broken. */
function lessened(hit: SkyHit, { tokens }: Spoken, { sky }: Words): SkyHit {
  const { value } = hit;
  const next = tokens[hit.to];
  const ends = next !== undefined && tokens[hit.to + 1]?.clause !== next.clause && next.clause <= hit.clause + 1;
  if (value.says !== 'cloud' || !ends || !sky.mostly.includes(next.word)) return hit;
  if (value.cloud !== 'clear' && value.cloud !== 'overcast') return hit;
  return { ...hit, value: { ...value, cloud: value.cloud === 'clear' ? 'few' : 'broken' } };
}

/** All sky words, left to right. */
export const skyHits = (text: Spoken, words: Words): readonly SkyHit[] =>
  skyFinder(words)(text)
    .filter((hit) => !isDay(hit, text, words) && !isPlaceName(hit, text, words))
    .map((hit) => lessened(hit, text, words));
