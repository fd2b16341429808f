/** What was told in another unit than the survey's is said back in both; conversions by NIST SP 811, appendix B.8. */
import { expect, test } from 'vitest';
import { Conversation, WATCH } from './converse.js';

const table: [answers: number, typed: readonly string[], said: string][] = [
  [3, ['4 x 2,5 m, garden'], '4 × 2.5 m (13.1 × 8.2 ft)'],
  [3, ['3x3m oak sav'], '3 × 3 m (9.8 × 9.8 ft)'],
  [3, ['round, 4 m across'], 'round, 4 m across (round, 13.1 ft across)'],
  [3, ['12 by 8 feet, meadow'], 'Got it: 12 × 8 ft · meadow.'],
  [3, ['10 x 8 garden', 'yes'], 'Got it: 10 × 8 ft.'],
  [2, ['14 C, sunny, calm'], '14 °C (57 °F)'],
  [2, ['19, sunny, calm', 'yes'], 'Got it: 19 °C (66 °F).'],
  [2, ['68 F, sunny, calm'], 'Got it: 68 °F'],
  [2, ['it was 20 minutes in the shade, 70 F, sunny, calm'], 'Got it: 70 °F'],
];
test.each(table)('after %i answers %j: "%s"', (answers, typed, said) => {
  const conversation = new Conversation().agreed();
  conversation.all(...WATCH.slice(0, answers), ...typed);
  expect(conversation.last.replies.join('\n')).toContain(said);
});

test.each([
  ['3 impatiens, one of them had pollen', '3 common eastern (B. impatiens) on dandelion (1 with pollen)'],
  ['1 impatiens with pollen', '1 common eastern (B. impatiens) on dandelion (with pollen)'],
])('"%s" is shown as "%s"', (typed, shown) => {
  const conversation = new Conversation().agreed();
  conversation.all('today 2:10 to 2:25 pm', 'Fen Boardwalk', '71 F, sunny, calm', '12 by 8 feet, meadow');
  conversation.all('dandelion 15', typed);
  expect(conversation.last.replies.join('\n')).toContain(shown);
});
