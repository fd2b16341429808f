/** What is said of the wind, word by word: hits that `readWind` puts together, and by which others know wind words. */
import type { Words } from '../../../shared/words.js';
import { madeOnce } from '../text.js';
import { effectHits, type WindWord } from './effects.js';
import { hitFinder, inAny, type Hit } from './phrases.js';
import { isPlaceName } from './sky-words.js';
import type { Spoken } from './spoken.js';

export type WindHit = Hit<WindWord>;

function* windTable({ wind }: Words): Iterable<readonly [string, WindWord]> {
  const sections = [
    [wind.forces, 'anywhere'],
    [wind.forcesInPlace, 'in-place'],
    [wind.forcesAlone, 'alone'],
  ] as const;
  for (const { words, offer } of wind.vague)
    for (const phrase of words) yield [phrase, { forces: offer, trust: 'anywhere' }];
  for (const [section, trust] of sections) {
    for (const [force, phrases] of Object.entries(section)) {
      for (const phrase of phrases) yield [phrase, { forces: [Number(force)], trust }];
    }
  }
  for (const { words, offer } of wind.vagueAlone)
    for (const phrase of words) yield [phrase, { forces: offer, trust: 'alone' }];
}

const windFinder = madeOnce((words: Words) => hitFinder(windTable(words), words));
const gustWords = madeOnce((wind: Words['wind']) => new Set(wind.gusts));

/** Words for a gust are looked for so many words behind a number, and a little before it. */
const FARTHEST_TOKENS = 7;

export interface WindHits {
  readonly words: readonly WindHit[];
  readonly effects: readonly WindHit[];
}

/** True where a word for gusts stands directly before or behind the tokens `[from, to)`. */
export function besideGust({ tokens }: Spoken, from: number, to: number, words: Words): boolean {
  const gusts = gustWords(words.wind);
  const clause = tokens[from]?.clause;
  const next = tokens[to];
  if (next && next.clause === clause && gusts.has(next.word)) {
    // "10 mph gusts to 20": the gusts are the 20
    return !tokens.slice(to, to + FARTHEST_TOKENS).some((token) => token.clause === clause && /^\d/.test(token.word));
  }
  let before = from - 1;
  for (let seen = 0; before >= 0 && seen < 4 && tokens[before]!.clause === clause; before--, seen++) {
    if (gusts.has(tokens[before]!.word)) return true;
    if (/^\d/.test(tokens[before]!.word)) return false;
  }
  return false;
}

/** All wind words and effects, left to right; gusts are passed over. */
export function windHits(text: Spoken, words: Words): WindHits {
  const keep = (hit: WindHit): boolean => !isPlaceName(hit, text, words) && !besideGust(text, hit.from, hit.to, words);
  const effects = effectHits(text, words);
  const inEffect = inAny(effects);
  return {
    // "leaves were still", "not a leaf stirring" are told as effects and as words: the words are unmistakable
    words: windFinder(words)(text).filter(
      (hit) => keep(hit) && (hit.value.trust === 'anywhere' || !inEffect(hit.from)),
    ),
    effects,
  };
}
