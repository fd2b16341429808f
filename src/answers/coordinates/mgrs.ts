/**
 * Grid references of the MGRS and the US National Grid: "15T VK 71230 60112", "15TVK712601". Digits cut off, so a
 * reference is a square: its centre, with half its diagonal.
 */
import grids from 'mgrs';
import { sixDecimals, type CoordinatesFound, type CoordinatesForm } from './form.js';
import { isZoneOfBand, latitudesOfBand } from './grid.js';

const PATTERN =
  /(?<![\p{L}\d.])(?<zone>0?[1-9]|[1-5]\d|60)(?<gap>\s?)(?<band>[c-hj-np-x])(?<blank>[\s-]{0,2})(?<square>[a-hj-np-z][a-hj-np-v])[\s-]{0,2}(?:(?<east>\d{1,5})\s(?<north>\d{1,5})|(?<both>\d{2,10}))(?![\p{L}\d+]|\.\d)/gu;

/** Columns come in three sets of eight letters, by zone. */
const COLUMNS = ['stuvwxyz', 'abcdefgh', 'jklmnpqr'];

export const mgrs: CoordinatesForm = (plain, typed) =>
  [...plain.matchAll(PATTERN)].flatMap((match): CoordinatesFound[] => {
    const { zone = '', gap = '', band = '', square = '', blank = '', east, north, both = '' } = match.groups ?? {};
    const span = [match.index, match.index + match[0].length] as const;
    const digits = east === undefined || north === undefined ? both : east + north;
    // "15 the 12" is no reference
    const letters = typed.slice(...span).replace(/\P{L}/gu, '');
    const sure =
      letters === letters.toUpperCase() || (gap === '' && blank === '') || (gap === '' && digits.length >= 6);
    if (!sure || digits.length < 2) return [];
    const places = digits.length / 2;
    const even = Number.isInteger(places) && (east === undefined || east.length === north?.length);
    const column = COLUMNS[Number(zone) % 3] ?? '';
    if (!even || !isZoneOfBand(Number(zone), band) || !column.includes(square[0] ?? ''))
      return [{ impossible: 'nowhere', span }];

    // the south-west corner of a square that begins in the middle of the one given
    const middle = `${digits.slice(0, places)}5${digits.slice(places)}5`;
    const [longitude, latitude] = grids.inverse(`${Number(zone)}${band}${square}${middle}`.toUpperCase());
    const latitudes = latitudesOfBand(band);
    // squares reach a little over the edge of their band
    if (!latitudes || latitude < latitudes.from - 1 || latitude > latitudes.to + 1)
      return [{ impossible: 'nowhere', span }];
    const sideMetres = 100_000 / 10 ** places;
    return [
      {
        latitude: sixDecimals(latitude),
        longitude: sixDecimals(longitude),
        axesSaid: true,
        sideSaid: true,
        precisionMetres: sideMetres * Math.SQRT1_2,
        statedMetres: null,
        leastMetres: 0,
        unmistakable: true,
        span,
      },
    ];
  });
