/**
 * What can be counted with one press while the clock runs: bees that this observer named before, or in this watch, on the
 * plants named so far. The words of a button, typed, count the same.
 */
import { fold, labelOf } from '../../answers/index.js';
import { buttonText, choiceOf } from '../../../shared/button-text.js';
import type { Watch } from '../../../shared/record.js';
import { say } from '../../../shared/wording.js';
import { contextOf } from '../hear.js';
import { showPlant } from '../show.js';
import type { Live, Report, Scene, TallyLine } from '../types.js';
import { livePlants } from './plants.js';

/** With "same one", "undo" and "pause" that makes eight: a screen holds no more beside what was said. */
const MOST_COMBINATIONS = 5;
const MOST_PLANTS_TO_CHOOSE = 6;
/** Of all that an observer named before, so that the buttons of a watch do not depend on a whole season. */
const MOST_USUAL_BEES = 12;

export interface Combination {
  readonly words: string;
  readonly bee: string;
  readonly plant: string;
  /** The queen that was counted last, on another plant. */
  readonly isSame: boolean;
}

/** Bees in an observer's last watches (the newest first), those named in most watches first, then the latest. */
export function usualBees(watches: readonly Watch[]): string[] {
  const watchesOf = new Map<string, number>();
  for (const { queens } of watches) {
    const named = new Set(queens.flatMap(({ bee, caste }) => (bee === null || caste === 'worker' ? [] : [bee])));
    for (const bee of named) watchesOf.set(bee, (watchesOf.get(bee) ?? 0) + 1);
  }
  // a stable sort keeps the latest first among equals
  return [...watchesOf]
    .sort(([, one], [, other]) => other - one)
    .slice(0, MOST_USUAL_BEES)
    .map(([bee]) => bee);
}

const lastLine = (live: Live): TallyLine | undefined => live.entries.at(-1)?.at(-1);

/** The words of each plant; one whose words are those of another ("spring beauty") goes by its own name. */
export function plantsInWords(report: Report, scene: Scene): ReadonlyMap<string, string> {
  const context = contextOf(scene, report);
  const words = new Map<string, string>();
  for (const key of livePlants(report)) {
    const known = (report.plants ?? []).find(({ name, typed }) => (name ?? typed) === key);
    const label = known === undefined ? labelOf(key, context) : showPlant(known, context);
    words.set(key, [...words.values()].includes(label) ? key : label);
  }
  return words;
}

/** "two-spotted"; a queen of an unknown kind is "not sure". */
export function beeWords(bee: string, report: Report, scene: Scene): string {
  if (bee === 'Bombus') return say(scene.survey.wording, 'choice-live-not-sure');
  return labelOf(bee, contextOf(scene, report)).replace(/ bumble ?bee$/i, '');
}

/**
 * All bees on all plants. The most usual bees on the plants named first come first, and what is new comes last: a place
 * in this order never changes, so that a button does not move away under a thumb.
 */
function combinations(report: Report & { live: Live }, scene: Scene): Combination[] {
  const { wording } = scene.survey;
  const counted = report.live.entries.flat().flatMap(({ bee }) => bee ?? []);
  const bees = [...new Set([...(report.live.bees ?? []), ...counted])];
  const plants = [...plantsInWords(report, scene)];
  return bees
    .flatMap((bee, ofBee) => {
      const shown = beeWords(bee, report, scene);
      return plants.map(([plant, words], ofPlant) => ({
        combination: { words: say(wording, 'choice-live', { bee: shown, plant: words }), bee, plant, isSame: false },
        place: ofBee + ofPlant,
      }));
    })
    .sort((one, other) => one.place - other.place)
    .map(({ combination }) => combination);
}

/**
 * Those that have a button: what was counted in this watch, the last first, then the most usual. To press one changes
 * nothing about which they are.
 */
function shownCombinations(report: Report & { live: Live }, scene: Scene): Combination[] {
  const all = combinations(report, scene);
  const lines = report.live.entries.flat().reverse();
  const counted = lines.flatMap((line) => all.find(({ bee, plant }) => bee === line.bee && plant === line.plant) ?? []);
  const chosen = new Set([...new Set([...counted, ...all])].slice(0, MOST_COMBINATIONS));
  return all.filter((combination) => chosen.has(combination));
}

/** The queen counted last, on each other plant; none where there is no such queen. */
function sameOnes(report: Report & { live: Live }, scene: Scene): Combination[] {
  const last = lastLine(report.live);
  if (last?.bee == null || last.count === 0) return [];
  const { bee } = last;
  return [...plantsInWords(report, scene)]
    .filter(([plant]) => plant !== last.plant)
    .map(([plant, words]) => ({
      words: say(scene.survey.wording, 'choice-live-same-on', { plant: words }),
      bee,
      plant,
      isSame: true,
    }));
}

const isSaid =
  (text: string) =>
  ({ words }: Combination): boolean =>
    fold(words) === fold(text).trim();

/** The combination of a button, by its words. */
export const combinationSaid = (report: Report & { live: Live }, text: string, scene: Scene): Combination | null =>
  [...combinations(report, scene), ...sameOnes(report, scene)].find(isSaid(text)) ?? null;

/**
 * Whether a button of an earlier acknowledgement of this watch still means what it meant: a bee on a plant does, however
 * often it is pressed; "same one" and "undo" are about what was counted right before.
 */
export const meansTheSame = (report: Report & { live: Live }, words: string, scene: Scene): boolean =>
  combinations(report, scene).some(isSaid(words));

/** The words of a button that may stand shortened on it; as they are where they fit several combinations. */
export function liveWords(report: Report & { live: Live }, pressed: string, scene: Scene): string {
  const fitting = [...combinations(report, scene), ...sameOnes(report, scene)].filter(
    ({ words }) => buttonText(words) === pressed,
  );
  return fitting.length === 1 ? fitting[0]!.words : choiceOf(pressed, liveChoices(report, scene));
}

/** Whether only "the same one" is said, and not where. */
export const asksSameOne = (text: string, { survey }: Scene): boolean =>
  survey.words.tally.sameOne.includes(fold(text).trim());

/** Where the same one may be now: the buttons once "same one" was said. */
export const whereSameOne = (report: Report & { live: Live }, scene: Scene): Combination[] =>
  sameOnes(report, scene).slice(0, MOST_PLANTS_TO_CHOOSE);

/** The buttons of a live watch as it is now. */
export function liveChoices(report: Report & { live: Live }, scene: Scene): string[] {
  const { wording } = scene.survey;
  const { live } = report;
  if (live.pausedAt !== null) return [say(wording, 'choice-live-go-on'), say(wording, 'choice-live-stop')];
  const undo = live.entries.length > 0 || (live.unreadSince ?? 0) > 0 ? [say(wording, 'choice-live-undo')] : [];
  const same = sameOnes(report, scene);
  if (live.asksSame === true) return [...whereSameOne(report, scene).map(({ words }) => words), ...undo];
  return [
    ...shownCombinations(report, scene).map(({ words }) => words),
    ...(same.length > 1 ? [say(wording, 'choice-live-same')] : same.map(({ words }) => words)),
    ...undo,
    say(wording, 'choice-live-pause'),
  ];
}
