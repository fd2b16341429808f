/** "Which flowers was she on?": a plant, no plant, or all of it told again. */
import { describe, expect, test } from 'vitest';
import { Conversation } from './converse.js';

/** Asked on which of wild geranium and phlox the queen of unknown kind was. */
function asked(): Conversation {
  const conversation = new Conversation().agreed();
  conversation.all('Monday 2:10 to 2:25 pm', 'Fen Boardwalk', '64 F, cloudy, light breeze', '12 by 8 feet, meadow');
  conversation.all('wild geranium 60, phlox 25', '2 impatiens on the geranium and 1 bumble bee, kind unknown');
  expect(conversation.last.replies.at(-1)).toMatch(/Which flowers was/);
  return conversation;
}
const shown = (conversation: Conversation): string =>
  conversation
    .say('what do you have so far')
    .replies.join('\n')
    .split('\n')
    .find((line) => line.includes('Queens:')) ?? '';

describe('the answer', () => {
  test.each(['phlox', 'on the phlox', 'the phlox', 'phlox, not the geranium'])('"%s" is where she was', (typed) => {
    const conversation = asked();
    conversation.say(typed);
    expect(shown(conversation)).toMatch(/kind not known on phlox/);
  });

  test.each(['nothing on the phlox', 'none on the phlox'])(
    '"%s" is where she was not, and it is asked again',
    (typed) => {
      const conversation = asked();
      expect(conversation.say(typed).replies.join('\n')).toMatch(/none on phlox[^]*Which flowers was/);
      conversation.say('geranium');
      expect(shown(conversation)).toMatch(
        /2 common eastern .* on wild geranium; 1 bumble bee, kind not known on wild geranium/,
      );
    },
  );

  test('"not the phlox" is no phlox', () => {
    const conversation = asked();
    expect(conversation.say('not the phlox').replies.join('\n')).toMatch(/Which flowers was/);
    expect(shown(conversation)).not.toMatch(/kind not known on/);
  });
});

test('of several bees whose kind is not known it is said in the plural', () => {
  const conversation = new Conversation().agreed();
  conversation.all('Monday 2:10 to 2:25 pm', 'Fen Boardwalk', '64 F, cloudy, light breeze', '12 by 8 feet, meadow');
  conversation.all('wild geranium 60', '3 bumble bees, kind unknown, on the geranium');
  expect(conversation.last.replies.join()).toContain('3 bumble bees, kind not known on wild geranium');
});

test('several are placed at once, each by its bee, and keep their counts', () => {
  const conversation = new Conversation().agreed();
  conversation.all('Monday 2:10 to 2:25 pm', 'Fen Boardwalk', '64 F, cloudy, light breeze', '12 by 8 feet, meadow');
  conversation.all('wild geranium 60, phlox 25', '3 two-spotted and 1 black and gold');
  conversation.say('the two-spotted on the geranium, the black and gold on the phlox');
  expect(shown(conversation)).toMatch(/3 two-spotted.* on wild geranium; 1 black and gold.* on phlox/);
});

test('"also a violet with 20 flowers, no bees" tells its none too', () => {
  const conversation = asked();
  conversation.all('phlox', 'also there was a violet with 20 flowers, no bees');
  expect(conversation.thread.report?.tally?.at(-1)).toMatchObject({ plant: 'Viola', count: 0 });
});
