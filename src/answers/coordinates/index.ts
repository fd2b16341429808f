/** All ways of writing coordinates that are read. A way is one file, and a line in `FORMS`. */
import { decimalDegrees } from './decimal.js';
import { degreesMinutesSeconds } from './degrees-minutes-seconds.js';
import { plainCoordinates, type CoordinatesForm, type CoordinatesFound, type Setting } from './form.js';
import { geoUri } from './geo-uri.js';
import { iso6709 } from './iso-6709.js';
import { mapLink } from './map-link.js';
import { mgrs } from './mgrs.js';
import { plusCode } from './plus-code.js';
import { utm } from './utm.js';

export { isImpossible, LEAST_METRES, plainCoordinates, type Coordinates, type CoordinatesFound } from './form.js';
export { LINK } from './map-link.js';
export { SHORT_PLUS_CODE } from './plus-code.js';

/** The more a form says of itself, the earlier: what one has taken, the next does not see. */
const FORMS: readonly CoordinatesForm[] = [
  geoUri,
  mapLink,
  plusCode,
  mgrs,
  utm,
  iso6709,
  degreesMinutesSeconds,
  decimalDegrees,
];

/** All coordinates in the text, left to right, none overlapping. */
export function coordinatesIn(text: string, setting: Setting): readonly CoordinatesFound[] {
  if (!/[\d+]/.test(text)) return [];
  const plain = plainCoordinates(text);
  const found: CoordinatesFound[] = [];
  for (const form of FORMS) {
    for (const one of form(plain, text, setting)) {
      if (!found.some(({ span }) => span[0] < one.span[1] && one.span[0] < span[1])) found.push(one);
    }
  }
  return found.sort((a, b) => a.span[0] - b.span[0]);
}
