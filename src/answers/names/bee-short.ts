/** Names of bees cut short ("B. imp") or taken to pieces ("bombus in patience"). */
import type { Span } from '../reading.js';
import { isBeeGenus } from './bee-words.js';
import type { NameIndex } from './name-index.js';
import type { Hit, Manner } from './hit.js';
import { nearFits } from './near.js';
import { SURE_ACROSS_WORDS, sureUpTo } from './similarity.js';
import { wordBefore, type Word } from './tokens.js';
import type { Vocabulary } from './vocabulary.js';

/** Letters from which the beginning of a name is a short form: after "B.", alone as an answer, in running text, "gri 1". */
const SHORTEST = { afterGenus: 1, answer: 3, running: 4, counted: 3 };
/** Fewer letters than this are offered, never taken. */
const SHORTEST_FIRM = 3;
/** Fewer letters begin no former name, but after "B.": "dis" alone is rather a slip than Psithyrus distinctus. */
const SHORTEST_FORMER = 4;

/** "B. imp", "bimac", "vag.": words that a scientific name begins with; of one or two letters, an accepted one. */
export function shortHits(words: readonly Word[], index: NameIndex, vocabulary: Vocabulary, manner: Manner): Hit[] {
  const hits: Hit[] = [];
  const isOther = ({ plain }: Word): boolean => vocabulary.isPlain(plain) || vocabulary.beeGenera.has(plain);
  for (const [at, word] of words.entries()) {
    const { plain } = word;
    if (word.digits || vocabulary.bumblebee.has(plain) || vocabulary.aroundBees.has(plain)) continue;
    const before = wordBefore(words, at);
    const afterGenus = before !== undefined && isBeeGenus(before, vocabulary);
    // "B. sand" is a bee, "sand" and "Bombus sand" are not
    if (isOther(word) && !(afterGenus && before.plain === 'b')) continue;
    const counted = wordBefore(words, at)?.digits === true || words[at + 1]?.digits === true;
    const ofManner = counted ? SHORTEST.counted : SHORTEST[manner];
    const least = afterGenus ? SHORTEST.afterGenus : word.dotted ? SHORTEST.answer : ofManner;
    if (plain.length < least) continue;
    const beginnings = plain.length > 3 && plain.endsWith('s') ? [plain, plain.slice(0, -1)] : [plain];
    const begins = (index.byBeginning.get(plain[0]!) ?? []).filter(
      ({ first, last }) => first === last && beginnings.some((beginning) => first.startsWith(beginning)),
    );
    const acceptedOnly =
      plain.length < SHORTEST_FIRM || (!afterGenus && (manner === 'running' || plain.length < SHORTEST_FORMER));
    const meant = acceptedOnly ? begins.filter(({ first, taxon }) => taxon.name.endsWith(` ${first}`)) : begins;
    const taxa = new Set(meant.map(({ taxon }) => taxon));
    if (taxa.size === 0) continue;
    hits.push({
      from: at,
      to: at + 1,
      span: word.span,
      fits: [...taxa].map((taxon) => ({
        use: { taxon, kind: 'short', strength: 'strong', place: 0, allDescribing: false },
        cost: 0,
        letters: 0,
        words: 0,
      })),
      exactness: 'short',
      letters: plain.length,
      firm: plain.length >= SHORTEST_FIRM,
      watched: false,
    });
  }
  return hits;
}

/** Words into which voice typing takes one species name apart, at most: "bi mack u lay tus". */
const MOST_PIECES = 5;
const SHORTEST_PIECED = 5;
const LONGEST_PIECED = 20;

/**
 * What follows "Bombus" is a species, though each word of it may be ordinary: "bombus in patience", "bombus vegans";
 * so is an answer that sounds like one as a whole: "in patients".
 */
export function piecedHits(words: readonly Word[], index: NameIndex, vocabulary: Vocabulary, manner: Manner): Hit[] {
  const hits: Hit[] = [];
  const read = (from: number, to: number): void => {
    const pieces = words.slice(from, to);
    const whole = pieces.map(({ plain }) => plain).join('');
    if (whole.length < SHORTEST_PIECED || whole.length > LONGEST_PIECED) return;
    const fits = nearFits([], whole, index, ({ kind }) => kind === 'scientific');
    const nearest = fits[0];
    if (!nearest) return;
    const { cost } = nearest;
    const upTo = sureUpTo(Math.min(whole.length, nearest.letters));
    const firm = cost <= (pieces.length === 1 ? upTo : Math.min(upTo, SURE_ACROSS_WORDS));
    const span: Span = [pieces[0]!.span[0], pieces.at(-1)!.span[1]];
    const exactness = cost === 0 ? 'exact' : 'near';
    if (from > 0 || firm) hits.push({ from, to, span, fits, exactness, letters: whole.length, firm, watched: false });
  };
  const goesOn = (at: number): boolean => words[at]?.gap === 'none' && !words[at].digits;
  for (const [at, word] of words.entries()) {
    if (word.plain.length < 5 || !isBeeGenus(word, vocabulary)) continue;
    for (let to = at + 2; to <= at + 1 + MOST_PIECES && goesOn(to - 1); to++) read(at + 1, to);
  }
  const several = words.length > 1 && words.length <= MOST_PIECES;
  if (manner === 'answer' && several && words.every((_, at) => at === 0 || goesOn(at))) read(0, words.length);
  return hits;
}
