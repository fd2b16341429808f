/** Whether a name may be published is asked once, of who gave one; without a yes it is not, and words change it at any time. */
import { describe, expect, test } from 'vitest';
import { Conversation, WATCH } from './converse.js';

const asked = ({ last }: Conversation) => last.asking?.fields;

/** Stored a first watch, gave this name and no mail. */
function named(name = 'Wren'): Conversation {
  const conversation = new Conversation().agreed();
  conversation.all(...WATCH, 'yes', name, 'skip');
  return conversation;
}

describe('it is asked', () => {
  test('after the first watch, behind name and mail, with the name as it would stand', () => {
    const conversation = named();
    expect(asked(conversation)).toEqual(['confirm']);
    expect(conversation.last.replies.join('\n')).toMatch(/may “Wren” stand with your watches\? Yes or no/);
    expect(conversation.sent.at(-1)?.choices).toEqual(['yes', 'no']);
    expect(conversation.person?.nameShown).toBe(false);
  });

  test('never of who gave no name, and not of a name that could be read as more than one', () => {
    expect(asked(named('skip'))).toBeUndefined();
    const formula = named('=Wren');
    expect(formula.person?.name).toBe('=Wren');
    expect(asked(formula)).toBeUndefined();
    expect(formula.say('show my name').replies[0]).toMatch(/no name of yours that I could show/);
    expect(formula.person?.nameShown).toBe(false);
  });

  test('once: passed over, it is not asked again, and the name is not shown', () => {
    const conversation = named();
    conversation.all(...WATCH, 'yes');
    expect(conversation.watches).toHaveLength(2);
    expect(asked(conversation)).toBeUndefined();
    expect(conversation.person?.nameShown).toBe(false);
  });
});

describe('the answer', () => {
  const answers: [said: string, shown: boolean, reply: RegExp][] = [
    ['yes', true, /“Wren” may stand with your watches/],
    ['sure, go ahead', true, /“Wren” may stand/],
    ['show my name', true, /“Wren” may stand/],
    ['no', false, /Only a number stands/],
    ['no thanks', false, /Only a number stands/],
    ['skip', false, /Only a number stands/],
    ['not sure', false, /Only a number stands/],
    ['hide my name', false, /Only a number stands/],
  ];
  test.each(answers)('"%s" is kept: %s', (said, shown, reply) => {
    const conversation = named();
    expect(conversation.say(said).replies.join('\n')).toMatch(reply);
    expect(conversation.person?.nameShown).toBe(shown);
    expect(asked(conversation)).toBeUndefined();
  });

  test('"no queens today" is the beginning of a report, not an answer to it', () => {
    const conversation = named();
    conversation.say('no queens today, 2 to 2:15 pm');
    expect(conversation.person?.nameShown).toBe(false);
    expect(conversation.thread.report).not.toBeNull();
  });
});

test('it can change in the middle of a report, which goes on', () => {
  const conversation = named();
  conversation.say('yes');
  conversation.say('today 4 to 4:15 pm');
  const question = asked(conversation);
  expect(conversation.say('please hide my name').replies.join('\n')).toMatch(/Only a number stands/);
  expect(conversation.person?.nameShown).toBe(false);
  expect(asked(conversation)).toEqual(question);
});

describe('words that are no answer and tell of no watch', () => {
  test.each(['thanks!', 'what does that mean', 'hm lovely day'])(
    '“%s”: it still stands, and is answered next',
    (said) => {
      const conversation = named();
      conversation.say(said);
      expect(conversation.last.replies.join('\n')).toMatch(/may “Wren” stand with your watches\? Yes or no/);
      expect(conversation.thread.report).toBeNull();
      conversation.say('yes');
      expect(conversation.person?.nameShown).toBe(true);
    },
  );
  test('but not for ever', () => {
    const conversation = named();
    conversation.advance(2 * 3600);
    conversation.say('hello');
    expect(conversation.last.asking?.fields).toEqual(['date', 'times']);
  });
});
