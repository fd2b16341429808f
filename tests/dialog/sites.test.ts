/** A site of the survey by the beginning of its name, misspelled, or left over behind a time: it is said back by its name. */
import { describe, expect, test } from 'vitest';
import { Conversation } from './converse.js';

const placeOf = ({ thread }: Conversation): unknown =>
  (thread.report?.fields['place']?.value as { words: string } | undefined)?.words ?? null;

describe('where the place is asked for', () => {
  const table: [typed: string, place: string | null][] = [
    ['oak rise', 'Oak Rise Savanna'],
    ['Oak Rise', 'Oak Rise Savanna'],
    ['at Oak Rise', 'Oak Rise Savanna'],
    ['oak rise savana', 'Oak Rise Savanna'],
    ['OK Rise Sav', 'Oak Rise Savanna'],
    ['Oakrise, north end', 'Oak Rise Savanna, north end'],
    ['Oak Rise Savanna!', 'Oak Rise Savanna'],
    ['It was at the Fen Boardwalk.', 'Fen Boardwalk'],
    ['we were at heron bend', 'Heron Bend Landing'],
    ['It was in the old mill garden.', 'the old mill garden'],
    ['Fen Boardwalk, by the second bench', 'Fen Boardwalk, by the second bench'],
    ['Oak Ridge', 'Oak Ridge'], // another place
    ['oak', null],
  ];
  test.each(table)('"%s": %s', (typed, place) => {
    const conversation = new Conversation().agreed();
    conversation.all('today 2:10 to 2:25 pm', typed);
    expect(placeOf(conversation)).toBe(place);
    expect(conversation.last.replies.join()).not.toContain('..');
  });
});

describe('among the times', () => {
  const table: [typed: string, place: string | null][] = [
    ['5/6 0930-0945 Oak Rise', 'Oak Rise Savanna'],
    ['started at 11 this morning, done 11:15, Heron Bend', 'Heron Bend Landing'],
    ['today 2:10 to 2:25 pm, fen boardwlk', 'Fen Boardwalk'],
    ['2:10 to 2:25 pm today at heron bend', 'Heron Bend Landing'],
    ['today 2:10 to 2:25 pm, heron', null],
    ['today 2:10 to 2:25 pm, with my sister', null],
  ];
  test('and before the weather', () => {
    const conversation = new Conversation().agreed();
    conversation.say('12 to 1215 sunday at heron bend. it was 69, mostly cloudy and a breeze');
    expect(placeOf(conversation)).toBe('Heron Bend Landing');
  });
  test.each(table)('"%s": %s', (typed, place) => {
    const conversation = new Conversation().agreed();
    conversation.say(typed);
    expect(placeOf(conversation)).toBe(place);
    expect(conversation.last.asking?.fields).toEqual(place === null ? ['place'] : ['temperature', 'sky', 'wind']);
  });
});

test('a site is known by the beginning of its name behind the times too', () => {
  const conversation = new Conversation().agreed();
  conversation.say('Yesterday between 1 and 1:15 at heron bend');
  expect(conversation.thread.report?.fields['place']?.value).toMatchObject({ words: 'Heron Bend Landing' });
});

test.each([
  ['mon 4:20-4:35pm my yard. 70 sunny calm', 'my yard'],
  ['today 2:10 to 2:25 pm, our backyard', 'our backyard'],
])('of "%s" the place is one of their own, and private', (said, words) => {
  const conversation = new Conversation().agreed();
  conversation.say(said);
  expect(conversation.thread.report?.fields['place']?.value).toMatchObject({ words });
  expect(conversation.thread.report?.fields['private']?.value).toBe(true);
});

test('"it is the clinic grounds" is called the clinic grounds', () => {
  const conversation = new Conversation().agreed();
  conversation.all('today 2:10 to 2:25 pm', 'it is the clinic grounds');
  expect(conversation.thread.report?.fields['place']?.value).toMatchObject({ words: 'the clinic grounds' });
});
