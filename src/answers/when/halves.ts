/** Which half of the day a clock time means: by am and pm, by the part of the day, by the other end, by daytime. */
import type { Clock } from './clock.js';
import type { End } from './told-times.js';
import type { Window } from './time-words.js';

/** Minutes from midnight; `end` null where none was said. */
export interface Settled {
  readonly start: number;
  readonly end: number | null;
}

/** Best first. `doubt`: why the first is not sure. */
export interface Settling {
  readonly meanings: readonly Settled[];
  readonly doubt: 'morning-or-evening' | 'odd-hour' | 'minute-or-hour' | null;
}

const NOON = 12 * 60;
const DAY = 24 * 60;

/** A span whose halves we chose is never longer: "10:40 to 10:20" is a slip, not half a day. */
const LONGEST_CHOSEN_MINUTES = 10 * 60;

/** All that a time can mean, in minutes from midnight, by what was said of its half. */
export function meaningsOf({ hour, offset, minute, half, fixed }: Clock): readonly number[] {
  const minutes = (hours: number): number => (hours * 60 + minute + offset + DAY) % DAY;
  if (fixed || hour === 0 || hour > 12) return [minutes(hour)];
  const morning = minutes(hour % 12);
  const evening = minutes((hour % 12) + 12);
  if (half === 'am') return [morning];
  if (half === 'pm') return [evening];
  return [morning, evening];
}

/**
 * Daytime, where nothing was said: 1 to 5 and 12 are afternoon, 8 to 11 are morning; 6 and 7 can be before or after
 * work (null).
 */
function byDaytime(minutes: number): 'morning' | 'afternoon' | null {
  const hour = Math.floor(minutes / 60) % 12;
  if (hour === 6 || hour === 7) return null;
  return hour >= 8 ? 'morning' : 'afternoon';
}

const inWindow = (minutes: number, [from, to]: Window): boolean => minutes >= from * 60 && minutes < to * 60;

/** Settles among meanings that differ only in the half of their start. */
function chosen(meanings: readonly Settled[], own: Window | null, hints: readonly Window[]): Settling {
  if (meanings.length < 2) return { meanings, doubt: null };
  const fit = (windows: readonly Window[]): readonly Settled[] => {
    const byStart = meanings.filter(({ start }) => windows.every((window) => inWindow(start, window)));
    if (byStart.length > 0) return byStart;
    return meanings.filter(({ end }) => end !== null && windows.every((window) => inWindow(end, window)));
  };
  const windows = own ? [own] : hints;
  const fitting = fit(windows);
  const left = fitting.length > 0 ? fitting : meanings;
  const [first] = left;
  if (left.length === 1 && first) return { meanings: left, doubt: null };
  const daytime = first ? byDaytime(first.start) : null;
  const isMorning = ({ start }: Settled): boolean => start < NOON;
  const best = left.filter((meaning) => isMorning(meaning) === (daytime !== 'afternoon'));
  const ordered = [...best, ...left.filter((meaning) => !best.includes(meaning))];
  if (daytime === null) return { meanings: ordered, doubt: 'morning-or-evening' };
  // "2:20 this morning": neither half fits what was said
  return windows.length > 0 && fitting.length === 0
    ? { meanings: ordered, doubt: 'odd-hour' }
    : { meanings: best, doubt: null };
}

/** "0740" leaves no half of the day open, though it may be meant for an evening where that was said. */
function asWritten({ padded }: Clock, settling: Settling): Settling {
  if (!padded || settling.doubt !== 'morning-or-evening') return settling;
  return { meanings: settling.meanings.slice(0, 1), doubt: null };
}

/** A start alone. */
export function settleStart(start: Clock, windows: readonly Window[]): Settling {
  const meanings = meaningsOf(start).map((minutes) => ({ start: minutes, end: null }));
  return asWritten(start, chosen(meanings, start.window, windows));
}

/** A start, and so many minutes from it. Past midnight there is no end. */
export function settleStartAndLength(start: Clock, minutes: number, windows: readonly Window[]): Settling {
  const meanings = meaningsOf(start).map((from) => ({ start: from, end: from + minutes }));
  const settled = asWritten(start, chosen(meanings, start.window, windows));
  return { ...settled, meanings: settled.meanings.filter(({ end }) => end !== null && end < DAY) };
}

/** An end, and so many minutes before it. */
export function settleEndAndLength(end: Clock, minutes: number, windows: readonly Window[]): Settling {
  const meanings = meaningsOf(end)
    .map((to) => ({ start: to - minutes, end: to }))
    .filter(({ start }) => start >= 0);
  return chosen(meanings, end.window, windows);
}

/** Start and end; empty where no half of the day lets the end come after the start. */
export function settleSpan(start: Clock, end: End, windows: readonly Window[]): Settling {
  const starts = meaningsOf(start);
  if (!('form' in end)) return settleMinuteEnd(start, end.minute, end.hours, windows);
  const ends = meaningsOf(end);
  const open = starts.length > 1 || ends.length > 1;
  const pairs = starts
    .flatMap((from) => ends.map((to) => ({ start: from, end: to })))
    .filter(({ start: from, end: to }) => to > from && (!open || to - from <= LONGEST_CHOSEN_MINUTES));
  const shortest = (of: readonly Settled[]): Settled[] =>
    of.filter((pair) => of.every((other) => length(other) >= length(pair)));
  // One end said with its half settles the other: the shortest watch that runs forward
  if (starts.length === 1 || ends.length === 1) return { meanings: shortest(pairs).slice(0, 1), doubt: null };
  const each = starts.flatMap((from) => shortest(pairs.filter((pair) => pair.start === from)).slice(0, 1));
  const own = start.window ?? end.window;
  const settled = asWritten(start, chosen(each, own, windows));
  const ownDaytime = byDaytime(starts[0] ?? 0);
  const [best] = settled.meanings;
  // "11:20 to 11:05" in the morning does not run forward, and nobody means half past eleven at night
  const wrongHalf = best && each.length === 1 && ownDaytime !== null && windows.length === 0 && own === null;
  if (wrongHalf && best.start < NOON !== (ownDaytime === 'morning')) return { meanings: [], doubt: null };
  if (each.length === 1 && ownDaytime === null && own === null && windows.length === 0) {
    return asWritten(start, { meanings: each, doubt: 'morning-or-evening' });
  }
  return settled;
}

const length = ({ start, end }: Settled): number => (end ?? start) - start;

/** "2:15-:30", "from 2 until quarter past", "2:50 to 5 past". */
function settleMinuteEnd(start: Clock, minute: number, hours: number | null, windows: readonly Window[]): Settling {
  const meanings = meaningsOf(start).map((from) => {
    const same = Math.floor(from / 60) * 60 + minute;
    return { start: from, end: same > from ? same : same + 60 };
  });
  const settled = chosen(meanings, start.window, windows);
  const hour = hours === null ? null : hours * 60;
  const [best] = settled.meanings;
  if (best && hour !== null && hour > best.start) {
    return { meanings: [...settled.meanings, { start: best.start, end: hour }], doubt: 'minute-or-hour' };
  }
  return settled;
}
