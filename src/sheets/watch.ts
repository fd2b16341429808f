/** The record of a watch that a sheet told, and whether one that is stored already is the same. */
import type { Query, Watch } from '../../shared/record.js';
import type { Survey } from '../../shared/survey.js';
import { say } from '../../shared/wording.js';
import type { SheetWatch } from './read-watch.js';

/** What a sheet cannot know. */
export interface Stamp {
  readonly id: string;
  readonly number: number;
  /** The observer's key. */
  readonly observer: string;
  /** An instant. */
  readonly now: string;
  readonly survey: Survey;
}

/** A plant that no list names is the coordinator's to settle, as after a conversation. */
export function plantQueries(watch: Watch, { survey, now }: Pick<Stamp, 'survey' | 'now'>): Query[] {
  return watch.plants
    .filter(({ name }) => name === null)
    .map(({ asTyped }, at) => ({
      number: at + 1,
      check: null,
      to: 'coordinator',
      question: say(survey.wording, 'query-plant-name', { plant: asTyped }),
      state: 'open',
      answer: null,
      by: null,
      openedAt: now,
      closedAt: null,
    }));
}

/** Throws for a watch with complaints: it is no whole one. Findings are still to be added. */
export function watchOf(told: SheetWatch, { id, number, observer, now, survey }: Stamp): Watch {
  const { date, times, minutes, place } = told;
  if (told.complaints.length > 0 || date === null || times === null || minutes === null) {
    throw new Error(`The watch of line ${told.line} is not whole: ${told.complaints.length} complaints.`);
  }
  const watch: Watch = {
    id,
    number,
    survey: survey.settings.key,
    dialog: survey.dialog.name,
    dialogVersion: survey.dialog.version,
    observer,
    via: 'import',
    status: told.status,
    statusReason: null,
    date,
    times,
    timeZone: survey.settings.timeZone,
    minutes,
    // nobody said whether it is a private garden: it is then treated as one, and shown exactly nowhere
    place: place === null ? null : { ...place, private: place.private ?? true },
    temperature: told.temperature,
    sky: told.sky,
    wind: told.wind,
    patch: told.patch,
    habitat: told.habitat,
    remark: told.remark,
    watchers: told.watchers,
    more: {},
    asTyped: { ...told.asTyped },
    plants: [...told.plants],
    total: told.queens.reduce((sum, { count, seenBefore }) => sum + count - seenBefore, 0),
    queens: [...told.queens],
    photographs: [],
    findings: [],
    queries: [],
    history: [],
    storedAt: now,
    changedAt: now,
  };
  return { ...watch, queries: plantQueries(watch, { survey, now }) };
}

/** Parts that a stored watch may have otherwise than the sheet, by the names that people know them by. */
const COMPARED: readonly (readonly [name: string, part: (watch: Watch) => unknown])[] = [
  ['times', ({ times, minutes }) => [times, minutes]],
  ['place', ({ place }) => place && [place.latitude, place.longitude, place.words]],
  ['temperature', ({ temperature }) => temperature?.celsius],
  ['sky', ({ sky }) => sky && [sky.cloud, sky.rain]],
  ['wind', ({ wind }) => wind?.beaufort],
  ['patch', ({ patch }) => patch?.squareMetres],
  ['plants', ({ plants }) => plants.map(({ name, asTyped, flowers }) => [name ?? asTyped, flowers.value])],
  [
    'queens',
    ({ plants, queens }) =>
      queens.map(({ plant, bee, count, seenBefore }) => {
        const on = plants.find((one) => one.plant === plant);
        return [on?.name ?? on?.asTyped, bee, count, seenBefore];
      }),
  ],
];

/** What two records of a watch do not agree in. */
export const differences = (one: Watch, other: Watch): string[] =>
  COMPARED.filter(([, part]) => JSON.stringify(part(one)) !== JSON.stringify(part(other))).map(([name]) => name);
