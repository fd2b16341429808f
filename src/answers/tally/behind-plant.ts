/** What is said behind a plant of the row before it. */
import type { Head } from './heads.js';
import type { RowSaid, Said } from './said.js';

/**
 * What stands right behind a plant and belongs to the row before it: the count of "bimac on phlox 2, imp on plum 1", the
 * bee of "2 on the phlox (bimac)" and "one on the phlox, an impatiens". Gives the heads that are left.
 */
export function behindPlant(heads: readonly Head[], said: Said[], plantFollows: boolean): readonly Head[] {
  const [first, second, third] = heads;
  const before = said.at(-2);
  if (!first || said.at(-1)?.kind !== 'plants' || before?.kind !== 'row' || before.role !== 'new') return heads;
  // "2 on the phlox (bimac, imp)": one of each
  const end = heads.findIndex(({ bracketed }) => !bracketed);
  const inBracket = heads.slice(0, end === -1 ? undefined : end);
  const oneOfEach = inBracket.every(({ type, orBefore }) => type === 'bee' && !orBefore);
  if (oneOfEach && inBracket.length > 1 && before.count?.values[0] === inBracket.length) return heads;
  if (before.bee === null && before.count !== null) {
    const article = first.type === 'count' && first.count?.article === true && second?.type === 'bee' ? second : null;
    const named = first.type === 'bee' ? first : article;
    const next = named === first ? second : third;
    const alone = named !== null && (next?.type !== 'count' || next.gap !== null);
    // "2 on phlox and 1 on plum, all bimacs" is said of both
    const ofAll =
      first.all &&
      first.gap === 'comma' &&
      said.some((item) => item !== before && item.kind === 'row' && item.bee === null);
    // "2 on phlox, both bimacs, and 1 on plum"
    const ofRow = first.all && second?.type === 'count' && second.gap !== null;
    // "1 imp on the chives, 2 on the dandelion also imp"
    const lastNamed = said.findLast((item) => item.kind === 'row' && item.bee !== null);
    const repeats =
      first.gap === 'and' &&
      second === undefined &&
      lastNamed?.kind === 'row' &&
      lastNamed.bee?.names[0]?.name === first.bee?.names[0]?.name;
    const apart = repeats || first.gap === 'open' || (first.gap === 'comma' && (!plantFollows || ofRow));
    if (!named?.bee || !alone || !apart || ofAll || (article && before.count.values[0] !== 1)) return heads;
    const behind = heads.slice(named === first ? 1 : 2);
    // "1 on the phlox, either impatiens or bimaculatus"
    const others = behind.slice(
      0,
      Math.max(
        0,
        behind.findIndex(({ orBefore, bee }) => !orBefore || bee === null),
      ),
    );
    const either = behind.every(({ orBefore, bee }) => orBefore && bee !== null) ? behind : others;
    const orBees = either.flatMap(({ bee }) => bee ?? []);
    said[said.length - 2] = { ...before, bee: named.bee, doubt: before.doubt || named.doubt, orBees };
    return behind.slice(either.length);
  }
  // "… 2 on the dandelion, also red belted"
  const again =
    first.type === 'bee' &&
    before.bee !== null &&
    before.count !== null &&
    first.bee?.names[0]?.name === before.bee.names[0]?.name &&
    !first.plural &&
    second === undefined;
  if (again && !plantFollows) {
    // "… 2 vagans on the lilac, the vagans were workers"
    if (first.worker) said[said.length - 2] = { ...before, worker: true };
    return [];
  }
  const counts =
    first.type === 'count' &&
    (first.gap === null || first.gap === 'open') &&
    first.count?.article === false &&
    first.bee === null &&
    !first.queens &&
    before.bee !== null &&
    before.count === null &&
    (second === undefined || (second.gap !== null && second.gap !== 'open' && second.gap !== 'dash'));
  if (!counts) return heads;
  said[said.length - 2] = { ...before, count: first.count };
  return heads.slice(1);
}

/** What is said of queens after their plant ("2 imp on phlox, both with pollen") goes to the last row. */
export function changeLastRow(said: Said[], change: Partial<RowSaid>): void {
  const at = said.findLastIndex((item) => item.kind === 'row' && item.role !== 'zero');
  const row = said[at];
  if (row?.kind === 'row') said[at] = { ...row, ...change };
}
