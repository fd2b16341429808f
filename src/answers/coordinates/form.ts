/** What every way of writing coordinates gives. One way is one file here, and a line in `index.ts`. */
import type { Words } from '../../../shared/words.js';
import type { Span } from '../reading.js';
import { fold } from '../text.js';

/** Metres of one degree along the meridian: what a unit of the last digit is measured by. */
export const METRES_PER_DEGREE = 111_320;

export interface Coordinates {
  /** WGS 84 decimal degrees as written, latitude first where nothing says otherwise; not yet known to be on the earth. */
  readonly latitude: number;
  readonly longitude: number;
  /** Letters, labels or the form itself say which is which; a bare pair may be swapped. */
  readonly axesSaid: boolean;
  /** A letter, a minus or the form itself says on which side of Greenwich. */
  readonly sideSaid: boolean;
  /** One unit of the last digit, or half the diagonal of a cell. */
  readonly precisionMetres: number;
  /** An accuracy within the form: `u=` of a geo URI. */
  readonly statedMetres: number | null;
  /** A form that is never surer than this: a pin on a map 30 m. */
  readonly leastMetres: number;
  /** Cannot be anything but coordinates, even in a longer text. */
  readonly unmistakable: boolean;
  readonly span: Span;
}

/** Written like coordinates, but no place on the earth: "45° 75' N". */
export interface Impossible {
  /** `zone`: metres of a grid without the zone they count in. */
  readonly impossible: 'nowhere' | 'zone';
  readonly span: Span;
}

export type CoordinatesFound = Coordinates | Impossible;

export interface Setting {
  readonly words: Words['place'];
  /** Where a grid reference does not say on which side of the equator it counts, the survey does. */
  readonly hemisphere: 'north' | 'south';
}

/** Finds all coordinates of one form. `plain` is as long as `typed`, see `plainCoordinates`. */
export type CoordinatesForm = (plain: string, typed: string, setting: Setting) => readonly CoordinatesFound[];

export const isImpossible = (found: CoordinatesFound): found is Impossible => 'impossible' in found;

/** Never surer than a telephone's own position. */
export const LEAST_METRES = 5;

/** Folded, with the many signs for degrees, minutes and seconds made one each. Positions stay. */
export const plainCoordinates = (text: string): string =>
  fold(
    text
      .replace(/[º˚∘⁰ᵒ]/gu, '°')
      .replace(/(?<=\d\.?)[oO](?=\d)/gu, '0')
      .replace(/[ʹ′‵]/gu, "'")
      .replace(/[ʺ″‶]/gu, '"')
      .replace(/[＋﹢]/gu, '+'),
  );

/** One unit of the last decimal of so many degrees. */
export const unitOfLast = (decimals: number, degrees = 1): number => (METRES_PER_DEGREE * degrees) / 10 ** decimals;

/** Half the diagonal of a cell of so many degrees at that latitude. */
export const halfDiagonal = (degreesHigh: number, degreesWide: number, latitude: number): number =>
  Math.hypot(degreesHigh, degreesWide * Math.cos((latitude * Math.PI) / 180)) * (METRES_PER_DEGREE / 2);

/** To a tenth of a metre: computed degrees carry no more than they were made of. */
export const sixDecimals = (degrees: number): number => Math.round(degrees * 1e6) / 1e6;
