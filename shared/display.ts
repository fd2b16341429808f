/** Days, times, temperatures and distances as people read them: in the language's way and the survey's units. */
import { Temporal } from 'temporal-polyfill';
import { metresPerUnit, toFahrenheit } from './units.js';
import type { LengthUnit, TemperatureUnit } from './vocabularies.js';

interface Formats {
  readonly day: Intl.DateTimeFormat;
  readonly dayWithYear: Intl.DateTimeFormat;
  readonly time: Intl.DateTimeFormat;
}

/** Made once for each language: making a format is far slower than using it. */
const formats = new Map<string, Formats>();

function formatsOf(locale: string): Formats {
  let kept = formats.get(locale);
  if (!kept) {
    const day = { month: 'short', day: 'numeric', timeZone: 'UTC' } as const;
    kept = {
      day: new Intl.DateTimeFormat(locale, { ...day, weekday: 'short' }),
      dayWithYear: new Intl.DateTimeFormat(locale, { ...day, year: 'numeric' }),
      time: new Intl.DateTimeFormat(locale, { hour: 'numeric', minute: '2-digit', timeZone: 'UTC' }),
    };
    formats.set(locale, kept);
  }
  return kept;
}

/** "Tue, May 5" in the year of `today`, else "May 5, 2026". Both are local days, `2026-05-05`. */
export function showDay(date: string, locale: string, today: string | null = null): string {
  const { day, dayWithYear } = formatsOf(locale);
  const { epochMilliseconds } = Temporal.Instant.from(`${date}T00:00:00Z`);
  return (date.slice(0, 4) === today?.slice(0, 4) ? day : dayWithYear).format(epochMilliseconds);
}

/** "10:40 AM" of a local time `10:40`. */
export function showClock(time: string, locale: string): string {
  const { epochMilliseconds } = Temporal.Instant.from(`2000-01-01T${time}:00Z`);
  // Some versions of the language data put a narrow no-break space before "PM", which plain terminals show as a box.
  return formatsOf(locale).time.format(epochMilliseconds).replaceAll('\u202f', ' ');
}

/** "10:40 – 10:55 AM" of two local times. */
export function showClockRange(start: string, end: string, locale: string): string {
  const at = (time: string): number => Temporal.Instant.from(`2000-01-01T${time}:00Z`).epochMilliseconds;
  return formatsOf(locale)
    .time.formatRange(at(start), at(end))
    .replaceAll(/[\u2009\u202f]/g, ' ');
}

/** A number without noise behind its point: 12, 4.5. */
export const plainNumber = (value: number, decimals: number): string => String(Number(value.toFixed(decimals)));

/** Whole degrees Fahrenheit, as thermometers there show them; Celsius to a tenth. */
export const showDegrees = (celsius: number, unit: TemperatureUnit): string =>
  unit === 'F' ? `${plainNumber(toFahrenheit(celsius), 0)} °F` : `${plainNumber(celsius, 1)} °C`;

/** Short distances in feet or metres, long ones in miles or kilometres. */
export function showDistance(metres: number, unit: LengthUnit): string {
  const [short, long] = unit === 'ft' ? (['ft', 'mi'] as const) : (['m', 'km'] as const);
  if (metres < 1000 * metresPerUnit[short]) return `${plainNumber(metres / metresPerUnit[short], 0)} ${short}`;
  const far = metres / metresPerUnit[long];
  return `${plainNumber(far, far < 10 ? 1 : 0)} ${long}`;
}
