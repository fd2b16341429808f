/**
 * Reads how many queens of which bee on which plant: "2 bimac and a half-black on the columbine, nothing on the plum".
 * A zero row has no bee; `plant` is null where it was not said and several are watched. A number without any bee is no
 * tally: it is asked for its bees, and `readTotal` keeps it.
 */
import type { Ask } from '../../shared/phrases.js';
import { none, sure, unsure, type Context, type Finder, type Reader, type Reading, type Span } from './reading.js';
import type { FoundNames } from './names/index.js';
import type { Mark, MarkKind } from './tally/mark.js';
import { mayBeNoZero } from './tally/no-zero.js';
import { marksOf } from './tally/marks.js';
import { isUnseen, losesNumbers, marksInPassing } from './tally/passing.js';
import { place } from './tally/placing.js';
import {
  endsOnly,
  isBareNo,
  saysMore,
  withoutDoubtOfAll,
  withNoneButOthers,
  withoutIdleNo,
  withoutIdleSoFar,
  withoutQuestions,
} from './tally/asides.js';
import { articleCounts } from './tally/looking-on.js';
import { saidIn } from './tally/hearing.js';
import { withLooksAsDoubt } from './tally/looks.js';
import { withoutPassersBy } from './tally/passers-by.js';
import { pollenOf, type RowMeant, type TallyMeant } from './tally/meant.js';
import { secondLook } from './tally/second-look.js';
import { settle } from './tally/settle.js';
import { tallyPhrases } from './tally/vocabulary.js';
import { withBothCounted, withoutEmptyWhiles } from './tally/whole.js';
import { fold, joinSpans } from './text.js';

export interface TallyRow {
  readonly count: number;
  /** Accepted name; null in a zero row. */
  readonly bee: string | null;
  /** Accepted name, or words as typed for a plant that no list holds; null where it was not said. */
  readonly plant: string | null;
  readonly doubt?: true;
  /** How many of `count` were counted on another plant before. */
  readonly seenBefore?: number;
  readonly withPollen?: number;
  readonly caste?: 'worker';
  readonly typed?: { readonly bee: string; readonly plant: string | null };
}

/** Longer answers are a note or none at all: sixty lines of a hundred letters. */
const LONGEST = 6000;
/** Meaningful words of a tally, at most; one of twenty rows has some two hundred. */
const MOST_MARKS = 600;
/** Offers more than these are no help to choose from. */
const MOST_OFFERS = 6;

/** Marks that tell of queens, or of none. */
const TELLS: ReadonlySet<MarkKind> = new Set(['bee', 'cannot-tell', 'zero', 'count', 'queens']);

function rowOf(
  row: RowMeant,
  text: string,
  context: Context,
  choice: { bee: number; plant: number; count: number },
): TallyRow {
  const bee = row.bees[choice.bee]?.name ?? row.bees[0]?.name ?? null;
  const count = row.counts[choice.count] ?? row.counts[0] ?? 0;
  const plantTyped = row.plant?.span ? text.slice(...row.plant.span) : null;
  const unknownPlant = context.watched.length === 0 ? plantTyped : null;
  const plant = row.plant?.names[choice.plant]?.name ?? row.plant?.names[0]?.name ?? unknownPlant;
  const withPollen = row.pollen === null ? null : Math.min(pollenOf({ ...row, counts: [count] }), count);
  return {
    count,
    bee,
    plant,
    ...(row.doubt && bee !== null && bee !== 'Bombus' ? { doubt: true as const } : {}),
    ...(row.seenBefore ? { seenBefore: count } : {}),
    ...(withPollen === null ? {} : { withPollen }),
    ...(row.worker ? { caste: 'worker' as const } : {}),
    ...(row.beeSpan ? { typed: { bee: text.slice(...row.beeSpan), plant: plantTyped } } : {}),
  };
}

/** The best meaning first, then each other meaning of one bee, plant or count by itself; the genus last. */
function offersOf(rows: readonly RowMeant[], text: string, context: Context): TallyRow[][] {
  if (rows.some(({ counts }) => counts.length === 0)) return [];
  const first = { bee: 0, plant: 0, count: 0 };
  const all = (changed: RowMeant | null, choice: typeof first): TallyRow[] =>
    rows.map((row) => rowOf(row, text, context, row === changed ? choice : first));
  const offers = [all(null, first)];
  for (const row of rows) {
    row.counts.slice(1).forEach((_, at) => offers.push(all(row, { ...first, count: at + 1 })));
    row.bees.slice(1).forEach((_, at) => offers.push(all(row, { ...first, bee: at + 1 })));
    row.plant?.names.slice(1).forEach((_, at) => offers.push(all(row, { ...first, plant: at + 1 })));
  }
  if (offers.length <= MOST_OFFERS) return offers;
  return [...offers.slice(0, MOST_OFFERS - 1), offers.at(-1)!];
}

interface Heard {
  readonly meant: TallyMeant;
  readonly used: Span[];
  readonly insects: boolean;
}

/** What the marks mean, with the spans that carried meaning. */
function heard(all: readonly Mark[], folded: string, context: Context): Heard {
  const phrases = tallyPhrases(context.words.tally);
  const { tally } = context.words;
  const seen = withoutPassersBy(withoutIdleSoFar(all, folded, phrases.zeroSoFar), folded, tally);
  const marks = secondLook(withLooksAsDoubt(seen, folded, tally), folded, phrases);
  const used = joinSpans(marks.filter(({ kind }) => kind !== 'break' && kind !== 'unknown').map(({ span }) => span));
  const said = withBothCounted(saidIn(marks));
  const lasting = phrases.saysPhases(folded) ? withoutEmptyWhiles(said) : said;
  const moving = {
    returned: phrases.saysReturned(folded),
    toured: phrases.saysToured(folded),
    keptComing: phrases.saysKeptComing(folded),
  };
  const meant = settle(place(lasting), context.watched, moving);
  return { meant, used, insects: marks.some(({ kind }) => kind === 'insect') };
}

export const readTally: Reader<TallyRow[]> = (text, context) => {
  if (text.trim() === '') return none('empty');
  if (text.length > LONGEST) return none('too-long');
  const folded = fold(text);
  const phrases = tallyPhrases(context.words.tally);
  // "which one is the common eastern again"
  if (!/\d/.test(folded) && phrases.asksUs(folded)) return none('tally-not-understood');
  const found = withoutDoubtOfAll(withoutQuestions(marksOf(text, context), folded, phrases.asksUs));
  if (found.length > MOST_MARKS) return none('too-long');
  const notSeen = phrases.notSeen(folded);
  const seen = found.filter((mark, at) => mark.kind === 'break' || !isUnseen(found, at, notSeen));
  const onlyUnseen = !seen.some(({ kind }) => TELLS.has(kind));
  const marks = withoutIdleNo(endsOnly(onlyUnseen ? found : seen, folded), folded);
  // "not sure" says how many of nothing
  if (marks.every(({ kind }) => kind === 'cannot-tell' || kind === 'break' || kind === 'unknown'))
    return none('tally-not-understood');
  const { meant, used, insects } = heard(withNoneButOthers(marks, folded, phrases.saysOnly), folded, context);
  const { rows, beesMissing } = meant;
  const doubts: readonly Ask[] =
    onlyUnseen && seen.length < found.length ? [...meant.doubts, 'tally-unclear'] : meant.doubts;
  if (rows.length === 0) return none(insects ? 'tally-other-insects' : 'tally-not-understood');
  const named = rows.some((row) => row.bees.length > 0 && !(row.bees[0]!.name === 'Bombus' && beesMissing));
  const placed = rows.some((row) => row.plant !== null && row.plant.span !== null);
  // "3", "five of them"; "3 not 2 on the geranium" corrects a number
  const corrects = marks.some(({ kind }) => kind === 'denies') && !marks.some(({ kind }) => kind === 'queens');
  if (beesMissing && !named && (!placed || corrects)) return none('tally-which-bees', used);
  const isNone = rows.every(({ counts }) => counts.every((count) => count === 0));
  const ask = doubts[0] ?? (isNone && mayBeNoZero(folded, context.words) ? 'tally-unclear' : undefined);
  if (ask === undefined)
    return sure(
      rows.map((row) => rowOf(row, text, context, { bee: 0, plant: 0, count: 0 })),
      used,
    );
  return asked(rows, ask, text, context, used);
};

/** Finds a tally told among other things: only what surely speaks of queens. A plural or bare name is asked back. */
export const findTally: Finder<TallyRow[]> = (text, context) => findTallyAmong(text, context);

/** As `findTally`, for a text whose names are known already. */
export function findTallyAmong(text: string, context: Context, found?: FoundNames): readonly Reading<TallyRow[]>[] {
  const folded = fold(text);
  const { saysQueens, saysSeeing, notSeen, asksUs } = tallyPhrases(context.words.tally);
  const all = withoutQuestions(marksOf(text, context, found), folded, asksUs);
  if (all.length > MOST_MARKS) return [];
  const marks = marksInPassing(all, folded, { saysQueens, saysSeeing, notSeen: notSeen(folded) });
  const { meant, used } = heard(marks, folded, context);
  const { rows, doubts, beesMissing } = meant;
  const has = (...kinds: Mark['kind'][]): boolean => marks.some(({ kind }) => kinds.includes(kind));
  if (rows.length === 0 || !has('bee', 'zero', 'cannot-tell', 'queens')) return [];
  // "saw a bee" in a long story tells no count
  if (beesMissing && rows.every((row) => row.bees[0]?.name === 'Bombus') && !has('count')) return [];
  const [ask] = losesNumbers(all, marks, folded) ? [...doubts, 'tally-unclear' as const] : doubts;
  const uncounted = !has('count') && rows.some((row) => row.bees.length > 0);
  const first = { bee: 0, plant: 0, count: 0 };
  if (ask === undefined && !uncounted)
    return [
      sure(
        rows.map((row) => rowOf(row, text, context, first)),
        used,
      ),
    ];
  return [unsure(offersOf(rows, text, context), ask ?? 'tally-inexact', used)];
}

function asked(
  rows: readonly RowMeant[],
  ask: Ask,
  text: string,
  context: Context,
  used: readonly Span[],
): Reading<TallyRow[]> {
  if (ask === 'tally-unknown-guess' && rows.every((row) => row.bees[0]?.name === 'Bombus'))
    return none('tally-unknown-bee', used);
  const offers = offersOf(rows, text, context);
  // "lots of impatiens", "2.5 impatiens"
  return offers.length === 0 ? none(ask, used) : unsure(offers, ask, used);
}

/** Reads how many queens there were in all, where no bee is named: "five of them", "3 queens". */
export const readTotal: Reader<number> = (text, context) => {
  if (text.trim() === '') return none('empty');
  if (text.length > LONGEST) return none('too-long');
  const folded = fold(text);
  const { tally } = context.words;
  const asserted = withoutQuestions(marksOf(text, context), folded, tallyPhrases(tally).asksUs);
  const marks = withoutPassersBy(asserted, folded, tally).filter(
    (mark, at, all) => !(mark.kind === 'count' && mark.count.article) || articleCounts(all, at),
  );
  const counts = marks.flatMap((mark) => (mark.kind === 'count' ? [mark.count] : []));
  const [count, ...others] =
    counts.filter(({ article }) => !article).length > 0 ? counts.filter(({ article }) => !article) : counts;
  if (marks.some(({ kind }) => kind === 'bee' || kind === 'plant') || others.length > 0)
    return none('tally-not-understood');
  if (!count) {
    // "no, that's wrong" is no number
    const zero = marks.some((mark) => mark.kind === 'zero' && !(isBareNo(mark, folded) && saysMore(marks, folded)));
    return zero ? sure(0, [[0, text.length]]) : none('tally-not-understood');
  }
  const used = [count.span];
  const value = count.values[0];
  if (value === undefined) return none('tally-how-many', used);
  return count.exact ? sure(value, used) : unsure([...count.values], 'tally-inexact', used);
};
