/** What is understood so far, as numbered lines: one line a field, in the dialog's order. */
import type { Context } from '../answers/index.js';
import { showDay } from '../../shared/display.js';
import type { Count, Patch, Sky, Temperature, Times, Wind } from '../../shared/record.js';
import { fill, say } from '../../shared/wording.js';
import { asTold } from './as-told.js';
import { applies, nextOpen, queensOf, valueOf } from './fields.js';
import { contextOf } from './hear.js';
import type { ToldPlace } from './places.js';
import {
  showCount,
  showLine,
  showPatch,
  showPlace,
  showPlantWithFlowers,
  showSky,
  showTemperature,
  showTimes,
  showWind,
} from './show.js';
import type { Json, Report, Scene } from './types.js';

/** A field's value in words; null where it was not told. */
export function shown(field: string, report: Report, scene: Scene): string | null {
  const { survey } = scene;
  const context = contextOf(scene, report);
  if (field === 'plants') {
    return report.plants === null || report.plants.length === 0
      ? null
      : report.plants.map((plant) => showPlantWithFlowers(plant, survey, context)).join('; ');
  }
  if (field === 'tally') return shownTally(report, scene, context);
  const value = valueOf<Json>(report, field);
  return value === null ? null : shownValue(field, value, scene);
}

function shownTally(report: Report, scene: Scene, context: Context): string | null {
  const { survey } = scene;
  if (report.tally === null)
    return report.total === null ? null : say(survey.wording, 'show-total', { total: report.total });
  const lines = report.tally.filter(({ count }) => count > 0);
  if (lines.length === 0) return say(survey.wording, 'show-no-queens');
  const told = report.tally.map((line) => showLine(line, report.plants ?? [], survey, context)).join('; ');
  const queens = queensOf(lines);
  // fewer than the number told first are still being asked for; more than it is worth a look
  if (report.total !== null && queens > report.total) {
    return say(survey.wording, 'show-total-differs', { lines: told, queens, total: report.total });
  }
  return told;
}

/** One value in words, as for an offer; standard fields in the survey's units, others as they are. */
export function shownValue(field: string, value: Json, scene: Scene): string {
  const { survey, local } = scene;
  const reader = survey.dialog.fields[field]?.reader ?? field;
  switch (reader) {
    case 'date':
      return showDay(value as string, survey.wording.locale, local.date);
    case 'times':
      return showTimes(value as Times, survey);
    case 'place':
      return showPlace(value as unknown as ToldPlace);
    case 'temperature':
      return showTemperature(value as Temperature, survey);
    case 'sky':
      return showSky(value as Sky, survey);
    case 'wind':
      return showWind(value as Wind, survey);
    case 'patch':
      return showPatch(value as Patch, survey);
    case 'yes-no':
      return say(survey.wording, value === true ? 'show-yes' : 'show-no');
    case 'count':
      return showCount(value as Count, survey);
    default:
      return typeof value === 'string' ? value : JSON.stringify(value);
  }
}

/** Fields in the order of their lines. */
export function lineFields(report: Report, scene: Scene): string[] {
  const { dialog } = scene.survey;
  const fields = dialog.questions
    .flatMap((question) => question.fields)
    .filter((field) => applies(field, report, scene));
  return report.fields['remark'] === undefined ? fields : [...fields, 'remark'];
}

/** The line of the temperature, for the example of a change; the first where a dialog has none. */
export const exampleLine = (report: Report, scene: Scene): number =>
  Math.max(0, lineFields(report, scene).indexOf('temperature')) + 1;

/** Each line's label and what was told; what is not told says so. */
export function summaryFields(report: Report, scene: Scene): { label: string; value: string }[] {
  const { wording } = scene.survey;
  const open = nextOpen(report, scene) !== null;
  return lineFields(report, scene).map((field) => ({
    label: wording.fields[field]?.label ?? field,
    value: shown(field, report, scene) ?? say(wording, open ? 'show-open' : 'show-left-out'),
  }));
}

/** "1. Date: Tue, May 5" and so on. */
export const summaryLines = (report: Report, scene: Scene): string[] =>
  summaryFields(report, scene).map(({ label, value }, at) => `${at + 1}. ${label}: ${value}`);

/** Values just taken, said back in few words. */
export function briefly(fields: readonly string[], report: Report, scene: Scene): string | null {
  // "Got it: yes" would say nothing
  const told = fields.filter((field) => scene.survey.dialog.fields[field]?.reader !== 'yes-no');
  const texts = told.flatMap((field) => asTold(field, report, scene) ?? shown(field, report, scene) ?? []);
  if (texts.length === 0) return null;
  // their full stop and ours are one too many
  const what = texts.join(' · ').replace(/\.+$/, '');
  return say(scene.survey.wording, 'got-it', { what });
}

/** The label of a field as people see it. */
export const labelOfField = (field: string, scene: Scene): string =>
  fill(scene.survey.wording, scene.survey.wording.fields[field]?.label ?? field).toLowerCase();
