/** Which words of sky and wind count where: in an answer, or in passing in a longer text. */
import type { Words } from '../../../shared/words.js';
import { findNumbers } from '../numbers.js';
import { madeOnce } from '../text.js';
import { FAHRENHEIT_IN_PASSING } from './beside.js';
import { inDoubtWords, isFiller, labelledBefore, restIsFiller } from './said.js';
import type { SkyHit, SkyPart, Trust } from './sky-word.js';
import { skyHits } from './sky-words.js';
import { hitFinder, inAny, type Hit } from './phrases.js';
import { tokenAt, type Spoken } from './spoken.js';
import { windHits, type WindHit, type WindHits } from './wind-words.js';

/** The whole text answers this question, or it is looked through for what it says besides. */
export type Finding = 'answer' | 'passing';

const labelsOf = (section: 'sky' | 'wind') =>
  madeOnce((words: Words) =>
    hitFinder(
      words[section].labels.map((phrase) => [phrase, true] as const),
      words,
    ),
  );
const skyLabels = labelsOf('sky');
const windLabels = labelsOf('wind');

/** Of many other things too: "in the sun", "bright yellow". */
const WEAK_PARTS: ReadonlySet<SkyPart> = new Set(['bare-cloud', 'bright', 'sun', 'blue', 'holes']);

const trustOfSky = ({ value }: SkyHit): Trust => {
  if (value.says === 'cloud' || value.says === 'rain') return value.trust;
  const weak = value.says === 'vague' || (value.says === 'part' && WEAK_PARTS.has(value.part));
  return weak ? 'in-place' : 'anywhere';
};

/** Words between a temperature and the sky told with it: "73 degrees out and clear". */
const MOST_BETWEEN = 5;

const unitWords = madeOnce(({ units }: Words['temperature']) => new Set(Object.values(units).flat()));
const isUnit = ({ temperature }: Words, word: string): boolean => unitWords(temperature).has(word);

/** Tells whether a token belongs to a number that can be degrees, in digits or words. */
function degreesIn(text: Spoken, words: Words): (token: number) => boolean {
  const numbers = findNumbers(text.folded, words).filter(
    ({ value }) => value >= FAHRENHEIT_IN_PASSING.from && value <= FAHRENHEIT_IN_PASSING.to,
  );
  return inAny(numbers.map(({ span }) => ({ from: tokenAt(text, span[0]), to: tokenAt(text, span[1]) })));
}

/** In a list of weather each item has few words. */
const FARTHEST_TOKENS = 12;

/** Sky and wind words that count; `left` are words that do not, but may still tell of a change. */
export interface AmongWeather {
  readonly sky: readonly SkyHit[];
  readonly wind: WindHits;
  readonly left: { readonly sky: readonly SkyHit[]; readonly wind: readonly WindHit[] };
}

/** Tells which words of sky and wind count. A word for a gust or a place's name has been left out before. */
export function amongWeather(text: Spoken, words: Words, finding: Finding): AmongWeather {
  const sky = skyHits(text, words);
  const wind = windHits(text, words);
  const all: Hit<unknown>[] = [...sky, ...wind.words, ...wind.effects];
  const isDoubt = inDoubtWords(text, words);
  const isWeather = inAny(all);
  const firm = inAny([
    ...sky.filter((hit) => trustOfSky(hit) === 'anywhere'),
    ...wind.words.filter((hit) => hit.value.trust === 'anywhere'),
    ...wind.effects.filter((hit) => hit.value.trust === 'anywhere'),
  ]);
  const isGust = (token: number): boolean => words.wind.gusts.includes(text.tokens[token]!.word);
  const temperature = (token: number): boolean => /^\d{2,3}(?:f|c|s)?$/.test(text.tokens[token]?.word ?? '');
  const isDegrees = degreesIn(text, words);
  /** "the sky was clear and the thermometer said 67", "73 degrees and clear there are 25 violets". */
  const isToldOn = (hit: SkyHit): boolean => {
    for (let at = hit.from - 1; at >= hit.from - MOST_BETWEEN && text.tokens[at]?.clause === hit.clause; at--) {
      if (labels.sky(at) || firm(at) || isDegrees(at)) return true;
      if (!isFiller(text.tokens[at]!, words) && !isUnit(words, text.tokens[at]!.word)) return false;
    }
    return false;
  };
  const labels = { sky: inAny(skyLabels(words)(text)), wind: inAny(windLabels(words)(text)) };

  const counts = (hit: Hit<unknown>, trust: Trust, section: 'sky' | 'wind', needsLabel = false): boolean => {
    if (trust === 'anywhere') return true;
    if (trust === 'in-place' && finding === 'answer') return true;
    if (isDoubt(hit.from)) return false;
    const isLabel = labels[section];
    const inHit = (token: number): boolean => token >= hit.from && token < hit.to;
    const own = (token: number): boolean =>
      isLabel(token) || (trust === 'alone' ? inHit(token) || (section === 'wind' && isGust(token)) : isWeather(token));
    const clause = text.clauses[hit.clause]!;
    const fills = restIsFiller(text, words, hit.clause, own);
    if (!fills) return false;
    if ((finding === 'answer' && !needsLabel) || labelledBefore(text, hit.clause, isLabel)) return true;
    for (let token = clause.from; token < hit.from; token++) if (isLabel(token)) return true;
    // "70, sunny, light": among other weather, even a weak word is meant so
    const beside = [hit.clause - 1, hit.clause, hit.clause + 1].some((other) => {
      const { from, to } = text.clauses[other] ?? { from: 0, to: 0 };
      for (let token = from; token < Math.min(to, from + FARTHEST_TOKENS); token++) {
        if (token >= hit.from && token < hit.to) continue;
        if (firm(token) || (temperature(token) && restIsFiller(text, words, other, () => false))) return true;
      }
      return false;
    });
    const weakOnly = trust === 'alone' && !(clause.to - clause.from === hit.to - hit.from);
    return beside && !weakOnly && !isNothing(hit);
  };
  /** "none" in a list is as likely of bees. */
  const isNothing = (hit: Hit<unknown>): boolean =>
    hit.to - hit.from === 1 && words.weather.alsoCounts.includes(text.tokens[hit.from]!.word);

  /** "none" could be an answer to anything. */
  const isNone = ({ value }: SkyHit): boolean =>
    value.says === 'cloud' && value.trust === 'alone' && value.cloud === 'clear';
  /** "clouds: none" says nothing of clouds yet at its first word. */
  const isOnlyLabel = (hit: SkyHit): boolean => {
    const next = text.clauses[hit.clause + 1];
    return next !== undefined && labels.sky(hit.from) && labelledBefore(text, hit.clause + 1, labels.sky);
  };

  const wholeAnswer = finding === 'answer';
  const otherDay = new Set(words.sky.otherDay);
  const otherDayClauses = new Set(text.tokens.flatMap(({ word, clause }) => (otherDay.has(word) ? [clause] : [])));
  const skyCounts = (hit: SkyHit): boolean => {
    if (isOnlyLabel(hit)) return false;
    if (hit.value.says === 'rain')
      return wholeAnswer || (hit.value.trust === 'anywhere' && !otherDayClauses.has(hit.clause));
    // "in a clearing": a word that leaves much open is seldom of the sky
    if (hit.value.says === 'vague' && !wholeAnswer && hit.to - hit.from === 1) return false;
    const trust = trustOfSky(hit);
    if (hit.value.says === 'cloud' && trust === 'in-place' && isToldOn(hit)) return true;
    return counts(hit, trust, 'sky', isNone(hit));
  };
  const counted = sky.filter(skyCounts);
  const windWords = wind.words.filter((hit: WindHit) => counts(hit, hit.value.trust, 'wind'));
  return {
    sky: counted,
    wind: {
      words: windWords,
      effects: wind.effects.filter((hit) => wholeAnswer || hit.value.trust === 'anywhere'),
    },
    left: {
      sky: sky.filter((hit) => !counted.includes(hit)),
      wind: wind.words.filter((hit) => !windWords.includes(hit)),
    },
  };
}
