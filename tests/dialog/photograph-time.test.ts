/** When a picture was taken is said with the question for the times, and is no answer to it; the summary counts pictures. */
import { expect, test } from 'vitest';
import { Conversation, WATCH } from './converse.js';

/** A moment of 6 May in Chicago, five hours behind. */
const at = (utc: string) => `2026-05-06T${utc}:00Z`;
let pictures = 0;
const send = (conversation: Conversation, takenAt: string | null) =>
  conversation.send({
    kind: 'photo',
    sha256: (pictures += 1).toString(16).padStart(64, '0'),
    type: 'image/jpeg',
    takenAt,
  });
const said = ({ last }: Conversation): string => last.replies.join('\n');

test('a picture of the day is told of where the times are asked, and they stay open', () => {
  const conversation = new Conversation().agreed();
  conversation.say('today at Fen Boardwalk');
  expect(conversation.last.asking?.fields).toEqual(['times']);
  send(conversation, at('19:14'));
  expect(said(conversation)).toMatch(/\nYour picture was taken at 2:14 PM\. From when to when\?$/);
  expect(conversation.thread.report?.fields['times']).toBeUndefined();
  conversation.say('2:10 to 2:25 pm');
  expect(conversation.thread.report?.fields['times']?.value).toEqual({ start: '14:10', end: '14:25' });
});

test('after the day of a picture was taken over, its time is told too', () => {
  const conversation = new Conversation().agreed();
  conversation.say('at Fen Boardwalk');
  send(conversation, at('16:05'));
  conversation.say('yes');
  expect(said(conversation)).toMatch(/Your picture was taken at 11:05 AM\. From when to when\?$/);
});

test('of several the first and the last are told, those of another day and without a time are not', () => {
  const conversation = new Conversation().agreed();
  conversation.say('today at Fen Boardwalk');
  for (const taken of [at('19:21'), '2026-05-05T19:00:00Z', null, at('19:14'), at('19:16')]) send(conversation, taken);
  expect(said(conversation)).toMatch(/Your pictures were taken from 2:14 PM to 2:21 PM\. From when/);
  const other = new Conversation().agreed();
  other.say('yesterday at Fen Boardwalk');
  send(other, at('15:00'));
  expect(said(other)).toMatch(/\nFrom when to when\?$/);
});

test('the summary says how many are with the watch, and nothing where there are none', () => {
  const conversation = new Conversation().agreed();
  conversation.all(WATCH[0]);
  send(conversation, null);
  conversation.say('what do you have so far?');
  expect(said(conversation)).toMatch(/\nOne photograph is with this watch\.\n/);
  conversation.all(...WATCH.slice(1));
  expect(said(conversation)).toMatch(/\n\d+\. [^\n]+\nOne photograph is with this watch\.\n/);
  send(conversation, null);
  conversation.say('temperature 68 F');
  expect(said(conversation)).toMatch(/\n2 photographs are with this watch\.\n/);
  conversation.all('yes', 'skip', 'skip', 'fix watch 1');
  expect(said(conversation)).toMatch(/\n2 photographs are with this watch\.\n/);
  const without = new Conversation().agreed();
  without.all(...WATCH);
  expect(said(without)).not.toMatch(/photograph/);
});
