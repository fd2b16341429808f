/**
 * What is written while the clock runs and counts no queen, nor is asked about once time is up: how long there is left,
 * that nothing came yet, bees that went by or are no bumble bees, the weather, "so pretty".
 */
import { fold, namedIn, readFields, saysAnyOf } from '../../answers/index.js';
import { say } from '../../../shared/wording.js';
import { plantKey, queensOf } from '../fields.js';
import { contextOf, hear, plantOf } from '../hear.js';
import { briefly } from '../summary.js';
import type { Live, Outcome, Report, Scene, TallyLine, Thread } from '../types.js';
import { acknowledged, softly } from './acknowledge.js';
import { secondsLeft } from './clock.js';
import { messagesOf, withEntries } from './tally.js';

type Running = Report & { live: Live };

/** Of a watch these are told by the clock and the tally. */
const OF_THE_CLOCK: ReadonlySet<string> = new Set(['date', 'times', 'plants', 'tally']);

/** "How much longer?" is answered without a sound; null for anything else. */
export function timeLeft(thread: Thread, report: Running, text: string, scene: Scene): Outcome | null {
  const { wording, words } = scene.survey;
  if (!saysAnyOf(text, words.live.timeLeft)) return null;
  if (report.live.pausedAt !== null) return softly(thread, report, say(wording, 'live-paused'));
  const minutes = Math.max(0, Math.round(secondsLeft(report.live, scene) / 60));
  return softly(thread, report, say(wording, 'live-time-left', { minutes }));
}

/** "Violets" right after "2 imps": where those were. Null where the last ones have their plant. */
export function withPlantOfLast(
  report: Running,
  text: string,
  scene: Scene,
): { readonly report: Running; readonly lines: readonly TallyLine[] } | null {
  const { entries } = report.live;
  const last = entries.at(-1) ?? [];
  const waits = last.some((line) => line.plant === null && line.count > 0);
  if (!waits) return null;
  const context = contextOf(scene, report);
  const reading = readFields(text, context, ['plants']).fields.plants;
  const [told, ...others] = reading?.state === 'sure' ? reading.value : [];
  // words that no list knows may be anything that was said
  if (
    told === undefined ||
    told.name === null ||
    others.length > 0 ||
    told.flowers !== null ||
    namedIn(text, context).bees.length > 0
  )
    return null;
  const plant = plantKey(plantOf(told));
  // all that were told since without their plant
  const from = entries.findLastIndex((lines) => lines.every((line) => line.plant !== null || line.count === 0)) + 1;
  const put = (line: TallyLine): TallyLine => (line.plant === null && line.count > 0 ? { ...line, plant } : line);
  const next = entries.map((lines, at) => (at < from ? lines : lines.map(put)));
  const kept = withEntries(report, next, messagesOf(report.live));
  return { report: { ...kept, tallyTyped: [...kept.tallyTyped, text] }, lines: next.slice(from).flat() };
}

const EMOJI = /[\p{Extended_Pictographic}\uFE0F\u{1F3FB}-\u{1F3FF}]/gu;

/** What counts nothing; null where it may be a queen that could not be read. */
export function countsNothing(thread: Thread, report: Running, text: string, scene: Scene): Outcome | null {
  const { wording, words } = scene.survey;
  const queens = queensOf(report.tally ?? []);
  const said = fold(text)
    .replace(EMOJI, ' ')
    .replace(/[^\p{L}\p{N}'’]+/gu, ' ')
    .trim();
  const isChat =
    said === '' || [...words.live.chat, ...words.wishes.acknowledges, ...words.wishes.thanks].includes(said);
  if (isChat) return acknowledged(thread, report, say(wording, 'live-noted'));
  const { bees } = namedIn(text, contextOf(scene, report));
  const isGone = words.live.gone.includes(said);
  if (
    isGone ||
    saysAnyOf(text, words.tally.passedBy) ||
    (bees.length === 0 && saysAnyOf(text, words.tally.otherInsects))
  )
    return acknowledged(thread, report, say(wording, isGone ? 'live-noted' : 'live-not-counted', { queens }));
  const heard = hear(report, text, [], scene);
  if (heard.taken.length === 0 || heard.taken.some((field) => OF_THE_CLOCK.has(field))) return null;
  if (heard.report.doubts.length > report.doubts.length) return null;
  return acknowledged(thread, heard.report, briefly(heard.taken, heard.report, scene) ?? say(wording, 'live-noted'));
}

/** "Nothing yet": none so far. */
export const saysNothingYet = (text: string, { survey }: Scene): boolean =>
  survey.words.live.nothingYet.includes(
    fold(text)
      .replace(/[^\p{L}\p{N}'’]+/gu, ' ')
      .trim(),
  );
