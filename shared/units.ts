/** Units of everyday speech and what they are in those of the record: metres, square metres, °C, Beaufort. */
import type { SpeedUnit, TemperatureUnit } from './vocabularies.js';

/**
 * Exact by definition. Source: NIST Special Publication 811, appendix B.8 (international inch, foot, yard and mile of
 * 1959; the US survey foot is not meant).
 */
export const metresPerUnit = {
  in: 0.0254,
  ft: 0.3048,
  yd: 0.9144,
  mi: 1609.344,
  mm: 0.001,
  cm: 0.01,
  m: 1,
  km: 1000,
} as const;
export type LengthName = keyof typeof metresPerUnit;

/**
 * The acre of 43 560 square international feet, exact. (NIST SP 811 prints 4046.873 for the acre of the US survey
 * foot, retired in 2022; over a patch the two part in the sixth figure.)
 */
export const squareMetresPerAcre = 4046.8564224;
/** Exact. Source: NIST SP 811, appendix B.8. */
export const squareMetresPerHectare = 10_000;

/** °C from degrees of that unit, unrounded. Source: NIST SP 811, appendix B.8: (°F − 32) / 1.8. */
export const toCelsius = (degrees: number, unit: TemperatureUnit): number =>
  unit === 'C' ? degrees : ((degrees - 32) * 5) / 9;

/** °F from °C, unrounded. */
export const toFahrenheit = (celsius: number): number => (celsius * 9) / 5 + 32;

/**
 * Rounds to that many decimals as people do: half away from zero, and a half that only binary fractions hide
 * (1.005) is still a half. Good for magnitudes below a thousand million.
 */
export function rounded(value: number, decimals: number): number {
  const scale = 10 ** decimals;
  const size = Math.round(Math.abs(value) * scale * (1 + 1e-12)) / scale;
  return value < 0 && size !== 0 ? -size : size;
}

/**
 * The lowest speed of Beaufort 1 to 12 in each unit. Source: the Beaufort scale as the WMO gives it (Guide to
 * Meteorological Instruments and Methods of Observation, WMO-No. 8, wind chapter: knots, m/s, km/h; miles per hour
 * as the UK Met Office and the US National Weather Service print it). The rows are not conversions of one another:
 * each unit is read by its own.
 */
const LOWEST_SPEEDS_OF_BEAUFORT: Readonly<Record<SpeedUnit, readonly number[]>> = {
  kn: [1, 4, 7, 11, 17, 22, 28, 34, 41, 48, 56, 64],
  'm/s': [0.3, 1.6, 3.4, 5.5, 8.0, 10.8, 13.9, 17.2, 20.8, 24.5, 28.5, 32.7],
  'km/h': [1, 6, 12, 20, 29, 39, 50, 62, 75, 89, 103, 118],
  mph: [1, 4, 8, 13, 19, 25, 32, 39, 47, 55, 64, 73],
};

/** Exact: the international mile and nautical mile over the hour. */
const METRES_PER_SECOND: Readonly<Record<SpeedUnit, number>> = {
  kn: 1852 / 3600,
  'm/s': 1,
  'km/h': 1 / 3.6,
  mph: 1609.344 / 3600,
};

const forceOf = (speed: number, unit: SpeedUnit): number =>
  LOWEST_SPEEDS_OF_BEAUFORT[unit].filter((lowest) => speed >= lowest).length;

/**
 * Beaufort force, 0 to 12, of a speed in that unit. A speed between two printed rows, such as the 12.5 mph in the middle
 * of "10 to 15", goes by the rows in metres per second, which are the finest.
 */
export function beaufortOf(speed: number, unit: SpeedUnit): number {
  const force = forceOf(speed, unit);
  const above = LOWEST_SPEEDS_OF_BEAUFORT[unit][force];
  if (unit === 'm/s' || force === 0 || above === undefined || speed <= above - 1) return force;
  return Math.min(force + 1, Math.max(force, forceOf(speed * METRES_PER_SECOND[unit], 'm/s')));
}
