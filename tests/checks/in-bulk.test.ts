/** Checks over watches that come in at once: as if they had been told one after another, and nothing noticed twice. */
import { expect, test } from 'vitest';
import type { Finding, Watch } from '../../shared/record.js';
import { CHECKS, missingFindings } from '../../src/checks/index.js';
import { watch } from '../a-watch.js';
import { survey } from '../demo-survey.js';

const place = { latitude: 43.5121, longitude: -90.6402, uncertaintyMetres: 5, words: '', site: null, private: false };
const numbered = (number: number, more: Partial<Watch> = {}): Watch => watch({ id: `id-${number}`, number, ...more });
const note = (check: string, values: Finding['values'] = {}): Finding => ({
  check,
  weight: 'keep',
  values,
  reply: null,
  at: '2026-05-02T18:30:00Z',
});
const cold = { temperature: { celsius: 12 } };

/** `1 temperature · 2 same-watch 1`: watch, check, and the other watch where there is one. */
function brief(watches: readonly Watch[], standing: readonly Watch[] = []): string {
  const missing = missingFindings(watches, standing, { checks: CHECKS, survey });
  return watches
    .flatMap(({ id, number }) =>
      (missing.get(id) ?? []).map(({ check, values }) =>
        [String(number), check, JSON.stringify(values['number']) ?? ''].join(' ').trim(),
      ),
    )
    .join(' · ');
}

const table: [what: string, watches: Watch[], standing: Watch[], said: string][] = [
  ['nothing odd', [numbered(1)], [], ''],
  ['one that is odd by itself', [numbered(1, cold)], [], '1 temperature'],
  ['a finding it has', [numbered(1, { ...cold, findings: [note('temperature')] })], [], ''],
  ['another finding', [numbered(1, { ...cold, findings: [note('season')] })], [], '1 temperature'],
  ['told twice', [numbered(1), numbered(2)], [], '2 same-watch 1'],
  [
    'told three times: the one before is named',
    [numbered(1), numbered(2), numbered(3)],
    [],
    '2 same-watch 1 · 3 same-watch 2',
  ],
  ['on two days', [numbered(1), numbered(2, { date: '2026-05-03' })], [], ''],
  ['told twice, practice', [numbered(1, { status: 'practice' }), numbered(2)], [], ''],
  ['told before', [numbered(5)], [numbered(1)], '5 same-watch 1'],
  ['told before under a higher number', [numbered(1)], [numbered(5)], '1 same-watch 5'],
  ['at one spot', [numbered(1, { place }), numbered(2, { place, observer: 'lark' })], [], '2 same-spot 1'],
  [
    'at one spot, set aside',
    [numbered(1, { place, status: 'set-aside' }), numbered(2, { place, observer: 'lark' })],
    [],
    '',
  ],
  // A watch mended later was set against one of a higher number: the two were looked at.
  ['noted on the earlier', [numbered(1, { findings: [note('same-watch', { number: 2 })] }), numbered(2)], [], ''],
  ['noted on the one that stands', [numbered(2)], [numbered(1, { findings: [note('same-watch', { number: 2 })] })], ''],
  [
    'noted of others',
    [numbered(1, { findings: [note('same-watch', { number: 3 })] }), numbered(2)],
    [],
    '2 same-watch 1',
  ],
];
test.each(table)('%s', (_, watches, standing, said) => {
  expect(brief(watches, standing)).toBe(said);
});
