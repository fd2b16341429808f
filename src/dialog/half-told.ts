/** Readings beside what was told before: a place by the survey's sites, and "6 to 6:15" after "yesterday evening". */
import { anyOf, fold, readTimes, type Context, type Reading } from '../answers/index.js';
import type { Words } from '../../shared/words.js';
import { placeMeant } from './hear-place.js';
import type { Report, Scene } from './types.js';

/** `left`: what no reader used of the text; `context` is that of the report. */
export function besideTold(
  field: string,
  reading: Reading<unknown>,
  { text, left }: { readonly text: string; readonly left: string },
  report: Report,
  context: Context,
  scene: Scene,
): Reading<unknown> {
  if (field === 'place') return placeMeant(reading, left, scene);
  if (field !== 'times' || reading.state !== 'unsure' || reading.ask !== 'morning-or-evening') return reading;
  const part = partOfDay(report.fields['date']?.typed ?? '', scene.survey.words);
  const again = part === null ? null : readTimes(`${text} ${part}`, context);
  return again?.state === 'sure' ? { ...again, used: reading.used } : reading;
}

/** The part of the day that was told with the day. */
const partOfDay = (typed: string, { times }: Words): string | null =>
  new RegExp(anyOf(Object.keys(times.partsOfDay)), 'u').exec(fold(typed))?.[0] ?? null;
