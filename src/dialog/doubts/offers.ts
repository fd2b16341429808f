/** Puts into words what an unsure reading offers: of several offers only what they differ in. */
import { labelOf } from '../../answers/index.js';
import { fill, say } from '../../../shared/wording.js';
import { doubtfulPlant } from './doubtful-plant.js';
import { doubtfulRow, type DoubtfulRow } from './doubtful-row.js';
import { contextOf } from '../hear.js';
import { PHOTOGRAPH_PLACE } from '../photographs.js';
import type { ToldPlace } from '../places.js';
import { showBee, showBothScales, showCount, showLine, showPlant } from '../show.js';
import { shownValue } from '../summary.js';
import type { Doubt, Json, Report, Scene, TallyLine } from '../types.js';

type PlantOffered = {
  readonly name: string | null;
  readonly rank: string | null;
  readonly asTyped: string;
  readonly flowers: unknown;
};

/** From so many rows on, a tally is shown with each row on a line of its own. */
const MOST_ROWS_ON_A_LINE = 2;

/** What can be chosen from, in words: the words of its buttons. */
export function shownOffers(doubt: Doubt, report: Report, scene: Scene): string[] {
  const plants = doubtfulPlant(doubt)?.choices;
  if (plants !== undefined) return shownKinds(plants, report, scene);
  const row = doubtfulRow(doubt);
  if (row !== null) return shownParts(row, report, scene);
  return doubt.offers.map((offer) => shownOffer(doubt, offer, scene, report));
}

/** The whole question about them. */
export function offersQuestion(doubt: Doubt, report: Report, scene: Scene): string {
  const { wording } = scene.survey;
  const offers = shownOffers(doubt, report, scene);
  const row = doubtfulRow(doubt);
  if (row !== null) return rowQuestion(row, eitherOf(offers, scene), report, scene);
  const isLong = doubt.field === 'tally' && offers.length > 1;
  const offer = isLong ? numbered(offers) : eitherOf(offers, scene);
  return isLong
    ? say(wording, 'ask-which-tally', { offer })
    : fill(wording, wording.asks[doubt.ask], { offer, typed: doubt.typed }).replace(' \n', '\n');
}

const numbered = (offers: readonly string[]): string => offers.map((offer, at) => `\n${at + 1}. ${offer}`).join('');

/** "a", "a or b", "a, b or c". */
function eitherOf(offers: readonly string[], { survey: { wording } }: Scene): string {
  if (offers.length < 2) return offers[0] ?? '';
  if (offers.length === 2) return say(wording, 'either-or', { one: offers[0]!, other: offers[1]! });
  return say(wording, 'one-of', { some: offers.slice(0, -1).join(', '), last: offers.at(-1)! });
}

/** The kinds that a plant may be, the genus as what it is called where the kind is not known. */
function shownKinds(choices: readonly PlantOffered[], report: Report, scene: Scene): string[] {
  const { survey } = scene;
  const context = contextOf(scene, report);
  const counts = choices.map(({ flowers }) => (flowers === null ? '' : ` ${showCount(flowers as never, survey)}`));
  const isSameCount = counts.every((count) => count === counts[0]);
  const labels = choices.map(({ name, asTyped }) => showPlant({ name, typed: asTyped }, context));
  return choices.map(({ name, rank, asTyped }, at) => {
    const label = rank === 'genus' ? labels[at]! : apart(labels, at, name);
    const isLatin = name !== null && label === name.toLowerCase();
    const shown =
      rank === 'genus' ? say(survey.wording, 'show-kind-open', { plant: isLatin ? asTyped : label }) : label;
    return isSameCount ? shown : `${shown}${counts[at]}`;
  });
}

/** Of two species that are both called "spring beauty" the scientific names tell which. */
const apart = (labels: readonly string[], at: number, name: string | null): string =>
  name !== null && labels.indexOf(labels[at]!) !== labels.lastIndexOf(labels[at]!)
    ? `${labels[at]} (${name})`
    : labels[at]!;

function shownParts({ part, choices }: DoubtfulRow, report: Report, scene: Scene): string[] {
  const { survey } = scene;
  const context = contextOf(scene, report);
  const labels = choices.map(({ plant }) => (plant === null ? '' : labelOf(plant, context)));
  return choices.map((row, at) => {
    if (part === 'count') return String(row.count);
    if (part === 'plant') return apart(labels, at, row.plant);
    if (row.bee === 'Bombus') return say(survey.wording, 'choice-cannot-tell');
    return row.bee === null ? say(survey.wording, 'choice-none') : showBee(row.bee, row.count, survey, context);
  });
}

function rowQuestion({ part, choices }: DoubtfulRow, offer: string, report: Report, scene: Scene): string {
  const { wording } = scene.survey;
  const context = contextOf(scene, report);
  const { count, bee, plant } = choices[0]!;
  const values = {
    offer,
    count,
    bee: bee === null ? '' : showBee(bee, count, scene.survey, context),
    plant: plant === null ? '' : labelOf(plant, context),
    placed: plant !== null && report.plants?.length !== 1,
  };
  const asks = { count: 'ask-which-count', bee: 'ask-which-bee', plant: 'ask-which-plant' } as const;
  return say(wording, asks[part], values);
}

function shownTally(rows: readonly TallyLine[], report: Report, scene: Scene): string {
  const context = contextOf(scene, report);
  const lines = rows.map((row) =>
    showLine(
      { ...row, seenBefore: row.seenBefore ?? 0, withPollen: row.withPollen ?? null },
      report.plants ?? [],
      scene.survey,
      context,
    ),
  );
  return lines.length > MOST_ROWS_ON_A_LINE ? `\n${lines.join('\n')}` : lines.join('; ');
}

/** An offered value in words. */
function shownOffer(doubt: Doubt, offer: Json, scene: Scene, report: Report): string {
  const { survey } = scene;
  const context = contextOf(scene, report);
  if (doubt.field === 'flowers') return showCount(offer as never, survey);
  if (doubt.field === 'total') return String((offer as { value: number }).value);
  if (doubt.field === 'plants') {
    return (offer as unknown as PlantOffered[])
      .map((plant) => {
        const name = showPlant({ name: plant.name, typed: plant.asTyped }, context);
        return plant.flowers === null ? name : `${name} ${showCount(plant.flowers as never, survey)}`;
      })
      .join(', ');
  }
  if (doubt.field === 'tally') return shownTally(offer as unknown as TallyLine[], report, scene);
  if (doubt.field === 'temperature') return showBothScales(offer as { celsius: number }, survey);
  if (doubt.field === 'place') {
    const { latitude, longitude, words } = offer as unknown as ToldPlace;
    if (latitude === null || longitude === null) return words;
    const pair = `${latitude.toFixed(5)}, ${longitude.toFixed(5)}`;
    // of a pair that was typed only the pair is doubtful, not the words beside it
    return doubt.ask === PHOTOGRAPH_PLACE && words !== '' ? `${words} (${pair})` : pair;
  }
  return shownValue(doubt.field, offer, scene);
}
