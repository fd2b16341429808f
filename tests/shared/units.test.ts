import { expect, test } from 'vitest';
import {
  beaufortOf,
  metresPerUnit,
  rounded,
  squareMetresPerAcre,
  squareMetresPerHectare,
  toCelsius,
  toFahrenheit,
  type LengthName,
} from '../../shared/units.js';
import type { SpeedUnit, TemperatureUnit } from '../../shared/vocabularies.js';

// NIST SP 811, appendix B.8: factors printed in bold there are exact.
const lengths: [unit: LengthName, metres: number][] = [
  ['in', 2.54e-2],
  ['ft', 3.048e-1],
  ['yd', 9.144e-1],
  ['mi', 1.609344e3],
  ['mm', 1e-3],
  ['cm', 1e-2],
  ['m', 1],
  ['km', 1e3],
];
test.each(lengths)('one %s is %d m', (unit, metres) => {
  expect(metresPerUnit[unit]).toBe(metres);
});

test('an acre is 43 560 square international feet, a hectare a hundred metres squared', () => {
  expect(squareMetresPerAcre).toBeCloseTo(43_560 * 0.3048 ** 2, 10);
  expect(squareMetresPerHectare).toBe(100 ** 2);
});

// NIST SP 811, appendix B.8: t/°C = (t/°F − 32)/1.8. Fixed points of the Fahrenheit scale.
const temperatures: [degrees: number, unit: TemperatureUnit, celsius: number][] = [
  [32, 'F', 0],
  [212, 'F', 100],
  [-40, 'F', -40],
  [98.6, 'F', 37],
  [50, 'F', 10],
  [59, 'F', 15],
  [21.5, 'C', 21.5],
];
test.each(temperatures)('%d °%s is %d °C', (degrees, unit, celsius) => {
  expect(toCelsius(degrees, unit)).toBeCloseTo(celsius, 10);
  expect(toFahrenheit(toCelsius(degrees, unit))).toBeCloseTo(unit === 'F' ? degrees : (degrees * 9) / 5 + 32, 10);
});

const halves: [value: number, decimals: number, expected: number][] = [
  [18.333333333333332, 1, 18.3],
  [20.55, 1, 20.6],
  [-0.25, 1, -0.3],
  [-0.04, 1, 0],
  [1.005, 2, 1.01],
  [1.0049, 2, 1],
  [22.5, 0, 23],
  [-2.5, 0, -3],
];
test.each(halves)('%d to %d decimals is %d', (value, decimals, expected) => {
  expect(rounded(value, decimals)).toBe(expected);
});

// WMO Beaufort scale: the last speed printed for a force, and the first of the next. Miles an hour: UK Met Office.
const forces: [unit: SpeedUnit, printed: [lowest: number, highest: number][]][] = [
  [
    'kn',
    [
      [0, 0.9],
      [1, 3],
      [4, 6],
      [7, 10],
      [11, 16],
      [17, 21],
      [22, 27],
      [28, 33],
      [34, 40],
      [41, 47],
      [48, 55],
      [56, 63],
      [64, 90],
    ],
  ],
  [
    'm/s',
    [
      [0, 0.2],
      [0.3, 1.5],
      [1.6, 3.3],
      [3.4, 5.4],
      [5.5, 7.9],
      [8, 10.7],
      [10.8, 13.8],
      [13.9, 17.1],
      [17.2, 20.7],
      [20.8, 24.4],
      [24.5, 28.4],
      [28.5, 32.6],
      [32.7, 50],
    ],
  ],
  [
    'km/h',
    [
      [0, 0.9],
      [1, 5],
      [6, 11],
      [12, 19],
      [20, 28],
      [29, 38],
      [39, 49],
      [50, 61],
      [62, 74],
      [75, 88],
      [89, 102],
      [103, 117],
      [118, 200],
    ],
  ],
  [
    'mph',
    [
      [0, 0.9],
      [1, 3],
      [4, 7],
      [8, 12],
      [13, 18],
      [19, 24],
      [25, 31],
      [32, 38],
      [39, 46],
      [47, 54],
      [55, 63],
      [64, 72],
      [73, 120],
    ],
  ],
];
test.each(forces)('the limits of every Beaufort force in %s', (unit, printed) => {
  printed.forEach(([lowest, highest], force) => {
    expect(beaufortOf(lowest, unit), `${lowest} ${unit}`).toBe(force);
    expect(beaufortOf(highest, unit), `${highest} ${unit}`).toBe(force);
  });
});

test('each unit goes by its own limits, not by conversion', () => {
  expect(beaufortOf(7.5, 'mph')).toBe(2); // 12.07 km/h, which would be 3
  expect(beaufortOf(12.07, 'km/h')).toBe(3);
  expect(beaufortOf(3.5, 'kn')).toBe(2); // between the rows: 1.8 m/s
  expect(beaufortOf(1.8, 'm/s')).toBe(2);
  expect(beaufortOf(12.5, 'mph')).toBe(4); // 5.59 m/s
  expect(beaufortOf(12.4, 'km/h')).toBe(3);
});
