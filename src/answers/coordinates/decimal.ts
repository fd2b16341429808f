/** Decimal degrees: "45.0888, -93.6417", "N45.0888 W93.6417", "lat 45.0888 lon -93.6417", "45.0888° N, 93.6417° W". */
import type { Words } from '../../../shared/words.js';
import { madeOnce } from '../text.js';
import { axisPattern, besideDigits, pairsIn, type Accept, type AxisPattern } from './axes.js';
import { unitOfLast, type CoordinatesForm } from './form.js';

const decimalAxis = madeOnce((words: Words['place']): AxisPattern => ({
  pattern: axisPattern(
    `(?<degrees>\\d{1,3}(?:\\.\\d{1,20}|,\\d{4,20}(?!\\d))?)(?![\\d.]*\\d)\\s?(?<mark>°|${besideDigits(words.degrees)})?(?!\\s?\\d{1,2}(?:\\.\\d+)?\\s?['"])`,
    words,
  ),
  read: ({ degrees = '', mark }) => {
    const decimals = degrees.split(/[.,]/u)[1]?.length ?? 0;
    return {
      degrees: Number(degrees.replace(',', '.')),
      precisionMetres: unitOfLast(decimals),
      marked: mark !== undefined,
      decimals,
    };
  },
}));

/** Without letters, labels or signs for degrees, decimals tell coordinates from other pairs of numbers. */
const accept: Accept = (first, second, whole) => {
  const told = [first, second].every(({ axis, marked, side }) => axis !== null || marked || side !== null);
  const decimals = Math.min(first.decimals, second.decimals);
  const minus = first.minus || second.minus;
  // "S 45 W 93 Rd" is an address
  const wholeDegrees = decimals === 0 && !first.marked && !second.marked;
  if (told && wholeDegrees) return whole ? { unmistakable: false } : null;
  if (told) return { unmistakable: decimals >= 2 || (first.axis !== null && second.axis !== null && decimals >= 1) };
  if (decimals >= 3) return { unmistakable: true };
  if (decimals >= 2) return { unmistakable: minus };
  if ((decimals === 1 && minus) || (whole && (minus || first.axis !== null || second.axis !== null)))
    return { unmistakable: false };
  return null;
};

export const decimalDegrees: CoordinatesForm = (plain, _typed, { words }) =>
  pairsIn(plain, decimalAxis(words), words, accept);
