/** Day and times of a watch: real dates and times of a spreadsheet as they are, all others by the readers of answers. */
import type { Context } from '../answers/index.js';
import { readDate, readTimes } from '../answers/index.js';
import type { Times } from '../../shared/record.js';
import type { WatchColumn } from '../../shared/words/sheets.js';
import type { RawWatch } from './raw.js';
import { withUnit, wrong, type Told } from './told.js';
import { quoted, type Complaint } from './complaint.js';
import { notClear, notUnderstood } from './say.js';

/** What the cells of all watches together tell of how days and times are written. */
export interface Habits {
  /** A day that can only be read in the other order than the survey's: then 4/5 may be either. */
  readonly otherOrder: Told | null;
  /** Times run to 23:59 and none has am or pm: then 06:40 is in the morning. */
  readonly clock24: boolean;
}

const NUMERIC_DAY = /^(?<first>\d{1,2})[/.-](?<second>\d{1,2})(?:[/.-]\d{2,4})?$/;
const CLOCK = /^(?<hour>[01]\d|2[0-3])[:.](?<minute>[0-5]\d)(?::\d\d)?$/;
const HOURS_OF_HALF_A_DAY = 12;

const partsOf = (told: Told): { first: number; second: number } | null => {
  const { first, second } = NUMERIC_DAY.exec(told.text)?.groups ?? {};
  return first === undefined || second === undefined ? null : { first: Number(first), second: Number(second) };
};

const orderOf = ({ unit }: Told, { survey }: Context) => (unit === 'MDY' || unit === 'DMY' ? unit : survey.dateOrder);

export function habitsOf(watches: readonly RawWatch[], context: Context): Habits {
  const otherOrder = watches
    .flatMap(({ told }) => told.get('date') ?? [])
    .find((told) => {
      const parts = partsOf(told);
      if (parts === null) return false;
      return orderOf(told, context) === 'MDY' ? parts.first > 12 : parts.second > 12;
    });
  const clocks = watches.flatMap(({ told }) =>
    (['start', 'end', 'times'] as const).flatMap((at) => told.get(at) ?? []),
  );
  const hours = clocks.map(({ text }) => Number(CLOCK.exec(text)?.groups?.['hour'] ?? NaN));
  const halves = clocks.some(({ text }) => /\d\s*[ap]\.?\s*m?\b/i.test(text));
  return { otherOrder: otherOrder ?? null, clock24: !halves && hours.some((hour) => hour > HOURS_OF_HALF_A_DAY) };
}

/** A day, or what is wrong with its cell. */
export function readDay(told: Told, habits: Habits, context: Context): { day: string } | { complaint: Complaint } {
  const read = dayIn(told, habits, context);
  if (!('day' in read) || read.day <= context.today) return read;
  return { complaint: wrong(told, 'is still ahead; put the day, or its year, right') };
}

function dayIn(told: Told, habits: Habits, context: Context): { day: string } | { complaint: Complaint } {
  const { cell, text } = told;
  if (cell.kind === 'moment' && cell.date !== null) return { day: cell.date };
  if (cell.kind === 'number') {
    return { complaint: wrong(told, `is a number and no day; format the cell as a date, or write it like 2026-05-02`) };
  }
  const parts = partsOf(told);
  const { otherOrder } = habits;
  if (otherOrder && parts && parts.first !== parts.second && parts.first <= 12 && parts.second <= 12) {
    const [other, order] = [quoted(otherOrder.text), orderOf(told, context) === 'MDY' ? 'DD/MM/YYYY' : 'MM/DD/YYYY'];
    const what = `may be two days, since ${other} in line ${otherOrder.where.line} has its parts in the other order; write it like 2026-05-02, or head the column “${told.heading} (${order})”`;
    return { complaint: wrong(told, what) };
  }
  const survey = { ...context.survey, dateOrder: orderOf(told, context) };
  const reading = readDate(text, { ...context, survey });
  if (reading.state === 'sure') return { day: reading.value };
  if (reading.state === 'none') return { complaint: notUnderstood(told, '2026-05-02') };
  const [offer] = reading.offer;
  if (reading.ask === 'future-date' && offer !== undefined) return { day: offer };
  // seasons of earlier years are brought in: with its year written out, an old day is no slip
  if (reading.ask === 'old-date' && offer !== undefined && text.includes(offer.slice(0, 4))) return { day: offer };
  return { complaint: notClear(told, reading.offer) };
}

/** A day as it tells watches apart: the same however it is written; as it stands where it cannot be read. */
export const dayKey = (told: Told, context: Context): string => {
  const read = readDay(told, { otherOrder: null, clock24: false }, context);
  return 'day' in read ? read.day : told.text;
};

const minutesOfDay = (time: string): number => Number(time.slice(0, 2)) * 60 + Number(time.slice(3, 5));
const clockAt = (minutes: number): string =>
  `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;

/** A time that needs no reader: of a spreadsheet's own kind, or of a column that runs to 23:59. */
function exactTime({ cell, text }: Told, { clock24 }: Habits): string | null {
  if (cell.kind === 'moment') return cell.time;
  const { hour, minute } = CLOCK.exec(text)?.groups ?? {};
  return clock24 && hour !== undefined && minute !== undefined ? `${hour}:${minute}` : null;
}

/** Minutes watched: "15", "15 min", "1 h", or a length of a spreadsheet's own kind (0:15). */
function readMinutes(told: Told, { words }: Context): number | null {
  const { cell } = told;
  if (cell.kind === 'moment') return cell.date === null && cell.time !== null ? minutesOfDay(cell.time) : null;
  const { whole, rest } = /^(?<whole>\d{1,2}):(?<rest>[0-5]\d)(?::00)?$/.exec(told.text)?.groups ?? {};
  if (whole !== undefined && rest !== undefined) return Number(whole) * 60 + Number(rest);
  const { number, unit } = /^(?<number>\d+(?:[.,]\d+)?)\s*(?<unit>\p{L}*)\.?$/u.exec(withUnit(told))?.groups ?? {};
  if (number === undefined) return null;
  const each = unit === undefined || unit === '' ? 1 : words.date.minuteUnits[unit.toLowerCase()];
  const minutes = Number(number.replace(',', '.')) * (each ?? NaN);
  return Number.isFinite(minutes) && minutes > 0 ? minutes : null;
}

/** Says that the watch has no such thing. */
export type Missing = (about: WatchColumn, what: string) => Complaint;

export interface When {
  readonly date: string | null;
  readonly times: Times | null;
  /** Minutes watched. */
  readonly minutes: number | null;
  readonly complaints: readonly Complaint[];
}

/** Day, times and length of a watch. What the sheet has no column for is not complained of here. */
export function readWhen(watch: RawWatch, missing: Missing, habits: Habits, context: Context): When {
  const complaints: Complaint[] = [];
  const first = (column: 'date' | 'start' | 'end' | 'times' | 'minutes'): Told | null =>
    watch.told.get(column)?.[0] ?? null;
  const [day, end, length] = [first('date'), first('end'), first('minutes')];
  const start =
    first('start') ?? first('times') ?? (day?.cell.kind === 'moment' && day.cell.time !== null ? day : null);

  const date = dateOf(day ?? start, complaints, habits, context, missing);
  for (const told of [start, end]) {
    if (told?.cell.kind !== 'moment' || told.cell.date === null || date === null || told.cell.date === date) continue;
    complaints.push(
      wrong(told, `is of another day than the watch, ${date}; a watch ends on the day on which it began`),
    );
  }
  const minutes = length === null ? null : readMinutes(length, context);
  if (length !== null && minutes === null) complaints.push(notUnderstood(length, '15'));
  if (start === null) {
    complaints.push(missing('start', 'has no start; write when it began, like 13:05'));
    return { date, times: null, minutes, complaints };
  }
  const read = spanOf(start, end, habits, context);
  if ('complaint' in read) {
    return { date, times: null, minutes, complaints: [...complaints, read.complaint] };
  }
  const from = minutesOfDay(read.start);
  const to = read.end === null ? (minutes === null ? null : from + Math.ceil(minutes)) : minutesOfDay(read.end);
  if (to === null) {
    if (length === null)
      complaints.push(missing('end', 'has no end and no length; write when it ended, like 13:20, or its minutes'));
    return { date, times: null, minutes, complaints };
  }
  if (to < from || to >= 24 * 60) {
    complaints.push(wrong(end ?? start, 'has it end before it begins; a watch ends on the day on which it began'));
    return { date, times: null, minutes, complaints };
  }
  if (minutes !== null && minutes > to - from) {
    complaints.push(wrong(length!, `is more than the ${to - from} minutes from start to end; put one of them right`));
  }
  return { date, times: { start: read.start, end: clockAt(to) }, minutes: minutes ?? to - from, complaints };
}

function dateOf(
  told: Told | null,
  complaints: Complaint[],
  habits: Habits,
  context: Context,
  missing: Missing,
): string | null {
  if (told === null || (told.column !== 'date' && (told.cell.kind !== 'moment' || told.cell.date === null))) {
    complaints.push(missing('date', 'has no day; write it like 2026-05-02'));
    return null;
  }
  const read = readDay(told, habits, context);
  if ('day' in read) return read.day;
  complaints.push(read.complaint);
  return null;
}

/** Start and, where it is told, end. */
function spanOf(
  start: Told,
  end: Told | null,
  habits: Habits,
  context: Context,
): { start: string; end: string | null } | { complaint: Complaint } {
  for (const told of [start, end]) {
    // the share of a day that a time is, in a cell of no format
    if (told?.cell.kind === 'number' && !Number.isInteger(told.cell.number)) {
      const what = 'is a number and no time; format the cell as a time, or write it like 13:05';
      return { complaint: wrong(told, what) };
    }
  }
  const exact = { start: exactTime(start, habits), end: end === null ? null : exactTime(end, habits) };
  if (exact.start !== null && (end === null || exact.end !== null)) return { start: exact.start, end: exact.end };
  const from = exact.start ?? start.text;
  // beside an end alone, the reader would offer the survey's length before it
  if (readTimes(from, context).state === 'none') return { complaint: notUnderstood(start, '13:05') };
  const to = end === null ? '' : ` to ${exact.end ?? end.text}`;
  const reading = readTimes(`${from}${to}`, context);
  if (reading.state === 'sure') return reading.value;
  if (reading.state === 'none') return { complaint: notUnderstood(end ?? start, '13:20') };
  const offer = reading.offer.map((times) => (times.end === null ? times.start : `${times.start}–${times.end}`));
  const isHalf = reading.ask === 'morning-or-evening' || reading.ask === 'odd-hour';
  const how = isHalf ? 'with am or pm, like 6:40 am' : 'like 13:05';
  return { complaint: wrong(start, `is not clear: ${offer.join(' or ')}? Write it ${how}`) };
}
