/** Long words: on a button they are shortened, and a message as long as a channel allows is not refused for that. */
import { describe, expect, test } from 'vitest';
import { buttonTexts } from '../../shared/button-text.js';
import { Conversation, WATCH } from './converse.js';

const said = ({ last }: Conversation): string => last.replies.join('\n');

/** Presses what stands on the button, as a channel hands it over. */
function pressText(conversation: Conversation, at: number): void {
  const reply = conversation.sent.at(-1)!;
  const words = buttonTexts(reply.choices)[at]!;
  conversation.send({ kind: 'pressed', report: reply.report ?? '', revision: reply.revision, words });
}

describe('a button that stands shortened', () => {
  const LONG =
    'Great-Aunt Morwenna’s wet meadow behind the old creamery, by the second gate on the left, the lower part';

  test('is the saved place as it was told', () => {
    const conversation = new Conversation().agreed();
    conversation.all('today 2:10 to 2:25 pm', LONG, 'no', ...WATCH.slice(2), 'yes', 'skip', 'skip', 'no');
    const { words } = conversation.watch.place!;
    expect(words.length).toBeGreaterThan(40);
    conversation.say('today 4:10 to 4:25 pm');
    expect(conversation.sent.at(-1)?.choices[0]).toBe(words);
    pressText(conversation, 0);
    conversation.all(...WATCH.slice(2), 'yes');
    expect(conversation.watches).toHaveLength(2);
    expect(conversation.watch.place?.words).toBe(words);
  });

  test('counts in a live watch, also one of an earlier acknowledgement', () => {
    const conversation = new Conversation().agreed();
    conversation.all('start', 'flowers: large-flowered bellwort, dandelion', '1 common eastern on dandelion');
    const earlier = conversation.sent.at(-1)!;
    const at = earlier.choices.findIndex((words) => words === 'common eastern on large-flowered bellwort');
    expect(at).toBeGreaterThanOrEqual(0);
    pressText(conversation, at);
    const words = buttonTexts(earlier.choices)[at]!;
    conversation.send({ kind: 'pressed', report: earlier.report ?? '', revision: earlier.revision, words });
    expect(said(conversation)).toContain('(3)');
  });
});

describe('a message of 4,096 letters, as long as Telegram lets one be', () => {
  const CHAT = 'We sat on the old bench with a thermos while the frogs were calling from the ditch behind us. ';
  const filled = (text: string): string => (text + CHAT.repeat(50)).slice(0, 4096);

  test('is a remark as a whole', () => {
    const conversation = new Conversation().agreed();
    conversation.all(...WATCH);
    const remark = filled('note: ');
    conversation.say(remark);
    expect(said(conversation)).toContain('I keep that as a remark');
    conversation.say('yes');
    expect(conversation.watch.remark).toBe(remark.slice('note: '.length).trim());
  });

  test('tells a watch', () => {
    const conversation = new Conversation().agreed();
    conversation.say(
      filled('Yesterday 3:00 to 3:15 pm at Fen Boardwalk, 68 F, mostly sunny, light breeze. Virginia bluebells 120. '),
    );
    expect(said(conversation)).not.toMatch(/longer than/);
    expect(Object.keys(conversation.thread.report?.fields ?? {})).toEqual(expect.arrayContaining(['date', 'times']));
  });

  test.each([0, 1, 2, 3, 4, 5])('is never too long for question %i', (asked) => {
    const conversation = new Conversation().agreed();
    conversation.all(...WATCH.slice(0, asked));
    conversation.say(filled('68 F and a few clouds. '));
    expect(said(conversation)).not.toMatch(/longer than/);
    const other = new Conversation().agreed();
    other.all(...WATCH.slice(0, asked));
    other.say(filled(''));
    expect(said(other)).not.toMatch(/longer than/);
  });
});
