/** Plants being watched, by the beginning of their names beside a count: "col. 1 bimac" where the columbine is watched. */
import type { Words } from '../../../shared/words.js';
import { anyOf } from '../any-of.js';
import { watchedOf, type FoundNames } from '../names/index.js';
import type { Context, Span } from '../reading.js';
import { fold, madeOnce } from '../text.js';

const patterns = madeOnce(({ tally, numbers }: Words) => {
  const number = `(?:\\d|${anyOf(Object.keys(numbers.units), numbers.articles)})`;
  return [
    // "col. 1 bimac", "col: 1", "col - 1"
    new RegExp(`(?<![\\p{L}\\p{M}'])(?<said>\\p{L}{3,}(?!\\p{L})\\.?)\\s{0,3}[:=-]?\\s{0,3}${number}`, 'gu'),
    // "1 bimac on the col."
    new RegExp(`${anyOf(tally.onPlants)}\\s{1,3}(?:the\\s{1,3})?(?<said>\\p{L}{3,}\\.?)(?![\\p{L}\\p{M}'])`, 'gu'),
    // "1 bimac col, 2 bimac dutch": right behind the bee
    /(?<![\p{L}\p{M}'])(?<said>\p{L}{3,})(?=[.,;\n]|$)/gu,
    // "nil GEMA": a code stands anywhere
    /(?<![\p{L}\p{M}'])(?<said>\p{L}{4})(?![\p{L}\p{M}'])/gu,
  ] as const;
});

/** Words of phrases that mean something in a tally. */
const meaningful = madeOnce(
  ({ tally }: Words) =>
    new Set(
      [tally.zero, tally.each, tally.allPlants, tally.allBees, tally.bothBees]
        .flat()
        .flatMap((phrase) => phrase.split(' ')),
    ),
);

/** Shorter endings are of too many names. */
const LEAST_ENDING = 4;

/** "gema" for Geranium maculatum, as botanists shorten it: two letters of the genus and two of the species. */
function codeOf(name: string): string | null {
  const [genus = '', species = ''] = fold(name).split(' ');
  return species.length < 2 ? null : genus.slice(0, 2) + species.slice(0, 2);
}

/** The one watched plant of that code; null where there are several or none. */
function watchedCoded(said: string, { watched }: Context): string | null {
  const coded = watched.filter((name) => codeOf(name) === said);
  return coded.length === 1 ? coded[0]! : null;
}

/**
 * The one watched plant of whose names a word begins with `said`, "daffs" too, or ends with it: the "bells" of bluebells.
 * Null where there are several or none.
 */
function watchedBegunBy(said: string, context: Context): string | null {
  const begun = new Set<string>();
  const beginning = said.length > LEAST_ENDING ? said.replace(/s$/u, '') : said;
  const fits = (word: string): boolean =>
    word.length > said.length &&
    (word.startsWith(beginning) || (said.length > LEAST_ENDING && word.endsWith(beginning)));
  for (const [name, uses] of watchedOf(context).exact)
    if (name.split(' ').some(fits)) for (const { taxon } of uses) begun.add(taxon.name);
  return begun.size === 1 ? [...begun][0]! : null;
}

export function watchedCutShort(
  folded: string,
  context: Context,
  { bees, plants }: FoundNames,
): { readonly name: string; readonly span: Span }[] {
  if (context.watched.length < 2) return [];
  const taken = [...bees, ...plants].map(({ span }) => span);
  const behindBee = (from: number): boolean => bees.some(({ span }) => span[1] < from && from - span[1] <= 2);
  return patterns(context.words).flatMap((pattern, at) =>
    [...folded.matchAll(pattern)].flatMap(({ index, 0: typed, groups }) => {
      const said = groups!['said']!;
      const from = index + typed.lastIndexOf(said);
      const span: Span = [from, from + said.length];
      // "all 6 were impatiens" tells of no allium
      if ((at === 2 && !behindBee(from)) || meaningful(context.words).has(said)) return [];
      if (taken.some(([begin, end]) => begin < span[1] && from < end)) return [];
      const name = at === 3 ? watchedCoded(said, context) : watchedBegunBy(said.replace('.', ''), context);
      return name === null ? [] : [{ name, span }];
    }),
  );
}
