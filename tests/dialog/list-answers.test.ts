/** Answers by mail: to the list of all that is open and to the summary, with or without what they quote. */
import { describe, expect, test } from 'vitest';
import { Conversation } from './converse.js';

const asked = (): Conversation => new Conversation(undefined, '2026-05-06T18:30', 'all').agreed();

const QUESTIONS = [
  'When did you watch? The day and the time.',
  'Where was it?',
  'How warm was it, and how were sky and wind?',
  'How big was the part you watched, and what kind of place is it?',
  'Which flowers were in it, and about how many open ones of each?',
  'How many bumble bee queens of each kind, and on which flowers? “None” is a good answer.',
];

interface Known {
  readonly values: Readonly<Record<string, unknown>>;
  readonly plants: readonly (readonly [string | null, number | null | undefined])[];
  readonly queens: readonly (readonly [string | null, string | null, number])[];
}

function known({ thread: { report } }: Conversation): Known {
  const value = (field: string): unknown => report?.fields[field]?.value;
  return {
    values: {
      date: value('date'),
      times: value('times'),
      place: (value('place') as { words: string } | undefined)?.words,
      celsius: (value('temperature') as { celsius: number } | undefined)?.celsius,
      cloud: (value('sky') as { cloud: string } | undefined)?.cloud,
      beaufort: (value('wind') as { beaufort: number } | undefined)?.beaufort,
      habitat: value('habitat'),
    },
    plants: (report?.plants ?? []).map(({ name, flowers }) => [name, flowers?.value]),
    queens: (report?.tally ?? []).map(({ bee, plant, count }) => [bee, plant, count]),
  };
}

const VALUES = {
  date: '2026-05-06',
  times: { start: '14:10', end: '14:25' },
  place: 'Oxbow Lane corner',
  celsius: 21.7,
  cloud: 'clear',
  beaufort: 0,
  habitat: 'meadow',
};
const PLANTS: Known['plants'] = [
  ['Mertensia virginica', 120],
  ['Taraxacum officinale', 15],
];
const QUEENS: Known['queens'] = [
  ['Bombus impatiens', 'Mertensia virginica', 2],
  ['Bombus bimaculatus', 'Taraxacum officinale', 1],
];
const ATTRIBUTION = 'On Wed, May 6, 2026 at 5:02 PM Queenpost <queenpost@kestrelfen.example> wrote:\n> Thank you.\n';
const ANSWERS = [
  'today 2:10 to 2:25 pm',
  'Oxbow Lane corner',
  '71 F, sunny,\ncalm',
  '12 by 8 feet, meadow',
  'Virginia bluebells 120\ndandelion 15',
  '2 impatiens on the bluebells\n1 bimac on the dandelion',
];
const numbered = (sign: string, between = '\n'): string =>
  ANSWERS.map((answer, at) => `${at + 1}${sign} ${answer}`).join(between);

const mails: [how: string, text: string][] = [
  ['by number, an answer going on in the next line', numbered('.')],
  [
    'by number, with empty lines, a greeting and a name',
    `Hi Ines,\nhere they are:\n\n${numbered(')', '\n\n')}\n\nThanks,\nWren`,
  ],
  ['with dashes behind the numbers', numbered(' -')],
  [
    'in another order',
    ANSWERS.map((answer, at) => `${at + 1}. ${answer}`)
      .reverse()
      .join('\n'),
  ],
  ['each question written once more', ANSWERS.map((answer, at) => `${at + 1}. ${QUESTIONS[at]} ${answer}`).join('\n')],
  [
    'above the whole list, quoted',
    `${numbered('.')}\n\n${ATTRIBUTION}${QUESTIONS.map((question, at) => `> ${at + 1}. ${question}`).join('\n')}`,
  ],
  [
    'under each question, quoted',
    ATTRIBUTION + ANSWERS.map((answer, at) => `> ${at + 1}. ${QUESTIONS[at]}\n\n${answer}\n`).join('\n'),
  ],
  [
    'under questions whose lines were broken by the mail program',
    ATTRIBUTION +
      ANSWERS.map((answer, at) => `> ${at + 1}. ${QUESTIONS[at]!.replace(/^(.{20}\S*) /, '$1\n> ')}\n${answer}`).join(
        '\n',
      ),
  ],
  ['a line for each, without numbers', ANSWERS.join('\n')],
  ['a paragraph for each, without numbers', ANSWERS.join('\n\n')],
];

describe('a mail answers the list', () => {
  test('these are its questions', () => {
    expect(asked().last.replies.join('\n')).toContain(
      QUESTIONS.map((question, at) => `${at + 1}. ${question}`).join('\n'),
    );
  });

  test.each(mails)('%s', (_, text) => {
    const conversation = asked();
    conversation.say(text);
    expect(known(conversation)).toEqual({ values: VALUES, plants: PLANTS, queens: QUEENS });
    expect(conversation.thread.report?.doubts).toEqual([]);
  });

  test('in running words', () => {
    const conversation = asked();
    conversation.say(
      'Dear Ines, I watched today from 2:10 to 2:25 pm at Fen Boardwalk. It was 71 with full sun and no wind. The patch ' +
        'was 12 by 8 feet in a meadow. About 120 bluebells and 15 dandelions were open. I saw 2 impatiens on the ' +
        'bluebells and 1 bimac on the dandelion.\n\nRegards,\nWren',
    );
    expect(known(conversation)).toEqual({
      values: { ...VALUES, place: 'Fen Boardwalk' },
      plants: PLANTS,
      queens: QUEENS,
    });
  });
});

describe('an item of the list', () => {
  test('that is a bare number of queens is asked for its bees', () => {
    const conversation = asked();
    conversation.say(numbered('.').replace(/6\. [^]*/, '6. 2'));
    expect(conversation.thread.report?.total).toBe(2);
  });

  test('that is left out stays out, and is said to', () => {
    const conversation = asked();
    const { replies } = conversation.say(
      "1. today 2:10 to 2:25 pm\n2. Fen Boardwalk\n3. don't know\n5. bluebells 120\n6. none",
    );
    expect(replies[0]).toContain('Left out: temperature, sky, wind.');
    expect(conversation.last.asking?.fields).toEqual(['patch', 'habitat']);
  });

  test('that is not understood is named, and the others stay', () => {
    const conversation = asked();
    const { replies } = conversation.say(
      '1. today 2:10 to 2:25 pm\n2. Fen Boardwalk\n3. warmish\n5. bluebells 120\n6. none',
    );
    expect(replies.join('\n')).toContain('I did not catch a temperature.');
    expect(known(conversation).plants).toEqual([['Mertensia virginica', 120]]);
  });

  test('told below the list, once more, is not lost', () => {
    const conversation = asked();
    conversation.say(
      `${numbered('.').replace('3. 71 F, sunny,\ncalm\n', '')}\n\nIt was 71 F, sunny and calm all the time.`,
    );
    expect(known(conversation)).toEqual({ values: VALUES, plants: PLANTS, queens: QUEENS });
  });
});

test('a mail that tells nothing of a watch is asked once more', () => {
  const conversation = asked();
  conversation.say('Is there a form that I could print?');
  expect(conversation.last.replies.join('\n')).toContain('1. When did you watch?');
});

describe('a mail answers the summary', () => {
  const QUOTED = `

On Wed, May 6, 2026 at 5:02 PM Queenpost <queenpost@kestrelfen.example> wrote:
> Here is your watch as I understood it:
> 1. Date: Wed, May 6
> 4. Temperature: 64 °F
> 9. Flowers: Virginia bluebells, 120 flowers
> 10. Queens: none
> Is that right? Yes stores it; or tell me what to change.
`;
  const shown = (): Conversation => {
    const conversation = asked();
    conversation.say(numbered('.').replace('Oxbow Lane corner', 'Fen Boardwalk'));
    expect(conversation.last.asking?.fields).toEqual(['confirm']);
    return conversation;
  };

  test.each([
    ['a yes above it', `Yes, that's right.${QUOTED}`],
    ['a yes with greeting, name and phone', `Hi,\n\nyes, thanks!\n\nWren\nSent from my phone${QUOTED}`],
  ])('%s stores what was shown, not what is quoted', (_, text) => {
    const conversation = shown();
    conversation.say(text);
    expect(conversation.watch.temperature?.celsius).toBe(21.7);
    expect(conversation.watch.total).toBe(3);
  });

  test.each([
    ['above it', `4: 68\n9: bluebells 100, dandelion 15${QUOTED}`],
    ['in a letter', `Hello,\n\n4. should be 68\n9. bluebells 100, dandelion 15\n\nBest,\nWren${QUOTED}`],
    [
      'under the quoted lines',
      '> 4. Temperature: 71 °F\n\n68\n\n> 9. Flowers: Virginia bluebells, 120 flowers\n\nbluebells 100, dandelion 15',
    ],
  ])('lines put right %s change, and nothing that is quoted does', (_, text) => {
    const conversation = shown();
    conversation.say(text);
    expect(known(conversation)).toEqual({
      values: { ...VALUES, place: 'Fen Boardwalk', celsius: 20 },
      plants: [
        ['Mertensia virginica', 100],
        ['Taraxacum officinale', 15],
      ],
      queens: QUEENS,
    });
  });

  test('a quoted summary above nothing but a name answers nothing', () => {
    const conversation = shown();
    conversation.say(`Wren${QUOTED}`);
    expect(conversation.watches).toEqual([]);
    expect(known(conversation).queens).toEqual(QUEENS);
  });
});
