/** That a place is not private was said of that place: of another one it is asked again, and its words do not go along. */
import { describe, expect, test } from 'vitest';
import { Conversation } from './converse.js';

const WHEN = 'today 2:10 to 2:25 pm';
const REST = ['71 F, sunny, calm', '12 by 8 feet, meadow', 'dandelion 15', 'none'] as const;
const said = ({ last }: Conversation): string => last.replies.join('\n');
const place = ({ thread }: Conversation) => thread.report?.fields['place']?.value;
const at = (latitude: number, longitude: number) =>
  ({ kind: 'place', latitude, longitude, uncertaintyMetres: 8 }) as const;

/** At the summary, of a place said not to be private. */
function atSummary(words: string, ...more: readonly string[]): Conversation {
  const conversation = new Conversation().agreed();
  conversation.all(WHEN, words, ...more, ...REST);
  expect(said(conversation)).toMatch(/Is that right\?/);
  return conversation;
}

describe('another place at the summary', () => {
  const changes: [change: string, words: string][] = [
    ['change place to 43.6555, -90.7555', ''],
    ['change place to Aunt Mo pond', 'Aunt Mo pond'],
    ['change place to Aunt Mo pond 43.6555, -90.7555', 'Aunt Mo pond'],
  ];
  test.each(changes)('"%s" is asked about, and stored as it is answered', (change, words) => {
    const conversation = atSummary('Lower meadow 43.6001, -90.7002', 'no');
    conversation.say(change);
    expect(conversation.last.asking?.fields).toEqual(['private']);
    expect(place(conversation)).toMatchObject({ words });
    conversation.all('yes', 'yes');
    expect(conversation.watch.place).toMatchObject({ words, private: true });
  });
  test('a location that was sent has neither the words nor the “not private” of the other place', () => {
    const conversation = atSummary('Lower meadow 43.6001, -90.7002', 'no');
    conversation.send(at(43.6555, -90.7555));
    expect(place(conversation)).toMatchObject({ latitude: 43.6555, words: '' });
    expect(conversation.last.asking?.fields).toEqual(['private']);
    conversation.all('yes', 'yes');
    expect(conversation.watch.place).toMatchObject({ latitude: 43.6555, words: '', private: true });
  });
  test('a location far from a site that was named is not that site', () => {
    const conversation = atSummary('Heron Bend Landing');
    conversation.send(at(43.9, -90.1));
    expect(place(conversation)).toMatchObject({ latitude: 43.9, words: '' });
    expect(conversation.last.asking?.fields).toEqual(['private']);
  });
  test('a private garden that becomes a public site is private no more', () => {
    const conversation = atSummary('Otter Lane allotment', 'yes');
    conversation.all('change place to Fen Boardwalk', 'yes');
    expect(conversation.watch.place).toMatchObject({ words: 'Fen Boardwalk', private: false });
  });
  test('words that were not private are asked about once they have a position', () => {
    const conversation = atSummary('behind the old mill', 'no');
    conversation.send(at(43.6555, -90.7555));
    expect(place(conversation)).toMatchObject({ latitude: 43.6555, words: 'behind the old mill' });
    expect(conversation.last.asking?.fields).toEqual(['private']);
    conversation.all('yes', 'yes');
    expect(conversation.watch.place).toMatchObject({ words: 'behind the old mill', private: true });
  });
  test('words that were private stay so with a position, unasked', () => {
    const conversation = atSummary('behind the old mill', 'yes');
    conversation.send(at(43.6555, -90.7555));
    expect(conversation.last.asking?.fields).toEqual(['confirm']);
    conversation.say('yes');
    expect(conversation.watch.place).toMatchObject({ latitude: 43.6555, private: true });
  });
  test('of a stored watch is asked about too', () => {
    const conversation = atSummary('Lower meadow 43.6001, -90.7002', 'no');
    conversation.all('yes', 'skip', 'skip', 'fix my last watch');
    conversation.send(at(43.6555, -90.7555));
    expect(conversation.last.asking?.fields).toEqual(['private']);
  });
});

describe('the same place told better keeps what was said of it', () => {
  // the location may be sent from home, hours later
  test('but a name that gets a position, which would be published, is asked about', () => {
    const conversation = atSummary('Lower meadow', 'no');
    conversation.send(at(43.6001, -90.7002));
    expect(place(conversation)).toMatchObject({ latitude: 43.6001, words: 'Lower meadow' });
    expect(conversation.last.asking?.fields).toEqual(['private']);
  });
  // 0.0004° of the meridian are 44 m (a degree is 111.2 km), 0.0005° are 56 m
  test.each([
    [43.6005, false],
    [43.6006, true],
  ])('a location some steps away, %d: asked again %s', (latitude, isAsked) => {
    const conversation = atSummary('Lower meadow 43.6001, -90.7002', 'no');
    conversation.send(at(latitude, -90.7002));
    expect(conversation.thread.report?.fields['private'] === undefined).toBe(isAsked);
    expect(place(conversation)).toMatchObject({ words: isAsked ? '' : 'Lower meadow' });
  });
  test('a location at the site that was named', () => {
    const conversation = atSummary('Heron Bend Landing');
    const site = conversation.survey.settings.sites.find(({ name }) => name === 'Heron Bend Landing')!;
    conversation.send(at(site.latitude, site.longitude));
    expect(place(conversation)).toMatchObject({ latitude: site.latitude, words: 'Heron Bend Landing' });
    expect(said(conversation)).toMatch(/Now it reads/);
  });
});

test('the words of a saved place with a position far from it are another place', () => {
  const conversation = atSummary('Lower meadow 43.6001, -90.7002', 'no');
  conversation.all('yes', 'skip', 'skip');
  conversation.all(WHEN, 'Lower meadow 43.6555, -90.7555');
  expect(conversation.last.asking?.fields).toEqual(['private']);
});

test('a changed message that tells another place is asked about', () => {
  const conversation = new Conversation().agreed();
  conversation.say(WHEN);
  conversation.say('Lower meadow 43.6001, -90.7002', { id: 'place' });
  conversation.say('no');
  conversation.say('Lower meadow 43.6002, -90.7002', { id: 'place-2', edits: 'place' });
  expect(conversation.thread.report?.fields['private']?.value).toBe(false);
  conversation.say('Otter Lane', { id: 'place-3', edits: 'place' });
  expect(conversation.last.asking?.fields).toEqual(['private']);
});
