/** Plants told by bare names, and their flowers by bare numbers. */
import { describe, expect, test } from 'vitest';
import { Conversation } from './converse.js';

/** Asked about the flowers of the first of three plants, or fewer. */
function askedFlowers(plants: string): Conversation {
  const conversation = new Conversation().agreed();
  conversation.all(
    'Monday 2:10 to 2:25 pm',
    'Fen Boardwalk',
    'no',
    '64 F, cloudy, light breeze',
    '12 by 8 feet, meadow',
  );
  conversation.say(plants);
  return conversation;
}

test('a plum is said back as a plum, and no cherry', () => {
  const conversation = new Conversation().agreed();
  conversation.all('today 2:10 to 2:25 pm', 'Fen Boardwalk', '71 F, sunny, calm', '12 by 8 feet, meadow');
  expect(conversation.say('plum about 500').replies.join()).toContain('plum, about 500 flowers');
});

test('words about the weather beside the queens leave it as it was told', () => {
  const conversation = new Conversation().agreed();
  conversation.all('today 2:10 to 2:25 pm', 'Fen Boardwalk', '71 F, sunny, calm', '12 by 8 feet, meadow', 'lilac 40');
  expect(conversation.say('none, too windy I think').replies.join()).toContain('6. Wind: calm');
  expect(conversation.last.asking?.fields).toEqual(['confirm']);
});

describe('flowers of several plants', () => {
  test.each([
    ['bluebells and violets', '120 and 40', 'Virginia bluebells, 120 flowers; violet, 40 flowers'],
    ['bluebells and violets', 'about 120, 40 flowers', 'Virginia bluebells, about 120 flowers; violet, 40 flowers'],
    [
      'bluebells, violets, lilac',
      '120, 40 and 300',
      'Virginia bluebells, 120 flowers; violet, 40 flowers; lilac, 300 clusters',
    ],
    [
      'bluebells, violets 12, lilac',
      '120 & 300',
      'Virginia bluebells, 120 flowers; violet, 12 flowers; lilac, 300 clusters',
    ],
  ])('after "%s", "%s" is said back', (plants, typed, expected) => {
    const conversation = askedFlowers(plants);
    expect(conversation.last.replies.at(-1)).toMatch(/bluebells/i);
    expect(conversation.say(typed).replies.join('\n')).toContain(expected);
    expect(conversation.last.asking?.fields).toEqual(['tally']);
  });

  test.each([
    ['bluebells and violets', '20 white and 15 pink'], // a sum of the first
    ['bluebells and violets', 'a hundred and twenty'],
    ['bluebells, violets, lilac', '120 and 40'], // of which two nobody knows
  ])('after "%s", "%s" is not of both', (plants, typed) => {
    const conversation = askedFlowers(plants);
    conversation.say(typed);
    expect(conversation.last.asking?.fields).not.toEqual(['tally']);
  });
});

describe('bare names of plants where something else is asked', () => {
  test('are kept, and the question is asked again', () => {
    const conversation = new Conversation().agreed();
    conversation.all('Monday 2:10 to 2:25 pm', '44.9713, -93.2055');
    expect(conversation.last.replies.at(-1)).toMatch(/private/i);
    const { replies } = conversation.say('bluebells and violets');
    expect(replies.join('\n')).toMatch(/Got it: .*bluebells.*violet/i);
    expect(replies.at(-1)).toMatch(/private/i);
    conversation.all('no', '64 F, cloudy, light breeze', '12 by 8 feet, meadow');
    expect(conversation.last.replies.at(-1)).toMatch(/bluebells/i);
  });

  test.each(['plum street park', 'bluebells?', 'no bluebells'])('"%s" tells no plants', (typed) => {
    const conversation = new Conversation().agreed();
    conversation.all('Monday 2:10 to 2:25 pm', '44.9713, -93.2055');
    conversation.say(typed);
    expect(conversation.say('what do you have so far').replies.join('\n')).not.toMatch(/bluebells|plum,/i);
  });
});
