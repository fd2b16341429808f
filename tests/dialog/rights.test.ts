/** What people may ask about their own data can be asked at any moment: before the consent, and while a clock runs. */
import { describe, expect, test } from 'vitest';
import { Conversation, WATCH } from './converse.js';

const ASKS_TO_FORGET = /^Shall I forget you\?/m;
const ASKS_TO_GIVE = /into one file: .* Shall I\?/;
const said = ({ last }: Conversation): string => last.replies.join('\n');

const wishes: [said: string, asks: RegExp, right: string][] = [
  ['forget me', ASKS_TO_FORGET, 'forget-person'],
  ['delete my data', ASKS_TO_FORGET, 'forget-person'],
  ['what do you keep about me', ASKS_TO_GIVE, 'give-data'],
  ['what do you keep about me?', ASKS_TO_GIVE, 'give-data'],
];

describe('before the consent', () => {
  test.each(wishes)('"%s" is asked, and its yes is none to keeping answers', (typed, asks, right) => {
    const conversation = new Conversation();
    conversation.open();
    conversation.say(typed);
    expect(said(conversation)).toMatch(asks);
    conversation.say('yes');
    expect(conversation.rights).toEqual([right]);
    expect(conversation.person).toBeNull();
  });
  test('as the very first message it is told what this is, and asked', () => {
    const conversation = new Conversation();
    conversation.say('what do you keep about me');
    expect(said(conversation)).toMatch(/^Hello! I am the helper of .*\n.* Shall I\? Yes or no\.$/);
  });
  test('after it the consent is asked for again; after a no too', () => {
    for (const answer of ['yes', 'no']) {
      const conversation = new Conversation();
      conversation.all('hello', 'what do you keep about me', answer);
      expect(conversation.last.asking?.fields).toEqual(['consent']);
      expect(said(conversation)).toContain('May I keep your answers');
      conversation.say('yes');
      expect(conversation.person?.consent).not.toBeNull();
    }
  });
  test('what was told before a wish that was taken back is read after the yes', () => {
    const conversation = new Conversation();
    conversation.all('hello', 'today 2:10 to 2:25 pm', 'forget me', '66 F', 'yes');
    expect(conversation.person?.consent).not.toBeNull();
    expect(Object.keys(conversation.thread.report?.fields ?? {}).sort()).toEqual(['date', 'temperature', 'times']);
  });
});

describe('while the clock runs, and while it is stopped', () => {
  const clocks: [which: string, before: readonly string[], after: string][] = [
    ['runs', [], 'The clock runs.'],
    ['stands', ['pause'], 'Clock stopped. “Go on” starts it again.'],
  ];
  for (const [which, before, after] of clocks) {
    test.each(wishes)(`it ${which}: "%s" is asked, and after a no the watch goes on`, (typed, asks) => {
      const conversation = new Conversation().agreed();
      conversation.all('start', '1 imp on dandelion', ...before, typed);
      expect(said(conversation)).toMatch(asks);
      expect(conversation.sent.at(-1)?.choices).toEqual(['yes', 'no']);
      conversation.press('no');
      expect(said(conversation)).toBe(`Then I leave everything as it is.\n${after}`);
      expect(conversation.rights).toEqual([]);
      conversation.say('2 bimac on redbud');
      expect(conversation.thread.report?.tally?.map(({ count }) => count)).toEqual([1, 2]);
      expect(conversation.thread.report?.live?.unread).toEqual([]);
    });
  }
  test('a file of everything leaves the watch running', () => {
    const conversation = new Conversation().agreed();
    conversation.all('start', '1 imp on dandelion', 'what do you keep about me', 'yes', '+1');
    expect(conversation.rights).toEqual(['give-data']);
    expect(conversation.thread.report?.tally?.map(({ count }) => count)).toEqual([2]);
  });
  test('to throw a stopped watch away, and not to, says that the clock stands', () => {
    const conversation = new Conversation().agreed();
    conversation.all('start', '1 imp on dandelion', 'pause', 'throw it away', 'no');
    expect(said(conversation)).toBe('Clock stopped. “Go on” starts it again.');
  });
});

describe('words that are no answer to it leave everything, and are read', () => {
  test('a queen in a live watch', () => {
    const conversation = new Conversation().agreed();
    conversation.all('start', '1 imp on dandelion', 'forget me', '2 bimac on redbud');
    expect(said(conversation)).toMatch(/^Then I leave everything as it is\.\n2 .*redbud \(3\)$/);
    expect(conversation.sent.at(-1)).toMatchObject({ silent: false });
    expect(conversation.sent.at(-1)?.slot).toBeUndefined();
    expect(conversation.rights).toEqual([]);
  });
  test('an answer to what was asked before', () => {
    const conversation = new Conversation().agreed();
    conversation.all(...WATCH.slice(0, 2), 'delete my data', WATCH[2]);
    expect(said(conversation)).toContain('Then I leave everything as it is.');
    expect(conversation.thread.report?.fields['temperature']).toBeDefined();
    expect(conversation.last.asking?.fields).toContain('patch');
  });
  test('what comes after a no', () => {
    const conversation = new Conversation().agreed();
    conversation.all(...WATCH.slice(0, 5), 'forget me', 'no, 2 imp on the dandelion');
    expect(conversation.thread.report?.tally).toMatchObject([{ bee: 'Bombus impatiens', count: 2 }]);
  });
  test('a new watch where none was begun; what tells nothing begins none', () => {
    const conversation = new Conversation().agreed();
    conversation.all(...WATCH, 'yes', 'skip', 'skip', 'forget me', 'hmm');
    expect(said(conversation)).toBe('Then I leave everything as it is.');
    expect(conversation.thread.report).toBeNull();
    conversation.all('forget me', WATCH[0]);
    expect(conversation.last.asking?.fields).toEqual(['place']);
  });
});

test('a no brings back what was asked, the summary too', () => {
  const conversation = new Conversation().agreed();
  conversation.all(...WATCH, 'forget me', 'no');
  expect(said(conversation)).toMatch(/^Then I leave everything as it is\.\nHere is your watch/);
  conversation.say('yes');
  expect(conversation.watches).toHaveLength(1);
});

test('one right instead of the other; the same once more is a yes only behind a yes', () => {
  const conversation = new Conversation().agreed();
  conversation.all('what do you keep about me', 'forget me');
  expect(said(conversation)).toMatch(ASKS_TO_FORGET);
  conversation.say('forget me');
  expect(said(conversation)).toMatch(ASKS_TO_FORGET);
  expect(conversation.rights).toEqual([]);
  conversation.say('yes, delete everything');
  expect(conversation.rights).toEqual(['forget-person']);
});

describe('what is asked is what there is', () => {
  test('of who has no watch yet, nothing is said of watches that stay', () => {
    const conversation = new Conversation().agreed();
    conversation.say('forget me');
    expect(said(conversation)).toContain('Everything you wrote to me is erased for good');
    expect(said(conversation)).not.toContain('Your watches stay');
    conversation.say('yes');
    expect(said(conversation)).toBe('I have forgotten you. You are welcome back at any time.');
  });
  test('of who has one, what stays of it is said', () => {
    const conversation = new Conversation().agreed();
    conversation.all(...WATCH, 'yes', 'skip', 'skip', 'forget me');
    expect(said(conversation)).toContain('Your watches stay in the survey without any of that');
    conversation.say('yes');
    expect(said(conversation)).toContain('Thank you for your watches');
  });
  test('"what do you keep about me" too', () => {
    const conversation = new Conversation().agreed();
    conversation.say('what do you keep about me');
    expect(said(conversation)).toContain('there is no watch of yours yet');
  });
});
