/** What people write while the clock runs besides queens: none of it is asked about once time is up. Common practice, no source. */
import { describe, expect, test } from 'vitest';
import { Conversation } from './converse.js';

const running = (...told: string[]): Conversation => {
  const conversation = new Conversation().agreed();
  conversation.all('start', ...told);
  return conversation;
};
const said = ({ last }: Conversation): string => last.replies.join('\n');
const rows = ({ thread }: Conversation): string =>
  (thread.report?.tally ?? [])
    .map(({ count, bee, plant, seenBefore }) => [count, bee, plant, ...(seenBefore ? ['same'] : [])].join(' '))
    .join(', ');

test.each([
  'wow so pretty',
  '👍',
  'she left',
  'gone!',
  'big one flew by',
  'carpenter bee on the redbud',
  'honeybee',
  'lots of flies',
  'sun went in',
  "it's 68 and sunny",
  'thanks',
  'how much longer?',
])('"%s" counts nothing, without a sound, and is not asked about', (typed) => {
  const conversation = running('1 imp on redbud');
  conversation.say(typed);
  expect(conversation.sent[0]?.silent).toBe(true);
  expect(rows(conversation)).toBe('1 Bombus impatiens Cercis canadensis');
  conversation.say('stop');
  expect(said(conversation)).not.toContain('During the watch you wrote');
});

test('what may be a queen is asked about as ever', () => {
  const conversation = running('1 imp on redbud', 'some orange thing on redbud', 'stop');
  expect(said(conversation)).toContain('During the watch you wrote “some orange thing on redbud”');
});

test('the weather told meanwhile is told', () => {
  const conversation = running('1 imp on redbud', "it's 68 and sunny");
  expect(said(conversation)).toBe('Got it: 68 °F · clear.');
  conversation.all('stop', 'Fen Boardwalk');
  expect(conversation.last.asking?.fields).toEqual(['wind']);
});

test('the minutes left are told, and that the clock is stopped', () => {
  const conversation = running();
  conversation.advance(4 * 60);
  expect(conversation.say('how much time is left?').replies.join()).toBe('About 11 minutes left.');
  conversation.all('pause', 'how much longer');
  expect(said(conversation)).toMatch(/^Clock stopped/);
});

describe('none so far', () => {
  test.each(['nothing yet', 'still nothing', 'no bees yet', 'quiet so far', 'not a single one yet'])(
    '"%s"',
    (typed) => {
      const conversation = running(typed);
      expect(said(conversation)).toMatch(/^none/);
      conversation.say('1 imp on redbud');
      expect(rows(conversation)).toBe('1 Bombus impatiens Cercis canadensis');
      conversation.say(typed);
      expect(said(conversation)).toMatch(/^No more, then \(1\)/);
      conversation.say('stop');
      expect(said(conversation)).not.toContain('During the watch you wrote');
    },
  );

  test('is a result at the end', () => {
    const conversation = running('redbud', 'nothing yet', 'stop');
    expect(rows(conversation)).toBe('0  Cercis canadensis');
    expect(said(conversation)).toContain('no queens');
  });
});

describe('a plant alone', () => {
  test('right after queens told without one is where those were', () => {
    const conversation = running('imp', '2 bimac', 'redbud');
    expect(rows(conversation)).toBe('1 Bombus impatiens Cercis canadensis, 2 Bombus bimaculatus Cercis canadensis');
    expect(said(conversation)).toMatch(/^1 .*redbud; 2 .*redbud \(3\)$/);
  });
  test('leaves queens that have theirs', () => {
    const conversation = running('1 imp on phlox', '1 bimac', 'redbud');
    expect(rows(conversation)).toContain('1 Bombus impatiens Phlox');
  });
});

test.each(['no wait that was a different one', 'that was a new one', 'not the same one'])(
  '"%s" after “same one” makes it a queen of its own',
  (typed) => {
    const conversation = running('1 imp on redbud', 'same one on phlox');
    expect(rows(conversation)).toContain('same');
    conversation.say(typed);
    expect(rows(conversation)).toBe('1 Bombus impatiens Cercis canadensis, 1 Bombus impatiens Phlox');
  },
);

test.each(['oops not that', 'never mind', 'cancel that', 'not that'])('"%s" takes the last one back', (typed) => {
  const conversation = running('1 imp on redbud', '1 bimac on phlox', typed);
  expect(rows(conversation)).toBe('1 Bombus impatiens Cercis canadensis');
});
