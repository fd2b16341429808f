/**
 * Queens of some plants told anew at the summary: "Redbud: 3 common eastern, 1 yellow. Geranium: 1 half-black". Each plant
 * named gets what is told of it, the others stay; a bee that nobody knows changes nothing, and is asked about by its name.
 */
import { fold, namedIn, readBee, readFields, saysAnyOf, type Context, type TallyRow } from '../../answers/index.js';
import { addLines, plantKey } from '../fields.js';
import { contextOf, joined, lineOf } from '../hear.js';
import { isFew } from '../few-flowers.js';
import { afterOpening, countsOne, readCorrection, tellsMore } from './put-right.js';
import { changed } from '../thread.js';
import type { PlantInPatch, Report, Scene, TallyLine } from '../types.js';

export type Retold = { readonly report: Report } | { readonly unknown: string; readonly plant: string | null };

/** Null where the text tells no bees on plants. */
export function retell(report: Report, text: string, scene: Scene): Retold | null {
  if (report.tally === null) return null;
  const context = contextOf(scene, report);
  const { bees, plants } = namedIn(text, context);
  const reading = readFields(text, context, ['tally']).fields.tally;
  if (reading === undefined) return null;
  if (reading.state === 'unsure') {
    const strange = bees.length === 0 ? undefined : reading.offer[0]?.find((row) => isStrange(row, context));
    return strange === undefined ? null : { unknown: strange.typed!.bee, plant: strange.plant };
  }
  if (reading.state === 'none') {
    if (reading.ask !== 'tally-unknown-bee' || plants.length !== 1 || tellsFlowers(text, scene)) return null;
    const strange = strangeName(text, scene);
    return strange === null ? null : { unknown: strange, plant: plants[0]! };
  }
  const rows = reading.value.map((row) => onItsPlant(row, report));
  // "the two-spotted" is no count of one
  const counts = readCorrection(text, report, scene)?.right.counts ?? [];
  if (!rows.some(({ bee }) => bee !== null) || rows.some(({ plant }) => plant === null)) return null;
  if (counts.length === 0 && !countsOne(text, report, scene)) return null;
  let next = report;
  for (const plant of new Set(rows.map((row) => row.plant!)))
    next = ofPlant(
      next,
      plant,
      rows.filter((row) => row.plant === plant),
      text,
      context,
      scene,
    );
  return { report: joined(changed(next, { total: null, tallyTyped: [...report.tallyTyped, text] }), scene) };
}

/** "Make it 3 two-spotted and 2 common eastern": of bees that stand on one plant each. */
function onItsPlant(row: TallyRow, report: Report): TallyRow {
  if (row.plant !== null || row.bee === null) return row;
  const lines = (report.tally ?? []).filter(({ bee, count }) => bee === row.bee && count > 0);
  return lines.length === 1 ? { ...row, plant: lines[0]!.plant } : row;
}

/** "The temperature was 68 and there were 3 impatiens": told without a plant, they are those that stand on one. */
export function onKnownLines(before: Report, after: Report, text: string, scene: Scene): Report {
  if (after.tally === before.tally || tellsMore(text, scene)) return after;
  const known = before.tally ?? [];
  const fresh = (after.tally ?? []).filter((line) => line.plant === null && line.bee !== null && !known.includes(line));
  const lines = fresh.map((line) => known.filter(({ bee, count }) => bee === line.bee && count > 0));
  if (fresh.length === 0 || lines.some(({ length }) => length !== 1)) return after;
  const counts = new Map(fresh.map((line, at) => [lines[at]![0], line]));
  const tally = (after.tally ?? []).flatMap((line) => {
    const told = counts.get(line);
    if (told !== undefined) return [{ ...told, plant: line.plant }];
    return fresh.includes(line) ? [] : [line];
  });
  return joined(changed(after, { tally }), scene);
}

/** "1 wibble": a name in the tally that was taken for some bumble bee, because it stands where bees do. */
function isStrange({ bee, typed }: TallyRow, context: Context): boolean {
  if (bee !== 'Bombus' || typed?.bee == null) return false;
  const reading = readBee(typed.bee, context);
  return reading.state !== 'sure';
}

/** "1 wibble on redbud": what stands behind the number, up to the plant. */
function strangeName(text: string, { survey }: Scene): string | null {
  const { prepositions, onPlants } = survey.words.tally;
  const words = /\d{1,2}\s+(?<name>\p{L}[\p{L}'-]*(?:\s+\p{L}[\p{L}'-]*)*)/u.exec(fold(text))?.groups?.['name'];
  const name = (words ?? '').split(/\s+/);
  const end = name.findIndex((word) => onPlants.includes(word) || prepositions.includes(word));
  return end > 0 ? name.slice(0, end).join(' ') : null;
}

const tellsFlowers = (text: string, { survey }: Scene): boolean => saysAnyOf(text, survey.words.count.flowers);

function ofPlant(
  report: Report,
  plant: string,
  rows: readonly TallyRow[],
  text: string,
  context: Context,
  scene: Scene,
): Report {
  const lines = rows.map((row) => lineOf(row, text, context));
  const known = (report.tally ?? []).filter((line) => line.plant === plant && line.count > 0);
  const isAnew =
    !tellsMore(text, scene) &&
    (isHeading(rows, text) ? rows.length > 1 || isToldAgain(known, lines) : isOther(known, lines, text, scene));
  const tally = isAnew ? (report.tally ?? []).filter((line) => line.plant !== plant) : report.tally;
  return addLines({ ...report, tally }, lines);
}

/** "Redbud: 3 common eastern": the plant stands first, and what follows is all there was on it. */
function isHeading([row]: readonly TallyRow[], text: string): boolean {
  const at = (words: string | null | undefined): number => (words == null ? -1 : fold(text).indexOf(fold(words)));
  const plant = at(row?.typed?.plant);
  return plant >= 0 && plant < at(row?.typed?.bee);
}

const isToldAgain = (known: readonly TallyLine[], lines: readonly TallyLine[]): boolean =>
  lines.some((line) => line.count === 0 || known.some(({ bee }) => bee === line.bee));

/** "No, it was 1 orange-belted on the columbine": not the one that was told there, which was as many. */
const isOther = (known: readonly TallyLine[], lines: readonly TallyLine[], text: string, scene: Scene): boolean =>
  afterOpening(text, scene) !== null &&
  known.length === 1 &&
  lines.length === 1 &&
  known[0]!.count === lines[0]!.count &&
  known[0]!.bee !== lines[0]!.bee;

/** A plant whose flowers became as few as queens are, where the text does not say that they are flowers. */
export function perhapsQueens(before: Report, after: Report, text: string, scene: Scene): PlantInPatch | null {
  if (tellsFlowers(text, scene)) return null;
  const told = (plant: PlantInPatch): number =>
    before.plants?.find((other) => plantKey(other) === plantKey(plant))?.flowers?.value ?? 0;
  const became = (plant: PlantInPatch): boolean => plant.flowers !== null && isFew(plant.flowers.value, told(plant));
  return after.plants?.find(became) ?? null;
}

/** The flowers as they were where only bees were told: a number beside a bee's name is no number of flowers. */
export function withFlowersOf(before: Report, after: Report, text: string, scene: Scene): Report {
  if (before.plants === null || namedIn(text, contextOf(scene, before)).bees.length === 0 || tellsFlowers(text, scene))
    return after;
  const known = (plant: PlantInPatch): PlantInPatch =>
    before.plants!.find((other) => plantKey(other) === plantKey(plant)) ?? plant;
  // nor is "eastern" of a bee's name a plant that might be meant
  const doubts = after.doubts.filter((doubt) => doubt.field !== 'plants' || before.doubts.includes(doubt));
  return changed(after, { plants: after.plants?.map(known) ?? null, doubts });
}
