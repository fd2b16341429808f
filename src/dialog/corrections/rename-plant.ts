/** "The redbud should be crabapple", "it was crabapple, not redbud": another plant, with the flowers and queens of the one told. */
import { anyOf, fold, namedIn, readPlant } from '../../answers/index.js';
import { plantKey } from '../fields.js';
import { contextOf, plantOf } from '../hear.js';
import { withoutLead } from './named-line.js';
import { changed } from '../thread.js';
import type { Report, Scene } from '../types.js';
import { watchedPlant } from './watched-plant.js';

/** Null where the text names no plant told before and one not told. */
export function renamePlant(report: Report, typed: string, scene: Scene): Report | null {
  const text = withoutLead(typed, scene);
  if (report.plants === null || /\d/u.test(text) || namedIn(text, contextOf(scene, report)).bees.length > 0)
    return null;
  const { putRight, tally, wishes } = scene.survey.words;
  const folded = fold(text).replace(/[\s.!]+$/, '');
  const lead = `^\\s*(?:${anyOf(putRight.swaps)}\\s+)?(?:${anyOf(putRight.articles)}\\s+)?`;
  const becomes = new RegExp(
    `${lead}(?<old>.+?)\\s+${anyOf(wishes.becomes, putRight.swappedFor)}\\s+(?<fresh>.+)$`,
    'u',
  );
  const denied = new RegExp(
    `${lead}(?<old>.+?)\\s+${anyOf(tally.denies)}\\s+.+?[,\\s]+${anyOf(putRight.itIs)}\\s+(?<fresh>.+)$`,
    'u',
  );
  const instead = new RegExp(
    `^\\s*(?:${anyOf(putRight.itIs)}\\s+)?(?<fresh>.+?)[,\\s]+${anyOf(tally.denies)}\\s+(?<old>.+)$`,
    'u',
  );
  for (const pattern of [denied, instead, becomes]) {
    const { old, fresh } = pattern.exec(folded)?.groups ?? {};
    const next = old === undefined || fresh === undefined ? null : renamed(report, old, fresh, typed, scene);
    if (next !== null) return next;
  }
  return null;
}

function renamed(report: Report, old: string, fresh: string, typed: string, scene: Scene): Report | null {
  const key = watchedPlant(old, report, scene);
  // "on the geranium, not the redbud": both are there
  if (watchedPlant(fresh, report, scene) !== null) return null;
  const reading = key === null ? null : readPlant(fresh, { ...contextOf(scene, report), watched: [] });
  if (reading?.state !== 'sure' || reading.value.name === null) return null;
  const { name, rank } = reading.value;
  if ((report.plants ?? []).some((plant) => plantKey(plant) === name)) return null;
  const plant = plantOf({ name, rank, asTyped: fresh, flowers: null, flowersTyped: null });
  return changed(report, {
    plants: (report.plants ?? []).map((known) =>
      plantKey(known) === key ? { ...plant, flowers: known.flowers } : known,
    ),
    plantsTyped: [...report.plantsTyped, typed],
    plantsMessage: null,
    tally: report.tally?.map((line) => (line.plant === key ? { ...line, plant: name } : line)) ?? null,
  });
}
