/**
 * Signed coordinates without a blank: "+45.0888-093.6417/", "+4505.33-09338.50/", "+450520-0933830/" (ISO 6709, the
 * string form of annex H: degrees of latitude in two digits, of longitude in three).
 */
import { sixDecimals, unitOfLast, type CoordinatesFound, type CoordinatesForm } from './form.js';

const PATTERN =
  /(?<![\d.\p{L}])(?<north>[+-]\d{2}(?:\d{2}){0,2}(?:\.\d{1,15})?|\d{2}\.\d{3,15}(?=-))(?<east>[+-]\d{2,3}(?:\d{2}){0,2}(?:\.\d{1,15})?)(?<height>[+-]\d{1,5}(?:\.\d{1,6})?)?(?:crs\w{1,20})?(?:\/|(?![\d.\p{L}]))/giu;

/** Degrees, or degrees and minutes, or all three, by the number of digits before the point. Null where 60 is passed. */
function degreesOf(signed: string, wholeDigits: number): { degrees: number; precisionMetres: number } | null {
  const sign = signed.startsWith('-') ? -1 : 1;
  const [whole = '', decimals = ''] = signed.replace(/^[+-]/u, '').split('.');
  const behind = decimals === '' ? '' : `.${decimals}`;
  const parts = whole.slice(wholeDigits).match(/\d{2}/g) ?? [];
  const degrees = whole.slice(0, wholeDigits);
  const [minutes = '', seconds = ''] = parts;
  if (Number(minutes) >= 60 || Number(seconds) >= 60) return null;
  const numbers = [degrees, minutes, seconds].filter((part) => part !== '');
  const value = numbers.reduce((sum, part, at) => {
    const last = at === numbers.length - 1;
    return sum + Number(last ? part + behind : part) / 60 ** at;
  }, 0);
  const precisionMetres = unitOfLast(decimals.length, 1 / 60 ** (numbers.length - 1));
  return { degrees: sign * (numbers.length === 1 ? value : sixDecimals(value)), precisionMetres };
}

export const iso6709: CoordinatesForm = (plain) =>
  [...plain.matchAll(PATTERN)].map((match): CoordinatesFound => {
    const { north = '', east = '' } = match.groups ?? {};
    const span = [match.index, match.index + match[0].length] as const;
    const eastDigits = east.slice(1).split('.')[0]?.length ?? 0;
    const latitude = degreesOf(north, 2);
    // "-93.6417" with two digits is no ISO, but nothing else either
    const longitude = degreesOf(east, eastDigits % 2 === 0 ? 2 : 3);
    if (!latitude || !longitude) return { impossible: 'nowhere', span };
    return {
      latitude: latitude.degrees,
      longitude: longitude.degrees,
      axesSaid: eastDigits % 2 === 1,
      sideSaid: longitude.degrees < 0,
      precisionMetres: Math.max(latitude.precisionMetres, longitude.precisionMetres),
      statedMetres: null,
      leastMetres: 0,
      unmistakable: north.includes('.') || eastDigits > 3,
      span,
    };
  });
