/** Which watch a picture joins, what words under it mean, and how often one thanks for several. */
import { describe, expect, test } from 'vitest';
import { Conversation, WATCH } from './converse.js';

const photo = (digit: string) =>
  ({ kind: 'photo', sha256: digit.repeat(64), type: 'image/jpeg', takenAt: null }) as const;
const caption = (text: string) => ({ kind: 'text', text, caption: true }) as const;
const hashes = (photographs: readonly { sha256: string }[]): string =>
  photographs.map(({ sha256 }) => sha256[0]).join('');
const said = ({ last }: Conversation): string => last.replies.join('\n');
const JOINS = /^Does the photograph belong to the watch you reported today\?/;

function stored(): Conversation {
  const conversation = new Conversation().agreed();
  conversation.all(...WATCH, 'yes');
  return conversation;
}

describe('a picture after a watch was stored', () => {
  test('is asked about, though it has words under it that tell of no watch', () => {
    const conversation = stored();
    conversation.all('skip', 'skip');
    expect(conversation.send(caption('she was on the redbud')).replies).toEqual([]);
    expect(conversation.thread.report).toBeNull();
    conversation.send(photo('a'));
    expect(said(conversation)).toMatch(JOINS);
    conversation.say('yes');
    expect(hashes(conversation.watch.photographs)).toBe('a');
  });
  test('is asked about, though a thank you or a hello came first; a no gives it to what comes next', () => {
    const conversation = stored();
    conversation.all('skip', 'skip', 'thank you!');
    expect(said(conversation)).toMatch(/^You are welcome\./);
    expect(conversation.thread.report).toBeNull();
    conversation.say('hello');
    expect(conversation.last.asking?.fields).toEqual(['date', 'times']);
    conversation.send(photo('a'), { album: 'one' });
    expect(said(conversation)).toMatch(JOINS);
    for (const digit of ['b', 'c']) expect(conversation.send(photo(digit), { album: 'one' }).replies).toEqual([]);
    conversation.say('no');
    expect(said(conversation)).toMatch(/^Thank you, the photograph goes with this watch/);
    expect(conversation.last.asking?.fields).toEqual(['date', 'times']);
    expect(hashes(conversation.thread.report?.photographs ?? [])).toBe('abc');
    expect(hashes(conversation.watch.photographs)).toBe('');
  });
  test('a yes is for those that were asked about, not for one that waited', () => {
    const conversation = stored();
    conversation.all('skip', 'skip');
    conversation.send(photo('a'));
    conversation.say('no');
    conversation.send(photo('b'));
    conversation.send(photo('c'));
    conversation.say('yes');
    expect(hashes(conversation.watch.photographs)).toBe('bc');
    conversation.all('hello', 'today 4:10 to 4:25 pm');
    expect(hashes(conversation.thread.report?.photographs ?? [])).toBe('a');
  });
  test('goes with the next watch where that is told instead of an answer', () => {
    const conversation = stored();
    conversation.all('skip', 'skip', 'hello');
    conversation.send(photo('a'));
    conversation.say('today 4:10 to 4:25 pm');
    expect(conversation.last.asking?.fields).toEqual(['place']);
    expect(hashes(conversation.thread.report?.photographs ?? [])).toBe('a');
    expect(hashes(conversation.watch.photographs)).toBe('');
  });
  test('at the question for the name has words under it that are no name', () => {
    const conversation = stored();
    expect(conversation.last.asking?.fields).toEqual(['name']);
    expect(conversation.send(caption('my first queen!')).replies).toEqual([]);
    expect(conversation.person?.name).toBeNull();
    conversation.send(photo('a'));
    expect(said(conversation)).toMatch(JOINS);
    conversation.say('yes');
    expect(conversation.last.asking?.fields).toEqual(['name']);
    conversation.say('Wren');
    expect(conversation.person?.name).toBe('Wren');
  });
});

describe('pictures during a report', () => {
  test('words under one that tell of the watch are read, and no other is', () => {
    const conversation = new Conversation().agreed();
    conversation.send(caption('today 2:10 to 2:25 pm'));
    expect(conversation.last.asking?.fields).toEqual(['place']);
    conversation.send(photo('a'));
    expect(said(conversation)).toMatch(/^Thank you, the photograph goes with this watch\.\nWhere/);
  });
  test('an album is thanked once and repeats the question once', () => {
    const conversation = new Conversation().agreed();
    conversation.all(WATCH[0]);
    conversation.send(photo('a'), { album: 'one' });
    expect(said(conversation)).toMatch(/^Thank you, the photograph goes with this watch\.\nWhere/);
    for (const digit of ['b', 'c']) expect(conversation.send(photo(digit), { album: 'one' }).replies).toEqual([]);
    conversation.send(photo('d'), { album: 'two' });
    expect(said(conversation)).toMatch(/^Thank you/);
    expect(hashes(conversation.thread.report?.photographs ?? [])).toBe('abcd');
  });
  test('at the summary one is thanked, the summary is not shown again, and its button stays good', () => {
    const conversation = new Conversation().agreed();
    conversation.all(...WATCH);
    const summary = conversation.sent.at(-1);
    conversation.send(photo('a'), { album: 'one' });
    expect(conversation.last.replies).toEqual(['Thank you, the photograph goes with this watch.']);
    expect(conversation.send(photo('b'), { album: 'one' }).replies).toEqual([]);
    conversation.press('yes', summary);
    expect(conversation.last.stored).toBe(1);
    expect(hashes(conversation.watch.photographs)).toBe('ab');
  });
});

describe('what is no photograph', () => {
  const sticker = { kind: 'file', name: 'sticker', problem: null } as const;
  const SAID = 'I can take photographs, but no other files: JPEG, PNG, WebP or HEIC.';
  test('is told which files are, and the question is asked again', () => {
    const conversation = new Conversation().agreed();
    conversation.all(WATCH[0]);
    conversation.send(sticker);
    expect(said(conversation)).toMatch(/^I can take photographs, but no other files: JPEG, PNG, WebP or HEIC\.\nWhere/);
    expect(conversation.last.asking?.fields).toEqual(['place']);
  });
  test('repeats no summary, and nothing where nothing is asked', () => {
    const conversation = new Conversation().agreed();
    conversation.all(...WATCH);
    expect(conversation.send(sticker).replies).toEqual([SAID]);
    conversation.all('yes', 'skip', 'skip');
    expect(conversation.send(sticker).replies).toEqual([SAID]);
  });
});
