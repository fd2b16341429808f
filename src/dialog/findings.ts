/** Runs the checks over a report. */
import { findingsOf as check, sayFinding, type CheckFinding, type Draft } from '../checks/index.js';
import type { Place, Temperature, Times } from '../../shared/record.js';
import { minutesOf, valueOf } from './fields.js';
import { savedAsPrivate, siteOf, type ToldPlace } from './places.js';
import type { Report, Scene } from './types.js';

/** Told in this report, else as the place was told before. */
export function isPrivate(report: Report, scene: Scene): boolean {
  const place = valueOf<ToldPlace>(report, 'place');
  return valueOf<boolean>(report, 'private') ?? (place !== null && savedAsPrivate(place, scene));
}

/** The place as the record has it. */
export function placeOf(report: Report, scene: Scene): Place | null {
  const place = valueOf<ToldPlace>(report, 'place');
  if (place === null) return null;
  return { ...place, site: siteOf(place, scene.survey), private: isPrivate(report, scene) };
}

function draftOf(report: Report, scene: Scene): Draft {
  const times = valueOf<Times>(report, 'times');
  return {
    id: report.stored?.id ?? null,
    observer: scene.history.person?.key ?? null,
    date: valueOf<string>(report, 'date'),
    times,
    minutes: report.liveMinutes ?? (times === null ? null : minutesOf(times)),
    place: placeOf(report, scene),
    temperature: valueOf<Temperature>(report, 'temperature'),
  };
}

export const findingsOf = (report: Report, scene: Scene): CheckFinding[] =>
  check(draftOf(report, scene), scene.history, scene.survey);

/** What the observer should look at before saying yes: one sentence a finding. */
export function findingsToAsk(report: Report, scene: Scene): string[] {
  return findingsOf(report, scene)
    .filter(({ weight }) => weight !== 'keep')
    .map((finding) => sayFinding(finding, 'observer', scene.survey));
}
