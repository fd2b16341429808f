/** A plant told in full and called by the end of its name later: the "betony" of a note that told of wood betony. */
import type { FoundName } from '../names/index.js';

/** `plants` with each name that ends an earlier, longer one of `told` made that one. Both are of the folded text. */
export function calledAgain(
  folded: string,
  plants: readonly FoundName[],
  told: readonly FoundName[],
): readonly FoundName[] {
  const typed = ({ span }: FoundName): string => folded.slice(...span);
  return plants.map((found) => {
    const first = told.find(
      (other) => other.clear && other.span[1] <= found.span[0] && typed(other).endsWith(` ${typed(found)}`),
    );
    return first === undefined ? found : { ...found, names: first.names, clear: true };
  });
}
