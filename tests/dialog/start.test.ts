/** "Start" begins a watch with the clock running, whatever is being asked; a report that has its times is put aside. */
import { describe, expect, test } from 'vitest';
import { Conversation, WATCH } from './converse.js';

const PUT_ASIDE = /^I put the other report aside; “go on” brings it back once this one is done\.\nThe clock runs from /;
const said = ({ last }: Conversation): string => last.replies.join('\n');

const moments: [when: string, before: readonly string[]][] = [
  ['at the summary', WATCH],
  ['asked what to change', [...WATCH, 'no']],
  ['asked about the weather', WATCH.slice(0, 2)],
  ['asked about the flowers of a plant', [...WATCH.slice(0, 4), 'bluebells']],
  ['while a stored watch is mended', [...WATCH, 'yes', 'skip', 'skip', 'fix my last watch']],
];
describe('beside a report that has its times', () => {
  test.each(moments)('%s', (_when, before) => {
    const conversation = new Conversation().agreed();
    conversation.all(...before);
    const put = conversation.thread.report;
    conversation.say('start');
    expect(said(conversation)).toMatch(PUT_ASIDE);
    conversation.say('1 imp on phlox');
    expect(conversation.thread.report?.live).not.toBeNull();
    expect(conversation.thread.report).toMatchObject({ stored: null, tally: [{ count: 1 }] });
    expect(conversation.thread.parked.map(({ id }) => id)).toEqual([put?.id]);
  });
  test('which comes back, and is stored as its own', () => {
    const conversation = new Conversation(undefined, '2026-05-06T18:30').agreed();
    conversation.all(...WATCH, 'start', '1 imp on phlox', 'stop', ...WATCH.slice(1, 4));
    conversation.all('none', '25', 'yes', 'skip', 'skip');
    expect(conversation.watches).toMatchObject([{ total: 1 }]);
    conversation.all('go on', 'yes');
    expect(conversation.watches).toMatchObject([{ total: 1 }, { total: 0, times: { start: '14:10', end: '14:25' } }]);
  });
});

test('what was told of the patch before it belongs to the watch that begins', () => {
  const conversation = new Conversation().agreed();
  conversation.all('bluebells 40, phlox', 'start');
  expect(said(conversation)).toMatch(/^The clock runs from /);
  expect(conversation.thread.report?.plants).toHaveLength(2);
  expect(conversation.thread.parked).toEqual([]);
});

test('a photograph that waited belongs to the watch that begins, and to no other', () => {
  const conversation = new Conversation().agreed();
  conversation.all(...WATCH, 'yes', 'skip', 'skip');
  conversation.send({ kind: 'photo', sha256: 'a'.repeat(64), type: 'image/jpeg', takenAt: null });
  conversation.all('no', 'start');
  expect(conversation.thread.report?.photographs).toHaveLength(1);
  expect(conversation.thread.photographs).toEqual([]);
});

test('by mail it is no wish for a clock beside answers', () => {
  const conversation = new Conversation(undefined, '2026-05-06T18:30', 'all').agreed();
  conversation.all(WATCH[0], 'start');
  expect(conversation.thread.report?.live).toBeNull();
  expect(conversation.thread.parked).toEqual([]);
});

test('"just finished" tells the day, whatever becomes of the times', () => {
  const conversation = new Conversation().agreed();
  conversation.all('Just finished at Oak Rise', '12:50 to 1:05');
  expect(conversation.thread.report?.fields['date']?.value).toBe('2026-05-06');
  expect(conversation.last.asking?.fields).toEqual(['temperature', 'sky', 'wind']);
});
