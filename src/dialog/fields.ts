/** What is told in a report, field by field: putting it in, taking it out, finding out what is still open. */
import { rankOf, type Context } from '../answers/index.js';
import type { Dialog } from '../../shared/dialog.js';
import type { Count, Times } from '../../shared/record.js';
import { isNewPlace, isOtherPlace, wasUsedBefore, type ToldPlace } from './places.js';
import { changed } from './thread.js';
import type { Asking, Json, PlantInPatch, Report, Scene, TallyLine, Told } from './types.js';

/** The name by which lines of the tally point at a plant. */
export const plantKey = (plant: { name: string | null; typed: string }): string => plant.name ?? plant.typed;

export function valueOf<Value>(report: Report, field: string): Value | null {
  const told = report.fields[field] as Told<Value> | undefined;
  return told === undefined ? null : told.value;
}

/** Minutes from start to end by the wall clock. */
export const minutesOf = (times: { start: string; end: string }): number => {
  const minute = (time: string): number => Number(time.slice(0, 2)) * 60 + Number(time.slice(3, 5));
  return minute(times.end) - minute(times.start);
};

/**
 * Puts a told value in; a doubt about the field is settled by it. That a place is private or not was said of that place:
 * of another one it is not known.
 */
export function tell(before: Report, field: string, value: Json, typed: string, message: string): Report {
  const report = field === 'place' ? forAnotherPlace(before, before, value as unknown as ToldPlace) : before;
  return changed(report, {
    ...(field === 'times' && report.liveMinutes !== null ? byTimes(value as unknown as Times) : {}),
    fields: { ...report.fields, [field]: { value, typed, message } },
    skipped: report.skipped.filter((skipped) => skipped !== field),
    doubts: report.doubts.filter((doubt) => doubt.field !== field),
  });
}

/** The clock of a live watch knows nothing of times that were told after it. */
const byTimes = (times: Times): Partial<Report> =>
  (times.end as string | null) === null ? {} : { liveMinutes: minutesOf(times) };

/** The report, where another place was told `before`, without what was said of that one alone. */
export function forAnotherPlace(report: Report, before: Report, place: ToldPlace): Report {
  const known = valueOf<ToldPlace>(before, 'place');
  if (known === null || !(isOtherPlace(known, place) || isOpenToAllByWords(report, known, place))) return report;
  const isTold = report.fields['private'] !== undefined || report.doubts.some(({ field }) => field === 'private');
  return isTold ? untell(report, 'private') : report;
}

/** "Not private" was said of words, which tell nobody where it is; now the place has a position that would be published. */
const isOpenToAllByWords = (report: Report, known: ToldPlace, place: ToldPlace): boolean =>
  known.latitude === null && place.latitude !== null && valueOf<boolean>(report, 'private') === false;

export function untell(report: Report, field: string): Report {
  if (field === 'plants')
    return changed(report, {
      plants: null,
      plantsTyped: [],
      plantsMessage: null,
      doubts: withoutDoubts(report, field),
    });
  if (field === 'tally') {
    return changed(report, {
      tally: null,
      total: null,
      restNone: false,
      tallyTyped: [],
      doubts: withoutDoubts(report, field),
    });
  }
  const fields = Object.fromEntries(Object.entries(report.fields).filter(([name]) => name !== field));
  return changed(report, { fields, doubts: withoutDoubts(report, field) });
}

const withoutDoubts = (report: Report, field: string) => report.doubts.filter((doubt) => doubt.field !== field);

/** Adds plants, or fills in the flowers of those already there. */
export function addPlants(report: Report, plants: readonly PlantInPatch[]): Report {
  const all = [...(report.plants ?? [])];
  for (const plant of plants) {
    const at = all.findIndex((known) => plantKey(known).toLowerCase() === plantKey(plant).toLowerCase());
    const known = all[at];
    if (known === undefined) all.push(plant);
    else all[at] = { ...known, flowers: plant.flowers ?? known.flowers };
  }
  return changed(report, { plants: all, plantsMessage: null });
}

export function setFlowers(report: Report, index: number, count: Count, asTyped: string): Report {
  const plants = (report.plants ?? []).map((plant, at) =>
    at === index ? { ...plant, flowers: { ...count, asTyped } } : plant,
  );
  return changed(report, {
    plants,
    plantsMessage: null,
    doubts: report.doubts.filter((doubt) => doubt.plant !== index),
  });
}

export function removePlant(report: Report, key: string): Report {
  return changed(report, {
    plants: (report.plants ?? []).filter((plant) => plantKey(plant) !== key),
    plantsMessage: null,
    tally: report.tally === null ? null : report.tally.filter((line) => line.plant !== key),
  });
}

/** Lines about the same queens: a later one replaces the earlier instead of being added to it. */
const sameQueens = (a: TallyLine, b: TallyLine): boolean =>
  a.plant === b.plant && a.bee === b.bee && a.caste === b.caste && a.seenBefore > 0 === b.seenBefore > 0;

/** Takes lines in. A zero line empties its plant; a line about queens told before corrects them. */
export function addLines(report: Report, lines: readonly TallyLine[]): Report {
  let all = [...(report.tally ?? [])];
  for (const line of lines) {
    if (line.count === 0) {
      all = all.filter((known) => known.plant !== line.plant);
      all.push(line);
      continue;
    }
    all = all.filter((known) => !(known.count === 0 && known.plant === line.plant));
    const at = line.plant === null ? -1 : all.findIndex((known) => sameQueens(known, line));
    if (at === -1) all.push(line);
    else all[at] = line;
  }
  return changed(report, { tally: all });
}

/** Plants by their keys, as the lists know them; their flowers are still to be asked. */
export const plantsByKey = (keys: readonly string[], context: Context): PlantInPatch[] =>
  keys.map((key) => {
    const rank = rankOf(key, context);
    return { name: rank === null ? null : key, rank, typed: key, flowers: null };
  });

/** A plant named only in the tally was watched too: it joins the patch. */
export function withPlantsOfTally(report: Report, context: Context): Report {
  const known = new Set((report.plants ?? []).map(plantKey));
  const named = (report.tally ?? []).flatMap(({ plant }) => plant ?? []);
  const missing = [...new Set(named)].filter((key) => !known.has(key));
  return missing.length === 0 ? report : addPlants(report, plantsByKey(missing, context));
}

/** Distinct queens told so far. */
export const queensOf = (lines: readonly TallyLine[]): number =>
  lines.reduce((sum, line) => sum + line.count - line.seenBefore, 0);

/** Whether a field is asked in this report at all: its conditions in the dialog file hold. */
export function applies(field: string, report: Report, scene: Scene): boolean {
  const { dialog } = scene.survey;
  const conditions = dialog.fields[field]?.when;
  if (conditions === undefined) return true;
  return Object.entries(conditions).every(([other, wanted]) => {
    const value = valueOf<Json>(report, other);
    if (value === null) return false;
    if (wanted === 'said') return true;
    if (wanted === 'new') return isNewPlace(value as unknown as ToldPlace, scene);
    return JSON.stringify(value) === JSON.stringify(wanted);
  });
}

/** Whether a field needs no more asking. */
function settled(field: string, report: Report, dialog: Dialog): boolean {
  if (report.skipped.includes(field)) return true;
  if (field === 'plants') return report.plants !== null && report.plants.length > 0 && !report.plantsOpen;
  if (field === 'tally') return report.tally !== null || report.total !== null;
  if (field === 'times') return valueOf<Times>(report, 'times')?.end != null;
  return report.fields[field] !== undefined || dialog.fields[field]?.optional === true;
}

/** Fields of a question that were never told, the optional ones too while the question is new. */
export function openFields(question: string, report: Report, scene: Scene): string[] {
  const { dialog } = scene.survey;
  const entry = dialog.questions.find((candidate) => candidate.question === question);
  const asked = report.asked.includes(question);
  const fields = (entry?.fields ?? []).filter((field) => applies(field, report, scene));
  const open = fields.filter((field) => !settled(field, report, dialog));
  if (open.length === 0 || asked) return open;
  const unsaid = (field: string): boolean => report.fields[field] === undefined && !report.skipped.includes(field);
  return fields.filter((field) => open.includes(field) || (dialog.fields[field]?.optional === true && unsaid(field)));
}

/** Fields that were asked along with others and not told: asked once by themselves, but not of a place told before. */
function stillUnsaid(question: string, report: Report, scene: Scene): string[] {
  const { dialog } = scene.survey;
  const place = valueOf<ToldPlace>(report, 'place');
  // a mail asks everything at once, and somebody in the field only what is needed
  if (scene.message.manner === 'all' || report.liveMinutes !== null) return [];
  if (!report.asked.includes(question) || report.stored !== null) return [];
  if (place !== null && wasUsedBefore(place, scene)) return [];
  const fields = dialog.questions.find((entry) => entry.question === question)?.fields ?? [];
  return fields.filter(
    (field) =>
      dialog.fields[field]?.askedAlone === true &&
      report.fields[field] === undefined &&
      !report.skipped.includes(field) &&
      applies(field, report, scene),
  );
}

/** What the tally still lacks once something of it is told. */
function openOfTally(report: Report): Asking | null {
  const lines = report.tally ?? [];
  if (report.total !== null && report.total > queensOf(lines)) return { kind: 'bees-of-total' };
  const line = lines.findIndex(({ plant }) => plant === null);
  if (line !== -1) return { kind: 'line-plant', line };
  const named = new Set(lines.map(({ plant }) => plant));
  const rest = (report.plants ?? []).map(plantKey).filter((key) => !named.has(key));
  if (report.tally !== null && report.total === null && !report.restNone && rest.length > 0)
    return { kind: 'rest', plants: rest };
  return null;
}

/** What to ask next: doubts first, then the dialog's questions in order; null when the report is complete. */
export function nextOpen(report: Report, scene: Scene): Asking | null {
  if (report.doubts.length > 0) return { kind: 'doubt' };
  for (const { question, fields } of scene.survey.dialog.questions) {
    const open = openFields(question, report, scene);
    const asks = open.length > 0 ? open : stillUnsaid(question, report, scene);
    if (asks.length > 0) return { kind: 'question', question, fields: asks, again: false };
    if (fields.includes('plants')) {
      const plant = (report.plants ?? []).findIndex(({ flowers }) => flowers === null);
      if (plant !== -1) return { kind: 'flowers', plant };
    }
    if (fields.includes('tally')) {
      const asking = openOfTally(report);
      if (asking) return asking;
    }
  }
  return null;
}
