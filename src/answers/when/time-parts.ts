/** A text cut into what matters for times: clock times, lengths, and the words that link them. */
import { clockAt, clockOfNow, type Clock, type TimeScan } from './clock.js';
import { isWeatherOnly } from './company.js';
import { lengthAt, type Length } from './lengths.js';
import type { Link, Window } from './time-words.js';
import { sentenceEndsBefore, smallNumberAt } from './tokens.js';

export type Part =
  | { readonly is: 'clock'; readonly clock: Clock }
  /** ":30", "quarter past", "35" after "to": minutes of the hour that the start says. */
  | {
      readonly is: 'minute';
      readonly minute: number;
      readonly hours: number | null;
      readonly at: number;
      readonly next: number;
    }
  | { readonly is: 'length'; readonly length: Length }
  /** `typed`: "2" stands where "to" was meant. */
  | { readonly is: 'link'; readonly link: Link; readonly typed: boolean; readonly at: number; readonly next: number }
  /** A sentence or a line ends. */
  | { readonly is: 'stop' }
  /** "," and the like. */
  | { readonly is: 'sign' }
  /** So many words that say nothing of times. */
  | { readonly is: 'other'; readonly words: number };

export interface Parts {
  readonly parts: readonly Part[];
  /** Parts of the day said anywhere but right after a time: "this morning". */
  readonly windows: readonly Window[];
}

/** True where the clock or minute last said is followed by nothing but signs and a date. */
function afterTime(parts: readonly Part[]): boolean {
  const last = parts.findLast((part) => part.is !== 'sign');
  return last?.is === 'clock' || (last?.is === 'link' && last.link === 'to');
}

/** ":30", "quarter past", "5 past", "35", as an end; bare figures only where `near` the start. */
function minuteAt({ tokens, words, timeWords, taken }: TimeScan, at: number, start: Clock, near: boolean): Part | null {
  const token = tokens[at];
  if (!token || taken[at] === true) return null;
  const said = timeWords.fromHour(tokens, at);
  if (said) return { is: 'minute', minute: (said.value + 60) % 60, hours: null, at, next: said.next };
  const colon = token.text === ':';
  const minute = tokens[colon ? at + 1 : at];
  // "End: 11:05"
  if (colon && (minute?.spaced === true || tokens[at + 2]?.text === ':')) return null;
  const twoDigits = minute?.kind === 'number' && minute.text.length === 2 && Number(minute.text) < 60;
  const next = colon ? at + 2 : at + 1;
  if (colon) return twoDigits ? { is: 'minute', minute: Number(minute.text), hours: null, at, next } : null;

  const number = smallNumberAt(tokens, at, words.numbers);
  if (!number || number.value > 59) return null;
  const past = timeWords.past(tokens, number.next);
  if (past && number.value >= 1) return { is: 'minute', minute: number.value, hours: null, at, next: past.next };
  if (!near) return null;
  const after = tokens[number.next];
  const goesOn = after && !after.spaced && [':', '.', '/', '%', '°'].includes(after.text);
  const measured =
    timeWords.measures(tokens, number.next) ?? timeWords.am(tokens, number.next) ?? timeWords.pm(tokens, number.next);
  if (goesOn || measured || timeWords.oclock(tokens, number.next)) return null;
  const short =
    number.written === 'words' ? number.value > 12 : twoDigits && (number.value > 12 || token.text.startsWith('0'));
  if (!short || (start.form === 'hour' && number.value > 23)) return null;
  // "14:00 to 15" can be an hour of the 24-hour clock
  const hours = number.value <= 23 && (start.hour > 12 || start.form === 'hour') ? number.value : null;
  return { is: 'minute', minute: number.value, hours, at, next: number.next };
}

/** The clock time that a "to" or "ended" follows, where the parts end in one. */
function startOfTo(parts: readonly Part[], between: boolean): { clock: Clock; near: boolean } | null {
  let linked = false;
  let near = true;
  for (const part of parts.slice(-8).reverse()) {
    if (part.is === 'link' && (part.link === 'to' || part.link === 'end' || (part.link === 'and' && between)))
      linked = true;
    else if (part.is === 'clock') return linked ? { clock: part.clock, near } : null;
    else if (!linked && part.is !== 'sign' && !(part.is === 'link' && part.link === 'at')) return null;
    else if (part.is === 'other') near = false;
  }
  return null;
}

/** "2" or "yo" between two clock times: the token after it. */
function typedTo(scan: TimeScan, parts: readonly Part[], at: number): number | null {
  const last = parts.at(-1);
  const typed = scan.timeWords.typedTo(scan.tokens, at);
  if (last?.is !== 'clock' || last.clock.next !== at || !typed) return null;
  const clock = clockAt(scan, typed.next);
  return clock !== null && clock.form !== 'hour' && scan.tokens[at]?.spaced === true ? typed.next : null;
}

/** "4 to 4:15": a span, though its start is a bare hour. */
function isSpanAt(parts: readonly Part[], at: number): boolean {
  const [start, link, end] = parts.slice(at, at + 3);
  return (
    start?.is === 'clock' &&
    link?.is === 'link' &&
    link.link === 'to' &&
    end?.is === 'clock' &&
    end.clock.form !== 'hour'
  );
}

/** "just finished: 2:50 to 3:05" is those times, "just finished at 3:05" that one. */
function withoutNeedlessNow(parts: readonly Part[], nows: readonly number[]): readonly Part[] {
  if (nows.length === 0) return parts;
  const needless = nows.filter((now) => {
    const others = parts.filter((part, at) => part.is === 'clock' && part.clock.form !== 'hour' && !nows.includes(at));
    const next = parts.findIndex(
      (part, at) => at > now && part.is !== 'sign' && !(part.is === 'link' && part.link === 'at'),
    );
    return others.length > 1 || parts[next]?.is === 'clock' || parts.some((_, at) => isSpanAt(parts, at));
  });
  return parts.filter((_, at) => !needless.includes(at));
}

/** A text with more clock times than this is no answer; what follows them is not looked at. A long note has about ten. */
const MOST_CLOCKS = 60;

export function timeParts(scan: TimeScan): Parts {
  const { tokens, words, timeWords, taken } = scan;
  const parts: Part[] = [];
  const windows: Window[] = [];
  /** Where "just finished" stands for a time. */
  const nows: number[] = [];
  let clocks = 0;
  let between = false;
  for (let at = 0; at < tokens.length && clocks < MOST_CLOCKS;) {
    // the point of "p.m." ends no sentence
    const last = parts.at(-1);
    const ends =
      last?.is === 'clock' && last.clock.next === at ? tokens[at]?.first === true : sentenceEndsBefore(tokens, at);
    if (at > 0 && ends && last?.is !== 'stop') parts.push({ is: 'stop' });
    const window = timeWords.partsOfDay(tokens, at);
    if (window) {
      if (window.value && !isWeatherOnly(tokens, { at, next: window.next }, words)) windows.push(window.value);
      at = window.next;
      continue;
    }
    const ended = timeWords.justEnded(tokens, at);
    const now = ended ?? (startOfTo(parts, between) ? timeWords.now(tokens, at) : null);
    if (now) {
      if (ended) parts.push({ is: 'link', link: 'end', typed: false, at, next: now.next });
      parts.push({ is: 'clock', clock: clockOfNow(scan, at, now.next) });
      if (ended) nows.push(parts.length - 1);
      at = now.next;
      continue;
    }
    if (taken[at] === true) {
      at++;
      continue;
    }
    const typed = typedTo(scan, parts, at);
    if (typed !== null) {
      parts.push({ is: 'link', link: 'to', typed: true, at, next: typed });
      at = typed;
      continue;
    }
    const clock = clockAt(scan, at);
    const length = clock !== null && clock.offset !== 0 ? null : lengthAt(scan, at);
    if (length) {
      parts.push({ is: 'length', length });
      at = length.next;
      continue;
    }
    const start = startOfTo(parts, between);
    const minute = start && minuteAt(scan, at, start.clock, start.near);
    // "2:15 to 30": minutes, unless it reads as a time of its own
    if (minute?.is === 'minute' && (!clock || (clock.form === 'hour' && clock.next <= minute.next))) {
      parts.push(minute);
      at = minute.next;
      continue;
    }
    if (clock) {
      clocks++;
      parts.push({ is: 'clock', clock });
      at = clock.next;
      continue;
    }
    const link = timeWords.links(tokens, at);
    const token = tokens[at];
    if (link) {
      between ||= link.value === 'between';
      const signs = tokens.slice(at, link.next).every(({ kind }) => kind === 'sign');
      const stands = !signs || afterTime(parts);
      if (stands) parts.push({ is: 'link', link: link.value, typed: false, at, next: link.next });
      // "just before supper" ends in a part of the day
      const dayPart = link.next - at > 1 && timeWords.partsOfDay(tokens, link.next - 1) !== null;
      at = dayPart ? link.next - 1 : link.next;
      continue;
    }
    const before = parts.at(-1);
    if (token?.kind === 'sign' && before?.is === 'sign') {
      at++;
      continue;
    }
    if (token?.kind === 'sign') parts.push({ is: 'sign' });
    else if (before?.is === 'other') parts[parts.length - 1] = { is: 'other', words: before.words + 1 };
    else parts.push({ is: 'other', words: 1 });
    at++;
  }
  return { parts: withoutNeedlessNow(parts, nows), windows };
}
