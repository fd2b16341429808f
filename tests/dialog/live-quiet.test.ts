/** While the clock runs nothing makes a sound or a message of its own but what the clock says, and that is said once. */
import { describe, expect, test } from 'vitest';
import { Conversation } from './converse.js';

function watching(...told: readonly string[]): Conversation {
  const conversation = new Conversation().agreed();
  conversation.all('start', 'flowers: dandelion, redbud, phlox', ...told);
  return conversation;
}
const counted = ({ thread }: Conversation): unknown[] =>
  (thread.report?.tally ?? []).map(({ count, plant }) => [count, plant]);

test.each([
  ['a photograph', { kind: 'photo', sha256: 'a'.repeat(64), type: 'image/jpeg', takenAt: null }],
  ['a sticker', { kind: 'file', name: 'sticker', problem: null }],
  ['a photograph that is too big', { kind: 'file', name: 'photo', problem: 'too-big' }],
] as const)('%s is answered without a sound, in the message of the tally', (_what, content) => {
  const conversation = watching('1 imp on dandelion');
  const [tally] = conversation.sent;
  conversation.send(content);
  expect(conversation.sent).toMatchObject([{ silent: true, slot: tally!.slot, choices: tally!.choices }]);
});

describe('"no" and "nothing"', () => {
  test.each(['no', 'none', 'nothing', 'nope', 'no bees'])(
    '"%s" after queens were counted tells of no plant',
    (typed) => {
      const conversation = watching('3 imp on phlox', '2 bimac on phlox');
      conversation.say(typed);
      expect(conversation.last.replies[0]).toMatch(/^No more, then \(5\)\./);
      expect(counted(conversation)).toEqual([
        [3, 'Phlox'],
        [2, 'Phlox'],
      ]);
    },
  );
  test('with a plant that is named is a zero there', () => {
    const conversation = watching('3 imp on phlox', 'none on the redbud');
    expect(conversation.last.replies[0]).toBe('none on redbud (3)');
    expect(counted(conversation)).toEqual([
      [3, 'Phlox'],
      [0, 'Cercis canadensis'],
    ]);
  });
  test('before any queen tells of all that are watched', () => {
    expect(counted(watching('none'))).toEqual([
      [0, 'Taraxacum officinale'],
      [0, 'Cercis canadensis'],
      [0, 'Phlox'],
    ]);
  });
});

describe('after the program stood still', () => {
  const said = (conversation: Conversation): string[] =>
    conversation.transcript.filter((text) => /left\.$|^Time\./.test(text)).map((text) => text.split('\n')[0]!);
  test.each([
    [10, ['Five minutes left.']],
    [12, ['3 minutes left.']],
    [14.5, ['One minute left.']],
    [15, ['Time. 15 minutes, one queen.']],
    [40, ['Time. 15 minutes, one queen.']],
  ])('for %d minutes it says %j', (minutes, expected) => {
    const conversation = watching('1 imp on dandelion');
    conversation.outage(minutes * 60);
    expect(said(conversation)).toEqual(expected);
  });
});
