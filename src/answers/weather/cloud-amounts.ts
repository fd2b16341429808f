/** How many clouds, however they are painted: "a handful of small white clouds", "several big puffy clouds". */
import type { Words } from '../../../shared/words.js';
import { madeOnce } from '../text.js';
import { hitFinder } from './phrases.js';
import type { SkyHit, SkyPart } from './sky-word.js';
import type { Spoken } from './spoken.js';

const AMOUNTS = { few: 'few-clouds', some: 'some-cloud', many: 'many-clouds' } as const satisfies Record<
  string,
  SkyPart
>;
type Amount = keyof typeof AMOUNTS;
const NAMES = Object.keys(AMOUNTS) as readonly Amount[];

/** Nobody paints a cloud with more words. */
const MOST_ADJECTIVES = 4;

const parts = madeOnce((words: Words) => {
  const { amounts, cloudAdjectives, thinCloudAdjectives, cloudNouns } = words.sky;
  return {
    amount: hitFinder(
      NAMES.flatMap((name) => amounts[name].map((phrase) => [phrase, name] as const)),
      words,
    ),
    adjectives: new Set(cloudAdjectives),
    thin: new Set(thinCloudAdjectives),
    nouns: new Set(cloudNouns),
  };
});

/** All such amounts, left to right. */
export function amountHits(text: Spoken, words: Words): SkyHit[] {
  const { amount, adjectives, thin, nouns } = parts(words);
  const { tokens } = text;
  const hits: SkyHit[] = [];
  for (const hit of amount(text)) {
    // "not many clouds" is told in words of its own
    if (hit.negated) continue;
    let at = hit.to;
    const adjective = (word: string): boolean => adjectives.has(word) || (hit.value === 'few' && thin.has(word));
    while (at - hit.to < MOST_ADJECTIVES && tokens[at] && (tokens[at]!.skipped || adjective(tokens[at]!.word))) at++;
    const noun = tokens[at];
    if (!noun || noun.clause !== hit.clause || !nouns.has(noun.word)) continue;
    hits.push({
      ...hit,
      value: { says: 'part', part: AMOUNTS[hit.value] },
      to: at + 1,
      span: [hit.span[0], noun.span[1]],
    });
  }
  return hits;
}
