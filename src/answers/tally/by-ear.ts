/** Numbers that are not written as numbers: "to impatiens" as a phone heard it, "impatiens |||" in strokes. */
import type { Context } from '../reading.js';
import type { CountAt } from './counts.js';
import type { Token } from './lexicon.js';

/** "to impatiens" at the head of a clause, with no count behind the bee: the phone heard "two". */
export function isNumberByEar(
  tokens: readonly Token[],
  at: number,
  to: number,
  {
    beesFrom,
    counts,
    context,
  }: { beesFrom: ReadonlySet<number>; counts: ReadonlyMap<number, CountAt>; context: Context },
): boolean {
  const bee = tokens[to];
  if (!bee || !beesFrom.has(bee.span[0])) return false;
  const behind = tokens[to + 1];
  if (counts.has(to + 1) || behind?.text === ':' || behind?.text === '=' || behind?.text === '-') return false;
  const before = tokens[at - 1];
  const { ands, seeing } = context.words.tally;
  return (
    !before || (!before.isWord && before.text !== '') || ands.includes(before.text) || seeing.includes(before.text)
  );
}

/** How many strokes a name is tallied with: "impatiens |||", "bimac II". */
export function strokesAt(
  folded: string,
  token: Token,
  nameEnds: ReadonlySet<number>,
  beesFrom: ReadonlySet<number>,
): number | null {
  const strokes = /^(?:\|{2,9}|i{2,4})(?![\p{L}\p{N}])/u.exec(folded.slice(token.span[0], token.span[0] + 10))?.[0];
  if (strokes === undefined) return null;
  const before = folded
    .slice(0, token.span[0])
    .trimEnd()
    .replace(/[:=-]$/, '')
    .trimEnd().length;
  const behind = token.span[0] + strokes.length;
  const next = behind + (/^\s*/.exec(folded.slice(behind))?.[0].length ?? 0);
  return nameEnds.has(before) || beesFrom.has(next) ? strokes.length : null;
}
