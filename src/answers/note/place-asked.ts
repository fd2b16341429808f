/** The place while it is asked for: any words may be its name, so little else is taken from them. */
import { findPlace, readPlace, type PlaceRead } from '../place.js';
import type { Span } from '../reading.js';
import { fold } from '../text.js';
import { blankLines } from './blank-lines.js';
import type { Gathering } from './gathering.js';
import { noteWords } from './vocabulary.js';

/** A capital beside a capital: the "Clear" of "Clear Lake" is no sky. */
function isInProperName(text: string, [from, to]: Span): boolean {
  if (!/^\p{Lu}/u.test(text.slice(from, to))) return false;
  return (
    /^[ ]\p{Lu}/u.test(text.slice(to, to + 2)) || /\p{Lu}[\p{L}'’]*[ ]$/u.test(text.slice(Math.max(0, from - 24), from))
  );
}

const CLAUSE = /[^,;.\n]+/g;
const clausesOf = (text: string): Span[] =>
  [...text.matchAll(CLAUSE)].map((match) => [match.index, match.index + match[0].length] as const);
const wordsOf = (text: string): string[] => fold(text).match(/[\p{L}\d]+/gu) ?? [];

/** True where the clauses of these say nothing that is nobody's: "clear lake boat landing" is no sky. */
function standsAlone(
  text: string,
  spans: readonly Span[],
  used: readonly Span[],
  small: (word: string) => boolean,
): boolean {
  const rest = blankLines(text, used);
  return clausesOf(text)
    .filter(([from, to]) => spans.some((span) => span[0] < to && from < span[1]))
    .every(([from, to]) => wordsOf(rest.slice(from, to)).every(small));
}

/** While a place is asked for, what is told in passing must not be part of its name. */
export function leavePlaceAlone(gathering: Gathering): void {
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

/** Where coordinates stand that are not taken yet. */
export function coordinatesIn(gathering: Gathering): Span[] {
  const { context } = gathering;
  const rest = gathering.rest();
  return findPlace(rest, context).flatMap((reading) => {
    const best = reading.state === 'sure' ? reading.value : reading.state === 'unsure' ? reading.offer[0] : undefined;
    if (best === undefined || best.latitude === null) return [];
    return reading.used.filter((span) => /\d/.test(rest.slice(...span)));
  });
}

/** What remains of a place's words when other fields were taken out of them. */
const tidied = (words: string): string =>
  words
    .replace(/\s+/g, ' ')
    .replace(/(?:\s*[,;](?=\s*(?:[,;]|$)))+/g, '')
    .replace(/^[\s,;.:-]+|[\s,;:-]+$/g, '');

export function readPlaceAsked(gathering: Gathering): void {
  const { text, context } = gathering;
  const { small } = noteWords(context.words);
  const used = gathering.used();
  const rest = gathering.rest();
  const told = clausesOf(text).filter(
    ([from, to]) => used.some((span) => span[0] < to && from < span[1]) && wordsOf(rest.slice(from, to)).every(small),
  );
  const reading = readPlace(blankLines(rest, told), context);
  const tidy = (value: PlaceRead): PlaceRead => ({ ...value, words: tidied(value.words) });
  if (reading.state === 'sure') gathering.take('place', { ...reading, value: tidy(reading.value) });
  else if (reading.state === 'unsure') gathering.take('place', { ...reading, offer: reading.offer.map(tidy) });
  else gathering.take('place', reading);
}
