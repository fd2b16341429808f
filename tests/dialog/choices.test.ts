/** Buttons of the usual questions: a thumb can answer, and what a press says is read like words. */
import { describe, expect, test } from 'vitest';
import { Conversation } from './converse.js';

const said = ({ last }: Conversation): string => last.replies.join('\n');
const choices = ({ sent }: Conversation): readonly string[] => sent.at(-1)?.choices ?? [];
const SKY = ['clear', 'mostly sunny', 'partly cloudy', 'mostly cloudy', 'overcast'];
const WIND = ['calm', 'light air', 'light breeze', 'gentle breeze', 'moderate breeze'];

const atWeather = (): Conversation => {
  const conversation = new Conversation().agreed();
  conversation.all('today 2:10 to 2:25 pm', 'Fen Boardwalk');
  return conversation;
};

describe('weather', () => {
  test('sky first, then wind, where both are open', () => {
    const conversation = atWeather();
    conversation.say('70 F');
    expect(said(conversation)).toContain('How was the sky? And the wind?');
    expect(choices(conversation)).toEqual([...SKY, 'skip']);
    conversation.press('partly cloudy');
    expect(choices(conversation)).toEqual([...WIND, 'skip']);
    conversation.press('light breeze');
    expect(conversation.last.asking?.fields).toEqual(['patch', 'habitat']);
    expect(choices(conversation)).toEqual(['skip']);
  });

  test.each(SKY)('"%s" pressed is the sky alone', (sky) => {
    const conversation = atWeather();
    conversation.say('70 F');
    conversation.press(sky);
    expect(conversation.last.asking?.fields).toEqual(['wind']);
    expect(said(conversation)).toContain(`Got it: ${sky}.`);
  });

  test.each(WIND)('"%s" pressed is the wind alone', (wind) => {
    const conversation = atWeather();
    conversation.all('70 F', 'overcast');
    conversation.press(wind);
    expect(said(conversation)).toContain(`Got it: ${wind}.`);
  });

  test('"skip" is offered where it is allowed, and nowhere else', () => {
    const conversation = new Conversation().agreed();
    const offered: [string, boolean][] = [];
    for (const answer of ['today 2:10 to 2:25 pm', 'Fen Boardwalk', 'skip', 'skip', 'dandelion', '15', 'none']) {
      offered.push([conversation.last.asking?.fields.join() ?? '', choices(conversation).includes('skip')]);
      conversation.say(answer);
    }
    expect(offered).toEqual([
      ['date,times', false],
      ['place', false],
      ['temperature,sky,wind', true],
      ['patch,habitat', true],
      ['plants', false],
      ['flowers', false],
      ['tally', false],
    ]);
  });

  test('a doubt about what may be skipped can be skipped with a press', () => {
    const conversation = atWeather();
    conversation.say('21, sunny, calm');
    expect(conversation.last.offer).not.toBeNull();
    expect(choices(conversation)).toEqual(['yes', 'skip']);
    conversation.press('skip');
    expect(conversation.last.asking?.fields).toEqual(['patch', 'habitat']);
  });
});

/** Somebody whose earlier watch named these, at the queens question of the next watch. */
function atQueens(earlier: string, plants: string): Conversation {
  const conversation = new Conversation().agreed();
  conversation.all('today 2:10 to 2:25 pm', 'Fen Boardwalk', '71 F, sunny, calm', '12 by 8 feet, meadow');
  conversation.all('dandelion 15', earlier, 'yes', 'skip', 'skip', 'no');
  conversation.all('today 4:10 to 4:25 pm', 'Fen Boardwalk', '71 F, sunny, calm', '12 by 8 feet, meadow', plants);
  expect(conversation.last.asking?.fields).toEqual(['tally']);
  return conversation;
}

describe('queens', () => {
  test('who named none before has "none"', () => {
    expect(choices(atQueens('none', 'dandelion 10, phlox 5'))).toEqual(['none']);
  });

  test('with one plant the bees named before need no plant', () => {
    const conversation = atQueens('2 bimaculatus, 1 not sure', 'phlox 5');
    expect(choices(conversation)).toEqual(['none', '1 two-spotted', '1 not sure']);
    conversation.press('1 two-spotted');
    expect(conversation.last.asking?.fields).toEqual(['confirm']);
    conversation.say('yes');
    expect(conversation.watch.queens).toMatchObject([{ bee: 'Bombus bimaculatus', count: 1, plant: 1 }]);
  });

  test('with several plants each press says its plant, and the other plants have buttons too', () => {
    const conversation = atQueens('2 bimaculatus, 1 impatiens', 'dandelion 10, redbud 50');
    expect(choices(conversation)).toEqual([
      'none',
      '1 two-spotted on dandelion',
      '1 two-spotted on redbud',
      '1 common eastern on dandelion',
      '1 common eastern on redbud',
    ]);
    conversation.press('1 common eastern on redbud');
    expect(said(conversation)).toContain('And on the dandelion');
    expect(choices(conversation)).toEqual(['none', '1 two-spotted on dandelion', '1 common eastern on dandelion']);
    conversation.press('1 two-spotted on dandelion');
    conversation.say('yes');
    expect(conversation.watch.queens).toMatchObject([
      { bee: 'Bombus impatiens', count: 1, plant: 2, doubt: false },
      { bee: 'Bombus bimaculatus', count: 1, plant: 1, doubt: false },
    ]);
  });

  test('a bare number can be given its bee', () => {
    const conversation = atQueens('2 bimaculatus, 1 impatiens', 'dandelion 10');
    conversation.say('3');
    expect(choices(conversation)).toEqual(['3 two-spotted', '3 common eastern', '3 not sure']);
    conversation.press('3 two-spotted');
    conversation.say('yes');
    expect(conversation.watch.queens).toMatchObject([{ bee: 'Bombus bimaculatus', count: 3 }]);
  });

  test('never more than eight', () => {
    const many =
      '1 bimaculatus, 1 impatiens, 1 griseocollis, 1 pensylvanicus, 1 vagans, 1 affinis, 1 fervidus, 1 ternarius';
    expect(choices(atQueens(many, 'dandelion 10, redbud 50, phlox 4'))).toHaveLength(8);
    const one = atQueens(many, 'dandelion 10');
    expect(choices(one)).toHaveLength(8);
    one.say('2');
    expect(choices(one)).toHaveLength(8);
  });

  test.each(['affinis', 'fervidus', 'ternarius', 'terricola', 'borealis', 'rufocinctus', 'citrinus', 'occidentalis'])(
    'a press is read as that bee: %s',
    (bee) => {
      const conversation = atQueens(`1 Bombus ${bee}`, 'dandelion 10, redbud 50');
      conversation.press(choices(conversation)[1]!);
      expect(said(conversation)).toContain('And on the');
      conversation.press('none');
      conversation.say('yes');
      expect(conversation.watch.queens).toMatchObject([{ bee: `Bombus ${bee}`, count: 1, doubt: false }]);
    },
  );
});
