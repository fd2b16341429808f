/** The place of a watch: words, coordinates, and one of the survey's sites. */
import { fold, saysAnyOf, type Context } from '../answers/index.js';
import type { Place } from '../../shared/record.js';
import { metresPerUnit } from '../../shared/units.js';
import type { WatchColumn } from '../../shared/words/sheets.js';
import type { Complaint } from './complaint.js';
import type { Readers } from './readers.js';
import { notClear, notUnderstood } from './say.js';
import { withUnit, wrong, type Told } from './told.js';
import { truthOf } from './value.js';

type Only = (column: WatchColumn) => Told | null;
type Position = Pick<Place, 'latitude' | 'longitude' | 'uncertaintyMetres'>;

/** A place, and whether it is private; null: nobody said so. */
export interface PlaceTold extends Omit<Place, 'private'> {
  readonly private: boolean | null;
}

const NOWHERE: Position = { latitude: null, longitude: null, uncertaintyMetres: null };

/** As the readers give it. */
type PlaceRead = Position & { readonly words: string };

const written = ({ latitude, longitude, words }: PlaceRead): string =>
  latitude === null || longitude === null ? words : `${latitude}, ${longitude}`;

/** Latitude and longitude in columns of their own. */
function positionOf(only: Only, readers: Readers, complaints: Complaint[]): Position | null {
  const [latitude, longitude] = [only('latitude'), only('longitude')];
  if (latitude === null && longitude === null) return null;
  if (latitude === null || longitude === null) {
    complaints.push(wrong((latitude ?? longitude)!, 'stands alone; write latitude and longitude, or neither'));
    return null;
  }
  const reading = readers.place(`${latitude.text}, ${longitude.text}`);
  if (reading.state === 'sure' && reading.value.latitude !== null) return reading.value;
  if (reading.state === 'unsure') {
    // the longitude without its minus, or the two the wrong way round
    const offers = reading.offer.map((place) => `${place.latitude} and ${place.longitude}`);
    complaints.push(notClear(longitude, offers));
  } else complaints.push(notUnderstood(latitude, '43.5121, and its longitude like -90.6402'));
  return null;
}

/** Metres; null where none is told. */
function uncertaintyOf(told: Told | null, complaints: Complaint[]): number | null {
  if (told === null) return null;
  const { number, unit } = /^(?<number>\d+(?:\.\d+)?)\s*(?<unit>m|ft)?$/.exec(withUnit(told))?.groups ?? {};
  const metres = Number(number) * metresPerUnit[unit === 'ft' ? 'ft' : 'm'];
  if (number !== undefined && metres > 0) return metres;
  complaints.push(notUnderstood(told, '10'));
  return null;
}

/** The survey's site of that key or name. */
function siteNamed(text: string, { survey }: Context): { key: string; name: string } | null {
  const named = fold(text).trim();
  return survey.sites.find(({ key, name }) => fold(key) === named || fold(name) === named) ?? null;
}

export function readWhere(
  only: Only,
  siteOf: (place: Omit<Place, 'site' | 'private'>) => string | null,
  readers: Readers,
  context: Context,
  complaints: Complaint[],
): PlaceTold | null {
  const [told, site] = [only('place'), only('site')];
  const isPrivate = truthOf(only('private'), readers.yesNo, complaints);
  const uncertainty = uncertaintyOf(only('uncertainty'), complaints);
  const position = positionOf(only, readers, complaints);
  const known = site === null ? null : siteNamed(site.text, context);
  if (site !== null && known === null && told !== null) {
    const sites = context.survey.sites.map(({ key }) => key).join(', ');
    complaints.push(wrong(site, `is no site of the survey; known: ${sites}`));
  }
  const read = told ?? (known === null ? site : null);
  const words = known !== null && told === null && position === null ? known.name : '';
  const place = read === null ? { ...NOWHERE, words } : placeIn(read, position, readers, complaints);
  if (place === null) return null;
  const where = { ...place, ...position, words: place.words };
  if (where.words === '' && where.latitude === null) return null;
  const whole = {
    ...where,
    uncertaintyMetres: where.latitude === null ? null : (uncertainty ?? where.uncertaintyMetres),
  };
  const of = known?.key ?? siteOf(whole);
  return { ...whole, site: of, private: isPrivate ?? privacyOf(whole.words, of, context) };
}

/** Words of a place; with a position of its own they may hold anything, such as a number of a plot. */
function placeIn(told: Told, position: Position | null, readers: Readers, complaints: Complaint[]): PlaceRead | null {
  if (position !== null) return { ...NOWHERE, words: told.text };
  const reading = readers.place(told.text);
  if (reading.state === 'sure') return reading.value;
  complaints.push(
    reading.state === 'unsure'
      ? notClear(told, reading.offer.map(written))
      : notUnderstood(told, 'Fen Boardwalk, north end, or 43.5121, -90.6402'),
  );
  return null;
}

/** What the words say of it: a site is not private, "my back yard" is. */
function privacyOf(words: string, site: string | null, context: Context): boolean | null {
  if (site !== null) return false;
  const { own, publicPlace } = context.words.wishes;
  const [isOwn, isPublic] = [saysAnyOf(words, own), saysAnyOf(words, publicPlace)];
  return isOwn === isPublic ? null : isOwn;
}
