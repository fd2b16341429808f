/** People and their places come back as kept, each survey's and each observer's own. */
import { expect, test } from 'vitest';
import type { Person, SavedPlace } from '../../shared/person.js';
import { keepPerson, keepPlace, namesShown, personOf, placesOf, type Store } from '../../src/store/index.js';
import { openScratch } from './scratch.js';
import { SURVEY, uuid } from './sample.js';

const wren: Person = {
  survey: SURVEY,
  key: uuid(1),
  channel: 'terminal',
  person: 'wren',
  name: null,
  mail: null,
  consent: null,
  declined: [],
  photographLicence: null,
  nameShown: false,
  reminders: false,
};

const garden: SavedPlace = {
  survey: SURVEY,
  observer: uuid(1),
  key: 'my garden',
  words: 'My garden',
  latitude: 43.05,
  longitude: -89.4,
  uncertaintyMetres: 30,
  site: null,
  private: true,
  lastUsed: '2026-05-01T10:00:00Z',
};

const write = (store: Store, people: Person[], places: SavedPlace[] = []) =>
  store.writing((transaction) => {
    for (const person of people) keepPerson(transaction, person);
    for (const place of places) keepPlace(transaction, place);
  });

test('a person is kept whole, and replaced whole', async () => {
  const store = await openScratch();
  expect(personOf(store, wren)).toBeNull();
  write(store, [wren]);
  expect(personOf(store, wren)).toEqual(wren);
  const agreed: Person = {
    ...wren,
    name: 'Wren',
    mail: 'wren@kestrelfen.example',
    consent: { at: '2026-05-01T10:00:00Z', wordingVersion: 2 },
    declined: ['mail'],
    photographLicence: 'CC-BY-NC-4.0',
    nameShown: true,
    reminders: true,
  };
  write(store, [agreed]);
  expect(personOf(store, wren)).toEqual(agreed);
});

test('the same name over another channel or in another survey is another person', async () => {
  const store = await openScratch();
  const others: Person[] = [
    { ...wren, channel: 'email', key: uuid(2) },
    { ...wren, survey: 'other-fen', key: uuid(3) },
  ];
  write(store, [wren, ...others]);
  expect([wren, ...others].map((person) => personOf(store, person)?.key)).toEqual([uuid(1), uuid(2), uuid(3)]);
});

test('places are the observer’s own, the last used first, one for each key', async () => {
  const store = await openScratch();
  const fen: SavedPlace = {
    ...garden,
    key: 'fen',
    words: 'Fen',
    latitude: null,
    longitude: null,
    uncertaintyMetres: null,
    site: 'north-fen',
    private: false,
    lastUsed: '2026-05-02T10:00:00Z',
  };
  write(store, [], [garden, fen, { ...garden, observer: uuid(2) }]);
  const mine = () => placesOf(store, { survey: SURVEY, observer: uuid(1), most: 50 });
  expect(mine()).toEqual([fen, garden]);
  const usedAgain = { ...garden, lastUsed: '2026-05-03T10:00:00Z', words: 'the garden' };
  write(store, [], [usedAgain]);
  expect(mine()).toEqual([usedAgain, fen]);
  expect(placesOf(store, { survey: SURVEY, observer: uuid(1), most: 1 })).toEqual([usedAgain]);
});

test('names that may be published are those of who said so, by key, each survey its own', async () => {
  const store = await openScratch();
  const said: Person = { ...wren, name: 'Wren', nameShown: true };
  write(store, [
    said,
    { ...wren, person: 'lark', key: uuid(2), name: 'Lark' },
    { ...said, person: 'nameless', key: uuid(3), name: null },
    { ...said, survey: 'other', key: uuid(4), name: 'Robin' },
  ]);
  expect([...namesShown(store, SURVEY)]).toEqual([[uuid(1), 'Wren']]);
});
