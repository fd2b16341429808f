/** Wind on the Beaufort scale: "light breeze", "leaves rustling", "5-10 mph", "NW at 10", "Beaufort 3". Forces 0 to 12. */
import type { Ask } from '../../shared/phrases.js';
import type { Wind } from '../../shared/record.js';
import type { SpeedUnit } from '../../shared/vocabularies.js';
import { LONGEST_TEXT, none, sure, unsure, type Context, type Finder, type Reader, type Reading } from './reading.js';
import { amongWeather, type Finding } from './weather/place.js';
import {
  asksMeaning,
  changedInto,
  changesIn,
  doubtedClauses,
  isAllThatIsPut,
  isFiller,
  lastSaid,
  ofTheWatch,
  otherSourceBetween,
  partlySo,
  restIsFiller,
} from './weather/said.js';
import { asMeant } from './weather/heard.js';
import { foldDegrees, spoken, type Spoken } from './weather/spoken.js';
import { inAny } from './weather/phrases.js';
import { speedsIn, type Speed } from './weather/speeds.js';
import type { WindHit } from './weather/wind-words.js';

/** What is made of the wind said: the best force first; `ask` is null where there is no doubt. */
interface Meant {
  readonly forces: readonly number[];
  readonly ask: Ask | null;
}

const clearly = (force: number): Meant => ({ forces: [force], ask: null });
const openly = (forces: readonly number[], ask: Ask): Meant => ({ forces: [...new Set(forces)], ask });

/** Words and a number that are no farther apart are one wind; the number is the better measure. */
const MOST_APART_FORCES = 2;
/** Up to here people call winds by the scale's own words. */
const MODERATE_BREEZE = 4;
/** A bare number from here on is hardly a wind in which somebody watches flowers: more likely °F. In the survey's unit. */
const LEAST_UNLIKELY_SPEED = 40;

/** All winds told the same way: one force, its open choices, or several that differ and then their middle first. */
function oneOf(told: readonly (readonly number[])[]): Meant | null {
  const [first] = told;
  if (!first) return null;
  const clear = [...new Set(told.flatMap((forces) => (forces.length === 1 ? forces : [])))];
  if (clear.length === 0) return openly(first, 'wind-vague');
  const [only] = clear;
  if (clear.length === 1 && only !== undefined) {
    const against = told.find((forces) => !forces.includes(only));
    return against ? openly([only, ...against], 'wind-two') : clearly(only);
  }
  const middle = Math.ceil((Math.min(...clear) + Math.max(...clear)) / 2);
  return openly([middle, ...clear], 'wind-two');
}

/** The strongest sign: where small branches move, leaves do as well. */
function strongest(effects: readonly WindHit[]): Meant | null {
  const clear = effects.flatMap(({ value }) => (value.forces.length === 1 ? value.forces : []));
  if (clear.length === 0) return oneOf(effects.map(({ value }) => value.forces));
  // "leaves still, branches moving" is no wind that anybody felt
  return clear.includes(0) && Math.max(...clear) > 1
    ? oneOf(clear.map((force) => [force]))
    : clearly(Math.max(...clear));
}

/** "a breeze" gives way to anything that says more. */
const isFirm = ({ value }: WindHit): boolean => value.trust !== 'in-place';

/** Words first, but a word in place ("a breeze") gives way to a better one. */
function byWords(hits: readonly WindHit[], text: Spoken, words: Context['words']): Meant | null {
  const firm = hits.filter(isFirm);
  const told = firm.length > 0 ? firm : hits;
  const [first, second] = told;
  if (first && second && told.length === 2 && rangeBetween(first, second, text, words)) {
    // "calm to light breeze": the middle, where there is one
    const [low = 0, high = 0] = [first.value.forces[0], second.value.forces[0]];
    const middle = (low + high) / 2;
    if (Math.abs(high - low) > MOST_APART_FORCES) return openly([Math.ceil(middle), low, high], 'wind-two');
    return Number.isInteger(middle) ? clearly(middle) : openly([Math.ceil(middle), Math.floor(middle)], 'wind-vague');
  }
  const meant = oneOf(told.map(({ value }) => value.forces));
  const turned = told.some(partlySo(text, words));
  return meant && turned ? openly(meant.forces, 'wind-two') : meant;
}

/** Only a word such as "to" stands between the two. */
function rangeBetween(
  left: WindHit,
  right: WindHit,
  { tokens, folded }: Spoken,
  { weather }: Context['words'],
): boolean {
  if (left.value.forces.length > 1 || right.value.forces.length > 1) return false;
  const between = tokens.slice(left.to, right.from).filter((token) => !token.skipped);
  if (between.length === 0) return /^\s*[-/]\s*$/.test(folded.slice(left.span[1], right.span[0]));
  return between.length === 1 && weather.rangeJoins.includes(between[0]!.word);
}

/** Puts words, signs and numbers together; null where there are none. */
function meantBy(words: Meant | null, effects: Meant | null, measured: Meant | null): Meant | null {
  const said = words && effects ? wordAndSign(words, effects) : (words ?? effects);
  if (!measured) return said;
  const [force] = measured.forces;
  const [other] = said?.forces ?? [];
  // "calm, < 1 mph"
  if (measured.ask && said && !said.ask && other !== undefined && measured.forces.includes(other)) return said;
  if (force === undefined || other === undefined || measured.ask) return measured;
  return Math.abs(force - other) <= MOST_APART_FORCES ? measured : openly([force, other], 'wind-two');
}

function wordAndSign(words: Meant, sign: Meant): Meant {
  const [word] = words.forces;
  const [seen] = sign.forces;
  if (word === undefined || seen === undefined) return words;
  // each settles what the other leaves open
  if (words.ask && !sign.ask) return words.forces.includes(seen) ? sign : openly([seen, ...words.forces], 'wind-two');
  if (words.ask) {
    const [both, another] = words.forces.filter((force) => sign.forces.includes(force));
    return both !== undefined && another === undefined ? clearly(both) : words;
  }
  // "windy, flowers whipping about": a sign that leaves much open is no word against it
  if (sign.ask && sign.forces.some((force) => Math.abs(force - word) <= 1)) return words;
  if (sign.ask) return openly([word, ...sign.forces], 'wind-two');
  // "scarcely a breath of air, the smoke rose straight up"
  if (seen === 0 && word === 1) return sign;
  // "a gentle breeze, enough to stir the leaves": what a weaker wind does, this one does too; "windy" is a loose word
  const weaker = word === seen + 1 && word <= MODERATE_BREEZE;
  return word === seen || weaker ? words : openly([seen, word], 'wind-two');
}

/** The speeds that count: with a unit, a label or a direction, or a bare number that is all that is said. */
function measuredBy(
  speeds: readonly Speed[],
  others: (token: number) => boolean,
  text: Spoken,
  words: Context['words'],
  finding: Finding,
): { meant: Meant | null; used: Speed[] } {
  // in passing "60 mph" is how somebody came there
  const steady = speeds.filter(
    (speed) => !speed.gust && (finding === 'answer' || speed.labelled || speed.fastest < LEAST_UNLIKELY_SPEED),
  );
  const firm = steady.filter((speed) => speed.marked);
  const firmClauses = new Set(firm.map(({ clause }) => clause));
  const changes = changesIn(text, words);
  const fromAnother = otherSourceBetween(text, words);
  // "5 then 15 mph", "one says 4 mph, another 14": the bare number goes with the other
  const changed = (speed: Speed): boolean =>
    speed.fastest < LEAST_UNLIKELY_SPEED &&
    ((firmClauses.has(speed.clause) && changes(speed.clause, speed.clause)) ||
      firm.some(({ to }) => fromAnother(to, speed.from)));
  const marked = steady.filter((speed) => speed.marked || changed(speed));
  if (marked.length > 0) return { meant: oneOf(marked.map((speed) => speed.forces)), used: marked };
  if (finding === 'passing') return { meant: null, used: [] };
  const small = new Set([
    ...words.wind.under.flatMap((phrase) => phrase.split(' ')),
    ...words.wind.gusts,
    ...words.wind.labels,
  ]);
  const isNumber = inAny(steady);
  const known = (token: number): boolean => small.has(text.tokens[token]!.word) || isNumber(token) || others(token);
  const alone = steady.filter((speed) => restIsFiller(text, words, speed.clause, known));
  const likely = alone.filter((speed) => speed.fastest < LEAST_UNLIKELY_SPEED);
  // "68, 10": the temperature, and perhaps the wind
  if (likely.length === 1 && alone.length > 1) return { meant: openly(likely[0]!.forces, 'wind-bare'), used: likely };
  const bare = alone;
  const [only] = bare;
  if (bare.length !== 1 || !only)
    return { meant: bare.length > 1 ? oneOf(bare.map((speed) => speed.forces)) : null, used: bare };
  return {
    meant: only.fastest >= LEAST_UNLIKELY_SPEED ? openly(only.forces, 'wind-bare') : oneOf([only.forces]),
    used: bare,
  };
}

/** "breeze, gusty at times": gusts are passed over where anything else is said. */
function steadyOf(hits: readonly WindHit[], { tokens }: Spoken, { wind }: Context['words']): readonly WindHit[] {
  const steady = hits.filter((hit) => !tokens.slice(hit.from, hit.to).some((token) => wind.gusts.includes(token.word)));
  return steady.length > 0 ? steady : hits;
}

/** "it picked up at the end but mostly calm": what it mostly was; not of "mostly calm with a slight breeze". */
function mostlyOf(hits: readonly WindHit[], { tokens }: Spoken, { sky, tally }: Context['words']): readonly WindHit[] {
  const says = (at: number, phrases: readonly string[]): boolean => phrases.includes(tokens[at]?.word ?? '');
  // "mostly calm" may be a phrase of its own
  const mostly = hits.filter(({ from }) => says(from, sky.mostly) || says(from - 1, sky.mostly));
  const isApart = (one: WindHit, other: WindHit): boolean => {
    const [first, second] = one.from < other.from ? [one, other] : [other, one];
    const between = tokens.slice(first.to, second.from);
    return first.clause !== second.clause || between.some(({ word }) => tally.contrasts.includes(word));
  };
  const others = hits.filter((hit) => !mostly.includes(hit));
  return mostly.length > 0 && others.every((other) => mostly.every((hit) => isApart(hit, other))) ? mostly : hits;
}

/** "not windy, just a light breeze": what it was not gives way to what it was. "No wind" is what it was. */
function positiveOf(hits: readonly WindHit[], { tokens }: Spoken, { weather }: Context['words']): readonly WindHit[] {
  const positive = hits.filter(
    (hit) => hit.value.forces[0] === 0 || !weather.negators.includes(tokens[hit.from]?.word ?? ''),
  );
  return positive.length > 0 ? positive : hits;
}

/** "a hefty breeze": a word before it that is not known leaves open how strong. */
function weakened(hit: WindHit, { tokens }: Spoken, words: Context['words']): WindHit {
  const before = tokens[hit.from - 1];
  const [force = 0] = hit.value.forces;
  const plain = isFirm(hit) || force === 0 || !before || before.clause !== hit.clause || isFiller(before, words);
  const known = before !== undefined && (/^\d/.test(before.word) || words.weather.strengths.includes(before.word));
  return plain || known ? hit : { ...hit, value: { ...hit.value, forces: [force, force + 1] } };
}

/** "68, sunny, 5": a small number by itself between commas; where the wind was asked for too, it may be that. */
function lastNumber(speeds: readonly Speed[], text: Spoken, words: Context['words']): Meant | null {
  const isNumber = inAny(speeds);
  const small = speeds.filter(
    (speed) => !speed.gust && speed.fastest < LEAST_UNLIKELY_SPEED && restIsFiller(text, words, speed.clause, isNumber),
  );
  const [only] = small;
  return only && small.length === 1 && speeds.length > 1 ? openly(only.forces, 'wind-bare') : null;
}

/** Reads one text without corrections in it. */
function readOnce(typed: string, before: string, { words, survey }: Context, finding: Finding): Reading<Wind> {
  const text = finding === 'answer' ? asMeant(spoken(typed, words), words) : spoken(typed, words);
  const among = amongWeather(text, words, finding);
  const answer = finding === 'answer';
  const saidUnit = unitBefore(before, words, survey.speedUnit, answer);
  const speeds = ofTheWatch(speedsIn(text, words, saidUnit ?? survey.speedUnit, answer), text, words).map((speed) =>
    saidUnit !== null && isAllThatIsPut(speed, text, words) ? { ...speed, marked: true } : speed,
  );
  const told = ofTheWatch(
    among.wind.words.filter((hit) => !hit.negated),
    text,
    words,
  );
  const hits = positiveOf(mostlyOf(steadyOf(told, text, words), text, words), text, words).map((hit) =>
    weakened(hit, text, words),
  );
  const effects = ofTheWatch(among.wind.effects, text, words);
  const bySigns = strongest(effects);
  const inWords = byWords(bySigns ? hits.filter(isFirm) : hits, text, words);
  const said = [...hits, ...effects];
  const skySaid = among.sky.some(({ value }) => value.says !== 'cloud' || value.trust !== 'alone');
  const unlabelled = said.length > 0 || skySaid;
  const bareCounts = speeds.filter(
    (speed) => speed.marked || !unlabelled || besideWords(speed, said, inWords ?? bySigns, survey.temperatureUnit),
  );
  const { meant: measured, used: counted } = measuredBy(bareCounts, inAny(said), text, words, finding);
  const meant = meantBy(inWords, bySigns, measured) ?? (finding === 'answer' ? lastNumber(speeds, text, words) : null);
  const used = [...said, ...counted].map((each) => each.span);
  if (counted.some((speed) => speed.forces.length === 0)) return none('wind-scale', used);
  if (!meant) return none(speeds.some((speed) => speed.gust) ? 'wind-gusts' : 'wind-unknown', used);

  const offer = meant.forces.map((beaufort): Wind => ({ beaufort }));
  if (meant.ask) return unsure(offer, meant.ask, used);
  if (changedInto(among.left.wind, text, words)) return unsure(offer, 'wind-two', used);
  const doubted = doubtedClauses(text, words);
  const hedged = [...said, ...counted].some((each) => doubted.has(each.clause));
  return hedged ? unsure(offer, 'wind-doubt', used) : sure(offer[0]!, used);
}

/** The unit of what is corrected: "12 km/h, sorry, 15" is 15 km/h, "force 3, make that 4" is force 4. */
function unitBefore(before: string, words: Context['words'], bareUnit: SpeedUnit, answer: boolean): Speed['unit'] {
  if (!/\d/.test(before) && before.trim() === '') return null;
  return speedsIn(spoken(before, words), words, bareUnit, answer).findLast((speed) => !speed.gust)?.unit ?? null;
}

/**
 * True where a bare number goes with the words: in the same clause ("windy 10"), or about as strong ("light, 5"). Any
 * other number beside words of wind is the temperature's ("68, calm").
 */
function besideWords(speed: Speed, said: readonly WindHit[], meant: Meant | null, temperatureUnit: 'F' | 'C'): boolean {
  if (!meant || speed.fastest >= LEAST_UNLIKELY_SPEED) return false;
  if (meant.ask && temperatureUnit === 'F') return true;
  // "2 (light breeze)": the number of the force itself
  if (!meant.ask && speed.fastest === meant.forces[0]) return false;
  const apart = Math.abs((speed.forces[0] ?? 0) - (meant.forces[0] ?? 0));
  return (
    apart <= 1 || (temperatureUnit === 'F' && said.some((hit) => hit.clause === speed.clause && hit.to <= speed.from))
  );
}

/**
 * Reads the wind as a Beaufort force. A speed goes by the limits of its own unit, a bare number by the survey's; a
 * range is its middle; gusts and directions are passed over. Two different winds are unsure.
 */
export const readWind: Reader<Wind> = (text, context) => {
  if (text.trim() === '') return none('empty');
  if (text.length > LONGEST_TEXT) return none('too-long');
  const folded = foldDegrees(text);
  if (asksMeaning(folded, context.words)) return none('wind-unknown');
  return lastSaid(text, folded, context.words, (part, before) => readOnce(part, before, context, 'answer'));
};

/** Finds the wind in a longer text: unmistakable words and signs, a speed with its unit, or any wind word under a label. */
export const findWind: Finder<Wind> = (text, context) => {
  const reading = lastSaid(text, foldDegrees(text), context.words, (part, before) =>
    readOnce(part, before, context, 'passing'),
  );
  return reading.state === 'none' ? [] : [reading];
};
