/** A message that is nothing but names of plants: "bluebells and violets". */
import type { Words } from '../../../shared/words.js';
import { findNames } from '../names/index.js';
import { readPlants, type PlantTold } from '../plants.js';
import type { Context, Reading } from '../reading.js';
import { blank, fold, madeOnce } from '../text.js';

const small = madeOnce(
  ({ plants, numbers, tally }: Words): ReadonlySet<string> =>
    new Set([plants.around, numbers.articles, tally.ands].flat().flatMap((phrase) => phrase.split(' '))),
);

/** The plants, where every one is surely one that the list has; null for any other text. */
export function readPlantsAlone(text: string, context: Context): Reading<PlantTold[]> | null {
  if (/[?\d]/.test(text)) return null;
  const folded = fold(text);
  const { bees, plants } = findNames(folded, context);
  if (plants.length === 0 || bees.length > 0) return null;
  const rest = blank(
    folded,
    plants.map(({ span }) => span),
  );
  if ((rest.match(/[\p{L}']+/gu) ?? []).some((word) => !small(context.words).has(word))) return null;
  const reading = readPlants(text, context);
  const isSure = reading.state === 'sure' && reading.value.every(({ name, doubt }) => name !== null && doubt !== true);
  return isSure ? reading : null;
}
