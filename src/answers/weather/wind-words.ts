/** What is said of the wind, word by word: hits that `readWind` puts together, and by which others know wind words. */
import type { Words } from '../../../shared/words.js';
import { madeOnce } from '../text.js';
import { hitFinder, inAny, type Hit } from './phrases.js';
import { isPlaceName, type Trust } from './sky-words.js';
import type { Spoken } from './spoken.js';

export interface WindWord {
  /** Beaufort forces it may mean, the best first; one where it is clear. */
  readonly forces: readonly number[];
  readonly trust: Trust;
}

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
const thingFinder = madeOnce((words: Words) => hitFinder(pairs(words.wind.effects.things), words));
const motionFinder = madeOnce((words: Words) => hitFinder(pairs(words.wind.effects.motions), words));
const gustWords = madeOnce((wind: Words['wind']) => new Set(wind.gusts));

function* pairs(section: Readonly<Record<string, readonly string[]>>): Iterable<readonly [string, string]> {
  for (const [name, phrases] of Object.entries(section)) for (const phrase of phrases) yield [phrase, name];
}

/** Things and motions farther apart than so many words have nothing to do with each other. */
const FARTHEST_TOKENS = 7;

/** What the wind did, by the Beaufort scale's own signs: "leaves rustling", "smoke went straight up". */
function effectHits(text: Spoken, words: Words): WindHit[] {
  const motions = motionFinder(words)(text);
  const hits: WindHit[] = [];
  let first = 0;
  for (const thing of thingFinder(words)(text)) {
    while (first < motions.length && motions[first]!.to < thing.from - FARTHEST_TOKENS) first++;
    let nearest: { forces: readonly number[]; motion: Hit<string>; apart: number } | null = null;
    for (let at = first; at < motions.length && motions[at]!.from <= thing.to + FARTHEST_TOKENS; at++) {
      const motion = motions[at]!;
      if (motion.clause !== thing.clause) continue;
      const how = (motion.negated || thing.negated) && motion.value !== 'barely' ? 'stays' : motion.value;
      const forces = words.wind.effects.forces[thing.value]?.[how];
      // "rustling leaves", but rather "leaves moving, smoke …": what follows the thing is its own
      const apart = motion.from >= thing.to ? motion.from - thing.to : thing.from - motion.to + 2;
      if (forces && (nearest === null || apart < nearest.apart)) nearest = { forces, motion, apart };
    }
    if (!nearest) continue;
    const from = Math.min(thing.from, nearest.motion.from);
    const to = Math.max(thing.to, nearest.motion.to);
    hits.push({
      value: { forces: nearest.forces, trust: 'anywhere' },
      from,
      to,
      span: [Math.min(thing.span[0], nearest.motion.span[0]), Math.max(thing.span[1], nearest.motion.span[1])],
      clause: thing.clause,
      negated: false,
    });
  }
  return hits;
}

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
