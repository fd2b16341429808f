/**
 * The readers on the corpus must not get worse: what is read rightly stays above, what is wrong in silence below, what
 * `npm run accuracy` printed when these lines were last changed. A better figure is a reason to tighten its line.
 */
import { describe, expect, test } from 'vitest';
import { accuracyOf } from './accuracy.js';
import { CORPUS_KINDS, HALVES, linesOf, type CorpusKind } from './corpus/lines.js';

/** Percent of the lines of each half: rightly read at least, wrong at most. Of a note: of its fields. */
const LIMITS: Record<CorpusKind, Record<(typeof HALVES)[number], readonly [right: number, wrong: number]>> = {
  date: { tuned: [97.1, 0.3], held: [91.4, 0.1] },
  times: { tuned: [96.3, 0.7], held: [97.3, 0.1] },
  temperature: { tuned: [98.6, 0.1], held: [97.0, 3.0] },
  sky: { tuned: [97.9, 0.6], held: [91.3, 3.0] },
  wind: { tuned: [98.5, 0.5], held: [92.8, 1.3] },
  patch: { tuned: [98.3, 0.3], held: [98.4, 0.1] },
  place: { tuned: [95.5, 1.6], held: [96.1, 1.4] },
  count: { tuned: [96.3, 0.4], held: [88.6, 1.5] },
  plant: { tuned: [97.8, 1.1], held: [97.0, 2.1] },
  bee: { tuned: [98.6, 0.4], held: [93.8, 2.5] },
  tally: { tuned: [95.0, 0.7], held: [89.6, 5.2] },
  'yes-no': { tuned: [97.0, 1.6], held: [91.7, 3.4] },
  note: { tuned: [95.8, 1.8], held: [91.1, 3.9] },
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
