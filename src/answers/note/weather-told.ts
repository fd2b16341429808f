/** Temperature, sky and wind of a message: their readers know of each other, and bare words stand beside sure ones. */
import { findNumbers } from '../numbers.js';
import type { Reading, Span } from '../reading.js';
import { fold } from '../text.js';
import { blankLines, maskedWith } from './blank-lines.js';
import { askInto, isWeather, overlap, passing, READERS, type FieldName, type Gathering } from './gathering.js';
import { noteWords } from './vocabulary.js';

/** Temperature, sky and wind, whose readers know of each other; a number two of them took is the temperature's. */
export function readWeather(gathering: Gathering, text: string, asked: readonly FieldName[]): void {
  readWeatherTogether(gathering, text, asked);
  const wind = gathering.get('wind');
  const bare = wind?.state === 'unsure' && wind.ask === 'wind-bare';
  if (!asked.includes('wind') || (gathering.has('wind') && !bare) || !gathering.has('temperature')) return;
  // "68 sunny 5": the one number that is left
  const rest = blankLines(
    text,
    gathering.usedBy((field) => isWeather(field) && field !== 'wind'),
  );
  const { small } = noteWords(gathering.context.words);
  const words = fold(rest).match(/[\p{L}\d.]+/gu) ?? [];
  const numbers = words.filter((word) => /\d/.test(word));
  if (numbers.length === 1 && words.every((word) => numbers.includes(word) || small(word)))
    askInto(gathering, 'wind', rest);
}

function readWeatherTogether(gathering: Gathering, text: string, asked: readonly FieldName[]): void {
  for (const field of ['temperature', 'sky', 'wind'] as const) {
    if (!asked.includes(field)) continue;
    const inPassing = gathering.get(field);
    askInto(gathering, field, text);
    // "66 F / 50% cloud": what stands with its unit is not shaken by another field's number
    const shaken = inPassing?.state === 'sure' && gathering.get(field)?.state !== 'sure';
    if (shaken && asked.length > 1) gathering.take(field, inPassing as Reading<never>);
  }
  // a number that two took is the one's that found it with its own unit, else the temperature's
  settleNumbers(gathering, text, 'sky');
  settleNumbers(gathering, text, 'wind');
}

function settleNumbers(gathering: Gathering, text: string, other: 'sky' | 'wind'): void {
  const [temperature, rival] = [gathering.get('temperature'), gathering.get(other)];
  if (!temperature || !rival || temperature.state === 'none' || rival.state === 'none') return;
  const { words } = gathering.context;
  const shared = temperature.used.filter(
    (span) => overlap([span], rival.used) && findNumbers(fold(text.slice(...span)), words).length > 0,
  );
  if (shared.length === 0) return;
  const inPassing = passing(other, text, gathering.context);
  const owned = inPassing !== null && overlap(inPassing.used, shared);
  const [loser, winner] = owned ? (['temperature', other] as const) : ([other, 'temperature'] as const);
  gathering.drop(loser);
  askInto(
    gathering,
    loser,
    blankLines(
      text,
      gathering.usedBy((field) => field === winner),
    ),
  );
  if (!gathering.has(loser)) gathering.drop(loser);
}

/** Words in a row that can be a sky or wind by themselves, at most: "mostly clear skies, hardly any wind". */
const MOST_WORDS_BESIDE = 5;

/** Words between signs; a slash parts them, but not in "2/8", and a point only where a sentence ends. */
const PIECE = /(?:[^\s,;/|.()]|(?<=\d)\/(?=8))(?:[^,;/|\n().]|\.(?=\S)|(?<=\d)\/(?=8))*/gu;
/** Only signs, or an "and", between words and weather already found. */
const BESIDE = /^[\s,;/|.()&]*(?:and\s+)?$/;
/** Okta and Beaufort as those write them who know them. */
const WEATHER_CODE = { sky: /^\d\s?\/\s?8$|%$/, wind: /^(?:b|bf|bft|f)\.?\s?\d{1,2}$/iu };

/**
 * "65F clear 3mph", "/ 75F / clear / no wind", "2/8" on the line below: words that stand right beside weather already
 * found, and are nothing but sky or wind, are that.
 */
export function readBesideWeather(gathering: Gathering, text: string): void {
  const { small } = noteWords(gathering.context.words);
  // "120 flowers, nothing. 54 degrees": of bees
  const none = (words: string): boolean => gathering.context.words.tally.zero.includes(words.trim());
  if (gathering.usedBy(isWeather).length === 0) return;
  // what is used up parts words too
  const free = maskedWith(
    ';',
    text,
    gathering.usedBy(() => true),
  );
  for (const { words, from } of piecesIn(free)) {
    if ((words.match(/\S+/g) ?? []).length > MOST_WORDS_BESIDE || none(fold(words))) continue;
    if (!standsBeside(text, [from, from + words.length], gathering.usedBy(isWeather))) continue;
    takeIfNothingElse(gathering, ['sky', 'wind'], words, from, small);
  }
}

const piecesIn = (text: string): { readonly words: string; readonly from: number }[] =>
  [...text.matchAll(PIECE)].map((match) => ({ words: match[0].trimEnd(), from: match.index }));

const standsBeside = (text: string, [from, to]: Span, neighbours: readonly Span[]): boolean =>
  neighbours.some(
    ([start, end]) =>
      (end <= from && BESIDE.test(text.slice(end, from))) || (to <= start && BESIDE.test(text.slice(to, start))),
  );

/** Fields that a temperature without its unit may stand beside in a list: "May 5, 2:10 to 2:25. 66. Sky: hazy". */
const BESIDE_TEMPERATURE: readonly FieldName[] = ['date', 'times', 'temperature', 'sky', 'wind'];

/** Takes the only bare number of a whole note that stands between signs beside its day, times or weather. */
export function readBareTemperature(gathering: Gathering, text: string): void {
  if (gathering.has('temperature')) return;
  const { small, hedges } = noteWords(gathering.context.words);
  const used = gathering.usedBy(() => true);
  const neighbours = gathering.usedBy((field) => BESIDE_TEMPERATURE.includes(field));
  const numbers = piecesIn(maskedWith(';', text, used)).filter(({ words }) => /\d/.test(words));
  const bare = numbers.filter(
    ({ words, from }) =>
      standsBeside(text, [from, from + words.length], neighbours) &&
      (fold(words).match(/[\p{L}]+|\d[\d.]*/gu) ?? []).every((word) => /\d/.test(word) || small(word) || hedges(word)),
  );
  const [only] = bare;
  if (!only || bare.length > 1) return;
  const reading = READERS.temperature.asked(`${' '.repeat(only.from)}${only.words}`, gathering.context);
  // "21, sunny" may be °C: asked about, and not lost
  if (reading.state !== 'none') gathering.take('temperature', reading);
}

/** Takes those fields from words that stand at `from` and say nothing else: "clear", "clear still". */
function takeIfNothingElse(
  gathering: Gathering,
  fields: readonly ('sky' | 'wind')[],
  words: string,
  from: number,
  small: (word: string) => boolean,
): void {
  // other numbers may be anything's: "eleven to twelve" is no wind
  const numbers = findNumbers(fold(words), gathering.context.words).some(({ value }) => value > 0);
  const bare = (field: 'sky' | 'wind'): boolean => !/\d/.test(words) && !(field === 'wind' && numbers);
  const open = fields.filter((field) => !gathering.has(field) && (bare(field) || WEATHER_CODE[field].test(words)));
  const read = open.map((field) => ({ field, reading: READERS[field].asked(words, gathering.context) }));
  const told = read.filter(({ reading }) => reading.state !== 'none');
  const used = told.flatMap(({ reading }) => reading.used);
  if (told.length === 0 || !(fold(blankLines(words, used)).match(/[\p{L}\d]+/gu) ?? []).every(small)) return;
  for (const { field } of told) {
    askInto(gathering, field, `${' '.repeat(from)}${words}`);
  }
}
