/** What the summary prints of queens, typed back, reads as what it was printed from: people copy what they see. */
import { describe, expect, test } from 'vitest';
import { readFields, type Context } from '../../src/answers/index.js';
import { showLine } from '../../src/dialog/show.js';
import type { TallyLine } from '../../src/dialog/types.js';
import { survey } from '../demo-survey.js';

const PLANT = { name: 'Cercis canadensis', rank: 'species', typed: 'redbud', flowers: null };
const context: Context = {
  survey: survey.settings,
  words: survey.words,
  names: survey.names,
  today: '2026-05-06',
  time: '18:30',
  watched: ['Mertensia virginica', PLANT.name],
  of: null,
};
const printed = (bee: string, count: number, plant: string | null): string => {
  const rest = { rank: 'species', typed: '', seenBefore: 0, withPollen: null, caste: null, doubt: false };
  const line: TallyLine = { plant, bee, count, ...rest };
  return showLine(line, [PLANT], survey, context);
};
function read(text: string): string {
  const reading = readFields(text, context, ['tally']).fields.tally;
  if (reading?.state !== 'sure') return `${reading?.state}`;
  return reading.value.map(({ count, bee, plant }) => `${count} ${bee} ${plant}`).join(', ');
}

describe.each(survey.names.bees.map(({ name }) => name))('%s', (bee) => {
  test.each([1, 3])('%i of them', (count) => {
    expect(read(printed(bee, count, null))).toBe(`${count} ${bee} null`);
    expect(read(printed(bee, count, PLANT.name))).toBe(`${count} ${bee} ${PLANT.name}`);
    const beside = `2 common eastern (B. impatiens) on Virginia bluebells; ${printed(bee, count, PLANT.name)}`;
    expect(read(beside)).toBe(`2 Bombus impatiens Mertensia virginica, ${count} ${bee} ${PLANT.name}`);
  });
});

test.each(survey.names.bees.filter(({ regions }) => regions.includes('central')).map(({ name }) => name))(
  '%s by its English name alone, beside another bee',
  (bee) => {
    const english = printed(bee, 3, PLANT.name).replace(/ \(B\. \w+\)/, '');
    expect(read(`2 impatiens on bluebells, ${english}`)).toBe(
      `2 Bombus impatiens Mertensia virginica, 3 ${bee} ${PLANT.name}`,
    );
  },
);

test.each([
  ['2 impatiens on redbud, and 3 on yellow violets', /Viola pubescens/],
  ['2 impatiens on redbud, 30 yellow', /^unsure/], // more than queens ever are
])('"%s": a colour beside bees is no name', (typed, expected) => {
  expect(read(typed)).toMatch(expected);
  expect(read(typed)).not.toContain('fervidus');
});
