/** The plants named in running text, where a list of several must not be read as one. */
import { findNames, findPlants, type FoundName, type FoundNames } from '../names/index.js';
import type { Context } from '../reading.js';
import { madeOnce } from '../text.js';
import { anyOf } from '../any-of.js';
import type { Words } from '../../../shared/words.js';

const joins = madeOnce(
  (words: Words) => new RegExp(`${anyOf(words.tally.ands, words.tally.ors)}|[\\d,;&+/\\n]+`, 'gu'),
);

/** "plum and cherry" is no cherry plum, "butter and eggs" is one plant: parts that name a plant each are plants. */
function parted(folded: string, found: FoundName, context: Context): FoundName[] {
  const [from, to] = found.span;
  const typed = folded.slice(from, to);
  const cuts = [...typed.matchAll(joins(context.words))];
  if (cuts.length === 0) return [found];
  const parts: FoundName[][] = [];
  let start = 0;
  for (const [cutFrom, cutTo] of [
    ...cuts.map((cut) => [cut.index, cut.index + cut[0].length] as const),
    [typed.length, typed.length] as const,
  ]) {
    const part = typed.slice(start, cutFrom);
    const offset = from + start;
    if (part.trim() !== '') {
      const names = findPlants(part, context);
      parts.push(names.map((name) => ({ ...name, span: [name.span[0] + offset, name.span[1] + offset] as const })));
    }
    start = cutTo;
  }
  return parts.every((names) => names.length === 1 && names[0]!.exactness === 'exact') ? parts.flat() : [found];
}

export const plantsSaid = (folded: string, context: Context): FoundName[] =>
  findPlants(folded, context).flatMap((found) => parted(folded, found, context));

/** Bees and plants named in running text, a list of plants taken apart. */
export function namesSaid(folded: string, context: Context): FoundNames {
  const { bees, plants } = findNames(folded, context);
  return { bees, plants: plants.flatMap((found) => parted(folded, found, context)) };
}
