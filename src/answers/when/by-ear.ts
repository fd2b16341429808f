/**
 * Clock times as a telephone hears them: "for ten to four twenty five", "ate thirty to ate forty five", "won fifteen";
 * and words typed without their vowels: "strtd 1015 fnshd 1030". Only in the answer to the question for times.
 */
import type { Words } from '../../../shared/words.js';
import { madeOnce } from '../text.js';
import { knownWithoutVowels, withVowels } from '../vowels.js';
import type { TimeWords } from './time-words.js';
import { smallNumberAt, type Token } from './tokens.js';

const HOURS_OF_CLOCK = 12;

/** How an hour sounds, as its word: "ate" is "eight". */
const hoursHeard = madeOnce(({ count, numbers }: Words) => {
  const words = Object.entries(numbers.units);
  return new Map(
    Object.entries(count.byEar).flatMap(([heard, value]) => {
      const word = value <= HOURS_OF_CLOCK ? words.find(([, unit]) => unit === value)?.[0] : undefined;
      return word === undefined ? [] : [[heard, word] as const];
    }),
  );
});

const clipped = madeOnce((words: Words) => {
  const { starts, ends, to, partsOfDay } = words.times;
  const known = [...starts, ...ends, ...to, ...Object.keys(partsOfDay)].flatMap((phrase) => phrase.split(' '));
  return withVowels(
    known.map((word) => [word, word] as const),
    knownWithoutVowels(words),
  );
});

/** The tokens as they were meant, at their places. */
export function asMeant(typed: readonly Token[], words: Words, timeWords: TimeWords): readonly Token[] {
  const withMeaning = (token: Token, text: string | undefined): Token =>
    text === undefined ? token : { ...token, text, stem: text };
  const tokens = typed.map((token) => (token.kind === 'word' ? withMeaning(token, clipped(words)(token.text)) : token));
  const heard = hoursHeard(words);
  if (!tokens.some(({ text }) => heard.has(text))) return tokens;

  /** Where the minutes of an hour that ends before `at` end; null where none stand there. */
  const minutesEnd = (at: number): number | null => {
    const oh = timeWords.oh(tokens, at);
    const number = smallNumberAt(tokens, oh?.next ?? at, words.numbers);
    if (number?.written !== 'words') return null;
    return oh ? (number.value < 10 ? number.next : null) : number.value >= 10 && number.value < 60 ? number.next : null;
  };
  const suffix = (at: number): boolean =>
    (timeWords.oclock(tokens, at) ?? timeWords.am(tokens, at) ?? timeWords.pm(tokens, at)) !== null;
  const leadsTo = (at: number): number | null => {
    const link = timeWords.links(tokens, at);
    return link?.value === 'to' ? link.next : null;
  };
  const hourOf = (at: number): number | undefined => {
    const text = tokens[at]?.text ?? '';
    const hour = tokens[at]?.kind === 'number' ? Number(text) : words.numbers.units[heard.get(text) ?? text];
    return hour !== undefined && hour <= HOURS_OF_CLOCK ? hour : undefined;
  };

  const mended = [...tokens];
  const take = (at: number): void => {
    mended[at] = withMeaning(tokens[at]!, heard.get(tokens[at]!.text));
  };
  // the start: "for ten to four …" goes on to the same hour or the next; "for ten minutes" does not
  const first = heard.has(tokens[0]?.text ?? '') ? hourOf(0) : undefined;
  if (first !== undefined) {
    const end = minutesEnd(1);
    const after = end ?? 1;
    const to = leadsTo(after);
    const until = to === null ? undefined : hourOf(to);
    const goesOn = until !== undefined && (until === first || until === (first % HOURS_OF_CLOCK) + 1);
    const ownWord = timeWords.links(tokens, 0) === null && timeWords.lengthLeads(tokens, 0) === null;
    const longer = to !== null && (minutesEnd(to + 1) !== null || suffix(to + 1));
    if ((goesOn && (end !== null || longer)) || (suffix(after) && (ownWord || end !== null))) take(0);
  }
  // behind "to", "from" and "at": "to for thirty", "at ate fifteen"
  for (let at = 1; at < tokens.length; at++) {
    if (!heard.has(tokens[at]!.text)) continue;
    const lead = timeWords.links(mended, at - 1);
    const led = lead?.next === at && ['to', 'start', 'at'].includes(lead.value);
    if (led && (minutesEnd(at + 1) !== null || suffix(at + 1))) take(at);
  }
  return mended;
}
