/** Bad input gets one clear sentence with an example that works, nothing is taken, and the same is still asked. */
import { expect, test } from 'vitest';
import { Conversation } from './converse.js';

const UP_TO_PLANTS = ['today 2:10 to 2:25 pm', 'Fen Boardwalk', '71 F, sunny, calm', '12 by 8 feet'];
const UP_TO_QUEENS = [...UP_TO_PLANTS, 'Virginia bluebells 120'];

const table: [what: string, before: readonly string[], typed: string][] = [
  ['an end before its start', ['today'], '3:30 pm to 3:10 pm'],
  ['700 degrees', UP_TO_PLANTS.slice(0, 2), '700 F'],
  ['a vague number', [...UP_TO_PLANTS, 'bluebells'], 'lots'],
  ['fewer than none', UP_TO_QUEENS, '-3 queens'],
  ['ten thousand letters', [], 'lorem ipsum '.repeat(850)],
  ['ten thousand letters of nonsense at the queens', UP_TO_QUEENS, 'x2 '.repeat(2600)],
  ['control characters', [], '\u0000\u0007\u001b[31m'],
  ['emoji alone', [], '🐝🐝🐝'],
  ['emoji alone for the weather', UP_TO_PLANTS.slice(0, 2), '🤷'],
  ['text from right to left', [], '\u202eאתמול בצהריים\u202c'],
  ['a fragment of SQL', [], "'); DROP TABLE watches; --"],
  ['a fragment of a shell', [], '$(rm -rf /) && `reboot`'],
  ['nothing but blanks', [], '   \n  '],
  ['markup', [], '<script>alert(1)</script>'],
];

test.each(table)('%s', (_what, before, typed) => {
  const conversation = new Conversation().agreed();
  conversation.all(...before);
  const asking = conversation.last.asking;
  const known = conversation.thread.report?.fields;
  const { replies } = conversation.say(typed);
  expect(replies).toHaveLength(1);
  expect(replies[0]?.length).toBeGreaterThan(20);
  expect(replies[0]?.length).toBeLessThan(400);
  expect(conversation.last.asking?.fields).toEqual(asking?.fields);
  for (const field of ['temperature', 'times', 'tally']) {
    expect(conversation.thread.report?.fields[field]).toEqual(known?.[field]);
  }
  expect(conversation.thread.report?.tally ?? null).toBeNull();
});

test('a date next week is asked back, not taken', () => {
  const conversation = new Conversation().agreed();
  conversation.say('May 13, 2:10 to 2:25 pm');
  expect(conversation.thread.report?.fields['date']).toBeUndefined();
  expect(conversation.last.asking?.fields).toEqual(['date']);
});

test('what is typed is kept as it is, and does no harm', () => {
  const place = `Robert'); DROP TABLE watches;-- ${'\u0007'}<b>bold</b> {count, plural, other {#}}`;
  const conversation = new Conversation().agreed();
  conversation.all(UP_TO_QUEENS[0]!, place, 'no', ...UP_TO_QUEENS.slice(2), 'none', 'yes');
  expect(conversation.watch.place?.words).toBe(place.replace('\u0007', ''));
});

test('a doubt about plants that a later answer settles is not asked about again', () => {
  const conversation = new Conversation().agreed();
  conversation.all('today 2:10 to 2:25 pm', 'behind the old mill', 'bluebells maybe 80ish', 'back');
  conversation.say('bluebells 80 and dandelion 20');
  expect(conversation.thread.report?.doubts).toEqual([]);
  expect(conversation.thread.report?.plants?.map(({ name, flowers }) => [name, flowers?.value])).toEqual([
    ['Mertensia virginica', 80],
    ['Taraxacum officinale', 20],
  ]);
});

test('a doubt about another plant stays', () => {
  const conversation = new Conversation().agreed();
  conversation.all('today 2:10 to 2:25 pm', 'behind the old mill', 'bluebells maybe 80ish', 'back');
  conversation.say('dandelion 20');
  expect(conversation.thread.report?.doubts.map(({ field }) => field)).toEqual(['plants']);
});

test('a day told where the place was asked for is taken without a word of blame', () => {
  const conversation = new Conversation().agreed();
  conversation.say('today 2 to 2:15 pm');
  const { replies } = conversation.say('yesterday 2 to 2:15 pm');
  expect(replies.join(' ')).not.toMatch(/did not/);
  expect(conversation.last.asking?.fields).toEqual(['place']);
});

test('asked something else, "bee on dandelion 1" leaves its 25 flowers; "dandelion 30" does not', () => {
  for (const [typed, flowers] of [
    ['bee on dandelion 1', 25],
    ['dandelion 30', 30],
    ['dandelion only 4 flowers', 4],
  ] as const) {
    const conversation = new Conversation().agreed();
    conversation.all('today 3 to 3:15, 66 sunny calm, 4x4 ft meadow, dandelion 25', typed);
    expect(conversation.thread.report?.plants?.[0]?.flowers?.value).toBe(flowers);
  }
});

test('a question that tells the day is answered, and the day is taken', () => {
  const conversation = new Conversation().agreed();
  conversation.say('hi can i tell you about my watch from sunday');
  expect(conversation.last.replies.join('\n')).toMatch(/^Yes, right here.*Got it: Sun, May 3/s);
});
