/**
 * Dates against an independent reader, chrono-node: where its components for month and day are certain, ours are the
 * same. Its guessed date is never looked at; years and weekdays follow our own rules, which it does not know.
 */
import { en } from 'chrono-node';
import { expect, test } from 'vitest';
import { readDate } from '../../src/answers/date.js';
import { demo } from '../demo-survey.js';

const texts = [
  'April 28',
  'Apr. 28th',
  '28 April',
  'the 28th of April',
  '4/28',
  '4/28/26',
  '4/28/2026',
  '2026-04-28',
  'April 28, 2026',
  'on May 2nd in the morning',
  'May 2 around lunch',
  'Saturday, May 2',
  'Sat May 2',
  'it was 3 May 2026',
  'March 30',
  '3/30',
  'may 1',
  'April 1st',
];

test.each(texts)('"%s" is the same day to chrono-node', (text) => {
  const [found] = en.casual.parse(text);
  expect(found?.start.isCertain('month') && found.start.isCertain('day')).toBe(true);
  const day = (part: 'month' | 'day'): string => String(found?.start.get(part)).padStart(2, '0');
  const reading = readDate(text, demo);
  expect(reading).toMatchObject({ state: 'sure', value: `2026-${day('month')}-${day('day')}` });
});
