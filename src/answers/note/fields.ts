/**
 * What one message says of a watch, whatever was asked: fields that were asked for may be told by bare values, all others
 * only with their own unit, label or unmistakable word. No number is taken twice.
 */
import { findNumbers } from '../numbers.js';
import { none, unsure, type Context, type Span } from '../reading.js';
import { findTallyAmong } from '../tally.js';
import { fold } from '../text.js';
import type { Times } from '../times.js';
import { timesAgo } from '../when/ago-times.js';
import { asidesIn, preambleOf } from './asides.js';
import { askedBackIn } from './asked-back.js';
import { blankLines, maskedWith } from './blank-lines.js';
import { readPlantsAndTally } from './flora-told.js';
import { floraIn } from './flowers.js';
import { readLabelled } from './form.js';
import {
  askInto,
  findInto,
  findPlaceInto,
  Gathering,
  IN_TURN,
  isWeather,
  passing,
  type FieldName,
  type FieldReadings,
} from './gathering.js';
import { labelledIn, type Labelled } from './labels.js';
import { ownText, type OwnText } from './mail-text.js';
import { coordinatesIn, leavePlaceAlone, readPlaceAsked } from './place-asked.js';
import { watchedWith } from './flora.js';
import { noteWords } from './vocabulary.js';
import { ofQueensIn } from './of-queens.js';
import { settleSeveral } from './one-of-several.js';
import { isWithin } from './sentences.js';
import { resumedIn } from './resumed.js';
import { readBareTemperature, readBesideWeather, readWeather } from './weather-told.js';

export interface FieldsFound {
  readonly fields: FieldReadings;
  /** Words that nobody used, as typed. */
  readonly left: string;
  /** Where two watches were told, the text of the second, which was not read; else null. */
  readonly second: string | null;
}

/** Longest mail, with all it quotes, and longest text of its writer: a long note has two thousand letters. */
const LONGEST_MAIL = 100_000;
const LONGEST_OWN = 6000;
/** Answers under quoted questions that are read, at most: a mail asks a dozen. */
const MOST_ANSWERS = 40;

/** "4/18" */
const DAY = /^\d{1,2}\/\d{1,2}$/;

/** "bluebells 85," and "2 impatiens": numbers that stand right beside a name are no times, dates or degrees. */
function withoutFlora(gathering: Gathering): string {
  const text = gathering.rest();
  const all = gathering.names();
  // "not sure" is a bee that could not be told, and a doubt about all else
  const names = { ...all, bees: all.bees.filter(({ exactness }) => exactness !== 'unknown') };
  const spans = [...names.bees, ...names.plants].map(({ span }) => span);
  const flowers = floraIn(fold(text), names, gathering.context.words).flowers.map(({ span }) => span);
  const namesFrom = new Set(names.plants.map(({ span: [from] }) => from));
  // "60 odd violets" is no 60
  const apart = flowers.filter(
    ([from, to]) =>
      // "pussy willow 4/18." is a day
      !DAY.test(text.slice(from, to)) &&
      (/^\s*(?:[,;)|/\n]|\.(?:\s|$)|$)/.test(text.slice(to, to + 8)) ||
        (namesFrom.has(to + 1) && /\p{L}$/u.test(text.slice(from, to)))),
  );
  const queens = names.bees.flatMap(({ span: [from] }): Span[] => {
    const number = /\d{1,3}\s?x?\s{1,2}$/.exec(text.slice(Math.max(0, from - 8), from));
    return number && !/[\d:/.-]/.test(text[from - number[0].length - 1] ?? '') ? [[from - number[0].length, from]] : [];
  });
  // one unknown word, so that "sunny, 85 violets" does not read as "sunny, 85"
  const masked = maskedWith('q', text, [...spans, ...apart, ...queens]);
  // what follows a bee is of no bee: "1 common eastern 73 and clear"
  const ends = names.bees.map(({ span: [, to] }): Span => [to - 1, to]);
  return maskedWith(';', masked, ends);
}

/** Answers under quoted questions: "> How warm was it?" above "68". */
function readUnderQuestions(gathering: Gathering, parts: OwnText['parts']): void {
  const { text } = gathering;
  let { context } = gathering;
  const { fieldsOf } = noteWords(context.words);
  for (const { span, question } of parts.slice(0, MOST_ANSWERS)) {
    const asked = question === null ? [] : fieldsOf(question);
    if (asked.length === 0) continue;
    const inner = gather(text.slice(...span), [], context, asked, false);
    if (gathering.takeFrom(inner, span[0])) gathering.setAside([span]);
    // "none" below is of these
    context = watchedWith(context, inner.plants());
  }
}

function gather(
  text: string,
  parts: OwnText['parts'],
  context: Context,
  asked: readonly FieldName[],
  wholeNote: boolean,
): Gathering {
  const gathering = new Gathering(text, context);
  const folded = fold(text);
  gathering.setAside(resumedIn(folded, context.words));
  const { bees, plants } = gathering.names();
  const among =
    (names: typeof bees) =>
    (sentence: Span): boolean =>
      names.some(({ span }) => isWithin(span, sentence));
  gathering.setAside(asidesIn(folded, context.words, among(bees), among(plants)));
  readUnderQuestions(gathering, parts);
  const labelled = labelledIn(fold(gathering.rest()), context.words);
  readLabelled(gathering, labelled, asked);
  gatherRest(gathering, asked, labelled, wholeNote);
  return gathering;
}

/** "1 bimack on blubells and nothing on the lilly": misspelled, but no place. */
function beginsTally(gathering: Gathering): boolean {
  const { text, context } = gathering;
  const folded = fold(text).trim();
  if (findNumbers(folded, context.words)[0]?.span[0] !== 0) return false;
  const tally = findTallyAmong(gathering.rest(), context)[0];
  if (tally === undefined || tally.state === 'none') return false;
  const rows = tally.state === 'sure' ? tally.value : (tally.offer[0] ?? []);
  return rows.some(({ plant }) => plant !== null);
}

/** Numbers of flowers, which are no answer to anything else that is wanted. */
function flowersAmong(gathering: Gathering, wanted: readonly FieldName[]): Span[] {
  const { text, context } = gathering;
  if (wanted.some((field) => field === 'plants' || field === 'tally')) return [];
  const { flowers } = floraIn(fold(gathering.rest()), gathering.names(), context.words);
  const spans = flowers.map(({ span }) => span);
  if (!wanted.includes('patch')) return spans;
  // the "3 flower" of "6x3 flower garden" counts none
  const { isSide } = noteWords(context.words);
  const folded = fold(text);
  const numberOf = ([from, to]: Span): number => from + Math.max(0, folded.slice(from, to).search(/\d+\D*$/));
  return spans.filter((span) => !isSide(folded.slice(0, numberOf(span))));
}

function gatherRest(
  gathering: Gathering,
  asked: readonly FieldName[],
  labelled: readonly Labelled[],
  wholeNote: boolean,
): void {
  const { context } = gathering;
  const wanted = asked.filter((field) => !gathering.has(field));
  if (!asked.includes('place') && !gathering.has('place')) findPlaceInto(gathering);
  // degrees and minutes of a place that is read last are no temperature and no feet
  const coordinates = asked.includes('place') ? coordinatesIn(gathering) : [];
  const ofQueens = asked.includes('tally') ? ofQueensIn(fold(gathering.rest()), context.words) : [];
  const askedBack = askedBackIn(gathering.rest(), context.words);
  const unnamed = maskedWith('q', withoutFlora(gathering), [...coordinates, ...ofQueens, ...askedBack]);
  for (const field of IN_TURN) {
    if (field !== 'place' && !gathering.has(field)) findInto(gathering, field, unnamed);
  }
  settleSeveral(gathering);
  readBesideWeather(gathering, unnamed);
  if (wholeNote) readBareTemperature(gathering, unnamed);
  if (asked.includes('place')) leavePlaceAlone(gathering);

  const flowers = flowersAmong(gathering, wanted);
  const visible = (field: FieldName): string => {
    const others = gathering.usedBy((other) => other !== field && !(isWeather(field) && isWeather(other)));
    // "yesterday evening" tells the half of the day too, "20 min ago" the times
    const sharing = field === 'times' ? gathering.usedBy((other) => other === 'date') : [];
    const tellsTimes = (typed: string): boolean => !/\d/.test(typed) || timesAgo(typed, context).state !== 'none';
    const shared = sharing.filter((span) => tellsTimes(gathering.text.slice(...span)));
    return blankLines(unnamed, [...others.filter((span) => !shared.includes(span)), ...flowers]);
  };
  for (const field of ['date', 'times', 'patch'] as const)
    if (wanted.includes(field)) askInto(gathering, field, visible(field));
  const weather = wanted.filter(isWeather);
  if (weather.length > 0) readWeather(gathering, visible('sky'), weather);
  if (wanted.includes('place') && !beginsTally(gathering)) readPlaceAsked(gathering);
  if (wanted.includes('place') && gathering.get('place') === undefined) gathering.take('place', none('place-unclear'));
  const ofWatch = gathering.usedBy((field) => field === 'times' || field === 'patch' || isWeather(field));
  const bees = gathering.names().bees.map(({ span }) => span);
  gathering.setAside(preambleOf(fold(gathering.text), context.words, [...ofWatch, ...bees]));
  // "dandelion 20, redbud 400" may be told where a place was asked for
  if (!gathering.has('place') || !wanted.includes('place')) readPlantsAndTally(gathering, wanted, labelled, wholeNote);
}

/** The writer's own text; null where it is too long to be a watch. */
export function ownTextOf(text: string, context: Context): OwnText | null {
  if (text.length > LONGEST_MAIL) return null;
  const found = ownText(text, context.words);
  // a greeting or farewell alone is still an answer to be answered
  const own = found.text.trim() === '' ? { text, numbered: text, parts: [] } : found;
  return own.text.replace(/\s+/g, ' ').length > LONGEST_OWN ? null : own;
}

/** Where the second of two watches begins: at the line or sentence before its times; null where they share one. */
function secondWatchFrom(text: string, used: readonly Span[]): number | null {
  const sorted = [...used].sort((a, b) => a[0] - b[0]);
  for (let at = sorted.length - 1; at > 0; at--) {
    const between = text.slice(sorted[at - 1]![1], sorted[at]![0]);
    const line = between.lastIndexOf('\n');
    const sentence = between.search(/[.!;]\s[^.!;]*$/);
    const cut = line !== -1 ? line : sentence;
    if (cut !== -1) return sorted[at - 1]![1] + cut + 1;
  }
  return null;
}

/** Where the second of two watches begins that were made at the same times of two days: "Monday 1-1:15 …, today 1-1:15 …". */
function secondDayFrom(text: string, fields: FieldReadings, context: Context): number | null {
  const { date } = fields;
  if (date?.state !== 'unsure' || date.used.length < 2) return null;
  const days = [...date.used].sort((a, b) => a[0] - b[0]);
  const from = secondWatchFrom(text, days) ?? days[1]![0];
  const [before, after] = [text.slice(0, from), text.slice(from)];
  const hasBoth = [before, after].every(
    (part) => passing('date', part, context) !== null && passing('times', part, context)?.state === 'sure',
  );
  return hasBoth ? from : null;
}

/** Of two watches in one note the first is read; whether it is meant is asked. */
function withFirstWatch(
  gathering: Gathering,
  own: OwnText,
  asked: readonly FieldName[],
  wholeNote: boolean,
): { readonly gathering: Gathering; readonly second: string | null } {
  const fields = gathering.fields();
  const { times } = fields;
  if (!times || times.state === 'none') return { gathering, second: null };
  const twoSpans = times.state === 'unsure' && times.ask === 'two-spans';
  const from = twoSpans ? secondWatchFrom(own.text, times.used) : secondDayFrom(own.text, fields, gathering.context);
  const first = times.state === 'sure' ? times.value : times.offer[0];
  if (from === null || !first) return { gathering, second: null };
  const alone = gather(own.text.slice(0, from), own.parts, gathering.context, asked, wholeNote);
  const told = alone.fields().times;
  const best: Times = told?.state === 'sure' ? told.value : first;
  alone.take('times', unsure([best], 'note-two-watches', times.used));
  return { gathering: alone, second: own.text.slice(from).trim() };
}

/** Everything its writer's own text says. `wholeNote`: a plant named without a count was watched too. */
export function fieldsIn(own: OwnText, context: Context, asked: readonly FieldName[], wholeNote: boolean): FieldsFound {
  const all = gather(own.text, own.parts, context, asked, wholeNote);
  const { gathering, second } = withFirstWatch(all, own, asked, wholeNote);
  const fields = gathering.fields();
  const readings = Object.entries(fields);
  // with several fields asked, one that was not told is simply still open
  const told = readings.some(([, reading]) => reading.state !== 'none');
  const kept = readings.filter(
    ([, reading]) => !told || reading.state !== 'none' || reading.used.length > 0 || asked.length === 1,
  );
  return { fields: Object.fromEntries(kept), left: gathering.rest().replace(/\s+/g, ' ').trim(), second };
}
