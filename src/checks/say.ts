/** A finding as a sentence: one for the observer, who is asked, and one for the coordinator, who decides. */
import { Temporal } from 'temporal-polyfill';
import { timesSchema, type Times } from '../../shared/record.js';
import type { Survey } from '../../shared/survey.js';
import { metresPerUnit, toFahrenheit } from '../../shared/units.js';
import { say } from '../../shared/wording.js';
import type { CheckFinding } from './check.js';

const shortDay = { year: 'numeric', month: 'short', day: 'numeric', timeZone: 'UTC' } as const;
const shortTime = { hour: 'numeric', minute: '2-digit', timeZone: 'UTC' } as const;

function shownTemperature(celsius: number, { settings }: Survey): string {
  return settings.temperatureUnit === 'F'
    ? `${Math.round(toFahrenheit(celsius))} °F`
    : `${Math.round(celsius * 10) / 10} °C`;
}

/** Short distances in feet or metres, long ones in miles or kilometres. */
function shownDistance(metres: number, { settings }: Survey): string {
  const [short, long] = settings.lengthUnit === 'ft' ? (['ft', 'mi'] as const) : (['m', 'km'] as const);
  if (metres < 1000 * metresPerUnit[short]) return `${Math.round(metres / metresPerUnit[short])} ${short}`;
  const far = metres / metresPerUnit[long];
  return `${far < 10 ? Math.round(far * 10) / 10 : Math.round(far)} ${long}`;
}

const milliseconds = (day: string, time: string): number => Temporal.Instant.from(`${day}T${time}Z`).epochMilliseconds;

const shownDate = (day: string, { wording }: Survey): string =>
  new Intl.DateTimeFormat(wording.locale, shortDay).format(milliseconds(day, '00:00'));

function shownTimes({ start, end }: Times, { wording }: Survey): string {
  const day = '2000-01-01';
  const range = new Intl.DateTimeFormat(wording.locale, shortTime).formatRange(
    milliseconds(day, start),
    milliseconds(day, end),
  );
  // The language data sets thin spaces round the dash and before "PM"; plain terminals show them as boxes.
  return range.replaceAll(/[\u2009\u202f]/g, ' ');
}

/** A value as people read it: by the unit at the end of its name; one without a unit goes in as it is. */
function shownValue(name: string, value: CheckFinding['values'][string], survey: Survey): string | number {
  if (typeof value === 'number') {
    if (/celsius$/i.test(name)) return shownTemperature(value, survey);
    return /metres$/i.test(name) ? shownDistance(value, survey) : value;
  }
  if (typeof value === 'string') return /date$/i.test(name) ? shownDate(value, survey) : value;
  const times = timesSchema.safeParse(value);
  return times.success ? shownTimes(times.data, survey) : JSON.stringify(value);
}

/** One sentence or two in the survey's language and units; what is asked can be answered by yes or no. */
export function sayFinding(finding: CheckFinding, to: 'observer' | 'coordinator', survey: Survey): string {
  const { check, values } = finding;
  const phrase = to === 'observer' ? (`check-${check}` as const) : (`query-${check}` as const);
  const shown = Object.entries(values).map(([name, value]) => [name, shownValue(name, value, survey)] as const);
  return say(survey.wording, phrase, Object.fromEntries(shown));
}
