/** Questions that people ask back are answered, or referred to the coordinator; what else they tell is taken, and asked again. */
import { describe, expect, test } from 'vitest';
import { Conversation, WATCH } from './converse.js';

/** After so many answers of a whole watch. */
function after(answers: number): Conversation {
  const conversation = new Conversation().agreed();
  conversation.all(...WATCH.slice(0, answers));
  return conversation;
}
const said = ({ last }: Conversation): string => last.replies.join('\n');

const KEPT = /^I keep your answers/;
const SEEN = /never published/;
const OTHER = /^I cannot answer that myself.*coordinator@kestrelfen\.example/;

describe('before the consent', () => {
  test.each([
    ['What do you do with my answers exactly?', KEPT],
    ['what do you keep?', KEPT],
    ['what do you keep', KEPT],
    ['who sees this?', SEEN],
    ['is my address published?', SEEN],
    ['is there a prize?', OTHER],
    ['Hi, is this where I report my bees?', /right here/],
  ])('"%s"', (typed, answer) => {
    const conversation = new Conversation();
    conversation.open();
    conversation.say(typed);
    expect(said(conversation)).toMatch(answer);
    expect(said(conversation)).toMatch(/May I keep your answers/);
    expect(conversation.person).toBeNull();
  });

  test.each(['I consent', 'I agree', 'you may', 'go ahead', 'Yes, I agree.'])('"%s" is a yes', (typed) => {
    const conversation = new Conversation();
    conversation.open();
    conversation.say(typed);
    expect(conversation.person?.consent).not.toBeNull();
  });

  test.each(['I do not agree', 'you may not', 'maybe', 'you may ask me later'])('"%s" is none', (typed) => {
    const conversation = new Conversation();
    conversation.open();
    conversation.say(typed);
    expect(conversation.person).toBeNull();
  });
});

describe('within a report', () => {
  const table: [answers: number, typed: string, answer: RegExp, asked: string[]][] = [
    [0, 'how long does it take?', /few minutes/, ['date', 'times']],
    [0, 'today, 1:40 to 1:55. Does it matter that I started a bit late?', /times as they really were/, ['place']],
    [1, 'Oak Rise, do you know it?', /Fen Boardwalk, Heron Bend Landing/, ['temperature', 'sky', 'wind']],
    [1, 'what is it used for?', KEPT, ['place']],
    [3, 'how big should it be?', /keep your eyes on/, ['patch', 'habitat']],
    [3, '8x8 feet, prairie. Is that too small?', /keep your eyes on/, ['plants']],
    [3, 'what happens if it rains?', OTHER, ['patch', 'habitat']],
    [5, 'what counts as a queen?', /the big bumble bees are the queens/, ['tally']],
    [5, '1 brown-belted. Would it be a queen if it was huge?', /big bumble bees are the queens/, ['confirm']],
  ];
  test.each(table)('after %i answers: "%s"', (answers, typed, answer, asked) => {
    const conversation = after(answers);
    conversation.say(typed);
    expect(said(conversation)).toMatch(answer);
    expect(conversation.last.asking?.fields).toEqual(asked);
  });

  test.each([
    [0, 'was it Tuesday?', 'date'],
    [2, '70 F? sunny, calm', 'temperature'],
    [5, '2 impatiens?', 'tally'],
  ])('after %i answers "%s" is an answer with a doubt, not a question', (answers, typed, field) => {
    const conversation = after(answers);
    conversation.say(typed);
    expect(said(conversation)).not.toMatch(OTHER);
    const { report } = conversation.thread;
    expect(report?.doubts.some((doubt) => doubt.field === field) || report?.tally?.[0]?.doubt).toBe(true);
  });
});

test('where the name is asked', () => {
  const conversation = after(6);
  conversation.all('yes', 'is my name published?');
  expect(said(conversation)).toMatch(SEEN);
  expect(conversation.last.asking?.fields).toEqual(['name']);
});
