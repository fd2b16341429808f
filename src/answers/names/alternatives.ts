/** Species of one genus between which a person cannot choose: "a maple, red or silver", "Salix discolor vs bebbiana". */
import type { Span } from '../reading.js';
import type { Named } from './answer.js';
import type { NameIndex } from './name-index.js';
import type { Taxon } from './taxa.js';
import type { Word } from './tokens.js';
import type { Vocabulary } from './vocabulary.js';

/** The words to choose from: those right beside the "or", and others before commas: "red, silver or sugar". */
function wordsBeside(words: readonly Word[], left: number, right: number, { joining }: Vocabulary): Word[] {
  let after = right;
  while (words[after] && joining.has(words[after]!.plain)) after++;
  let first = left;
  while (first > 0 && words[first]!.gap === 'comma') first--;
  return [...words.slice(first, left + 1), ...words.slice(after, after + 1)];
}

/** The species that a word of the answer singles out: by its epithet, or as "red" of a maple does the red maple. */
function speciesOf(word: Word, heads: readonly string[], genera: ReadonlySet<string>, index: NameIndex): Taxon[] {
  const byEpithet = (index.byEpithet.get(word.plain) ?? []).filter(({ taxon }) => genera.has(taxon.genus));
  const byName = heads
    .flatMap((head) => index.exact.get(word.stem + head) ?? [])
    .filter(({ kind }) => kind === 'common');
  const taxa = [...byEpithet, ...byName].map(({ taxon }) => taxon);
  return taxa.filter(({ rank }) => rank !== 'genus').slice(0, 1);
}

/** The species, two or more, between which the answer leaves the choice; empty where it leaves none. */
export function alternativesIn(
  words: readonly Word[],
  folded: string,
  named: readonly Named[],
  index: NameIndex,
  vocabulary: Vocabulary,
): Taxon[] {
  const genera = new Set(named.flatMap(({ settled }) => settled.taxa.map(({ genus }) => genus)));
  const heads = named.flatMap(({ hit }) => {
    const stems = words.slice(hit.from, hit.to).map(({ stem }) => stem);
    return [stems.join(''), ...stems];
  });
  for (let at = 1; at < words.length; at++) {
    const isWord = vocabulary.choosing.has(words[at]!.plain);
    const isSlash = folded.slice(words[at - 1]!.span[1], words[at]!.span[0]).trim() === '/';
    if (!isWord && !isSlash) continue;
    const offered = wordsBeside(words, at - 1, isWord ? at + 1 : at, vocabulary);
    const found = new Set(offered.flatMap((word) => speciesOf(word, heads, genera, index)));
    if (found.size > 1) return [...found];
  }
  return [];
}

/** Words that may stand between an "or" and what it joins: "or is it the". */
const MOST_TO_CHOICE = 3;

/**
 * Whether an "or" joins a name to words that are another one, which we do not know: "solomon's seal or the false one".
 * `says` tells such a word; an "or" within words of doubt ("or something") joins nothing.
 */
export function leavesChoice(
  words: readonly Word[],
  named: readonly Named[],
  hedges: readonly Span[],
  says: (word: Word) => boolean,
  { choosing }: Vocabulary,
): boolean {
  const isNamed = (at: number): boolean => named.some(({ hit }) => hit.from <= at && at < hit.to);
  return words.some(({ plain, span }, at) => {
    if (!choosing.has(plain) || isNamed(at) || hedges.some(([from, to]) => from <= span[0] && span[1] <= to))
      return false;
    const before = saysOn(words, at - 1, -1, says, isNamed);
    const after = saysOn(words, at + 1, 1, says, isNamed);
    return (before === 'name' && after === 'other') || (before === 'other' && after === 'name');
  });
}

/** What stands next to an "or" on one side: a name, words of another, or nothing that could be chosen. */
function saysOn(
  words: readonly Word[],
  start: number,
  step: 1 | -1,
  says: (word: Word) => boolean,
  isNamed: (at: number) => boolean,
): 'name' | 'other' | null {
  for (let at = start, passed = 0; words[at] && passed < MOST_TO_CHOICE; at += step, passed++) {
    if (isNamed(at)) return 'name';
    if (says(words[at]!)) return 'other';
    const edge = step === 1 ? words[at + 1] : words[at];
    if (edge && edge.gap !== 'none' && edge.gap !== 'comma') return null;
  }
  return null;
}
