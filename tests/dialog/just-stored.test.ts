/** What people write right after a watch was stored: it is about that watch, about another one, or a farewell. */
import { describe, expect, test } from 'vitest';
import { Conversation } from './converse.js';

const WATCH = 'today 3 to 3:15, Fen Boardwalk, 66 sunny calm, 4x4 ft meadow, 20 violets, 2 imps';

const stored = (...more: string[]): Conversation => {
  const conversation = new Conversation().agreed();
  conversation.all(WATCH, 'yes', ...more);
  conversation.advance(60);
  return conversation;
};
const said = ({ last }: Conversation): string => last.replies.join('\n');
const AT = [
  ['asked for the name', []],
  ['asked for the address', ['skip']],
  ['offered reminders', ['skip', 'skip']],
  ['asked nothing', ['skip', 'skip', 'thanks']],
] as const;

describe.each(AT)('%s', (_, before) => {
  test.each([
    ['oh wait the temp was 71', '71 °F'],
    ['fix that, it was 3 imps', '3 common eastern'],
    ['wrong, it was 3 imps', '3 common eastern'],
    ['sorry, 3:30 to 3:45', '3:30 – 3:45 PM'],
    ['oops it was yesterday', 'Tue, May 5'],
    ['change the temp to 70', '70 °F'],
    ['add dandelion, about 40', 'dandelion, about 40 heads'],
    ['there were also 2 dandelions', 'dandelion, 2 heads'],
    ['add a remark: windy later', 'Remark: windy later'],
    ['wait, one of them was a bimac', '1 two-spotted'],
  ])('"%s" opens the watch with it', (typed, line) => {
    const conversation = stored(...before);
    conversation.say(typed);
    expect(said(conversation)).toMatch(/^I opened watch 1 again/);
    expect(said(conversation)).toContain(line);
    conversation.say('yes');
    expect(conversation.watches).toHaveLength(1);
    expect(conversation.watch.history).not.toHaveLength(0);
  });

  test.each(['fix watch 1', 'i made a mistake', 'how do I fix it?'])('"%s" opens the watch', (typed) => {
    const conversation = stored(...before);
    conversation.say(typed);
    expect(said(conversation)).toMatch(/^I opened watch 1 again/);
    expect(conversation.last.asking?.fields).toEqual(['confirm']);
  });

  test.each(['it was 3 queens not 2', 'the temp was 71', '3 imps on dandelion'])(
    'whether "%s" is about it is asked',
    (typed) => {
      const yes = stored(...before);
      yes.say(typed);
      expect(said(yes)).toMatch(/^Is that about watch 1 \(.*\), which is stored\?/);
      yes.say('yes');
      expect(said(yes)).toMatch(/^I opened watch 1 again/);
      const no = stored(...before);
      no.all(typed, 'no');
      expect(no.thread.report?.stored).toBeNull();
      expect(no.last.asking?.fields).not.toEqual(['confirm']);
    },
  );

  test('"no" begins another watch with what was said', () => {
    const conversation = stored(...before);
    conversation.all('3 imps on dandelion', 'no');
    expect(said(conversation)).toContain('3 common eastern (B. impatiens) on dandelion');
    expect(said(conversation)).toContain('When did you watch?');
    const further = stored(...before);
    further.all('3 imps on dandelion', 'yesterday 4 to 4:15');
    expect(said(further)).toMatch(/4:00 – 4:15 PM · 3 common eastern \(B. impatiens\) on dandelion/);
  });

  test.each([
    'today 5 to 5:15, 3 imps on dandelion',
    'another one: yesterday 2 to 2:15',
    'hang on, I did another one yesterday 2 to 2:15',
  ])('"%s" is another watch', (typed) => {
    const conversation = stored(...before);
    conversation.say(typed);
    expect(said(conversation)).toMatch(/^Got it: .* PM/);
    expect(conversation.thread.report?.stored).toBeNull();
  });

  test.each(['next one', 'i have another one'])('"%s" begins another watch', (typed) => {
    const conversation = stored(...before);
    conversation.say(typed);
    expect(conversation.last.asking?.fields).toEqual(['date', 'times']);
    expect(conversation.person?.name ?? null).toBeNull();
  });

  test.each(['bye', 'ok bye', "that's it for today", 'thanks so much', 'Thanks! Good night', "I'm done", 'gotta go'])(
    '"%s" ends the conversation, and is no name',
    (typed) => {
      const conversation = stored(...before);
      conversation.say(typed);
      expect(said(conversation)).toMatch(/^(?:Until the next watch|You are welcome)/);
      expect(conversation.last.asking).toBeNull();
      expect(conversation.thread.report).toBeNull();
      expect(conversation.person?.name ?? null).toBeNull();
    },
  );
});

test('what may be about it is not asked about once another watch can have been made', () => {
  const conversation = stored('skip', 'skip');
  conversation.advance(16 * 60);
  conversation.say('3 imps on dandelion');
  expect(said(conversation)).toMatch(/^Got it: 3 common eastern/);
});

test('a day told later, though with a "sorry", may begin another watch: it is asked', () => {
  const conversation = stored('skip', 'skip');
  conversation.advance(5 * 3600);
  conversation.say("sorry I'm late, did one yesterday");
  expect(said(conversation)).toMatch(/^Is that about watch 1/);
});

test('words that put something right are about it for a day', () => {
  for (const [hours, opened] of [
    [23, true],
    [25, false],
  ] as const) {
    const conversation = stored('skip', 'skip');
    conversation.advance(hours * 3600);
    conversation.say('oh wait the temp was 71');
    expect(said(conversation).startsWith('I opened watch 1')).toBe(opened);
  }
});

test.each(['sorry no', 'sorry, none', 'actually no', 'no sorry'])('"%s" to what is asked is a no to that', (typed) => {
  for (const before of [[], ['skip'], ['Wren', 'skip']]) {
    const conversation = stored(...before);
    conversation.say(typed);
    expect(conversation.thread.report).toBeNull();
    expect(conversation.watch.total).toBe(2);
  }
});

test('an address with a "sorry" is an address', () => {
  const conversation = stored('skip', "wren@kestrelfen.example, sorry it's wren2@kestrelfen.example");
  expect(conversation.person?.mail).toBe('wren2@kestrelfen.example');
});

describe('asked for a name', () => {
  test.each([
    ['Sunny', 'Sunny'],
    ['call me Violet', 'Violet'],
    ['April May', 'April May'],
    ['oops, it is Tess', 'Tess'],
    ["thanks! it's Dale", 'Dale'],
    ["I'm Happy", 'Happy'],
  ])('"%s" is %s', (typed, name) => {
    const conversation = stored();
    conversation.say(typed);
    expect(conversation.person?.name).toBe(name);
  });

  test.each(["I'm new to this", 'great', 'ok', 'thanks a lot', 'hold on'])('"%s" is none', (typed) => {
    const conversation = stored();
    conversation.say(typed);
    expect(conversation.person?.name ?? null).toBeNull();
  });

  test('it is asked again after the next watch where somebody said good night', () => {
    const conversation = stored(
      'good night',
      'today 5 to 5:15, Fen Boardwalk, 66 sunny calm, 4x4 ft meadow, 9 violets, none',
    );
    conversation.say('yes');
    expect(conversation.last.asking?.fields).toEqual(['name']);
  });
});

describe('offered reminders', () => {
  test.each([
    ['yes please', true],
    ['remind me', true],
    ['no thanks', false],
    ['nope', false],
  ])('"%s" settles it', (typed, reminds) => {
    const conversation = stored('skip', 'skip');
    expect(conversation.last.asking).toBeNull();
    conversation.say(typed);
    expect(conversation.person?.reminders === true).toBe(reminds);
    expect(said(conversation)).not.toContain('If you like, I can remind you');
    expect(conversation.thread.report).toBeNull();
  });

  test('the offer is made once', () => {
    const conversation = stored('skip', 'skip');
    conversation.say('hi');
    expect(said(conversation)).not.toContain('remind');
  });
});

describe('asked nothing', () => {
  test.each(['ok', 'great', '👍', '❤️', 'you too', 'cool, will do'])('"%s" begins no watch', (typed) => {
    const conversation = stored('skip', 'skip', 'no');
    conversation.say(typed);
    expect(said(conversation)).toMatch(/^Until the next watch/);
    expect(conversation.thread.report).toBeNull();
  });
});
