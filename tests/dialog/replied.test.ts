/** A reply to an earlier message is about what that message was about, and never an answer of another report in silence. */
import { describe, expect, test } from 'vitest';
import type { Reply } from '../../shared/message.js';
import { Conversation, WATCH } from './converse.js';

const photo = (digit: string) =>
  ({ kind: 'photo', sha256: digit.repeat(64), type: 'image/jpeg', takenAt: null }) as const;
const hashes = (photographs: readonly { sha256: string }[]): string =>
  photographs.map(({ sha256 }) => sha256[0]).join('');
const said = ({ last }: Conversation): string => last.replies.join('\n');
const celsius = ({ watches }: Conversation, number = 1): number | undefined =>
  watches.find((watch) => watch.number === number)?.temperature?.celsius;

/** A stored watch of 71 °F (21.7 °C), its summary, and what was said when it was stored. */
function stored(): { conversation: Conversation; summary: Reply; done: Reply } {
  const conversation = new Conversation().agreed();
  conversation.all(...WATCH);
  const summary = conversation.sent[0]!;
  conversation.say('yes');
  const done = conversation.sent[0]!;
  conversation.all('skip', 'skip');
  return { conversation, summary, done };
}

/** The same, with another report begun two days later, in which the weather is asked. */
function another(): ReturnType<typeof stored> & { asked: Reply } {
  const told = stored();
  told.conversation.advance(2 * 86_400);
  told.conversation.all('today 4:10 to 4:25 pm', 'Fen Boardwalk');
  return { ...told, asked: told.conversation.sent[0]! };
}

describe('a picture that is a reply', () => {
  test('joins the stored watch it is about, without a question, whatever day it is', () => {
    for (const which of ['summary', 'done'] as const) {
      const told = stored();
      told.conversation.advance(3 * 86_400);
      told.conversation.send(photo('a'), { to: told[which] });
      expect(said(told.conversation)).toMatch(/^The photograph is with watch 1 now\./);
      expect(hashes(told.conversation.watch.photographs)).toBe('a');
      expect(told.conversation.watch.history.at(-1)).toMatchObject({ path: '/photographs', role: 'observer' });
      expect(told.conversation.thread.report).toBeNull();
    }
  });
  test('to what was said as it was stored joins that watch, though a name is asked there', () => {
    const conversation = new Conversation().agreed();
    conversation.all(...WATCH, 'yes');
    expect(conversation.last.asking?.fields).toEqual(['name']);
    conversation.send(photo('a'), { to: conversation.sent[0] });
    expect(hashes(conversation.watch.photographs)).toBe('a');
    conversation.say('Wren');
    expect(conversation.person?.name).toBe('Wren');
  });
  test('joins the stored one while another report is told, and that goes on as it was', () => {
    const { conversation, summary } = another();
    const before = conversation.thread.report;
    conversation.send(photo('a'), { to: summary, album: 'one' });
    expect(conversation.send(photo('b'), { to: summary, album: 'one' }).replies).toEqual([]);
    expect(hashes(conversation.watch.photographs)).toBe('ab');
    expect(conversation.thread.report).toEqual(before);
    conversation.say('68 F, sunny, calm');
    expect(conversation.last.asking?.fields).toContain('patch');
  });
  test('makes no sound while the clock runs', () => {
    const { conversation, summary } = stored();
    conversation.say('start');
    conversation.send(photo('a'), { to: summary });
    expect(conversation.sent[0]?.silent).toBe(true);
    expect(hashes(conversation.watch.photographs)).toBe('a');
    expect(conversation.thread.report?.photographs).toEqual([]);
  });
  test('to a question of the report in hand joins that, though nothing is told in it yet', () => {
    const { conversation } = stored();
    conversation.say('hello');
    conversation.send(photo('a'), { to: conversation.sent[0] });
    expect(hashes(conversation.thread.report?.photographs ?? [])).toBe('a');
  });
  test('joins a report that was put aside, and a watch that is being mended there keeps it', () => {
    const { conversation, summary } = stored();
    conversation.all('fix watch 1', 'temperature 60 F');
    conversation.say('new');
    conversation.say('today 5:10 to 5:25 pm');
    conversation.send(photo('a'), { to: summary });
    expect(said(conversation)).toBe('Thank you, the photograph goes with the report I put aside.');
    expect(hashes(conversation.watch.photographs)).toBe('');
    conversation.all('throw it away', 'yes', 'go on', 'yes');
    expect(hashes(conversation.watches[0]!.photographs)).toBe('a');
    expect(celsius(conversation)).toBeCloseTo(15.6, 1);
  });
});

describe('words that are a reply to something about a stored watch', () => {
  test('open it with what they correct, and only a yes stores that', () => {
    for (const which of ['summary', 'done'] as const) {
      const told = stored();
      const { conversation } = told;
      conversation.say('it was 68 F', { to: told[which] });
      expect(said(conversation)).toMatch(/^I opened watch 1 again\.\n/);
      expect(said(conversation)).toMatch(/68 °F/);
      expect(celsius(conversation)).toBe(21.7);
      conversation.say('yes');
      expect(celsius(conversation)).toBe(20);
      expect(conversation.watches).toHaveLength(1);
    }
  });
  test('a remark and "practice" are that watch’s too, and "change" opens it', () => {
    const first = stored();
    first.conversation.all('today 4:10 to 4:25 pm', ...WATCH.slice(1), 'yes');
    first.conversation.say('remark: a robin came', { to: first.summary });
    first.conversation.say('yes');
    first.conversation.say('practice', { to: first.summary });
    first.conversation.say('yes');
    expect(first.conversation.watches.map(({ remark, status }) => [remark, status])).toEqual([
      ['a robin came', 'practice'],
      [null, 'confirmed'],
    ]);
    first.conversation.say('change', { to: first.summary });
    expect(said(first.conversation)).toMatch(/^I opened watch 1 again\./);
  });
  test('are no answer of another report: it is asked, a no leaves all as it was', () => {
    const { conversation, summary } = another();
    const before = conversation.thread.report?.fields;
    conversation.say('68 F', { to: summary });
    expect(said(conversation)).toBe(
      'You replied to a message about watch 1 (Wed, May 6), which is stored; this report stays as it is. Shall I open watch 1, to change it? Yes or no.',
    );
    expect(conversation.sent[0]?.choices).toEqual(['yes', 'no']);
    conversation.say('no');
    expect(said(conversation)).toMatch(/^Then I leave everything as it is\./);
    expect(conversation.thread.report?.fields).toEqual(before);
    expect(conversation.last.asking?.fields).toEqual(['temperature', 'sky', 'wind']);
    expect(celsius(conversation)).toBe(21.7);
  });
  test('a yes opens the watch with them, and the other report waits', () => {
    const { conversation, summary } = another();
    conversation.say('68 F', { to: summary });
    conversation.press('yes');
    expect(said(conversation)).toMatch(/^I opened watch 1 again\.[^]*68 °F/);
    conversation.all('yes', 'go on');
    expect(celsius(conversation)).toBe(20);
    expect(conversation.last.asking?.fields).toEqual(['temperature', 'sky', 'wind']);
    expect(Object.keys(conversation.thread.report?.fields ?? {})).toContain('times');
  });
  test('an answer instead of a yes or no is read as one', () => {
    const { conversation, summary } = another();
    conversation.say('68 F', { to: summary });
    conversation.say('70 F, sunny, calm');
    expect(conversation.thread.report?.fields['temperature']?.value).toMatchObject({ celsius: 21.1 });
    expect(conversation.last.asking?.fields).toContain('patch');
  });
  test('of no meaning for it are asked about where nothing else is told', () => {
    const { conversation, summary } = stored();
    conversation.say('yes', { to: summary });
    expect(said(conversation)).toMatch(
      /^You replied to a message about watch 1 \(Wed, May 6\), which is stored\. Shall/,
    );
    expect(conversation.thread.report).toBeNull();
    conversation.say('yes');
    expect(said(conversation)).toMatch(/^I opened watch 1 again\./);
  });
  test('that tell when and more begin another watch, and thanks are thanks', () => {
    const { conversation, done } = stored();
    conversation.say('thank you!', { to: done });
    expect(said(conversation)).toMatch(/^You are welcome/);
    conversation.say('today 4:10 to 4:25 pm', { to: done });
    expect(conversation.thread.report?.stored).toBeNull();
    expect(conversation.last.asking?.fields).toEqual(['place']);
  });
  test('count nothing while the clock runs, and make no sound', () => {
    const { conversation, summary } = stored();
    conversation.all('start', '1 imp on dandelion');
    conversation.say('2 imps on dandelion', { to: summary });
    expect(said(conversation)).toMatch(
      /^You replied to a message about watch 1 \(Wed, May 6\), so I counted nothing\./,
    );
    expect(conversation.sent[0]?.silent).toBe(true);
    expect(conversation.thread.report?.tally?.map(({ count }) => count)).toEqual([1]);
  });
  test('the question that stands is answered by a reply to it', () => {
    const conversation = new Conversation().agreed();
    conversation.all(...WATCH, 'yes');
    conversation.say('Wren', { to: conversation.sent[0] });
    expect(conversation.person?.name).toBe('Wren');
  });
  test('a position is no place of another report', () => {
    const { conversation, summary } = another();
    const before = conversation.thread.report?.fields['place'];
    conversation.send({ kind: 'place', latitude: 43.7, longitude: -90.7, uncertaintyMetres: 10 }, { to: summary });
    expect(said(conversation)).toMatch(/^You replied to a message about watch 1/);
    expect(conversation.thread.report?.fields['place']).toEqual(before);
  });
});

describe('words that are a reply to something about a report that is not stored', () => {
  test('that was put aside: taken up where nothing else is told, else said', () => {
    const conversation = new Conversation().agreed();
    conversation.say('today 2:10 to 2:25 pm');
    const place = conversation.sent[0];
    conversation.say('new');
    conversation.say('Fen Boardwalk', { to: place });
    expect(said(conversation)).toMatch(/^Back to the report that I had put aside\./);
    expect(conversation.last.asking?.fields).toEqual(['temperature', 'sky', 'wind']);
    expect(conversation.thread.parked).toEqual([]);
    conversation.all('new', 'today 4:10 to 4:25 pm');
    conversation.say('Aunt Mo pond', { to: place });
    expect(said(conversation)).toMatch(/^You replied to a message about the report that I put aside/);
    expect(conversation.thread.report?.fields['place']).toBeUndefined();
    expect(conversation.last.asking?.fields).toEqual(['place']);
  });
  test('that was thrown away: nothing is taken of it for another', () => {
    const conversation = new Conversation().agreed();
    conversation.say('today 2:10 to 2:25 pm');
    const place = conversation.sent[0];
    conversation.all('throw it away', 'yes', 'today 4:10 to 4:25 pm');
    conversation.say('Fen Boardwalk', { to: place });
    expect(said(conversation)).toMatch(/^You replied to a message about an earlier report, so I took nothing of it\./);
    expect(conversation.thread.report?.fields['place']).toBeUndefined();
  });
});
