/** A plant of the patch in somebody's words. */
import { fold, labelOf, readPlants } from '../../answers/index.js';
import { plantKey } from '../fields.js';
import { contextOf } from '../hear.js';
import type { Report, Scene } from '../types.js';

/** The key of the plant meant; null where it is none that is watched, or may be several. */
export function watchedPlant(text: string, report: Report, scene: Scene): string | null {
  const keys = (report.plants ?? []).map(plantKey);
  const context = contextOf(scene, report);
  const reading = readPlants(text, context);
  const told =
    reading.state === 'sure'
      ? reading.value.map(({ name, asTyped }) => name ?? asTyped).find((key) => keys.includes(key))
      : undefined;
  if (told !== undefined) return told;
  // a plant by some of its words: "the little hearts" of "little hearts on it"
  const wordsOf = (words: string): string[] => fold(words).match(/\p{L}{4,}/gu) ?? [];
  const said = wordsOf(text);
  const fits = keys.filter((key) => said.every((word) => wordsOf(`${key} ${labelOf(key, context)}`).includes(word)));
  return said.length > 0 && fits.length === 1 ? fits[0]! : null;
}
