/** What stands on a button; that about forty letters fit is common practice, no source. */
import { describe, expect, test } from 'vitest';
import { buttonText, buttonTexts, choiceOf } from '../../shared/button-text.js';

const FORTY = 'a'.repeat(40);

describe('the text of a button', () => {
  const table: [words: string, text: string][] = [
    ['partly cloudy', 'partly cloudy'],
    [FORTY, FORTY],
    [`${FORTY}b`, `${'a'.repeat(24)}…${'a'.repeat(14)}b`],
    ['2 two-spotted (B. bimaculatus) on Virginia bluebells', '2 two-spotted (B. bimacu…ginia bluebells'],
    ['\n1 imp on phlox\n1 bimac on plum', '1 imp on phlox; 1 bimac on plum'],
    ['🐝'.repeat(300), `${'🐝'.repeat(24)}…${'🐝'.repeat(15)}`], // no letter is cut in two
  ];
  test.each(table)('"%s" is "%s"', (words, text) => {
    expect(buttonText(words)).toBe(text);
    expect([...buttonText(words)].length).toBeLessThanOrEqual(40);
  });

  test('those that would look the same are numbered, and each leads back to its own', () => {
    const choices = ['x', ...['north', 'middle', 'south'].map((part) => `${FORTY} ${part} ${FORTY}`), 'x'];
    const texts = buttonTexts(choices);
    expect(texts[2]).toBe(`${texts[1]} (2)`);
    expect(texts[3]).toBe(`${texts[1]} (3)`);
    expect(texts.map((text) => choiceOf(text, choices))).toEqual(choices);
    expect(choiceOf('typed', choices)).toBe('typed');
  });
});
