/**
 * Buttons where an answer is usually one of a few. What a press says is a plain text, read like any other; a dialog's
 * question that may be skipped has a button for that too.
 */
import { labelOf, namedIn } from '../answers/index.js';
import { say } from '../../shared/wording.js';
import { plantKey, queensOf } from './fields.js';
import { contextOf } from './hear.js';
import { beeWords, plantsInWords, usualBees } from './live/index.js';
import type { Report, Scene } from './types.js';

/** More than eight are read like a list, and the question above them is gone from the screen. */
const MOST_CHOICES = 8;
const MOST_PLACES = 4;
/** From calm to a moderate breeze: in more wind hardly anybody watches. */
const USUAL_WINDS = 5;

/** Of a question whose fields these are still to be told, as far as they are asked for; the first one's come. */
export function choicesOf(fields: readonly string[], report: Report, scene: Scene): string[] {
  const { survey } = scene;
  const maySkip = fields.some((field) => survey.dialog.fields[field]?.skippable === true);
  return [...choicesOfField(fields[0], report, scene), ...(maySkip ? [say(survey.wording, 'choice-skip')] : [])];
}

function choicesOfField(field: string | undefined, report: Report, scene: Scene): string[] {
  const { survey, history } = scene;
  const { wording } = survey;
  switch (field) {
    case 'sky':
      return Object.values(wording.labels.clouds);
    case 'wind':
      return wording.labels.winds.slice(0, USUAL_WINDS);
    case 'private':
      return [say(wording, 'choice-yes'), say(wording, 'choice-no')];
    case 'tally':
      return [say(wording, 'choice-none'), ...oneQueenEach((report.plants ?? []).map(plantKey), report, scene)];
    case 'place':
      return history.places.flatMap(({ words }) => (words === '' ? [] : [words])).slice(0, MOST_PLACES);
    default:
      return [];
  }
}

/** What may be on plants of which nothing is told yet. */
export const choicesOfRest = (plants: readonly string[], report: Report, scene: Scene): string[] => [
  say(scene.survey.wording, 'choice-none'),
  ...oneQueenEach(plants, report, scene),
];

/** Which bees the queens are that are left of a number: all of them one kind, usually. */
export function choicesOfBees(report: Report, scene: Scene): string[] {
  const { wording } = scene.survey;
  const left = (report.total ?? 0) - queensOf(report.tally ?? []);
  const bees = beesNamed(scene).filter((bee) => bee !== GENUS);
  return [...bees.slice(0, MOST_CHOICES - 1), GENUS].map((bee) =>
    say(wording, 'choice-queens', { count: left, bee: beeAsRead(bee, report, scene), placed: false, plant: '' }),
  );
}

/** A queen of no known kind. */
const GENUS = 'Bombus';

/** Bees that this observer named in earlier watches, the most usual first. */
const beesNamed = ({ history }: Scene): string[] => usualBees(history.lastWatches);

/** As short as it may be and still be read as that bee: one from elsewhere needs its whole name. */
function beeAsRead(bee: string, report: Report, scene: Scene): string {
  const context = contextOf(scene, report);
  const short = beeWords(bee, report, scene);
  if (bee === GENUS || namedIn(`1 ${short}`, context).bees.includes(bee)) return short;
  return labelOf(bee, context);
}

/** One queen of each bee named before on each of these plants, the most usual bees on the plants named first at the front. */
function oneQueenEach(keys: readonly string[], report: Report, scene: Scene): string[] {
  const plants = [...plantsInWords(report, scene)].filter(([key]) => keys.includes(key));
  // with one plant it need not be named
  const placed = (report.plants ?? []).length > 1;
  return beesNamed(scene)
    .flatMap((bee, ofBee) => plants.map(([, plant], ofPlant) => ({ bee, plant, order: ofBee + ofPlant })))
    .sort((one, other) => one.order - other.order)
    .slice(0, MOST_CHOICES - 1)
    .map(({ bee, plant }) =>
      say(scene.survey.wording, 'choice-queens', { count: 1, bee: beeAsRead(bee, report, scene), placed, plant }),
    );
}
