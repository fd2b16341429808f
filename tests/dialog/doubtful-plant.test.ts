/** A plant whose name fits more than one, told beside others: the answer settles that plant and nothing else. */
import { describe, expect, test } from 'vitest';
import { Conversation } from './converse.js';

const SHORT: Record<string, string> = {
  'Primula meadia': 'shooting star',
  Lupinus: 'lupine',
  'Lithospermum canescens': 'hoary',
  'Lithospermum caroliniense': 'hairy',
  'Lithospermum incisum': 'fringed',
  Lithospermum: 'genus',
  Viola: 'violet',
};

/** Asked which puccoon. */
function asked(): Conversation {
  const conversation = new Conversation().agreed();
  conversation.all('Monday 2:10 to 2:25 pm', 'Fen Boardwalk', '64 F, cloudy, light breeze', '12 by 8 feet, meadow');
  conversation.say('80 shooting stars, about 150 lupine and 45 puccoon');
  return conversation;
}
const plants = ({ thread }: Conversation): string =>
  (thread.report?.plants ?? [])
    .map(({ name, flowers }) => `${flowers?.value ?? '?'} ${SHORT[name ?? ''] ?? name}`)
    .join(', ');
const REST = '80 shooting star, 150 lupine';

test('queens told instead of an answer are no plants', () => {
  const conversation = asked();
  conversation.say('three queens on the lupine: two bimacs and one I could not see well. Nothing on the shooting star');
  expect(conversation.thread.report?.doubts.map(({ field }) => field)).toEqual(['plants', 'tally']);
  conversation.say('the hoary one');
  expect(plants(conversation)).toBe(`${REST}, 45 hoary`);
});

test('only what is doubtful is offered', () => {
  expect(asked().last.replies.join()).toMatch(
    /hoary puccoon, hairy puccoon, fringed puccoon or puccoon \(not sure which\)/,
  );
  expect(asked().last.replies.join()).not.toMatch(/lupine/);
});

describe('two species of one name', () => {
  const beauty = (): Conversation => {
    const conversation = new Conversation().agreed();
    conversation.all('Monday 2:10 to 2:25 pm', 'Fen Boardwalk', '64 F, cloudy, light breeze', '12 by 8 feet, meadow');
    conversation.say('violets 40, spring beauty 20');
    return conversation;
  };
  test('are told apart by their scientific names', () => {
    expect(beauty().last.replies.join()).toMatch(
      /spring beauty \(Claytonia \w+\), spring beauty \(Claytonia \w+\) or spring beauty \(not sure which\)/,
    );
  });
  test('"the virginia one" is Claytonia virginica, and the violets stay', () => {
    const conversation = beauty();
    conversation.say('the virginia one');
    expect(plants(conversation)).toBe('40 violet, 20 Claytonia virginica');
  });
  test('what names no plant of the list settles nothing and loses nothing', () => {
    const conversation = beauty();
    expect(conversation.say('the wibbly one').replies.join()).toContain('Claytonia virginica');
    conversation.say('the virginia one');
    expect(plants(conversation)).toBe('40 violet, 20 Claytonia virginica');
  });
});

describe('the answer', () => {
  const table: [typed: string, after: string][] = [
    ['hoary puccoon', `${REST}, 45 hoary`],
    ['the hoary one', `${REST}, 45 hoary`],
    ['hoary', `${REST}, 45 hoary`],
    ['it was the hairy one', `${REST}, 45 hairy`],
    ['no, the fringed one', `${REST}, 45 fringed`],
    ['hoary puccoon 45', `${REST}, 45 hoary`],
    ['hoary puccoon, more like 50', `${REST}, 50 hoary`],
    ['Lithospermum incisum', `${REST}, 45 fringed`],
    ['the second one', `${REST}, 45 hairy`],
    ['the last one', `${REST}, 45 genus`],
    ["I can't tell", `${REST}, 45 genus`],
    ['not sure', `${REST}, 45 genus`],
    ['I cannot tell which', `${REST}, 45 genus`],
    ['puccoon, no idea which one really', `${REST}, 45 genus`],
    ['puccoon', `${REST}, 45 genus`],
    ['just puccoon', `${REST}, 45 genus`],
    ['puccoon 50', `${REST}, 50 genus`],
    ['the genus is fine', `${REST}, 45 genus`],
    ['either', `${REST}, 45 genus`],
    ['3', `${REST}, 45 fringed`],
    ['I think it was the last one', `${REST}, 45 genus`],
    ['yes, the first one', `${REST}, 45 hoary`],
    ['hoary puccoon 45, and violets 20', `${REST}, 45 hoary, 20 violet`],
    ['no, those were violets', `${REST}, 45 violet`],
    ['80 shooting stars, 150 lupine and 40 hoary puccoon', `${REST}, 40 hoary`],
  ];
  test.each(table)('"%s": %s', (typed, after) => {
    const conversation = asked();
    conversation.say(typed);
    expect(plants(conversation), conversation.transcript.slice(-1)[0]).toBe(after);
    expect(conversation.last.asking?.fields).toEqual(['tally']);
  });

  test('by a button', () => {
    const conversation = asked();
    conversation.press('hairy puccoon');
    expect(plants(conversation)).toBe(`${REST}, 45 hairy`);
  });

  test.each(['yes', 'yep', '9', 'the ninth'])('"%s" is no choice, and loses nothing', (typed) => {
    const conversation = asked();
    expect(conversation.say(typed).replies.join('\n')).toMatch(/hoary puccoon, hairy puccoon/);
    expect(conversation.thread.report?.plants).toBeNull();
    conversation.say('hoary');
    expect(plants(conversation)).toBe(`${REST}, 45 hoary`);
  });
});

test('where two species share the name of their genus, that name once more is the genus', () => {
  for (const typed of ['trout lily 45', 'trout lily', 'just trout lily']) {
    const conversation = new Conversation().agreed();
    conversation.all('Monday 2:10 to 2:25 pm', 'Fen Boardwalk', '64 F, cloudy, light breeze', '12 by 8 feet, meadow');
    conversation.all('trout lily 45, pussy willow 90', typed);
    expect(conversation.thread.report?.plants).toMatchObject([
      { name: 'Erythronium', rank: 'genus', flowers: { value: 45 } },
      { name: 'Salix discolor', flowers: { value: 90 } },
    ]);
  }
});

test('plants whose flowers are doubtful are watched all the same: "the marigolds" are those', () => {
  const conversation = new Conversation().agreed();
  conversation.all(
    'yesterday at noon for 15 min, Fen Boardwalk, 62 sunny calm, 6x3 ft wet meadow',
    'marsh marigolds 45 and a few violets',
    'just the marigolds had one, griseocollis',
    'yes',
  );
  expect(conversation.thread.report?.plants?.map(({ name }) => name)).toEqual(['Caltha palustris', 'Viola']);
  expect(conversation.last.replies.join()).toContain('on marsh marigold');
});
