/** Turns a complete report into the record of a watch, and opens a stored watch again as a report. */
import { rankOf } from '../answers/index.js';
import { sayFinding } from '../checks/index.js';
import type {
  Change,
  Finding,
  Patch,
  PlantWatched,
  QueensRow,
  Query,
  Sky,
  Temperature,
  Times,
  Watch,
  Wind,
} from '../../shared/record.js';
import { say } from '../../shared/wording.js';
import { plantKey, valueOf, minutesOf } from './fields.js';
import { findingsOf, placeOf } from './findings.js';
import { contextOf } from './hear.js';
import { unitOf } from './show.js';
import { newReport } from './thread.js';
import type { Json, PlantInPatch, Report, Scene, TallyLine, Told } from './types.js';

/** Fields with a place of their own in the record; any other goes into `more`. */
const OWN_PLACE = new Set([
  'date',
  'times',
  'place',
  'private',
  'temperature',
  'sky',
  'wind',
  'patch',
  'habitat',
  'remark',
]);

function plantsOf(report: Report, scene: Scene): PlantWatched[] {
  return (report.plants ?? []).map((plant, at) => ({
    plant: at + 1,
    name: plant.name,
    rank: plant.rank,
    asTyped: plant.typed,
    unit: unitOf(plant.name, scene.survey),
    flowers: plant.flowers ?? { value: 0, low: null, high: null, about: true, asTyped: '' },
  }));
}

function queensOf(report: Report): QueensRow[] {
  const plants = report.plants ?? [];
  return (report.tally ?? [])
    .filter(({ count }) => count > 0)
    .map((line, at) => ({
      row: at + 1,
      plant: Math.max(1, plants.findIndex((plant) => plantKey(plant) === line.plant) + 1),
      bee: line.bee,
      rank: line.rank,
      asTyped: line.typed,
      count: line.count,
      seenBefore: line.seenBefore,
      withPollen: line.withPollen,
      caste: line.caste,
      doubt: line.doubt,
      determinations: [],
    }));
}

function asTypedOf(report: Report): Record<string, string> {
  const typed = Object.fromEntries(Object.entries(report.fields).map(([field, told]) => [field, told.typed]));
  if (report.plantsTyped.length > 0) typed['plants'] = report.plantsTyped.join('\n');
  if (report.tallyTyped.length > 0) typed['tally'] = report.tallyTyped.join('\n');
  return typed;
}

/** What the coordinator should settle: doubts of checks that were stood by, and plants that no list names. */
function queriesOf(report: Report, scene: Scene, earlier: readonly Query[]): Query[] {
  const { survey, now } = scene;
  const asked = findingsOf(report, scene)
    .filter(({ weight }) => weight === 'query')
    .map((finding) => ({
      check: finding.check,
      question: sayFinding(finding, 'coordinator', survey),
    }));
  const unnamed = (report.plants ?? [])
    .filter(({ name }) => name === null)
    .map(({ typed }) => ({ check: null, question: say(survey.wording, 'query-plant-name', { plant: typed }) }));
  const fresh = [...asked, ...unnamed].filter(({ question }) => !earlier.some((query) => query.question === question));
  const last = Math.max(0, ...earlier.map(({ number }) => number));
  return [
    ...earlier,
    ...fresh.map(({ check, question }, at) => ({
      number: last + at + 1,
      check,
      to: 'coordinator' as const,
      question,
      state: 'open' as const,
      answer: null,
      by: null,
      openedAt: now,
      closedAt: null,
    })),
  ];
}

/** Parts of the record whose change is kept in its history, by JSON Pointer. */
const REMEMBERED = [
  'status',
  'date',
  'times',
  'minutes',
  'place',
  'temperature',
  'sky',
  'wind',
  'patch',
  'habitat',
  'remark',
  'more',
  'plants',
  'queens',
] as const;

function changesOf(before: Watch, after: Watch, scene: Scene, role: Change['role']): Change[] {
  return REMEMBERED.filter((part) => JSON.stringify(before[part]) !== JSON.stringify(after[part])).map((part) => ({
    at: scene.now,
    by: role === 'observer' ? before.observer : 'queenpost',
    role,
    through: scene.message.channel,
    path: `/${part}`,
    from: before[part],
    to: after[part],
    why: null,
  }));
}

/** The watch of a complete report. `reply` is what the observer said to what the checks noticed. */
export function watchOf(
  report: Report,
  scene: Scene,
  status: 'confirmed' | 'unconfirmed',
  reply: string | null,
): Watch {
  const { history, survey, now, message } = scene;
  const before = report.stored;
  const date = valueOf<string>(report, 'date');
  const times = valueOf<Times>(report, 'times');
  if (date === null || times === null) {
    throw new Error(
      `A watch needs date and times; report ${report.id} has date ${date} and times ${JSON.stringify(times)}.`,
    );
  }
  const queens = queensOf(report);
  const findings: Finding[] = findingsOf(report, scene).map(({ check, weight, values }) => ({
    check,
    weight,
    values,
    reply: weight === 'keep' ? null : reply,
    at: now,
  }));
  const more = Object.entries(report.fields).filter(([field]) => !OWN_PLACE.has(field));
  const watch: Watch = {
    id: before?.id ?? report.id,
    number: before?.number ?? history.fresh.watchNumber,
    survey: survey.settings.key,
    dialog: survey.dialog.name,
    dialogVersion: survey.dialog.version,
    // who joined two threads meanwhile has another key than the watch they opened
    observer: history.person?.key ?? before?.observer ?? history.fresh.observer,
    via: before?.via ?? message.channel,
    status: report.practice ? 'practice' : status,
    statusReason: !report.practice && status === 'unconfirmed' ? say(survey.wording, 'reason-unconfirmed') : null,
    date,
    times,
    timeZone: survey.settings.timeZone,
    minutes: report.liveMinutes ?? minutesOf(times),
    place: placeOf(report, scene),
    temperature: valueOf<Temperature>(report, 'temperature'),
    sky: valueOf<Sky>(report, 'sky'),
    wind: valueOf<Wind>(report, 'wind'),
    patch: valueOf<Patch>(report, 'patch'),
    habitat: valueOf<string>(report, 'habitat'),
    remark: valueOf<string>(report, 'remark'),
    watchers: before?.watchers ?? 1,
    more: Object.fromEntries(more.map(([field, told]) => [field, told.value])) as Watch['more'],
    asTyped: asTypedOf(report),
    plants: plantsOf(report, scene),
    total: queens.reduce((sum, row) => sum + row.count - row.seenBefore, 0),
    queens,
    photographs: report.photographs.map((photograph) => ({
      ...photograph,
      licence: history.person?.photographLicence ?? null,
    })),
    findings,
    queries: queriesOf(report, scene, before?.queries ?? []),
    history: [],
    storedAt: before?.storedAt ?? now,
    changedAt: now,
  };
  if (before === null) return watch;
  const kept = keepDeterminations(before, watch);
  const role = status === 'unconfirmed' ? 'program' : 'observer';
  return { ...kept, history: [...before.history, ...changesOf(before, kept, scene, role)] };
}

/** A row that an observer's correction left as it was keeps what experts determined about it. */
function keepDeterminations(before: Watch, after: Watch): Watch {
  const plantName = (watch: Watch, row: QueensRow): string | undefined => {
    const plant = watch.plants.find(({ plant }) => plant === row.plant);
    return plant === undefined ? undefined : (plant.name ?? plant.asTyped);
  };
  const queens = after.queens.map((row) => {
    const same = before.queens.find(
      (old) =>
        old.bee === row.bee &&
        old.caste === row.caste &&
        plantName(before, old) === plantName(after, row) &&
        old.count === row.count,
    );
    return same === undefined ? row : { ...row, determinations: same.determinations };
  });
  return { ...after, queens };
}

/** A stored watch as a report again, to be mended. */
export function reportOf(watch: Watch, scene: Scene): Report {
  const told = (field: string, value: Json): [string, Told] => [
    field,
    { value, typed: watch.asTyped[field] ?? '', message: scene.message.id },
  ];
  const { site: _site, private: isPrivate, ...place } = watch.place ?? { site: null, private: false };
  const fields: [string, Told][] = [told('date', watch.date), told('times', watch.times)];
  if (watch.place !== null) fields.push(told('place', place), told('private', isPrivate));
  for (const field of ['temperature', 'sky', 'wind', 'patch', 'habitat', 'remark'] as const) {
    const value = watch[field];
    if (value !== null) fields.push(told(field, value));
  }
  for (const [field, value] of Object.entries(watch.more)) fields.push(told(field, value));
  const known = new Set(fields.map(([field]) => field));
  const plants = watch.plants.map((plant): PlantInPatch => ({
    name: plant.name,
    rank: plant.rank,
    typed: plant.asTyped,
    flowers: plant.flowers,
  }));
  const lines = watch.queens.map((row): TallyLine => {
    const plant = plants[row.plant - 1];
    return {
      plant: plant === undefined ? null : plantKey(plant),
      bee: row.bee,
      rank: row.rank ?? (row.bee === null ? null : rankOf(row.bee, contextOf(scene, null))),
      typed: row.asTyped,
      count: row.count,
      seenBefore: row.seenBefore,
      withPollen: row.withPollen,
      caste: row.caste,
      doubt: row.doubt,
    };
  });
  return {
    ...newReport(scene.history.fresh.report, scene.message),
    stored: watch,
    practice: watch.status === 'practice',
    fields: Object.fromEntries(fields),
    skipped: Object.keys(scene.survey.dialog.fields).filter(
      (field) => !known.has(field) && field !== 'plants' && field !== 'tally',
    ),
    asked: scene.survey.dialog.questions.map(({ question }) => question),
    plants,
    tally: lines,
    restNone: true,
    plantsTyped: watch.asTyped['plants'] === undefined ? [] : [watch.asTyped['plants']],
    tallyTyped: watch.asTyped['tally'] === undefined ? [] : [watch.asTyped['tally']],
    liveMinutes: watch.minutes === minutesOf(watch.times) ? null : watch.minutes,
    photographs: watch.photographs,
    summarised: true,
  };
}
