/**
 * A tally that was offered because one of its rows is doubtful: only that row is asked about and settled. Rows told again
 * in the answer take the place of those offered, and all others stand as told.
 */
import { fold, labelOf, namedIn, readCount, readFields, type Context, type TallyRow } from '../../answers/index.js';
import type { Ask } from '../../../shared/phrases.js';
import { bareChoice, cannotTell, chosenByPlace, chosenByWords } from './choosing.js';
import { contextOf, takeReading, withDoubt } from '../hear.js';
import { changed } from '../thread.js';
import type { Doubt, Json, Report, Scene } from '../types.js';

type Offers = readonly (readonly TallyRow[])[];

const PARTS = ['count', 'bee', 'plant'] as const;

export interface DoubtfulRow {
  /** Its place in each offer. */
  readonly at: number;
  /** The one thing of it that the offers differ in. */
  readonly part: (typeof PARTS)[number];
  /** What it may be, best first; what all offers share of it is in each. */
  readonly choices: readonly TallyRow[];
}

/** Other asks tell of more than what the offers differ in. */
const ABOUT_ONE_ROW: ReadonlySet<Ask> = new Set<Ask>([
  'tally-inexact',
  'tally-bee-shared',
  'tally-plant-shared',
  'tally-unknown-plant',
]);

const offersOf = (doubt: Doubt): Offers => doubt.offers as unknown as Offers;

/** The first row that the offers differ in by one thing; null where they differ by more, or the doubt is no such one. */
export function doubtfulRow(doubt: Doubt): DoubtfulRow | null {
  const offers = offersOf(doubt);
  const [first] = offers;
  if (!ABOUT_ONE_ROW.has(doubt.ask) || first === undefined || offers.length < 2) return null;
  if (offers.some(({ length }) => length !== first.length)) return null;
  const differs = (at: number): (typeof PARTS)[number][] =>
    PARTS.filter((part) => offers.some((offer) => offer[at]![part] !== first[at]![part]));
  const at = first.findIndex((_, index) => differs(index).length > 0);
  const [part, ...more] = at === -1 ? [] : differs(at);
  if (part === undefined || more.length > 0) return null;
  const all = offers.map((offer) => offer[at]!);
  const choices = all.filter((row, index) => all.findIndex((other) => other[part] === row[part]) === index);
  // that nobody could tell is always an answer
  const isOpen = part !== 'bee' || choices.some(({ bee }) => bee === 'Bombus');
  return { at, part, choices: isOpen ? choices : [...choices, { ...choices[0]!, bee: 'Bombus' }] };
}

/** The report with that row, or those told again, settled by the text; null where the text settles none. */
export function settleDoubtfulRow(report: Report, doubt: Doubt, text: string, scene: Scene): Report | null {
  if (doubt.field !== 'tally' || doubt.offers.length === 0) return null;
  const context = contextOf(scene, report);
  const told = toldAgain(doubt, text, context);
  if (told !== null) return withOffers(report, doubt, told, text, scene);
  const doubtful = doubtfulRow(doubt);
  const choice = doubtful === null ? null : chosen(doubtful, text, context);
  if (doubtful === null || choice === null) return null;
  // the other rows may be doubtful too: they are asked about next, beside what was chosen
  const offers = offersOf(doubt);
  const doubted = offers[0]![doubtful.at]![doubtful.part];
  const left = offers
    .filter((offer) => offer[doubtful.at]![doubtful.part] === doubted)
    .map((offer) => offer.map((row, index) => (index === doubtful.at ? choice : row)));
  return withOffers(report, doubt, left, text, scene);
}

/** "Nothing on the dandelions": rows on plants that no offer is about, taken beside the doubt. Null for any other text. */
export function tellsElsewhere(report: Report, doubt: Doubt, text: string, scene: Scene): Report | null {
  if (doubt.field !== 'tally') return null;
  const doubted = new Set(offersOf(doubt).flatMap((offer) => offer.map(({ plant }) => plant)));
  const reading = readFields(text, contextOf(scene, report), ['tally']).fields.tally;
  if (reading?.state !== 'sure' || doubted.size === 0 || doubted.has(null)) return null;
  if (reading.value.some(({ plant }) => plant === null || doubted.has(plant))) return null;
  return takeReading(report, 'tally', reading, text, scene);
}

/** What the text says of the row: by its place among the offers, "can't tell" for the bee, its number or its words. */
function chosen({ part, choices }: DoubtfulRow, text: string, context: Context): TallyRow | null {
  const first = choices[0]!;
  const named = namedIn(text, context);
  // "1 half-black on the shooting star" is no number of the two-spotted
  const isOther = named.bees.some((bee) => bee !== first.bee) || named.plants.some((plant) => plant !== first.plant);
  if (part === 'count' && isOther) return null;
  if (part === 'count') {
    const read = readCount(text, { ...context, of: 'queens' });
    const count = read.state === 'sure' ? read.value.value : 0;
    if (count > 0) return { ...first, count, ...(first.seenBefore === undefined ? {} : { seenBefore: count }) };
  }
  const place = chosenByPlace(text, choices.length, part === 'count', context);
  if (place !== null) return choices[place]!;
  if (part === 'count') return null;
  const names = named[part === 'bee' ? 'bees' : 'plants'];
  const hits = choices.filter((row) => names.includes(row[part] ?? ''));
  const own = choices.map((row) => (row[part] === null ? '' : `${labelOf(row[part], context)} ${row[part]}`));
  const at = hits.length > 0 || names.length > 0 ? null : chosenByWords(text, own);
  const isUnknown = part === 'bee' && cannotTell(text, context);
  const choice = hits.length === 1 ? hits[0] : at !== null ? choices[at] : isUnknown ? choices.at(-1) : undefined;
  if (choice === undefined) return null;
  // "couldn't tell which, on the shooting star"
  const [plant, ...others] = named.plants;
  return choice.plant === null && plant !== undefined && others.length === 0 ? { ...choice, plant } : choice;
}

/** Whether the offers leave open what that row was: they differ in it, or it was all that was asked about. */
function isDoubtful(doubt: Doubt, at: number): boolean {
  const offers = offersOf(doubt);
  const first = offers[0]![at]!;
  if (offers.length > 1) return offers.some((offer) => PARTS.some((part) => offer[at]?.[part] !== first[part]));
  return doubt.ask === 'tally-inexact' || first.bee === 'Bombus';
}

/** The offers with the rows that the text tells again in their places; null where it tells others, or none of the doubtful. */
function toldAgain(doubt: Doubt, text: string, context: Context): Offers | null {
  const offers = offersOf(doubt);
  const [base] = offers;
  if (base === undefined || offers.some(({ length }) => length !== base.length)) return null;
  const reading = readFields(text, context, ['tally']).fields.tally;
  const rows = reading?.state === 'sure' ? reading.value.filter(({ bee }) => bee !== null) : [];
  const placed = new Map<number, TallyRow>();
  for (const row of rows) {
    const free = base.flatMap((known, at) => (placed.has(at) ? [] : [{ known, at }]));
    const isSame = free.find(({ known, at }) => {
      const samePlant = row.plant === null || known.plant === null || row.plant === known.plant;
      const sameBee = offers.some((offer) => offer[at]!.bee === row.bee);
      return samePlant && sameBee;
    });
    const open = free.filter(({ known, at }) => isDoubtful(doubt, at) && known.bee !== null);
    const isInstead =
      row.plant === null && open.length === 1 ? open[0] : open.find(({ known }) => row.plant === known.plant);
    const found = isSame ?? isInstead;
    if (found === undefined) return null;
    // "half-black" counts nothing by itself
    const count = bareChoice(text, context) === fold(row.typed?.bee ?? '') ? found.known.count : row.count;
    placed.set(found.at, { ...found.known, ...row, count, plant: row.plant ?? found.known.plant });
  }
  return [...placed.keys()].some((at) => isDoubtful(doubt, at))
    ? offers.map((offer) => offer.map((row, at) => placed.get(at) ?? row))
    : null;
}

/** What is left to ask about; with one meaning left it is taken. */
function withOffers(report: Report, doubt: Doubt, offers: Offers, text: string, scene: Scene): Report {
  const without = changed(report, { doubts: report.doubts.filter((other) => other !== doubt) });
  const left = offers.filter(
    (offer, index) => offers.findIndex((other) => JSON.stringify(other) === JSON.stringify(offer)) === index,
  );
  if (left.length > 1) return withDoubt(without, { ...doubt, offers: left as unknown as readonly Json[] });
  const taken = takeReading(without, 'tally', { state: 'sure', value: left[0]!, used: [] }, doubt.typed, scene);
  return changed(taken, { tallyTyped: [...taken.tallyTyped, text] });
}
