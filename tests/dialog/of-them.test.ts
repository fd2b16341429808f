/** Queens put right by words that stand for those told: "one of them was a bimac". How people say it: common practice, no source. */
import { describe, expect, test } from 'vitest';
import { Conversation } from './converse.js';

const SHORT: Readonly<Record<string, string>> = {
  'Bombus impatiens': 'imp',
  'Bombus bimaculatus': 'bimac',
  'Bombus griseocollis': 'griseo',
  Viola: 'violet',
  Phlox: 'phlox',
  Taraxacum: 'dandelion',
};
const WATCH = 'today 3 to 3:15, Fen Boardwalk, 66 sunny calm, 4x4 ft meadow, ';
const ONE_ROW = `${WATCH}20 violets, 2 imps`;
const TWO_ROWS = `${WATCH}20 violets, 30 phlox, 2 imps on violets, 1 griseo on phlox`;

const at = (watch: string): Conversation => {
  const conversation = new Conversation().agreed();
  conversation.say(watch);
  return conversation;
};
/** "2 imp violet, 0 phlox", with "+1" where one carried pollen and "?" for a doubt. */
const rows = ({ thread }: Conversation): string =>
  (thread.report?.tally ?? [])
    .map(({ count, bee, plant, withPollen, doubt, caste }) =>
      [
        count,
        ...(bee === null ? [] : [SHORT[bee] ?? bee]),
        ...(caste === null ? [] : [caste]),
        SHORT[plant ?? ''] ?? plant,
        ...(withPollen === null ? [] : [`+${withPollen}`]),
        ...(doubt ? ['?'] : []),
      ].join(' '),
    )
    .join(', ');

describe('at the summary', () => {
  test.each([
    ['one of them was a bimac', '1 imp violet, 1 bimac violet'],
    ['sorry, one was a bimac', '1 imp violet, 1 bimac violet'],
    ['one of the impatiens was actually a bimac', '1 imp violet, 1 bimac violet'],
    ['one imp was a bimac', '1 imp violet, 1 bimac violet'],
    ['one of them might have been a bimac', '1 imp violet, 1 bimac violet ?'],
    ['they were bimacs', '2 bimac violet'],
    ['both were bimac', '2 bimac violet'],
    ['both were bimacs, not impatiens', '2 bimac violet'],
    ['it was 3 queens not 2', '3 imp violet'],
    ['three queens, not two', '3 imp violet'],
    ['make it 3 queens', '3 imp violet'],
    ['I only saw one', '1 imp violet'],
    ['one of them was a worker', '1 imp violet, 1 imp worker violet'],
    ['both had pollen', '2 imp violet +2'],
    ['one had pollen', '2 imp violet +1'],
    ['neither had pollen', '2 imp violet +0'],
    ['the queens were both on dandelion', '2 imp Taraxacum officinale, 0 violet'],
  ])('of one row, "%s" makes it %s', (typed, expected) => {
    const conversation = at(ONE_ROW);
    conversation.say(typed);
    expect(rows(conversation)).toBe(expected);
  });

  test.each([
    ['they were all bimacs', '2 bimac violet, 1 bimac phlox'],
    ['all three had pollen', '2 imp violet +2, 1 griseo phlox +1'],
    ['two of them were bimac', '2 bimac violet, 1 griseo phlox'],
    ['both on the violets were bimac', '2 bimac violet, 1 griseo phlox'],
    ['the griseo was on the violets', '2 imp violet, 1 griseo violet, 0 phlox'],
    ['one of the imps had pollen', '2 imp violet +1, 1 griseo phlox'],
    ['one of the imps was a griseo', '1 imp violet, 1 griseo phlox, 1 griseo violet'],
    ['all three were impatiens', '2 imp violet, 1 imp phlox'],
    ['3 queens not 2', '3 imp violet, 1 griseo phlox'],
  ])('of two rows, "%s" makes it %s', (typed, expected) => {
    const conversation = at(TWO_ROWS);
    conversation.say(typed);
    expect(rows(conversation)).toBe(expected);
  });

  test.each([
    ['both imps were on dandelion and the temp was 70', '2 imp Taraxacum officinale, 0 violet'],
    ['one of the imps was a bimac, and it was 70 degrees', '1 imp violet, 1 bimac violet'],
    ['both had pollen and the temperature was 70', '2 imp violet +2'],
  ])('beside something else, "%s"', (typed, expected) => {
    const conversation = at(ONE_ROW);
    conversation.say(typed);
    expect(rows(conversation)).toBe(expected);
    expect(conversation.thread.report?.fields['temperature']?.value).toEqual({ celsius: 21.1 });
  });

  test.each([
    [ONE_ROW, 'it was a bimac'],
    [ONE_ROW, 'all three were bimac'],
    [TWO_ROWS, 'one of them was a bimac'],
  ])('"%s": which is meant by "%s" is asked, and nothing changed', (watch, typed) => {
    const conversation = at(watch);
    const before = rows(conversation);
    expect(conversation.say(typed).replies.join()).toMatch(/^Which of the queens do you mean: 2 /);
    expect(rows(conversation)).toBe(before);
  });

  test.each(['there were 3', 'it should be 3'])('"%s" may be a number of anything', (typed) => {
    const conversation = at(ONE_ROW);
    conversation.say(typed);
    expect(rows(conversation)).toBe('2 imp violet');
  });
});

describe('while something else is asked', () => {
  const OPEN = 'today 3 to 3:15, 66 sunny calm, 4x4 ft meadow, 20 violets, 2 imps';

  test.each([
    ['one of them was a bimac', '1 imp violet, 1 bimac violet'],
    ['both had pollen', '2 imp violet +2'],
  ])('"%s" is about the queens told', (typed, expected) => {
    const conversation = at(OPEN);
    expect(conversation.last.asking?.fields).toEqual(['place']);
    conversation.say(typed);
    expect(rows(conversation)).toBe(expected);
    expect(conversation.last.asking?.fields).toEqual(['place']);
  });

  test('asked where it was, "it was by the redbud" is no queen elsewhere', () => {
    const conversation = at(OPEN.replace('2 imps', '1 imp'));
    conversation.say('it was by the redbud at the end of Otter Lane');
    expect(rows(conversation)).toBe('1 imp violet');
    expect(conversation.thread.report?.fields['place']).toBeDefined();
  });

  test('of the other plants, "one, it was a bimac" is one there; "one of them" is of those told', () => {
    const watch = `${WATCH}20 violets, 30 phlox, 2 imps on violets`;
    const there = at(watch);
    there.say('one, it was a bimac');
    expect(rows(there)).toBe('2 imp violet, 1 bimac phlox');
    const told = at(watch);
    told.say('actually one of them was a bimac');
    expect(rows(told)).toBe('1 imp violet, 1 bimac violet');
    expect(told.last.asking?.plant).toBe('Phlox');
  });

  test('asked how many flowers there were, "I saw 30" are flowers', () => {
    const conversation = at(`${WATCH}2 imps on violets`);
    conversation.say('violets and phlox');
    expect(conversation.last.asking?.fields).toEqual(['flowers']);
    conversation.say('I saw 30');
    expect(rows(conversation)).toBe('2 imp violet');
  });
});
