/** Places a person used before and the survey's own sites: "same place as last time", "my garden", "Fen Boardwalk". */
import { editsBetween, fold } from '../answers/index.js';
import { metresBetween } from '../../shared/distance.js';
import type { SavedPlace } from '../../shared/person.js';
import type { Survey } from '../../shared/survey.js';
import type { Scene } from './types.js';

/** What a place is told as; `private` null until it is asked. */
export interface ToldPlace {
  readonly latitude: number | null;
  readonly longitude: number | null;
  readonly uncertaintyMetres: number | null;
  readonly words: string;
}

const LEADING = /^(?:(?:in|at|on|by|near|from|the|our|my|a) )+/;

/** The words by which a place is found again: small letters, no marks, no "at the" before. */
export function placeKey(words: string): string {
  return fold(words)
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim()
    .replace(LEADING, '')
    .trim();
}

/** The saved place of those words, if this person has one. */
export function savedPlaceOf(words: string, places: readonly SavedPlace[]): SavedPlace | null {
  const key = placeKey(words);
  return places.find((place) => place.key === key) ?? null;
}

/** The place used last, for "same place as last time". */
export function lastPlaceOf(places: readonly SavedPlace[]): SavedPlace | null {
  return [...places].sort((a, b) => b.lastUsed.localeCompare(a.lastUsed))[0] ?? null;
}

/** Words of a site's name that tell which it is, at least: "Heron Bend" of "Heron Bend Landing", but not "Landing". */
const LEAST_WORDS_OF_NAME = 2;

/** The one site whose whole name the words hold ("Fen Boardwalk, by the second bench"), or of whose name they begin. */
function siteNamed(key: string, { settings }: Survey): string | null {
  const within = (part: string, whole: string): boolean => ` ${whole} `.includes(` ${part} `);
  const named = settings.sites.filter(({ name }) => within(placeKey(name), key));
  const begun = settings.sites.filter(
    ({ name }) => key.split(' ').length >= LEAST_WORDS_OF_NAME && `${placeKey(name)} `.startsWith(`${key} `),
  );
  const [site, ...others] = named.length > 0 ? named : begun;
  return site === undefined || others.length > 0 ? null : site.key;
}

/** A place that is known by its words alone. */
export const placeNamed = (words: string): ToldPlace => ({
  latitude: null,
  longitude: null,
  uncertaintyMetres: null,
  words,
});

/** Fewer letters are no beginning of a site's name: "oak". */
const LEAST_LETTERS = 5;
/** More letters may hold two slips. */
const LONG_NAME = 9;
/** What goes on behind a site's name: ", north end". */
const BEHIND_NAME = /^(?<name>[^,;(]+)(?<behind>[,;(].*)?$/su;

/**
 * The site whose name the words are, or begin, misspelled or run together too: "oak rise", "Oakrise savana". Its name
 * takes the place of theirs. Sure where more than its first word was said, with one slip at most, or two in a long one.
 */
export function siteMeant(words: string, { settings }: Survey): { words: string; isSure: boolean } | null {
  const { name: said = '', behind = '' } = BEHIND_NAME.exec(words.trim())?.groups ?? {};
  const typed = placeKey(said).replaceAll(' ', '');
  if (typed.length < LEAST_LETTERS) return null;
  const near = settings.sites.flatMap(({ name }) => {
    const key = placeKey(name);
    const letters = key.replaceAll(' ', '');
    const most = typed.length > LONG_NAME ? 2 : 1;
    const beginnings = Array.from({ length: letters.length }, (_, at) => letters.slice(0, at + 1));
    const edits = Math.min(...beginnings.map((beginning) => editsBetween(typed, beginning, most)));
    // "heron" alone may be another place of herons
    const isMore = typed.length > key.split(' ')[0]!.length + 1;
    return edits > most ? [] : [{ name, edits, isSure: isMore }];
  });
  const least = Math.min(...near.map(({ edits }) => edits));
  const [site, ...others] = near.filter(({ edits }) => edits === least);
  return site === undefined || others.length > 0
    ? null
    : { words: `${site.name}${behind.trimEnd()}`, isSure: site.isSure };
}

/** The survey's site a place belongs to: by name, or by lying within its radius. */
export function siteOf(place: ToldPlace, survey: Survey): string | null {
  const { latitude, longitude } = place;
  if (latitude !== null && longitude !== null) {
    const at = { latitude, longitude };
    const near = survey.settings.sites.filter((site) => metresBetween(site, at) <= site.radiusMetres);
    near.sort((a, b) => metresBetween(a, at) - metresBetween(b, at));
    return near[0]?.key ?? null;
  }
  return siteNamed(placeKey(place.words), survey);
}

/** So near, two positions are the same place: two looks of a phone differ by less. Common practice, no source. */
const SAME_PLACE_METRES = 50;

type At = Pick<ToldPlace, 'latitude' | 'longitude'>;
type Positioned = { readonly [Axis in keyof At]: number };

const hasPosition = <Place extends At>(place: Place): place is Place & Positioned =>
  place.latitude !== null && place.longitude !== null;

/** Whether one of them is not where the other is; where a position is missing, the words tell it. */
export function isOtherPlace(one: At & { words: string }, other: At & { words: string }): boolean {
  if (hasPosition(one) && hasPosition(other)) return metresBetween(one, other) > SAME_PLACE_METRES;
  return placeKey(one.words) !== placeKey(other.words);
}

/** The words of the place told before, where they can be those of this position too: a name alone gets its position so. */
export function wordsAt(at: Positioned, before: ToldPlace, survey: Survey): string {
  const site = siteOf(before, survey);
  const isThere =
    site === null
      ? !isOtherPlace(before, { ...at, words: before.words })
      : siteOf({ ...at, uncertaintyMetres: null, words: '' }, survey) === site;
  return isThere ? before.words : '';
}

/** A position as the place that people know there: their own saved one, else a site of the survey, else without a word. */
export function namedPlaceAt(
  at: { readonly latitude: number; readonly longitude: number; readonly uncertaintyMetres: number | null },
  { history, survey }: Scene,
): ToldPlace {
  const near = history.places.flatMap(({ latitude, longitude, uncertaintyMetres, words }) => {
    if (latitude === null || longitude === null || words === '') return [];
    const metres = metresBetween({ latitude, longitude }, at);
    return metres <= SAME_PLACE_METRES ? [{ place: { latitude, longitude, uncertaintyMetres, words }, metres }] : [];
  });
  const [saved] = near.sort((one, other) => one.metres - other.metres);
  if (saved !== undefined) return saved.place;
  const site = siteOf({ ...at, words: '' }, survey);
  return { ...at, words: survey.settings.sites.find(({ key }) => key === site)?.name ?? '' };
}

/** The saved place that a told one is: by its words, unless it is somewhere else, or by its position. */
function savedAs(place: ToldPlace, places: readonly SavedPlace[]): SavedPlace | null {
  if (place.words !== '') {
    const saved = savedPlaceOf(place.words, places);
    return saved === null || isOtherPlace(saved, place) ? null : saved;
  }
  return (
    places.find(
      ({ latitude, longitude, words }) => latitude === place.latitude && longitude === place.longitude && words === '',
    ) ?? null
  );
}

/** Whether a place used before is a private one. */
export const savedAsPrivate = (place: ToldPlace, { history }: Scene): boolean =>
  savedAs(place, history.places)?.private ?? false;

/** Whether this person told of that place in an earlier watch. */
export const wasUsedBefore = (place: ToldPlace, { history }: Scene): boolean => savedAs(place, history.places) !== null;

/** True for a place neither saved by this person nor a site of the survey: it is asked once whether it is private. */
export function isNewPlace(place: ToldPlace, { history, survey }: Scene): boolean {
  return siteOf(place, survey) === null && savedAs(place, history.places) === null;
}
