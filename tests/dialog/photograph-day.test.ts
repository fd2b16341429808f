/** The day a picture was taken is offered as the day of the watch; without a yes nothing of it is told. */
import { expect, test } from 'vitest';
import { Conversation } from './converse.js';

// ten to ten in the evening of 4 May in Chicago, which is another day in Greenwich
const TAKEN = '2026-05-05T02:50:00Z';
const send = (conversation: Conversation, takenAt = TAKEN) =>
  conversation.send({ kind: 'photo', sha256: 'a'.repeat(64), type: 'image/jpeg', takenAt });
const day = ({ thread }: Conversation): unknown => thread.report?.fields['date']?.value;
const OFFER = /Your picture was taken on (.*): did you watch on that day\?/;
const offered = ({ last }: Conversation): string | undefined => OFFER.exec(last.replies.join('\n'))?.[1];

/** Is asked when the watch was, and told where it was. */
const askedWhen = (): Conversation => {
  const conversation = new Conversation().agreed();
  conversation.say('at Fen Boardwalk');
  return conversation;
};

test('a yes takes the day there, and the times are asked', () => {
  const conversation = askedWhen();
  send(conversation);
  expect(offered(conversation)).toBe('Mon, May 4');
  conversation.say('yes');
  expect(day(conversation)).toBe('2026-05-04');
  expect(conversation.last.asking?.fields).toEqual(['times']);
});

test('a no leaves the day open, another day said instead is the day', () => {
  const conversation = askedWhen();
  send(conversation);
  conversation.say('no');
  expect(day(conversation)).toBeUndefined();
  expect(conversation.last.asking?.fields).toContain('date');
  const other = askedWhen();
  send(other);
  other.say('no, May 3');
  expect(day(other)).toBe('2026-05-03');
});

test('where the day is told, or the picture is of a day to come, nothing is asked', () => {
  const told = new Conversation().agreed();
  told.say('yesterday 2:10 to 2:25 pm');
  send(told);
  expect(offered(told)).toBeUndefined();
  const ahead = askedWhen();
  send(ahead, '2026-05-09T15:00:00Z');
  expect(offered(ahead)).toBeUndefined();
});
