/** What is read as a licence of photographs, and what is not. */
import { expect, test } from 'vitest';
import { readLicence, readWish } from '../../src/answers/index.js';
import { survey } from '../demo-survey.js';

const asked: [text: string, licence: ReturnType<typeof readLicence>][] = [
  ['CC BY 4.0', 'CC-BY-4.0'],
  ['cc-by', 'CC-BY-4.0'],
  ['by', 'CC-BY-4.0'],
  ['yes, under CC BY please', 'CC-BY-4.0'],
  ['CC BY-NC 4.0', 'CC-BY-NC-4.0'],
  ['the non-commercial license', 'CC-BY-NC-4.0'],
  ['CC0', 'CC0-1.0'],
  ['public domain is fine', 'CC0-1.0'],
  ['my photos: cc by-nc', 'CC-BY-NC-4.0'],
  ['rather not', 'none'],
  ['keep them private', 'none'],
  ['no licence', 'none'],
  // share-alike and no-derivatives are others' licences, not ours
  ['CC BY-SA 4.0', 'unknown'],
  ['CC BY-ND', 'unknown'],
  ['all rights reserved', 'none'],
  // a bare no, or yes, is the caller's to read
  ['no', null],
  ['yes', null],
  ['today 2:10 to 2:25 pm', null],
  ['2 imp by the gate', null],
];
test.each(asked)('asked for a licence: "%s" is %s', (text, licence) => {
  expect(readLicence(text, survey.words)).toBe(licence);
});

const unasked: [text: string, wish: ReturnType<typeof readWish>][] = [
  ['my photos: CC BY', { wish: 'licence', licence: 'CC-BY-4.0' }],
  ['Change my photos to CC0', { wish: 'licence', licence: 'CC0-1.0' }],
  ['You may publish my pictures under CC BY-NC.', { wish: 'licence', licence: 'CC-BY-NC-4.0' }],
  ['do not publish my photos', { wish: 'licence', licence: 'none' }],
  ['Don’t publish my photos!', { wish: 'licence', licence: 'none' }],
  ['my photos: no', { wish: 'licence', licence: 'none' }],
  ['keep my photos private', { wish: 'licence', licence: 'none' }],
  ['my photos: CC BY-SA', { wish: 'licence', licence: 'unknown' }],
  ['publish my photos', { wish: 'licences' }],
  // not about a licence, or nobody's photographs
  ['no photos', null],
  ['CC BY', null],
  ['by the gate', null],
  ['my photos show a worker', null],
  ['see my photos, 2 imp on the bluebells', null],
];
test.each(unasked)('out of the blue: "%s"', (text, wish) => {
  expect(readWish(text, survey.words)).toEqual(wish);
});
