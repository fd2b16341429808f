/** The words for places, made into patterns once for each loaded language. */
import type { Words } from '../../../shared/words.js';
import { anyOf } from '../any-of.js';
import { inARow, nothingBut } from '../in-a-row.js';
import { madeOnce } from '../text.js';

/** "at" and "At" in text as typed. */
const inAnyCase = (words: readonly string[]): string =>
  words.flatMap((word) => [word, word.charAt(0).toUpperCase() + word.slice(1), word.toUpperCase()]).join('|');

/** Letters before coordinates in which the labels at their end are looked for. */
const LONGEST_LABELS = 200;

/** The length of the phrases in a row at the beginning of a text with what stands before them; 0 where there are none. */
function rowAtStart(before: string, phrase: string, between: string): (text: string) => number {
  const row = inARow(phrase, between);
  const front = new RegExp(`^[${before}]*`, 'u');
  return (text) => {
    const from = front.exec(text)?.[0].length ?? 0;
    const end = row(text, from);
    return end === from ? 0 : end;
  };
}

/** Where the phrases in a row at the end of a text begin, with the mark or blank before them; its length where none do. */
function rowAtEnd(phrase: string, between: string): (text: string) => number {
  const row = inARow(phrase, between);
  return (text) => {
    for (let at = Math.max(0, text.length - LONGEST_LABELS); at < text.length; at++) {
      const isStart = at === 0 && row(text, 0) === text.length;
      if (isStart) return 0;
      if (/[\s,.;:(-]/u.test(text[at]!) && at + 1 < text.length && row(text, at + 1) === text.length) return at;
    }
    return text.length;
  };
}

export const placePhrases = madeOnce((words: Words) => {
  const { place, hedges, wishes, date } = words;
  const whole = (...lists: (readonly string[])[]): ((text: string) => boolean) =>
    nothingBut(anyOf(...lists), '\\s.,!…:;()-', '\\s.,!?…:;()-');
  const { 'same-place': _same, ...wanted } = wishes.plain;
  return {
    label: new RegExp(`^[\\s*-]*${anyOf(place.labels)}\\s*(?:[:=]|(?<=\\s)-(?=\\s))\\s*`, 'u'),
    labelWithin: new RegExp(
      `(?:^|[\\n;.])[ \\t*-]{0,6}${anyOf(place.labels, words.note.labels.place)}[ \\t]{0,3}(?:[:=]|(?<=[ \\t])-(?=[ \\t]))[ \\t]{0,6}(?<words>[^\\s;][^\\n;]{0,300})`,
      'gu',
    ),
    /** Beside coordinates, at the end of the words before and at the beginning of the words after. */
    labelsAtEnd: rowAtEnd(
      anyOf(place.coordinateLabels, place.datums, hedges.doubting, hedges.correcting, place.doubts),
      '\\s,.;:=(-',
    ),
    labelsAtStart: rowAtStart('\\s,.;:)-', anyOf(place.datums, place.politeAfter), '\\s,.;:)-'),
    onlyLabels: whole(
      place.coordinateLabels,
      place.datums,
      hedges.doubting,
      hedges.correcting,
      place.doubts,
      words.numbers.joins,
      words.count.either,
    ),
    question: new RegExp(`^[\\s.,-]*(?:(?:${anyOf(words.yesNo.fillers)})[\\s,.-]+){0,3}${anyOf(place.questions)}`, 'u'),
    questionVerb: new RegExp(`^[\\s.,-]*${anyOf(place.questionVerbs)}`, 'u'),
    questionWithin: new RegExp(`(?:^|[.!?,;]\\s+)${anyOf(place.questions)}`, 'u'),
    unknown: whole(place.unknown, Object.values(wanted).flat(), words.yesNo.fillers),
    /** "Yes, " before the words. */
    answerAtStart: rowAtStart(
      '\\s',
      `${anyOf(words.yesNo.yes, words.yesNo.yesAlone, words.yesNo.no, words.yesNo.bareNo, words.yesNo.fillers, hedges.correcting)}\\s*[,.!:;-]`,
      '\\s',
    ),
    /** "alt 260 m" */
    height: new RegExp(
      `${anyOf(place.height)}[\\s.:=]{0,3}\\d{1,5}(?:\\.\\d{1,3})?\\s?(?:${Object.keys(words.patch.lengths)
        .filter((unit) => /^\p{L}/u.test(unit))
        .join('|')})(?!\\p{L})`,
      'u',
    ),
    other: new RegExp(
      `^(?:[\\s\\d.,:;/!?%°'"&()+~-]|${anyOf(place.otherKinds)}|(?<=\\d)(?:${place.otherSuffixes.join('|')})(?!\\p{L}))+$`,
      'u',
    ),
    doubt: new RegExp(
      anyOf(
        hedges.doubting.filter((word) => word !== '?'),
        place.doubts,
      ),
      'u',
    ),
    doubtAtStart: rowAtStart(
      '\\s,.',
      `(?:${anyOf(hedges.doubting)}|${anyOf(place.doubts)}(?=\\s*[,.:;]|\\s+${anyOf(hedges.doubting, place.hedgeJoins)}))`,
      '\\s,.:;',
    ),
    /** "but " behind such a doubt. */
    hedgeJoin: new RegExp(`^${anyOf(place.hedgeJoins)}\\s+`, 'u'),
    correcting: new RegExp(anyOf(hedges.correcting), 'gu'),
    /** In words only between marks or before a colon: "sorry for the delay" corrects nothing. */
    corrected: new RegExp(
      `[,.;\\n-]\\s{0,3}${anyOf(hedges.correcting)}\\s{0,3}[,:-]\\s{0,3}|[,.;\\n-]\\s{0,3}${anyOf(hedges.correcting.filter((phrase) => phrase.includes(' ')))}\\s{1,3}`,
      'gu',
    ),
    inPassing: {
      /** "at Hollow Oak Farm", "in Miller Woods": two words with capitals, or one beside a word like "park". */
      capitals: new RegExp(
        `(?<=(?<![\\p{L}\\p{N}])(?:${inAnyCase(place.nameAfter)})\\s{1,3}(?:(?:${inAnyCase(place.nameArticles)})\\s{1,3})?)` +
          `\\p{Lu}[\\p{L}'’.-]*(?:\\s+(?:(?:${place.nameJoins.join('|')})\\s+)?\\p{Lu}[\\p{L}'’-]*){0,5}`,
        'gu',
      ),
      nouned: new RegExp(
        `(?<![\\p{L}\\p{N}])(?<preposition>${anyOf(place.prepositions)})\\s+(?<words>(?:${anyOf(place.determiners, place.owners)}\\s+)?(?:(?!${anyOf(place.prepositions)})[\\p{L}\\p{N}'.-]{1,30}\\s+){0,4}?${anyOf(place.nouns)}(?:\\s+${anyOf(place.nouns)})?)`,
        'gu',
      ),
      anywhere: new RegExp(`^${anyOf(place.anywhere)}$`, 'u'),
      clauseBefore: new RegExp(`(?:^|[.,;:!?\\n(-]|${anyOf(place.watching)})\\s{0,3}$`, 'u'),
      /** The " on Monday" of "at Crane Landing on Monday". */
      dayAtEnd: new RegExp(
        `(?:\\s+(?:${place.nameJoins.join('|')}))*\\s+${anyOf(Object.keys(date.weekdays))}(?!\\p{L})$`,
        'u',
      ),
      notNames: new RegExp(`^${anyOf(place.notPlaceNames)}`, 'u'),
      sides: new RegExp(`^${anyOf(place.sides)}`, 'u'),
      smallNameAfter: new RegExp(`^${anyOf(place.smallNameAfter)}$`, 'u'),
      /** "at miller park": a name in small letters, whole. */
      smallName: new RegExp(
        `^(?:(?!${anyOf(place.notInNames, place.notPlaceNames)})[\\p{L}'.-]{2,30}\\s+){1,3}${anyOf(place.nouns.filter((noun) => !place.vague.includes(noun)))}$`,
        'u',
      ),
      nouns: new RegExp(anyOf(place.nouns), 'u'),
      nounAtEnd: new RegExp(`${anyOf(place.nouns)}$`, 'u'),
      nounsAtStart: new RegExp(`^(?:\\s+${anyOf(place.nouns)}){0,3}`, 'u'),
      tail: new RegExp(`^,\\s+${anyOf(place.tails)}[\\p{L}\\s'-]{0,40}(?=[.,;\\n]|$)`, 'u'),
      determiner: new RegExp(`^${anyOf(place.determiners, place.owners)}\\s`, 'u'),
      owned: new RegExp(
        `(?:^|[.,;\\n])[ \\t]{0,3}(?<words>${anyOf(place.owners)}\\s+(?:(?!${anyOf(place.prepositions)})[\\p{L}'-]{1,30}\\s+){0,2}?${anyOf(place.nouns)})(?=\\s{0,3}(?:[,.;\\n]|$))`,
        'u',
      ),
    },
  };
});
export type PlacePhrases = ReturnType<typeof placePhrases>;
