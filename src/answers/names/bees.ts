/** Names of bumble bees in the words of a text, and other insects, which are none. */
import type { Span } from '../reading.js';
import { beesOf, plantsOf, type NameIndex, type WithNames } from './index-of-names.js';
import { homeOf, type Home } from './region.js';
import { hitsIn, nearFits, withoutOverlaps, type Hit, type Manner, type SearchIn } from './search.js';
import { editsBetween, SURE_ACROSS_WORDS, sureUpTo } from './similarity.js';
import { OTHER_INSECT } from './taxa.js';
import type { Word } from './tokens.js';
import { vocabularyOf, type Vocabulary } from './vocabulary.js';
import type { SurveySettings } from '../../../shared/survey.js';

export interface BeeContext extends WithNames {
  readonly survey: SurveySettings;
}

export const isInsect = (hit: Hit): boolean => hit.fits.some(({ use }) => use.taxon === OTHER_INSECT);

/** The word before or after, where nothing but a blank or hyphen is between. */
export const wordBefore = (words: readonly Word[], at: number): Word | undefined =>
  words[at]?.gap === 'none' ? words[at - 1] : undefined;
export const wordAfter = (words: readonly Word[], to: number): Word | undefined =>
  words[to]?.gap === 'none' ? words[to] : undefined;

const BUMBLE = { letters: 'bumble', slips: 1 };
const BUMBLEBEE = { letters: 'bumblebee', slips: 2 };

/** "bumbel", "bumblbee" made "bumble", which the names of bees are told by. */
export function withBumble(words: readonly Word[], vocabulary: Vocabulary): Word[] {
  const isSlipOf = (plain: string, known: { letters: string; slips: number }): boolean =>
    editsBetween(plain, known.letters, known.slips) <= known.slips;
  return words.map((word) => {
    if (word.plain.length < 5 || vocabulary.bumblebee.has(word.plain) || vocabulary.isPlain(word.plain)) return word;
    const isBumble = isSlipOf(word.plain, BUMBLE) || isSlipOf(word.plain, BUMBLEBEE);
    return isBumble ? { ...word, plain: BUMBLE.letters, stem: BUMBLE.letters } : word;
  });
}

/** "Bombus", "B.", "Psithyrus" and what thumbs make of the first. */
export function isBeeGenus(word: Word, { beeGenera }: Vocabulary): boolean {
  return beeGenera.has(word.plain) || (word.plain.length >= 5 && editsBetween(word.plain, 'bombus', 1) <= 1);
}

/** Letters from which the beginning of a name is a short form: after "B.", alone as an answer, in running text. */
const SHORTEST = { afterGenus: 1, answer: 3, running: 4 };
/** Fewer letters of a bee of elsewhere say nothing, but after "B.". */
const SHORTEST_FAR = 5;
/** Fewer letters than this are offered, never taken. */
const SHORTEST_FIRM = 3;

/** "B. imp", "bimac", "vag.": words that a scientific name begins with; of one or two letters, an accepted one. */
function shortHits(words: readonly Word[], index: NameIndex, vocabulary: Vocabulary, manner: Manner): Hit[] {
  const hits: Hit[] = [];
  const isOther = ({ plain }: Word): boolean => vocabulary.isPlain(plain) || vocabulary.beeGenera.has(plain);
  for (const [at, word] of words.entries()) {
    if (word.digits || vocabulary.bumblebee.has(word.plain) || vocabulary.aroundBees.has(word.plain)) continue;
    const before = words[at - 1];
    const afterGenus = before !== undefined && word.gap === 'none' && isBeeGenus(before, vocabulary);
    // "B. sand" is a bee, "sand" and "Bombus sand" are not
    if (isOther(word) && !(afterGenus && before.plain === 'b')) continue;
    const least = afterGenus ? SHORTEST.afterGenus : word.dotted ? SHORTEST.answer : SHORTEST[manner];
    if (word.plain.length < least) continue;
    const beginnings =
      word.plain.length > 3 && word.plain.endsWith('s') ? [word.plain, word.plain.slice(0, -1)] : [word.plain];
    const known = index.byBeginning.get(word.plain[0]!) ?? [];
    const begins = known.filter(
      ({ first, last }) => first === last && beginnings.some((beginning) => first.startsWith(beginning)),
    );
    const accepted = begins.filter(({ first, taxon }) => taxon.name.endsWith(` ${first}`));
    const acceptedOnly = word.plain.length < SHORTEST_FIRM || (manner === 'running' && !afterGenus);
    const taxa = new Set((acceptedOnly ? accepted : begins).map(({ taxon }) => taxon));
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
      letters: word.plain.length,
      firm: word.plain.length >= SHORTEST_FIRM,
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
function piecedHits(words: readonly Word[], index: NameIndex, vocabulary: Vocabulary, manner: Manner): Hit[] {
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

/** Letters of a badly misspelled word from which a bee is offered in running text. */
const SHORTEST_OFFERED_IN_RUNNING_TEXT = 8;

/** "centralised" has the stem of "centralis", and is none. */
const isAsListed = ({ plain, stem }: Word): boolean =>
  plain === stem || plain.replace(/e?s$/, '') === stem || !plain.endsWith('ed');

/** What a hit may stand on, in this text: null where its words only describe, or belong to something else. */
function standing(hit: Hit, words: readonly Word[], context: BeeContext, manner: Manner, home: Home): Hit | null {
  const vocabulary = vocabularyOf(context.words.names);
  const { use } = hit.fits[0]!;
  if (hit.exactness === 'near' && manner === 'running' && !hit.firm) {
    if (hit.to - hit.from > 1 || hit.letters < SHORTEST_OFFERED_IN_RUNNING_TEXT) return null;
  }
  const genusBefore = wordBefore(words, hit.from);
  const afterGenus = genusBefore !== undefined && isBeeGenus(genusBefore, vocabulary);
  if (home !== 'local' && !afterGenus && hit.exactness !== 'exact' && manner === 'running') return null;
  if (home !== 'local' && !afterGenus && hit.exactness === 'short' && hit.letters < SHORTEST_FAR) return null;
  if (hit.to - hit.from === 1 && (use.kind === 'short' || use.kind === 'scientific') && !isAsListed(words[hit.from]!))
    return null;
  if (manner === 'running' && use.kind === 'short' && vocabulary.loose.has(words[hit.from]!.plain)) return null;
  if (home !== 'local' && hit.exactness === 'near' && (!hit.firm || use.kind === 'short')) return null;
  if (use.kind === 'insect' || use.kind === 'scientific') return hit;
  const before = wordBefore(words, hit.from);
  const after = wordAfter(words, hit.to);
  const namesBee = after !== undefined && vocabulary.bumblebee.has(after.plain) && !/^bees?$/.test(after.plain);
  const isAround = (word: Word): boolean =>
    word.digits ||
    vocabulary.isPlain(word.plain) ||
    vocabulary.aroundBees.has(word.plain) ||
    vocabulary.bumblebee.has(word.plain) ||
    isBeeGenus(word, vocabulary);
  const describes = (word: Word | undefined): boolean =>
    word !== undefined && vocabulary.describing.has(word.stem) && !vocabulary.bumblebee.has(word.plain);
  const single = hit.to - hit.from === 1;

  if (use.strength === 'describing') {
    let nearest = hit.from - 1;
    while (nearest >= 0 && vocabulary.joining.has(words[nearest]!.plain)) nearest--;
    return namesBee && !describes(words[nearest]) && (before === undefined || isAround(before)) ? hit : null;
  }
  const endsName = (word: Word | undefined): boolean =>
    word === undefined ||
    word.digits ||
    vocabulary.bumblebee.has(word.plain) ||
    vocabulary.aroundBees.has(word.plain) ||
    vocabulary.afterBombus.has(word.plain) ||
    vocabulary.elsewhere.has(word.plain);
  const isFaint = single && use.kind === 'part' && vocabulary.faint.has(words[hit.from]!.stem);
  // "the eastern side", "an American robin"
  if ((use.strength === 'placing' || isFaint) && !endsName(after)) return null;
  if (use.kind === 'part') {
    if ((before && !isAround(before)) || (after && !isAround(after))) return null;
    if (single && vocabulary.faint.has(words[hit.from]!.stem))
      return describes(before) ? null : { ...hit, firm: false };
  }
  // "rusty" is a bee, "rusty colored" is not
  if (
    single &&
    use.kind === 'short' &&
    vocabulary.faint.has(words[hit.from]!.plain) &&
    (describes(before) || describes(after))
  ) {
    return null;
  }
  if (use.allDescribing && !single) {
    const last = words[hit.to - 1]!;
    // "had a yellow band" tells a mark, "a yellow banded" a bee
    if (before && vocabulary.having.has(before.plain) && vocabulary.marks.has(last.plain)) return null;
    if (describes(before) && !namesBee) return { ...hit, firm: false };
  }
  // "heather" and "apple" are plants, but for "heather bumble bee"
  if (single && !namesBee && (use.kind === 'common' || use.kind === 'part')) {
    const asPlant = plantsOf(context).exact.get(words[hit.from]!.stem) ?? [];
    if (asPlant.some(({ kind }) => kind === 'common' || kind === 'genus')) return null;
  }
  if (manner === 'running' && single && use.kind === 'common' && hit.exactness === 'near' && !namesBee) {
    if (hit.letters < SHORTEST_OFFERED_IN_RUNNING_TEXT) return null;
  }
  // "Franklin" and "Hunt" are people and places, but for somebody who says nothing else
  if (single && home !== 'local' && use.kind === 'common' && !namesBee) {
    const says = words.filter((word) => !vocabulary.joining.has(word.plain) && !vocabulary.aroundBees.has(word.plain));
    if (manner === 'running' || says.length > 1 || home === 'foreign') return null;
  }
  return hit;
}

/**
 * Bumble bees and other insects named in the words, left to right, none overlapping. What stands right before another
 * insect ("eastern carpenter") belongs to it.
 */
export function beeHits(words: readonly Word[], context: BeeContext, manner: Manner): Hit[] {
  const vocabulary = vocabularyOf(context.words.names);
  const index = beesOf(context);
  const { joining, bumblebee, aroundBees } = vocabulary;
  const search: SearchIn = {
    index,
    vocabulary,
    manner,
    leftOut: (word) => joining.has(word.plain) || bumblebee.has(word.plain),
    plain: (word) => vocabulary.isPlain(word.plain) || aroundBees.has(word.plain) || isBeeGenus(word, vocabulary),
  };
  const named = hitsIn(words, search);
  const exactAt = new Set(named.filter((hit) => hit.exactness === 'exact').map((hit) => hit.from));
  const short = shortHits(words, index, vocabulary, manner).filter((hit) => !exactAt.has(hit.from));
  const { region } = context.survey;
  const pieced = piecedHits(words, index, vocabulary, manner);
  const standingHits = [...named, ...short, ...pieced].flatMap((hit) => {
    const kept = standing(hit, words, context, manner, homeOf(hit.fits[0]!.use.taxon, region));
    return kept ? [kept] : [];
  });
  const hits = withoutOverlaps(standingHits);
  const insectsFrom = new Set(hits.filter(isInsect).map((hit) => hit.from));
  const belongsToInsect = (hit: Hit): boolean => {
    if (isInsect(hit) || hit.fits[0]!.use.kind === 'scientific') return false;
    return insectsFrom.has(hit.to) && words[hit.to]!.gap === 'none';
  };
  return hits
    .filter((hit) => !belongsToInsect(hit))
    .map((hit) => ({ ...hit, span: spanWithBee(hit, words, vocabulary) }));
}

/** "B." before a name and "bumble bee" after it are part of it. */
function spanWithBee(hit: Hit, words: readonly Word[], vocabulary: Vocabulary): Span {
  let { from, to } = hit;
  for (let word = wordBefore(words, from); word && isBeeGenus(word, vocabulary); word = wordBefore(words, from)) from--;
  for (let word = wordAfter(words, to); word && vocabulary.bumblebee.has(word.plain); word = wordAfter(words, to)) to++;
  return [words[from]!.span[0], words[to - 1]!.span[1]];
}
