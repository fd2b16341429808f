/** Whether words that could be any name or place are rather the answer to another question. */
import { readDate } from './date.js';
import { readPatch } from './patch.js';
import type { Context, Reader, Span } from './reading.js';
import { readSky } from './sky.js';
import { readTemperature } from './temperature.js';
import { readTimes } from './times.js';
import { readWind } from './wind.js';
import { readYesNo } from './yes-no.js';

/** Those whose words are unmistakable; a count is any number, and an address has one too. */
const OTHERS: readonly Reader<unknown>[] = [readSky, readWind, readTemperature, readTimes, readDate, readPatch];

/** "lgtm"; what is said besides a yes or no ("no, the lilac") may be the answer. */
export function isYesNo(text: string, context: Context): boolean {
  const reading = readYesNo(text, context);
  return reading.state === 'sure' && reading.value.rest === null;
}

/** "63 degress i belive", "breazy", "todat": their readers know them, misspelled too. */
export const answersOtherQuestion = (text: string, context: Context): boolean =>
  isYesNo(text, context) || OTHERS.some((read) => read(text, context).state !== 'none');

/** What each of the other readers would take for its answer: the words it read. */
export const claimsOfOthers = (text: string, context: Context): (readonly Span[])[] =>
  OTHERS.map((read) => read(text, context)).flatMap(({ state, used }) => (state === 'none' ? [] : [used]));
