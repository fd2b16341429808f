/**
 * A live watch: "start" begins the survey's minutes, each message is a tally, "pause" stops the clock. While it runs the
 * helper only acknowledges, silently, in a word or two; what could not be read waits until time is up.
 */
import { Temporal } from 'temporal-polyfill';
import { rankOf, readFields, readTotal, type Context, type TallyRow } from '../answers/index.js';
import type { Wish } from '../answers/index.js';
import { showClock } from '../../shared/display.js';
import { say } from '../../shared/wording.js';
import { addPlants, plantKey, plantsByKey, tell } from './fields.js';
import { contextOf, lineOf } from './hear.js';
import { showLine } from './show.js';
import { changed, withReport } from './thread.js';
import type { Effect, Live, Outcome, Report, Scene, TallyLine, Thread } from './types.js';

export const FIVE_LEFT = 'five-left';
export const TIME_UP = 'time-up';
export const LEFT_OPEN = 'left-open';
const FIVE_MINUTES = 300;
/** A paused live watch is asked about once after this long. */
const LEFT_OPEN_SECONDS = 2 * 3600;

/** A clock that runs is never at a whole second, and Temporal adds whole numbers only. */
const after = (instant: string, seconds: number): string =>
  Temporal.Instant.from(instant)
    .add({ milliseconds: Math.round(seconds * 1000) })
    .toString();
const secondsBetween = (from: string, to: string): number =>
  Temporal.Instant.from(to).since(Temporal.Instant.from(from)).total('seconds');

/** Seconds the clock has run by `now`, pauses out. */
export function watchedSeconds(live: Live, now: string): number {
  return secondsBetween(live.startedAt, live.pausedAt ?? now) - live.pausedSeconds;
}

function timersFor(live: Live, report: string, scene: Scene): Effect[] {
  const left = scene.survey.settings.protocol.minutes * 60 - watchedSeconds(live, scene.now);
  const effects: Effect[] = [
    { do: 'set-timer', key: TIME_UP, report, due: after(scene.now, Math.max(0, left)) },
    { do: 'clear-timer', key: LEFT_OPEN },
  ];
  if (left > FIVE_MINUTES)
    effects.push({ do: 'set-timer', key: FIVE_LEFT, report, due: after(scene.now, left - FIVE_MINUTES) });
  return effects;
}

const outcome = (
  thread: Thread,
  report: Report,
  said: readonly string[],
  effects: readonly Effect[] = [],
  silent = false,
): Outcome => ({
  thread: { ...withReport(thread, report), asking: { kind: 'live' } },
  said,
  effects,
  then: 'rest',
  silent,
});

/** A tally in a word or two: each takes the place of the one before, so that a watch leaves one message and no sound. */
const acknowledged = (
  thread: Thread,
  report: Report,
  said: readonly string[],
  effects: readonly Effect[] = [],
): Outcome => ({ ...outcome(thread, report, said, effects, true), slot: liveSlot(report) });

export const liveSlot = (report: Report): string => `live:${report.id}`;

export function startLive(thread: Thread, report: Report, scene: Scene): Outcome {
  const live: Live = {
    startedAt: scene.now,
    pausedAt: null,
    pausedSeconds: 0,
    entries: [],
    entryMessages: [],
    unread: [],
  };
  const { minutes } = scene.survey.settings.protocol;
  const next = changed(report, { live, liveMinutes: null });
  const time = showClock(localTime(scene.now, scene), scene.survey.wording.locale);
  return outcome(
    thread,
    next,
    [say(scene.survey.wording, 'live-started', { minutes, time })],
    timersFor(live, report.id, scene),
  );
}

const localTime = (instant: string, scene: Scene): string =>
  Temporal.Instant.from(instant)
    .toZonedDateTimeISO(scene.survey.settings.timeZone)
    .toPlainTime()
    .toString({ smallestUnit: 'minute' });
const localDate = (instant: string, scene: Scene): string =>
  Temporal.Instant.from(instant).toZonedDateTimeISO(scene.survey.settings.timeZone).toPlainDate().toString();

/** One message while the clock runs or is stopped. */
export function hearLive(
  thread: Thread,
  report: Report & { live: Live },
  text: string,
  wish: Wish | null,
  scene: Scene,
): Outcome {
  const { wording } = scene.survey;
  const { live } = report;
  switch (wish?.wish) {
    case 'pause':
      return pauseLive(thread, report, scene);
    case 'start':
    case 'go-on':
      return resumeLive(thread, report, scene);
    case 'stop':
    case 'all-done':
      return endLive(thread, report, scene);
    case 'undo':
      return undoTally(thread, report, scene);
    case 'so-far':
      return outcome(thread, report, [tallySoFar(report, scene)], [], true);
    case 'help':
      return outcome(thread, report, [say(wording, 'live-help')], [], true);
    case 'throw-away':
      return {
        thread: { ...thread, asking: { kind: 'throw-away' } },
        said: [],
        effects: [],
        then: 'repeat',
      };
    default:
      break;
  }
  const lines = readLiveTally(report, text, scene);
  if (lines === null) {
    const unread = changed(report, { live: { ...live, unread: [...live.unread, text] } });
    return acknowledged(thread, unread, [say(wording, 'live-noted')]);
  }
  return counted(thread, countLines(report, lines, text, scene), lines, scene);
}

function counted(thread: Thread, next: Report, lines: readonly TallyLine[], scene: Scene): Outcome {
  const { wording } = scene.survey;
  const context = contextOf(scene, next);
  const shown = lines.map((line) => showLine(line, next.plants ?? [], scene.survey, context)).join('; ');
  return acknowledged(thread, next, [say(wording, 'live-counted', { lines: shown, queens: queensSoFar(next) })]);
}

/** A message that was changed while the clock runs is counted again in its own place; null where it counted nothing. */
export function recountLive(
  thread: Thread,
  report: Report & { live: Live },
  earlier: string,
  text: string,
  scene: Scene,
): Outcome | null {
  const { live } = report;
  const at = messagesOf(live).lastIndexOf(earlier);
  if (at === -1) return null;
  const before = { ...report, live: { ...live, entries: live.entries.slice(0, at) } };
  const lines = readLiveTally(before, text, scene);
  if (lines === null) {
    const unread = changed(report, { live: { ...live, unread: [...live.unread, text] } });
    return acknowledged(thread, unread, [say(scene.survey.wording, 'live-noted')]);
  }
  const entries = live.entries.map((entry, index) => (index === at ? lines : entry));
  const next = withEntries(report, entries, messagesOf(live));
  return counted(thread, { ...next, tallyTyped: [...next.tallyTyped, text] }, lines, scene);
}

const messagesOf = ({ entries, entryMessages }: Live): readonly string[] => entryMessages ?? entries.map(() => '');

const queensSoFar = (report: Report): number =>
  (report.tally ?? []).reduce((sum, line) => sum + line.count - line.seenBefore, 0);

/** In a live watch lines add up: each message is what was seen since the last. */
function summed(entries: Live['entries']): TallyLine[] {
  const all: TallyLine[] = [];
  for (const line of entries.flat()) {
    const at = all.findIndex(
      (known) =>
        known.plant === line.plant &&
        known.bee === line.bee &&
        known.caste === line.caste &&
        known.doubt === line.doubt,
    );
    const known = all[at];
    if (known === undefined) {
      all.push(line);
      continue;
    }
    const withPollen = line.withPollen === null ? known.withPollen : (known.withPollen ?? 0) + line.withPollen;
    all[at] = { ...known, count: known.count + line.count, seenBefore: known.seenBefore + line.seenBefore, withPollen };
  }
  // "nothing on the phlox" said early gives way to what came later
  return all.filter((line) => line.count > 0 || !all.some((other) => other.count > 0 && other.plant === line.plant));
}

function withEntries(
  report: Report & { live: Live },
  entries: Live['entries'],
  entryMessages: readonly string[],
): Report {
  return changed(report, { live: { ...report.live, entries, entryMessages }, tally: summed(entries) });
}

function countLines(report: Report & { live: Live }, lines: readonly TallyLine[], text: string, scene: Scene): Report {
  return {
    ...withEntries(report, [...report.live.entries, lines], [...messagesOf(report.live), scene.message.id]),
    tallyTyped: [...report.tallyTyped, text],
    tallyMessage: scene.message.id,
  };
}

/** A tally, "+1" for one more like the last, or a bee without its plant: then the plant said last. */
function readLiveTally(report: Report & { live: Live }, text: string, scene: Scene): TallyLine[] | null {
  const context = { ...contextOf(scene, report), watched: livePlants(report) };
  const last = report.live.entries.at(-1)?.at(-1);
  const plus = /^\s*\+\s*(?<more>\d{1,3})?\s*$/.exec(text);
  if (plus) {
    if (last === undefined) return null;
    return [{ ...last, count: Number(plus.groups?.['more'] ?? 1), seenBefore: 0, withPollen: null, typed: text }];
  }
  const rows = rowsAfter(last, text, context);
  if (rows !== null) {
    return rows.map((row) => {
      const line = lineOf(row, text, context);
      const bee = line.bee ?? (line.count > 0 ? (last?.bee ?? null) : null);
      const rank = bee === null ? null : rankOf(bee, context);
      return { ...line, bee, rank, plant: line.plant ?? last?.plant ?? null };
    });
  }
  const total = readTotal(text, { ...context, of: 'queens' });
  if (total.state === 'sure' && total.value > 0 && last !== undefined) {
    return [{ ...last, count: total.value, seenBefore: 0, withPollen: null, typed: text }];
  }
  return null;
}

/** The rows of a text; "same one on the phlox" means the bee of the message before, so that is said before it. */
function rowsAfter(last: TallyLine | undefined, text: string, context: Context): readonly TallyRow[] | null {
  const alone = readFields(text, context, ['tally']).fields.tally;
  if (alone?.state === 'sure') return alone.value;
  if (last?.bee == null || last.plant === null) return null;
  const watched = [...new Set([...context.watched, last.plant])];
  const both = readFields(`1 ${last.bee} on ${last.plant}, ${text}`, { ...context, watched }, ['tally']).fields.tally;
  return both?.state === 'sure' && both.value.length > 1 ? both.value.slice(1) : null;
}

const livePlants = (report: Report): string[] => [
  ...new Set([...(report.plants ?? []).map(plantKey), ...(report.tally ?? []).flatMap(({ plant }) => plant ?? [])]),
];

function tallySoFar(report: Report, scene: Scene): string {
  const context = contextOf(scene, report);
  const lines = (report.tally ?? []).map((line) => showLine(line, report.plants ?? [], scene.survey, context));
  return lines.length === 0 ? say(scene.survey.wording, 'live-none-yet') : lines.join('\n');
}

function undoTally(thread: Thread, report: Report & { live: Live }, scene: Scene): Outcome {
  const { wording } = scene.survey;
  if (report.live.entries.length === 0)
    return outcome(thread, report, [say(wording, 'live-nothing-to-undo')], [], true);
  const next = withEntries(report, report.live.entries.slice(0, -1), messagesOf(report.live).slice(0, -1));
  return acknowledged(thread, next, [say(wording, 'live-undone', { queens: queensSoFar(next) })]);
}

function pauseLive(thread: Thread, report: Report & { live: Live }, scene: Scene): Outcome {
  if (report.live.pausedAt !== null) return acknowledged(thread, report, [say(scene.survey.wording, 'live-paused')]);
  const next = changed(report, { live: { ...report.live, pausedAt: scene.now } });
  const effects: Effect[] = [
    { do: 'clear-timer', key: FIVE_LEFT },
    { do: 'clear-timer', key: TIME_UP },
    { do: 'set-timer', key: LEFT_OPEN, report: report.id, due: after(scene.now, LEFT_OPEN_SECONDS) },
  ];
  return acknowledged(thread, next, [say(scene.survey.wording, 'live-paused')], effects);
}

function resumeLive(thread: Thread, report: Report & { live: Live }, scene: Scene): Outcome {
  const { live } = report;
  if (live.pausedAt === null) return acknowledged(thread, report, [say(scene.survey.wording, 'live-running')]);
  const resumed: Live = {
    ...live,
    pausedAt: null,
    pausedSeconds: live.pausedSeconds + secondsBetween(live.pausedAt, scene.now),
  };
  const next = changed(report, { live: resumed });
  return acknowledged(thread, next, [say(scene.survey.wording, 'live-running')], timersFor(resumed, report.id, scene));
}

/** Time is up, or was called: times, minutes and tally are filled in; only the rest is asked. */
export function endLive(thread: Thread, report: Report & { live: Live }, scene: Scene): Outcome {
  const { live } = report;
  const { wording, settings } = scene.survey;
  const { minutes } = settings.protocol;
  const seconds = Math.min(watchedSeconds(live, scene.now), minutes * 60);
  // a stopped clock ends the watch where it was stopped
  const over = watchedSeconds(live, scene.now) - seconds;
  const endedAt = after(live.pausedAt ?? scene.now, -over);
  const start = localTime(live.startedAt, scene);
  const end = localTime(endedAt, scene);
  const { id } = scene.message;
  let next = tell(report, 'date', localDate(live.startedAt, scene), 'start', id);
  next = tell(next, 'times', { start, end: end >= start ? end : '23:59' }, 'start', id);
  const plants = livePlants(report);
  const known = new Set((report.plants ?? []).map(plantKey));
  const missing = plants.filter((key) => !known.has(key));
  if (missing.length > 0) next = addPlants(next, plantsByKey(missing, contextOf(scene, report)));
  const watched = Math.round(seconds / 6) / 10;
  next = changed(next, {
    live: null,
    liveMinutes: watched,
    plantsOpen: plants.length > 0,
    tally: (report.tally ?? []).length > 0 ? report.tally : null,
    doubts: [
      ...next.doubts,
      ...live.unread.map((typed) => ({
        field: 'tally',
        plant: null,
        offers: [],
        ask: 'tally-unread-live' as const,
        typed,
      })),
    ],
  });
  return {
    thread: { ...withReport(thread, next), asking: null },
    said: [say(wording, 'live-over', { minutes: watched, queens: queensSoFar(next) })],
    effects: [
      { do: 'clear-timer', key: FIVE_LEFT },
      { do: 'clear-timer', key: TIME_UP },
      { do: 'clear-timer', key: LEFT_OPEN },
    ],
    then: 'ask',
  };
}
