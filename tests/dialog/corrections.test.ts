/** Corrections in plain words: what a line at the summary changes, and that it changes nothing else. */
import { describe, expect, test } from 'vitest';
import type { Watch } from '../../shared/record.js';
import { Conversation, WATCH } from './converse.js';

/** Two two-spotted on wild geranium (60), one common eastern on columbine (14), none on phlox (25); 4 May, 64 °F. */
function atSummary(): Conversation {
  const conversation = new Conversation().agreed();
  conversation.all('Monday 2:10 to 2:25 pm', 'Fen Boardwalk', '64 F, cloudy, light breeze', '12 by 8 feet, meadow');
  conversation.all('wild geranium 60, columbine 14, phlox 25');
  conversation.say('2 bimaculatus on the geranium, 1 impatiens on the columbine, none on the phlox');
  expect(conversation.last.asking).toEqual({ fields: ['confirm'], plant: null });
  return conversation;
}

const SHORT: Record<string, string> = {
  'Geranium maculatum': 'geranium',
  'Aquilegia canadensis': 'columbine',
  Phlox: 'phlox',
  'Bombus bimaculatus': 'bimaculatus',
  'Bombus impatiens': 'impatiens',
  'Bombus ternarius': 'ternarius',
  'Bombus griseocollis': 'griseocollis',
  'Taraxacum officinale': 'dandelion',
};
const short = (name: string | null): string => SHORT[name ?? ''] ?? String(name);

/** A watch in one line a part. */
const brief = (watch: Watch): Record<string, string> => ({
  date: watch.date,
  times: `${watch.times.start}-${watch.times.end}`,
  place: watch.place?.words ?? '',
  temperature: String(watch.temperature?.celsius),
  sky: `${watch.sky?.cloud}${watch.sky?.rain === true ? ', rain' : ''}`,
  wind: String(watch.wind?.beaufort),
  patch: String(watch.patch?.squareMetres.toFixed(2)),
  habitat: String(watch.habitat),
  plants: watch.plants.map(({ name, flowers }) => `${short(name)} ${flowers.value}`).join(', '),
  queens: watch.queens
    .map(({ count, bee, plant }) => `${count} ${short(bee)} ${short(watch.plants[plant - 1]?.name ?? null)}`)
    .join(', '),
});

const BEFORE = {
  date: '2026-05-04',
  times: '14:10-14:25',
  place: 'Fen Boardwalk',
  temperature: '17.8',
  sky: 'overcast',
  wind: '2',
  patch: '8.92',
  habitat: 'meadow',
  plants: 'geranium 60, columbine 14, phlox 25',
  queens: '2 bimaculatus geranium, 1 impatiens columbine',
};

const table: [typed: string, changes: Partial<Record<keyof typeof BEFORE, string>>][] = [
  // weather, day, times, place
  ['3 impatiens, not 2 bimaculatus, on the geranium', { queens: '3 impatiens geranium, 1 impatiens columbine' }],
  ['it was 3 ternarius not 1 impatiens', { queens: '2 bimaculatus geranium, 3 ternarius columbine' }],
  ['temp was 68', { temperature: '20' }],
  ['the temperature was actually 68', { temperature: '20' }],
  ['no, it was 68 F', { temperature: '20' }],
  ['it was sunny', { sky: 'clear' }],
  ['the sky was mostly sunny, not cloudy', { sky: 'few' }],
  ['wind should be calm', { wind: '0' }],
  ['wind was 10 mph', { wind: '3' }],
  ['it was actually Sunday', { date: '2026-05-03' }],
  ['it was the 2nd', { date: '2026-05-02' }],
  ['date should be 5/2', { date: '2026-05-02' }],
  ['it was actually 2:20 to 2:35', { times: '14:20-14:35' }],
  ['almost. I ended at 2:30', { times: '14:10-14:30' }],
  ['the end should be 2:30', { times: '14:10-14:30' }],
  ['no, I started at 2:05', { times: '14:05-14:25' }],
  ['the place was Heron Bend Landing', { place: 'Heron Bend Landing' }],
  // patch and habitat
  ['the patch was 10 by 8 feet', { patch: '7.43' }],
  ['7 should be 10 by 8 feet', { patch: '7.43' }],
  ['6 should be 10 by 8 feet', { patch: '7.43' }], // 6 is the wind: what it says beats the number
  ['the habitat is woodland edge, not meadow', { habitat: 'woodland edge' }],
  // flowers
  ['columbine was 24', { plants: 'geranium 60, columbine 24, phlox 25' }],
  ['change columbine to 24', { plants: 'geranium 60, columbine 24, phlox 25' }],
  ['24 columbines, not 14', { plants: 'geranium 60, columbine 24, phlox 25' }],
  ['take out the phlox', { plants: 'geranium 60, columbine 14' }],
  ['there was no phlox', { plants: 'geranium 60, columbine 14' }],
  // queens
  ['it was three bimaculatus, not two', { queens: '3 bimaculatus geranium, 1 impatiens columbine' }],
  ['make that three bimaculatus', { queens: '3 bimaculatus geranium, 1 impatiens columbine' }],
  ['3 bimaculatus, not 2', { queens: '3 bimaculatus geranium, 1 impatiens columbine' }],
  ['3 not 2 on the geranium', { queens: '3 bimaculatus geranium, 1 impatiens columbine' }],
  ['the columbine one was a ternarius, not an impatiens', { queens: '2 bimaculatus geranium, 1 ternarius columbine' }],
  ['the impatiens should be ternarius', { queens: '2 bimaculatus geranium, 1 ternarius columbine' }],
  ['not impatiens but ternarius', { queens: '2 bimaculatus geranium, 1 ternarius columbine' }],
  ['change bimaculatus to 3', { queens: '3 bimaculatus geranium, 1 impatiens columbine' }],
  ['change the 2 bimaculatus to one', { queens: '1 bimaculatus geranium, 1 impatiens columbine' }],
  ['no impatiens', { queens: '2 bimaculatus geranium' }],
  ['zero impatiens on the columbine', { queens: '2 bimaculatus geranium' }],
  ['no impatiens, 3 bimaculatus', { queens: '3 bimaculatus geranium' }],
  ['temp was 68, no impatiens', { temperature: '20', queens: '2 bimaculatus geranium' }],
  ['none of the impatiens had pollen', {}],
  [
    'Almost: the temperature was 68 and there were 3 bimaculatus',
    { temperature: '20', queens: '3 bimaculatus geranium, 1 impatiens columbine' },
  ],
  ['take out the impatiens', { queens: '2 bimaculatus geranium' }],
  ['remove the impatiens on the columbine', { queens: '2 bimaculatus geranium' }],
  ['no queens on the columbine after all', { queens: '2 bimaculatus geranium' }],
  [
    '10 should be 1 bimaculatus on the geranium, 2 ternarius on the columbine',
    { queens: '1 bimaculatus geranium, 2 ternarius columbine' },
  ],
  [
    'add 1 griseocollis on the phlox',
    { queens: '2 bimaculatus geranium, 1 impatiens columbine, 1 griseocollis phlox' },
  ],
  ['2 impatiens on the columbine', { queens: '2 bimaculatus geranium, 2 impatiens columbine' }],
];

describe('at the summary', () => {
  test('the watch is as told', () => {
    const conversation = atSummary();
    conversation.say('yes');
    expect(brief(conversation.watch)).toEqual(BEFORE);
  });

  test('a plant that is added is asked for its queens', () => {
    const conversation = atSummary();
    expect(conversation.say('add dandelion, about 40').asking).toEqual({
      fields: ['tally'],
      plant: 'Taraxacum officinale',
    });
    conversation.all('none', 'yes');
    expect(brief(conversation.watch)).toEqual({ ...BEFORE, plants: `${BEFORE.plants}, dandelion 40` });
  });

  test.each([
    'note that they were mowing',
    'yes, add a note that they were mowing',
    'add a note: they were mowing',
    'Looks good. Please mention that they were mowing',
  ])('"%s" is kept as a remark', (typed) => {
    const conversation = atSummary();
    conversation.all(typed, 'yes');
    expect(conversation.watch.remark).toBe('they were mowing');
    expect(brief(conversation.watch)).toEqual(BEFORE);
  });

  test('one more, told beside another line, is added', () => {
    const conversation = atSummary();
    conversation.say('the temperature was 68 and I forgot one bimaculatus');
    const counts = conversation.thread.report?.tally?.flatMap(({ bee, count }) =>
      bee === 'Bombus bimaculatus' ? [count] : [],
    );
    expect(counts).toEqual([2, 1]);
  });

  test('"not one impatiens, two" takes none out', () => {
    const conversation = atSummary();
    conversation.say('not one impatiens, two');
    expect(conversation.thread.report?.tally?.some(({ bee }) => bee === 'Bombus impatiens')).toBe(true);
  });

  test('"started with 3 bimaculatus" tells no time', () => {
    const conversation = atSummary();
    conversation.all('started with 3 bimaculatus', 'yes');
    expect(brief(conversation.watch)).toMatchObject({ times: BEFORE.times });
  });

  test('a start that makes the watch last hours is not taken', () => {
    const conversation = atSummary();
    conversation.all('started at 9 am', 'yes');
    expect(conversation.watches.every(({ times }) => times.start === '14:10')).toBe(true);
  });

  test.each(table)('"%s"', (typed, changes) => {
    const conversation = atSummary();
    conversation.say(typed);
    expect(conversation.last.asking?.fields, conversation.transcript.slice(-1)[0]).toEqual(['confirm']);
    conversation.say('yes');
    expect(brief(conversation.watch)).toEqual({ ...BEFORE, ...changes });
  });
});

test.each(['there was no wind', 'all right except there was no wind', 'yes but there was no wind'])(
  '"%s" is a calm, and leaves no line out',
  (typed) => {
    const conversation = new Conversation().agreed();
    conversation.all(...WATCH.slice(0, 2), '68 F, partly cloudy, light breeze', ...WATCH.slice(3));
    conversation.say(typed);
    expect(conversation.thread.report?.fields['wind']?.value).toEqual({ beaufort: 0 });
    conversation.say('leave out the wind');
    expect(conversation.thread.report?.fields['wind']).toBeUndefined();
  },
);

test.each(['looks good. remark: a fox came by', 'yes, and note - a fox came by'])(
  'the remark in "%s" is kept, and shown before it is stored',
  (typed) => {
    const conversation = new Conversation().agreed();
    conversation.all(...WATCH);
    conversation.say(typed);
    expect(conversation.watches).toEqual([]);
    conversation.say('yes');
    expect(conversation.watch.remark).toBe('a fox came by');
  },
);

describe('beside a yes', () => {
  const WATCH = 'today 3 to 3:15, Fen Boardwalk, 66 sunny calm, 4x4 ft meadow, 20 violets, 2 imps';
  const after = (typed: string): Conversation => {
    const conversation = new Conversation().agreed();
    conversation.all(WATCH, typed);
    return conversation;
  };

  test.each(['yes. also saw a monarch!', 'yes but add that they were mowing nearby', 'yep, note that it rained later'])(
    '"%s" is a remark, and shown before a plain yes stores it',
    (typed) => {
      const conversation = after(typed);
      expect(conversation.watches).toHaveLength(0);
      expect(conversation.last.replies.join()).toMatch(/I keep that as a remark\..*Remark: /s);
      conversation.say('yes');
      expect(conversation.watch.remark).toMatch(/monarch|mowing|rained/);
    },
  );
  test('what is said already is a yes', () => {
    expect(after('yes, 2 imps').watches).toHaveLength(1);
  });
  test('people are no yes', () => {
    expect(after('we were 2 people').watches).toHaveLength(0);
  });
  test.each(["it's not a meadow, it's a wet meadow", 'it is a wet meadow, not a meadow'])('"%s"', (typed) => {
    expect(after(typed).thread.report?.fields['habitat']?.value).toBe('wet meadow');
  });
});
