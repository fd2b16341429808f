/** Takes into a report whatever a message tells: the fields asked for by bare values, all others by their own words. */
import {
  fold,
  rankOf,
  readFields,
  readPlantsAlone,
  readYesNo,
  type Context,
  type PlantTold,
  type Reading,
  type TallyRow,
  saysAnyOf,
} from '../answers/index.js';
import type { Ask } from '../../shared/phrases.js';
import type { Times } from '../../shared/record.js';
import { addLines, addPlants, plantKey, tell, untell, valueOf, withPlantsOfTally } from './fields.js';
import { apart } from './doubts/inexact-rows.js';
import { habitatBehind, habitatIn, habitatSaid } from './habitat.js';
import { givesFew } from './few-flowers.js';
import { besideTold } from './half-told.js';
import { privateByWords, readPrivate, siteAmong, tellsWhose } from './hear-place.js';
import { isOwnWords, isStandard, readOwnField, STANDARD } from './own-fields.js';
import { changed } from './thread.js';
import type { Doubt, Json, PlantInPatch, Report, Scene, TallyLine } from './types.js';

/** What a message came to. */
export interface Heard {
  readonly report: Report;
  /** Fields whose value was taken, in the order of the dialog. */
  readonly taken: readonly string[];
  /** What to ask back where a field that was asked for was not understood. */
  readonly ask: Ask | null;
  /** True where anything was taken, or at least an offer can be made. */
  readonly understood: boolean;
}

export function contextOf(scene: Scene, report: Report | null): Context {
  return {
    survey: scene.survey.settings,
    words: scene.survey.words,
    names: scene.survey.names,
    today: scene.local.date,
    time: scene.local.time,
    watched: report === null ? [] : [...new Set([...(report.plants ?? []).map(plantKey), ...plantsOffered(report)])],
    of: null,
  };
}

/** Plants whose flowers are doubtful are watched all the same: "the marigolds had one" is of those marsh marigolds. */
const plantsOffered = ({ doubts }: Report): string[] =>
  doubts
    .filter(({ field, offers }) => field === 'plants' && offers.length === 1)
    .flatMap(({ offers }) => (offers[0] as unknown as readonly PlantTold[]).map((told) => plantKey(plantOf(told))));

export const plantOf = (told: PlantTold): PlantInPatch => ({
  name: told.name,
  rank: told.rank,
  typed: told.asTyped,
  flowers: told.flowers === null ? null : { ...told.flowers, asTyped: told.flowersTyped ?? told.asTyped },
});

export const lineOf = (row: TallyRow, typed: string, context: Context): TallyLine => ({
  plant: row.plant,
  bee: row.bee,
  rank: row.bee === null ? null : rankOf(row.bee, context),
  typed: row.typed?.bee ?? typed,
  count: row.count,
  seenBefore: row.seenBefore ?? 0,
  withPollen: row.withPollen ?? null,
  caste: row.caste ?? null,
  doubt: row.doubt === true,
});

/** Plants of the tally that the patch does not have yet join it. */
export const joined = (report: Report, scene: Scene): Report => {
  // before any plant was told, lines wait for the plants' own question
  return report.plants === null ? report : withPlantsOfTally(report, contextOf(scene, report));
};

function takeSure(
  report: Report,
  field: string,
  value: unknown,
  typed: string,
  scene: Scene,
  replacing: boolean,
): Report {
  const { id } = scene.message;
  if (field === 'plants') {
    const plants = (value as readonly PlantTold[]).map(plantOf);
    const before = replacing ? untell(report, 'plants') : report;
    const kept = plants.map((plant) => {
      const known = (report.plants ?? []).find((other) => plantKey(other) === plantKey(plant));
      return { ...plant, flowers: plant.flowers ?? known?.flowers ?? null };
    });
    const added = addPlants(before, kept);
    return changed(added, {
      plantsTyped: [...before.plantsTyped, typed],
      plantsMessage: before.plants === null ? id : null,
      plantsOpen: false,
      doubts: added.doubts.filter((doubt) => !isToldBy(doubt, plants)),
    });
  }
  if (field === 'tally') {
    const before = replacing ? untell(report, 'tally') : report;
    const lines = (value as readonly TallyRow[]).map((row) => lineOf(row, typed, contextOf(scene, report)));
    return joined(
      changed(addLines(before, lines), { tallyTyped: [...before.tallyTyped, typed], tallyMessage: id }),
      scene,
    );
  }
  return tell(report, field, value as Json, typed, id);
}

/** "Bluebells 80" after "bluebells maybe 80ish", and after a question in between: nothing is left to ask back. */
const isToldBy = ({ field, offers }: Doubt, plants: readonly PlantInPatch[]): boolean =>
  field === 'plants' &&
  offers.some((offer) =>
    (offer as unknown as readonly PlantTold[])
      .map(plantOf)
      .every((doubted) => plants.some((told) => told.flowers !== null && plantKey(told) === plantKey(doubted))),
  );

/** A start alone: the end is asked for, with the survey's length offered. */
function startAlone(times: { start: string; end: string | null }, typed: string, scene: Scene): Doubt | null {
  if (times.end !== null) return null;
  const [hour, minute] = times.start.split(':').map(Number) as [number, number];
  const end = hour * 60 + minute + scene.survey.settings.protocol.minutes;
  const offers = end < 24 * 60 ? [{ start: times.start, end: clock(end) }] : [];
  return { field: 'times', plant: null, offers, ask: 'times-no-end', typed };
}

/** `HH:MM` of that many minutes after midnight. */
export const clock = (minutes: number): string =>
  `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(Math.floor(minutes % 60)).padStart(2, '0')}`;

/** Takes one field's reading in: a sure one is told, an unsure one becomes a doubt. */
export function takeReading(
  report: Report,
  field: string,
  reading: Reading<unknown>,
  typed: string,
  scene: Scene,
  replacing = false,
): Report {
  switch (reading.state) {
    case 'sure': {
      if (field === 'times') {
        const doubt = startAlone(reading.value as Times, typed, scene);
        if (doubt) return withDoubt(report, doubt);
      }
      return takeSure(report, field, reading.value, typed, scene, replacing);
    }
    case 'unsure':
      return withDoubt(report, {
        field,
        plant: null,
        offers: (reading.ask === 'tally-inexact' ? apart(reading.offer as TallyRow[][]) : reading.offer) as Json[],
        ask: reading.ask,
        typed,
      });
    case 'none':
      return report;
  }
}

/** The latest doubt about a field takes the place of an earlier one. */
export const withDoubt = (report: Report, doubt: Doubt): Report =>
  changed(report, {
    doubts: [...report.doubts.filter(({ field, plant }) => field !== doubt.field || plant !== doubt.plant), doubt],
  });

/** "Sorry, wrong day, it was Wednesday": the words around what is put right are no name of a place. */
function beginsCorrecting(text: string, { words }: Context): boolean {
  const begin = fold(text).trim();
  return words.hedges.correcting.some((word) => begin.startsWith(word) && !/^\p{L}/u.test(begin.slice(word.length)));
}

/** The kind of place that a message tells; asked for alone, any words but a yes or no. */
function habitatTold(
  text: string,
  { fields, left }: { fields: { place?: Reading<unknown> }; left: string },
  isOfPatch: boolean,
  alone: boolean,
  context: Context,
): string {
  const place = isOfPatch && fields.place?.state === 'sure' ? (fields.place.value as { words: string }).words : '';
  const kind = habitatIn(`${left}, ${place}`, context);
  return kind !== '' || !alone || readYesNo(text, context).state === 'sure' ? kind : habitatSaid(text, context);
}

/**
 * Reads a text into the report. `asked` are the fields it answers; with `replacing`, plants and tally told anew take the
 * place of the old ones. Own fields of a dialog are only read while they are asked for.
 */
export function hear(report: Report, text: string, asked: readonly string[], scene: Scene, replacing = false): Heard {
  const context = contextOf(scene, report);
  const standard = asked.filter(isStandard);
  const found = readFields(text, context, standard);
  let next = report;
  const taken: string[] = [];
  let ask: Ask | null = null;
  let understood = false;
  const knowsNoPlace = report.fields['place'] === undefined && !asked.includes('place');
  // "8 by 4 ft in my garden", told of the patch, tells what kind of place it is
  const isOfPatch =
    asked.includes('habitat') && report.fields['place'] !== undefined && !beginsCorrecting(text, context);
  const isOfOwner =
    report.fields['place'] !== undefined && tellsWhose(text, asked, context) && !beginsCorrecting(text, context);
  for (const field of STANDARD) {
    const read = found.fields[field] ?? (field === 'place' && knowsNoPlace ? siteAmong(found.left, scene) : null);
    if (read === null) continue;
    if (field === 'place' && isOfPatch) continue;
    if ((field === 'place' || field === 'sky') && isOfOwner) continue;
    // a field told in passing never overrides one that is settled, unless this is the question for it
    const reading = besideTold(field, read, { text, left: found.left }, report, context, scene);
    if (reading.state === 'none') {
      if (standard.includes(field)) ask ??= reading.ask;
      continue;
    }
    if (scene.survey.dialog.fields[field] === undefined) continue;
    // "none, too windy I think" leaves the wind that was told
    const isAside = reading.state === 'unsure' && report.fields[field] !== undefined && !asked.includes(field);
    if (isAside) continue;
    if (field === 'place' && taken.length > 0 && beginsCorrecting(text, context)) continue;
    understood = true;
    // "bee on dandelion 1", where something else is asked
    const isOfPlants = field === 'plants' && reading.state === 'sure' && asked.length > 0 && !asked.includes(field);
    if (isOfPlants && givesFew(report, reading.value as readonly PlantTold[], text, context.words)) continue;
    next = takeReading(next, field, reading, text, scene, replacing && standard.includes(field));
    if (field === 'place') next = privateByWords(next, text, scene);
    if (!next.doubts.some((doubt) => doubt.field === field)) taken.push(field);
  }
  if (found.second !== null && next.doubts.some(({ ask: why }) => why === 'note-two-watches'))
    next = changed(next, { second: found.second });
  // "just finished" tells the day too
  const isToday =
    understood && next.fields['date'] === undefined && saysAnyOf(text, scene.survey.words.times.justEnded);
  if (isToday && scene.survey.dialog.fields['date'] !== undefined) {
    next = tell(next, 'date', scene.local.date.toString(), text, scene.message.id);
    taken.push('date');
  }
  for (const field of asked) {
    if (isStandard(field)) continue;
    if (field === 'habitat') {
      const kind = habitatTold(text, found, isOfPatch, asked.length === 1 && taken.length === 0, context);
      if (kind !== '') {
        next = tell(next, field, kind, text, scene.message.id);
        taken.push(field);
        understood = true;
      }
      continue;
    }
    const reading = field === 'private' ? readPrivate(text, context) : readOwnField(field, text, context, scene);
    if (reading === null) continue;
    if (reading.state === 'none') {
      ask ??= reading.ask;
      continue;
    }
    understood = true;
    next = takeReading(next, field, reading, text, scene);
    if (reading.state === 'sure') taken.push(field);
  }
  // "bluebells and violets", whatever was asked; where words are asked for they are the answer
  const wordsAsked = asked.some(
    (field) => ['place', 'plants', 'tally', 'habitat'].includes(field) || isOwnWords(field, scene),
  );
  const alone = understood || wordsAsked || replacing ? null : readPlantsAlone(text, context);
  if (alone && scene.survey.dialog.fields['plants'] !== undefined) {
    understood = true;
    next = takeReading(next, 'plants', alone, text, scene);
    taken.push('plants');
  }
  const { patch } = found.fields;
  const mayTellHabitat = scene.survey.dialog.fields['habitat'] !== undefined && report.fields['habitat'] === undefined;
  if (!asked.includes('habitat') && mayTellHabitat && patch !== undefined && patch.state !== 'none') {
    const kind = habitatBehind(text, patch.used, context);
    if (kind !== '') {
      next = tell(next, 'habitat', kind, text, scene.message.id);
      taken.push('habitat');
    }
  }
  // of "yesterday", told where a place was asked for, no words are left: that is no fault of theirs
  return { report: next, taken, ask: understood && ask === 'empty' ? null : ask, understood };
}

/** The value of a told field, or null: for callers that only compare. */
export const toldTimes = (report: Report): Times | null => valueOf<Times>(report, 'times');
