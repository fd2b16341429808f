/** Which of several offers an answer takes: by its place ("the third one", "3"), by its own words, or none of them for sure. */
import { fold, saysAnyOf, type Context } from '../../answers/index.js';

/** Longer answers say more than which one it is. */
const LONGEST_CHOICE = 60;

/** The answer as typed without marks at its ends and words that say nothing more: of "I think it was the last" two words. */
export function withoutAround(text: string, { words }: Context): string {
  const strip = (said: string): string => said.replace(/^[\s,;:.!]+|[\s,;:.!]+$/g, '');
  let said = strip(text.replace(/\s+/g, ' '));
  for (;;) {
    const before = said;
    for (const word of words.wishes.aroundChoice) {
      const folded = fold(said);
      if (folded.startsWith(`${word} `) || folded.startsWith(`${word},`)) said = strip(said.slice(word.length));
      else if (folded.endsWith(` ${word}`) || folded.endsWith(`,${word}`)) said = strip(said.slice(0, -word.length));
    }
    if (said === before) return said;
  }
}

export const bareChoice = (text: string, context: Context): string => fold(withoutAround(text, context));

/** Its index by its place among so many; a bare number counts only where none of the offers is a number itself. */
export function chosenByPlace(text: string, many: number, areNumbers: boolean, context: Context): number | null {
  const said = bareChoice(text, context);
  const number = areNumbers ? undefined : /^(?:no\.? ?|#)?(?<place>\d)$/.exec(said)?.groups?.['place'];
  const place = number === undefined ? context.words.wishes.ordinals[said] : Number(number);
  if (many < 2 || place === undefined || place === 0 || Math.abs(place) > many) return null;
  return place < 0 ? many + place : place - 1;
}

/** "I cannot tell which", "the genus is fine": none of the kinds offered, but what they have in common. */
export const cannotTell = (text: string, { words }: Context): boolean =>
  text.length <= LONGEST_CHOICE && !text.includes('?') && saysAnyOf(text, words.wishes.either);

/** Letters in which a word and part of a scientific name agree: "the virginia one" is Claytonia virginica. */
const LETTERS_OF_NAME = 6;
const isSame = (word: string, other: string): boolean =>
  word === other ||
  (word.length >= LETTERS_OF_NAME && word.slice(0, LETTERS_OF_NAME) === other.slice(0, LETTERS_OF_NAME));

/** The index of the one offer whose own words the answer has; null where several or none fit. */
export function chosenByWords(text: string, own: readonly string[]): number | null {
  const words = fold(text).match(/\p{L}{2,}/gu) ?? [];
  const hits = own.map((offer) => {
    const known: readonly string[] = fold(offer).match(/\p{L}+/gu) ?? [];
    return words.filter((word) => known.some((other) => isSame(word, other))).length;
  });
  const most = Math.max(...hits);
  const best = hits.flatMap((hit, at) => (hit === most ? [at] : []));
  return most > 0 && best.length === 1 ? best[0]! : null;
}
