/** Where a picture was taken is offered as the place of the watch; without a yes nothing of it is told. */
import { expect, test } from 'vitest';
import { Conversation } from './converse.js';

const AT = { latitude: 43.60001, longitude: -90.70002, uncertaintyMetres: 8 };
const send = (conversation: Conversation, place: typeof AT | null = AT, sha256 = 'a'.repeat(64)) =>
  conversation.send({ kind: 'photo', sha256, type: 'image/jpeg', takenAt: null, ...(place ? { place } : {}) });
const place = ({ thread }: Conversation): unknown => thread.report?.fields['place']?.value;
const OFFER = /Your picture says (.*): is that where you watched\?/;
const offered = ({ last }: Conversation): string | undefined => OFFER.exec(last.replies.join('\n'))?.[1];

/** Has told when, and is asked where. */
const askedWhere = (): Conversation => {
  const conversation = new Conversation().agreed();
  conversation.say('today 2:10 to 2:25 pm');
  return conversation;
};

test('a yes takes it, and a new place is asked about as ever', () => {
  const conversation = askedWhere();
  send(conversation);
  expect(offered(conversation)).toBe('43.60001, -90.70002');
  expect(conversation.last.asking).toEqual({ fields: ['place'], plant: null });
  expect(place(conversation)).toBeUndefined();
  conversation.say('yes');
  expect(place(conversation)).toEqual({ ...AT, words: '' });
  expect(conversation.last.asking?.fields).toEqual(['private']);
});

test('what asks is not kept once it was sent, and nothing is left of it after a no', () => {
  const conversation = askedWhere();
  send(conversation);
  expect(conversation.sent).toMatchObject([{ erase: true }]);
  conversation.say('what?');
  expect(conversation.sent).toMatchObject([{ erase: true }]);
  conversation.say('no');
  expect(conversation.last.asking?.fields).toEqual(['place']);
  expect(conversation.sent[0]?.erase).toBeUndefined();
  expect(JSON.stringify(conversation.thread)).not.toMatch(/43\.6|90\.7/);
});

test('another place said instead is the place', () => {
  const conversation = askedWhere();
  send(conversation);
  conversation.say('no, Fen Boardwalk');
  expect(place(conversation)).toMatchObject({ words: 'Fen Boardwalk', latitude: null });
  expect(JSON.stringify(conversation.thread)).not.toMatch(/43\.6|90\.7/);
});

test('words that are about something else do not take it, nor become its name', () => {
  const conversation = askedWhere();
  send(conversation);
  conversation.say('2 bimac on bluebell actually');
  expect(place(conversation)).toBeUndefined();
  expect(conversation.thread.report?.tally).toMatchObject([{ count: 2, bee: 'Bombus bimaculatus' }]);
  expect(offered(conversation)).toBe('43.60001, -90.70002');
  conversation.say('no');
  expect(JSON.stringify(conversation.thread)).not.toMatch(/43\.6|90\.7/);
});

test('a site of the survey, and a saved place near by, are offered by their names', () => {
  const conversation = askedWhere();
  send(conversation, { latitude: 43.5122, longitude: -90.6403, uncertaintyMetres: 8 });
  expect(offered(conversation)).toBe('Fen Boardwalk (43.51220, -90.64030)');
  conversation.all('yes');
  expect(place(conversation)).toMatchObject({ words: 'Fen Boardwalk', latitude: 43.5122 });

  const returning = askedWhere();
  returning.places.push({
    survey: returning.survey.settings.key,
    observer: returning.person!.key,
    key: 'otter lane',
    words: 'Otter Lane',
    latitude: 43.6,
    longitude: -90.7,
    uncertaintyMetres: 30,
    site: null,
    private: false,
    lastUsed: '2026-05-01T10:00:00Z',
  });
  send(returning);
  expect(offered(returning)).toBe('Otter Lane (43.60000, -90.70000)');
  returning.say('yes');
  expect(place(returning)).toEqual({ latitude: 43.6, longitude: -90.7, uncertaintyMetres: 30, words: 'Otter Lane' });
});

test('it is offered only while the place is open, once, and only where the picture tells it', () => {
  const told = askedWhere();
  told.say('Fen Boardwalk');
  send(told);
  expect(offered(told)).toBeUndefined();
  const untold = askedWhere();
  send(untold, null);
  expect(offered(untold)).toBeUndefined();
  const twice = askedWhere();
  send(twice);
  send(twice, { ...AT, latitude: 43.7 }, 'b'.repeat(64));
  expect(offered(twice)).toBe('43.60001, -90.70002');
  expect(twice.thread.report?.doubts).toHaveLength(1);
});

test('while the clock runs it waits until time is up', () => {
  const conversation = new Conversation().agreed();
  conversation.say('start');
  send(conversation);
  expect(conversation.last.replies).toEqual(['Thank you, the photograph goes with this watch.']);
  conversation.all('1 imp on dandelion', 'stop');
  expect(conversation.last.replies[0]).toMatch(/^Time\./);
  expect(offered(conversation)).toBe('43.60001, -90.70002');
  conversation.say('yes');
  expect(place(conversation)).toMatchObject(AT);
});

test('a yes to throwing the report away is not one to the place', () => {
  const conversation = askedWhere();
  conversation.say('throw it away');
  send(conversation);
  expect(offered(conversation)).toBeUndefined();
  conversation.say('no');
  expect(offered(conversation)).toBe('43.60001, -90.70002');
});
