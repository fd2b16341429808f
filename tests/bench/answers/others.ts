/**
 * General-purpose libraries as readers of one kind of answer, each used as its documentation shows, with the same
 * context: half past six on 6 May 2026, month before day, °F and feet where no unit is said.
 */
import Recognizers from '@microsoft/recognizers-text-suite';
import * as chrono from 'chrono-node';
import Fuse from 'fuse.js';
import MiniSearch from 'minisearch';
import { wordsToNumbers } from 'words-to-numbers';
import { survey } from '../../demo-survey.js';
import type { CorpusKind } from '../../answers/corpus/lines.js';

/** Null where it finds nothing. */
export type OtherReader = (text: string) => unknown;

export interface Other {
  readonly library: string;
  readonly kind: CorpusKind;
  readonly read: OtherReader;
}

const NOW = new Date(2026, 4, 6, 18, 30);
const TODAY = '2026-05-06';
const pad = (n: number): string => String(n).padStart(2, '0');
const clockOf = (hour: number, minute: number): string => `${pad(hour)}:${pad(minute)}`;

const { Culture } = Recognizers;

interface Resolved {
  readonly type?: string;
  readonly value?: string;
  readonly start?: string;
  readonly end?: string;
}
const resolvedIn = (text: string): Resolved[] =>
  Recognizers.recognizeDateTime(text, Culture.English, Recognizers.DateTimeOptions.None, NOW).flatMap(
    ({ resolution }) => (resolution?.['values'] ?? []) as Resolved[],
  );
const dayOf = (value: string | undefined): string | null => /^\d{4}-\d{2}-\d{2}/.exec(value ?? '')?.[0] ?? null;
const minuteOf = (value: string | undefined): string | null => /\d{2}:\d{2}(?=:\d{2}$)/.exec(value ?? '')?.[0] ?? null;

/** Its candidates are told apart by what is asked here: the latest day that is not ahead. */
function dateByRecognizers(text: string): unknown {
  const days = resolvedIn(text).flatMap(({ value, start }) => dayOf(value) ?? dayOf(start) ?? []);
  return (
    days
      .filter((day) => day <= TODAY)
      .sort()
      .at(-1) ??
    days[0] ??
    null
  );
}

function timesByRecognizers(text: string): unknown {
  const found = resolvedIn(text);
  const range = found.find(({ start, end }) => minuteOf(start) !== null && minuteOf(end) !== null);
  if (range) return { start: minuteOf(range.start), end: minuteOf(range.end) };
  const [start, end] = found.flatMap(({ value }) => minuteOf(value) ?? []);
  return start === undefined ? null : { start, end: end ?? null };
}

function temperatureByRecognizers(text: string): unknown {
  const [found] = Recognizers.recognizeTemperature(text, Culture.English);
  const number = Number(found?.resolution?.['value']);
  if (found === undefined || Number.isNaN(number)) return null;
  return { celsius: found.resolution?.['unit'] === 'C' ? number : ((number - 32) * 5) / 9 };
}

const METRES: Readonly<Record<string, number>> = {
  Foot: 0.3048,
  Meter: 1,
  Yard: 0.9144,
  Inch: 0.0254,
  Centimeter: 0.01,
};
const SQUARE_METRES: Readonly<Record<string, number>> = {
  'Square foot': 0.09290304,
  'Square meter': 1,
  'Square yard': 0.83612736,
  Acre: 4046.8564224,
  Hectare: 10_000,
};
function patchByRecognizers(text: string): unknown {
  const found = Recognizers.recognizeDimension(text, Culture.English).map(({ resolution }) => ({
    number: Number(resolution?.['value']),
    unit: String(resolution?.['unit']),
  }));
  const area = found.find(({ unit }) => unit in SQUARE_METRES);
  if (area) return { squareMetres: area.number * SQUARE_METRES[area.unit]!, shape: 'area' };
  const sides = found.flatMap(({ number, unit }) => (unit in METRES ? [number * METRES[unit]!] : []));
  if (sides.length < 2) return null;
  const [one, other] = sides.slice(0, 2).sort((a, b) => b - a) as [number, number];
  return { squareMetres: one * other, shape: 'rectangle', lengthMetres: one, widthMetres: other };
}

const countOf = (value: number): unknown =>
  Number.isFinite(value) ? { value, low: value, high: value, about: false } : null;
function countByRecognizers(text: string): unknown {
  const [found] = Recognizers.recognizeNumber(text, Culture.English);
  return found === undefined ? null : countOf(Number(found.resolution?.['value']));
}
function countByWords(text: string): unknown {
  const read = wordsToNumbers(text);
  const number = typeof read === 'number' ? read : Number(/\d+/.exec(read ?? '')?.[0] ?? Number.NaN);
  return countOf(number);
}

function dateByChrono(text: string): unknown {
  const [found] = chrono.parse(text, NOW);
  if (found === undefined) return null;
  const part = (name: 'year' | 'month' | 'day'): number => found.start.get(name) ?? 0;
  return `${part('year')}-${pad(part('month'))}-${pad(part('day'))}`;
}
function timesByChrono(text: string): unknown {
  const found = chrono.parse(text, NOW).filter(({ start }) => start.isCertain('hour'));
  const [first, second] = found;
  if (first === undefined) return null;
  const clock = (at: chrono.ParsedComponents | null | undefined): string | null =>
    at == null ? null : clockOf(at.get('hour') ?? 0, at.get('minute') ?? 0);
  return { start: clock(first.start), end: clock(first.end) ?? clock(second?.start) };
}

interface NameRow {
  readonly id: number;
  readonly name: string;
  readonly taxon: string;
}
function rowsOf(kind: 'plant' | 'bee'): NameRow[] {
  const taxa = kind === 'plant' ? survey.names.plants : survey.names.bees;
  return taxa
    .flatMap((taxon) => [taxon.name, ...taxon.common, ...taxon.former].map((name) => ({ name, taxon: taxon.name })))
    .map((row, id) => ({ id, ...row }));
}

function byFuse(kind: 'plant' | 'bee'): OtherReader {
  const fuse = new Fuse(rowsOf(kind), { keys: ['name'], threshold: 0.3, ignoreLocation: true });
  return (text) => {
    const name = fuse.search(text, { limit: 1 })[0]?.item.taxon;
    return name === undefined ? null : { name };
  };
}
function byMiniSearch(kind: 'plant' | 'bee'): OtherReader {
  const index = new MiniSearch<NameRow>({
    fields: ['name'],
    storeFields: ['taxon'],
    searchOptions: { fuzzy: 0.2, prefix: true },
  });
  index.addAll(rowsOf(kind));
  return (text) => {
    const [found] = index.search(text);
    return found === undefined ? null : { name: String(found['taxon']) };
  };
}

export const others = (): Other[] => [
  { library: '@microsoft/recognizers-text-suite', kind: 'date', read: dateByRecognizers },
  { library: 'chrono-node', kind: 'date', read: dateByChrono },
  { library: '@microsoft/recognizers-text-suite', kind: 'times', read: timesByRecognizers },
  { library: 'chrono-node', kind: 'times', read: timesByChrono },
  { library: '@microsoft/recognizers-text-suite', kind: 'temperature', read: temperatureByRecognizers },
  { library: '@microsoft/recognizers-text-suite', kind: 'patch', read: patchByRecognizers },
  { library: '@microsoft/recognizers-text-suite', kind: 'count', read: countByRecognizers },
  { library: 'words-to-numbers', kind: 'count', read: countByWords },
  { library: 'fuse.js', kind: 'plant', read: byFuse('plant') },
  { library: 'minisearch', kind: 'plant', read: byMiniSearch('plant') },
  { library: 'fuse.js', kind: 'bee', read: byFuse('bee') },
  { library: 'minisearch', kind: 'bee', read: byMiniSearch('bee') },
];
