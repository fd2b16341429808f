/**
 * What a correction of queens says: the bee, the plant and the number that are right, and those that it denies. "Sorry, 2
 * imp not 1", "oops, wrong plant, columbine", "not a bimac, an imp".
 */
import { anyOf, fold, namedIn, saysAnyOf, type Context } from '../../answers/index.js';
import { plantKey } from '../fields.js';
import { contextOf } from '../hear.js';
import type { Report, Scene } from '../types.js';

/** A part of a correction. */
export interface Said {
  readonly bees: readonly string[];
  readonly plants: readonly string[];
  /** Numbers of queens; an article and the "one" of "that one" are none. */
  readonly counts: readonly number[];
  readonly isWorker: boolean;
}

export interface Correction {
  readonly right: Said;
  readonly denied: Said;
}

/** What stands behind "sorry", "no that was", "wrong plant" or "no,"; null where no such words open the text. */
export function afterOpening(text: string, scene: Scene): string | null {
  const { hedges, tally, putRight } = scene.survey.words;
  const said = fold(text).trim();
  const opens = [...tally.takesBack, ...tally.takesBackWeakly, ...hedges.correcting, ...putRight.tellsLast];
  const opening = new RegExp(`^(?:${anyOf(putRight.saysNo)}\\s*[,.!:;-]+\\s*)?(?:${anyOf(opens)}[\\s,.!:;-]*)*`, 'u');
  const end = opening.exec(said)?.[0].length ?? 0;
  return end === 0 ? null : said.slice(end);
}

/** Queens that were forgotten, or came besides: "forgot an imp on phlox", "sorry, also a bimac". */
export const tellsMore = (text: string, { survey }: Scene): boolean =>
  saysAnyOf(text, [...survey.words.tally.another, ...survey.words.putRight.tellsMore]);

/** "A two-spotted on the redbud": an article right before a bee is a count of one where a plant is told with it. */
export function countsOne(text: string, report: Report, scene: Scene): boolean {
  const { at, plants } = namedIn(text, contextOf(scene, report));
  const article = new RegExp(`${anyOf(scene.survey.words.putRight.one)}\\s*$`, 'u');
  return plants.length > 0 && at.some(([from]) => article.test(fold(text).slice(0, from)));
}

/** The parts of a correction; null where it names nothing of a tally. */
export function readCorrection(text: string, report: Report, scene: Scene): Correction | null {
  const { denies, ands } = scene.survey.words.tally;
  const folded = fold(text);
  const pattern = new RegExp(
    `${anyOf(denies)}\\s+(?<denied>.*?)(?=[,;.!]|\\s${anyOf(ands.filter((word) => /\p{L}/u.test(word)))}\\s|$)`,
    'gu',
  );
  const denials = [...folded.matchAll(pattern)].map(({ groups }) => groups?.['denied'] ?? '');
  const denied = saidIn(denials.join(' , '), report, scene);
  const right = saidIn(folded.replace(pattern, ' '), report, scene);
  const isEmpty = ({ bees, plants, counts, isWorker }: Said): boolean =>
    bees.length + plants.length + counts.length === 0 && !isWorker;
  return isEmpty(right) && isEmpty(denied) ? null : { right, denied };
}

function saidIn(folded: string, report: Report, scene: Scene): Said {
  const context = contextOf(scene, report);
  const { bees, at, plants } = namedIn(folded, context);
  const typed = (report.plants ?? []).filter(({ name }) => name === null).map(plantKey);
  return {
    bees,
    plants: plants.length > 0 ? plants : typed.filter((key) => folded.includes(fold(key))),
    counts: countsIn(folded, at, context),
    isWorker: saysAnyOf(folded, context.words.tally.workers),
  };
}

function countsIn(folded: string, bees: readonly (readonly [number, number])[], { words }: Context): number[] {
  const { units } = words.numbers;
  const counts = [...folded.matchAll(/(?<![\p{L}\p{N}.-])(?:\d{1,3}|\p{L}+)(?![\p{L}\p{N}-])/gu)].flatMap((match) => {
    const [word] = match;
    const [start, end] = [match.index, match.index + word.length];
    if (bees.some(([from, to]) => start < to && end > from)) return [];
    const count = /^\d/.test(word) ? Number(word) : (units[word] ?? null);
    if (count === null || count === 0) return [];
    // "that one was an imp": a number only right before a bee, or as all that is said
    const isNumber = /^\d/.test(word) || count > 1;
    const beforeBee = bees.some(([from]) => from > end && folded.slice(end, from).trim() === '');
    return isNumber || beforeBee || folded.trim() === word ? [count] : [];
  });
  return [...new Set(counts)];
}
