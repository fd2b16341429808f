/** Scientific names of plants cut short: "mert. virg.", "M. virginica", "mervir". */
import type { NameIndex, Scientific } from './name-index.js';
import type { Use } from './use.js';
import { isAroundPlants } from './plant-words.js';
import type { Hit, Manner, Near } from './hit.js';
import { nearFits } from './near.js';
import type { Word } from './tokens.js';
import type { Vocabulary } from './vocabulary.js';

/** Letters from which the beginnings of both words of a scientific name are one. */
const SHORTEST_BEGINNING = 3;
/** Letters of an epithet that may be misspelled after the genus's first letter alone. */
const SHORTEST_EPITHET_MISSPELLED = 6;

function shortHit(words: readonly Word[], from: number, to: number, fits: readonly Near[]): Hit[] {
  if (fits.length === 0) return [];
  return [
    {
      from,
      to,
      span: [words[from]!.span[0], words[to - 1]!.span[1]],
      fits,
      exactness: 'short',
      letters: words.slice(from, to).reduce((sum, word) => sum + word.plain.length, 0),
      firm: true,
      watched: false,
    },
  ];
}

const shortFits = (scientific: readonly Scientific[]): Near[] =>
  [...new Set(scientific.map(({ taxon }) => taxon))].map((taxon) => ({
    use: { taxon, kind: 'short', strength: 'strong', place: 0, allDescribing: false },
    cost: 0,
    letters: 0,
    words: 0,
  }));

/** "M. virginica", "M. virginca": the genus by its first letter. */
function initialFits(genus: Word, epithet: Word, index: NameIndex, manner: Manner): Near[] {
  const known = (index.byEpithet.get(epithet.plain) ?? []).filter(({ first }) => first.startsWith(genus.plain));
  if (known.length > 0 || manner === 'running') return shortFits(known);
  if (epithet.plain.length < SHORTEST_EPITHET_MISSPELLED) return [];
  const initial = genus.plain.toUpperCase();
  const isOfGenus = (use: Use): boolean => use.kind === 'epithet' && use.taxon.genus.startsWith(initial);
  const near = nearFits([epithet], epithet.plain, index, isOfGenus);
  return near.map((each) => ({ ...each, use: { ...each.use, kind: 'short' } }));
}

/** Both words in full. */
const wholeFits = (genus: Word, epithet: Word, index: NameIndex): Near[] =>
  shortFits((index.byEpithet.get(epithet.plain) ?? []).filter(({ first }) => first === genus.plain));

/** Surer than the name of a genus that is its second word: "Penst. digitalis". */
const exactly = (hits: readonly Hit[]): Hit[] => hits.map((hit) => ({ ...hit, exactness: 'exact' }));

/** "Mert. virg.": two words that a scientific name's two begin with. */
function beginningFits(genus: Word, epithet: Word, index: NameIndex): Near[] {
  const known = index.byBeginning.get(genus.plain.slice(0, SHORTEST_BEGINNING)) ?? [];
  return shortFits(known.filter(({ first, last }) => first.startsWith(genus.plain) && last.startsWith(epithet.plain)));
}

/** Between the words of a scientific name, in any language. */
const QUALIFIERS: ReadonlySet<string> = new Set(['cf', 'aff', 'nr']);

/** "Penst. digitalis": the dot of a genus cut short ends no sentence, where the epithet is whole. */
function acrossDot(genus: Word, epithet: Word, index: NameIndex): readonly Near[] {
  const isNext = genus.dotted && epithet.span[0] === genus.span[1] + 2;
  if (!isNext || genus.plain.length < SHORTEST_BEGINNING) return [];
  const known = index.byEpithet.get(epithet.plain) ?? [];
  return shortFits(known.filter(({ first }) => first.startsWith(genus.plain)));
}

export function pairHits(words: readonly Word[], index: NameIndex, vocabulary: Vocabulary, manner: Manner): Hit[] {
  const hits: Hit[] = [];
  for (let at = 0; at + 1 < words.length; at++) {
    const [genus, epithet] = [words[at]!, words[at + 1]!];
    const qualified = words[at + 2];
    // "Viola cf. pedata"
    if (QUALIFIERS.has(epithet.plain) && genus.plain.length >= SHORTEST_BEGINNING && qualified?.gap === 'none')
      hits.push(...exactly(shortHit(words, at, at + 3, wholeFits(genus, qualified, index))));
    if (epithet.gap === 'break') hits.push(...exactly(shortHit(words, at, at + 2, acrossDot(genus, epithet, index))));
    if (epithet.gap !== 'none' || epithet.plain.length < SHORTEST_BEGINNING || genus.digits || epithet.digits) continue;
    if (genus.plain.length === 1) {
      hits.push(...shortHit(words, at, at + 2, initialFits(genus, epithet, index, manner)));
    } else if (genus.plain.length >= SHORTEST_BEGINNING) {
      if (isAroundPlants(genus, vocabulary) || isAroundPlants(epithet, vocabulary)) continue;
      hits.push(...shortHit(words, at, at + 2, beginningFits(genus, epithet, index)));
    }
  }
  return hits;
}

/** "mervir": three letters of the genus and three of the species, as botanists mark their plots. */
export function codeHits(words: readonly Word[], index: NameIndex, vocabulary: Vocabulary): Hit[] {
  return words.flatMap((word, at) => {
    if (word.plain.length !== 2 * SHORTEST_BEGINNING || word.digits || isAroundPlants(word, vocabulary)) return [];
    const known = index.byBeginning.get(word.plain.slice(0, SHORTEST_BEGINNING)) ?? [];
    const rest = word.plain.slice(SHORTEST_BEGINNING);
    return shortHit(words, at, at + 1, shortFits(known.filter(({ last }) => last.startsWith(rest))));
  });
}
