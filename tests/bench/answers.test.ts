/** The libraries that the readers are measured against are used so that they can read a plain answer. */
import { expect, test } from 'vitest';
import { others } from './answers/others.js';

const table: [kind: string, library: string, typed: string, value: unknown][] = [
  ['date', '@microsoft/recognizers-text-suite', 'April 28', '2026-04-28'],
  ['date', 'chrono-node', 'April 28', '2026-04-28'],
  ['times', '@microsoft/recognizers-text-suite', '3:20 pm to 3:35 pm', { start: '15:20', end: '15:35' }],
  ['times', 'chrono-node', '3:20 pm to 3:35 pm', { start: '15:20', end: '15:35' }],
  ['temperature', '@microsoft/recognizers-text-suite', '20 degrees celsius', { celsius: 20 }],
  ['patch', '@microsoft/recognizers-text-suite', '20 square meters', { squareMetres: 20, shape: 'area' }],
  [
    'count',
    '@microsoft/recognizers-text-suite',
    'a hundred and ten',
    { value: 110, low: 110, high: 110, about: false },
  ],
  ['count', 'words-to-numbers', 'a hundred and ten', { value: 110, low: 110, high: 110, about: false }],
  ['plant', 'fuse.js', 'Virginia bluebells', { name: 'Mertensia virginica' }],
  ['plant', 'minisearch', 'Virginia bluebells', { name: 'Mertensia virginica' }],
  ['bee', 'fuse.js', 'common eastern', { name: 'Bombus impatiens' }],
  ['bee', 'minisearch', 'common eastern', { name: 'Bombus impatiens' }],
];

test.each(table)('%s by %s: "%s"', (kind, library, typed, value) => {
  const read = others().find((other) => other.kind === kind && other.library === library)?.read;
  expect(read?.(typed)).toEqual(value);
});

test('each of them has a line here', () => {
  expect(table.map(([kind, library]) => `${kind} ${library}`)).toEqual(others().map((o) => `${o.kind} ${o.library}`));
});
