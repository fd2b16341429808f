/** Queens and lines told anew at the summary: what is told changes, and nothing else; what changes nothing says so. */
import { describe, expect, test } from 'vitest';
import { Conversation } from './converse.js';

const SHORT: Record<string, string> = {
  'Bombus bimaculatus': 'bimac',
  'Bombus griseocollis': 'griseo',
  'Bombus auricomus': 'auric',
  'Bombus impatiens': 'imp',
  'Bombus vagans': 'vag',
  'Bombus fervidus': 'ferv',
  'Bombus perplexus': 'perp',
  'Bombus ternarius': 'tern',
  'Mertensia virginica': 'bluebells',
  'Aquilegia canadensis': 'columbine',
  'Cercis canadensis': 'redbud',
  'Geranium maculatum': 'geranium',
};
const short = (name: string | null): string => SHORT[name ?? ''] ?? String(name);

function atSummary(tally: string): Conversation {
  const conversation = new Conversation().agreed();
  conversation.all('today 2 to 2:15pm', 'Fen Boardwalk', '70 F, clear, calm', '10 by 8 feet, prairie');
  conversation.all('bluebells 200, columbine 45, redbud 300, wild geranium 60', tally);
  expect(conversation.last.asking?.fields, conversation.last.replies.join()).toEqual(['confirm']);
  return conversation;
}
const FULL =
  '2 two-spotted and 1 brown-belted on bluebells, 1 black and gold and 1 two-spotted on columbine, 3 common eastern on redbud, 1 half-black on geranium';
const FLOWERS = 'bluebells 200, columbine 45, redbud 300, geranium 60';
const flowers = ({ thread }: Conversation): string =>
  (thread.report?.plants ?? []).map(({ name, flowers: told }) => `${short(name)} ${told?.value}`).join(', ');
/** By plant, in the order of the plants. */
const queens = ({ thread }: Conversation): string =>
  (thread.report?.plants ?? [])
    .flatMap(({ name }) =>
      (thread.report?.tally ?? [])
        .filter(({ plant }) => plant === name)
        .map(({ count, bee }) => `${short(name)}: ${count}${bee === null ? '' : ` ${short(bee)}`}`),
    )
    .join(', ');
const BLUEBELLS = 'bluebells: 2 bimac, bluebells: 1 griseo';
const COLUMBINE = 'columbine: 1 auric, columbine: 1 bimac';

describe('queens of several plants', () => {
  const table: [typed: string, queens: string][] = [
    [
      'no, 1 yellow bumble bee on the redbud and 1 confusing bumble bee on the geranium, the rest is right',
      `${BLUEBELLS}, ${COLUMBINE}, redbud: 3 imp, redbud: 1 ferv, geranium: 1 vag, geranium: 1 perp`,
    ],
    [
      'No. Bluebells: 2 two-spotted, 1 brown-belted. Columbine: 1 black and gold, 1 two-spotted. Redbud: 3 common eastern, 1 yellow. Geranium: 1 half-black, 1 confusing',
      `${BLUEBELLS}, ${COLUMBINE}, redbud: 3 imp, redbud: 1 ferv, geranium: 1 vag, geranium: 1 perp`,
    ],
    [
      'Redbud: 3 common eastern, 1 yellow. Geranium: 1 half-black, 1 confusing',
      `${BLUEBELLS}, ${COLUMBINE}, redbud: 3 imp, redbud: 1 ferv, geranium: 1 vag, geranium: 1 perp`,
    ],
    // a list with the plant in front is all there was on it, one new bee comes besides
    [
      'Redbud: 2 two-spotted, 1 brown-belted',
      `${BLUEBELLS}, ${COLUMBINE}, redbud: 2 bimac, redbud: 1 griseo, geranium: 1 vag`,
    ],
    ['2 two-spotted on the redbud', `${BLUEBELLS}, ${COLUMBINE}, redbud: 3 imp, redbud: 2 bimac, geranium: 1 vag`],
    [
      'also 1 orange-belted on the geranium',
      `${BLUEBELLS}, ${COLUMBINE}, redbud: 3 imp, geranium: 1 vag, geranium: 1 tern`,
    ],
    ['no, it was 1 orange-belted on the geranium', `${BLUEBELLS}, ${COLUMBINE}, redbud: 3 imp, geranium: 1 tern`],
    [
      'redbud had 4 common eastern, everything else is fine',
      `${BLUEBELLS}, ${COLUMBINE}, redbud: 4 imp, geranium: 1 vag`,
    ],
    ['on the redbud 4 common eastern, others ok', `${BLUEBELLS}, ${COLUMBINE}, redbud: 4 imp, geranium: 1 vag`],
    [
      '4 common eastern on the redbud but the rest is right',
      `${BLUEBELLS}, ${COLUMBINE}, redbud: 4 imp, geranium: 1 vag`,
    ],
    // none is a result, and the plant stays
    ['there was no bee on the redbud', `${BLUEBELLS}, ${COLUMBINE}, redbud: 0, geranium: 1 vag`],
    ['there were no bees on the redbud', `${BLUEBELLS}, ${COLUMBINE}, redbud: 0, geranium: 1 vag`],
    ['no queens on redbud after all', `${BLUEBELLS}, ${COLUMBINE}, redbud: 0, geranium: 1 vag`],
    ['the redbud had none', `${BLUEBELLS}, ${COLUMBINE}, redbud: 0, geranium: 1 vag`],
    ['nothing on the redbud', `${BLUEBELLS}, ${COLUMBINE}, redbud: 0, geranium: 1 vag`],
    ['zero on redbud', `${BLUEBELLS}, ${COLUMBINE}, redbud: 0, geranium: 1 vag`],
  ];
  test.each(table)('"%s"', (typed, expected) => {
    const conversation = atSummary(FULL);
    conversation.say(typed);
    expect(queens(conversation)).toBe(expected);
    expect(flowers(conversation)).toBe(FLOWERS);
    expect(conversation.last.replies.join()).toContain('Now it reads:');
  });

  test.each([
    ['Redbud: 3 common eastern, 1 wibble. Geranium: 1 half-black', 'wibble'],
    ['2 two-spotted on redbud and 1 wobbler on geranium', 'wobbler'],
    ['1 wibble on redbud', 'wibble'],
  ])('"%s": a bee that is not known changes nothing, and is named', (typed, bee) => {
    const conversation = atSummary(FULL);
    const before = [queens(conversation), flowers(conversation)];
    expect(conversation.say(typed).replies.join()).toMatch(new RegExp(`“${bee}”, so I changed nothing`));
    expect([queens(conversation), flowers(conversation)]).toEqual(before);
    // as the reply says it can be said
    const example = /for example: (.*)$/.exec(conversation.last.replies.join())![1]!;
    conversation.say(example);
    expect(queens(conversation)).toContain('1 bimac');
  });
});

describe('a plant that was not there', () => {
  test.each(['take out the redbud', 'there was no redbud', 'no redbud there', 'no redbud in the patch'])(
    '"%s"',
    (typed) => {
      const conversation = atSummary(FULL);
      conversation.say(typed);
      expect(flowers(conversation)).toBe('bluebells 200, columbine 45, geranium 60');
    },
  );
});

describe('lines by their names', () => {
  const table: [typed: string, line: string][] = [
    ['habitat woodland edge', '8. Habitat: woodland edge'],
    ['hab oak savanna', '8. Habitat: oak savanna'],
    ['habitat is woodland', '8. Habitat: woodland'],
    ['no i said wetland. habitat is wetland', '8. Habitat: wetland'],
    ['line 8 should read simply: wetland', '8. Habitat: wetland'],
    ['hmm place is Heron Bend Landing', '3. Place: Heron Bend Landing'],
    ['Well line 8... I mean the habitat one is just wetland. And that breeze was fine!', '8. Habitat: wetland'],
    ['temp was 68, wind was 10 mph', '4. Temperature: 68 °F'],
    ['temp was 68, wind was 10 mph', '6. Wind: gentle breeze'],
  ];
  test.each(table)('"%s"', (typed, line) => {
    const conversation = atSummary(FULL);
    expect(conversation.say(typed).replies.join('\n').split('\n')).toContain(line);
  });

  test.each(['no. change wind', 'change wind', 'the wind is wrong', 'ugh no. change the wind'])(
    '"%s" asks for the new one',
    (typed) => {
      expect(atSummary(FULL).say(typed).asking?.fields).toEqual(['wind']);
    },
  );
});

describe('what changes nothing', () => {
  test.each(['temp was 70', '2 two-spotted on bluebells', 'the habitat is prairie', 'wild geranium 60'])(
    '"%s": no summary, but a question with an example that works',
    (typed) => {
      const conversation = atSummary(FULL);
      const said = conversation.say(typed).replies.join();
      expect(said).toMatch(/changed nothing.*for example: 4 should be 68 F$/);
      conversation.say('4 should be 68 F');
      expect(conversation.last.replies.join()).toContain('Now it reads:');
      expect(conversation.last.replies.join()).toContain('4. Temperature: 68 °F');
    },
  );

  test('a summary shown once more does not read otherwise', () => {
    const conversation = atSummary(FULL);
    expect(conversation.say('what have you got').replies.join()).not.toContain('Now it reads');
    expect(conversation.say('wind was 10 mph').replies.join()).toContain('Now it reads');
    expect(conversation.say('what have you got').replies.join()).not.toContain('Now it reads');
  });
});

describe('how sure a name is', () => {
  const ROWS = '2 two-spotted on bluebells, 1 common eastern on redbud, none on the others';
  const doubted = ({ thread }: Conversation): string =>
    (thread.report?.tally ?? [])
      .filter(({ count }) => count > 0)
      .map(({ count, bee, plant, doubt }) => `${count} ${short(bee)}${doubt ? '?' : ''} ${short(plant)}`)
      .join(', ');
  const table: [typed: string, rows: string][] = [
    ['the two-spotted was only a maybe', '2 bimac? bluebells, 1 imp redbud'],
    ['not sure about the two-spotted', '2 bimac? bluebells, 1 imp redbud'],
    ['the two-spotted might be something else, not sure', '2 bimac? bluebells, 1 imp redbud'],
    ['line 10: maybe two-spotted on bluebells', '2 bimac? bluebells, 1 imp redbud'],
    ['2 two-spotted, maybe, on the bluebells', '2 bimac? bluebells, 1 imp redbud'],
    ["I'm not certain about the common eastern", '2 bimac bluebells, 1 imp? redbud'],
    ['not sure about the bee on the redbud', '2 bimac bluebells, 1 imp? redbud'],
    ['yes but the common eastern is only a guess', '2 bimac bluebells, 1 imp? redbud'],
    ['the common eastern might have been an orange-belted', '2 bimac bluebells, 1 imp? redbud'],
    ['I think the two-spotted were really half-black', '2 vag? bluebells, 1 imp redbud'],
    ['the two-spotted should be half-black', '2 vag bluebells, 1 imp redbud'],
    ['the two-spotted might be half-black', '2 bimac? bluebells, 1 imp redbud'],
    // the same queens elsewhere
    ['the common eastern was on the geranium not the redbud', '2 bimac bluebells, 1 imp geranium'],
    ['the common eastern was on the geranium', '2 bimac bluebells, 1 imp geranium'],
    ['it was on the geranium, not the redbud', '2 bimac bluebells, 1 imp geranium'],
    ['a two-spotted on the redbud', '2 bimac bluebells, 1 imp redbud, 1 bimac redbud'],
    // no count of one
    ['the two-spotted were huge', '2 bimac bluebells, 1 imp redbud'],
  ];
  test.each(table)('"%s"', (typed, rows) => {
    const conversation = atSummary(ROWS);
    conversation.say(typed);
    expect(doubted(conversation)).toBe(rows);
    if (rows.includes('?')) expect(conversation.last.replies.join()).toContain('(not certain)');
  });

  test.each(["I'm sure it was a two-spotted", 'the two-spotted is for sure', 'it was definitely a two-spotted'])(
    '"%s" takes the doubt away',
    (typed) => {
      const conversation = atSummary(ROWS.replace('two-spotted', 'two-spotted maybe'));
      expect(doubted(conversation)).toBe('2 bimac? bluebells, 1 imp redbud');
      conversation.say(typed);
      expect(doubted(conversation)).toBe('2 bimac bluebells, 1 imp redbud');
    },
  );

  test('a stored watch too, and a yes that is sure of what it reads stores it', () => {
    const conversation = atSummary(ROWS);
    conversation.all('yes', 'skip', 'skip', 'fix watch 1', 'the two-spotted might be something else');
    expect(doubted(conversation)).toBe('2 bimac? bluebells, 1 imp redbud');
    conversation.say('yes, definitely');
    expect(conversation.watch.queens.map(({ doubt }) => doubt)).toEqual([true, false]);
  });
});

describe('flowers told otherwise', () => {
  const counts = ({ thread }: Conversation): string =>
    (thread.report?.plants ?? []).map(({ flowers: told }) => `${told?.about ? '~' : ''}${told?.value}`).join(' ');
  // bluebells 200, columbine 45, redbud 300, wild geranium 60
  const table: [typed: string, counts: string][] = [
    ['the flower counts are approximate', '~200 ~45 ~300 ~60'],
    ['the counts are rough', '~200 ~45 ~300 ~60'],
    ['all the counts are just estimates', '~200 ~45 ~300 ~60'],
    ['The flower counts are approximate: ca. 120 for bluebells and ca. 60 for redbud.', '~120 45 ~60 60'],
    ['ca. 120 for bluebells', '~120 45 300 60'],
    ['bluebells more like 100', '~100 45 300 60'],
    ['yes but the redbud was more like 200', '200 45 ~200 60'],
    ['the redbud should be closer to 250', '200 45 ~250 60'],
    ['the geranium should have 80', '200 45 300 80'],
    ['250 instead of 300', '200 45 250 60'],
    ['250 for the redbud and 80 for the geranium', '200 45 250 80'],
    // bees are no flowers
    ['3 two-spotted for the redbud', '200 45 300 60'],
    ['3 for the redbud', '200 45 300 60'],
  ];
  test.each(table)('"%s"', (typed, expected) => {
    const conversation = atSummary(FULL);
    conversation.say(typed);
    expect(counts(conversation)).toBe(expected);
  });
});

describe('a number alone', () => {
  const told = (plants: string, tally: string): Conversation => {
    const conversation = new Conversation().agreed();
    conversation.all('today 2 to 2:15pm', 'Fen Boardwalk', '76 F, clear, calm', '10 by 8 feet, prairie', plants, tally);
    return conversation;
  };
  test.each([
    ['redbud 300', 'no, it was 67', '4. Temperature: 67 °F'],
    ['redbud 300', '67', '4. Temperature: 67 °F'],
    ['redbud 300', 'actualy it was 68', '4. Temperature: 68 °F'],
    ['redbud 300', 'no, it was 3', '10. Queens: 3 two-spotted (B. bimaculatus) on redbud'],
    ['redbud 300', 'no, 310', '9. Flowers: redbud, 310 flowers'],
  ])('%s: "%s" fits one line', (plants, typed, line) => {
    expect(told(plants, '2 two-spotted').say(typed).replies.join('\n').split('\n')).toContain(line);
  });

  test('near both the temperature and a count of flowers, the temperature is offered', () => {
    const conversation = told('redbud 60', '2 two-spotted');
    expect(conversation.say('no, it was 67').replies.join()).toMatch(/^Temperature 67 °F.*\?/);
    conversation.say('yes');
    expect(conversation.last.replies.join('\n')).toContain('4. Temperature: 67 °F');
    const other = told('redbud 60', '2 two-spotted');
    other.all('no, it was 67', 'redbud was 67');
    expect(flowers(other)).toBe('redbud 67');
  });
});

describe('while something else is asked', () => {
  const asked = (...texts: readonly string[]): Conversation => {
    const conversation = new Conversation().agreed();
    conversation.all('today 2 to 2:15pm', 'Fen Boardwalk', '70 F, clear, calm', '10 by 8 feet, prairie');
    conversation.all('bluebells 200, redbud 300', ...texts);
    return conversation;
  };
  test.each([
    ['the temperature was 20 C', 'temperature', { celsius: 20 }],
    ['habitat was savanna', 'habitat', 'savanna'],
    ['no, the place was Heron Bend Landing', 'place', { words: 'Heron Bend Landing' }],
  ])('the queens: "%s"', (typed, field, value) => {
    for (const conversation of [asked(), asked('2 two-spotted on bluebells')]) {
      const { asking } = conversation.last;
      conversation.say(typed);
      const now = conversation.thread.report?.fields[field]?.value;
      if (typeof value === 'string') expect(now).toBe(value);
      else expect(now).toMatchObject(value);
      expect(conversation.last.asking).toEqual(asking);
    }
  });

  test('the weather: "habitat is yard" may be told before it is asked for', () => {
    const conversation = new Conversation().agreed();
    conversation.all('today 2 to 2:15pm', 'Fen Boardwalk');
    const { asking } = conversation.last;
    conversation.say('habitat is yard');
    expect(conversation.thread.report?.fields['habitat']?.value).toBe('yard');
    expect(conversation.last.asking).toEqual(asking);
  });

  test.each(['change wind', 'no. change wind'])('the queens: "%s"', (typed) => {
    expect(asked().say(typed).asking?.fields).toEqual(['wind']);
  });

  test.each([
    ['it was 3 two-spotted', 'bluebells: 3 bimac'],
    ['no sorry 3 two-spotted', 'bluebells: 3 bimac'],
    ['3 two-spotted', 'bluebells: 2 bimac, redbud: 3 bimac'], // the answer
    ['it was 1 common eastern on the redbud', 'bluebells: 2 bimac, redbud: 1 imp'],
  ])('the queens of the next plant: "%s"', (typed, rows) => {
    const conversation = asked('2 two-spotted on bluebells');
    conversation.say(typed);
    expect(queens(conversation)).toBe(rows);
  });
});

describe('rows and plants that are told otherwise', () => {
  const ROWS = '2 two-spotted on bluebells, 1 common eastern on redbud, none on the others';
  const NONE = 'columbine: 0';
  const table: [typed: string, rows: string][] = [
    ['the one on the redbud was a brown-belted', `bluebells: 2 bimac, ${NONE}, redbud: 1 griseo, geranium: 0`],
    ['wrong bee on the redbud, that was brown-belted', `bluebells: 2 bimac, ${NONE}, redbud: 1 griseo, geranium: 0`],
    ['the redbud had 2 not 1', `bluebells: 2 bimac, ${NONE}, redbud: 2 imp, geranium: 0`],
    ['make it 3 two-spotted and 2 common eastern', `bluebells: 3 bimac, ${NONE}, redbud: 2 imp, geranium: 0`],
    ['there was one more two-spotted on the bluebells', `bluebells: 3 bimac, ${NONE}, redbud: 1 imp, geranium: 0`],
    [
      'one of the two-spotted was on the redbud',
      `bluebells: 1 bimac, ${NONE}, redbud: 1 imp, redbud: 1 bimac, geranium: 0`,
    ],
    ['2 of the two-spotted were on the redbud', `bluebells: 0, ${NONE}, redbud: 2 bimac, redbud: 1 imp, geranium: 0`],
    ['redbud queens should be 2', `bluebells: 2 bimac, ${NONE}, redbud: 2 imp, geranium: 0`],
    ['bluebells queens: 5', `bluebells: 5 bimac, ${NONE}, redbud: 1 imp, geranium: 0`],
    ['not 2 but 3', `bluebells: 3 bimac, ${NONE}, redbud: 1 imp, geranium: 0`],
    ['3 instead of 1', `bluebells: 2 bimac, ${NONE}, redbud: 3 imp, geranium: 0`],
    ['2 more common eastern', `bluebells: 2 bimac, ${NONE}, redbud: 3 imp, geranium: 0`],
  ];
  test.each(table)('"%s"', (typed, rows) => {
    const conversation = atSummary(ROWS);
    conversation.say(typed);
    expect(queens(conversation)).toBe(rows);
    expect(flowers(conversation)).toBe(FLOWERS);
  });

  test.each([
    'change the redbud to crabapple',
    'swap the redbud for crabapple',
    'the redbud should be crabapple',
    "the redbud isn't redbud it's crabapple",
    'it was crabapple, not redbud',
  ])('"%s": its flowers and queens go with it', (typed) => {
    const conversation = atSummary(ROWS);
    conversation.say(typed);
    const said = conversation.last.replies.join('\n');
    expect(said).toContain('crabapple, 300 flowers');
    expect(said).toContain('1 common eastern (B. impatiens) on crabapple');
    expect(said).not.toContain('redbud');
  });

  test.each([
    ['redbud: 2 flowers', 'bluebells 200, columbine 45, redbud 2, geranium 60', 'redbud: 1 imp'],
    ['2 impatiens on redbud', FLOWERS, 'redbud: 2 imp'],
  ])('few flowers where many were told may be queens: asked, then "%s"', (typed, counts, row) => {
    const conversation = atSummary(ROWS);
    expect(conversation.say('the redbud had 2').replies.join()).toMatch(
      /flowers or queens\? I changed nothing.*“redbud: 2 flowers” or “2 impatiens on redbud”/,
    );
    expect(flowers(conversation)).toBe(FLOWERS);
    conversation.say(typed);
    expect(flowers(conversation)).toBe(counts);
    expect(queens(conversation)).toContain(row);
  });

  test('"it\'s a woodland edge, not prairie"', () => {
    const said = atSummary(ROWS).say("it's a woodland edge, not prairie").replies.join('\n');
    expect(said).toContain('8. Habitat: woodland edge\n');
  });

  test.each(['everything except line 10 is right', 'line 10 is wrong'])(
    '"%s" asks for the queens, also twice',
    (typed) => {
      const conversation = atSummary(ROWS);
      expect(conversation.say(typed).asking?.fields).toEqual(['tally']);
      expect(conversation.say(typed).asking?.fields).toEqual(['tally']);
      expect(queens(conversation)).toContain('bluebells: 2 bimac');
    },
  );
});
