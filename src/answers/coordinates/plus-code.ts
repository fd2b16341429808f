/**
 * Full plus codes: "86P8G9PH+2C" (Open Location Code). The centre of the cell, with half its diagonal. A short code
 * needs a town to count from and is not taken.
 */
import olc from 'open-location-code';
import { halfDiagonal, sixDecimals, type CoordinatesFound, type CoordinatesForm } from './form.js';

const DIGIT = '[23456789cfghjmpqrvwx]';
const PATTERN = new RegExp(
  `(?<![\\p{L}\\d+])(?:${DIGIT}{8}\\+(?:${DIGIT}{2,7})?|(?:${DIGIT}{2}0{6}|${DIGIT}{4}0{4}|${DIGIT}{6}0{2})\\+)(?![\\p{L}\\d])`,
  'gu',
);
/** "G9PH+2C" */
export const SHORT_PLUS_CODE = new RegExp(`(?<![\\p{L}\\d+])${DIGIT}{4,6}\\+${DIGIT}{2,3}(?![\\p{L}\\d])`, 'u');

const codes = new olc.OpenLocationCode();

export const plusCode: CoordinatesForm = (plain) =>
  [...plain.matchAll(PATTERN)].map((match): CoordinatesFound => {
    const span = [match.index, match.index + match[0].length] as const;
    if (!codes.isFull(match[0])) return { impossible: 'nowhere', span };
    const cell = codes.decode(match[0].toUpperCase());
    const { latitudeLo, latitudeHi, longitudeLo, longitudeHi } = cell;
    const latitude = (latitudeLo + latitudeHi) / 2;
    return {
      latitude: sixDecimals(latitude),
      longitude: sixDecimals((longitudeLo + longitudeHi) / 2),
      axesSaid: true,
      sideSaid: true,
      precisionMetres: halfDiagonal(latitudeHi - latitudeLo, longitudeHi - longitudeLo, latitude),
      statedMetres: null,
      leastMetres: 0,
      unmistakable: true,
      span,
    };
  });
