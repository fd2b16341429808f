/** Reads which bumble bee somebody saw: "Bombus impatiens", "half black", "B. bimac?", "couldn't tell". */
import {
  afterCorrection,
  agreed,
  beeHits,
  beesOf,
  besideSmallTalk,
  BOMBUS,
  genusMentions,
  type Hit,
  isAroundBees,
  isBeeGenus,
  isDoubted,
  isInsect,
  isNegated,
  isTalk,
  leavesChoice,
  LONGEST_ANSWER,
  type Named,
  offering,
  settleBee,
  type Taxon,
  usedBy,
  vocabularyOf,
  withBumble,
  withInitials,
  type Word,
  wordAfter,
  wordBefore,
  wordsOf,
} from './names/index.js';
import { none, sure, unsure, type Context, type Reader, type Reading, type Span } from './reading.js';
import { fold } from './text.js';

export interface BeeName {
  /** Accepted name; "Bombus", rank genus, where they could not tell. */
  readonly name: string;
  readonly rank: string;
  /** They hedged. */
  readonly doubt?: true;
}

const valueOf = ({ name, rank }: Taxon, doubt: boolean): BeeName => ({
  name,
  rank: rank ?? 'species',
  ...(doubt ? { doubt: true as const } : {}),
});

/**
 * One bumble bee, by any name. A name that fits several is unsure with all of them offered, "Bombus" last; another
 * insect, a description or a bumble bee that is not on the list is not understood.
 */
export const readBee: Reader<BeeName> = (text, context) => {
  const whole = fold(text);
  if (whole.trim() === '') return none('empty');
  if (whole.length > LONGEST_ANSWER) return none('too-long');
  const folded = besideSmallTalk(whole, context);
  const { names } = context.words;
  const vocabulary = vocabularyOf(context.words);
  const words = withInitials(withBumble(wordsOf(folded, names), vocabulary), names, vocabulary, beesOf(context));
  if (words.length === 0 || isTalk(folded, words, context)) return none('bee-no-name');

  const index = beesOf(context);
  const { region } = context.survey;
  const hits = beeHits(words, context, 'answer').filter((hit) => !isNegated(hit, words, context));
  const insects = hits.filter(isInsect);
  const all = hits
    .filter((hit) => !isInsect(hit))
    .map((hit): Named => ({ hit, settled: settleBee(hit, region, index) }));
  const named = besideMarks(afterCorrection(folded, all, context), words, context);
  if (named.length === 0) {
    if (insects.length > 0)
      return none(
        'bee-other-insect',
        insects.map(({ span }) => span),
      );
    return genusAlone(folded, words, context);
  }

  const hedges = isDoubted(folded, named, context);
  const used = usedBy(named, hedges);
  const offer = (taxa: readonly Taxon[]): BeeName[] =>
    offering(taxa, index).map((taxon) => valueOf(taxon, hedges.length > 0));
  const meant = agreed(named);
  if (!meant) return unsure(offer(named.flatMap(({ settled }) => settled.taxa)), 'bee-several', used);
  const isOther = insects.some((insect) => !isBesides(insect, named, words, context));
  if (isOther || leavesChoice(words, named, hedges, beeSays(context), vocabularyOf(context.words)))
    return unsure(offer(meant.taxa), 'bee-several', used);
  if (meant.clear) return sure(valueOf(meant.taxa[0]!, hedges.length > 0), used);
  const offered = offer(meant.taxa);
  return unsure(offered, offered.length > 2 ? 'bee-shared' : 'bee-near', used);
};

/** Without marks told besides a name: "impatiens, one yellow band and the rest black", "brown belted, short hair". */
function besideMarks(named: readonly Named[], words: readonly Word[], context: Context): readonly Named[] {
  const { marks } = vocabularyOf(context.words);
  const isMark = ({ hit, settled }: Named): boolean =>
    hit.fits.every(({ use }) => use.allDescribing) && (!settled.clear || marks.has(words[hit.to - 1]!.plain));
  const says = named.filter((each) => !isMark(each));
  return says.some(({ hit }) => hit.firm && hit.exactness !== 'part') ? says : named;
}

/** "impatiens. Also saw a honey bee": an insect told after the bee and besides it. */
function isBesides(insect: Hit, named: readonly Named[], words: readonly Word[], context: Context): boolean {
  const { adding, choosing } = vocabularyOf(context.words);
  const before = named.filter(({ hit }) => hit.to <= insect.from).at(-1);
  if (!before) return false;
  const between = words.slice(before.hit.to, insect.from);
  return between.some(({ plain }) => adding.has(plain)) && !words.some(({ plain }) => choosing.has(plain));
}

/** A word that, to choose from, is another bee: the "spotted" of "spotted or eastern". */
function beeSays(context: Context): (word: Word) => boolean {
  const vocabulary = vocabularyOf(context.words);
  return (word) => vocabulary.describing.has(word.stem) || !isAroundBees(word, vocabulary);
}

/** "unknown bumblebee", "no idea", "Bombus sp."; not "Bombus robustus", which no list holds, nor "yellow bumblebee-ish thing". */
function genusAlone(folded: string, words: readonly Word[], context: Context): Reading<BeeName> {
  const mentions = genusMentions(folded, words, context);
  const spans = mentions.map(({ span }) => span);
  if (mentions.some(({ exactness }) => exactness === 'unknown')) return sure(valueOf(BOMBUS, false), spans);
  if (mentions.length === 0) return none('bee-no-name');

  const stranger = strangerBeside(words, context);
  if (stranger) return none('bee-not-listed', spans);
  const { describing } = vocabularyOf(context.words);
  if (words.some((word) => describing.has(word.stem))) return none('bee-no-name', spans);
  if (negatedMention(words, context)) return none('bee-no-name', spans);
  const hedged = isDoubted(folded, [], context);
  return sure(
    valueOf(BOMBUS, hedged.length > 0),
    [...spans, ...hedged].sort((a, b) => a[0] - b[0]),
  );
}

const isBeeNoun = (word: Word, context: Context): boolean => vocabularyOf(context.words).bumblebee.has(word.plain);

/** A word that says more right after "Bombus" or right before "bumble bee": a name that the list does not hold. */
function strangerBeside(words: readonly Word[], context: Context): Span | null {
  const vocabulary = vocabularyOf(context.words);
  const mayFollow = (word: Word): boolean =>
    word.digits ||
    vocabulary.afterBombus.has(word.plain) ||
    vocabulary.aroundBees.has(word.plain) ||
    isBeeNoun(word, context) ||
    isBeeGenus(word, vocabulary);
  const mayLead = (word: Word): boolean =>
    word.digits ||
    vocabulary.beforeBumblebee.has(word.plain) ||
    vocabulary.describing.has(word.stem) ||
    isBeeGenus(word, vocabulary);
  for (const [at, word] of words.entries()) {
    const after = wordAfter(words, at + 1);
    const before = wordBefore(words, at);
    if (isBeeGenus(word, vocabulary) && after && !mayFollow(after)) return after.span;
    if (isBeeNoun(word, context) && before && !isBeeNoun(before, context) && !mayLead(before)) return before.span;
  }
  return null;
}

/** "not a bumble bee", "no bumblebees". */
function negatedMention(words: readonly Word[], context: Context): boolean {
  const { negating, joining } = vocabularyOf(context.words);
  return words.some((word, at) => {
    if (!isBeeNoun(word, context)) return false;
    const before = words.slice(Math.max(0, at - 3), at).map(({ plain }) => plain);
    return before.some(
      (plain, place) =>
        (negating.has(plain) || plain === 'no' || plain === 'none') &&
        before.slice(place + 1).every((each) => joining.has(each) || each === 'bumble'),
    );
  });
}
