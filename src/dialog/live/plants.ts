/** The plants of a live watch: those named for it, before any queen came or in between, and those of its tally. */
import { fold, namedIn, readFields, saysAnyOf, type PlantTold } from '../../answers/index.js';
import { addPlants, plantKey } from '../fields.js';
import { contextOf, plantOf } from '../hear.js';
import { changed } from '../thread.js';
import type { Live, Report, Scene } from '../types.js';

/** By their keys, in the order in which they were named. */
export const livePlants = (report: Report): string[] => [
  ...new Set([...(report.plants ?? []).map(plantKey), ...(report.tally ?? []).flatMap(({ plant }) => plant ?? [])]),
];

/** So many of one bee are not counted with one message: from here on a number beside a plant is of its flowers. */
const FEWEST_FLOWERS = 10;

/** "Flowers: bluebells, phlox". */
const isLabelled = (text: string, { survey }: Scene): boolean =>
  (survey.words.wishes.fields['plants'] ?? []).some((word) => fold(text).trim().startsWith(`${word}:`));

/**
 * Whether plants told without any bee are what grows here rather than where the last bee was seen once more: "phlox" and
 * "2 on phlox" after a bee are that.
 */
function areFlora(told: readonly PlantTold[], hasBee: boolean, text: string, scene: Scene): boolean {
  if (isLabelled(text, scene)) return true;
  if (saysAnyOf(text, scene.survey.words.tally.onPlants)) return false;
  const counts = told.flatMap(({ flowers }) => flowers?.value ?? []);
  if (counts.length > 0) return counts.some((count) => count >= FEWEST_FLOWERS);
  return told.length > 1 || !hasBee;
}

/** The report with the plants that the text names for the watch; null where it tells something else. */
export function withPlantsNamed(report: Report & { live: Live }, text: string, scene: Scene): Report | null {
  const context = contextOf(scene, report);
  if (namedIn(text, context).bees.length > 0) return null;
  const reading = readFields(text, context, ['plants']).fields.plants;
  if (reading?.state !== 'sure') return null;
  const told = reading.value;
  // words that no list knows may be anything that was said
  if (told.some(({ name, flowers }) => name === null || flowers?.value === 0)) return null;
  const hasBee = report.live.entries.at(-1)?.at(-1)?.bee != null;
  if (!areFlora(told, hasBee, text, scene)) return null;
  return changed(addPlants(report, told.map(plantOf)), { plantsTyped: [...report.plantsTyped, text] });
}
