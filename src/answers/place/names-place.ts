/**
 * Whether words name a place: they hold a word for a place ("barn", "creek") or one that we do not know ("Ostermoor"),
 * in a clause that is no answer to another question. Chat, weather, numbers, bees and plants alone are no places.
 */
import type { Words } from '../../../shared/words.js';
import { anyOf } from '../any-of.js';
import { findNames, strangersIn, plantsOf, vocabularyOf, wordAfter, wordsOf, type Word } from '../names/index.js';
import { claimsOfOthers, isYesNo } from '../other-answers.js';
import type { Context, Span } from '../reading.js';
import { blank, fold, madeOnce } from '../text.js';

const CLAUSE = /[^,;.!?\n()]+/g;

/** "G9PH+2C Viroqua", "T44N R11W" */
const CODE = /(?<![a-z\d])(?:[2-9cfghjmpqrvwx]{4,8}\+[2-9cfghjmpqrvwx]{2,}|t\d{1,3}[ns],?\s?r\d{1,3}[ew])(?![a-z\d])/;

const placeWords = madeOnce((words: Words) => {
  const { place, names, patch, wishes } = words;
  const all = [...place.nouns, ...place.spots, ...names.placeEnds, ...wishes.own];
  const vague = new Set(place.vague);
  const nouns = all.filter((noun) => !noun.includes(' ') && !vague.has(noun)).flatMap((noun) => [noun, `${noun}s`]);
  const lengths = anyOf(Object.keys(patch.lengths).filter((unit) => /^\p{L}/u.test(unit)));
  return {
    nouns: new Set(nouns),
    castes: new Set(words.count.queens),
    telling: new Set(place.telling),
    prepositions: new Set([...place.prepositions, 'on']),
    /** "the point", "our spot". */
    pointed: new RegExp(`${anyOf(place.determiners, place.owners, place.pointing)}\\s+${anyOf(place.pointed)}`, 'u'),
    /** "by the pump", "behind our hedge": beside a thing that is pointed at, whatever it is. */
    beside: new RegExp(
      `^\\s*(?:${anyOf(place.sentenceLeads)}\\s+)?${anyOf(place.beside)}\\s+${anyOf(place.determiners, place.owners)}\\s+(?!${anyOf(place.notBeside)})\\p{L}`,
      'u',
    ),
    /** "site 7", "Unit 5 B" as a whole answer. */
    numberAlone: new RegExp(`^\\s*${anyOf(place.numberedAlone)}[\\s.#-]{0,3}\\d+(?:\\s?[a-z])?\\s*$`, 'u'),
    /** Not "square yards". */
    afterAdjective: new Set(nouns.filter((noun) => !(noun in patch.lengths || noun in patch.areas))),
    phrases: new RegExp(anyOf(all.filter((noun) => noun.includes(' '))), 'u'),
    /** "hwy 27", "214 Alder St", "2 miles south of": a number that is the place's. */
    numbered: new RegExp(
      `${anyOf(place.numbered)}[\\s.#-]{0,3}(?<after>\\d+)` +
        `|(?<before>\\d+(?:\\.\\d+)?)(?:(?<street>(?:\\s+(?!${anyOf(names.elsewhere, names.joining)})[\\p{L}\\d]+){1,2}\\s+${anyOf(place.streets)})|\\s?${lengths}\\s+${anyOf(place.beyond)})`,
      'gu',
    ),
  };
});

/** The clause without what only tells its places: their numbers, and the "Sunday" of "Sunday Lake". */
function besidePlaces(clause: string, words: readonly Word[], context: Context): string {
  const { numbered, afterAdjective } = placeWords(context.words);
  const found = [...fold(clause).matchAll(numbered)];
  // "S 45 W 93 Sorrel Rd": all numbers beside a house number are its own
  if (found.some(({ groups }) => groups?.['street'] !== undefined)) return clause.replace(/\d/g, ' ');
  const numbers = found.map(({ index, 0: said, groups }): Span => {
    const before = groups?.['before'];
    if (before !== undefined) return [index, index + before.length];
    return [index + said.length - (groups?.['after']?.length ?? 0), index + said.length];
  });
  const adjectives = words.filter(
    ({ digits }, at) => !digits && afterAdjective.has(wordAfter(words, at + 1)?.plain ?? ''),
  );
  return blank(clause, [...numbers, ...adjectives.map(({ span }) => span)]);
}

/** A queen or a bee, but not "Queen Street" and not a "group site". */
function tellsBees(words: readonly Word[], folded: string, context: Context): boolean {
  const { bumblebee } = vocabularyOf(context.words);
  const { nouns, castes } = placeWords(context.words);
  return words.some((word, at) => {
    const next = wordAfter(words, at + 1);
    return (bumblebee.has(word.plain) || castes.has(word.plain)) && !(next && nouns.has(typedIn(folded, next)));
  });
}

const typedIn = (folded: string, { span }: Word): string => folded.slice(...span);

/** Whether other readers' claims to words of the clause leave no place: "sixty-four degrees", not the 77 of "77 Birch St". */
function isOtherAnswer(clause: string, words: readonly Word[], context: Context): boolean {
  const beside = besidePlaces(clause, words, context);
  if (isYesNo(beside, context)) return true;
  const claims = claimsOfOthers(beside, context);
  if (claims.length === 0) return false;
  const folded = fold(beside);
  return claims.some((spans) => spans.length !== 1 || !isSlight(folded, spans[0]!, words, context));
}

/** Letters of a unit or colon beside digits make more than a number. */
const BARE_NUMBER = /^\d+(?:\/\d+)?$/;

/**
 * One word that another reader would take ("still", "clearing"), or a bare number that nothing makes a reading: not
 * "72 on the porch" nor "tractor said 74". In an answer about a place they are the place's.
 */
function isSlight(folded: string, span: Span, words: readonly Word[], context: Context): boolean {
  const said = folded.slice(...span).trim();
  if (!/\d/.test(said)) return !/\s/.test(said);
  if (!BARE_NUMBER.test(said)) return false;
  const { joining, elsewhere } = vocabularyOf(context.words);
  const { telling, prepositions } = placeWords(context.words);
  const first = words.findIndex((word) => word.span[0] >= span[0]);
  const last = words.findLastIndex((word) => word.span[1] <= span[1]);
  const before = words[first - 1];
  const after = words[last + 1];
  if (before && telling.has(typedIn(folded, before))) return false;
  // a number at the beginning before the words of a place is measured there
  return !(
    first === 0 &&
    (!after || joining.has(after.plain) || elsewhere.has(after.plain) || prepositions.has(after.plain))
  );
}

function clauseNamesPlace(clause: string, context: Context): boolean {
  const folded = fold(clause);
  const { nouns, phrases, pointed, beside, numberAlone } = placeWords(context.words);
  const vocabulary = vocabularyOf(context.words);
  // the "st" of "1st" is no street
  const words = wordsOf(folded, context.words.names).filter(
    ({ span, digits }) => digits || !/\d/.test(folded[span[0] - 1] ?? ''),
  );
  if (CODE.test(folded) || numberAlone.test(folded)) return true;
  if (tellsBees(words, folded, context)) return false;
  const isSpot = phrases.test(folded) || pointed.test(folded) || beside.test(folded);
  if (!isSpot && !words.some((word) => nouns.has(typedIn(folded, word)))) {
    const strange = strangersIn(words, clause, plantsOf(context), vocabulary);
    if (strange.length === 0) return false;
    const { bees, plants } = findNames(folded, context);
    const named = [...bees, ...plants].map(({ span }) => span);
    if (strange.every(({ span }) => named.some(([from, to]) => from <= span[0] && span[1] <= to))) return false;
  }
  return !isOtherAnswer(clause, words, context);
}

/** Two to five words with capitals: "Three Oaks". */
const WRITTEN_AS_NAME = /^\p{Lu}\p{Ll}[\p{L}'’-]*(?: (?:\p{Lu}[\p{L}'’-]*\.?|of|the|and|at)){1,4}$/u;

/** Words that all mean something else as well, written as a name is, and no answer to another question. */
export function mayBeName(text: string, context: Context): boolean {
  if (!WRITTEN_AS_NAME.test(text)) return false;
  const words = wordsOf(fold(text), context.words.names);
  if (tellsBees(words, fold(text), context) || findNames(fold(text), context).bees.length > 0) return false;
  return !isOtherAnswer(text, words, context);
}

export const namesPlace = (text: string, context: Context): boolean =>
  (text.match(CLAUSE) ?? []).some((clause) => clauseNamesPlace(clause, context));
