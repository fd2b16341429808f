import { describe, expect, test } from 'vitest';
import type { Patch } from '../../shared/record.js';
import { findPatch, readPatch } from '../../src/answers/patch.js';
import { brief, demo } from '../demo-survey.js';

/** `9.144 x 3.6576 = 33.445` in metres · `o 2.4384 = 4.67` a circle · `9.29` an area. */
const show = ({ squareMetres, shape, lengthMetres, widthMetres, diameterMetres }: Patch): string => {
  const size = String(Math.round(squareMetres * 1000) / 1000);
  if (shape === 'rectangle') return `${lengthMetres} x ${widthMetres} = ${size}`;
  return shape === 'circle' ? `o ${diameterMetres} = ${size}` : size;
};

const table: [typed: string, expected: string][] = [
  // two sides
  ['20 by 10 feet', 'sure 6.096 x 3.048 = 18.581'],
  ['20 x 10 ft', 'sure 6.096 x 3.048 = 18.581'],
  ['20x10ft', 'sure 6.096 x 3.048 = 18.581'],
  ['20ft x 10ft', 'sure 6.096 x 3.048 = 18.581'],
  ['20ftx10ft', 'sure 6.096 x 3.048 = 18.581'],
  ["20' x 10'", 'sure 6.096 x 3.048 = 18.581'],
  ["20'x10'", 'sure 6.096 x 3.048 = 18.581'],
  ['20’ × 10’', 'sure 6.096 x 3.048 = 18.581'],
  ['20 ft. by 10 ft.', 'sure 6.096 x 3.048 = 18.581'],
  ['20 feet x 10', 'sure 6.096 x 3.048 = 18.581'],
  ['twenty feet by ten feet', 'sure 6.096 x 3.048 = 18.581'],
  ['20 feat by 10 feat', 'sure 6.096 x 3.048 = 18.581'],
  ['20 feet buy 10 feet', 'sure 6.096 x 3.048 = 18.581'],
  ['20-by-10-foot bed', 'sure 6.096 x 3.048 = 18.581'],
  ['20by10ft', 'sure 6.096 x 3.048 = 18.581'],
  ['20 feet per 10 feet', 'sure 6.096 x 3.048 = 18.581'],
  ['20 feet one way and 10 feet the other', 'sure 6.096 x 3.048 = 18.581'],
  ['20 feet E-W by 10 feet N-S', 'sure 6.096 x 3.048 = 18.581'],
  ['not 30 ft, more like 20 ft by 10 ft', 'sure 6.096 x 3.048 = 18.581'],
  ['20 ft x 10 ft, part of a 2 acre prairie', 'sure 6.096 x 3.048 = 18.581'],
  ['maybe 80 sq ft, no I measured it: 20 x 10 ft', 'sure 6.096 x 3.048 = 18.581'],
  ['20 ft for 10 minutes', 'unsure 6.096 x 6.096 = 37.161, patch-one-length'],
  ['Twenty by ten foot', 'sure 6.096 x 3.048 = 18.581'],
  ['10 by 20 feet', 'sure 6.096 x 3.048 = 18.581'], // the longer side is the length
  ['a 20 by 10 foot bed', 'sure 6.096 x 3.048 = 18.581'],
  ['20-foot by 10-foot', 'sure 6.096 x 3.048 = 18.581'],
  ['20 x 10 (feet)', 'sure 6.096 x 3.048 = 18.581'],
  ['20 by 10, in feet', 'sure 6.096 x 3.048 = 18.581'],
  ['about 20 by 10 feet', 'sure 6.096 x 3.048 = 18.581'],
  ['roughly 20 x 10 ft or so', 'sure 6.096 x 3.048 = 18.581'],
  ['20 feet by about 10 feet', 'sure 6.096 x 3.048 = 18.581'],
  ['I think 20 x 10 feet', 'sure 6.096 x 3.048 = 18.581'],
  ['20 feet long and 10 feet wide', 'sure 6.096 x 3.048 = 18.581'],
  ['20 feet long by 10 wide', 'sure 6.096 x 3.048 = 18.581'],
  ['10 feet wide, 20 long', 'sure 6.096 x 3.048 = 18.581'],
  ['length 20 ft, width 10 ft', 'sure 6.096 x 3.048 = 18.581'],
  ['length: 20 ft width: 10 ft', 'sure 6.096 x 3.048 = 18.581'],
  ['10 feet long and 20 feet wide', 'sure 3.048 x 6.096 = 18.581'], // as said
  ['a strip 3 feet wide and 40 long', 'sure 12.192 x 0.9144 = 11.148'],
  ['a 3-foot-wide strip, 40 feet long', 'sure 12.192 x 0.9144 = 11.148'],
  ['40 ft of fence row, 3 ft wide', 'sure 12.192 x 0.9144 = 11.148'],
  ['40 feet long and 3 across', 'sure 12.192 x 0.9144 = 11.148'],
  ['8 x 5 metres', 'sure 8 x 5 = 40'],
  ['8m x 5m', 'sure 8 x 5 = 40'],
  ['8mx5m', 'sure 8 x 5 = 40'],
  ['8 by 5 m', 'sure 8 x 5 = 40'],
  ['2,5 x 3 m', 'sure 3 x 2.5 = 7.5'],
  ['2.5 m by 1.5 m', 'sure 2.5 x 1.5 = 3.75'],
  ['one metre by two', 'sure 2 x 1 = 2'],
  ['half a metre by 2 metres', 'sure 2 x 0.5 = 1'],
  ['2 1/2 by 4 m', 'sure 4 x 2.5 = 10'],
  ['a foot by a foot', 'sure 0.3048 x 0.3048 = 0.093'],
  ['a yard wide and 3 yards long', 'sure 2.7432 x 0.9144 = 2.508'],
  ['5 m x 12 ft', 'sure 5 x 3.6576 = 18.288'],
  ['18 in by 36 in', 'sure 0.9144 x 0.4572 = 0.418'],
  ['18" x 36"', 'sure 0.9144 x 0.4572 = 0.418'],
  ['3 ft x 18 inches', 'sure 0.9144 x 0.4572 = 0.418'],
  ['80 cm x 120 cm', 'sure 1.2 x 0.8 = 0.96'],
  ["6'6\" x 4'", 'sure 1.9812 x 1.2192 = 2.415'],
  ['6’6” × 4’', 'sure 1.9812 x 1.2192 = 2.415'],
  ["6'6 x 4'", 'sure 1.9812 x 1.2192 = 2.415'],
  ['6 ft 6 in by 4 ft', 'sure 1.9812 x 1.2192 = 2.415'],
  ['6 feet 6 inches by 4 feet', 'sure 1.9812 x 1.2192 = 2.415'],
  ['6 foot 6 by 4 foot', 'sure 1.9812 x 1.2192 = 2.415'],
  ['6 and a half feet by 4', 'sure 1.9812 x 1.2192 = 2.415'],
  ['1 m 50 by 2 m', 'sure 2 x 1.5 = 3'],
  ['10-12 ft by 5 ft', 'sure 3.3528 x 1.524 = 5.11'],
  ['20 x 10 sq ft', 'sure 6.096 x 3.048 = 18.581'],
  ['20 x 10 ft (200 sq ft)', 'sure 6.096 x 3.048 = 18.581'],
  ['200 sq ft (20 x 10 ft)', 'sure 6.096 x 3.048 = 18.581'],
  ['3 m (10 ft) by 2 m (6.5 ft)', 'sure 3 x 2 = 6'],
  ['20 x 10 ft, the lilac is 12 ft tall', 'sure 6.096 x 3.048 = 18.581'],
  ['20 x 10 feet, about 30 feet from the trail', 'sure 6.096 x 3.048 = 18.581'],
  ['patch 2: 20 x 10 ft', 'sure 6.096 x 3.048 = 18.581'],
  ['20 x 10 ft for 15 minutes', 'sure 6.096 x 3.048 = 18.581'],
  ["20' L x 10' W", 'sure 6.096 x 3.048 = 18.581'],
  ['10ish by 20ish feet', 'sure 6.096 x 3.048 = 18.581'],
  ['20 ft wide and 10 ft deep', 'sure 6.096 x 3.048 = 18.581'],
  ["6'-6\" x 4'", 'sure 1.9812 x 1.2192 = 2.415'],
  ['6ft6in x 4ft', 'sure 1.9812 x 1.2192 = 2.415'],
  // corrected
  ['20 x 10 ft, sorry, 20 x 12 ft', 'sure 6.096 x 3.6576 = 22.297'],
  ['20 by 8 feet, I mean 20 by 10', 'sure 6.096 x 3.048 = 18.581'],
  ['20 x 10 feet. sorry, metres', 'sure 20 x 10 = 200'],
  ['20 x 8 ft, no, 20 x 10 ft', 'sure 6.096 x 3.048 = 18.581'],
  // squares
  ['10 ft square', 'sure 3.048 x 3.048 = 9.29'],
  ['a 10-foot square', 'sure 3.048 x 3.048 = 9.29'],
  ["10' square", 'sure 3.048 x 3.048 = 9.29'],
  ['10 x 10 foot square', 'sure 3.048 x 3.048 = 9.29'],
  ['a square, 10 feet on a side', 'sure 3.048 x 3.048 = 9.29'],
  ['10 feet on each side', 'sure 3.048 x 3.048 = 9.29'],
  ['10 ft each way', 'sure 3.048 x 3.048 = 9.29'],
  ['a metre square', 'sure 1 x 1 = 1'],
  ['square, about 10 ft', 'sure 3.048 x 3.048 = 9.29'],
  // circles
  ['10 feet across', 'sure o 3.048 = 7.297'],
  ['about 10 ft across', 'sure o 3.048 = 7.297'],
  ['10 ft diameter', 'sure o 3.048 = 7.297'],
  ['10 feet in diameter', 'sure o 3.048 = 7.297'],
  ['diameter 10 ft', 'sure o 3.048 = 7.297'],
  ['10 ft circle', 'sure o 3.048 = 7.297'],
  ['a circle 10 feet wide', 'sure o 3.048 = 7.297'],
  ['round, 10 feet', 'sure o 3.048 = 7.297'],
  ['roundish, ten feet across or so', 'sure o 3.048 = 7.297'],
  ['about 3 m wide, round', 'sure o 3 = 7.069'],
  ['5 ft radius', 'sure o 3.048 = 7.297'],
  ['a radius of 5 feet', 'sure o 3.048 = 7.297'],
  ['circle with 5 foot radius', 'sure o 3.048 = 7.297'],
  ['9 to 11 feet across', 'sure o 3.048 = 7.297'],
  ['between 9 and 11 feet across', 'sure o 3.048 = 7.297'],
  ['one shrub, 10 feet across', 'sure o 3.048 = 7.297'],
  ['10 feet across under the pear tree', 'sure o 3.048 = 7.297'],
  // areas
  ['100 sq ft', 'sure 9.29'],
  ['100 sq. ft.', 'sure 9.29'],
  ['100 square feet', 'sure 9.29'],
  ['100sqft', 'sure 9.29'],
  ['100 ft2', 'sure 9.29'],
  ['100 ft²', 'sure 9.29'],
  ['a hundred square feet', 'sure 9.29'],
  ['about 1,000 square feet', 'sure 92.903'],
  ['3 m2', 'sure 3'],
  ['3m²', 'sure 3'],
  ['3 m^2', 'sure 3'],
  ['3 sqm', 'sure 3'],
  ['3 square meters', 'sure 3'],
  ['6-8 square metres', 'sure 7'],
  ['one square metre', 'sure 1'],
  ['a square yard', 'sure 0.836'],
  ['square metre quadrat', 'sure 1'],
  ['12 sq yds', 'sure 10.034'],
  ['half an acre', 'sure 2023.428'],
  ['half acre', 'sure 2023.428'],
  ['½ acre', 'sure 2023.428'],
  ['1/2 acre', 'sure 2023.428'],
  ['0.5 ac', 'sure 2023.428'],
  ['a quarter of an acre', 'sure 1011.714'],
  ['quarter-acre', 'sure 1011.714'],
  ['three quarters of an acre', 'sure 3035.142'],
  ['a tenth of an acre', 'sure 404.686'],
  ['1/10 acre', 'sure 404.686'],
  ['a couple of square metres', 'sure 2'],
  ['36 in2', 'sure 0.023'],
  ['an acre', 'sure 4046.856'],
  ['an acre and a half', 'sure 6070.285'],
  ['0.25 ha', 'sure 2500'],
  ['a quarter hectare', 'sure 2500'],
  // asked back
  ['10 x 12', 'unsure 3.6576 x 3.048 = 11.148, patch-no-unit'],
  ['10 by 12', 'unsure 3.6576 x 3.048 = 11.148, patch-no-unit'],
  ['about ten by twelve', 'unsure 3.6576 x 3.048 = 11.148, patch-no-unit'],
  ['10 long 4 wide', 'unsure 3.048 x 1.2192 = 3.716, patch-no-unit'],
  ['10 across', 'unsure o 3.048 = 7.297, patch-no-unit'],
  ['20 feet long', 'unsure 6.096 x 6.096 = 37.161, patch-one-length'],
  ['20 ft', 'unsure 6.096 x 6.096 = 37.161, patch-one-length'],
  ['6 feet wide', 'unsure 1.8288 x 1.8288 = 3.345, patch-one-length'],
  ['a 20 foot stretch of hedge', 'unsure 6.096 x 6.096 = 37.161, patch-one-length'],
  ['20 feet squared', 'unsure 6.096 x 6.096 = 37.161 | 1.858, patch-squared'],
  ['20 ft sq', 'unsure 6.096 x 6.096 = 37.161 | 1.858, patch-squared'],
  ['maybe 20 by 10 feet', 'unsure 6.096 x 3.048 = 18.581, patch-doubt'],
  ['20 x 10 ft?', 'unsure 6.096 x 3.048 = 18.581, patch-doubt'],
  ['20 ft, 10 ft', 'unsure 6.096 x 3.048 = 18.581, patch-doubt'],
  ['20 x 10 x 3 ft', 'unsure 6.096 x 3.048 = 18.581, patch-doubt'],
  ['10 or 12 feet across', 'unsure o 3.3528 = 8.829, patch-doubt'],
  ['oval, 20 by 10 feet', 'unsure 14.593 | 6.096 x 3.048 = 18.581, patch-shape'],
  ['10 x 10 ft and 5 x 4 ft', 'unsure 11.148 | 3.048 x 3.048 = 9.29 | 1.524 x 1.2192 = 1.858, patch-several'],
  ['two patches, 10x10 ft each', 'unsure 18.581 | 3.048 x 3.048 = 9.29, patch-several'],
  ['two 4x8 ft raised beds', 'unsure 5.946 | 2.4384 x 1.2192 = 2.973, patch-several'],
  ['4x8 ft (two of them)', 'unsure 5.946 | 2.4384 x 1.2192 = 2.973, patch-several'],
  ['3 pots, 14 inches across each', 'unsure 0.298 | o 0.3556 = 0.099, patch-several'],
  ['3 quadrats of 1 m2', 'unsure 3 | 1, patch-several'],
  // refused
  ['12', 'not understood, patch-bare-number'],
  ['100', 'not understood, patch-bare-number'],
  ['5 paces by 3', 'not understood, patch-paces'],
  ['about six steps', 'not understood, patch-paces'],
  ['the size of a car', 'not understood, patch-no-size'],
  ['several square feet', 'not understood, patch-no-size'],
  ['big', 'not understood, patch-no-size'],
  ['small patch', 'not understood, patch-no-size'],
  ['the whole tree', 'not understood, patch-no-size'],
  ["don't know", 'not understood, patch-no-size'],
  ['yes', 'not understood, patch-no-size'],
  ['15 minutes', 'not understood, patch-bare-number'],
  ['0 x 5 ft', 'not understood, patch-no-size'],
  ['redbud', 'not understood, patch-no-size'],
  ['', 'not understood, empty'],
];
test.each(table)('patch "%s" is %s', (typed, expected) => {
  expect(brief(readPatch(typed, demo), show)).toBe(expected);
});

test('a bare pair follows the survey', () => {
  const metric = { ...demo, survey: { ...demo.survey, lengthUnit: 'm' as const } };
  expect(brief(readPatch('4 x 3', metric), show)).toBe('unsure 4 x 3 = 12, patch-no-unit');
});

test('a foot is 0.3048 m to the last digit', () => {
  expect(readPatch('30 by 12 feet', demo)).toMatchObject({
    value: { squareMetres: 33.445094, lengthMetres: 9.144, widthMetres: 3.6576, diameterMetres: null },
  });
});

const passing: [typed: string, expected: string][] = [
  ['72F, sunny, patch was 20 x 10 ft, 40 phlox', 'sure 6.096 x 3.048 = 18.581'],
  ['Patch: 20 x 10 ft\nWind: calm', 'sure 6.096 x 3.048 = 18.581'],
  ['patch: 20 x 10', 'unsure 6.096 x 3.048 = 18.581, patch-no-unit'],
  ['I watched about 8 feet across. Two bimacs.', 'sure o 2.4384 = 4.67'],
  ['I sat for 15 min by 100 sq ft of bluebells', 'sure 9.29'],
  ['the hedge is 20 feet long, 60 flowers', 'unsure 6.096 x 6.096 = 37.161, patch-one-length'],
  ['maybe impatiens, patch 20 x 10 ft', 'sure 6.096 x 3.048 = 18.581'],
  ['Not sure of the bee. Patch 20 x 10 ft', 'sure 6.096 x 3.048 = 18.581'],
  ['1 m2 and then 2 x 2 m', 'unsure 5 | 1 | 2 x 2 = 4, patch-several'],
  // not in passing
  ['20 x 10', ''],
  ['2 bimacs and 10 flowers', ''],
  ['wind 5 m/s from the west', ''],
  ['wind 12 mph', ''],
  ['the bee was an inch long', ''],
  ['a 40 acre farm', ''],
  ['40-acre prairie, 3 queens', ''],
  ['the lilac is 10 feet tall', ''],
  ['about 20 feet from the trail', ''],
  ['10:40 to 10:55', ''],
  ['44.2, -88.9 (±12 m)', ''],
  ['4/29', ''],
  ['2 miles long trail', ''],
];
test.each(passing)('in passing "%s" is %s', (typed, expected) => {
  expect(
    findPatch(typed, demo)
      .map((reading) => brief(reading, show))
      .join(' + '),
  ).toBe(expected);
});

describe('a hostile text', () => {
  test.each([
    ['3 ft x '.repeat(280)],
    ["5'".repeat(900)],
    ['1/2 '.repeat(480)],
    ['by '.repeat(600)],
    [' '.repeat(1900)],
  ])('is read to its end', (text) => {
    expect(['sure', 'unsure', 'none']).toContain(readPatch(text, demo).state);
    expect(findPatch(text.repeat(5), demo).length).toBeLessThan(2);
  });
});
