/**
 * Whether words name a place: they hold a word for a place ("barn", "creek") or one that we do not know ("Ostermoor"),
 * in a clause that is no answer to another question. Chat, weather, numbers, bees and plants alone are no places.
 */
import type { Words } from '../../../shared/words.js';
import { anyOf } from '../any-of.js';
import { findNames, strangersIn, plantsOf, vocabularyOf, wordAfter, wordsOf, type Word } from '../names/index.js';
import { answersOtherQuestion } from '../other-answers.js';
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

/** A queen or a bee, but not "Queen Street". */
function tellsBees(words: readonly Word[], context: Context): boolean {
  const { bumblebee, aroundBees, plantNouns } = vocabularyOf(context.words);
  const { nouns } = placeWords(context.words);
  return words.some((word, at) => {
    const isBee = bumblebee.has(word.plain) || (aroundBees.has(word.plain) && !plantNouns.has(word.stem));
    return isBee && !nouns.has(wordAfter(words, at + 1)?.plain ?? '');
  });
}

function clauseNamesPlace(clause: string, context: Context): boolean {
  const folded = fold(clause);
  const { nouns, phrases } = placeWords(context.words);
  const vocabulary = vocabularyOf(context.words);
  // the "st" of "1st" is no street
  const words = wordsOf(folded, context.words.names).filter(
    ({ span, digits }) => digits || !/\d/.test(folded[span[0] - 1] ?? ''),
  );
  if (CODE.test(folded)) return true;
  if (tellsBees(words, context)) return false;
  if (!words.some(({ plain }) => nouns.has(plain)) && !phrases.test(folded)) {
    const strange = strangersIn(words, clause, plantsOf(context), vocabulary);
    if (strange.length === 0) return false;
    const { bees, plants } = findNames(folded, context);
    const named = [...bees, ...plants].map(({ span }) => span);
    if (strange.every(({ span }) => named.some(([from, to]) => from <= span[0] && span[1] <= to))) return false;
  }
  const { joining, elsewhere } = vocabulary;
  // "behind the barn" has no word of any other kind
  const plainly = words.every(
    ({ plain, digits }) => !digits && (nouns.has(plain) || joining.has(plain) || elsewhere.has(plain)),
  );
  return plainly || !answersOtherQuestion(besidePlaces(clause, words, context), context);
}

export const namesPlace = (text: string, context: Context): boolean =>
  (text.match(CLAUSE) ?? []).some((clause) => clauseNamesPlace(clause, context));
