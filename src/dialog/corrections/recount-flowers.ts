/** Flowers told otherwise: "bluebells more like 200", "ca. 120 for the redbud", "the flower counts are rough". */
import { anyOf, fold, namedIn, readCount, saysAnyOf } from '../../answers/index.js';
import { plantKey, setFlowers } from '../fields.js';
import { contextOf } from '../hear.js';
import { changed } from '../thread.js';
import type { Report, Scene } from '../types.js';
import { watchedPlant } from './watched-plant.js';

/** Fewer may be queens, where the text does not say that they are flowers. */
const FEWEST_FLOWERS = 10;
const PARTS = /\s*(?:[,;\n]|(?:^|\s)and\s)\s*(?:and\s+)?/u;

/** Null where the text tells anything else. */
export function recountFlowers(report: Report, text: string, scene: Scene): Report | null {
  const { tally, putRight, wishes } = scene.survey.words;
  const isOfBees = namedIn(text, contextOf(scene, report)).bees.length > 0 || saysAnyOf(text, tally.queens);
  if (report.plants === null || isOfBees) return null;
  const counts = anyOf(wishes.fields['plants'] ?? [], putRight.flowerCounts);
  const pattern = new RegExp(
    `^\\s*(?:${anyOf(putRight.articles)}\\s+)*${counts}\\s+${anyOf(putRight.isAre)}\\s+${anyOf(putRight.rough)}[\\s.!]*(?:[:,;-]\\s*(?<list>\\S.*))?$`,
    'su',
  );
  const rough = pattern.exec(fold(text));
  const list = rough?.groups?.['list'];
  if (rough !== null && list === undefined) return allRough(report, text);
  let next = report;
  for (const part of (list === undefined ? text : text.slice(text.length - list.length))
    .replace(/[\s.!]+$/, '')
    .split(PARTS)) {
    const told = flowersIn(part, report, scene);
    if (told === null) return null;
    next = setFlowers(next, told.plant, { ...told.count, about: told.count.about || rough !== null }, part);
  }
  return next;
}

const allRough = (report: Report, typed: string): Report =>
  changed(report, {
    plants: (report.plants ?? []).map((plant) =>
      plant.flowers === null ? plant : { ...plant, flowers: { ...plant.flowers, about: true } },
    ),
    plantsTyped: [...report.plantsTyped, typed],
    plantsMessage: null,
  });

/** "The redbud was more like 200", "200 for the redbud". */
function flowersIn(part: string, report: Report, scene: Scene) {
  const { count, putRight, wishes } = scene.survey.words;
  const folded = fold(part);
  const likes = new RegExp(
    `^(?<plant>.+?)\\s+(?:${anyOf(wishes.becomes)}\\s+)?${anyOf(putRight.moreLike)}\\s+(?<count>.+)$`,
    'u',
  ).exec(folded);
  const of = new RegExp(`^(?<count>.+?)\\s+${anyOf(putRight.countedOf)}\\s+(?<plant>.+)$`, 'u').exec(folded);
  const becomes = new RegExp(
    `^(?<plant>.+?)\\s+${anyOf(wishes.becomes, putRight.shouldHave)}\\s+(?<count>\\d.*)$`,
    'u',
  ).exec(folded);
  for (const match of [likes, becomes, of]) {
    const { plant, count: counted } = match?.groups ?? {};
    if (plant === undefined || counted === undefined) continue;
    const key = watchedPlant(plant, report, scene);
    const index = (report.plants ?? []).findIndex((known) => plantKey(known) === key);
    const reading = readCount(counted, { ...contextOf(scene, report), of: 'flowers' });
    if (index === -1 || reading.state !== 'sure') continue;
    if (match !== likes && reading.value.value < FEWEST_FLOWERS && !saysAnyOf(part, count.flowers)) continue;
    return { plant: index, count: { ...reading.value, about: reading.value.about || match === likes } };
  }
  return null;
}
