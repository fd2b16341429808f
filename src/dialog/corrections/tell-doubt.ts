/** "The two-spotted was only a maybe", "I'm sure it was a two-spotted": how sure queens told before are. Their number stays. */
import type { Words } from '../../../shared/words.js';
import { anyOf, fold, madeOnce, namedIn, saysAnyOf } from '../../answers/index.js';
import { contextOf } from '../hear.js';
import { readCorrection, tellsMore } from './put-right.js';
import { changed } from '../thread.js';
import type { Report, Scene, TallyLine } from '../types.js';

/** Null where the text says nothing of how sure they are, or tells something else too. */
export function tellDoubt(report: Report, text: string, scene: Scene): Report | null {
  const doubt = saysDoubt(text, scene);
  const lines = report.tally ?? [];
  if (doubt === null || tellsMore(text, scene)) return null;
  const correction = readCorrection(withoutDoubt(text, scene), report, scene);
  if (correction === null) return null;
  const { right, denied } = correction;
  if (denied.bees.length + denied.plants.length + denied.counts.length > 0) return null;
  const isTold = (bee: string): boolean => lines.some((line) => line.bee === bee);
  // "the bee" of "not sure about the bee" names none
  const bees = namedIn(text, contextOf(scene, report)).bees.filter((bee) => isTold(bee) || bee !== 'Bombus');
  const isMeant = (line: TallyLine): boolean =>
    line.count > 0 &&
    (right.plants.length === 0 || right.plants.includes(line.plant ?? '')) &&
    (bees.length === 0 || bees.includes(line.bee ?? ''));
  const meant = lines.filter(isMeant);
  // "the bee on the redbud": where there is one only
  const { queens, queensPlural } = scene.survey.words.tally;
  if (bees.length === 0 && (meant.length !== 1 || !saysAnyOf(text, [...queens, ...queensPlural]))) return null;
  if (meant.length === 0 || right.counts.some((count) => meant.every((line) => line.count !== count))) return null;
  const tally = lines.map((line) => (meant.includes(line) ? { ...line, doubt } : line));
  return changed(report, { tally, tallyTyped: [...report.tallyTyped, text] });
}

/** A mark alone asks rather than doubts. */
const doubtingWords = madeOnce(({ tally, putRight }: Words) =>
  [...tally.doubtful, ...tally.hedgesBefore, ...putRight.doubts].filter((word) => /\p{L}/u.test(word)),
);

/** Whether a text doubts a name, or is sure of it; null where it says neither. */
export function saysDoubt(text: string, scene: Scene): boolean | null {
  if (saysAnyOf(text, scene.survey.words.putRight.sure)) return false;
  return saysAnyOf(text, doubtingWords(scene.survey.words)) ? true : null;
}

/** The "not" of "not sure about the two-spotted" denies no bee. */
const withoutDoubt = (text: string, scene: Scene): string =>
  fold(text).replace(new RegExp(anyOf(doubtingWords(scene.survey.words), scene.survey.words.putRight.sure), 'gu'), ' ');
