/** People who have no watch yet, do not know how it goes, or did not measure. What they write: common practice, no source. */
import { describe, expect, test } from 'vitest';
import { Conversation } from './converse.js';

const said = ({ last }: Conversation): string => last.replies.join('\n');

describe('no watch was made yet', () => {
  test.each(["i'm about to start", 'not yet', "I haven't done one yet.", 'i want to do one now', 'just sat down'])(
    '"%s" is told how it goes, and then "start" begins one',
    (typed) => {
      const conversation = new Conversation().agreed();
      conversation.all('hi', typed);
      expect(said(conversation)).toMatch(/sit there for 15 minutes.*never handle.*“start”/);
      conversation.say('starting now');
      expect(conversation.thread.report?.live).not.toBeNull();
    },
  );

  test.each(['how do I do it', 'What am I supposed to do?', "what's this about?"])('"%s" is told too', (typed) => {
    const conversation = new Conversation().agreed();
    conversation.all('hi', typed);
    expect(said(conversation)).toMatch(/sit there for 15 minutes/);
    expect(conversation.last.asking?.fields).toEqual(['date', 'times']);
  });

  test('a stranger who asks what this is gets the welcome alone', () => {
    const conversation = new Conversation();
    conversation.say('what is this?');
    expect(said(conversation)).toMatch(/^Hello! I am the helper/);
    expect(said(conversation)).not.toMatch(/sit there for 15 minutes/);
  });

  test('"not yet" to another question is its answer', () => {
    const conversation = new Conversation().agreed();
    conversation.all('today 3 to 3:15, Fen Boardwalk', 'not yet');
    expect(said(conversation)).not.toMatch(/sit there for 15 minutes/);
  });
});

describe('what was not measured', () => {
  const asked = (): Conversation => {
    const conversation = new Conversation().agreed();
    conversation.say('today 3 to 3:15, Fen Boardwalk');
    return conversation;
  };

  test.each([
    ["I don't have a thermometer", ['temperature'], ['sky', 'wind']],
    ['no thermometer, sunny, no wind', ['temperature'], ['patch', 'habitat']],
    ["didn't take the temperature and forgot the wind. sunny", ['temperature', 'wind'], ['patch', 'habitat']],
  ])('"%s" leaves out %j', (typed, left, fields) => {
    const conversation = asked();
    conversation.say(typed);
    expect(conversation.thread.report?.skipped).toEqual(left);
    expect(said(conversation)).toMatch(/^Left out: /);
    expect(conversation.last.asking?.fields).toEqual(fields);
  });

  test('a guess beside it is taken', () => {
    const conversation = asked();
    conversation.say('no thermometer but the phone says 65 F');
    expect(conversation.thread.report?.skipped).toEqual([]);
    expect(conversation.thread.report?.fields['temperature']?.value).toEqual({ celsius: 18.3 });
  });
});

describe('times told from now, at 6:30 in the evening', () => {
  test.each(['20 min ago', 'started about 20 minutes ago', 'I started 20 min ago and it was 15 min'])(
    '"%s" tells the day, and the times are offered',
    (typed) => {
      const conversation = new Conversation().agreed();
      conversation.all('hi', typed);
      expect(said(conversation)).toMatch(/Wed, May 6.*6:10 – 6:25 PM/s);
      conversation.say('yes');
      expect(conversation.thread.report?.fields['times']?.value).toEqual({ start: '18:10', end: '18:25' });
    },
  );
});
