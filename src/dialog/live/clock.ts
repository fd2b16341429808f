/** The clock of a live watch: started, stopped, going on, over. It stands in timers, so that a restart is nothing special. */
import { Temporal } from 'temporal-polyfill';
import { showClock } from '../../../shared/display.js';
import { say } from '../../../shared/wording.js';
import { addPlants, plantKey, plantsByKey, queensOf, tell } from '../fields.js';
import { contextOf } from '../hear.js';
import { changed, withReport } from '../thread.js';
import type { Effect, Live, Outcome, Report, Scene, Thread } from '../types.js';
import { acknowledged, aloud } from './acknowledge.js';
import { usualBees } from './buttons.js';
import { livePlants } from './plants.js';

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
function watchedSeconds(live: Live, now: string): number {
  return secondsBetween(live.startedAt, live.pausedAt ?? now) - live.pausedSeconds;
}

/** Seconds until time is up; below zero where it has been for a while. */
export const secondsLeft = (live: Live, { now, survey }: Scene): number =>
  survey.settings.protocol.minutes * 60 - watchedSeconds(live, now);

function timersFor(live: Live, report: string, scene: Scene): Effect[] {
  const left = secondsLeft(live, scene);
  const effects: Effect[] = [
    { do: 'set-timer', key: TIME_UP, report, due: after(scene.now, Math.max(0, left)) },
    { do: 'clear-timer', key: LEFT_OPEN },
  ];
  if (left > FIVE_MINUTES)
    effects.push({ do: 'set-timer', key: FIVE_LEFT, report, due: after(scene.now, left - FIVE_MINUTES) });
  return effects;
}

const localTime = (instant: string, scene: Scene): string =>
  Temporal.Instant.from(instant)
    .toZonedDateTimeISO(scene.survey.settings.timeZone)
    .toPlainTime()
    .toString({ smallestUnit: 'minute' });
const localDate = (instant: string, scene: Scene): string =>
  Temporal.Instant.from(instant).toZonedDateTimeISO(scene.survey.settings.timeZone).toPlainDate().toString();

export function startLive(thread: Thread, report: Report, scene: Scene): Outcome {
  const { wording, settings } = scene.survey;
  const { minutes } = settings.protocol;
  const live: Live = {
    startedAt: scene.now,
    pausedAt: null,
    pausedSeconds: 0,
    entries: [],
    entryMessages: [],
    unread: [],
    bees: usualBees(scene.history.lastWatches),
  };
  const next = changed(report, { live, liveMinutes: null });
  const time = showClock(localTime(scene.now, scene), wording.locale);
  const said = [say(wording, 'live-started', { minutes, time })];
  if (livePlants(report).length === 0) said.push(say(wording, 'live-name-plants'));
  return aloud(thread, next, said, timersFor(live, report.id, scene));
}

export function pauseLive(thread: Thread, report: Report & { live: Live }, scene: Scene): Outcome {
  if (report.live.pausedAt !== null) return acknowledged(thread, report, say(scene.survey.wording, 'live-paused'));
  const next = changed(report, { live: { ...report.live, pausedAt: scene.now } });
  return acknowledged(thread, next, say(scene.survey.wording, 'live-paused'), [
    { do: 'clear-timer', key: FIVE_LEFT },
    { do: 'clear-timer', key: TIME_UP },
    { do: 'set-timer', key: LEFT_OPEN, report: report.id, due: after(scene.now, LEFT_OPEN_SECONDS) },
  ]);
}

export function resumeLive(thread: Thread, report: Report & { live: Live }, scene: Scene): Outcome {
  const { live } = report;
  if (live.pausedAt === null) return acknowledged(thread, report, say(scene.survey.wording, 'live-running'));
  const resumed: Live = {
    ...live,
    pausedAt: null,
    pausedSeconds: live.pausedSeconds + secondsBetween(live.pausedAt, scene.now),
  };
  const next = changed(report, { live: resumed });
  return acknowledged(thread, next, say(scene.survey.wording, 'live-running'), timersFor(resumed, report.id, scene));
}

/** Something else was said meanwhile, and the watch goes on as it was: whether the clock runs is told. */
export const stillLive = (
  thread: Thread,
  report: Report & { live: Live },
  said: readonly string[],
  { survey }: Scene,
): Outcome =>
  aloud(thread, report, [...said, say(survey.wording, report.live.pausedAt === null ? 'live-running' : 'live-paused')]);

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
    said: [say(wording, 'live-over', { minutes: watched, queens: queensOf(next.tally ?? []) })],
    effects: [
      { do: 'clear-timer', key: FIVE_LEFT },
      { do: 'clear-timer', key: TIME_UP },
      { do: 'clear-timer', key: LEFT_OPEN },
    ],
    then: 'ask',
  };
}
