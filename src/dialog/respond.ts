/** One text as the answer to what was asked. */
import {
  fold,
  namedIn,
  none,
  readCount,
  readFields,
  readPlant,
  readTotal,
  correctsOnly,
  readYesNo,
  saysAnyOf,
  type Context,
  type Reading,
  type TallyRow,
} from '../answers/index.js';
import type { Ask } from '../../shared/phrases.js';
import type { Count } from '../../shared/record.js';
import { fill, say } from '../../shared/wording.js';
import { addLines, openFields, plantKey, queensOf, setFlowers } from './fields.js';
import { contextOf, hear, joined, lineOf, takeReading, withDoubt } from './hear.js';
import { briefly } from './summary.js';
import { changed, withReport } from './thread.js';
import type { Asking, Doubt, Json, Outcome, Report, Scene, TallyLine, Thread } from './types.js';

export const outcome = (
  thread: Thread,
  report: Report,
  said: readonly (string | null)[] = [],
  then: Outcome['then'] = 'ask',
): Outcome => ({
  thread: withReport(thread, report),
  said: said.filter((text) => text !== null),
  effects: [],
  then,
});

/** Says what was not understood; the same is still asked. */
export function notUnderstood(thread: Thread, ask: Ask, text: string, scene: Scene): Outcome {
  const { wording } = scene.survey;
  const typed = text.length > 60 ? `${text.slice(0, 57)}…` : text;
  return { thread, said: [fill(wording, wording.asks[ask], { typed, offer: '' })], effects: [], then: 'rest' };
}

/** The question as a whole: takes what it can, says it back, goes on with what is still open. */
export function answerQuestion(
  thread: Thread,
  report: Report,
  asking: Asking & { kind: 'question' },
  text: string,
  scene: Scene,
): Outcome {
  if (report.plantsOpen && asking.fields.includes('plants') && saysNo(text, contextOf(scene, report))) {
    return outcome(thread, changed(report, { plantsOpen: false }));
  }
  const heard = hear(report, text, asking.fields, scene, asking.again);
  if (!heard.understood) {
    const total = asking.fields.includes('tally') ? answerTotal(thread, report, text, scene) : null;
    if (total) return total;
    const earlier = correctEarlier(thread, report, asking.question, text, scene);
    if (earlier) return earlier;
    return notUnderstood(thread, heard.ask ?? 'not-that', text, scene);
  }
  const done = changed(heard.report, {
    asked: [...heard.report.asked.filter((question) => question !== asking.question), asking.question],
  });
  return { ...outcome(thread, done, [missed(heard, text, scene)]), echo: briefly(heard.taken, done, scene) };
}

/** "Actually make that 66" when the next question stands already: it is about the answer before. */
function correctEarlier(thread: Thread, report: Report, question: string, text: string, scene: Scene): Outcome | null {
  const { hedges } = scene.survey.words;
  const folded = fold(text);
  const leads = hedges.correcting.filter(
    (word) => folded.trim().startsWith(`${word} `) || folded.includes(` ${word} `),
  );
  if (leads.length === 0) return null;
  const { dialog } = scene.survey;
  const before = report.asked.filter((name) => name !== question).at(-1);
  const fields = dialog.questions.find((entry) => entry.question === before)?.fields ?? [];
  const heard = hear(report, text, fields, scene, true);
  return heard.taken.length === 0
    ? null
    : { ...outcome(thread, heard.report), echo: briefly(heard.taken, heard.report, scene) };
}

/** What was said of a field and cannot be, where others were taken; that nothing was said of it is no such word. */
function missed({ ask }: { ask: Ask | null }, text: string, { survey }: Scene): string | null {
  if (ask === null || /^no-|-no-|-unknown$|-unclear$|^not-that$/.test(ask)) return null;
  return fill(survey.wording, survey.wording.asks[ask], { typed: text, offer: '' });
}

/** "No" and "none": no other flowers. */
function saysNo(text: string, context: Context): boolean {
  const yesNo = readYesNo(text, context);
  if (yesNo.state === 'sure') return yesNo.value.answer === 'no' && yesNo.value.rest === null;
  const count = readCount(text, { ...context, of: 'flowers' });
  return count.state === 'sure' && count.value.value === 0;
}

/** A bare number of queens: none at all, or so many whose names are asked next. */
function answerTotal(thread: Thread, report: Report, text: string, scene: Scene): Outcome | null {
  const context: Context = { ...contextOf(scene, report), of: 'queens' };
  const total = readTotal(text, context);
  if (total.state === 'none') return null;
  if (total.state === 'unsure') {
    const offers = total.offer.map((value): Json => ({ value }));
    return outcome(thread, withDoubt(report, { field: 'total', plant: null, offers, ask: total.ask, typed: text }));
  }
  return outcome(thread, withTotal(report, total.value, text, scene));
}

function withTotal(report: Report, total: number, typed: string, scene: Scene): Report {
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

/** Open flowers of one plant. */
export function answerFlowers(thread: Thread, report: Report, index: number, text: string, scene: Scene): Outcome {
  const context: Context = { ...contextOf(scene, report), of: 'flowers' };
  // "two American bumble bees came to it": bees are no flowers, whatever was asked
  const tellsBees = namedIn(text, context).bees.length > 0;
  const reading = tellsBees ? none('count-no-number') : readCount(text, context);
  if (reading.state === 'sure') return outcome(thread, setFlowers(report, index, reading.value, text));
  // "bluebells 40, phlox 20" answers for more than the plant that was asked
  const heard = hear(report, text, [], scene);
  const filled = heard.report.plants?.[index]?.flowers != null;
  if (filled) return { ...outcome(thread, heard.report), echo: briefly(heard.taken, heard.report, scene) };
  if (reading.state === 'unsure') {
    return outcome(
      thread,
      withDoubt(report, { field: 'flowers', plant: index, offers: reading.offer, ask: reading.ask, typed: text }),
    );
  }
  if (heard.understood) return { ...outcome(thread, heard.report), echo: briefly(heard.taken, heard.report, scene) };
  return notUnderstood(thread, reading.ask, text, scene);
}

/** Which plant a line of the tally was on. */
export function answerLinePlant(thread: Thread, report: Report, at: number, text: string, scene: Scene): Outcome {
  const context = contextOf(scene, report);
  const line = report.tally?.[at];
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
  const reading = allThatAreLeft(text, left, told, context) ?? told;
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
  const isTotal = total.state === 'sure' && (total.value > 0 || saysAnyOf(text, scene.survey.words.hedges.correcting));
  if (isTotal) return outcome(thread, withTotal(report, total.value, text, scene));
  return notUnderstood(thread, reading?.state === 'none' ? reading.ask : 'tally-which-bees', text, scene);
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

/** What came of an unsure reading: a yes takes the offer, other words are read for the same field. */
export function answerDoubt(thread: Thread, report: Report, doubt: Doubt, text: string, scene: Scene): Outcome {
  const context = contextOf(scene, report);
  const pick = picked(doubt, text, context);
  if (pick !== undefined) return outcome(thread, settle(report, doubt, pick, scene));
  const yesNo = readYesNo(text, context);
  const words = yesNo.state === 'sure' ? yesNo.value.rest : text;
  if (words !== null) {
    const better = readAgain(report, doubt, words, scene);
    if (better !== null) return { ...outcome(thread, better), echo: briefly([doubt.field], better, scene) };
  }
  if (yesNo.state === 'sure' && yesNo.value.answer === 'yes' && doubt.offers.length > 0) {
    return outcome(thread, settle(report, doubt, doubt.offers[0]!, scene));
  }
  if (yesNo.state === 'sure' && yesNo.value.answer === 'no' && !correctsOnly(yesNo, text))
    return declined(thread, report, doubt, scene);
  // what could not be counted in a live watch is asked about once; its words stay with the record
  const still = doubt.ask === 'tally-unread-live' ? withoutUnread(report, doubt) : report;
  const heard = hear(still, text, [], scene);
  if (heard.understood) return { ...outcome(thread, heard.report), echo: briefly(heard.taken, heard.report, scene) };
  if (still !== report) return outcome(thread, still);
  const none = doubt.offers.length > 0 ? say(scene.survey.wording, 'doubt-not-understood') : null;
  return outcome(thread, report, [none], 'repeat');
}

const dropDoubt = (report: Report, doubt: Doubt): Report =>
  changed(report, { doubts: report.doubts.filter((other) => other !== doubt) });

const withoutUnread = (report: Report, doubt: Doubt): Report => {
  const dropped = dropDoubt(report, doubt);
  return changed(dropped, { tallyTyped: [...dropped.tallyTyped, doubt.typed] });
};

/** None of the offers: the field is asked anew. What was read in a live watch and meant nothing is let go. */
function declined(thread: Thread, report: Report, doubt: Doubt, scene: Scene): Outcome {
  const next = dropDoubt(report, doubt);
  if (doubt.ask === 'tally-unread-live') return outcome(thread, withoutUnread(report, doubt));
  const { dialog } = scene.survey;
  const question = dialog.questions.find(({ fields }) => fields.includes(doubt.field));
  const told = next.fields[doubt.field] !== undefined;
  if (question === undefined || told) return outcome(thread, next);
  const open = openFields(question.question, next, scene);
  const asked = changed(next, { asked: [...next.asked, question.question] });
  return open.includes(doubt.field)
    ? {
        ...outcome(
          { ...thread, asking: { kind: 'question', question: question.question, fields: [doubt.field], again: false } },
          asked,
        ),
        then: 'repeat',
      }
    : outcome(thread, asked);
}

/** An offer chosen by its place, by "can't tell", or by its own words. */
function picked(doubt: Doubt, text: string, context: Context): Json | undefined {
  const said = fold(text)
    .trim()
    .replace(/[.!]+$/, '');
  const place = context.words.wishes.ordinals[said];
  if (place !== undefined && doubt.offers.length > 1)
    return place < 0 ? doubt.offers.at(place) : doubt.offers[place - 1];
  const last = doubt.offers.at(-1) as { rank?: string } | undefined;
  if (doubt.offers.length > 1 && last?.rank === 'genus' && context.words.wishes.either.includes(said))
    return doubt.offers.at(-1);
  return undefined;
}

function settle(report: Report, doubt: Doubt, offer: Json, scene: Scene): Report {
  const next = dropDoubt(report, doubt);
  if (doubt.field === 'flowers' && doubt.plant !== null)
    return setFlowers(next, doubt.plant, offer as unknown as Count, doubt.typed);
  if (doubt.field === 'total') return withTotal(next, (offer as { value: number }).value, doubt.typed, scene);
  return takeReading(next, doubt.field, { state: 'sure', value: offer, used: [] }, doubt.typed, scene);
}

/** Better words for a doubtful field: alone, or together with the words that were doubtful ("19" and then "celsius"). */
function readAgain(report: Report, doubt: Doubt, words: string, scene: Scene): Report | null {
  const without = dropDoubt(report, doubt);
  if (doubt.field === 'flowers' && doubt.plant !== null) {
    const reading = readCount(words, { ...contextOf(scene, report), of: 'flowers' });
    return reading.state === 'sure' ? setFlowers(without, doubt.plant, reading.value, words) : null;
  }
  if (doubt.field === 'total') {
    const reading = readTotal(words, { ...contextOf(scene, report), of: 'queens' });
    return reading.state === 'sure' ? withTotal(without, reading.value, words, scene) : null;
  }
  if (doubt.field === 'times' && doubt.ask === 'times-no-end') {
    const times = endOf(doubt, words, scene, report);
    if (times !== null) return times;
  }
  // a name chosen among the offers by a part of it
  for (const text of [words, `${doubt.typed} ${words}`]) {
    const heard = hear(without, text, [doubt.field], scene);
    if (heard.taken.includes(doubt.field)) return heard.report;
  }
  return null;
}

/** The end of a watch whose start is known: a time of day, or a length. */
function endOf(doubt: Doubt, words: string, scene: Scene, report: Report): Report | null {
  const without = dropDoubt(report, doubt);
  const { to, lengthLeads } = scene.survey.words.times;
  for (const text of [
    words,
    `${doubt.typed} ${to[0] ?? '-'} ${words}`,
    `${doubt.typed} ${lengthLeads[0] ?? ''} ${words}`,
  ]) {
    const reading = readFields(text, contextOf(scene, report), ['times']).fields.times;
    if (reading?.state === 'sure' && reading.value.end !== null)
      return takeReading(without, 'times', reading, `${doubt.typed} ${words}`, scene);
  }
  return null;
}
