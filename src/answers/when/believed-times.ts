/**
 * Which numbers of a text are believed to be times. A number alone may be a count, a temperature or a length: it is a
 * time only in the company of something that is one. As the answer to the question for times more is believed.
 */
import { clockAt, type Clock, type TimeScan } from './clock.js';
import type { Part, Parts } from './time-parts.js';
import { smallNumberAt } from './tokens.js';
import { isAt, linkedByAnd, linkedTo, roleBefore, skipAt } from './told-times.js';

/** In a note two figures without a colon are a watch only where they lie this near: "1520-1535". */
const MOST_MINUTES_APART = 120;

/** Feet, inches, degrees, percent, fractions. */
const NOT_AFTER_HOUR = new Set(["'", '"', '/', '°', '%']);

/** What follows a number can follow an hour: nothing, a sign, a small word; never "queens" or "feet". */
function mayFollow(scan: TimeScan, next: number): boolean {
  const { tokens, words, timeWords, taken } = scan;
  const after = tokens[next];
  if (!after || taken[next] === true || timeWords.mayFollow(tokens, next)) return true;
  if (timeWords.measures(tokens, next)) return false;
  // "eleven to eleven fifteen sixty four degrees"
  const spelt = smallNumberAt(tokens, next, words.numbers);
  if (spelt?.written === 'words' && timeWords.measures(tokens, spelt.next)) return true;
  // "two ten two twenty five"
  if (spelt?.written === 'words' && (clockAt(scan, next)?.form ?? 'hour') !== 'hour') return true;
  if (after.kind === 'sign') return !NOT_AFTER_HOUR.has(after.text);
  return after.kind === 'number' || after.first;
}

/** "two twenty", "3.20", "1520", "3 20": figures that are seldom anything else. */
function isWritten({ tokens }: TimeScan, { at, next }: Clock): boolean {
  const token = tokens[at];
  if (token?.kind === 'word' || tokens[at + 1]?.text === '.') return true;
  return token?.text.length === 4 || (next - at >= 2 && tokens[at + 1]?.kind === 'number');
}

/** Nothing but signs between a date and this token. */
function afterDate({ tokens, taken }: TimeScan, at: number): boolean {
  let before = at - 1;
  while (tokens[before]?.kind === 'sign' && taken[before] !== true) before--;
  return taken[before] === true;
}

/** In a note: "slope 1:10" is no time; "9:30 this morning", "at 3:20" and "3:20, 15 minutes" are. */
function looksLikeRatio(scan: TimeScan, parts: readonly Part[], at: number, clock: Clock): boolean {
  const colon = scan.tokens[clock.at + 1]?.text === ':';
  if (!colon || clock.half !== null || clock.window !== null || scan.tokens[clock.at]?.first === true) return false;
  if (linkedTo(parts, at) !== null) return false;
  return parts[at - 1]?.is === 'other' && parts[skipAt(parts, at + 1)]?.is !== 'length' && !afterDate(scan, clock.at);
}

/** In a note: "3.20 til 3.35", "from 1520 to 1535"; never "100-150". */
function looksLikeSpan(scan: TimeScan, parts: readonly Part[], first: Clock, second: Clock): boolean {
  // "1405 to two twenty": the half of the day may be said by one only
  const apart = (second.hour * 60 + second.minute - (first.hour * 60 + first.minute) + 24 * 60) % (12 * 60);
  if (apart > MOST_MINUTES_APART || second.form === 'hour') return false;
  // "eleven to eleven fifteen"
  const sameHour = first.hour === second.hour && isWritten(scan, first) && isWritten(scan, second);
  if (first.form === 'hour') return sameHour;
  const inDigits = (length: number): boolean =>
    [first, second].every(({ at }) => scan.tokens[at]?.kind === 'number' && scan.tokens[at]?.text.length === length);
  if (!inDigits(3) && !inDigits(4) && isWritten(scan, first) && isWritten(scan, second)) return true;
  const at = parts.findIndex((part) => part.is === 'clock' && part.clock === first);
  const before = parts.slice(0, at).findLast((part) => part.is !== 'sign');
  const link = parts[skipAt(parts, at + 1)];
  const linkToken = link?.is === 'link' ? scan.tokens[link.at] : undefined;
  if (before?.is === 'link' && before.link === 'start') return true;
  const leads = before === undefined || before.is === 'stop' || (before.is === 'link' && before.link === 'at');
  // "till" and "until" speak of times only
  const ofTime = linkToken?.kind === 'word' && linkToken.text !== 'to';
  return inDigits(4) && (leads || ofTime || scan.tokens[first.at]?.first === true || afterDate(scan, first.at));
}

/** Minutes, at most, by which a watch in bare figures may be shorter or longer than the survey's. */
const MOST_MINUTES_OFF = 5;

/** In a note, right behind its day or at the head of a line: "today 4-415 sunny", "yest 330-345, 64", "time 230 to 245". */
function looksLikeWatch(scan: TimeScan, first: Clock, second: Clock): boolean {
  const { tokens, timeWords, watchMinutes, words } = scan;
  const [from, to] = [tokens[first.at], tokens[second.at]];
  if (from?.kind !== 'number' || to?.kind !== 'number' || second.form === 'hour') return false;
  const labelled = words.note.labels.times.includes(tokens[first.at - 1]?.text ?? '');
  if (from.first !== true && !labelled && !afterDate(scan, first.at)) return false;
  const apart = second.hour * 60 + second.minute - (first.hour * 60 + first.minute);
  if (Math.abs(((apart + 12 * 60) % (12 * 60)) - watchMinutes) > MOST_MINUTES_OFF) return false;
  const after = tokens[second.next];
  const isFree = timeWords.measures(tokens, second.next) === null && timeWords.counted(tokens, second.next) === null;
  // "today 330-345 dandelions" may count them; nobody counts to "1610-1625"
  return isFree && (after?.kind !== 'word' || after.first || labelled || to.text.length === 4);
}

/** In a note: "at noon" and "yesterday noon" are times, a "midnight bumble bee" is none. */
function looksLikeName(scan: TimeScan, parts: readonly Part[], at: number, clock: Clock): boolean {
  if (!clock.fixed || clock.offset !== 0 || linkedTo(parts, at) !== null || afterDate(scan, clock.at)) return false;
  const before = parts[at - 1];
  const follows = parts[skipAt(parts, at + 1)];
  return before?.is !== 'link' && follows?.is !== 'length' && follows?.is !== 'stop' && follows !== undefined;
}

export function believed(scan: TimeScan, { parts, windows }: Parts, asked: boolean): Parts {
  const certain = parts.some((part) => part.is === 'clock' && part.clock.form === 'certain');
  const words = parts.some((part) => part.is === 'other');
  const clocks = parts.filter((part) => part.is === 'clock').length;

  /** Another time of the text leaves no doubt that it is one. */
  const timed = (clock: Clock): boolean =>
    parts.some(
      (part) =>
        part.is === 'clock' &&
        part.clock !== clock &&
        (part.clock.form === 'certain' || (part.clock.form === 'figures' && isWritten(scan, part.clock))),
    );

  /** The time that a "to" before this one starts from. */
  const startOf = (at: number): Clock | null => {
    const index = parts.findLastIndex((part, i) => i < at && part.is === 'clock');
    const start = parts[index];
    if (start?.is !== 'clock') return null;
    return linkedTo(parts, index) === at || linkedByAnd(parts, index) === at ? start.clock : null;
  };

  const isLabelled = (at: number): boolean => {
    const before = parts[at - 1];
    const near = before?.is === 'link' && ['at', 'after', 'before', 'to', 'between'].includes(before.link);
    const role = roleBefore(parts, at);
    return near || role === 'start' || role === 'end';
  };

  /** "15 minutes from 1520". */
  const afterLength = (at: number): boolean => {
    const before = parts.slice(0, at).findLast((part) => !isAt(part) && !(part.is === 'link' && part.link === 'start'));
    return before?.is === 'length' && roleBefore(parts, at) === 'start';
  };

  /** "twelve forty, ended 12:55", "two ten, 15 minutes". */
  const beforeEnd = (at: number): 'length' | 'end' | null => {
    let next = skipAt(parts, at + 1);
    const and = parts[next];
    if (and?.is === 'link' && and.link === 'and') next = skipAt(parts, next + 1);
    const part = parts[next];
    if (part?.is === 'length') return 'length';
    return part?.is === 'link' && part.link === 'end' ? 'end' : null;
  };

  const believeSpan = (first: Clock, second: Clock, at: number): boolean => {
    if (!asked) return looksLikeSpan(scan, parts, first, second);
    if (first.form !== 'hour' || second.form !== 'hour') {
      return !certain || (isWritten(scan, first) && isWritten(scan, second));
    }
    // "3 to 4", but not the "3/8, 15" of a sky or the "3-5" of a wind
    const start = parts.findIndex((part) => part.is === 'clock' && part.clock === first);
    const link = parts[skipAt(parts, start + 1)];
    const slash = link?.is === 'link' && scan.tokens[link.at]?.text === '/';
    return !certain && !slash && parts[start - 1]?.is !== 'other' && at >= start;
  };

  /** "twelve noon, twelve fifteen", "two two fifteen": side by side in an answer. */
  const besideAnother = (clock: Clock, at: number): boolean => {
    const before = parts[at - 1];
    const next = parts[at + 1];
    if (!asked || !mayFollow(scan, clock.next)) return false;
    if (clock.form === 'figures') return before?.is === 'clock' && before.clock.hour === clock.hour;
    const spelt = scan.tokens[clock.at]?.kind === 'word';
    return spelt && next?.is === 'clock' && next.clock.form === 'figures' && next.clock.hour === clock.hour;
  };

  const believeAlone = (clock: Clock, at: number): boolean => {
    if (besideAnother(clock, at)) return true;
    const figures = clock.form === 'figures';
    const leads = scan.tokens[clock.at]?.first === true || afterDate(scan, clock.at);
    if (asked && !words && clocks === 1) return true;
    const follows = beforeEnd(at);
    if (follows === 'length' && asked && (figures || parts[at - 1]?.is !== 'other')) return true;
    if (follows !== null && figures && (isWritten(scan, clock) || leads)) return true;
    if (!mayFollow(scan, clock.next)) return false;
    if (isLabelled(at)) return asked || afterLength(at) || (timed(clock) && roleBefore(parts, at) !== 'none');
    if (!figures) return false;
    if (leads && isWritten(scan, clock)) return certain || asked;
    return asked && !certain && (!words || leads || scan.tokens[clock.at + 1]?.text === '.');
  };

  const believe = (clock: Clock, at: number): boolean => {
    if (clock.form === 'certain') {
      return asked || !(looksLikeRatio(scan, parts, at, clock) || looksLikeName(scan, parts, at, clock));
    }
    const to = linkedTo(parts, at) ?? linkedByAnd(parts, at);
    const end = to === null ? undefined : parts[to];
    if (end?.is === 'minute') return asked || clock.form === 'figures';
    const start = startOf(at);
    if (end?.is === 'clock') {
      if (end.clock.form === 'certain' || looksLikeWatch(scan, clock, end.clock)) return true;
      return mayFollow(scan, end.clock.next) && believeSpan(clock, end.clock, at);
    }
    // "2:15 to 3 sunny" is an end, "2:15, 3 queens" is none
    if (start?.form === 'certain') return scan.timeWords.measures(scan.tokens, clock.next) === null;
    if (start === null) return believeAlone(clock, at);
    return looksLikeWatch(scan, start, clock) || (mayFollow(scan, clock.next) && believeSpan(start, clock, at));
  };

  return {
    parts: parts.map((part, at) =>
      part.is === 'clock' && !believe(part.clock, at) ? { is: 'other', words: 1 } : part,
    ),
    windows,
  };
}
