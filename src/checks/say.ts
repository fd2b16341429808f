/** A finding as a sentence: one for the observer, who is asked, and one for the coordinator, who decides. */
import { showClockRange, showDay, showDegrees, showDistance } from '../../shared/display.js';
import { timesSchema } from '../../shared/record.js';
import type { Survey } from '../../shared/survey.js';
import { say } from '../../shared/wording.js';
import type { CheckFinding } from './check.js';

/** A value as people read it: by the unit at the end of its name; one without a unit goes in as it is. */
function shownValue(name: string, value: CheckFinding['values'][string], survey: Survey): string | number {
  const { settings, wording } = survey;
  if (typeof value === 'number') {
    if (/celsius$/i.test(name)) return showDegrees(value, settings.temperatureUnit);
    return /metres$/i.test(name) ? showDistance(value, settings.lengthUnit) : value;
  }
  if (typeof value === 'string') return /date$/i.test(name) ? showDay(value, wording.locale) : value;
  const times = timesSchema.safeParse(value);
  return times.success ? showClockRange(times.data.start, times.data.end, wording.locale) : JSON.stringify(value);
}

/** One sentence or two in the survey's language and units; what is asked can be answered by yes or no. */
export function sayFinding(finding: CheckFinding, to: 'observer' | 'coordinator', survey: Survey): string {
  const { check, values } = finding;
  const phrase = to === 'observer' ? (`check-${check}` as const) : (`query-${check}` as const);
  const shown = Object.entries(values).map(([name, value]) => [name, shownValue(name, value, survey)] as const);
  return say(survey.wording, phrase, Object.fromEntries(shown));
}
