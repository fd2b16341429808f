/** "Change", pressed or typed, asks what; a remark can be changed like any line. */
import { describe, expect, test } from 'vitest';
import { Conversation, WATCH } from './converse.js';

const atSummary = (): Conversation => {
  const conversation = new Conversation().agreed();
  conversation.all(...WATCH);
  expect(conversation.last.asking?.fields).toEqual(['confirm']);
  return conversation;
};
/** The field behind each line's label. */
const FIELDS: Readonly<Record<string, string>> = {
  Date: 'date',
  Time: 'times',
  Place: 'place',
  Temperature: 'temperature',
  Sky: 'sky',
  Wind: 'wind',
  Patch: 'patch',
  Habitat: 'habitat',
  Flowers: 'plants',
  Queens: 'tally',
};
const said = ({ last }: Conversation): string => last.replies.join('\n');

describe('"change" asks what should be changed', () => {
  test('pressed at the summary; what follows is the correction', () => {
    const conversation = atSummary();
    conversation.press('change');
    expect(said(conversation)).toBe('What should I change? For example: 4 should be 68 F');
    expect(conversation.last.asking?.fields).toEqual(['correct']);
    conversation.say('4 should be 68 F');
    expect(said(conversation)).toContain('Now it reads');
    expect(conversation.press('yes').stored).toBe(1);
    expect(conversation.watch.temperature?.celsius).toBe(20); // 68 °F
  });

  test('each line has a button that asks for its new value, and "nothing" leads back', () => {
    for (const label of [
      'Date',
      'Time',
      'Place',
      'Temperature',
      'Sky',
      'Wind',
      'Patch',
      'Habitat',
      'Flowers',
      'Queens',
    ]) {
      const conversation = atSummary();
      conversation.press('change');
      conversation.press(label);
      const fields = conversation.last.asking?.fields;
      expect([label, fields]).toEqual([label, [FIELDS[label]]]);
    }
    const conversation = atSummary();
    conversation.press('change');
    expect(conversation.press('nothing').asking?.fields).toEqual(['confirm']);
  });

  test.each(['change', 'Change something', 'I want to change something.', 'edit', 'I made a mistake'])(
    '"%s" typed at the summary',
    (typed) => {
      const conversation = atSummary();
      conversation.say(typed);
      expect(said(conversation)).toMatch(/^What should I change\?/);
      expect(conversation.say('nothing').asking?.fields).toEqual(['confirm']);
    },
  );

  test('before the summary it shows what is known, takes the change, and goes on with what is open', () => {
    const conversation = new Conversation().agreed();
    conversation.all('today 2:10 to 2:25 pm', 'Fen Boardwalk', '71 F, sunny, calm', 'change');
    expect(said(conversation)).toMatch(/^This is what I have so far:\n1\. Date/);
    expect(said(conversation)).toMatch(/What should I change\?/);
    conversation.say('temperature should be 68 F');
    expect(said(conversation)).toContain('68 °F');
    expect(conversation.last.asking?.fields).toEqual(['patch', 'habitat']);
  });

  test('with nothing told there is nothing to change; right after a watch was stored it opens that one', () => {
    const conversation = new Conversation().agreed();
    expect(conversation.say('change').replies.join()).toMatch(/no report open/);
    const stored = atSummary();
    stored.say('yes');
    stored.say('change');
    expect(said(stored)).toMatch(/I opened watch 1 again/);
    expect(stored.last.asking?.fields).toEqual(['confirm']);
    expect(stored.person?.name).toBeNull();
    const old = atSummary();
    old.say('yes');
    old.advance(25 * 3600);
    expect(old.say('change').replies.join()).toMatch(/fix watch 1/);
  });

  test('while the clock runs it counts nothing and says how to put something right', () => {
    const conversation = new Conversation().agreed();
    conversation.all('start', 'dandelion', '1 imp on dandelion', 'change');
    expect(said(conversation)).toMatch(/changed nothing \(1\)/);
  });

  test('"correct" at the summary is still a yes', () => {
    expect(atSummary().say('correct').stored).toBe(1);
  });
});

describe('a remark', () => {
  test('is changed where there is one, and made where there is none', () => {
    const conversation = atSummary();
    conversation.say('change remark to my friend Zanzibar came');
    expect(said(conversation)).toContain('Remark: my friend Zanzibar came');
    conversation.say('change remark to nobody came');
    expect(said(conversation)).toContain('Remark: nobody came');
    conversation.say('remark should be: a robin watched too');
    conversation.say('yes');
    expect(conversation.watch.remark).toBe('a robin watched too');
  });

  test('"change remark" alone asks for it', () => {
    expect(atSummary().say('change remark').replies.join()).toMatch(/What should the remark say/);
  });
});
