/** A button of an earlier question changes nothing; a changed message is read again, and only where it still belongs. */
import { describe, expect, test } from 'vitest';
import type { Reply } from '../../shared/message.js';
import { step } from '../../src/dialog/index.js';
import { survey } from '../demo-survey.js';
import { Conversation, WATCH } from './converse.js';

/** The buttons of the last reply, pressed later. */
function buttonsNow({ thread }: Conversation): Pick<Reply, 'report' | 'revision'> {
  const message = { kind: 'pressed', report: 'nobody’s', revision: -1, words: '' } as const;
  const history = {
    person: null,
    places: [],
    lastWatches: [],
    sameDayNearby: [],
    progress: { watches: 0, target: 3 },
    fresh: { observer: 'o', report: 'r', watchNumber: 1 },
  };
  const at = '2026-05-06T23:30:00Z';
  const envelope = { survey: 's', channel: 'c', person: 'p', id: 'i', at, replyTo: null, edits: null } as const;
  // a stale press is answered with the thread as it is
  const { replies } = step(thread, { ...envelope, manner: 'one', proven: true, what: message }, history, survey, at);
  return replies[0]!;
}
const press = (conversation: Conversation, { report, revision }: Pick<Reply, 'report' | 'revision'>, words: string) =>
  conversation.send({ kind: 'pressed', report: report ?? '', revision, words });
const isStale = ({ last }: Conversation) => /earlier question/.test(last.replies.join());

describe('a button pressed twice counts once', () => {
  test('yes to the consent', () => {
    const conversation = new Conversation();
    conversation.open();
    const buttons = buttonsNow(conversation);
    press(conversation, buttons, 'yes');
    expect(conversation.person?.consent).not.toBeNull();
    press(conversation, buttons, 'yes');
    expect(isStale(conversation)).toBe(true);
  });
  test('skip of the name is no skip of the address', () => {
    const conversation = new Conversation().agreed();
    conversation.all(...WATCH, 'yes');
    const buttons = buttonsNow(conversation);
    press(conversation, buttons, 'skip');
    expect(conversation.last.asking?.fields).toEqual(['mail']);
    press(conversation, buttons, 'skip');
    expect(isStale(conversation)).toBe(true);
    expect(conversation.last.asking?.fields).toEqual(['mail']);
  });
  test('yes to the summary begins no other watch', () => {
    const conversation = new Conversation().agreed();
    conversation.all(...WATCH);
    const buttons = buttonsNow(conversation);
    press(conversation, buttons, 'yes');
    expect(conversation.watches).toHaveLength(1);
    press(conversation, buttons, 'yes');
    expect(isStale(conversation)).toBe(true);
    expect(conversation.thread.report).toBeNull();
  });
});

test('a “yes” to the summary is not one to throwing away', () => {
  const conversation = new Conversation().agreed();
  conversation.all(...WATCH);
  const summary = buttonsNow(conversation);
  conversation.say('throw it away');
  press(conversation, summary, 'yes');
  expect(isStale(conversation)).toBe(true);
  expect(conversation.thread.report).not.toBeNull();
});

describe('a message that was changed', () => {
  test('twice is read twice', () => {
    const conversation = new Conversation().agreed();
    conversation.all(...WATCH.slice(0, 2));
    conversation.say('71 F, sunny, calm', { id: 'weather' });
    conversation.say('75 F, sunny, calm', { id: 'weather-2', edits: 'weather' });
    conversation.say('79 F, sunny, calm', { id: 'weather-3', edits: 'weather' });
    expect(conversation.thread.report?.fields['temperature']?.value).toEqual({ celsius: 26.1 });
  });
  test('and that was not understood before is the answer', () => {
    const conversation = new Conversation().agreed();
    conversation.say('tdoay 2:1o', { id: 'when' });
    conversation.say('today 2:10 to 2:25 pm', { id: 'when-2', edits: 'when' });
    expect(conversation.last.asking?.fields).toEqual(['place']);
  });
  test('and told the plants is read again, with the queens as they were', () => {
    const conversation = new Conversation().agreed();
    conversation.all(...WATCH.slice(0, 4));
    conversation.say('bluebells 60, dandelion 20', { id: 'plants' });
    conversation.say('2 impatiens on bluebells');
    conversation.say('bluebells 80, dandelion 20', { id: 'plants-2', edits: 'plants' });
    const plants = () => conversation.thread.report?.plants?.map(({ name, flowers }) => [name, flowers?.value]);
    expect(plants()).toEqual([
      ['Mertensia virginica', 80],
      ['Taraxacum officinale', 20],
    ]);
    expect(conversation.last.replies[0]).toMatch(/^I read your changed message again\.\nGot it: .* 80 flowers/);
    expect(conversation.thread.report?.tally).toMatchObject([{ plant: 'Mertensia virginica', count: 2 }]);
  });
  test('and told only some of the plants is not: the others would be gone', () => {
    const conversation = new Conversation().agreed();
    conversation.all(...WATCH.slice(0, 3));
    conversation.say('bluebells 60', { id: 'first' });
    conversation.say('also phlox, 12 flowers', { id: 'second' });
    const plants = () => conversation.thread.report?.plants?.map(({ flowers }) => flowers?.value);
    expect(plants()).toEqual([60, 12]);
    expect(conversation.thread.report?.plantsMessage).toBeNull();
    conversation.say('bluebells 90', { id: 'first-2', edits: 'first' });
    expect(plants()).toEqual([90, 12]); // as a new message says it
  });
  test.each(['hmmmm', '…', 'on my way home'])('into “%s” changes nothing, and that is said', (typed) => {
    const conversation = new Conversation().agreed();
    conversation.all(...WATCH.slice(0, 5));
    conversation.say('2 impatiens on dandelion', { id: 'queens' });
    conversation.say(typed, { id: 'queens-2', edits: 'queens' });
    expect(conversation.last.replies[0]).toMatch(/^I am not sure what that changed message should change/);
    expect(conversation.thread.report?.tally).toMatchObject([{ bee: 'Bombus impatiens', count: 2 }]);
    conversation.say('3 impatiens on dandelion', { id: 'queens-3', edits: 'queens' });
    expect(conversation.thread.report?.tally).toMatchObject([{ bee: 'Bombus impatiens', count: 3 }]);
    conversation.say('none', { id: 'queens-4', edits: 'queens' });
    expect(conversation.thread.report?.tally).toMatchObject([{ bee: null, count: 0 }]);
  });
  test('into words that are unsure is asked back', () => {
    const conversation = new Conversation().agreed();
    conversation.all(...WATCH.slice(0, 2));
    conversation.say('71 F, sunny, calm', { id: 'weather' });
    conversation.say('19, sunny, calm', { id: 'weather-2', edits: 'weather' });
    expect(conversation.last.asking?.fields).toEqual(['temperature']);
    expect(conversation.last.offer).not.toBeNull();
  });
  test('and was a remark is the remark', () => {
    const conversation = new Conversation().agreed();
    conversation.all(...WATCH);
    conversation.say('note: a wren sang', { id: 'note' });
    conversation.say('note: two wrens sang', { id: 'note-2', edits: 'note' });
    expect(conversation.thread.report?.fields['remark']?.value).toBe('two wrens sang');
    expect(conversation.last.replies[0]).toMatch(/^I read your changed message again\./);
  });
  test('in a live watch is counted again in its place, whatever came after it', () => {
    const conversation = new Conversation().agreed();
    conversation.say('start');
    conversation.say('2 imp on dandelion', { id: 'first' });
    conversation.say('1 bimac on dandelion', { id: 'second' });
    conversation.say('3 imp on dandelion', { id: 'first-2', edits: 'first' });
    expect(conversation.thread.report?.tally?.map(({ bee, count }) => [bee, count])).toEqual([
      ['Bombus impatiens', 3],
      ['Bombus bimaculatus', 1],
    ]);
    conversation.say('undo');
    expect(conversation.thread.report?.tally?.map(({ count }) => count)).toEqual([3]);
  });
});

test('the clock of a live watch is at no whole second', () => {
  const conversation = new Conversation().agreed();
  conversation.say('start');
  conversation.advance(60.25);
  conversation.all('1 imp on dandelion', 'pause');
  conversation.advance(10.5);
  conversation.say('go on');
  conversation.advance(839.75);
  expect(conversation.last.replies.join()).toMatch(/^Time\. 15 minutes, one queen\./);
});
