/** What kind of place it was: heard beside the size, asked once by itself where it was not, kept without the words around. */
import { describe, expect, test } from 'vitest';
import { Conversation } from './converse.js';

const BEFORE = ['today 2:10 to 2:25 pm', 'Fen Boardwalk', '71 F, sunny, calm'];

function atPatch(): Conversation {
  const conversation = new Conversation().agreed();
  conversation.all(...BEFORE);
  return conversation;
}
const habitatOf = ({ thread }: Conversation): unknown => thread.report?.fields['habitat']?.value ?? null;

describe('beside the size', () => {
  const table: [typed: string, habitat: string | null][] = [
    ['15x6 ft praire', 'prairie'],
    ['3x3m oak sav', 'oak savanna'],
    ['10 by 8 feet, wodland edge', 'woodland edge'],
    ['8x8 feet, medow', 'meadow'],
    ['12x8 ft, feild', 'field'],
    ['about eight feet by four feet in my garden', 'garden'],
    ['The plot measured twenty feet by five feet, and it is a wetland.', 'wetland'],
    ['It is about 10 by 10 feet and it is a wet meadow.', 'wet meadow'],
    ['10 by 8 feet, wet meadow i think', 'wet meadow'],
    ['20 by 10 ft, edge of the woods', 'edge of the woods'],
    ['20 by 10 ft, prairie with some shrubs', 'prairie with some shrubs'],
    ['20 by 10 ft, woodland edge, not road verge', 'woodland edge'],
    ['6 by 4 ft, short', null],
    ['6 by 4 ft, a lot of shade', null],
    ['6 by 4 ft', null],
  ];
  test.each(table)('"%s": %s', (typed, habitat) => {
    const conversation = atPatch();
    conversation.say(typed);
    expect(habitatOf(conversation)).toBe(habitat);
    expect(conversation.thread.report?.fields['patch']).toBeDefined();
    expect(conversation.thread.report?.fields['place']?.value).toMatchObject({ words: 'Fen Boardwalk' });
    expect(conversation.last.asking?.fields).toEqual([habitat === null ? 'habitat' : 'plants']);
  });
});

describe('asked by itself', () => {
  const table: [typed: string, habitat: string | null, asked: string][] = [
    ['wet meadow i think', 'wet meadow', 'plants'],
    ['it is my back garden', 'back garden', 'plants'],
    ['the scrubby bit behind the barn', 'the scrubby bit behind the barn', 'plants'],
    ['yes', null, 'habitat'],
    ['skip', null, 'plants'],
    ['no', null, 'plants'],
    ['bluebells 120, dandelion 15', null, 'tally'], // what comes next is told already
    ['bluebells and dandelion', null, 'flowers'],
    ['willow', null, 'flowers'],
    ['prairie smoke and marsh marigold', null, 'flowers'],
    ['trout lily', null, 'plants'],
    ['oak savanna', 'oak savanna', 'plants'],
  ];
  test.each(table)('"%s": %s', (typed, habitat, asked) => {
    const conversation = atPatch();
    conversation.all('12 by 8 feet', typed);
    expect(habitatOf(conversation)).toBe(habitat);
    expect(conversation.last.asking?.fields).toEqual([asked]);
  });

  test('not of a place told before, and not of a note', () => {
    const conversation = atPatch();
    conversation.all('12 by 8 feet', 'skip', 'dandelion 15', 'none', 'yes', 'skip', 'skip', ...BEFORE, '12 by 8 feet');
    expect(conversation.last.asking?.fields).toEqual(['plants']);
    const noted = new Conversation().agreed();
    noted.say('today 2 to 2:15 pm at Fen Boardwalk, 71 F sunny calm, patch 12x8 ft, bluebells 120, no bumble bees');
    expect(noted.last.asking?.fields).toEqual(['confirm']);
  });
});

test('a note tells it right behind the size', () => {
  for (const [patch, habitat] of [
    ['patch 12x8 ft at the woodland edge', 'woodland edge'],
    ['12 x 8 ft, prairie', 'prairie'],
    ['12 x 8 ft', null],
  ]) {
    const conversation = new Conversation().agreed();
    conversation.say(`today 2 to 2:15 pm at Fen Boardwalk, 71 F sunny calm, ${patch}, bluebells 120, no bumble bees`);
    expect(habitatOf(conversation)).toBe(habitat);
  }
});

test('a unit that was asked for may bring the kind of place with it', () => {
  const conversation = new Conversation().agreed();
  conversation.all('Monday 2:10 to 2:25 pm', 'Fen Boardwalk', '64 F, cloudy, light breeze', 'about 5 by 5');
  expect(conversation.last.replies.join()).toMatch(/You gave no unit/);
  conversation.say("feet. it's the wet meadow side");
  expect(conversation.last.replies.join()).toContain('5 × 5 ft · wet meadow side');
  expect(conversation.thread.report?.fields['habitat']?.value).toBe('wet meadow side');
});

test('the "plant" of a count is no kind of place', () => {
  const conversation = atPatch();
  conversation.all('4 ft by 6 ft', 'tulips 20, bleeding heart 1 plant w about 30 flowers');
  expect(habitatOf(conversation)).toBeNull();
  expect(conversation.thread.report?.plants?.map(({ flowers }) => flowers?.value)).toEqual([20, 30]);
});

test('a word of everyday is no other word cut short', () => {
  const conversation = new Conversation().agreed();
  conversation.say('today 9-9:15 am heron bend, 52 cloudy breezy, 2m x 2m, gravel bar, willow 30 catkins');
  expect(habitatOf(conversation)).not.toBe('gravel barnyard');
});
