import { expect, test } from 'vitest';
import { knownWithoutVowels, withVowels } from '../../src/answers/vowels.js';
import { demo } from '../demo-survey.js';

const WORDS = ['breezy', 'breeze', 'sunny', 'wandered', 'kinda', 'then', 'thin', 'overcast', 'bleak', 'dry'];
const meant = withVowels(
  WORDS.map((word) => [word, word] as const),
  knownWithoutVowels(demo.words),
);

const table: [typed: string, expected: string | undefined][] = [
  ['brzy', 'breezy'],
  ['brz', 'breeze'],
  ['snny', 'sunny'],
  ['wndrd', 'wandered'],
  ['knda', 'kinda'],
  ['ovrcst', 'overcast'],
  ['thn', undefined], // two fit
  ['blk', undefined], // known of bees
  ['brez', undefined], // a vowel is there
  ['wndr', undefined], // a consonant is missing
  ['sn', undefined], // too short
  ['dry', undefined], // a word of its own
  ['', undefined],
];
test.each(table)('"%s" without its vowels is %s', (typed, expected) => {
  expect(meant(typed)).toBe(expected);
});
