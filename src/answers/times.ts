/** Reads from when to when a watch took: "3:20 to 3:35", "quarter hour from 9:30", "noon until quarter past". */
import { dateSpans } from './date.js';
import type { Context, Finder, Reader, Reading, Span } from './reading.js';
import { LONGEST_TEXT, none, unsure } from './reading.js';
import { fold } from './text.js';
import { timesAgo } from './when/ago-times.js';
import { asMeant } from './when/by-ear.js';
import { yearOf } from './when/calendar.js';
import type { Clock, TimeScan } from './when/clock.js';
import { believed } from './when/believed-times.js';
import { correctedPlace, correctedWord, isDoubted, isNot, type Place } from './when/company.js';
import { settleSpan } from './when/halves.js';
import { timeParts, type Part, type Parts } from './when/time-parts.js';
import { timeWords } from './when/time-words.js';
import { fromSettling, offering, settle, type Times } from './when/settled-times.js';
import { toldTimes } from './when/told-times.js';
import { spanOf, tokensOf } from './when/tokens.js';

export type { Times };

/**
 * Reads the answer to the question for times. What half of the day is meant follows am and pm, then the part of the
 * day, then daytime; 6 and 7 o'clock without any are unsure. An end before its start is not understood.
 */
export const readTimes: Reader<Times> = (text, context) => {
  if (text.trim() === '') return none('empty');
  if (text.length > LONGEST_TEXT) return none('too-long');
  return read(text, context, true);
};

/**
 * Finds the times of the watch in a longer text: only unmistakable ones ("3:20", "3pm", "noon to 12:15"). One
 * reading at most; two spans are one that is unsure.
 */
export const findTimes: Finder<Times> = (text, context) => {
  const reading = read(text, context, false);
  return reading.state === 'none' ? [] : [reading];
};

function scanOf(text: string, context: Context, asked: boolean): TimeScan {
  // "1O:4O" is what a thumb makes of 10:40
  const folded = fold(text)
    .replace(/:[\do]{2}(?![\p{L}\d])/gu, (minutes) => minutes.replaceAll('o', '0'))
    .replace(/(?<=\d)o(?=[\d:])/g, '0');
  const known = timeWords(context.words);
  const tokens = asked ? asMeant(tokensOf(folded), context.words, known) : tokensOf(folded);
  const dates = dateSpans(text, context);
  let date = 0;
  const taken = tokens.map(({ span }) => {
    while (date < dates.length && dates[date]![1] <= span[0]) date++;
    const found = dates[date];
    return found !== undefined && span[0] >= found[0] && span[1] <= found[1];
  });
  return {
    tokens,
    words: context.words,
    timeWords: known,
    taken,
    watchMinutes: context.survey.protocol.minutes,
    year: yearOf(context.today),
    now: context.time,
  };
}

const clocksOf = (parts: readonly Part[]): Clock[] =>
  parts.flatMap((part) => (part.is === 'clock' ? [part.clock] : []));

function read(text: string, context: Context, asked: boolean): Reading<Times> {
  const scan = scanOf(text, context, asked);
  const { tokens, words } = scan;
  const all = timeParts(scan);
  const parts = withSaidHalf(scan, withoutNots(scan, believed(scan, all, asked)));
  const clocks = clocksOf(parts.parts);
  const places = placesOf(parts.parts);
  const used = places.map(({ at, next }) => spanOf(tokens, at, next));
  if (clocks.length === 0) {
    const ago = asked ? timesAgo(text, context) : null;
    return ago?.state === 'unsure' ? ago : noClock(parts, asked, used);
  }
  if (clocks.some(({ impossible }) => impossible)) return none('impossible-time', used);

  const corrected = correctedPlace(tokens, places, words);
  const reading =
    corrected === null
      ? settle(scan, parts, toldTimes(parts), used)
      : settleCorrected(scan, parts, places, corrected, used);
  if (reading.state !== 'sure' || !isDoubted(tokens, places, words)) return reading;
  return unsure([reading.value], 'doubted-times', used);
}

const placesOf = (parts: readonly Part[]): Place[] =>
  parts.flatMap((part): Place[] => {
    if (part.is === 'clock') return [part.clock];
    if (part.is === 'length') return [part.length];
    return part.is === 'minute' ? [part] : [];
  });

/** Drops times that are denied ("not 2:20"), as long as another stands. */
function withoutNots({ tokens, words }: TimeScan, { parts, windows }: Parts): Parts {
  const kept = parts.filter((part) => part.is !== 'clock' || !isNot(tokens, part.clock, words));
  return { parts: clocksOf(kept).length > 0 ? kept : parts, windows };
}

/** "2:20 to 2:35 am, I mean pm": the half said last holds for all. */
function withSaidHalf({ tokens, timeWords: known, words }: TimeScan, { parts, windows }: Parts): Parts {
  const [pm, am] = [correctedWord(tokens, known.pm, words), correctedWord(tokens, known.am, words)];
  // "no pm, haha no, am": the last said
  const half = pm === null && am === null ? null : (pm ?? -1) > (am ?? -1) ? 'pm' : 'am';
  if (half === null) return { parts, windows };
  return {
    parts: parts.map((part) => (part.is === 'clock' ? { is: 'clock', clock: { ...part.clock, half } } : part)),
    windows,
  };
}

/** "for 15 minutes" alone, "1 2 1:15", or nothing. */
function noClock({ parts }: Parts, asked: boolean, used: readonly Span[]): Reading<Times> {
  if (asked && parts.some((part) => part.is === 'length')) return none('no-start', used);
  return none('no-time', used);
}

/** What was said last stands; a new start or a new end alone leaves the other as it was. */
function settleCorrected(
  scan: TimeScan,
  { parts, windows }: Parts,
  places: readonly Place[],
  corrected: number,
  used: readonly Span[],
): Reading<Times> {
  const cut = parts.findIndex(
    (part) =>
      (part.is === 'clock' && part.clock === places[corrected]) ||
      (part.is === 'length' && part.length === places[corrected]) ||
      part === places[corrected],
  );
  // A label right before the corrected time belongs to it: "sorry, ended 2:40"
  let from = cut;
  while (from > 0 && (parts[from - 1]?.is === 'link' || parts[from - 1]?.is === 'sign')) from--;
  const before = { parts: parts.slice(0, from), windows };
  const after = { parts: parts.slice(from), windows };
  const [was, now] = [toldTimes(before), toldTimes(after)];
  const clocks = clocksOf(after.parts);
  if (clocks.length === 0) {
    // only the length is corrected
    const all = toldTimes({ parts: [...before.parts.filter(({ is }) => is !== 'length'), ...after.parts], windows });
    return settle(scan, { parts, windows }, all, used);
  }
  const complete = now.spans.length > 0 || now.lengths.length > 0 || clocks.length > 1;
  const [span] = was.spans;
  if (complete || !span) {
    const merged = { ...now, lengths: now.lengths.length > 0 ? now.lengths : was.lengths };
    const earlierStart = was.starts[0] ?? was.plain[0];
    if (!complete && now.ends.length > 0 && earlierStart) {
      return settle(scan, after, { ...merged, starts: [earlierStart] }, used);
    }
    return settle(scan, after, merged, used);
  }
  const [clock] = clocks;
  if (!clock) return none('no-time', used);
  const newEnd = fromSettling(settleSpan(span.start, clock, windows), used);
  const newStart = fromSettling(settleSpan(clock, span.end, windows), used);
  if (now.ends.length > 0) return newEnd;
  if (now.starts.length > 0) return newStart;
  return offering([newEnd, newStart], 'two-times', used);
}
