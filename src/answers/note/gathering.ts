/** The fields of one message on their way: which words each used, and what is left for the next. */
import type { Patch, Sky, Temperature, Wind } from '../../../shared/record.js';
import { findDate, readDate } from '../date.js';
import type { FoundNames } from '../names/index.js';
import { findPatch, readPatch } from '../patch.js';
import { findPlace, readPlace, type PlaceRead } from '../place.js';
import type { PlantTold } from '../plants.js';
import { namesSaid } from '../plants/plants-said.js';
import { movedBy, type Context, type Finder, type Reader, type Reading, type Span } from '../reading.js';
import { readSky } from '../sky.js';
import type { TallyRow } from '../tally.js';
import { findTemperature, readTemperature } from '../temperature.js';
import { fold } from '../text.js';
import { findTimes, readTimes, type Times } from '../times.js';
import { findWind, readWind } from '../wind.js';
import { blankLines, maskedWith } from './blank-lines.js';
import { visibleNames } from './flora.js';
import { withRepeats } from './repeats.js';
import { findSkyBeside } from './sky-beside.js';
import { withStrangers } from './strangers.js';

export interface FieldValues {
  date: string;
  times: Times;
  temperature: Temperature;
  sky: Sky;
  wind: Wind;
  patch: Patch;
  place: PlaceRead;
  plants: PlantTold[];
  tally: TallyRow[];
}
export type FieldName = keyof FieldValues;
export const FIELD_NAMES = [
  'date',
  'times',
  'place',
  'temperature',
  'sky',
  'wind',
  'patch',
  'plants',
  'tally',
] as const satisfies readonly FieldName[];

export type FieldReadings = { readonly [Field in FieldName]?: Reading<FieldValues[Field]> };

export type Plain = Exclude<FieldName, 'plants' | 'tally'>;
type Read<Field extends Plain> = {
  readonly asked: Reader<FieldValues[Field]>;
  readonly passing: Finder<FieldValues[Field]>;
};

export const READERS: { readonly [Field in Plain]: Read<Field> } = {
  date: { asked: readDate, passing: findDate },
  times: { asked: readTimes, passing: findTimes },
  temperature: { asked: readTemperature, passing: findTemperature },
  sky: { asked: readSky, passing: findSkyBeside },
  wind: { asked: readWind, passing: findWind },
  patch: { asked: readPatch, passing: findPatch },
  place: { asked: readPlace, passing: findPlace },
};

/** Whoever comes first keeps a number that two could use. */
export const IN_TURN: readonly Plain[] = ['place', 'date', 'times', 'patch', 'sky', 'wind', 'temperature'];
export const WEATHER: readonly FieldName[] = ['temperature', 'sky', 'wind'];
export const isWeather = (field: FieldName): boolean => WEATHER.includes(field);

/** The fields found so far. */
export class Gathering {
  private readonly found = new Map<FieldName, Reading<unknown>>();
  /** Labels, and words that no field reads. */
  private readonly others: Span[] = [];
  private named: FoundNames | null = null;

  constructor(
    readonly text: string,
    readonly context: Context,
  ) {}

  has(field: FieldName): boolean {
    const reading = this.found.get(field);
    return reading !== undefined && reading.state !== 'none';
  }

  take<Field extends FieldName>(field: Field, reading: Reading<FieldValues[Field]>): void {
    this.found.set(field, reading);
  }

  /** Takes what a gathering of the text from `at` on found, where this one has nothing yet. True where anything was taken. */
  takeFrom(other: Gathering, at: number): boolean {
    const open = [...other.found].filter(([field, reading]) => reading.state !== 'none' && !this.has(field));
    for (const [field, reading] of open) this.found.set(field, movedBy(at, reading));
    return open.length > 0;
  }

  drop(field: FieldName): void {
    this.found.delete(field);
  }

  get(field: FieldName): Reading<unknown> | undefined {
    return this.found.get(field);
  }

  /** Plants told so far, the best meaning of each. */
  plants(): readonly PlantTold[] {
    const { plants } = this.fields();
    if (!plants || plants.state === 'none') return [];
    return plants.state === 'sure' ? plants.value : (plants.offer[0] ?? []);
  }

  setAside(spans: readonly Span[]): void {
    this.others.push(...spans);
  }

  usedBy(test: (field: FieldName) => boolean): Span[] {
    return [...this.found].flatMap(([field, reading]) => (test(field) && reading.state !== 'none' ? reading.used : []));
  }

  used(): Span[] {
    return [...this.others, ...this.usedBy(() => true)];
  }

  /** Bees and plants named in the text, looked up once: that is the slow part. Those used up are left out. */
  names(): FoundNames {
    this.named ??= withStrangers(
      this.text,
      withRepeats(fold(this.text), namesSaid(fold(this.text), this.context)),
      this.context.words,
    );
    return visibleNames(this.rest(), this.named);
  }

  /** The text without what was used. */
  rest(): string {
    return blankLines(this.text, this.used());
  }

  fields(): FieldReadings {
    return Object.fromEntries(this.found);
  }
}

export const overlap = (one: readonly Span[], other: readonly Span[]): boolean =>
  one.some(([from, to]) => other.some((span) => from < span[1] && span[0] < to));

/** Blanks before the first word: most of a text may be blanked out, and looking at nothing takes time too. */
const marginOf = (text: string): number => text.length - text.trimStart().length;

/** A finder's reading is sure or unsure; none is no reading. */
export function passing<Field extends Plain>(
  field: Field,
  text: string,
  context: Context,
): Reading<FieldValues[Field]> | null {
  const [first] = READERS[field].passing(text.trim(), context);
  return first && first.state !== 'none' ? movedBy(marginOf(text), first) : null;
}

/** Words told in passing are a place where they hold a name, or say whose or which: not "by the porch", "in the garden". */
function isClearlyPlace({ latitude, words }: PlaceRead, { words: { place }, survey }: Context): boolean {
  if (latitude !== null || /\p{Lu}|\d/u.test(words)) return true;
  const [folded, length] = [fold(words), words.trim().split(/\s+/).length];
  const begins = (phrases: readonly string[]): boolean => phrases.some((phrase) => folded.startsWith(`${phrase} `));
  // "the library garden", "miller park"
  const isName = begins(place.determiners) ? length > 2 : length > 1 && !begins(place.prepositions);
  return isName || begins(place.owners) || survey.sites.some(({ name }) => folded.includes(fold(name)));
}

/** How far behind a place its day may go on, in letters: "Pine Ridge Preserve May 5th". */
const REACH = 12;

/** A comma, full stop or dash before the next thing told; a sentence may have words before it: "Patch was". */
const PARTED = /(?:[,.;–-]\s{1,3}|(?<=\p{L}{4})[.;]\s{1,3}(?:\p{L}{1,20}\s{1,3}){1,3})$/u;

/**
 * What ends the words of a place: "at Otter Bend on Sunday", "Place: Otter Bend, 2 to 2:15, 65 F"; "Sunday Lake" keeps
 * its own.
 */
export function toldBehind(text: string, used: readonly Span[], context: Context): Span[] {
  return used.flatMap(([from, to]) => {
    const said = text.slice(from, to);
    const words = said.trimEnd().length;
    const parted = (['date', 'times', 'temperature', 'sky', 'wind', 'patch'] as const).flatMap((field) =>
      (passing(field, said, context)?.used ?? []).flatMap(([start]) => PARTED.exec(said.slice(0, start))?.index ?? []),
    );
    if (parted.length > 0) return [[from + Math.min(...parted), to] as const];
    return (['date', 'times'] as const).flatMap((field) => {
      const spans = passing(field, text.slice(from, to + REACH), context)?.used ?? [];
      const first = spans.find(([start, end]) => start > 0 && start < words && end >= words);
      return first ? [[from + first[0], to] as const] : [];
    });
  });
}

/** Takes a place told in passing. */
export function findPlaceInto(gathering: Gathering): void {
  const text = gathering.rest();
  const found = passing('place', text, gathering.context);
  const behind = found ? toldBehind(text, found.used, gathering.context) : [];
  // what was taken out parts words: "Otter Bend on" is no place
  const reading = behind.length === 0 ? found : passing('place', maskedWith(';', text, behind), gathering.context);
  if (reading?.state === 'sure' && !isClearlyPlace(reading.value, gathering.context)) return;
  if (reading) gathering.take('place', reading);
}

/** Takes a field told in passing; words another field used are no part of it. */
export function findInto<Field extends Plain>(gathering: Gathering, field: Field, text: string): void {
  let reading = passing(field, text, gathering.context);
  if (reading && overlap(reading.used, gathering.used())) {
    reading = passing(field, blankLines(text, gathering.used()), gathering.context);
  }
  if (reading) gathering.take(field, reading);
}

/** The parts of `used` that lie within `spans`: a reader of places uses all it is shown. */
export const within = (used: readonly Span[], spans: readonly Span[]): Span[] =>
  used.flatMap(([from, to]) =>
    spans
      .filter((span) => from < span[1] && span[0] < to)
      .map((span): Span => [Math.max(from, span[0]), Math.min(to, span[1])]),
  );

/** Reads the field as asked for, in those parts of the text; what is not understood does not undo what was found. */
export function askInto<Field extends Plain>(
  gathering: Gathering,
  field: Field,
  text: string,
  parts?: readonly Span[],
): void {
  const reading = movedBy(marginOf(text), READERS[field].asked(text.trim(), gathering.context));
  const before = gathering.get(field);
  if (reading.state === 'none' && before !== undefined && before.state !== 'none') return;
  gathering.drop(field);
  gathering.take(field, parts ? { ...reading, used: within(reading.used, parts) } : reading);
}
