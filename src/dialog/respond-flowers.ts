/**
 * One text as the answer to how many flowers of one plant were open. Who watched several plants often answers for all of
 * them at once.
 */
import {
  namedIn,
  none,
  readCount,
  readCountForEach,
  readCountsInOrder,
  readPlants,
  type Context,
} from '../answers/index.js';
import { setFlowers } from './fields.js';
import { contextOf, hear, withDoubt } from './hear.js';
import { notUnderstood, outcome } from './outcome.js';
import { briefly } from './summary.js';
import type { Outcome, Report, Scene, Thread } from './types.js';

/**
 * "120 and 40", where the flowers of two plants are open: theirs, in the order in which the plants were told; "60 each":
 * as many of each.
 */
function withFlowersInOrder(report: Report, text: string, context: Context): Report | null {
  const open = (report.plants ?? []).flatMap(({ flowers }, at) => (flowers === null ? [at] : []));
  const counts = readCountsInOrder(text, open.length, context) ?? readCountForEach(text, open.length, context);
  return counts?.reduce((next, count, at) => setFlowers(next, open[at]!, count, text), report) ?? null;
}

/** "80 on the phlox, 35 on the geranium": more plants than the one that was asked about, each with its own number. */
function namesOthers(report: Report, index: number, text: string, context: Context): boolean {
  if (namedIn(text, context).plants.length === 0) return false;
  const reading = readPlants(text, context);
  const told = reading.state === 'sure' ? reading.value : reading.state === 'unsure' ? (reading.offer[0] ?? []) : [];
  return told.length > 1 || (told[0] !== undefined && told[0].name !== report.plants?.[index]?.name);
}

/** Open flowers of one plant. */
export function answerFlowers(thread: Thread, report: Report, index: number, text: string, scene: Scene): Outcome {
  const context: Context = { ...contextOf(scene, report), of: 'flowers' };
  // "two American bumble bees came to it": bees are no flowers, whatever was asked
  const tellsBees = namedIn(text, context).bees.length > 0;
  const inOrder = tellsBees ? null : withFlowersInOrder(report, text, context);
  if (inOrder) return { ...outcome(thread, inOrder), echo: briefly(['plants'], inOrder, scene) };
  const ofOthers = !tellsBees && namesOthers(report, index, text, context);
  const reading = tellsBees || ofOthers ? none('count-no-number') : readCount(text, context);
  if (reading.state === 'sure') return outcome(thread, setFlowers(report, index, reading.value, text));
  const heard = hear(report, text, ofOthers ? ['plants'] : [], scene);
  const filled = heard.report.plants?.[index]?.flowers != null;
  if (filled) return { ...outcome(thread, heard.report), echo: briefly(heard.taken, heard.report, scene) };
  if (reading.state === 'unsure') {
    return outcome(
      thread,
      withDoubt(report, { field: 'flowers', plant: index, offers: reading.offer, ask: reading.ask, typed: text }),
    );
  }
  if (heard.understood) return { ...outcome(thread, heard.report), echo: briefly(heard.taken, heard.report, scene) };
  return notUnderstood(thread, reading.ask, text, scene);
}
