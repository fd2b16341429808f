/** A link that names this survey opens the conversation; one that names another is told so, and begins nothing. */
import { expect, test } from 'vitest';
import { Conversation } from './converse.js';

const { key, name } = new Conversation().survey.settings;

test.each([[key], [key.toUpperCase()]])('a link that names this survey ("%s") opens', (survey) => {
  const conversation = new Conversation();
  expect(conversation.send({ kind: 'opened', survey }).asking?.fields).toEqual(['consent']);
  expect(conversation.last.replies[0]).toContain(name);
});

test.each([['other-fen'], [`${key}-2025`], ['fen'], ['x'.repeat(5000)]])('"%s" is another survey', (survey) => {
  const conversation = new Conversation();
  const before = JSON.stringify({ ...conversation.thread, lastAt: null });
  expect(conversation.send({ kind: 'opened', survey }).replies).toEqual([
    `Your link is for the survey “${survey.slice(0, 64)}”, and I am the helper of the ${name}: its links end in ` +
      `start=${key}, or write “hello” if you do want to report here.`,
  ]);
  expect(JSON.stringify({ ...conversation.thread, lastAt: null })).toBe(before);
  expect(conversation.person).toBeNull();
  // the way that the sentence tells
  expect(conversation.say('hello').asking?.fields).toEqual(['consent']);
});

test('a wrong link in the middle of a report leaves the report as it was', () => {
  const conversation = new Conversation().agreed();
  conversation.say('today 2:10 to 2:25 pm');
  const { report, asking } = conversation.thread;
  conversation.send({ kind: 'opened', survey: 'other-fen' });
  expect(conversation.thread).toMatchObject({ report, asking });
});
