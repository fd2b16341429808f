/** Plants named again in the same words: "Redbud has about 300" in a note that told of the redbud is that one. */
import type { FoundName, FoundNames } from '../names/index.js';

/** Names looked for again, at most; a note has a handful. */
const MOST_NAMES = 30;

const LETTER = /[\p{L}\p{N}]/u;

export function withRepeats(folded: string, { bees, plants }: FoundNames): FoundNames {
  const byWords = new Map<string, FoundName>();
  for (const found of plants) {
    const words = folded.slice(...found.span);
    if (found.clear && found.exactness === 'exact' && byWords.size < MOST_NAMES && !byWords.has(words))
      byWords.set(words, found);
  }
  const taken = new Uint8Array(folded.length);
  for (const { span } of [...bees, ...plants]) taken.fill(1, ...span);
  const again: FoundName[] = [];
  for (const [words, found] of byWords) {
    for (let from = folded.indexOf(words); from !== -1; from = folded.indexOf(words, from + words.length)) {
      const to = from + words.length;
      const whole = !LETTER.test(folded[from - 1] ?? ' ') && !LETTER.test(folded[to] ?? ' ');
      if (whole && taken[from] === 0 && taken[to - 1] === 0) again.push({ ...found, span: [from, to], doubt: false });
    }
  }
  if (again.length === 0) return { bees, plants };
  return { bees, plants: [...plants, ...again].sort((a, b) => a.span[0] - b.span[0]) };
}
