/** Two watches told in one message: the first is settled, then the second is read from what was written. */
import { expect, test } from 'vitest';
import { Conversation } from './converse.js';

const BOTH =
  'I watched twice today. First one 10 to 10:15 at Oak Rise, 60 sunny calm, 8x8 ft savanna, prairie smoke 40, one bimac. Second 1 to 1:15 same place, 70 sunny breezy, 8x8 ft, lupine 30, no queens';

const told = (): Conversation => {
  const conversation = new Conversation().agreed();
  conversation.all(BOTH, 'yes', 'yes');
  return conversation;
};

test('once the first is stored the second is told, on the same day, and only what it lacks is asked', () => {
  const conversation = told();
  expect(conversation.watches).toHaveLength(1);
  expect(conversation.watch).toMatchObject({ times: { start: '10:00', end: '10:15' }, total: 1 });
  const said = conversation.last.replies.join('\n');
  expect(said).toMatch(/^Stored as watch 1\..*\nNow the second one\.\nGot it: 1:00 – 1:15 PM · 70 °F/s);
  expect(conversation.last.asking?.fields).toEqual(['place']);
  conversation.all('same place', 'yes');
  expect(conversation.watches).toHaveLength(2);
  expect(conversation.watch).toMatchObject({
    date: '2026-05-06',
    times: { start: '13:00', end: '13:15' },
    place: { site: 'oak-rise' },
    temperature: { celsius: 21.1 },
    total: 0,
  });
  // what is asked of the person once waits until both are told
  expect(conversation.last.asking?.fields).toEqual(['name']);
});

test('a day of its own stays', () => {
  const conversation = new Conversation().agreed();
  conversation.all(
    'Monday 2-2:15 Oak Rise 66F sunny calm 4x4 ft meadow 20 violets 1 imp. Tuesday 3-3:15 Fen Boardwalk 70F sunny calm 4x4 ft meadow 10 violets none',
    'yes',
    'yes',
    'yes',
  );
  expect(conversation.watches.map(({ date, habitat }) => `${date} ${habitat}`)).toEqual([
    '2026-05-04 meadow',
    '2026-05-05 meadow',
  ]);
});

test('where the first is thrown away the second is told', () => {
  const conversation = new Conversation().agreed();
  conversation.all(BOTH, 'yes', 'throw it away', 'yes');
  expect(conversation.watches).toHaveLength(0);
  expect(conversation.last.replies.join('\n')).toContain('Now the second one.\nGot it: 1:00 – 1:15 PM');
});

test('the part of the day told with the day settles 6 o’clock', () => {
  for (const [day, start] of [
    ['yesterday evening', '18:00'],
    ['this morning', '06:00'],
  ] as const) {
    const conversation = new Conversation().agreed();
    conversation.all(day, '6 to 6:15');
    expect(conversation.thread.report?.fields['times']?.value).toMatchObject({ start });
  }
  const conversation = new Conversation().agreed();
  conversation.all('yesterday', '6 to 6:15');
  expect(conversation.thread.report?.fields['times']).toBeUndefined();
});

test('a kind of place that was left out is told at the summary by its word', () => {
  const conversation = new Conversation().agreed();
  conversation.all('today 3 to 3:15, Fen Boardwalk, 66 sunny calm, 4x4 ft, 20 violets, 2 imps');
  expect(conversation.thread.report?.fields['habitat']).toBeUndefined();
  conversation.say('wet meadow');
  expect(conversation.thread.report?.fields['habitat']?.value).toBe('wet meadow');
});
