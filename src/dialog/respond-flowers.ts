/**
 * One text as the answer to how many flowers of one plant were open. Who watched several plants often answers for all of
 * them at once.
 */
import {
  anyOf,
  fold,
  madeOnce,
  namedIn,
  none,
  readCount,
  readCountForEach,
  readCountsInOrder,
  readPlants,
  unsure,
  type Context,
  type PlantTold,
  type Reading,
} from '../answers/index.js';
import type { Count } from '../../shared/record.js';
import type { Words } from '../../shared/words.js';
import { plantKey, setFlowers } from './fields.js';
import { contextOf, hear, withDoubt, type Heard } from './hear.js';
import { notUnderstood, outcome } from './outcome.js';
import { briefly } from './summary.js';
import { changed } from './thread.js';
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

/** What parts two things that are told: a comma or stop that is none of a number, a word like "and". */
const partsOf = madeOnce(({ tally }: Words) => new RegExp(`[,;.!\\n](?=\\s|$)|\\s${anyOf(tally.ands)}\\s`, 'gu'));

/** "80, violets 30", "80, right next to the lilac": the count without a name, and what is told behind it. */
function bareCountIn(text: string, context: Context): { readonly count: string; readonly rest: string } | null {
  for (const { index, 0: sign } of fold(text).matchAll(partsOf(context.words))) {
    const count = text.slice(0, index);
    if (namedIn(count, context).plants.length > 0) return null;
    if (readCount(count, context).state !== 'none') return { count, rest: text.slice(index + sign.length) };
  }
  return null;
}

const plantsIn = (text: string, context: Context): readonly PlantTold[] => {
  const reading = readPlants(text, context);
  return reading.state === 'sure' ? reading.value : reading.state === 'unsure' ? (reading.offer[0] ?? []) : [];
};

/**
 * Reads a text that names plants, each with its own number. A plant that is named without one, and was not told before,
 * only tells where the others are: "80 tulips next to the lilac".
 */
function hearPlants(report: Report, text: string, scene: Scene): Heard {
  const heard = hear(report, text, ['plants'], scene);
  const known = new Set(report.plants?.map(plantKey));
  const plants = heard.report.plants?.filter((plant) => plant.flowers !== null || known.has(plantKey(plant))) ?? null;
  return { ...heard, report: changed(heard.report, { plants }) };
}

/** The report with the count of the plant asked about, or "20 each" of all that are open; null where that is not sure. */
function withBareCount(report: Report, index: number, text: string, context: Context): Report | null {
  const reading = readCount(text, context);
  return (
    withFlowersInOrder(report, text, context) ??
    (reading.state === 'sure' ? setFlowers(report, index, reading.value, text) : null)
  );
}

/** An answer that names plants; null where it does not, or only tells by their names where the one asked about is. */
function answerByNames(report: Report, index: number, text: string, context: Context, scene: Scene): Heard | null {
  if (namedIn(text, context).plants.length === 0) return null;
  const bare = bareCountIn(text, context);
  const counted = bare === null ? null : withBareCount(report, index, bare.count, context);
  const behind = bare === null ? [] : plantsIn(bare.rest, context).filter(({ flowers }) => flowers !== null);
  // of "20 red and 15 yellow tulips" the twenty are some of the tulips
  if (bare !== null && counted !== null && !behind.some(({ name }) => name === report.plants?.[index]?.name)) {
    return behind.length === 0
      ? { report: counted, taken: ['plants'], ask: null, understood: true }
      : hearPlants(counted, bare.rest, scene);
  }
  const told = plantsIn(text, context);
  const known = told.filter(({ name }) => report.plants?.some((plant) => plant.name === name));
  const answers = known.length > 0 || told.filter(({ flowers }) => flowers !== null).length > 1;
  return answers ? hearPlants(report, text, scene) : null;
}

/** "20 under the redbud" may be of the redbud: a plant that was not told before is named, and nothing parts it from the number. */
const asGuess = (reading: Reading<Count>, text: string, context: Context): Reading<Count> =>
  reading.state === 'sure' && namedIn(text, context).plants.length > 0
    ? unsure([reading.value], 'count-doubt', reading.used)
    : reading;

/** Open flowers of one plant. */
export function answerFlowers(thread: Thread, report: Report, index: number, text: string, scene: Scene): Outcome {
  const context: Context = { ...contextOf(scene, report), of: 'flowers' };
  // "two American bumble bees came to it": bees are no flowers, whatever was asked
  const tellsBees = namedIn(text, context).bees.length > 0;
  const inOrder = tellsBees ? null : withFlowersInOrder(report, text, context);
  if (inOrder) return { ...outcome(thread, inOrder), echo: briefly(['plants'], inOrder, scene) };
  const byNames = tellsBees ? null : answerByNames(report, index, text, context, scene);
  const reading =
    tellsBees || byNames !== null ? none('count-no-number') : asGuess(readCount(text, context), text, context);
  if (reading.state === 'sure') return outcome(thread, setFlowers(report, index, reading.value, text));
  const heard = byNames ?? hear(report, text, [], scene);
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
