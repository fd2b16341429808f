/** Sun and cloud by turns: "the sun kept going in and out", "sun behind clouds now and then". */
import type { Cloud } from '../../../shared/vocabularies.js';
import type { Words } from '../../../shared/words.js';
import { madeOnce } from '../text.js';
import { hitFinder } from './phrases.js';
import { isFiller, restIsFiller } from './said.js';
import type { SkyHit, SkyWord } from './sky-word.js';
import type { Spoken } from './spoken.js';

const repeats = madeOnce((words: Words) =>
  hitFinder(
    words.sky.repeats.map((phrase) => [phrase, true] as const),
    words,
  ),
);

/** "sun behind clouds a few times": so many words apart. */
const FARTHEST_REPEAT = 3;

const SCATTERED: SkyWord = { says: 'cloud', cloud: 'scattered', trust: 'in-place' };
const OPEN: SkyWord = { says: 'vague', offer: ['scattered', 'broken'], rain: false };
const CLOUDY: SkyWord = { says: 'vague', offer: ['broken', 'scattered'], rain: false };
const NOTHING: SkyWord = { says: 'nothing' };

const isPart = ({ value }: SkyHit, ...parts: string[]): boolean => value.says === 'part' && parts.includes(value.part);
const isCloud = ({ value }: SkyHit, cloud: Cloud): boolean => value.says === 'cloud' && value.cloud === cloud;
const isSunny = (hit: SkyHit): boolean => isPart(hit, 'sun', 'blue') || isCloud(hit, 'clear');

/** What turns about: "sunny on and off" is scattered, "cloudy on and off" leaves open how much. */
const turned = (hit: SkyHit): SkyWord =>
  // "light rain off and on" is rain
  hit.value.says === 'rain'
    ? hit.value
    : isSunny(hit) || isCloud(hit, 'scattered')
      ? SCATTERED
      : isCloud(hit, 'overcast')
        ? CLOUDY
        : OPEN;

/**
 * The hits with such turns put together with what turns. A word such as "on and off" that stands apart from sun and
 * cloud is of something else: "sunny, a breeze on and off".
 */
export function withTurns(hits: readonly SkyHit[], text: Spoken, words: Words): readonly SkyHit[] {
  if (!hits.some((hit) => isPart(hit, 'by-turns', 'hidden'))) return hits;
  const { tokens } = text;
  const again = repeats(words)(text);
  const together = (one: SkyHit, other: SkyHit): boolean =>
    one.clause === other.clause &&
    tokens.slice(one.to, other.from).every((token) => isFiller(token, words) || words.sky.turning.includes(token.word));
  const joined: SkyHit[] = [];
  for (const hit of hits) {
    const before = joined.at(-1);
    if (isPart(hit, 'hidden')) {
      const repeated = again.some(
        ({ from, to, clause }) =>
          clause === hit.clause && from <= hit.to + FARTHEST_REPEAT && to >= hit.from - FARTHEST_REPEAT,
      );
      joined.push({ ...hit, value: repeated ? SCATTERED : CLOUDY });
    } else if (!isPart(hit, 'by-turns')) {
      joined.push(before && isPart(before, 'by-turns') && together(before, hit) ? { ...hit, value: turned(hit) } : hit);
    } else if (before && together(before, hit)) {
      joined[joined.length - 1] = { ...before, value: turned(before), to: hit.to, span: [before.span[0], hit.span[1]] };
    } else joined.push(hit);
  }
  const others = joined.some((hit) => !isPart(hit, 'by-turns'));
  const alone = ({ from, to, clause }: SkyHit): boolean =>
    !others && restIsFiller(text, words, clause, (token) => token >= from && token < to);
  return joined.map((hit) => (isPart(hit, 'by-turns') ? { ...hit, value: alone(hit) ? OPEN : NOTHING } : hit));
}
