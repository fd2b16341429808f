/** Air temperature: "70F", "21 °C", "low 70s", "between 66 and 70". Values in °C, one decimal. */
import type { Temperature } from '../../shared/record.js';
import { rounded, toCelsius } from '../../shared/units.js';
import type { TemperatureUnit } from '../../shared/vocabularies.js';
import { LONGEST_TEXT, none, sure, unsure, type Context, type Finder, type Reader, type Reading } from './reading.js';
import { weatherBeside } from './weather/beside.js';
import { degreesIn, LEAST_FAHRENHEIT, unitAlone, type Degrees } from './weather/degrees.js';
import {
  changesIn,
  doubtedClauses,
  isAllThatIsPut,
  lastSaid,
  otherSourceBetween,
  withoutBeforehand,
} from './weather/said.js';
import { foldDegrees, spoken, type Spoken } from './weather/spoken.js';

/** Air temperatures a watch can happen in, °C. Outside, the number meant something else. */
const FIELD_RANGE_CELSIUS = { from: -10, to: 50 };

/** Bare numbers that may be °C in a survey of °F; the next few are °F on a cold day. */
const BARE_CELSIUS = { from: 10, to: 40 };

/** A °F and a °C of the same moment are this near after rounding. */
const MOST_APART_CELSIUS = 1;

/** Ends farther apart are two readings, whatever stands between them; two guesses ("68 or 75") soon are. */
const WIDEST_RANGE_DEGREES = 20;
const WIDEST_GUESS_DEGREES = 5;

interface Meaning {
  readonly celsius: number;
  readonly unit: TemperatureUnit;
  /** Why it is not sure. */
  readonly doubt: 'temperature-unit' | 'temperature-two' | 'temperature-doubt' | null;
}

/** What one measure means, or why it means nothing. */
function meaningOf(
  { low, high, unit, doubtful, alternatives }: Degrees,
  survey: Context['survey'],
): Meaning | 'temperature-low' | 'temperature-range' {
  const middle = (low + high) / 2;
  const as = (
    degrees: number,
    meant: TemperatureUnit,
    doubt: Meaning['doubt'] = null,
  ): Meaning | 'temperature-range' => {
    const celsius = toCelsius(degrees, meant);
    if (celsius < FIELD_RANGE_CELSIUS.from || celsius > FIELD_RANGE_CELSIUS.to) return 'temperature-range';
    return { celsius, unit: meant, doubt: doubt ?? (doubtful ? 'temperature-doubt' : null) };
  };
  const wide = high - low > (alternatives ? WIDEST_GUESS_DEGREES : WIDEST_RANGE_DEGREES) ? 'temperature-two' : null;
  // "72/22", "72/22C": the same in both units
  if (
    low < LEAST_FAHRENHEIT &&
    high >= LEAST_FAHRENHEIT &&
    Math.abs(toCelsius(high, 'F') - low) <= MOST_APART_CELSIUS
  ) {
    return survey.temperatureUnit === 'F' ? as(high, 'F') : as(low, 'C');
  }
  if (unit) return as(middle, unit, wide);
  if (high >= LEAST_FAHRENHEIT) return as(middle, 'F', wide);
  if (survey.temperatureUnit === 'C') return as(middle, 'C', wide);
  if (middle < BARE_CELSIUS.from) return 'temperature-low';
  return as(middle, middle <= BARE_CELSIUS.to ? 'C' : 'F', 'temperature-unit');
}

const shown = ({ celsius }: Meaning): Temperature => ({ celsius: rounded(celsius, 1) });

/** Of several numbers without a mark, those that can be temperatures: "68, sunny, 5" is 68. */
function temperaturesAmong(bare: readonly Degrees[], text: Spoken, { survey, words }: Context): readonly Degrees[] {
  if (bare.length < 2 || changesIn(text, words)(bare[0]!.clause, bare.at(-1)!.clause)) return bare;
  if (survey.temperatureUnit === 'C') {
    const first = bare.filter((each) => !each.behindWeather);
    return first.length > 0 ? first : bare;
  }
  const fahrenheit = bare.filter((each) => each.high >= LEAST_FAHRENHEIT);
  return fahrenheit.length > 0 ? fahrenheit : bare;
}

/** Puts together all that was found: the same twice is one; a °F and a °C may say the same. */
function together(found: readonly Degrees[], text: Spoken, { survey, words }: Context): Reading<Temperature> {
  const used = found.flatMap((each) => each.used);
  const meanings: { meaning: Meaning; degrees: Degrees }[] = [];
  let refused: 'temperature-low' | 'temperature-range' | null = null;
  for (const degrees of found) {
    const meaning = meaningOf(degrees, survey);
    if (typeof meaning === 'string') refused ??= meaning;
    else meanings.push({ meaning, degrees });
  }
  const [first] = meanings;
  if (!first) return none(refused ?? 'temperature-unknown', used);

  const own = meanings.find(({ meaning }) => meaning.unit === survey.temperatureUnit);
  const other = meanings.find(({ meaning }) => meaning.unit !== survey.temperatureUnit);
  const all = meanings.map(({ meaning }) => meaning.celsius);
  const middle = (Math.min(...all) + Math.max(...all)) / 2;
  const doubted = doubtedClauses(text, words);
  const doubt = meanings.find(({ meaning }) => meaning.doubt !== null)?.meaning.doubt ?? null;
  const changed = changesIn(text, words);
  const moved = meanings.some(({ degrees: { low, high, clause } }) => low !== high && changed(clause, clause));
  const hedged = meanings.some(({ degrees }) => doubted.has(degrees.clause));

  if (own && other) {
    const offer = [shown(own.meaning)];
    const agree = Math.max(...all) - Math.min(...all) <= MOST_APART_CELSIUS;
    if (!agree) return unsure(offer, 'temperature-units', used);
    if (hedged) return unsure(offer, 'temperature-doubt', used);
    // the one settles what the other leaves open: "15 degrees (59 F)"
    const open = meanings.every(({ meaning }) => meaning.doubt !== null);
    return open && doubt ? unsure(offer, doubt, used) : sure(shown(own.meaning), used);
  }
  const same = all.every((celsius) => rounded(celsius, 1) === rounded(first.meaning.celsius, 1));
  const offer = [shown({ ...first.meaning, celsius: same ? first.meaning.celsius : middle })];
  if (!same || moved) return unsure(offer, 'temperature-two', used);
  if (doubt) return unsure(offer, doubt, used);
  return hedged ? unsure(offer, 'temperature-doubt', used) : sure(shown(first.meaning), used);
}

/** "61 (16C)", "61 = 16C": a bare number is the same moment's in °F. */
function besideMarked(measured: readonly Degrees[], at: number, { folded }: Spoken): boolean {
  const [bare, next] = [measured[at], measured[at + 1]];
  if (!bare || !next?.marked || bare.high < LEAST_FAHRENHEIT) return false;
  return /^\s?[(/=]\s?$/.test(folded.slice(bare.span[1], next.span[0]));
}

/** Which of the numbers in a text count. */
type Take = (text: Spoken) => (degrees: Degrees) => boolean;

/**
 * For a bare number that puts a temperature right its unit: "20 C, sorry, 22" is of °C. A number that does not fit that
 * unit may be of the other. Null where no temperature was said before.
 */
function puttingRight(before: string, { words }: Context): ((degrees: Degrees) => TemperatureUnit | null) | null {
  if (before.trim() === '') return null;
  const said = degreesIn(spoken(before, words), words).findLast(({ marked }) => marked);
  if (!said) return null;
  return ({ high }) => (said.unit === 'C' && high < LEAST_FAHRENHEIT ? 'C' : null);
}

/** Reads one text without corrections in it. `meant` is the unit they are put right to, `before` what is put right. */
function readOnce(
  text: string,
  context: Context,
  take: Take,
  meant: TemperatureUnit | null = null,
  before = '',
): Reading<Temperature> {
  const said = spoken(text, context.words);
  const counts = take(said);
  const puts = puttingRight(before, context);
  const taken = degreesIn(said, context.words).flatMap((degrees) => {
    if (puts === null || degrees.unit !== null || !isAllThatIsPut(degrees, said, context.words))
      return counts(degrees) ? [degrees] : [];
    return [{ ...degrees, marked: true, unit: puts(degrees) }];
  });
  const alone = meant ?? (taken.some(({ unit }) => unit !== null) ? null : unitAlone(said, context.words));
  const all = taken.map((degrees) => ({
    ...degrees,
    unit: meant ?? degrees.unit ?? alone,
    marked: degrees.marked || alone !== null,
  }));
  const [first, last] = [all[0], all.at(-1)];
  // "earlier 55, then 60" changed while they watched; without a word for it, only the 60 is of the watch
  const changed = first && last && changesIn(said, context.words)(first.clause, last.clause);
  const told = all.filter((degrees) => !degrees.aside && (changed === true || !degrees.otherTime));
  const measured = changed === true ? told : withoutBeforehand(told, said, context.words);
  if (measured.length === 0) {
    const aside = together(all, said, context);
    return aside.state === 'sure' ? unsure([aside.value], 'temperature-aside', aside.used) : aside;
  }
  const fromAnother = otherSourceBetween(said, context.words);
  const firm = measured.filter((degrees, at) => degrees.marked || besideMarked(measured, at, said));
  // "one thermometer says 61, the other 65"
  const marked = measured.filter(
    (degrees) => firm.includes(degrees) || firm.some(({ to }) => fromAnother(to, degrees.from)),
  );
  return together(marked.length > 0 ? marked : temperaturesAmong(measured, said, context), said, context);
}

/** The last said counts: a number, or only its unit ("75 C, sorry, F"). */
function readLastSaid(text: string, context: Context, take: Take): Reading<Temperature> {
  const folded = foldDegrees(text);
  return lastSaid(text, folded, context.words, (part, before) => {
    const meant = before === '' ? null : unitAlone(spoken(part, context.words), context.words);
    const reading = readOnce(part, context, take, null, before);
    return reading.state === 'none' && meant ? readOnce(before, context, take, meant) : reading;
  });
}

/**
 * Reads an air temperature. Value in °C, one decimal. Without a unit, 45 and over is °F; less is °C in a survey of °C
 * and asked back in one of °F, never converted in silence. What it felt like is passed over. Refuses under −10 °C and
 * over 50 °C.
 */
export const readTemperature: Reader<Temperature> = (text, context) => {
  if (text.trim() === '') return none('empty');
  if (text.length > LONGEST_TEXT) return none('too-long');
  return readLastSaid(text, context, () => () => true);
};

/**
 * Finds a temperature in a longer text: with a unit, a label or as a decade ("low 70s"); in a survey of °F also a bare
 * 45 to 110 among words of sky and wind: "66 and mostly sunny", "dead calm, 65, sunny".
 */
export const findTemperature: Finder<Temperature> = (text, context) => {
  const inPassing: Take = (said) => {
    const beside = weatherBeside(said, context.words);
    return (degrees) => degrees.marked || (context.survey.temperatureUnit === 'F' && beside(degrees));
  };
  const reading = readLastSaid(text, context, inPassing);
  return reading.state === 'none' ? [] : [reading];
};
