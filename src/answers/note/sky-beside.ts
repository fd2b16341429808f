/** The sky told among other things, where a number alone is none. */
import type { Sky } from '../../../shared/record.js';
import { findNumbers } from '../numbers.js';
import type { Context, Finder, Span } from '../reading.js';
import { findSky } from '../sky.js';
import { fold } from '../text.js';
import { blankLines } from './blank-lines.js';

/** The number words of which a sky was made: "fifty" of "fifty nine degrees" is no half. */
function loneNumbers(text: string, used: readonly Span[], context: Context): Span[] {
  return used.filter(([from, to]) => {
    const [number] = findNumbers(fold(text.slice(from, to)), context.words);
    return number !== undefined && number.span[0] === 0 && number.span[1] === to - from;
  });
}

export const findSkyBeside: Finder<Sky> = (text, context) => {
  const readings = findSky(text, context);
  const numbers = readings.flatMap(({ used }) => loneNumbers(text, used, context));
  return numbers.length === 0 ? readings : findSky(blankLines(text, numbers), context);
};
