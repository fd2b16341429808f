/** What is said of the sky, word by word: hits that `readSky` puts together, and by which others know sky words. */
import type { Cloud } from '../../../shared/vocabularies.js';
import { CLOUDS } from '../../../shared/vocabularies.js';
import type { Words } from '../../../shared/words.js';
import { madeOnce } from '../text.js';
import { hitFinder, inAny, type Hit } from './phrases.js';
import { isFiller } from './said.js';
import { withTurns } from './sun-by-turns.js';
import { amountHits } from './cloud-amounts.js';
import { withoutRainElsewhen } from './rain-elsewhen.js';
import type { SkyHit, SkyWord } from './sky-word.js';
import type { Spoken } from './spoken.js';

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
    ['blue', sky.blue],
    ['bright', sky.bright],
    ['by-turns', sky.byTurns],
    ['hidden', sky.hidden],
    ['holes', sky.holes],
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

const MOSTLY: Readonly<Record<string, Cloud>> = {
  clear: 'few',
  sun: 'few',
  blue: 'few',
  overcast: 'broken',
  'bare-cloud': 'broken',
};
const modifiers = madeOnce((words: Words) =>
  hitFinder(
    words.sky.mostly.map((phrase) => [phrase, true] as const),
    words,
  ),
);

/** "sunny, mostly", "for the most part clear" are few, "cloudy mostly" is broken. `mostly` are such words, in order. */
function lessened(
  hits: readonly SkyHit[],
  mostly: readonly Hit<true>[],
  { tokens }: Spoken,
  words: Words,
): readonly SkyHit[] {
  if (mostly.length === 0) return hits;
  const parted = (from: number, to: number): boolean =>
    tokens.slice(from, to).some((token) => !isFiller(token, words) && !words.sky.covered.includes(token.word));
  const phrase = ({ from, to }: Hit<true>): boolean => to - from > 1;
  const lessens = (hit: SkyHit) => (each: Hit<true>) =>
    each.from >= hit.to
      ? !parted(hit.to, each.from) && each.clause <= hit.clause + 1 && tokens[each.to]?.clause !== each.clause
      : phrase(each) && each.clause === hit.clause && !parted(each.to, hit.from);
  return hits.map((hit): SkyHit => {
    const { value } = hit;
    const by = mostly.find(lessens(hit));
    if (!by) return hit;
    const less = MOSTLY[value.says === 'cloud' ? value.cloud : value.says === 'part' ? value.part : ''];
    if (less === undefined || (value.says === 'part' && value.part === 'bare-cloud' && !phrase(by))) return hit;
    const trust = value.says === 'cloud' && value.trust === 'anywhere' ? 'anywhere' : 'in-place';
    return { ...hit, value: { says: 'cloud', cloud: less, trust } };
  });
}

/** The text without phrases such as "for the most part", whose words mean something else by themselves. */
function withoutPhrases(text: Spoken, phrases: readonly Hit<true>[]): Spoken {
  const isIn = inAny(phrases.filter(({ from, to }) => to - from > 1));
  const tokens = text.tokens.map((token, at) => (isIn(at) ? { ...token, word: '', skipped: false } : token));
  return { ...text, tokens };
}

/** Of two that overlap, the longer one: "a few small clouds" rather than "few". Both lists and the result in order. */
function longer(hits: readonly SkyHit[], others: readonly SkyHit[]): readonly SkyHit[] {
  if (others.length === 0) return hits;
  const overlap = (one: SkyHit, other: SkyHit): boolean => one.from < other.to && other.from < one.to;
  const length = ({ from, to }: SkyHit): number => to - from;
  const kept = others.filter((other) => !hits.some((hit) => overlap(hit, other) && length(hit) >= length(other)));
  return [...hits.filter((hit) => !kept.some((other) => overlap(hit, other))), ...kept].sort((a, b) => a.from - b.from);
}

/** All sky words, left to right. */
export function skyHits(text: Spoken, words: Words): readonly SkyHit[] {
  const mostly = modifiers(words)(text);
  const rest = mostly.length === 0 ? text : withoutPhrases(text, mostly);
  const said = longer(skyFinder(words)(rest), amountHits(rest, words)).filter(
    (hit) => !isDay(hit, text, words) && !isPlaceName(hit, text, words),
  );
  return lessened(withTurns(withoutRainElsewhen(said, text, words), text, words), mostly, text, words);
}
