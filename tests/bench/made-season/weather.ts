/** The weather of one watch, as it was and as it was typed. */
import type { Sky, Temperature, Wind } from '../../../shared/record.js';
import type { Survey } from '../../../shared/survey.js';
import type { Cloud } from '../../../shared/vocabularies.js';
import type { Chance } from './chance.js';
import type { Day } from './days.js';

export interface Told<Value> {
  readonly value: Value;
  readonly typed: string;
}
export interface Weather {
  /** As it truly was; null below means that the observer skipped the question. */
  readonly celsius: number;
  readonly beaufort: number;
  readonly raining: boolean;
  readonly temperature: Told<Temperature> | null;
  readonly sky: Told<Sky> | null;
  readonly wind: Told<Wind> | null;
}

const SKIES: Readonly<Record<Cloud, readonly string[]>> = {
  clear: ['sunny', 'clear', 'not a cloud'],
  few: ['mostly sunny', 'thin high cloud'],
  scattered: ['partly cloudy', 'sun and clouds', 'partly sunny'],
  broken: ['mostly cloudy'],
  overcast: ['overcast', 'cloudy', 'grey'],
};

/** The okta classes of meteorology. */
function cloudOf(oktas: number): Cloud {
  if (oktas === 0) return 'clear';
  if (oktas <= 2) return 'few';
  if (oktas <= 4) return 'scattered';
  return oktas <= 7 ? 'broken' : 'overcast';
}

const WARMEST_MINUTE = 15 * 60 + 30;
/** So many degrees colder an hour away from the warmest, growing by the square. */
const COLDER_BY_HOUR = 0.15;

/** Below this a bare number could be either unit, so whoever types it says which. */
const BARE_FAHRENHEIT = 45;

function temperature(celsius: number, unit: 'F' | 'C', chance: Chance): Told<Temperature> {
  if (unit === 'C') {
    const degrees = Math.round(celsius);
    return { value: { celsius: degrees }, typed: chance.one([`${degrees} C`, `${degrees} °C`]) };
  }
  const degrees = Math.round((celsius * 9) / 5 + 32);
  const typed = degrees < BARE_FAHRENHEIT || chance.yes(0.4) ? `${degrees}F` : String(degrees);
  return { value: { celsius: Math.round((degrees - 32) * (5 / 9) * 10) / 10 }, typed };
}

export function weatherAt(day: Day, minuteOfDay: number, survey: Survey, chance: Chance): Weather {
  const hours = (minuteOfDay - WARMEST_MINUTE) / 60;
  const celsius = day.warmest - COLDER_BY_HOUR * hours * hours + 0.7 * chance.normal();
  const raining = chance.yes(day.rainy ? 0.12 : 0.003);
  const cloud = raining
    ? 'overcast'
    : cloudOf(Math.min(8, Math.max(0, Math.round(day.clouds + 1.3 * chance.normal()))));
  const beaufort = Math.min(7, Math.max(0, Math.round(day.beaufort + 0.7 * chance.normal())));

  const sky = { cloud, rain: raining };
  return {
    celsius,
    beaufort,
    raining,
    temperature: chance.yes(0.015) ? null : temperature(celsius, survey.settings.temperatureUnit, chance),
    sky: chance.yes(0.02)
      ? null
      : { value: sky, typed: raining ? 'overcast, light drizzle' : chance.one(SKIES[cloud]) },
    wind: chance.yes(0.015) ? null : { value: { beaufort }, typed: survey.wording.labels.winds[beaufort] ?? 'windy' },
  };
}
