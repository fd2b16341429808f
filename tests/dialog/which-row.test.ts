/** Corrections that name a row or a plant in a roundabout way: that one is put right, no row is added, nothing is lost. */
import { describe, expect, test } from 'vitest';
import { Conversation } from './converse.js';

const SHORT: Record<string, string> = {
  'Bombus impatiens': 'imp',
  'Bombus bimaculatus': 'bimac',
  'Cercis canadensis': 'redbud',
  'Aquilegia canadensis': 'columbine',
  'Mertensia virginica': 'bluebells',
  Viola: 'violet',
};
function told(plants: string, ...tally: readonly string[]): Conversation {
  const conversation = new Conversation().agreed();
  conversation.all('Monday 2:10 to 2:25 pm', 'Fen Boardwalk', '64 F, cloudy, light breeze', '12 by 8 feet, meadow');
  conversation.all(plants, ...tally);
  return conversation;
}
const queens = ({ thread }: Conversation): string =>
  (thread.report?.tally ?? [])
    .filter(({ count }) => count > 0)
    .map(({ count, bee, plant }) => `${count} ${SHORT[bee ?? ''] ?? bee} ${SHORT[plant ?? ''] ?? plant}`)
    .join(', ');
const plants = ({ thread }: Conversation): string =>
  (thread.report?.plants ?? [])
    .map(({ name, typed, flowers }) => `${SHORT[name ?? ''] ?? typed} ${flowers?.value}`)
    .join(', ');

describe('two rows of one bee', () => {
  const twoRows = (): Conversation =>
    told('redbud 100, columbine 12', '2 impatiens on the redbud and 1 impatiens on the columbine');

  test.each(['it was one imp not two', 'it was 1 imp, not 2', 'no, one imp not two'])(
    '"%s": the row that has two',
    (typed) => {
      const conversation = twoRows();
      conversation.say(typed);
      expect(queens(conversation)).toBe('1 imp redbud, 1 imp columbine');
      expect(conversation.last.asking?.fields).toEqual(['confirm']);
    },
  );

  test.each(['no, it was 3 imp', 'sorry, 4 imp not 3'])('"%s" may be either: it is asked which', (typed) => {
    const conversation = twoRows();
    expect(conversation.say(typed).replies.join()).toMatch(
      /Which of them should change: 2 .* on redbud; 1 .* on columbine/,
    );
    expect(queens(conversation)).toBe('2 imp redbud, 1 imp columbine');
    conversation.say('3 imp on redbud');
    expect(queens(conversation)).toBe('3 imp redbud, 1 imp columbine');
  });
});

test.each(['change line 10 to 1 imp on bluebells', '10 should be 1 imp on bluebells'])(
  '"%s": the row of that bee is there now',
  (typed) => {
    const conversation = told('bluebells 40, redbud 100', '2 imp on redbud, none on the bluebells');
    expect(queens(conversation)).toBe('2 imp redbud');
    conversation.say(typed);
    expect(queens(conversation)).toBe('1 imp bluebells');
  },
);

describe('a plant that is no plant', () => {
  test.each([
    'Take the little hearts away from number 10',
    'Please take the little hearts out.',
    'Remove the little hearts.',
    'remove the little hearts from line 9',
  ])('"%s"', (typed) => {
    const conversation = told('bleeding heart 60, little hearts on it 30', 'none');
    expect(plants(conversation)).toMatch(/little hearts/);
    conversation.say(typed);
    expect(plants(conversation)).toBe('bleeding heart 60');
  });
});

test('the example of a change has the line of the temperature, also where a place is private', () => {
  const conversation = told('redbud 100', 'none');
  expect(conversation.say('mumble mumble').replies.join()).toMatch(/for example: 4 should be 68 F/);
  const garden = new Conversation().agreed();
  garden.all('Monday 2:10 to 2:25 pm', 'my back yard', '64 F, cloudy, light breeze', '12 by 8 feet, garden');
  garden.all('redbud 100', 'none');
  const line = /(\d+)\. Temperature/.exec(garden.last.replies.join('\n'))?.[1];
  expect(garden.say('mumble mumble').replies.join()).toContain(`for example: ${line} should be 68 F`);
  garden.say(`${line} should be 68 F`);
  expect(garden.last.replies.join('\n')).toContain(`${line}. Temperature: 68 °F`);
});

test('asked for the flowers of one queen, another with hers is a further row', () => {
  const conversation = told('redbud 100, violets 20', '2 imp');
  conversation.say('and a bimac on the violets');
  expect(conversation.last.replies.join()).toMatch(/Which flowers were the 2/);
  conversation.say('redbud');
  expect(queens(conversation)).toBe('2 imp redbud, 1 bimac violet');
});
