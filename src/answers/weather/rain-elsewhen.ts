/** Rain that was over, is yet to come, or fell elsewhere: "after all that rain", "showers expected", "rain in the distance". */
import type { Words } from '../../../shared/words.js';
import { madeOnce } from '../text.js';
import type { SkyHit } from './sky-word.js';
import type { Spoken } from './spoken.js';

/** "after all that heavy morning rain"; behind the rain a word soon belongs to something else. */
const FARTHEST_BEFORE = 4;
const FARTHEST_BEHIND = 2;

const elsewhen = madeOnce(({ rainElsewhen }: Words['sky']) => ({
  before: new Set(rainElsewhen.before),
  behind: new Set(rainElsewhen.behind),
}));

/** The hits with such rain passed over. */
export function withoutRainElsewhen(
  hits: readonly SkyHit[],
  { tokens, clauses }: Spoken,
  { sky, weather }: Words,
): readonly SkyHit[] {
  const { before, behind } = elsewhen(sky);
  const stands = (hit: SkyHit, from: number, to: number, words: ReadonlySet<string>): boolean =>
    tokens.slice(Math.max(0, from), to).some(({ clause, word }) => clause === hit.clause && words.has(word));
  // "rain: none", "rain no"
  const none = ({ to, clause }: SkyHit): boolean => {
    const next = tokens[to];
    if (!next || !sky.noneOf.includes(next.word) || tokens[to + 1]?.clause === next.clause) return false;
    return next.clause === clause || /^\s*[:=]\s*$/.test(clauses[next.clause]!.gap);
  };
  // "no clouds or rain"
  const alsoNot = (hit: SkyHit, at: number): boolean => {
    const before = hits[at - 1];
    const joined = before?.to === hit.from - 1 && weather.alternativeJoins.includes(tokens[before.to]!.word);
    return joined && (before.negated || weather.negators.includes(tokens[before.from]!.word));
  };
  return hits.map((hit, at) =>
    hit.value.says === 'rain' &&
    (none(hit) ||
      alsoNot(hit, at) ||
      stands(hit, hit.from - FARTHEST_BEFORE, hit.from, before) ||
      stands(hit, hit.to, hit.to + FARTHEST_BEHIND, behind))
      ? { ...hit, value: { says: 'nothing' } }
      : hit,
  );
}
