/** The wind by what it moves, the Beaufort scale's own signs: "leaves rustling", "smoke went straight up". */
import type { Words } from '../../../shared/words.js';
import { madeOnce } from '../text.js';
import { hitFinder, inAny, type Hit } from './phrases.js';
import type { Trust } from './sky-word.js';
import { isFiller } from './said.js';
import type { Spoken } from './spoken.js';

/** What a word or a sign says of the wind. */
export interface WindWord {
  /** Beaufort forces it may mean, the best first; one where it is clear. */
  readonly forces: readonly number[];
  readonly trust: Trust;
}

function* pairs(section: Readonly<Record<string, readonly string[]>>): Iterable<readonly [string, string]> {
  for (const [name, phrases] of Object.entries(section)) for (const phrase of phrases) yield [phrase, name];
}

const thingFinder = madeOnce((words: Words) => hitFinder(pairs(words.wind.effects.things), words));
const motionFinder = madeOnce((words: Words) => hitFinder(pairs(words.wind.effects.motions), words));

/** Things and motions farther apart than so many words have nothing to do with each other. */
const FARTHEST_TOKENS = 7;

/** How a thing moves; one that does not is the motion of this name. */
const STAYS = 'stays';
/** "barely moving" is told as such, whatever "not" stands before. */
const BARELY = 'barely';

interface Sign {
  readonly forces: readonly number[];
  readonly motion: Hit<string>;
  readonly how: string;
  readonly apart: number;
}

/** "leaves were still wet" does not tell how they moved: such a word counts only at the end of its clause. */
const endsClause = ({ tokens }: Spoken, motion: Hit<string>): boolean => tokens[motion.to]?.clause !== motion.clause;

/**
 * All signs, left to right. `anywhere` can be trusted in a longer text: the motion is told directly of the thing ("the
 * leaves were rustling", not "a queen moved through the leaves"); the others only in an answer about the wind.
 */
export function effectHits(text: Spoken, words: Words): Hit<WindWord>[] {
  const { effects } = words.wind;
  const things = thingFinder(words)(text);
  const motions = motionFinder(words)(text);
  const isThing = inAny(things);
  const hits: Hit<WindWord>[] = [];
  let first = 0;
  for (const thing of things) {
    while (first < motions.length && motions[first]!.to < thing.from - FARTHEST_TOKENS) first++;
    let nearest: Sign | null = null;
    for (let at = first; at < motions.length && motions[at]!.from <= thing.to + FARTHEST_TOKENS; at++) {
      const motion = motions[at]!;
      if (motion.clause !== thing.clause || (effects.onlyAtEnd.includes(motion.value) && !endsClause(text, motion)))
        continue;
      const still = (motion.negated || thing.negated) && motion.value !== BARELY;
      const how = still || effects.onlyAtEnd.includes(motion.value) ? STAYS : motion.value;
      const forces = effects.forces[thing.value]?.[how];
      // "rustling leaves", but rather "leaves moving, smoke …": what follows the thing is its own
      const apart = motion.from >= thing.to ? motion.from - thing.to : thing.from - motion.to + 2;
      if (forces && (nearest === null || apart < nearest.apart)) nearest = { forces, motion, how, apart };
    }
    if (!nearest) continue;
    const { motion, how } = nearest;
    const [left, right] = motion.from < thing.from ? [motion.to, thing.from] : [thing.to, motion.from];
    // "rustling leaves", but not "one moved from the leaves"
    let direct = motion.from >= thing.to || (left === right && motion.to - motion.from === 1);
    for (let at = left; at < right; at++) direct &&= isThing(at) || isFiller(text.tokens[at]!, words);
    const told =
      (direct || effects.evenApart.includes(thing.value)) && (effects.inPassing[thing.value]?.includes(how) ?? false);
    hits.push({
      value: { forces: nearest.forces, trust: told ? 'anywhere' : 'alone' },
      from: Math.min(thing.from, motion.from),
      to: Math.max(thing.to, motion.to),
      span: [Math.min(thing.span[0], motion.span[0]), Math.max(thing.span[1], motion.span[1])],
      clause: thing.clause,
      negated: false,
    });
  }
  return hits;
}
