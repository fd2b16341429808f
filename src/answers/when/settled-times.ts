/** Start and end as told become one reading: what is sure, what is offered, what is not understood. */
import type { Ask } from '../../../shared/phrases.js';
import { none, sure, unsure, type Reading, type Span } from '../reading.js';
import type { Clock, TimeScan } from './clock.js';
import {
  meaningsOf,
  settleEndAndLength,
  settleSpan,
  settleStart,
  settleStartAndLength,
  type Settled,
  type Settling,
} from './halves.js';
import type { Parts } from './time-parts.js';
import type { End, Told } from './told-times.js';

/** 24-hour local `HH:MM`; `end` null where neither an end nor a length was said. */
export interface Times {
  readonly start: string;
  readonly end: string | null;
}

/** Two times without a word between them are start and end only where they lie this near. */
const MOST_MINUTES_TOGETHER = 60;

const clockOf = (minutes: number): string =>
  `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;

const timesOf = ({ start, end }: Settled): Times => ({
  start: clockOf(start),
  end: end === null ? null : clockOf(end),
});

export function fromSettling({ meanings, doubt }: Settling, used: readonly Span[]): Reading<Times> {
  const [first, ...others] = meanings.map(timesOf);
  if (!first) return none('end-before-start', used);
  return doubt === null ? sure(first, used) : unsure([first, ...others], doubt, used);
}

/** Offers of several readings, one after the other, none twice. */
export function offering(readings: readonly Reading<Times>[], ask: Ask, used: readonly Span[]): Reading<Times> {
  const offers = readings.flatMap((reading) => {
    if (reading.state === 'sure') return [reading.value];
    return reading.state === 'unsure' ? reading.offer : [];
  });
  const offer = offers.filter((one, i) => offers.findIndex((other) => same(one, other)) === i);
  return offer.length === 0 ? none('end-before-start', used) : unsure(offer, ask, used);
}

const same = (one: Times, other: Times): boolean => one.start === other.start && one.end === other.end;

/** "3:10 to 3:25, ended 3:30": a start or an end of its own that lies outside the span is asked about. */
function labelsAgree(reading: Reading<Times>, { starts, ends }: Told, used: readonly Span[]): Reading<Times> {
  if (reading.state !== 'sure' || reading.value.end === null) return reading;
  const [from, to] = [minutesOf(reading.value.start), minutesOf(reading.value.end)];
  const outside = [...starts, ...ends].some(
    (clock) => 'form' in clock && meaningsOf(clock).every((minutes) => minutes < from || minutes > to),
  );
  return outside ? unsure([reading.value], 'two-times', used) : reading;
}

/** Start and end as told, their halves settled. */
export function settle(scan: TimeScan, { windows }: Parts, told: Told, used: readonly Span[]): Reading<Times> {
  const length = lengthOf(told);
  const doubtful = (clock: Clock | undefined, reading: Reading<Times>): Reading<Times> =>
    clock?.doubtful && reading.state === 'sure' ? unsure([reading.value], 'doubted-times', used) : reading;

  const [span] = told.spans;
  if (span) {
    const readings = told.spans.map(({ start, end }) => fromSettling(settleSpan(start, end, windows), used));
    const [reading] = readings;
    if (!reading) return none('no-time', used);
    if (span.orEnd) {
      const other = fromSettling(settleSpan(span.start, span.orEnd, windows), used);
      return offering([reading, other], 'two-times', used);
    }
    const values = readings.map((one) => (one.state === 'sure' ? one.value : null));
    const different = values.some((value) => value === null || !same(value, values[0] ?? value));
    if (readings.length > 1 && different) return offering(readings, 'two-spans', used);
    const end = 'form' in span.end && span.end.doubtful ? span.end : undefined;
    if (span.doubtful) return offering([reading], 'doubted-times', used);
    return doubtful(end ?? span.start, agreeing(labelsAgree(reading, told, used), length, used));
  }

  const starts = told.starts.length > 0 ? told.starts : told.plain;
  const [start, second] = starts;
  const [end] = told.ends;
  const several = start && end && (told.starts.length > 1 || told.ends.length > 1);
  const only = several ? onlyShortSpan(starts, told.ends, scan.watchMinutes, windows, used) : null;
  if (only) return agreeing(only, length, used);
  if (start && end) return doubtful(start, agreeing(fromSettling(settleSpan(start, end, windows), used), length, used));
  if (end && 'form' in end) return endOnly(scan, end, windows, length, used);
  if (!start) return none('no-time', used);
  if (start.orSpan) return startOrSpan(start, start.orSpan, windows, used);

  // "15" alone is as likely the length
  if (start.form === 'hour' && start.hour > 12) {
    if (start.hour === scan.watchMinutes) return none('no-start', used);
    return offering([fromSettling(settleStart(start, windows), used)], 'doubted-times', used);
  }

  const alone = (clock: Clock): Reading<Times> =>
    fromSettling(length ? settleStartAndLength(clock, length.minutes, windows) : settleStart(clock, windows), used);
  if (second && !told.starts.includes(second)) {
    const settled = fromSettling(settleSpan(start, second, windows), used);
    if (told.plainTogether && !told.either && settled.state !== 'none' && isShort(settled)) {
      // "three twenty two three thirty five" may be from twenty past
      if (scan.words.numbers.units[scan.tokens[start.next - 1]?.text ?? ''] === 2 && start.minute > 20) {
        const earlier = settleSpan({ ...start, minute: start.minute - 2 }, second, windows);
        return offering([fromSettling(earlier, used), settled], 'doubted-times', used);
      }
      // "two two fifteen" may be a stammer
      const plain = start.form === 'hour' ? { ...start, doubtful: true } : start;
      return doubtful(plain, agreeing(settled, length, used));
    }
  }
  if (second) return offering(starts.map(alone), 'two-times', used);
  const [other] = told.starts.length > 0 ? told.plain : [];
  if (other && !length) {
    // "started 2:15 by the fence, 2:30": the other may be the end, or the start of "out 2:15, started in on it 2:30"
    for (const [from, to] of [
      [start, other],
      [other, start],
    ] as const) {
      const settled = fromSettling(settleSpan(from, to, windows), used);
      if (settled.state !== 'none' && isShort(settled)) return offering([settled, alone(start)], 'two-times', used);
    }
  }
  if (length?.inexact) return offering([alone(start)], 'length-inexact', used);
  return doubtful(start, alone(start));
}

/**
 * "got up at 7, started 9:10, ended 9:25": the one start and end that are a watch together, of several the one as long as a
 * watch is; else null.
 */
function onlyShortSpan(
  starts: readonly Clock[],
  ends: readonly End[],
  watchMinutes: number,
  windows: Parts['windows'],
  used: readonly Span[],
): Reading<Times> | null {
  const spans = starts
    .flatMap((start) => ends.map((end) => fromSettling(settleSpan(start, end, windows), used)))
    .filter((reading) => reading.state === 'sure' && isShort(reading));
  const lasting = spans.filter(
    (reading) =>
      reading.state === 'sure' && minutesOf(reading.value.end!) - minutesOf(reading.value.start) === watchMinutes,
  );
  return (spans.length === 1 ? spans : lasting).length === 1 ? (lasting[0] ?? spans[0]!) : null;
}

const minutesOf = (time: string): number => Number(time.slice(0, 2)) * 60 + Number(time.slice(3));

function isShort(reading: Reading<Times>): boolean {
  const value = reading.state === 'sure' ? reading.value : reading.state === 'unsure' ? reading.offer[0] : undefined;
  if (!value?.end) return false;
  return minutesOf(value.end) - minutesOf(value.start) <= MOST_MINUTES_TOGETHER;
}

/** The one length said; of several only one that was said twice. */
function lengthOf({ lengths }: Told): { minutes: number; inexact: boolean } | null {
  const [first] = lengths;
  if (!first) return null;
  return lengths.every(({ minutes }) => minutes === first.minutes) ? first : null;
}

/** A span and a length that differ are asked about. */
function agreeing(
  reading: Reading<Times>,
  length: { minutes: number; inexact: boolean } | null,
  used: readonly Span[],
): Reading<Times> {
  if (reading.state !== 'sure' || !length || length.inexact || reading.value.end === null) return reading;
  const said = minutesOf(reading.value.end) - minutesOf(reading.value.start);
  return said === length.minutes ? reading : unsure([reading.value], 'length-differs', used);
}

/** "until 3:35": with a length its start is known; without, the survey's own length before it is offered. */
function endOnly(
  scan: TimeScan,
  end: Clock,
  windows: Parts['windows'],
  length: { minutes: number; inexact: boolean } | null,
  used: readonly Span[],
): Reading<Times> {
  const reading = fromSettling(settleEndAndLength(end, length?.minutes ?? scan.watchMinutes, windows), used);
  if (length && !length.inexact) return reading;
  return offering([reading], length ? 'length-inexact' : 'only-an-end', used);
}

/** "10 to 3": from ten to three, or ten minutes to three. */
function startOrSpan(
  start: Clock,
  { from, to }: { from: number; to: number },
  windows: Parts['windows'],
  used: readonly Span[],
): Reading<Times> {
  const hour = (value: number, fixed: boolean): Clock => ({ ...start, hour: value, offset: 0, orSpan: null, fixed });
  const span = fromSettling(settleSpan(hour(from, false), hour(to, start.fixed), windows), used);
  const time = fromSettling(settleStart({ ...start, orSpan: null }, windows), used);
  return offering([span, time], 'to-or-before', used);
}
