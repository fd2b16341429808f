import { expect, test } from 'vitest';
import type { Determination, QueensRow } from '../../shared/record.js';
import { standingOf } from '../../src/season/standing.js';
import { queensRow } from '../a-watch.js';

const by = (
  role: Determination['role'],
  count: number,
  taxa: string[],
  at: string,
  more: Partial<Determination> = {},
): Determination => ({
  taxa,
  qualifier: null,
  count,
  caste: null,
  by: role,
  role,
  at: `2026-05-${at}Z`,
  from: 'photograph',
  ...more,
});
/** `3-1 impatiens` is three visits, one of them by a queen seen before; `*` an expert's name. */
const shown = (row: QueensRow): string =>
  standingOf(row)
    .map(({ bee, visits, queens, determined, caste }) => {
      const before = visits === queens ? '' : `-${visits - queens}`;
      return `${visits}${before} ${bee.replace('Bombus ', '')}${determined ? '*' : ''}${caste === null ? '' : ` ${caste}`}`;
    })
    .join(', ');

const [impatiens, bimaculatus, perplexus] = ['Bombus impatiens', 'Bombus bimaculatus', 'Bombus perplexus'];

const table: [what: string, row: Partial<QueensRow>, expected: string][] = [
  ['as reported', {}, '3 impatiens'],
  ['reported to the genus', { bee: 'Bombus', rank: 'genus' }, '3 Bombus'],
  ['a bee without a name', { bee: null }, '3 Bombus'],
  ['all named', { determinations: [by('helper', 3, [bimaculatus], '03T10:00:00')] }, '3 bimaculatus*'],
  [
    'one of three named',
    { determinations: [by('helper', 1, [bimaculatus], '03T10:00:00')] },
    '1 bimaculatus*, 2 impatiens',
  ],
  ['a pair', { determinations: [by('helper', 3, [bimaculatus, impatiens], '03T10:00:00')] }, '3 Bombus*'],
  ['cannot be told', { determinations: [by('coordinator', 2, [], '03T10:00:00')] }, '2 Bombus*, 1 impatiens'],
  ['more than there are', { determinations: [by('helper', 5, [bimaculatus], '03T10:00:00')] }, '3 bimaculatus*'],
  [
    'the coordinator before a later helper',
    {
      determinations: [by('coordinator', 3, [bimaculatus], '03T10:00:00'), by('helper', 3, [perplexus], '04T10:00:00')],
    },
    '3 bimaculatus*',
  ],
  [
    'the coordinator for two, the helper for the rest',
    {
      determinations: [by('helper', 3, [perplexus], '04T10:00:00'), by('coordinator', 2, [bimaculatus], '03T10:00:00')],
    },
    '2 bimaculatus*, 1 perplexus*',
  ],
  [
    'the latest of two helpers',
    { determinations: [by('helper', 3, [perplexus], '04T10:00:00'), by('helper', 3, [bimaculatus], '03T10:00:00')] },
    '3 perplexus*',
  ],
  [
    'later by half a second',
    { determinations: [by('helper', 3, [perplexus], '04T10:00:00.5'), by('helper', 3, [bimaculatus], '04T10:00:00')] },
    '3 perplexus*',
  ],
  [
    'the later given, of one moment',
    { determinations: [by('helper', 3, [perplexus], '04T10:00:00'), by('helper', 3, [bimaculatus], '04T10:00:00')] },
    '3 bimaculatus*',
  ],
  [
    'a split into two',
    { determinations: [by('helper', 1, [perplexus], '03T10:00:00'), by('helper', 2, [bimaculatus], '03T10:00:00')] },
    '2 bimaculatus*, 1 perplexus*',
  ],
  ['seen before', { seenBefore: 1 }, '3-1 impatiens'],
  [
    'seen before, taken from those nobody named',
    { seenBefore: 1, determinations: [by('helper', 2, [bimaculatus], '03T10:00:00')] },
    '2 bimaculatus*, 1-1 impatiens',
  ],
  [
    'more seen before than nobody named',
    { seenBefore: 2, determinations: [by('helper', 2, [bimaculatus], '03T10:00:00')] },
    '2-1 bimaculatus*, 1-1 impatiens',
  ],
  ['a worker', { caste: 'worker' }, '3 impatiens worker'],
  [
    'one of them a worker after all',
    { determinations: [by('helper', 1, [impatiens], '03T10:00:00', { caste: 'worker' })] },
    '1 impatiens* worker, 2 impatiens',
  ],
  [
    'workers whose name alone was settled',
    { caste: 'worker', determinations: [by('helper', 3, [bimaculatus], '03T10:00:00')] },
    '3 bimaculatus* worker',
  ],
];
test.each(table)('%s', (_what, more, expected) => {
  expect(shown(queensRow(1, impatiens, 3, more))).toBe(expected);
});
