/** A correction of what was told before, while something else is asked: "habitat was savanna", "no. change wind", "it was 3 two-spotted". */
import { namedIn, readWish, saysAnyOf } from '../../answers/index.js';
import { askAgain, correctByWish } from './correct.js';
import { correctTally } from './correct-tally.js';
import { contextOf, hear } from '../hear.js';
import { correctThem } from './of-them.js';
import { lineAlone, namedInWords, withoutLead } from './named-line.js';
import { outcome } from '../outcome.js';
import { afterOpening, tellsMore } from './put-right.js';
import { briefly, lineFields } from '../summary.js';
import { tellDoubt } from './tell-doubt.js';
import type { Asking, Outcome, Report, Scene, Thread } from '../types.js';

/** Null where the text may answer what is asked. */
export function correctMeanwhile(
  thread: Thread,
  report: Report,
  asking: Asking,
  text: string,
  scene: Scene,
): Outcome | null {
  const bare = withoutLead(text, scene);
  const wish = bare === text ? null : readWish(bare, scene.survey.words);
  if (wish?.wish === 'change') return correctByWish(thread, report, wish, scene);
  const line = lineAlone(text, lineFields(report, scene), scene);
  if (line !== null) return askAgain(thread, report, line, scene);
  const asked = asking.kind === 'question' ? asking.fields : [];
  // "habitat is yard" may be told before it is asked for: its value is any words
  const isNamed = (field: string): boolean =>
    report.fields[field] !== undefined || scene.survey.dialog.fields[field]?.reader === 'words';
  const fields = lineFields(report, scene).filter((field) => isNamed(field) && !asked.includes(field));
  const named = namedInWords(text, fields, scene);
  if (named !== null && named.value !== '') {
    const heard = hear(report, named.value, [named.field], scene);
    if (heard.taken.includes(named.field))
      return { ...outcome(thread, heard.report), echo: briefly(heard.taken, heard.report, scene) };
  }
  const them = isOfThem(text, report, asking, scene) ? correctThem(report, text, scene) : null;
  if (them !== null && 'report' in them)
    return { ...outcome(thread, them.report), echo: briefly(['tally'], them.report, scene) };
  if (asking.kind !== 'rest') return null;
  // of the plants that are asked about nothing is told yet: what opens as a correction is about the rows before
  const opens = afterOpening(text, scene) !== null && !tellsMore(text, scene);
  const queens = tellDoubt(report, text, scene) ?? (opens ? correctTally(report, text, scene) : null);
  return queens === null ? null : { ...outcome(thread, queens), echo: briefly(['tally'], queens, scene) };
}

/**
 * Whether the text is about the queens told before. "It was by the redbud" may be the place that is asked for, so it takes a
 * bee, "both", "of them" or their pollen; asked of other plants, "one was a bimac" may be one there.
 */
function isOfThem(text: string, report: Report, asking: Asking, scene: Scene): boolean {
  const { putRight, tally } = scene.survey.words;
  const ofThem = putRight.them.ofThem.filter((phrase) => phrase.includes(' '));
  if (asking.kind === 'rest') return saysAnyOf(text, ofThem);
  if (asking.kind !== 'question' || asking.fields.some((field) => field === 'tally' || field === 'plants'))
    return false;
  return (
    saysAnyOf(text, [...ofThem, ...putRight.them.two, ...tally.queens, ...tally.pollen]) ||
    namedIn(text, contextOf(scene, report)).bees.length > 0
  );
}
