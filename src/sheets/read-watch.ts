/** Reads one watch of a sheet: every cell by the reader of its kind, and what is not sure as a complaint. */
import { fold, type Context } from '../answers/index.js';
import type {
  Patch,
  Place,
  PlantWatched,
  QueensRow,
  Sky,
  Temperature,
  Times,
  Watch,
  Wind,
} from '../../shared/record.js';
import { WATCH_COLUMNS, type SheetColumn, type WatchColumn } from '../../shared/words/sheets.js';
import { quoted, type Complaint } from './complaint.js';
import { ofSheet, type RawWatch } from './raw.js';
import type { Readers } from './readers.js';
import { notUnderstood } from './say.js';
import { wrong, type Told } from './told.js';
import { readWeather } from './weather.js';
import { readWhat } from './what.js';
import { dayKey, readWhen, type Habits, type Missing } from './when.js';
import { readWhere, type PlaceTold } from './where.js';
import { observerOf, statusOf, watchersOf } from './who.js';

/** A watch as a sheet tells it. What has a complaint is null, or is not among plants and queens. */
export interface SheetWatch {
  readonly file: string;
  readonly sheet: string | null;
  /** Where it begins. */
  readonly line: number;
  /** As it stands in the sheet: a first name, or a key. */
  readonly observer: string | null;
  readonly date: string | null;
  readonly times: Times | null;
  readonly minutes: number | null;
  readonly place: PlaceTold | null;
  readonly temperature: Temperature | null;
  readonly sky: Sky | null;
  readonly wind: Wind | null;
  readonly patch: Patch | null;
  readonly habitat: string | null;
  readonly remark: string | null;
  readonly watchers: number;
  readonly status: Watch['status'];
  /** By column, the words as they stand; with their heading where that told the unit. */
  readonly asTyped: Readonly<Record<string, string>>;
  readonly plants: readonly PlantWatched[];
  readonly queens: readonly QueensRow[];
  readonly complaints: readonly Complaint[];
  /** One of its rows may be of another watch, since what tells them apart was not understood. */
  readonly astray: boolean;
  readonly foundBy: RawWatch['foundBy'];
}

/** What all watches of a reading have in common. */
export interface Reading {
  readonly context: Context;
  readonly habits: Habits;
  readonly readers: Readers;
  /** The survey's site a place belongs to. */
  readonly siteOf: (place: Omit<Place, 'site' | 'private'>) => string | null;
}

/** What may differ from row to row; it is put together. */
const PUT_TOGETHER: readonly WatchColumn[] = ['remark'];
/** By these the rows of a watch were found, so that they agree however they are written. */
const FOUND_BY: readonly WatchColumn[] = ['watch', 'date'];
/** Not understood, they may hide that a row belongs to another watch. */
const TELLS_APART: readonly (SheetColumn | null)[] = [
  'observer',
  'date',
  'start',
  'times',
  'place',
  'site',
  'latitude',
  'longitude',
];

/** Values of one watch that are not the same in all its rows. */
function disagreements(watch: RawWatch, context: Context): Complaint[] {
  const same = (told: Told): string =>
    told.column === 'date' ? dayKey(told, context) : fold(told.text).replace(/\s+/g, ' ');
  return WATCH_COLUMNS.filter((column) => !PUT_TOGETHER.includes(column)).flatMap((column) => {
    if (watch.foundBy === 'cells' && FOUND_BY.includes(column)) return [];
    const [first, ...others] = watch.told.get(column) ?? [];
    if (first === undefined) return [];
    const other = others.find((one) => same(one) !== same(first));
    if (other === undefined) return [];
    const what = `is not the same as ${quoted(first.text)} in line ${first.where.line}, though both rows are of one watch; put one right`;
    return [wrong(other, what)];
  });
}

/** Dates belong here, or can do no harm. */
const MAY_BE_DATES: readonly SheetColumn[] = ['date', 'start', 'end', 'times', 'minutes', 'watch', 'habitat', 'remark'];
const MADE_DATE = 'is a date; spreadsheets make one of a cell such as 10-12, so write it as text';
const DAY_OF_MONTH = /^(?:\d{1,2}[ .-]*(?<after>\p{L}{3,})|(?<before>\p{L}{3,})[ .-]*\d{1,2})$/u;

/** "12-Oct": what became of 10-12, in a cell or in a text that was saved from one. */
function isMadeDate({ column, cell, text }: Told, { words }: Context): boolean {
  if (MAY_BE_DATES.includes(column)) return false;
  if (cell.kind === 'moment') return true;
  const { after, before } = DAY_OF_MONTH.exec(text)?.groups ?? {};
  return Object.hasOwn(words.date.months, fold(after ?? before ?? ''));
}

/** Without cells that cannot be taken, and what is wrong with those. */
function withoutBroken(watch: RawWatch, context: Context): { watch: RawWatch; complaints: Complaint[] } {
  const complaints: Complaint[] = [];
  const isWhole = (told: Told): boolean => {
    if (told.cell.kind === 'broken') complaints.push(notUnderstood(told, ''));
    else if (isMadeDate(told, context)) complaints.push(wrong(told, MADE_DATE));
    else return true;
    return false;
  };
  const told = new Map([...watch.told].map(([column, all]) => [column, all.filter(isWhole)] as const));
  const rows = watch.rows.filter((row) =>
    Object.values(row).every((one) => typeof one !== 'object' || one === null || isWhole(one)),
  );
  return { watch: { ...watch, told, rows }, complaints };
}

/** Words as they stand, with the heading where it told their unit: "Temp (F): 68". */
function typedOf({ told }: RawWatch): Record<string, string> {
  const typed = [...told].flatMap(([column, all]) => {
    const texts = [...new Set(all.map(({ heading, unit, text }) => (unit === null ? text : `${heading}: ${text}`)))];
    return texts.length === 0 || column === 'observer' ? [] : [[column, texts.join('\n')] as const];
  });
  return Object.fromEntries(typed);
}

const isSame = (one: Complaint, other: Complaint): boolean =>
  one.line === other.line && one.column === other.column && one.what === other.what;

export function readWatch(raw: RawWatch, { context, habits, readers, siteOf }: Reading): SheetWatch {
  const { watch, complaints } = withoutBroken(raw, context);
  const isBroken = complaints.length > 0;
  complaints.push(...disagreements(watch, context));
  const only = (column: WatchColumn): Told | null => watch.told.get(column)?.[0] ?? null;
  const missing: Missing = (about, what) =>
    ofSheet({ file: raw.file, name: raw.sheet }, `the watch ${what}`, { about, line: raw.line });
  // what has no column at all is said once, of the sheet; and a cell that cannot be taken is said already
  const has = (...columns: readonly WatchColumn[]): boolean =>
    !isBroken && columns.some((column) => watch.columns.has(column));

  const observer = observerOf(only('observer'), complaints);
  if (only('observer') === null && has('observer')) {
    complaints.push(missing('observer', 'has no observer; write a first name'));
  }
  const when = readWhen(watch, missing, habits, context);
  const hasWhen = has('date', 'start') && has('start', 'times', 'date') && has('end', 'times', 'minutes');
  complaints.push(...when.complaints.filter(({ column }) => column !== null || hasWhen));
  const zone = only('timeZone');
  if (zone !== null && zone.text !== context.survey.timeZone) {
    const what = `is not the time zone of the survey, ${context.survey.timeZone}; write its times there`;
    complaints.push(wrong(zone, what));
  }
  const place = readWhere(only, siteOf, readers, context, complaints);
  const weather = readWeather(only, readers, complaints);
  const { plants, queens } = readWhat(watch, readers, context, complaints);
  const remarks = [...new Set((watch.told.get('remark') ?? []).map(({ text }) => text))];
  const status = statusOf(only('status'), context, complaints);
  const watchers = watchersOf(only('watchers'), readers, complaints);
  return {
    file: raw.file,
    sheet: raw.sheet,
    line: raw.line,
    observer,
    date: when.date,
    times: when.times,
    minutes: when.minutes,
    place,
    ...weather,
    habitat: only('habitat')?.text ?? null,
    remark: remarks.length === 0 ? null : remarks.join('\n'),
    watchers,
    status,
    asTyped: typedOf(watch),
    plants,
    queens,
    // flowers of a grid are read once for each bee on them
    complaints: complaints.filter((one, at) => complaints.findIndex((other) => isSame(one, other)) === at),
    foundBy: raw.foundBy,
    astray: raw.foundBy === 'cells' && complaints.some(({ about }) => TELLS_APART.includes(about)),
  };
}
