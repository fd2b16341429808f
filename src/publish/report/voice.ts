/** How the report speaks: its language's sentences filled in, numbers, names and weeks as people read them. */
import { beeLabel, plantLabel } from '../../../shared/labels.js';
import type { ReportWording } from '../../../shared/report-wording.js';
import type { Survey } from '../../../shared/survey.js';
import { fill, type PhraseValues } from '../../../shared/wording.js';
import { UNNAMED_PLANT } from '../public/index.js';
import { mondayOf } from './weeks.js';

interface Ends {
  readonly low95: number | null;
  readonly high95: number | null;
}

export interface Voice {
  readonly words: ReportWording;
  say(sentence: string, values?: PhraseValues): string;
  /** Null where there is no such number. */
  figure(value: number | null, digits?: number): string;
  whole(value: number): string;
  /** `missing` says why there is none. */
  interval(ends: Ends | null, missing?: string): string;
  /** Null for all bees. */
  bee(name: string | null): string;
  plant(name: string): string;
  /** "Apr 6": the Monday of an ISO week `2026-W15`, and "Apr 6 – 12", all of it; with the year where they are of several. */
  weeks(weeks: readonly string[]): { monday(week: string): string; days(week: string): string };
  day(date: string): string;
  /** "1 PM" of an hour from 0 to 23. */
  hour(hour: number): string;
  /** "a, b and c". */
  list(items: readonly string[]): string;
}

export type ReportSurvey = Pick<Survey, 'settings' | 'report' | 'wording' | 'names'>;

export function voiceOf({ report: words, wording: { locale }, names }: ReportSurvey): Voice {
  const day = { month: 'short', day: 'numeric', timeZone: 'UTC' } as const;
  const days = new Intl.DateTimeFormat(locale, day);
  const daysWithYear = new Intl.DateTimeFormat(locale, { ...day, year: 'numeric' });
  const dates = new Intl.DateTimeFormat(locale, { dateStyle: 'long', timeZone: 'UTC' });
  const hours = new Intl.DateTimeFormat(locale, { hour: 'numeric', timeZone: 'UTC' });
  const lists = new Intl.ListFormat(locale);
  const millisecondsOf = (date: string): number => Date.parse(`${date}T00:00:00Z`);
  const formats = new Map<number, Intl.NumberFormat>();
  const numbers = (digits: number): Intl.NumberFormat => {
    const known =
      formats.get(digits) ??
      new Intl.NumberFormat(locale, { minimumFractionDigits: digits, maximumFractionDigits: digits });
    formats.set(digits, known);
    return known;
  };
  const figure: Voice['figure'] = (value, digits = 2) =>
    value === null || !Number.isFinite(value) ? words.missing.figure : numbers(digits).format(value);
  const ofWeek = (week: string): [monday: number, sunday: number] => {
    const monday = mondayOf(week);
    return [millisecondsOf(monday.toString()), millisecondsOf(monday.add({ days: 6 }).toString())];
  };
  return {
    words,
    say: (sentence, values) => fill({ locale }, sentence, values),
    figure,
    whole: (value) => numbers(0).format(value),
    interval: (ends, missing = words.missing.figure) =>
      ends === null || ends.low95 === null || ends.high95 === null
        ? missing
        : `${figure(ends.low95)} – ${figure(ends.high95)}`,
    bee: (name) => (name === null ? words.names.allBees : beeLabel(name, names, words.names.genus)),
    plant: (name) => (name === UNNAMED_PLANT ? words.names.unnamedPlant : plantLabel(name, names)),
    weeks: (weeks) => {
      const format = new Set(weeks.map((week) => week.slice(0, 4))).size > 1 ? daysWithYear : days;
      return {
        monday: (week) => format.format(ofWeek(week)[0]),
        days: (week) => format.formatRange(...ofWeek(week)).replaceAll(/[\u2009\u202f]/g, ' '),
      };
    },
    day: (date) => dates.format(millisecondsOf(date)),
    hour: (hour) => hours.format(hour * 3_600_000).replaceAll('\u202f', ' '),
    list: (items) => lists.format(items),
  };
}
