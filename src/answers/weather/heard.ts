/** Words of sky and wind as a telephone hears them: "son and clouds", "blew sky", "no win". Only in answers about them. */
import type { Words } from '../../../shared/words.js';
import { madeOnce } from '../text.js';
import { isFiller } from './said.js';
import type { Spoken, Token } from './spoken.js';

interface Heard {
  readonly typed: readonly string[];
  readonly meant: readonly string[];
}

/** By its first word, the longest first: "my son" stays what it is. */
const heardBy = madeOnce((weather: Words['weather']) => {
  const byFirst = new Map<string, Heard[]>();
  for (const [phrase, meaning] of Object.entries(weather.heard)) {
    const typed = phrase.split(' ');
    const meant = meaning.split(' ');
    if (typed.length !== meant.length) throw new Error(`"${phrase}" and "${meaning}" differ in their number of words.`);
    const [first = ''] = typed;
    byFirst.set(first, [...(byFirst.get(first) ?? []), { typed, meant }]);
  }
  for (const heard of byFirst.values()) heard.sort((a, b) => b.typed.length - a.typed.length);
  return byFirst;
});

/** The text with the words that were meant. */
export function asMeant(text: Spoken, { weather }: Words): Spoken {
  const heard = heardBy(weather);
  const { tokens } = text;
  const meant: Token[] = [];
  for (let at = 0; at < tokens.length;) {
    const { clause } = tokens[at]!;
    const found = heard
      .get(tokens[at]!.typed)
      ?.find(({ typed }) =>
        typed.every((word, i) => tokens[at + i]?.typed === word && tokens[at + i]?.clause === clause),
      );
    for (let i = 0; i < (found?.typed.length ?? 1); i++) {
      const token = tokens[at + i]!;
      const word = found?.meant[i];
      const changed = word !== undefined && word !== token.typed;
      meant.push(changed ? { ...token, word: weather.same[word] ?? word, skipped: false } : token);
    }
    at = meant.length;
  }
  return { ...text, tokens: meant };
}

/** "ptl sunny": a word without vowels that is none we know may say how much. */
export function slurredBefore(
  { from, clause }: { readonly from: number; readonly clause: number },
  { tokens }: Spoken,
  isWeather: (token: number) => boolean,
  words: Words,
): boolean {
  const before = tokens[from - 1];
  if (before?.clause !== clause || isWeather(from - 1) || isFiller(before, words)) return false;
  return /^[^\P{L}aeiouy]{2,}$/u.test(before.word);
}
