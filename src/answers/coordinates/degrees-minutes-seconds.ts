/**
 * Degrees and minutes, with or without seconds: "45°12'30" N 93°44'10" W", "45 12.5 N, 93 44.2 W", "N45-12-30 W93-44-10",
 * and packed, "451230N 0934410W". Minutes and seconds from 60 on are no place.
 */
import type { Words } from '../../../shared/words.js';
import { madeOnce } from '../text.js';
import { axisPattern, besideDigits, pairsIn, type Accept, type AxisPattern } from './axes.js';
import { unitOfLast, sixDecimals, type CoordinatesForm } from './form.js';

const decimalsOf = (number: string): number => number.split('.')[1]?.length ?? 0;

/** Degrees from their parts; null where a part is too big. */
function fromParts(degrees: string, minutes: string, seconds: string | undefined) {
  const whole = Number(degrees);
  const sixtieths = Number(minutes);
  const seconds60 = Number(seconds ?? 0);
  if (sixtieths >= 60 || seconds60 >= 60) return null;
  const precisionMetres =
    seconds === undefined ? unitOfLast(decimalsOf(minutes), 1 / 60) : unitOfLast(decimalsOf(seconds), 1 / 3600);
  return {
    degrees: sixDecimals(whole + sixtieths / 60 + seconds60 / 3600),
    precisionMetres,
    decimals: decimalsOf(seconds ?? minutes),
  };
}

const spacedAxis = madeOnce((words: Words['place']): AxisPattern => ({
  pattern: axisPattern(
    `(?<degrees>\\d{1,3})(?<mark>\\s?(?:°|${besideDigits(words.degrees)})\\s?|[\\s:-]\\s?)` +
      `(?<minutes>\\d{1,2}(?:\\.\\d{1,12})?)(?![\\d.]*\\d)(?<minuteMark>\\s?(?:'(?!')|${besideDigits(words.minutes)})\\s?)?` +
      `(?:(?:(?<=['\\p{L}]\\s?)|[\\s:-]\\s?)(?<seconds>\\d{1,2}(?:\\.\\d{1,12})?)(?![\\d.]*\\d)\\s?(?:"|''|'|${besideDigits(words.seconds)}|s(?=\\s{0,2}[nsew]))?)?`,
    words,
  ),
  read: ({ degrees = '', minutes = '', seconds, mark = '', minuteMark }) => {
    const parts = fromParts(degrees, minutes, seconds);
    return parts && { ...parts, marked: /[^\s:-]/u.test(mark) || minuteMark !== undefined };
  },
}));

/** "451230N", "0934410.5W": two digits each for minutes and seconds. */
const packedAxis = madeOnce((words: Words['place']): AxisPattern => ({
  pattern: axisPattern(
    `(?<degrees>\\d{2,3}?)(?<minutes>\\d{2})(?:(?<seconds>\\d{2}(?:\\.\\d{1,9})?)|(?<decimals>\\.\\d{1,9}))(?![\\d.]*\\d)`,
    words,
  ),
  read: ({ degrees = '', minutes = '', seconds, decimals }) => {
    const parts =
      decimals === undefined ? fromParts(degrees, minutes, seconds) : fromParts(degrees, minutes + decimals, undefined);
    return parts && { ...parts, marked: false };
  },
}));

/** Clock times, dates and telephone numbers look alike: without letters, signs or six numbers in a row it is none. */
const acceptSpaced: Accept = (first, second, whole) => {
  const told = [first, second].every(({ axis, marked }) => axis !== null || marked);
  if (told) return { unmistakable: true };
  if (first.minus || second.minus || first.axis !== null || second.axis !== null || first.marked || second.marked)
    return { unmistakable: false };
  return whole ? { unmistakable: false } : null;
};

const acceptPacked: Accept = (first, second) =>
  first.side !== null && second.side !== null ? { unmistakable: true } : null;

export const degreesMinutesSeconds: CoordinatesForm = (plain, _typed, { words }) => [
  ...pairsIn(plain, spacedAxis(words), words, acceptSpaced),
  ...pairsIn(plain, packedAxis(words), words, acceptPacked),
];
