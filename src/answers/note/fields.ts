/**
 * What one message says of a watch, whatever was asked: fields that were asked for may be told by bare values, all others
 * only with their own unit, label or unmistakable word. No number is taken twice.
 */
import type { Patch, Sky, Temperature, Wind } from '../../../shared/record.js';
import { findDate, readDate } from '../date.js';
import type { FoundNames } from '../names/index.js';
import { findPatch, readPatch } from '../patch.js';
import { findPlace, readPlace } from '../place.js';
import { readPlants, type PlantTold } from '../plants.js';
import { namesSaid } from '../plants/plants-said.js';
import { none, type Context, type Finder, type Reader, type Reading, type Span } from '../reading.js';
import { findSky, readSky } from '../sky.js';
import { findTallyAmong, readTally, type TallyRow } from '../tally.js';
import { findTemperature, readTemperature } from '../temperature.js';
import { fold } from '../text.js';
import { findTimes, readTimes, type Times } from '../times.js';
import { findWind, readWind } from '../wind.js';
import { blankLines } from './blank-lines.js';
import { readFlora, visibleNames, watchedWith } from './flora.js';
import { floraIn } from './flowers.js';
import { labelledIn, type Label, type Labelled } from './labels.js';
import { ownText } from './mail-text.js';
import { noteWords } from './vocabulary.js';

type ValueOf<Read> = Read extends Reader<infer Value> ? Value : never;

export interface FieldValues {
  date: string;
  times: Times;
  temperature: Temperature;
  sky: Sky;
  wind: Wind;
  patch: Patch;
  place: ValueOf<typeof readPlace>;
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

export interface FieldsFound {
  readonly fields: FieldReadings;
  /** Words that nobody used, as typed. */
  readonly left: string;
}

/** Longest mail, with all it quotes, and longest text of its writer: a long note has two thousand letters. */
const LONGEST_MAIL = 100_000;
const LONGEST_OWN = 6000;

type Plain = Exclude<FieldName, 'plants' | 'tally'>;
type Read<Field extends Plain> = {
  readonly asked: Reader<FieldValues[Field]>;
  readonly passing: Finder<FieldValues[Field]>;
};

const READERS: { readonly [Field in Plain]: Read<Field> } = {
  date: { asked: readDate, passing: findDate },
  times: { asked: readTimes, passing: findTimes },
  temperature: { asked: readTemperature, passing: findTemperature },
  sky: { asked: readSky, passing: findSky },
  wind: { asked: readWind, passing: findWind },
  patch: { asked: readPatch, passing: findPatch },
  place: { asked: readPlace, passing: findPlace },
};

/** Whoever comes first keeps a number that two could use. */
const IN_TURN: readonly Plain[] = ['place', 'date', 'times', 'patch', 'temperature', 'wind', 'sky'];
const WEATHER: readonly FieldName[] = ['temperature', 'sky', 'wind'];
const isWeather = (field: FieldName): boolean => WEATHER.includes(field);

/** The fields found so far, on their way. */
class Gathering {
  private readonly found = new Map<FieldName, Reading<unknown>>();
  readonly used: Span[] = [];
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
    if (reading.state !== 'none') this.used.push(...reading.used);
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

  usedBy(test: (field: FieldName) => boolean): Span[] {
    return [...this.found].flatMap(([field, reading]) => (test(field) && reading.state !== 'none' ? reading.used : []));
  }

  /** Bees and plants named in the text, looked up once: that is the slow part. Those used up are left out. */
  names(): FoundNames {
    this.named ??= namesSaid(fold(this.text), this.context);
    return visibleNames(this.rest(), this.named);
  }

  /** The text without what was used. */
  rest(): string {
    return blankLines(this.text, this.used);
  }

  fields(): FieldReadings {
    return Object.fromEntries(this.found);
  }
}

/** Names become one unknown word, so that "sunny, 85 violets" does not read as "sunny, 85". Positions stay. */
function maskNames(text: string, spans: readonly Span[]): string {
  let out = '';
  let at = 0;
  for (const [from, to] of [...spans].sort((a, b) => a[0] - b[0])) {
    if (from < at) continue;
    out += text.slice(at, from) + 'q'.repeat(to - from);
    at = to;
  }
  return out + text.slice(at);
}

const overlap = (one: readonly Span[], other: readonly Span[]): boolean =>
  one.some(([from, to]) => other.some((span) => from < span[1] && span[0] < to));

const keepOnly = (text: string, spans: readonly Span[]): string => {
  const gaps: Span[] = [];
  let at = 0;
  for (const [from, to] of [...spans].sort((a, b) => a[0] - b[0])) {
    gaps.push([at, from]);
    at = Math.max(at, to);
  }
  return blankLines(text, [...gaps, [at, text.length]]);
};

/** A finder's reading is sure or unsure; none is no reading. */
function passing<Field extends Plain>(
  field: Field,
  text: string,
  context: Context,
): Reading<FieldValues[Field]> | null {
  const [first] = READERS[field].passing(text, context);
  return first && first.state !== 'none' ? first : null;
}

function findInto<Field extends Plain>(gathering: Gathering, field: Field, text: string): void {
  let reading = passing(field, text, gathering.context);
  if (reading && overlap(reading.used, gathering.used)) {
    reading = passing(field, blankLines(text, gathering.used), gathering.context);
  }
  if (reading) gathering.take(field, reading);
}

/** The parts of `used` that lie within `spans`: a reader of places uses all it is shown. */
const within = (used: readonly Span[], spans: readonly Span[]): Span[] =>
  used.flatMap(([from, to]) =>
    spans
      .filter((span) => from < span[1] && span[0] < to)
      .map((span): Span => [Math.max(from, span[0]), Math.min(to, span[1])]),
  );

/** Reads the field as asked for, in those parts of the text; what is not understood does not undo what was found. */
function askInto<Field extends Plain>(gathering: Gathering, field: Field, text: string, parts?: readonly Span[]): void {
  const reading = READERS[field].asked(text, gathering.context);
  const before = gathering.get(field);
  if (reading.state === 'none' && before !== undefined && before.state !== 'none') return;
  gathering.drop(field);
  gathering.take(field, parts ? { ...reading, used: within(reading.used, parts) } : reading);
}

/** Fields that stand in a form under their labels. */
function readLabelled(gathering: Gathering, labelled: readonly Labelled[], asked: readonly FieldName[]): void {
  const { text } = gathering;
  const under = (label: Label): Labelled[] => labelled.filter((each) => each.label === label);
  for (const field of IN_TURN) {
    const parts = under(field);
    if (parts.length === 0) continue;
    // "Start: 1:05 pm", "End: 1:20 pm" need their labels
    const spans = parts.map(({ labelSpan, value }): Span => (field === 'times' ? [labelSpan[0], value[1]] : value));
    askInto(gathering, field, keepOnly(text, spans), spans);
    if (!gathering.has(field)) {
      if (!asked.includes(field)) gathering.drop(field);
      continue;
    }
    gathering.used.push(...parts.map(({ labelSpan }) => labelSpan));
    if (field === 'place') gathering.used.push(...parts.map(({ value }) => value));
  }
  const weather = under('weather');
  if (weather.length > 0) {
    const part = keepOnly(
      text,
      weather.map(({ value }) => value),
    );
    const open = WEATHER.filter((field) => !gathering.has(field));
    readWeather(gathering, part, open);
    for (const field of open) if (!gathering.has(field)) gathering.drop(field);
    gathering.used.push(...weather.map(({ labelSpan }) => labelSpan));
  }
  gathering.used.push(...under('other').flatMap(({ labelSpan, value }): Span[] => [labelSpan, value]));
}

/** Temperature, sky and wind, whose readers know of each other; a number two of them took is the temperature's. */
function readWeather(gathering: Gathering, text: string, asked: readonly FieldName[]): void {
  readWeatherTogether(gathering, text, asked);
  if (!asked.includes('wind') || gathering.has('wind') || !gathering.has('temperature')) return;
  // "68 sunny 5": the one number that is left
  const rest = blankLines(text, gathering.usedBy(isWeather));
  const { small } = noteWords(gathering.context.words);
  const words = fold(rest).match(/[\p{L}\d.]+/gu) ?? [];
  const numbers = words.filter((word) => /\d/.test(word));
  if (numbers.length === 1 && words.every((word) => numbers.includes(word) || small(word)))
    askInto(gathering, 'wind', rest);
}

function readWeatherTogether(gathering: Gathering, text: string, asked: readonly FieldName[]): void {
  const { context } = gathering;
  for (const field of ['temperature', 'sky', 'wind'] as const)
    if (asked.includes(field)) askInto(gathering, field, text);
  const [temperature, wind] = [gathering.get('temperature'), gathering.get('wind')];
  if (!temperature || !wind || temperature.state === 'none' || wind.state === 'none') return;
  const shared = temperature.used.filter((span) => overlap([span], wind.used) && /\d/.test(text.slice(...span)));
  if (shared.length === 0) return;
  const inPassing = passing('wind', text, context);
  const windOwns = inPassing !== null && overlap(inPassing.used, shared);
  const [loser, winner] = windOwns ? (['temperature', 'wind'] as const) : (['wind', 'temperature'] as const);
  gathering.drop(loser);
  const used = gathering.get(winner);
  askInto(gathering, loser, blankLines(text, used && used.state !== 'none' ? used.used : []));
  if (!gathering.has(loser)) gathering.drop(loser);
}

/** Words in a row that can be a sky or wind by themselves, at most: "mostly clear skies, hardly any wind". */
const MOST_WORDS_BESIDE = 5;

/**
 * "65F clear 3mph", "/ 75F / clear / no wind": words that stand right beside weather already found, and are nothing but
 * sky or wind, are that.
 */
function readBesideWeather(gathering: Gathering, text: string): void {
  const { small } = noteWords(gathering.context.words);
  const anchors = gathering.usedBy(isWeather);
  if (anchors.length === 0) return;
  const others = gathering.usedBy((field) => !isWeather(field));
  const free = blankLines(
    text,
    [...others, ...anchors].map(([from, to]): Span => [from, to]),
  );
  for (const match of free.matchAll(/[^\s,;/|.()][^,;/|\n()]*/gu)) {
    const from = match.index;
    const words = match[0].trimEnd();
    const to = from + words.length;
    if ((words.match(/\S+/g) ?? []).length > MOST_WORDS_BESIDE) continue;
    const beside = anchors.some(
      ([start, end]) =>
        (end <= from && /^[\s,;/|.()&]*(?:and\s+)?$/.test(text.slice(end, from))) ||
        (to <= start && /^[\s,;/|.()&]*(?:and\s+)?$/.test(text.slice(to, start))),
    );
    if (!beside) continue;
    takeIfNothingElse(gathering, 'sky', words, from, small);
    takeIfNothingElse(gathering, 'wind', words, from, small);
  }
}

/** Takes a field from words that stand at `from` and say nothing else. */
function takeIfNothingElse<Field extends 'sky' | 'wind'>(
  gathering: Gathering,
  field: Field,
  words: string,
  from: number,
  small: (word: string) => boolean,
): void {
  if (gathering.has(field) || /\d/.test(words)) return;
  const reading = READERS[field].asked(words, gathering.context);
  if (reading.state === 'none') return;
  const rest = blankLines(words, reading.used);
  if (!(fold(rest).match(/[\p{L}\d]+/gu) ?? []).every(small)) return;
  const used = reading.used.map(([start, end]): Span => [start + from, end + from]);
  gathering.take(field, { ...reading, used });
}

/** A capital beside a capital: the "Clear" of "Clear Lake" is no sky. */
function isInProperName(text: string, [from, to]: Span): boolean {
  if (!/^\p{Lu}/u.test(text.slice(from, to))) return false;
  return (
    /^[ ]\p{Lu}/u.test(text.slice(to, to + 2)) || /\p{Lu}[\p{L}'’]*[ ]$/u.test(text.slice(Math.max(0, from - 24), from))
  );
}

/** Words beside these in the same clause, that are nobody's: "clear lake boat landing" is no sky. */
function standsAlone(
  text: string,
  spans: readonly Span[],
  used: readonly Span[],
  small: (word: string) => boolean,
): boolean {
  const rest = blankLines(text, used);
  return spans.every(([from, to]) => {
    const start = Math.max(...[',', ';', '.', '\n'].map((sign) => text.lastIndexOf(sign, from - 1))) + 1;
    const ends = [',', ';', '.', '\n'].map((sign) => text.indexOf(sign, to)).filter((at) => at !== -1);
    const clause = rest.slice(start, Math.min(text.length, ...ends));
    return (fold(clause).match(/[\p{L}\d]+/gu) ?? []).every(small);
  });
}

/** While a place is asked for, what is told in passing must not be part of its name. */
function leavePlaceAlone(gathering: Gathering): void {
  const { text, context } = gathering;
  const { small } = noteWords(context.words);
  const all = gathering.usedBy(() => true);
  for (const field of ['sky', 'wind', 'date'] as const) {
    const reading = gathering.get(field);
    if (!reading || reading.state === 'none') continue;
    const named = reading.used.some((span) => isInProperName(text, span));
    const inWords = reading.used.every((span) => !/\d/.test(text.slice(...span)));
    if (named || (field !== 'date' && inWords && !standsAlone(text, reading.used, all, small))) gathering.drop(field);
  }
}

/** What remains of a place's words when other fields were taken out of them. */
const tidied = (words: string): string =>
  words
    .replace(/\s+/g, ' ')
    .replace(/(?:\s*[,;](?=\s*(?:[,;]|$)))+/g, '')
    .replace(/^[\s,;.:-]+|[\s,;:-]+$/g, '');

function readPlaceAsked(gathering: Gathering): void {
  const reading = readPlace(gathering.rest(), gathering.context);
  const tidy = (value: FieldValues['place']): FieldValues['place'] => ({ ...value, words: tidied(value.words) });
  if (reading.state === 'sure') gathering.take('place', { ...reading, value: tidy(reading.value) });
  else if (reading.state === 'unsure') gathering.take('place', { ...reading, offer: reading.offer.map(tidy) });
  else gathering.take('place', reading);
}

/** Plants and tally: one by itself by its own reader, both together where the text tells both. */
function readPlantsAndTally(
  gathering: Gathering,
  asked: readonly FieldName[],
  labelled: readonly Labelled[],
  wholeNote: boolean,
): void {
  const { context } = gathering;
  const text = gathering.rest();
  const folded = fold(text);
  const names = gathering.names();
  const wantsPlants = asked.includes('plants');
  const wantsTally = asked.includes('tally');
  const { saysFlowers } = noteWords(context.words);
  const tellsFlowers = floraIn(folded, names, context.words).flowers.some(({ span }) =>
    saysFlowers(folded.slice(...span)),
  );
  const valueOf = (label: 'plants' | 'tally'): string | null => {
    const parts = labelled.filter((each) => each.label === label);
    return parts.length === 0
      ? null
      : keepOnly(
          text,
          parts.map(({ value }) => value),
        );
  };

  if (wantsPlants && !wantsTally && names.bees.length === 0) {
    gathering.take('plants', readPlants(text, context));
    return;
  }
  if (wantsTally && !wantsPlants && !tellsFlowers) {
    gathering.take('tally', readTally(text, context));
    return;
  }
  const formPlants = valueOf('plants');
  const formTally = valueOf('tally');
  const isForm = formPlants !== null && visibleNames(formPlants, names).bees.length === 0;
  const plants = isForm ? readPlants(formPlants, context) : null;
  if (plants && plants.state !== 'none') {
    gathering.take('plants', plants);
    const told = gathering.plants();
    const labels = labelled.filter(({ label }) => label === 'plants').map(({ labelSpan }) => labelSpan);
    const rest = blankLines(text, [...labels, ...plants.used]);
    const within = watchedWith(context, told);
    const tally = formTally === null ? findTallyAmong(rest, within)[0] : readTally(formTally, within);
    if (tally && (tally.state !== 'none' || wantsTally)) gathering.take('tally', tally);
    return;
  }
  const flora = readFlora(text, context, names, wantsTally);
  const tallyTold = flora.tally !== null && flora.tally.state !== 'none';
  if (flora.tally && (tallyTold || wantsTally)) gathering.take('tally', flora.tally);
  if (flora.plants) {
    const counted = flora.plants.state === 'sure' ? flora.plants.value.some(({ flowers }) => flowers !== null) : true;
    // "by the crabapple" in an answer about the day is no plant watched
    if (wantsPlants || wholeNote || counted) gathering.take('plants', flora.plants);
  } else if (wantsPlants) gathering.take('plants', none('plants-no-name'));
}

/** Answers under quoted questions: "> How warm was it?" above "68". */
function readUnderQuestions(gathering: Gathering, parts: ReturnType<typeof ownText>['parts']): void {
  const { text } = gathering;
  let { context } = gathering;
  const { fieldsOf } = noteWords(context.words);
  for (const { span, question } of parts) {
    if (question === null) continue;
    const asked = fieldsOf(question);
    if (asked.length === 0) continue;
    const inner = gather(keepOnly(text, [span]), context, asked, false);
    const all = FIELD_NAMES.filter((field) => inner.has(field) && !gathering.has(field));
    for (const field of all) gathering.take(field, inner.get(field) as Reading<never>);
    if (all.length > 0) gathering.used.push(span);
    const plants = inner.plants();
    // "none" below is of these
    context = watchedWith(context, plants);
  }
}

function gather(text: string, context: Context, asked: readonly FieldName[], wholeNote: boolean): Gathering {
  const gathering = new Gathering(text, context);
  const labelled = labelledIn(fold(text), context.words);
  readLabelled(gathering, labelled, asked);
  gatherRest(gathering, asked, labelled, wholeNote);
  return gathering;
}

function gatherRest(
  gathering: Gathering,
  asked: readonly FieldName[],
  labelled: readonly Labelled[],
  wholeNote: boolean,
): void {
  const { context } = gathering;
  const wanted = asked.filter((field) => !gathering.has(field));
  if (!asked.includes('place') && !gathering.has('place')) findInto(gathering, 'place', gathering.rest());

  const unnamed = (): string => {
    const { bees, plants } = gathering.names();
    return maskNames(
      gathering.rest(),
      [...bees, ...plants].map(({ span }) => span),
    );
  };
  const before = unnamed();
  for (const field of IN_TURN) {
    if (field !== 'place' && !gathering.has(field)) findInto(gathering, field, before);
  }
  readBesideWeather(gathering, before);
  if (asked.includes('place')) leavePlaceAlone(gathering);

  // numbers of flowers and queens are no answer to anything else
  const folded = fold(gathering.rest());
  const flora = wanted.some((field) => field === 'plants' || field === 'tally')
    ? []
    : floraIn(folded, gathering.names(), context.words).flowers.map(({ span }) => span);
  const visible = (field: FieldName): string => {
    const others = gathering.usedBy((other) => other !== field && !(isWeather(field) && isWeather(other)));
    return blankLines(before, [...others, ...flora]);
  };
  for (const field of ['date', 'times', 'patch'] as const)
    if (wanted.includes(field)) askInto(gathering, field, visible(field));
  const weather = wanted.filter(isWeather);
  if (weather.length > 0) readWeather(gathering, visible('sky'), weather);
  if (wanted.includes('place')) readPlaceAsked(gathering);
  else readPlantsAndTally(gathering, wanted, labelled, wholeNote);
}

/** The writer's own text; null where it is too long to be a watch. */
export function ownTextOf(text: string, context: Context): ReturnType<typeof ownText> | null {
  if (text.length > LONGEST_MAIL) return null;
  const found = ownText(text, context.words);
  // a greeting or farewell alone is still an answer to be answered
  const own = found.text.trim() === '' ? { text, parts: [] } : found;
  return own.text.replace(/\s+/g, ' ').length > LONGEST_OWN ? null : own;
}

/** Everything a message or note says. `wholeNote`: a plant named without a count was watched too. */
export function fieldsIn(text: string, context: Context, asked: readonly FieldName[], wholeNote: boolean): FieldsFound {
  const [first] = asked;
  const tooLong = (): FieldsFound => ({ fields: first === undefined ? {} : { [first]: none('too-long') }, left: text });
  const own = ownTextOf(text, context);
  if (!own) return tooLong();
  const gathering = new Gathering(own.text, context);
  readUnderQuestions(gathering, own.parts);
  const labelled = labelledIn(fold(gathering.rest()), context.words);
  readLabelled(gathering, labelled, asked);
  gatherRest(gathering, asked, labelled, wholeNote);
  const fields = gathering.fields();
  // with several fields asked, one that was not told is simply still open
  const told = Object.values(fields).some((reading) => reading.state !== 'none');
  const kept = told
    ? Object.fromEntries(
        Object.entries(fields).filter(
          ([, reading]) => reading.state !== 'none' || reading.used.length > 0 || asked.length === 1,
        ),
      )
    : fields;
  return { fields: kept, left: gathering.rest().replace(/\s+/g, ' ').trim() };
}
