/**
 * A correction while the clock runs puts right what was counted, and never counts more: "no that was an imp", "sorry, 2 imp
 * not 1", "oops wrong plant, columbine", "take out the bimac".
 */
import { fold, rankOf, saysAnyOf } from '../../answers/index.js';
import { contextOf } from '../hear.js';
import { afterOpening, readCorrection, tellsMore, type Correction } from '../corrections/put-right.js';
import { changed } from '../thread.js';
import type { Live, Report, Scene, TallyLine } from '../types.js';
import { messagesOf, withEntries } from './tally.js';

type Running = Report & { live: Live };

/** A line of an entry, by its places. */
interface Place {
  readonly entry: number;
  readonly at: number;
  readonly line: TallyLine;
}

/** The lines as they are now, or that it is not clear which is meant. */
export type PutRight = { readonly report: Report; readonly lines: readonly TallyLine[] } | 'unclear';

/** Null where the text corrects nothing that was counted; `isSaid`: "change …" said already that it does. */
export function correctLive(report: Running, text: string, scene: Scene, isSaid = false): PutRight | null {
  const places = placesOf(report);
  const { tally } = scene.survey.words;
  const last = places.at(-1);
  if (last !== undefined && last.line.seenBefore > 0 && saysNewOne(text, scene))
    return putInto(report, [last], (line) => ({ ...line, seenBefore: 0 }), text);
  if (places.length === 0 || tellsMore(text, scene)) return null;
  const correction = readCorrection(text, report, scene);
  if (correction === null) return null;
  const { denied } = correction;
  const behind = afterOpening(text, scene) ?? (isSaid ? text : null);
  const opens = behind !== null;
  if (!opens && denied.bees.length + denied.plants.length + denied.counts.length === 0) return null;
  // "no, nothing on the phlox" is a zero
  if (saysAnyOf(behind ?? text, tally.zero)) return null;
  const meant = placesMeant(correction, places);
  // "2 imp on phlox, not on bluebells" corrects nothing where nothing was told of the bluebells
  if (!opens && meant.length === 0) return null;
  const next = meant.length === 0 ? null : changedLine(correction, meant, report, scene);
  return next === null ? 'unclear' : putInto(report, meant, next, text);
}

/** "No wait, that was a different one", after "same one on the phlox". */
function saysNewOne(text: string, scene: Scene): boolean {
  const bare = (said: string): string => said.replace(/[^\p{L}\p{N}'’]+/gu, ' ').trim();
  const whole = [bare(fold(text)), bare(afterOpening(text, scene) ?? '')];
  return whole.some((said) => scene.survey.words.live.newOne.includes(said));
}

/** "Take out the bimac": one of those counted, the last told if it is one of several. */
export function takeOutLive(report: Running, what: string, text: string, scene: Scene): PutRight {
  const said = readCorrection(what, report, scene)?.right;
  const places = placesOf(report).filter(
    ({ line }) =>
      said !== undefined &&
      said.bees.length + said.plants.length > 0 &&
      (said.bees.length === 0 || (line.bee !== null && said.bees.includes(line.bee))) &&
      (said.plants.length === 0 || (line.plant !== null && said.plants.includes(line.plant))),
  );
  const last = placesOf(report).at(-1);
  const only = places.length === 1 ? places[0] : places.find(({ line }) => line === last?.line);
  if (only === undefined || (said?.counts ?? []).some((count) => count !== only.line.count)) return 'unclear';
  return putInto(report, [only], () => null, text);
}

const placesOf = ({ live }: Running): Place[] =>
  live.entries.flatMap((lines, entry) => lines.map((line, at) => ({ entry, at, line })));

/** The lines that are to be put right: those of the last message, or those of the bee that is named. */
function placesMeant({ right, denied }: Correction, places: readonly Place[]): Place[] {
  const last = places.filter(({ entry }) => entry === places.at(-1)?.entry);
  const [bee, plant, count] = [right.bees[0], right.plants[0], right.counts[0]];
  const isDenied = ({ line }: Place): boolean =>
    (denied.bees.length === 0 || denied.bees.includes(line.bee ?? '')) &&
    (denied.plants.length === 0 || denied.plants.includes(line.plant ?? '')) &&
    (denied.counts.length === 0 || denied.counts.includes(line.count));
  const denies = denied.bees.length + denied.plants.length + denied.counts.length > 0;
  const candidates = places.filter(isDenied);
  const ofBee = candidates.filter(({ line }) => line.bee === bee);
  const onPlant = candidates.filter(({ line }) => line.plant === plant);
  const lastOnes = last.filter(isDenied);
  // what is denied says which: the last line that is so, of the bee if it is named
  if (denied.bees.length > 0 || denied.plants.length > 0) return lastOnes.length > 0 ? lastOnes : onlyOne(candidates);
  if (bee === undefined) return denies && lastOnes.length === 0 ? onlyOne(candidates) : lastOnes;
  const lastOfBee = lastOnes.filter(({ line }) => line.bee === bee);
  if (lastOfBee.length > 0) return lastOfBee;
  if (plant !== undefined) {
    const onLast = lastOnes.filter(({ line }) => line.plant === plant);
    if (onLast.length > 0) return onLast;
    // neither bee nor plant is that of the last: of the two only one may fit what was told before
    if (ofBee.length > 0 && onPlant.length > 0) return [];
    return onlyOne([...ofBee, ...onPlant]);
  }
  // "sorry, 2 imp" after a bimac: the imp's number, where it was another
  if (count !== undefined) {
    if (ofBee.some(({ line }) => line.count !== count) || denies) return onlyOne(ofBee);
    return lastOnes;
  }
  return lastOnes;
}

const onlyOne = (places: readonly Place[]): Place[] => (places.length === 1 ? [...places] : []);

/** What becomes of a line; null where the correction says two things, or fits only some of several lines. */
function changedLine(
  { right }: Correction,
  places: readonly Place[],
  report: Report,
  scene: Scene,
): ((line: TallyLine) => TallyLine) | null {
  if (right.bees.length > 1 || right.plants.length > 1 || right.counts.length > 1) return null;
  const [bee] = right.bees;
  const [plant] = right.plants;
  const [count] = right.counts;
  const plants = new Set(places.map(({ line }) => line.plant));
  const isOnlyPlant = bee === undefined && count === undefined && !right.isWorker;
  if (places.length > 1 && !(isOnlyPlant && plants.size === 1)) return null;
  if (isOnlyPlant && plant === undefined) return null;
  const context = contextOf(scene, report);
  return (line) => {
    const counted = count ?? line.count;
    return {
      ...line,
      ...(bee === undefined ? {} : { bee, rank: rankOf(bee, context), doubt: false }),
      plant: plant ?? line.plant,
      count: counted,
      seenBefore: line.seenBefore === line.count ? counted : Math.min(line.seenBefore, counted),
      withPollen: line.withPollen === null ? null : Math.min(line.withPollen, counted),
      caste: right.isWorker ? 'worker' : line.caste,
    };
  };
}

function putInto(
  report: Running,
  places: readonly Place[],
  change: (line: TallyLine) => TallyLine | null,
  typed: string,
): PutRight {
  const lines: TallyLine[] = [];
  const messages = messagesOf(report.live);
  const entries = report.live.entries.map((entry, index) =>
    entry.flatMap((line, at) => {
      if (!places.some((place) => place.entry === index && place.at === at)) return [line];
      const next = change(line);
      if (next !== null) lines.push(next);
      return next ?? [];
    }),
  );
  const kept = entries.map((_, index) => index).filter((index) => entries[index]!.length > 0);
  const next = withEntries(
    report,
    kept.map((index) => entries[index]!),
    kept.map((index) => messages[index] ?? ''),
  );
  const corrected = { entries: report.live.entries, entryMessages: messages };
  const live = { ...next.live, corrected };
  return { report: changed(next, { live, tallyTyped: [...next.tallyTyped, typed] }), lines };
}
