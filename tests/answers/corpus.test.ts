/**
 * The readers on the corpus must not get worse: what is read rightly stays above, what is wrong in silence below, what
 * `npm run accuracy` printed when these lines were last changed. A better figure is a reason to tighten its line.
 */
import { describe, expect, test } from 'vitest';
import { accuracyOf } from './accuracy.js';
import { CORPUS_KINDS, HALVES, linesOf, type CorpusKind } from './corpus/lines.js';

/** Percent of the lines of each half: rightly read at least, wrong at most. Of a note: of its fields. */
const LIMITS: Record<CorpusKind, Record<(typeof HALVES)[number], readonly [right: number, wrong: number]>> = {
  date: { tuned: [98.0, 0.1], held: [90.6, 0.9] },
  times: { tuned: [95.7, 0.3], held: [93.6, 1.7] },
  temperature: { tuned: [99.0, 0.3], held: [94.3, 0.9] },
  sky: { tuned: [96.4, 1.4], held: [87.9, 2.9] },
  wind: { tuned: [95.0, 1.0], held: [90.1, 2.4] },
  patch: { tuned: [97.2, 0.3], held: [92.1, 0.9] },
  place: { tuned: [95.4, 1.7], held: [95.1, 1.7] },
  count: { tuned: [94.8, 0.3], held: [88.3, 4.8] },
  plant: { tuned: [96.5, 2.0], held: [93.4, 5.1] },
  bee: { tuned: [97.8, 0.3], held: [95.8, 2.1] },
  tally: { tuned: [95.4, 1.0], held: [86.2, 6.6] },
  'yes-no': { tuned: [96.8, 1.5], held: [92.8, 2.8] },
  note: { tuned: [95.7, 1.9], held: [89.1, 4.5] },
};

describe.each(CORPUS_KINDS)('%s', (kind) => {
  test('has two hundred lines or more, each once', () => {
    const texts = linesOf(kind).map(({ text, ctx }) => `${text} ${JSON.stringify(ctx ?? {})}`);
    expect(texts.length).toBeGreaterThanOrEqual(200);
    expect(new Set(texts).size).toBe(texts.length);
  });

  test('a label that is not the first one is there only where the two differ', () => {
    for (const { first, second, settled, text } of linesOf(kind)) {
      if (settled !== undefined) expect(JSON.stringify(first), text).not.toBe(JSON.stringify(second));
    }
  });

  test.each(HALVES)('the %s half is read as well as before', (half) => {
    const { right, asked, wrong } = accuracyOf(kind, half);
    const all = right + asked + wrong;
    const [least, most] = LIMITS[kind][half];
    expect((100 * right) / all).toBeGreaterThanOrEqual(least);
    expect((100 * wrong) / all).toBeLessThanOrEqual(most);
  });
});
