/**
 * Reads where a watch was: coordinates in any common form, and words. Coordinates are WGS 84 decimal degrees with an
 * uncertainty in metres, as stated or by the digits given; words without coordinates are sure as words. A pair that
 * may be swapped or lack its minus is unsure; a pair outside the region is not.
 */
import { metresBetween } from '../../shared/distance.js';
import { rounded } from '../../shared/units.js';
import { accuracyIn, type Accuracy } from './coordinates/accuracy.js';
import {
  coordinatesIn,
  isImpossible,
  LEAST_METRES,
  LINK,
  plainCoordinates,
  SHORT_PLUS_CODE,
  type Coordinates,
} from './coordinates/index.js';
import { hemisphereOfRegion, liesIn, placed, type Pair } from './coordinates/region.js';
import { isYesNo } from './other-answers.js';
import { mayBeName, namesPlace } from './place/names-place.js';
import { wordsInPassing } from './place/passing.js';
import { placePhrases, type PlacePhrases } from './place/phrases.js';
import { wordsBeside } from './place/words-beside.js';
import { none, sure, unsure, type Context, type Finder, type Reader, type Reading, type Span } from './reading.js';
import { blank, fold } from './text.js';
import { readTimes } from './times.js';

export interface PlaceRead {
  readonly latitude: number | null;
  readonly longitude: number | null;
  readonly uncertaintyMetres: number | null;
  /** What else was said of the place, as typed; "" where nothing was. */
  readonly words: string;
}

/** Longer texts name no place. */
const MOST_CHARACTERS = 2000;
/** Two pairs nearer than this are one place written twice, metres. */
const SAME_PLACE_METRES = 100;

const named = (words: string): PlaceRead => ({ latitude: null, longitude: null, uncertaintyMetres: null, words });

function uncertaintyOf(found: Coordinates, accuracy: Accuracy | null): number {
  const metres = accuracy?.metres ?? found.statedMetres ?? found.precisionMetres;
  return rounded(Math.max(metres, LEAST_METRES, found.leastMetres), 1);
}

/** Which of several coordinates count: the last after a correction, the finest of those that are one place. */
function meant(text: string, found: readonly Coordinates[], phrases: PlacePhrases): readonly Coordinates[] {
  const [first] = found;
  const last = found.at(-1);
  if (!first || !last || first === last) return found;
  const folded = fold(text);
  const corrected = [...folded.matchAll(phrases.correcting)].some(
    (match) => first.span[1] <= match.index && match.index < last.span[0],
  );
  if (corrected) return [last];
  const finest = found.reduce((best, one) => (one.precisionMetres < best.precisionMetres ? one : best));
  const one = found.every(
    (other) => metresBetween(finest, other) <= SAME_PLACE_METRES + finest.precisionMetres + other.precisionMetres,
  );
  return one ? [finest] : found;
}

/** Coordinates that are on the earth, with what the region says of them. */
function readCoordinates(
  text: string,
  found: readonly Coordinates[],
  spans: readonly Span[],
  accuracy: Accuracy | null,
  context: Context,
  phrases: PlacePhrases,
): Reading<PlaceRead> {
  const used = accuracy ? [...spans, accuracy.span] : spans;
  const words = wordsBeside(text, used, phrases);
  const candidates = meant(text, found, phrases);
  const [only, ...others] = candidates;
  if (!only) return none('place-unclear');
  const value = (one: Coordinates, { latitude, longitude }: Pair): PlaceRead => ({
    latitude,
    longitude,
    uncertaintyMetres: uncertaintyOf(one, accuracy),
    words,
  });
  if (others.length > 0)
    return unsure(
      candidates.map((one) => value(one, one)),
      'place-several',
      used,
    );
  const known = placed(only, context.survey.region);
  if (!known) return none('place-impossible', used);
  if ('offers' in known)
    return unsure(
      known.offers.map((pair) => value(only, pair)),
      known.ask,
      used,
    );
  const read = value(only, known.pair);
  const doubtful = phrases.doubt.test(fold(text)) || /\?\s*$/u.test(blank(text, used));
  return doubtful ? unsure([read], 'place-doubt', used) : sure(read, used);
}

/** Numbers that were meant for coordinates: decimals in a pair, two signs for degrees, ten digits in a row. */
const GARBLED = /\d\.\d{3,}[^\n]{1,40}\d\.\d{3,}|°[^\n]{1,40}°|(?<![\d-])\d{10,}/u;

/** Without white space at its end, and without the signs there that ask or cry out. */
function endedPlainly(text: string): string {
  // letter by letter: a pattern would try each of the blanks that stand for what others read
  let end = text.length;
  while (end > 0 && /[\s?.!]/u.test(text[end - 1]!)) end--;
  const signs = text.slice(end);
  return text.slice(0, end) + (/[?!]/.test(signs) ? '' : signs.trim());
}

/** Words without coordinates. */
function readWords(text: string, context: Context, phrases: PlacePhrases): Reading<PlaceRead> {
  const folded = fold(text);
  const links = [...folded.matchAll(LINK)].map((match): Span => [match.index, match.index + match[0].length]);
  const rest = blank(folded, links);
  if (!/\p{L}/u.test(rest)) return none(links.length > 0 ? 'place-link' : 'place-unclear');
  const code = SHORT_PLUS_CODE.exec(rest);
  if (code && !/\p{L}{3}/u.test(blank(rest, [[code.index, code.index + code[0].length]])))
    return none('place-short-code');
  const asks = /\?\s*$/u.test(rest);
  if (phrases.question.test(rest) || (asks && (phrases.questionWithin.test(rest) || phrases.questionVerb.test(rest))))
    return none('place-question');
  if (phrases.unknown(rest) || phrases.other.test(rest)) return none('place-unclear');
  if (GARBLED.test(plainCoordinates(text))) return none('place-impossible');
  // "yes, Fen Boardwalk"
  const greeted = phrases.answerAtStart(folded);
  if (greeted > 0 && /\p{L}/u.test(rest.slice(greeted)))
    return readWords(' '.repeat(greeted) + text.slice(greeted), context, phrases);
  if (isYesNo(text, context)) return none('place-unclear');

  // "Heron Bend, sorry, Oak Rise"
  const correction = [...folded.matchAll(phrases.corrected)].at(-1);
  if (correction && /\p{L}{2}/u.test(folded.slice(correction.index + correction[0].length))) {
    const from = correction.index + correction[0].length;
    return readWords(' '.repeat(from) + text.slice(from), context, phrases);
  }

  const all: Span[] = [[0, text.length]];
  const start = phrases.label.exec(folded)?.[0].length ?? 0;
  const doubt = phrases.doubtAtStart(folded.slice(start));
  const join = doubt > 0 ? (phrases.hedgeJoin.exec(folded.slice(start + doubt))?.[0].length ?? 0) : 0;
  const hedge = doubt + join;
  const words = endedPlainly(text.slice(start + hedge))
    // the full stop of a sentence, not that of "Alder St."
    .replace(/(?<=\p{L}{5})\.$/u, '')
    .trim();
  if (!namesPlace(words, context))
    return mayBeName(words, context) ? unsure([named(words)], 'place-doubt', all) : none('place-unclear');
  return asks || phrases.doubt.test(folded) ? unsure([named(words)], 'place-doubt', all) : sure(named(words), all);
}

const CLOCK_TIMES = /^\d{1,2}[:.]\d{2}[\s,/-]+\d{1,2}[:.]\d{2}$/;

/** "10:05 - 10:20" is no place far away in the sea. */
const areTimes = (text: string, found: readonly Coordinates[], context: Context): boolean =>
  found.every(({ span }) => CLOCK_TIMES.test(fold(text.slice(...span)))) &&
  found.every((one) => !liesIn(one, context.survey.region)) &&
  readTimes(text, context).state !== 'none';

export const readPlace: Reader<PlaceRead> = (text, context) => {
  if (text.trim() === '') return none('empty');
  if (text.length > MOST_CHARACTERS) return none('too-long');
  const phrases = placePhrases(context.words);
  const hemisphere = hemisphereOfRegion(context.survey.region);
  const all = coordinatesIn(text, { words: context.words.place, hemisphere });
  const found = all.filter((one): one is Coordinates => !isImpossible(one));
  const spans = all.map(({ span }) => span);
  if (found.length > 0 && !areTimes(text, found, context)) {
    const beside = blank(plainCoordinates(text), spans);
    const height = phrases.height.exec(beside);
    const heights: Span[] = height ? [[height.index, height.index + height[0].length]] : [];
    const accuracy = accuracyIn(blank(beside, heights), context.words);
    return readCoordinates(text, found, [...spans, ...heights], accuracy, context, phrases);
  }
  const impossible = all.find(isImpossible);
  if (impossible) return none(impossible.impossible === 'zone' ? 'place-zone' : 'place-impossible', spans);
  return readWords(text, context, phrases);
};

/** In passing: coordinates that can be nothing else, a place behind a label, a site's name, "at Miller Woods". */
export const findPlace: Finder<PlaceRead> = (text, context) => {
  const phrases = placePhrases(context.words);
  const hemisphere = hemisphereOfRegion(context.survey.region);
  const found = coordinatesIn(text, { words: context.words.place, hemisphere }).filter(
    (one): one is Coordinates => !isImpossible(one) && one.unmistakable,
  );
  const said = wordsInPassing(
    text,
    found.map(({ span }) => span),
    context,
    phrases,
  );
  if (found.length === 0) return said ? [sure(named(said.words), [said.span])] : [];
  const spans = found.map(({ span }) => span);
  const accuracy = nearAccuracy(text, spans, context);
  const reading = readCoordinates(blankButCoordinates(text, spans), found, spans, accuracy, context, phrases);
  if (!said || reading.state === 'none') return [reading];
  const withWords = (place: PlaceRead): PlaceRead => ({ ...place, words: said.words });
  return reading.state === 'sure'
    ? [{ ...reading, value: withWords(reading.value), used: [...reading.used, said.span] }]
    : [{ ...reading, offer: reading.offer.map(withWords), used: [...reading.used, said.span] }];
};

/** The words of a note are no words of the place, but what stands between coordinates tells which of them count. */
function blankButCoordinates(text: string, spans: readonly Span[]): string {
  const first = spans[0]?.[0] ?? 0;
  const last = spans.at(-1)?.[1] ?? 0;
  return blank(text, [
    [0, first],
    [last, text.length],
  ]);
}

/** An accuracy right behind or before coordinates; elsewhere in a note metres are something else. */
function nearAccuracy(text: string, spans: readonly Span[], context: Context): Accuracy | null {
  const plain = blank(plainCoordinates(text), spans);
  const reach = 40;
  for (const [from, to] of spans) {
    const start = Math.max(0, from - reach);
    const near = accuracyIn(plain.slice(start, to + reach), context.words);
    if (near) return { metres: near.metres, span: [near.span[0] + start, near.span[1] + start] };
  }
  return null;
}
