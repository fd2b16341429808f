/** Reminders: for who asked, in the season, on fit days, once a week at most, never to who is done or in the middle. */
import { Temporal } from 'temporal-polyfill';
import { describe, expect, test } from 'vitest';
import type { Survey } from '../../shared/survey.js';
import { nextReminder } from '../../src/dialog/people/reminders.js';
import { survey } from '../demo-survey.js';
import { Conversation } from './converse.js';

type Reminders = Survey['settings']['reminders'];

const settings = (change: Partial<Reminders> = {}): Survey['settings'] => ({
  ...survey.settings,
  season: { from: '2026-04-01', to: '2026-06-20' },
  reminders: { days: ['saturday'], at: '09:00', quiet: [], ...change },
});
const surveyWith = (change: Partial<Reminders> = {}): Survey => ({ ...survey, settings: settings(change) });

describe('the next one', () => {
  // May 2026: the 2nd, 9th, 16th, 23rd and 30th are Saturdays. Chicago is five hours behind UTC in summer, six in winter.
  const table: [about: string, earliest: string, change: Partial<Reminders>, due: string | null][] = [
    ['on the next fit day', '2026-05-07', {}, '2026-05-09T14:00:00Z'],
    ['on the earliest day itself', '2026-05-09', {}, '2026-05-09T14:00:00Z'],
    ['at the local time of the settings', '2026-05-07', { at: '18:30' }, '2026-05-09T23:30:00Z'],
    ['on the first of several days', '2026-05-07', { days: ['sunday', 'friday'] }, '2026-05-08T14:00:00Z'],
    ['not on a quiet date', '2026-05-07', { quiet: ['2026-05-09', '2026-05-16'] }, '2026-05-23T14:00:00Z'],
    ['not before the season', '2026-01-01', {}, '2026-04-04T14:00:00Z'],
    ['on its last day', '2026-06-15', {}, '2026-06-20T14:00:00Z'],
    ['not after it', '2026-06-21', {}, null],
    ['never, where all days left are quiet', '2026-06-14', { quiet: ['2026-06-20'] }, null],
  ];
  test.each(table)('%s (from %s)', (_about, earliest, change, due) => {
    expect(nextReminder(earliest, settings(change))?.due ?? null).toBe(due);
  });

  test('keeps its local time when the clocks change', () => {
    // clocks went forward on 2026-03-08
    const winter = { ...settings(), season: { from: '2026-03-01', to: '2026-03-31' } };
    expect(nextReminder('2026-03-02', winter)?.due).toBe('2026-03-07T15:00:00Z');
    expect(nextReminder('2026-03-08', winter)?.due).toBe('2026-03-14T14:00:00Z');
  });
});

const WATCH = ['Fen Boardwalk', '71 F, sunny, calm', '12 by 8 feet, meadow', 'dandelion 15', 'none', 'yes'] as const;
const HOUR = 3600;
const DAY = 24 * HOUR;
const REMINDER = /Write “start” when you sit down/;

/** Wednesday, May 6, half past six in the evening; a first watch is stored. */
function afterFirst(change: Partial<Reminders> = {}): Conversation {
  const conversation = new Conversation(surveyWith(change)).agreed();
  conversation.all('today 2:10 to 2:25 pm', ...WATCH, 'skip', 'skip');
  return conversation;
}
/** Reminders said so far. */
const reminders = ({ transcript }: Conversation): string[] => transcript.filter((line) => REMINDER.test(line));
const dueOf = ({ timers }: Conversation): string | undefined => timers.get('remind')?.due;
const local = (conversation: Conversation): string | undefined => {
  const due = dueOf(conversation);
  return due === undefined
    ? undefined
    : Temporal.Instant.from(due).toZonedDateTimeISO('America/Chicago').toPlainDateTime().toString().slice(0, 16);
};

describe('they are offered', () => {
  const offers = ({ transcript }: Conversation) => transcript.filter((line) => /write “remind me”/.test(line));
  test('once, after the first stored watch, behind name and mail', () => {
    const conversation = new Conversation(surveyWith()).agreed();
    conversation.all('today 2:10 to 2:25 pm', ...WATCH);
    expect(offers(conversation)).toHaveLength(0);
    conversation.all('skip', 'skip');
    expect(offers(conversation)).toHaveLength(1);
    conversation.all('today 3:10 to 3:25 pm', ...WATCH);
    expect(offers(conversation)).toHaveLength(1);
  });
  test('nothing comes to who does not ask', () => {
    const conversation = afterFirst();
    expect(dueOf(conversation)).toBeUndefined();
    conversation.advance(40 * DAY);
    expect(reminders(conversation)).toEqual([]);
  });
  test('not to who has reached the target, nor after the last fit day', () => {
    const done = new Conversation({ ...surveyWith(), settings: { ...settings(), target: 1 } }).agreed();
    done.all('today 2:10 to 2:25 pm', ...WATCH, 'skip', 'skip');
    const late = new Conversation(surveyWith(), '2026-06-20T18:30').agreed();
    late.all('today 2:10 to 2:25 pm', ...WATCH, 'skip', 'skip');
    for (const conversation of [done, late]) {
      expect(conversation.watches).toHaveLength(1);
      expect(offers(conversation)).toEqual([]);
    }
  });
});

describe('asked for', () => {
  test('they come on fit days, a week apart, with what is still wanted', () => {
    const conversation = afterFirst({ days: ['saturday', 'sunday'] });
    expect(conversation.say('remind me').replies[0]).toMatch(/first on Sat, May 9/);
    expect(conversation.person?.reminders).toBe(true);
    conversation.advance(21 * DAY);
    expect(reminders(conversation)).toHaveLength(3);
    expect(reminders(conversation)[0]).toMatch(/first watch; 2 more would make the 3/);
    expect(local(conversation)).toBe('2026-05-30T09:00');
  });

  const asking: [said: string, on: boolean][] = [
    ['remind me', true],
    ['Please remind me!', true],
    ['reminders on', true],
    ['no reminders', false],
    ['No reminders, please', false],
    ['stop reminding me', false],
    ['turn reminders off', false],
  ];
  test.each(asking)('"%s" is understood', (said, on) => {
    const conversation = afterFirst();
    conversation.say(on ? 'no reminders' : 'remind me');
    expect(conversation.person?.reminders).toBe(!on);
    conversation.say(said);
    expect(conversation.person?.reminders).toBe(on);
    expect(dueOf(conversation)).toBe(on ? '2026-05-09T14:00:00Z' : undefined);
  });

  test('"no reminders" works in the middle of a question, which is asked again', () => {
    const conversation = afterFirst();
    conversation.all('remind me', 'forget me', 'no reminders');
    expect(conversation.last.asking?.fields).toEqual(['confirm']);
    expect(conversation.person?.reminders).toBe(false);
    expect(conversation.rights).toEqual([]);
  });

  test('asking again does not bring two in a week', () => {
    const conversation = afterFirst({ days: ['saturday', 'sunday'] });
    conversation.say('remind me');
    conversation.advance(3 * DAY);
    expect(reminders(conversation)).toHaveLength(1);
    conversation.all('no reminders', 'remind me');
    expect(local(conversation)).toBe('2026-05-16T09:00');
  });

  test('who has reached the target, or asks after the last fit day, is told so', () => {
    const done = new Conversation({ ...surveyWith(), settings: { ...settings(), target: 1 } }).agreed();
    done.all('today 2:10 to 2:25 pm', ...WATCH, 'skip', 'skip');
    expect(done.say('remind me').replies[0]).toMatch(/reached the one watch .*nothing to remind you of/);
    const late = new Conversation(surveyWith(), '2026-06-20T18:30').agreed();
    expect(late.say('remind me').replies[0]).toMatch(/no day left/);
    for (const conversation of [done, late]) expect(dueOf(conversation)).toBeUndefined();
  });
});

describe('one that comes due', () => {
  /** What is done after "remind me" and before Saturday the 9th, nine o'clock; then whether it is said, and the next. */
  const table: [about: string, before: (conversation: Conversation) => void, said: number, next: string | undefined][] =
    [
      ['is said', () => {}, 1, '2026-05-16T09:00'],
      ['waits while a report is open', (c) => c.all('today 3:10 to 3:25 pm', 'Fen Boardwalk'), 0, '2026-05-16T09:00'],
      ['waits while a report is put aside', (c) => c.all('today 3:10 to 3:25 pm', 'new watch'), 0, '2026-05-16T09:00'],
      ['is said where a report was only begun', (c) => c.all('hello'), 1, '2026-05-16T09:00'],
      [
        'is not said to who has reached the target since',
        (c) => c.all('today 3:10 to 3:25 pm', ...WATCH, 'today 4:10 to 4:25 pm', ...WATCH),
        0,
        '2026-05-16T09:00',
      ],
      ['is cleared by "no reminders"', (c) => c.all('no reminders'), 0, undefined],
    ];
  test.each(table)('%s', (_about, before, said, next) => {
    const conversation = afterFirst();
    conversation.say('remind me');
    before(conversation);
    conversation.advance(3 * DAY);
    expect(reminders(conversation)).toHaveLength(said);
    expect(local(conversation)).toBe(next);
  });

  test('asks nothing, so that what was asked before is still answered', () => {
    const conversation = new Conversation(surveyWith()).agreed();
    conversation.all('remind me', 'today 2:10 to 2:25 pm', ...WATCH);
    expect(conversation.last.asking?.fields).toEqual(['name']);
    conversation.advance(3 * DAY);
    expect(reminders(conversation)).toHaveLength(1);
    expect(conversation.say('Wren').replies[0]).toMatch(/Thank you, Wren/);
  });

  test('late by more than three hours is left for another day, by less is said', () => {
    for (const [hours, said] of [
      [3, 1],
      [4, 0],
    ] as const) {
      const conversation = afterFirst();
      conversation.say('remind me');
      conversation.timers.delete('remind'); // the program stood still
      conversation.advance(2 * DAY + (14.5 + hours) * HOUR); // nine o'clock on the 9th, and that many hours
      conversation.send({ kind: 'time', key: 'remind', report: '' });
      expect(reminders(conversation)).toHaveLength(said);
      expect(local(conversation)).toBe('2026-05-16T09:00');
    }
  });

  test('a second copy, or one of who wants none, is ignored', () => {
    const conversation = afterFirst();
    conversation.say('remind me');
    conversation.advance(2 * DAY + 15 * HOUR);
    expect(reminders(conversation)).toHaveLength(1);
    conversation.send({ kind: 'time', key: 'remind', report: '' });
    expect(reminders(conversation)).toHaveLength(1);
    conversation.say('no reminders');
    const before = JSON.stringify(conversation.thread);
    expect(conversation.send({ kind: 'time', key: 'remind', report: '' }).replies).toEqual([]);
    expect(JSON.stringify(conversation.thread)).toBe(before);
    expect(dueOf(conversation)).toBeUndefined();
  });

  test('ends with the season', () => {
    const conversation = afterFirst();
    conversation.say('remind me');
    conversation.advance(80 * DAY);
    // 9, 16, 23 and 30 May, 6, 13 and 20 June
    expect(reminders(conversation)).toHaveLength(7);
    expect(dueOf(conversation)).toBeUndefined();
  });
});
