/** What bees and plants are called in front of people. */
import { expect, test } from 'vitest';
import { beeLabel, plantLabel } from '../../shared/labels.js';
import { survey } from '../demo-survey.js';

const bees: [name: string, label: string][] = [
  ['Bombus impatiens', 'common eastern (B. impatiens)'],
  ['Bombus nowhere', 'B. nowhere'],
  ['Xylocopa virginica', 'Xylocopa virginica'],
  ['Bombus', 'not told apart'],
];
test.each(bees)('%s is shown as %s', (name, label) => {
  expect(beeLabel(name, survey.names, 'not told apart')).toBe(label);
});

test('a bee without a common name has its scientific one', () => {
  const nameless = survey.names.bees.map((bee) => ({ ...bee, common: [] }));
  expect(beeLabel('Bombus impatiens', { bees: nameless }, '')).toBe('B. impatiens');
});

const plants: [name: string, label: string][] = [
  ['Mertensia virginica', 'Virginia bluebells (Mertensia virginica)'],
  ['Salix', 'willow (Salix)'],
  ['Phlox', 'Phlox'], // its common name is the same word
  ['tall pink one', 'tall pink one'],
];
test.each(plants)('%s is shown as %s', (name, label) => {
  expect(plantLabel(name, survey.names)).toBe(label);
});
