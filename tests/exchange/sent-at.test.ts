/** When a message counts as sent: the sender's clock within seven days before receipt, else ours. */
import { expect, test } from 'vitest';
import { sentAt } from '../../src/exchange/index.js';

const RECEIVED = '2026-05-06T23:30:00Z';
const table: [sent: string | null, expected: string][] = [
  ['2026-05-06T20:00:00Z', '2026-05-06T20:00:00Z'],
  ['2026-05-06T23:30:00Z', RECEIVED],
  ['2026-05-06T23:30:01Z', RECEIVED], // in the future
  ['2026-04-29T23:30:00Z', '2026-04-29T23:30:00Z'], // seven days
  ['2026-04-29T23:29:59Z', RECEIVED],
  ['1970-01-01T00:00:00Z', RECEIVED],
  [null, RECEIVED],
  ['Wed, around noon', RECEIVED],
];
test.each(table)('sent %s counts as sent %s', (sent, expected) => {
  expect(sentAt(sent, RECEIVED)).toBe(expected);
});
