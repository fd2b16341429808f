/** What comes before the consent: a position is held, a photograph is not kept, a no leaves nothing. */
import { describe, expect, test } from 'vitest';
import type { Survey } from '../../shared/survey.js';
import { survey as demo } from '../demo-survey.js';
import { Conversation } from './converse.js';

const HERE = { kind: 'place', latitude: 43.6001, longitude: -90.7002, uncertaintyMetres: 8 } as const;
const photo = (digit: string) =>
  ({ kind: 'photo', sha256: digit.repeat(64), type: 'image/jpeg', takenAt: null }) as const;
const said = ({ last }: Conversation): string => last.replies.join('\n');
const WELCOME = /^Hello! I am the helper of /;
const ASKS = /May I keep your answers/;

describe('a position', () => {
  test('is held, and is where the watch was after the yes', () => {
    const conversation = new Conversation();
    conversation.open();
    conversation.send(HERE);
    expect(said(conversation)).toMatch(/^I have that and will use it as soon as you say yes\.\nMay I keep/);
    conversation.all('yes');
    const { kind: _kind, ...position } = HERE;
    expect(conversation.thread.report?.fields['place']?.value).toEqual({ ...position, words: '' });
    expect(said(conversation)).toMatch(/^Thank you\.\nGot it: 43\.60010, -90\.70020/);
    expect(conversation.last.asking?.fields).toEqual(['date', 'times']);
    expect(JSON.stringify({ ...conversation.thread, report: null })).not.toContain('43.6001');
  });
  test('as the very first message is met with the welcome, and held', () => {
    const conversation = new Conversation();
    conversation.send(HERE);
    expect(said(conversation)).toMatch(WELCOME);
    expect(said(conversation)).toMatch(ASKS);
    conversation.say('yes');
    expect(conversation.thread.report?.fields['place']).toBeDefined();
  });
  test('goes with the words that were told', () => {
    const conversation = new Conversation();
    conversation.all('hello', 'today 2:10 to 2:25 pm, 66 F');
    conversation.send(HERE);
    conversation.say('yes');
    const { fields } = conversation.thread.report!;
    expect(Object.keys(fields).sort()).toEqual(['date', 'place', 'temperature', 'times']);
    expect(said(conversation)).toMatch(/Got it: .*66 °F\.\nGot it: 43\.60010/);
    expect(conversation.last.asking?.fields).toEqual(['private']);
  });
});

describe('a photograph', () => {
  test('is not kept, which is said once for an album, without the whole welcome', () => {
    const conversation = new Conversation();
    conversation.open();
    conversation.send(photo('a'));
    expect(said(conversation)).toMatch(
      /^I keep no photograph before your yes, so please send it once more after that\.\n/,
    );
    expect(said(conversation)).toMatch(ASKS);
    expect(conversation.send(photo('b')).replies).toEqual([]);
    expect(conversation.send(photo('c')).replies).toEqual([]);
    expect(conversation.removed).toEqual(['a', 'b', 'c'].map((digit) => digit.repeat(64)));
    conversation.say('yes');
    expect(conversation.thread.report?.photographs).toEqual([]);
    expect(said(conversation)).toMatch(/^Thank you\./);
  });
  test('is told of again later', () => {
    const conversation = new Conversation();
    conversation.send(photo('a'));
    expect(said(conversation)).toMatch(WELCOME);
    expect(said(conversation)).toContain('I keep no photograph before your yes');
    conversation.advance(9 * 60);
    expect(conversation.send(photo('b')).replies).toEqual([]);
    conversation.advance(60);
    expect(conversation.send(photo('c')).replies[0]).toMatch(/^I keep no photograph/);
  });
});

test('after a no nothing is left, and the buttons of then are met with the welcome', () => {
  const conversation = new Conversation();
  conversation.open();
  const asked = conversation.sent.at(-1);
  conversation.send(HERE);
  conversation.send(photo('a'));
  conversation.say('hi, I am Dorothea, today 2:10 to 2:25 pm');
  conversation.press('no', asked);
  expect(said(conversation)).toMatch(/^That is fine: I keep nothing about you, and what you wrote or sent is erased\./);
  expect(conversation.rights).toEqual(['forget-person']);
  conversation.press('yes', asked);
  expect(said(conversation)).toMatch(WELCOME);
  expect(conversation.person).toBeNull();
  conversation.say('yes');
  expect(conversation.thread.report?.fields).toEqual({});
});

test('who sees what is told is said first, those who help among them where there are any', () => {
  const welcomed = (survey: Survey): string => {
    const conversation = new Conversation(survey);
    conversation.open();
    return conversation.last.replies.join('\n');
  };
  expect(welcomed(demo)).toContain('for the survey’s ecologist only;');
  const helpers = [{ name: 'Otto', mail: 'otto@kestrelfen.example' }];
  const helped = welcomed({ ...demo, settings: { ...demo.settings, helpers } });
  expect(helped).toContain('for the survey’s ecologist and those who help with it;');
});
