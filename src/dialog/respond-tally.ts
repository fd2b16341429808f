/** A text as the answer to what is still open of the queens: their number, their bees, their plants. */
import {
  fold,
  namedIn,
  readCount,
  readFields,
  readPlant,
  readTotal,
  readYesNo,
  saysAnyOf,
  unsure,
  type Context,
  type Reading,
  type TallyRow,
} from '../answers/index.js';
import { say } from '../../shared/wording.js';
import { addLines, plantKey, queensOf } from './fields.js';
import { contextOf, joined, lineOf, takeReading, withDoubt } from './hear.js';
import { notUnderstood, outcome } from './outcome.js';
import { briefly } from './summary.js';
import { changed } from './thread.js';
import type { Json, Outcome, Report, Scene, TallyLine, Thread } from './types.js';

/** A bare number of queens: none at all, or so many whose names are asked next. */
export function answerTotal(thread: Thread, report: Report, text: string, scene: Scene): Outcome | null {
  const context: Context = { ...contextOf(scene, report), of: 'queens' };
  const total = readTotal(text, context);
  if (total.state === 'none') return null;
  // "just one honeybee" is no queen
  const { bees } = namedIn(text, context);
  if (bees.length === 0 && saysAnyOf(text, scene.survey.words.tally.otherInsects)) return null;
  if (total.state === 'unsure') {
    const offers = total.offer.map((value): Json => ({ value }));
    return outcome(thread, withDoubt(report, { field: 'total', plant: null, offers, ask: total.ask, typed: text }));
  }
  return outcome(thread, withTotal(report, total.value, text, scene));
}

export function withTotal(report: Report, total: number, typed: string, scene: Scene): Report {
  const next = changed(report, { tallyTyped: [...report.tallyTyped, typed], tallyMessage: scene.message.id });
  if (total > 0) return changed(next, { total });
  return changed(next, { tally: zeroLines(report, typed), total: null, restNone: true });
}

const zeroLines = (report: Report, typed: string): TallyLine[] =>
  (report.plants ?? []).map((plant) => ({
    plant: plantKey(plant),
    bee: null,
    rank: null,
    typed,
    count: 0,
    seenBefore: 0,
    withPollen: null,
    caste: null,
    doubt: false,
  }));

/** Which plant a line of the tally was on. */
export function answerLinePlant(thread: Thread, report: Report, at: number, text: string, scene: Scene): Outcome {
  const context = contextOf(scene, report);
  const line = report.tally?.[at];
  const without = zerosTold(text, context, scene);
  if (without !== null) {
    const next = without.length === 0 ? report : joined(addLines(report, without), scene);
    return { ...outcome(thread, next), echo: without.length === 0 ? null : briefly(['tally'], next, scene) };
  }
  const placed = linesPlaced(report, text, context);
  if (placed !== null) {
    const next = joined(changed(report, { tally: placed }), scene);
    return { ...outcome(thread, next), echo: briefly(['tally'], next, scene) };
  }
  // "and a bimac on the violets" tells of another queen; this one's plant is still open
  const further = furtherLines(text, line, context);
  if (further !== null) {
    const next = joined(addLines(report, further), scene);
    const typed = changed(next, { tallyTyped: [...next.tallyTyped, text] });
    return { ...outcome(thread, typed), echo: briefly(['tally'], typed, scene) };
  }
  const plant = readPlant(text, context);
  const key = plantMeant(plant, text, report);
  if (line !== undefined && key !== null) {
    const all = saysAnyOf(text, scene.survey.words.tally.allBees);
    const tally = (report.tally ?? []).map((known, index) =>
      index === at || (all && known.plant === null) ? { ...known, plant: key } : known,
    );
    return outcome(thread, joined(changed(report, { tally }), scene));
  }
  // told again as a whole: "1 on the phlox and 1 on the geranium"
  const again = tallyWith(`${text}`, line, context);
  if (again !== null && line !== undefined) {
    const without = changed(report, { tally: (report.tally ?? []).filter((_, index) => index !== at) });
    return outcome(thread, joined(addLines(without, again), scene));
  }
  return notUnderstood(thread, plant.state === 'sure' ? 'plant-not-watched' : plant.ask, text, scene);
}

/** "The two-spotted on the lupine, the black and gold on the puccoon": each line whose plant is open, by its bee. */
function linesPlaced(report: Report, text: string, context: Context): readonly TallyLine[] | null {
  const reading = readFields(text, context, ['tally']).fields.tally;
  if (reading?.state !== 'sure' || reading.value.length < 2) return null;
  const lines = [...(report.tally ?? [])];
  for (const { bee, plant, count } of reading.value) {
    const at = lines.findIndex((line) => line.plant === null && line.bee === bee && bee !== null);
    const line = lines[at];
    // "the two-spotted" counts nothing; another number tells of other queens
    if (line === undefined || plant === null || (count !== 1 && count !== line.count)) return null;
    lines[at] = { ...line, plant };
  }
  return lines;
}

/** Queens of other bees on plants of their own; null where the text may be about the line that is asked about. */
function furtherLines(text: string, line: TallyLine | undefined, context: Context): TallyLine[] | null {
  const reading = readFields(text, context, ['tally']).fields.tally;
  if (reading?.state !== 'sure') return null;
  const isFurther = ({ bee, plant, count }: TallyRow): boolean =>
    count > 0 && bee !== null && bee !== line?.bee && bee !== 'Bombus' && plant !== null;
  return reading.value.length > 0 && reading.value.every(isFurther)
    ? reading.value.map((row) => lineOf(row, text, context))
    : null;
}

/** "Nothing on the charlie", "not the charlie": the plants where they were not. Null where the text denies nothing. */
function zerosTold(text: string, context: Context, scene: Scene): TallyLine[] | null {
  const { zero, denies } = scene.survey.words.tally;
  const reading = readFields(text, context, ['tally']).fields.tally;
  const rows = reading?.state === 'sure' ? reading.value : [];
  if (rows.some(({ count }) => count > 0) || !saysAnyOf(text, [...zero, ...denies])) return null;
  // "phlox, not the geranium" names the phlox first
  const said = fold(text).trim();
  if (rows.length === 0 && !denies.some((word) => said.startsWith(`${word} `))) return null;
  return rows.filter(({ plant }) => plant !== null).map((row) => lineOf(row, text, context));
}

/** The watched plant a reading means; a plant that is not watched counts only if the list knows it. */
function plantMeant(reading: Reading<{ name: string | null }>, text: string, report: Report): string | null {
  const keys = (report.plants ?? []).map(plantKey);
  if (reading.state === 'sure' && reading.value.name !== null) return reading.value.name;
  if (reading.state === 'unsure')
    return reading.offer.map(({ name }) => name).find((name) => name !== null && keys.includes(name)) ?? null;
  const said = fold(text).trim();
  return keys.find((key) => fold(key).includes(said) && said.length > 2) ?? null;
}

/** Lines told with plants but without their bee, which is the one asked about. */
function tallyWith(text: string, line: TallyLine | undefined, context: Context): TallyLine[] | null {
  const reading = readFields(text, context, ['tally']).fields.tally;
  if (reading?.state !== 'sure') return null;
  const rows = reading.value.filter(({ plant }) => plant !== null);
  // "0" and "no" do not say where the queens were, nor that there were none after all
  if (rows.every(({ count }) => count === 0)) return null;
  return rows.map((row) => {
    const told = lineOf(row, text, context);
    return told.bee === null && told.count > 0 && line !== undefined
      ? { ...told, bee: line.bee, rank: line.rank }
      : told;
  });
}

/** Which bees a bare number was: lines add up until the number is reached. */
export function answerBees(thread: Thread, report: Report, text: string, scene: Scene): Outcome {
  const context = contextOf(scene, report);
  const left = (report.total ?? 0) - queensOf(report.tally ?? []);
  const told = readFields(text, context, ['tally']).fields.tally;
  const reading = withinTotal(allThatAreLeft(text, left, told, context) ?? told, left);
  // so many were told, so "that's all" and "none" name none of them
  const isNone = reading?.state === 'sure' && reading.value.every(({ count }) => count === 0);
  if (reading?.state === 'sure' && !isNone) {
    const lines = reading.value.map((row) => lineOf(row, text, context));
    const next = joined(
      changed(addMore(report, lines), { tallyTyped: [...report.tallyTyped, text], tallyMessage: scene.message.id }),
      scene,
    );
    return { ...outcome(thread, next), echo: briefly(['tally'], next, scene) };
  }
  if (reading?.state === 'unsure') return outcome(thread, takeReading(report, 'tally', reading, text, scene));
  const total = readTotal(text, { ...context, of: 'queens' });
  // "one on each": where they were, and the number stands
  if (total.state === 'sure' && saysAnyOf(text, scene.survey.words.count.forEach)) {
    const rows = context.watched.map((plant) => ({ count: total.value, bee: 'Bombus', plant }));
    const fits = total.value > 0 && total.value * rows.length === left;
    if (fits)
      return outcome(thread, takeReading(report, 'tally', unsure([rows], 'tally-bees-guess', total.used), text, scene));
    return notUnderstood(thread, 'tally-which-bees', text, scene);
  }
  const isTotal = total.state === 'sure' && (total.value > 0 || saysAnyOf(text, scene.survey.words.hedges.correcting));
  if (isTotal) return outcome(thread, withTotal(report, total.value, text, scene));
  return notUnderstood(thread, reading?.state === 'none' ? reading.ask : 'tally-which-bees', text, scene);
}

/** More bees than were told: which number is right is asked. */
function withinTotal(reading: Reading<TallyRow[]> | undefined, left: number): Reading<TallyRow[]> | undefined {
  if (reading?.state !== 'sure') return reading;
  const told = reading.value.reduce((sum, { count, seenBefore = 0 }) => sum + count - seenBefore, 0);
  return told > left ? unsure([reading.value], 'tally-total-differs', reading.used) : reading;
}

/** "All impatiens", "impatiens" and "can't tell" without a number: that is what every queen was that is left. */
function allThatAreLeft(
  text: string,
  left: number,
  told: Reading<TallyRow[]> | undefined,
  context: Context,
): Reading<TallyRow[]> | null {
  const { wishes, tally } = context.words;
  const said = fold(text)
    .trim()
    .replace(/[.!]+$/, '');
  const { bees } = namedIn(text, context);
  const unknown = wishes.either.includes(said) || wishes.plain.unknown.includes(said);
  const bee = unknown ? 'Bombus' : bees.length === 1 ? bees[0] : undefined;
  const counted = readCount(text, { ...context, of: 'queens' }).state !== 'none' && !saysAnyOf(text, tally.allBees);
  if (bee === undefined || (!unknown && counted)) return null;
  // "maybe impatiens", "impatiens on the phlox": all else that it says stands
  const [row, ...others] = told?.state === 'sure' ? told.value : [];
  if (told?.state === 'sure' && row !== undefined)
    return others.length > 0 ? null : { ...told, value: [{ ...row, count: left }] };
  const plant = context.watched.length === 1 ? context.watched[0]! : null;
  return { state: 'sure', value: [{ count: left, bee, plant }], used: [[0, text.length]] };
}

/** Queens of a bee named twice in answers to the same number are different queens: they add up. */
function addMore(report: Report, lines: readonly TallyLine[]): Report {
  const known = report.tally ?? [];
  const fresh = lines.filter(
    (line) =>
      !known.some(
        (other) =>
          other.plant === line.plant &&
          other.bee === line.bee &&
          other.count === line.count &&
          other.caste === line.caste,
      ),
  );
  return addLines(report, fresh);
}

/** Plants that no line of the tally named: none there, or more lines. */
export function answerRest(
  thread: Thread,
  report: Report,
  plants: readonly string[],
  text: string,
  scene: Scene,
): Outcome {
  const context: Context = { ...contextOf(scene, report), of: 'queens' };
  const none = (): Outcome => outcome(thread, changed(report, { restNone: true }));
  const yesNo = readYesNo(text, context);
  if (yesNo.state === 'sure' && yesNo.value.answer === 'no' && yesNo.value.rest === null) return none();
  // the plants just asked about are the ones meant where none is said
  const reading = readFields(text, { ...context, watched: plants.length === 1 ? plants : context.watched }, ['tally'])
    .fields.tally;
  if (reading?.state === 'sure') {
    const rows = reading.value;
    if (rows.every(({ count }) => count === 0)) return none();
    const lines = rows
      .map((row) => lineOf(row, text, context))
      .map((line) => (line.plant === null && plants.length === 1 ? { ...line, plant: plants[0]! } : line));
    const next = joined(
      changed(addMore(report, lines), { tallyTyped: [...report.tallyTyped, text], tallyMessage: scene.message.id }),
      scene,
    );
    return { ...outcome(thread, next), echo: briefly(['tally'], next, scene) };
  }
  if (reading?.state === 'unsure') return outcome(thread, takeReading(report, 'tally', reading, text, scene));
  const total = readTotal(text, context);
  if (total.state === 'sure' && total.value === 0) return none();
  if (yesNo.state === 'sure' && yesNo.value.answer === 'yes') {
    return { ...outcome(thread, report), said: [say(scene.survey.wording, 'ask-rest-which')], then: 'rest' };
  }
  return notUnderstood(thread, reading?.ask ?? 'tally-which-bees', text, scene);
}
