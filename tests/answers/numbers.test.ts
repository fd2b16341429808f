import { expect, test } from 'vitest';
import { findNumbers } from '../../src/answers/numbers.js';
import { fold } from '../../src/answers/text.js';
import { demo } from '../demo-survey.js';

const table: [typed: string, expected: number[]][] = [
  ['1,200', [1200]],
  ['7.5 and 12', [7.5, 12]],
  ['7O F', [70]],
  ['twenty-five', [25]],
  ['twenty five', [25]],
  ['two hundred and five', [205]],
  ['a hundred', [100]],
  ['a couple hundred', [200]],
  ['three dozen', [36]],
  ['3 dozen', [36]],
  ['2k', [2000]],
  ['one thousand two hundred', [1200]],
  ['one fifteen', [1, 15]],
  ['two and three', [2, 3]],
  ['20 and 15', [20, 15]],
  ['a bee', []],
  ['B2B', []],
  ['none', []],
];
test.each(table)('numbers in "%s" are %j', (typed, expected) => {
  expect(findNumbers(fold(typed), demo.words).map((found) => found.value)).toEqual(expected);
});
