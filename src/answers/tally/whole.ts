/** What is said of the watch as a whole: "both were impatiens" without a count, "nothing at first". */
import { headOf } from './heads.js';
import { row } from './pairing.js';
import type { Said } from './said.js';

/** "Both were impatiens" counts two where nothing else is counted. */
export function withBothCounted(said: readonly Said[]): readonly Said[] {
  const counted = said.some((item) => item.kind === 'row' && item.role !== 'zero');
  if (counted) return said;
  return said.map((item): Said => {
    if (item.kind !== 'all-bees' || item.number === null) return item;
    const count = { values: [item.number], exact: true, article: false, span: item.span };
    return row({ ...headOf('bee', item.span), bee: item.bee, doubt: item.bee.doubt, count }, null, {});
  });
}

/** "Nothing for ten minutes, then 2 imps on the plum": a nothing that did not last is none of the tally's. */
export function withoutEmptyWhiles(said: readonly Said[]): readonly Said[] {
  return said.filter((item, at) => {
    if (item.kind !== 'row' || item.role !== 'zero' || item.bee !== null) return true;
    const next = said.slice(at + 1).find(({ kind }) => kind !== 'all-bees');
    const previous = said[at - 1];
    const onItsPlant = previous?.kind === 'plants' && previous.sign !== null;
    return onItsPlant || next?.kind !== 'row' || next.role === 'zero';
  });
}
