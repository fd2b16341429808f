/** "No, it was 67": a number alone, for the one line that it fits. */
import { anyOf, fold, readTemperature } from '../../answers/index.js';
import type { Temperature } from '../../../shared/record.js';
import { setFlowers, tell, valueOf } from '../fields.js';
import { contextOf, withDoubt } from '../hear.js';
import { withoutLead } from './named-line.js';
import { MOST_QUEENS } from '../few-flowers.js';
import { readCorrection } from './put-right.js';
import { changed } from '../thread.js';
import type { Json, Report, Scene } from '../types.js';

/** Further away a number is rather another line's: common practice, no source. */
const MOST_DEGREES_CELSIUS = 11;
/** A count put right is seldom more than twice or less than half of what was told. */
const MOST_TIMES = 2;

/** With what it fits taken or, where it may fit flowers too, the temperature offered. Null where nothing fits, or only others. */
export function takeNumber(report: Report, text: string, scene: Scene): Report | null {
  const { putRight } = scene.survey.words;
  const said = fold(withoutLead(text, scene));
  const lead = `(?:${anyOf(putRight.tellsLast, putRight.leads, putRight.isAre, putRight.articles)}[\\s,]*)*`;
  const digits = new RegExp(`^\\s*${lead}(?<digits>\\d{1,4})[\\s.!]*$`, 'u').exec(said)?.groups?.['digits'];
  if (digits === undefined) return null;
  const number = Number(digits);
  const rows = (report.tally ?? []).filter(({ count }) => count > 0);
  const flowers = (report.plants ?? []).flatMap(({ flowers: told }, plant) =>
    told !== null && number * MOST_TIMES >= told.value && number <= told.value * MOST_TIMES ? [plant] : [],
  );
  const degrees = degreesOf(digits, report, scene);
  const isQueens = rows.length === 1 && number > 0 && number <= MOST_QUEENS;
  if (degrees !== null && flowers.length === 0 && degrees.isNear)
    return tell(report, 'temperature', degrees.value, text, scene.message.id);
  if (degrees !== null && (degrees.isNear || flowers.length === 0)) {
    const offers = [degrees.value as unknown as Json];
    return withDoubt(report, { field: 'temperature', plant: null, offers, ask: 'temperature-line', typed: text });
  }
  if (isQueens && flowers.length === 0) {
    const tally = (report.tally ?? []).map((line) => (line === rows[0] ? { ...line, count: number } : line));
    return changed(report, { tally, total: null, tallyTyped: [...report.tallyTyped, text] });
  }
  if (isQueens || flowers.length !== 1) return null;
  return setFlowers(report, flowers[0]!, { value: number, low: number, high: number, about: false }, text);
}

/** "Not 2 but 3", "150 instead of 100": the one row or plant that has the number that is denied. */
export function takeInstead(report: Report, text: string, scene: Scene): Report | null {
  const correction = readCorrection(text, report, scene);
  if (correction === null) return null;
  const { right, denied } = correction;
  const names = [right, denied].flatMap(({ bees, plants }) => [...bees, ...plants]);
  const [count] = right.counts;
  if (names.length > 0 || count === undefined || right.counts.length > 1 || denied.counts.length !== 1) return null;
  const isDenied = (number: number | undefined): boolean => number === denied.counts[0];
  const rows = (report.tally ?? []).filter((line) => line.count > 0 && isDenied(line.count));
  const plants = (report.plants ?? []).flatMap(({ flowers }, plant) => (isDenied(flowers?.value) ? [plant] : []));
  if (rows.length + plants.length !== 1) return null;
  if (plants.length === 1)
    return setFlowers(report, plants[0]!, { value: count, low: count, high: count, about: false }, text);
  const tally = (report.tally ?? []).map((line) => (line === rows[0] ? { ...line, count } : line));
  return changed(report, { tally, total: null, tallyTyped: [...report.tallyTyped, text] });
}

/** The number as a temperature, and whether it is near the one that was told or has its digits the other way round. */
function degreesOf(digits: string, report: Report, scene: Scene): { value: Temperature; isNear: boolean } | null {
  const told = valueOf<Temperature>(report, 'temperature');
  if (told === null) return null;
  const context = contextOf(scene, report);
  const read = (text: string): Temperature | null => {
    const reading = readTemperature(text, context);
    return reading.state === 'sure' ? reading.value : reading.state === 'unsure' ? (reading.offer[0] ?? null) : null;
  };
  const value = read(digits);
  if (value === null) return null;
  const turned = read([...digits].reverse().join(''));
  const isNear =
    Math.abs(value.celsius - told.celsius) <= MOST_DEGREES_CELSIUS ||
    (turned !== null && Math.abs(turned.celsius - told.celsius) < 0.1);
  return { value, isNear };
}
