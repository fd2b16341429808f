/** "The rest is right", "others ok", "that breeze was fine": words that say that nothing else changes. */
import { anyOf, fold } from '../../answers/index.js';
import type { Scene } from '../types.js';

/** The text without them; as it is where there are none. */
export function withoutRest(text: string, { survey }: Scene): string {
  const { putRight, tally, wishes } = survey.words;
  const named = anyOf(tally.restPlants, putRight.theRest, Object.values(wishes.fields).flat());
  const ands = anyOf(tally.ands.filter((word) => /\p{L}/u.test(word)));
  const article = anyOf(putRight.articles);
  const clause = `(?:${ands}\\s+)?(?:${article}\\s+)*${named}(?:\\s+${anyOf(putRight.isAre)})?(?:\\s+${anyOf(putRight.isRight)})`;
  const pattern = new RegExp(`(?<=^|[,.;!\\n]|\\s${ands})\\s*${clause}[\\s.!]*(?=$|[,.;\\n])`, 'gu');
  const folded = fold(text);
  let left = text;
  for (const match of [...folded.matchAll(pattern)].reverse())
    left = left.slice(0, match.index) + left.slice(match.index + match[0].length);
  return left === text ? text : left.replace(/^[\s,;.]+|[\s,;.]+$/g, '');
}
