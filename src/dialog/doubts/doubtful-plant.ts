/**
 * One plant of several whose name fits more than one: only that plant is settled by the answer. It keeps its count, and the
 * others stay as told.
 */
import { labelOf, namedIn, readPlants, type Context, type PlantTold } from '../../answers/index.js';
import { cannotTell, chosenByPlace, chosenByWords } from './choosing.js';
import { addPlants } from '../fields.js';
import { contextOf, plantOf, withDoubt } from '../hear.js';
import { changed } from '../thread.js';
import type { Doubt, Json, Report, Scene } from '../types.js';

type Offers = readonly (readonly PlantTold[])[];

interface Doubtful {
  /** Its place in each offer. */
  readonly at: number;
  /** What it may be, the genus last. */
  readonly choices: readonly PlantTold[];
  readonly offers: Offers;
}

/** The first plant that the offers differ in; null where the doubt is about something else. */
export function doubtfulPlant(doubt: Doubt): Doubtful | null {
  if (doubt.field !== 'plants' || doubt.offers.length < 2) return null;
  const offers = doubt.offers as unknown as Offers;
  const [first] = offers;
  if (first === undefined || offers.some(({ length }) => length !== first.length)) return null;
  const at = first.findIndex((plant, index) => offers.some((offer) => offer[index]!.name !== plant.name));
  if (at === -1) return null;
  const all = offers.map((offer) => offer[at]!);
  const choices = all.filter((plant, index) => all.findIndex(({ name }) => name === plant.name) === index);
  return { at, choices, offers };
}

/** The report with that plant settled by the text; null where the text names none of what it may be. */
export function settleDoubtfulPlant(report: Report, doubt: Doubt, text: string, scene: Scene): Report | null {
  const doubtful = doubtfulPlant(doubt);
  if (doubtful === null) return null;
  const context = contextOf(scene, report);
  const plants = plantsTold(doubtful, text, context);
  const choice = chosen(doubtful, plants, text, context);
  if (choice !== null) {
    const { asTyped, flowers, flowersTyped } = doubtful.choices[0]!;
    const next = withChoice(report, doubt, doubtful, { ...choice, asTyped, flowers, flowersTyped });
    const counts = plants.filter(({ name, flowers: count }) => name !== choice.name || count !== null);
    const added = next.plants === null ? next : addPlants(next, counts.map(plantOf));
    return changed(added, { plantsTyped: [...added.plantsTyped, text] });
  }
  const [first] = doubtful.offers;
  const others = first!.filter((_, index) => index !== doubtful.at);
  const isWholeList = others.every(({ name }) => plants.some((plant) => plant.name === name));
  // "no, it was a violet": the plant it was; all told again are read as a whole
  const [only, ...more] = plants;
  if (only === undefined || more.length > 0 || (isWholeList && others.length > 0)) return null;
  if (others.some(({ name }) => name === only.name)) return null;
  const { flowers, flowersTyped } = first![doubtful.at]!;
  const right = only.flowers === null ? { ...only, flowers, flowersTyped } : only;
  const next = withChoice(report, doubt, doubtful, right);
  return changed(next, { plantsTyped: [...next.plantsTyped, text] });
}

/** The plants that the text names; "trout lily" once more is the genus, which was offered by that name. */
function plantsTold({ choices }: Doubtful, text: string, context: Context): readonly PlantTold[] {
  const told = readPlants(text, context);
  if (told.state === 'sure') return told.value.filter(({ name }) => name !== null);
  if (told.state === 'none' || told.offer.length < 2) return [];
  const isChoice = ({ name }: PlantTold): boolean => choices.some((choice) => choice.name === name);
  const isSameAgain = told.offer.every((offer) => offer.filter(isChoice).length === 1);
  const again = told.offer.find((offer) => offer.some((plant) => isChoice(plant) && plant.rank === 'genus'));
  if (!isSameAgain || again === undefined) return [];
  // the "one" of "puccoon, no idea which one" counts nothing
  const counts = /\d/.test(text) || !cannotTell(text, context);
  return counts ? again : again.map((plant) => ({ ...plant, flowers: null }));
}

/** That plant in the place of the doubtful one; another name that is doubtful too is asked next. */
function withChoice(report: Report, doubt: Doubt, { at, offers }: Doubtful, choice: PlantTold): Report {
  const without = changed(report, { doubts: report.doubts.filter((other) => other !== doubt) });
  const doubted = offers[0]![at]!.name;
  const left = offers
    .filter((offer) => offer[at]!.name === doubted)
    .map((offer) => offer.map((plant, index) => (index === at ? choice : plant)));
  if (left.length > 1) return withDoubt(without, { ...doubt, offers: left as unknown as readonly Json[] });
  const typed = changed(without, { plantsTyped: [...without.plantsTyped, doubt.typed], plantsOpen: false });
  return addPlants(typed, left[0]!.map(plantOf));
}

/** What the text says it is: by its place among the offers, "can't tell" for the genus, its name, or a part of that. */
function chosen({ choices }: Doubtful, plants: readonly PlantTold[], text: string, context: Context): PlantTold | null {
  const place = chosenByPlace(text, choices.length, false, context);
  if (place !== null) return choices[place]!;
  const named = choices.filter(({ name }) => plants.some((plant) => plant.name === name));
  if (named.length > 0) return named.length === 1 ? named[0]! : null;
  // a plant that it is not was named
  if (namedIn(text, context).plants.some((name) => choices.every((choice) => choice.name !== name))) return null;
  const own = choices.map(({ name }) => `${labelOf(name ?? '', context)} ${name ?? ''}`);
  const at = chosenByWords(text, own);
  if (at !== null) return choices[at]!;
  return cannotTell(text, context) ? (choices.find(({ rank }) => rank === 'genus') ?? null) : null;
}
