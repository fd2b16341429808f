/** The words for places, made into patterns once for each loaded language. */
import type { Words } from '../../../shared/words.js';
import { anyOf } from '../any-of.js';
import { madeOnce } from '../text.js';

export const placePhrases = madeOnce((words: Words) => {
  const { place, hedges, wishes } = words;
  const whole = (...lists: (readonly string[])[]): RegExp =>
    new RegExp(`^[\\s.,!…:;()-]*(?:${anyOf(...lists)}[\\s.,!?…:;()-]*)+$`, 'u');
  const { 'same-place': _same, ...wanted } = wishes.plain;
  return {
    label: new RegExp(`^[\\s*-]*${anyOf(place.labels)}\\s*[:=]\\s*`, 'u'),
    labelWithin: new RegExp(
      `(?:^|[\\n;.])[\\s*-]*${anyOf(place.labels, words.note.labels.place)}\\s*[:=]\\s*(?<words>[^\\n;]{1,300})`,
      'gu',
    ),
    /** Beside coordinates, at the end of the words before and at the beginning of the words after. */
    labelsAtEnd: new RegExp(
      `(?:^|[\\s,.;:(-])(?:${anyOf(place.coordinateLabels, place.datums, hedges.doubting, hedges.correcting, place.doubts)}[\\s,.;:=(-]*)+$`,
      'u',
    ),
    labelsAtStart: new RegExp(
      `^[\\s,.;:)-]*(?:${anyOf(place.datums, ['ok', 'thanks', 'thank you', 'or so'])}[\\s,.;:)-]*)+`,
      'u',
    ),
    onlyLabels: whole(place.coordinateLabels, place.datums, hedges.doubting, hedges.correcting, place.doubts),
    question: new RegExp(`^[\\s.,-]*(?:(?:${anyOf(words.yesNo.fillers)})[\\s,.-]+){0,3}${anyOf(place.questions)}`, 'u'),
    questionVerb: new RegExp(`^[\\s.,-]*${anyOf(place.questionVerbs)}`, 'u'),
    questionWithin: new RegExp(`(?:^|[.!?,;]\\s+)${anyOf(place.questions)}`, 'u'),
    unknown: whole(place.unknown, Object.values(wanted).flat(), words.yesNo.fillers),
    unknownAtStart: new RegExp(`^[\\s.,-]*${anyOf(place.unknown)}(?=[\\s.,!?-]*$)`, 'u'),
    other: new RegExp(
      `^(?:[\\s\\d.,:;/!?%°'"&()+~-]|${anyOf(place.otherKinds)}|(?<=\\d)(?:am|pm|f|c|a|p|st|nd|rd|th|min|mph|ft|m|h)(?!\\p{L}))+$`,
      'u',
    ),
    doubt: new RegExp(
      anyOf(
        hedges.doubting.filter((word) => word !== '?'),
        place.doubts,
      ),
      'u',
    ),
    doubtAtStart: new RegExp(
      `^[\\s,.]*(?:${anyOf(hedges.doubting, place.doubts)}[\\s,.:]*)+(?:(?:but|it was|was it|its|it's)\\s+)?`,
      'u',
    ),
    correcting: new RegExp(anyOf(hedges.correcting), 'gu'),
    inPassing: {
      nouned: new RegExp(
        `(?<![\\p{L}\\p{N}])(?<preposition>${anyOf(place.prepositions)})\\s+(?<words>(?:${anyOf(place.determiners)}\\s+)?(?:[\\p{L}\\p{N}'.-]{1,30}\\s+){0,4}?${anyOf(place.nouns)}(?:\\s+${anyOf(place.nouns)})?)`,
        'gu',
      ),
      notNames: new RegExp(`^${anyOf(place.notPlaceNames)}`, 'u'),
      nouns: new RegExp(anyOf(place.nouns), 'u'),
      nounsAtStart: new RegExp(`^(?:\\s+${anyOf(place.nouns)}){0,3}`, 'u'),
      tail: new RegExp(`^,\\s+${anyOf(place.tails)}[\\p{L}\\s'-]{0,40}(?=[.,;\\n]|$)`, 'u'),
      determiner: new RegExp(`^${anyOf(place.determiners)}\\s`, 'u'),
    },
  };
});
export type PlacePhrases = ReturnType<typeof placePhrases>;
