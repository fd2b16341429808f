import { expect, test } from 'vitest';
import { findAmounts, findNumbers } from '../../src/answers/numbers.js';
import { fold } from '../../src/answers/text.js';
import { demo } from '../demo-survey.js';

const table: [typed: string, expected: number[]][] = [
  ['1,200', [1200]],
  ['12,34,567', []],
  ['7.5 and 12', [7.5, 12]],
  ['2,5 m', [2.5]],
  ['7O F', [70]],
  ['20of them', [20]],
  ['70F', [70]],
  ['50ish', [50]],
  ['15min', [15]],
  ['3bimacs', [3]],
  ['the 2nd and 3rd', []],
  ['low 70s', []],
  ['imp x2', [2]],
  ['4x6', [4, 6]],
  ['box2', []],
  ['twenty-five', [25]],
  ['twenty five', [25]],
  ['twentyfive', [25]],
  ['a hundred fortyfive', [145]],
  ['two hundred and five', [205]],
  ['one hundred fifty', [150]],
  ['a hundred', [100]],
  ['a couple hundred', [200]],
  ['a couple of hundred', [200]],
  ['a couple dozen', [24]],
  ['couple of bees', [2]],
  ['three dozen', [36]],
  ['3 dozen', [36]],
  ['2 doz', [24]],
  ['half a dozen', [6]],
  ['half dozen', [6]],
  ['two and a half dozen', [30]],
  ['dozens', []],
  ['3 dozens', [36]],
  ['2k', [2000]],
  ['1.2k', [1200]],
  ['k', [1000]],
  ['one thousand two hundred', [1200]],
  ['fifteen hundred', [1500]],
  ['one fifteen', [1, 15]],
  ['two and three', [2, 3]],
  ['20 and 15', [20, 15]],
  ['two and a half', [2.5]],
  ['2½', [2.5]],
  ['2 1/2 m', [2.5]],
  ['2 and a half-black', [2]],
  ['2 bimacs and a half black', [2]],
  ['half and half', []],
  ['4/29', [4, 29]],
  ['no...50', [50]],
  ['4.29.26', [4.29]],
  ['a bee', []],
  ['B2B', []],
  ['none', []],
];
test.each(table)('numbers in "%s" are %j', (typed, expected) => {
  expect(findNumbers(fold(typed), demo.words).map((found) => found.value)).toEqual(expected);
});

const amounts: [typed: string, expected: number[]][] = [
  ['half an acre', [0.5]],
  ['a half acre', [0.5]],
  ['three quarters of an acre', [0.75]],
  ['3 quarters', [0.75]],
  ['a tenth of an acre', [0.1]],
  ['½ acre', [0.5]],
  ['1/4 acre', [0.25]],
  ['1 1/2 acres', [1.5]],
  ['one and a half metres', [1.5]],
  ['two half', [1]],
  ['12 by 9', [12, 9]],
  ['half a dozen', [0.5, 12]],
];
test.each(amounts)('amounts in "%s" are %j', (typed, expected) => {
  expect(findAmounts(fold(typed), demo.words).map((found) => found.value)).toEqual(expected);
});

test('a long text is read in a moment and to its end', () => {
  expect(findNumbers('a couple of half and 12 '.repeat(400), demo.words)).toHaveLength(800);
});
