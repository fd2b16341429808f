import { expect, test } from 'vitest';
import type { Watch } from '../../shared/record.js';
import { withinProtocol } from '../../shared/protocol.js';
import { watch } from '../a-watch.js';
import { survey } from '../demo-survey.js';

// The demo: 15 ± 2 minutes, 18.3 to 37.8 °C, Beaufort 4 at most.
const table: [what: string, watch: Partial<Watch>, within: boolean][] = [
  ['an ordinary watch', {}, true],
  ['13 minutes', { minutes: 13 }, true],
  ['12.9 minutes', { minutes: 12.9 }, false],
  ['17 minutes', { minutes: 17 }, true],
  ['17.1 minutes', { minutes: 17.1 }, false],
  ['18.3 °C', { temperature: { celsius: 18.3 } }, true],
  ['18.2 °C', { temperature: { celsius: 18.2 } }, false],
  ['37.8 °C', { temperature: { celsius: 37.8 } }, true],
  ['37.9 °C', { temperature: { celsius: 37.9 } }, false],
  ['Beaufort 4', { wind: { beaufort: 4 } }, true],
  ['Beaufort 5', { wind: { beaufort: 5 } }, false],
  ['no temperature', { temperature: null }, false],
  ['no wind', { wind: null }, false],
];
test.each(table)('%s: within the protocol %s', (_what, more, within) => {
  expect(withinProtocol(watch(more), survey.settings)).toBe(within);
});
