/** What the conversation does at each turn; the demo's recorded conversations show whole ones. */
import { describe, expect, test } from 'vitest';
import { Conversation } from './converse.js';

const WATCH = [
  'today 2:10 to 2:25 pm',
  'Fen Boardwalk',
  '71 F, mostly sunny, light breeze',
  '12 by 8 feet',
  'Virginia bluebells 120, dandelion 15',
] as const;

const fieldsOf = (conversation: Conversation): string[] | undefined => conversation.last.asking?.fields;

/** Somebody who has agreed and told all but the queens. */
function beforeQueens(): Conversation {
  const conversation = new Conversation().agreed();
  conversation.all(...WATCH);
  return conversation;
}

/** Somebody whose summary is shown: two queens on the bluebells, none on the dandelion. */
function atSummary(): Conversation {
  const conversation = beforeQueens();
  conversation.all('2 bimaculatus on the bluebells, nothing on the dandelion');
  expect(fieldsOf(conversation)).toEqual(['confirm']);
  return conversation;
}

describe('consent', () => {
  test('comes first, in three sentences, and is kept with its day and version', () => {
    const conversation = new Conversation();
    expect(conversation.open().asking).toEqual({ fields: ['consent'], plant: null });
    const welcome = conversation.last.replies[0] ?? '';
    expect(welcome).toMatch(/Kestrel Fen Spring Queen Survey/);
    for (const caution of ['handle', 'stings', 'ticks', 'heat', 'traffic', 'private land', 'local rules'])
      expect(welcome).toContain(caution);
    conversation.say('yes');
    expect(conversation.person?.consent).toEqual({
      at: '2026-05-06T23:30:00Z',
      wordingVersion: conversation.survey.wording.version,
    });
  });

  test('a no keeps nothing, and who writes again is told and asked like a stranger', () => {
    const conversation = new Conversation();
    conversation.all('today 2:10 to 2:25 pm', 'no');
    expect(conversation.last.replies[0]).toMatch(/^That is fine: I keep nothing about you/);
    expect(conversation.rights).toEqual(['forget-person']);
    expect(conversation.person).toBeNull();
    expect(conversation.say('yes').replies[0]).toMatch(/^Hello! I am the helper .*May I keep your answers/s);
    expect(conversation.person).toBeNull();
    conversation.say('yes');
    expect(conversation.person).toMatchObject({ consent: { at: '2026-05-06T23:30:00Z' } });
    expect(conversation.last.asking?.fields).toEqual(['date', 'times']); // nothing of before
  });

  test('what was told before it is not lost', () => {
    const conversation = new Conversation();
    conversation.all('yesterday 10:40 to 10:55, 66 F and mostly sunny', 'yes');
    expect(fieldsOf(conversation)).toEqual(['place']);
    conversation.all('Fen Boardwalk');
    expect(fieldsOf(conversation)).toEqual(['wind']);
  });
});

describe('the questions', () => {
  test('a watch without queens at a known place takes a returning observer seven answers', () => {
    const conversation = atSummary();
    conversation.all('yes', 'Wren', 'skip');
    conversation.say('today 4:10 to 4:25 pm');
    conversation.all('same place', '71 F, sunny, calm', '12 by 8 feet', 'Virginia bluebells 120', 'none', 'yes');
    expect(conversation.last.stored).toBe(2);
    expect(conversation.watch).toMatchObject({ total: 0, queens: [], place: { words: 'Fen Boardwalk' } });
  });

  test('several fields in one answer are all taken, and only what is missing is asked', () => {
    const conversation = new Conversation().agreed();
    conversation.say('yesterday 10:40 to 10:55, 66 and mostly sunny');
    expect(fieldsOf(conversation)).toEqual(['place']);
    conversation.say('Fen Boardwalk');
    expect(fieldsOf(conversation)).toEqual(['wind']);
  });

  test('a new place is asked once whether it is private, a site of the survey never', () => {
    const conversation = new Conversation().agreed();
    conversation.all('today 2:10 to 2:25 pm', 'Otter Lane allotment');
    expect(fieldsOf(conversation)).toEqual(['private']);
    conversation.say('no');
    expect(fieldsOf(conversation)).toEqual(['temperature', 'sky', 'wind']);
  });

  test.each(['skip', "I don't know"])('where "%s" is said of a private place, it is taken for one', (typed) => {
    const conversation = new Conversation().agreed();
    conversation.all('today 2:10 to 2:25 pm', 'Otter Lane allotment', typed);
    expect(conversation.last.replies[0]).toMatch(/private place, to be on the safe side/);
    expect(conversation.thread.report?.fields['private']?.value).toBe(true);
  });

  test('one flower is no flowers', () => {
    const conversation = new Conversation().agreed();
    conversation.all(...WATCH.slice(0, 4), 'Virginia bluebells 1, dandelion 2');
    expect(conversation.last.replies[0]).toMatch(/1 flower; dandelion, 2 heads/);
  });

  test('a private place stays private when it is used again, and "my" says so by itself', () => {
    const conversation = new Conversation().agreed();
    conversation.all('today 2:10 to 2:25 pm', 'my back yard');
    expect(fieldsOf(conversation)).toEqual(['temperature', 'sky', 'wind']);
    conversation.all(...WATCH.slice(2), 'none', 'yes', 'skip', 'skip');
    conversation.all('today 4:10 to 4:25 pm', 'my back yard', ...WATCH.slice(2), 'none', 'yes');
    expect(conversation.watches.map(({ place }) => place?.private)).toEqual([true, true]);
  });

  test('where some of an answer cannot be, the rest is taken and the sentence says what cannot', () => {
    const conversation = new Conversation().agreed();
    conversation.say('today 3:30 pm to 3:10 pm');
    expect(conversation.last.replies[0]).toMatch(/before/);
    expect(fieldsOf(conversation)).toEqual(['times']);
  });

  test('a start alone is offered the length of the protocol', () => {
    const conversation = new Conversation().agreed();
    conversation.say('today 10:40');
    expect(conversation.last.offer).toEqual([{ start: '10:40', end: '10:55' }]);
    conversation.say('no, it ended at 10:52');
    expect(conversation.thread.report?.fields['times']?.value).toEqual({ start: '10:40', end: '10:52' });
  });

  test('flowers that were not counted are asked plant by plant', () => {
    const conversation = new Conversation().agreed();
    conversation.all(...WATCH.slice(0, 4), 'bluebells and dandelion');
    expect(conversation.last.asking).toEqual({ fields: ['flowers'], plant: 'Mertensia virginica' });
    conversation.say('lots');
    expect(conversation.last.replies[0]).toMatch(/1,?000/);
    conversation.say('about 100');
    expect(conversation.last.asking).toEqual({ fields: ['flowers'], plant: 'Taraxacum officinale' });
    conversation.say('15');
    expect(fieldsOf(conversation)).toEqual(['tally']);
  });

  test('an unsure reading is taken only by a yes', () => {
    const conversation = new Conversation().agreed();
    conversation.all(...WATCH.slice(0, 2), '19, sunny, calm');
    expect(conversation.last.asking).toEqual({ fields: ['temperature'], plant: null });
    expect(conversation.last.offer).toEqual([{ celsius: 19 }]);
    conversation.say('yes');
    expect(conversation.thread.report?.fields['temperature']?.value).toEqual({ celsius: 19 });
  });

  test('the unit alone settles a doubtful temperature', () => {
    const conversation = new Conversation().agreed();
    conversation.all(...WATCH.slice(0, 2), '19, sunny, calm', 'celsius');
    expect(conversation.thread.report?.fields['temperature']?.value).toEqual({ celsius: 19 });
  });

  test('a skipped field is left out of the record as null', () => {
    const conversation = new Conversation().agreed();
    conversation.all(...WATCH.slice(0, 2), 'sunny and calm', 'no thermometer', 'skip', 'bluebells 40', 'none', 'yes');
    expect(conversation.watch).toMatchObject({ temperature: null, patch: null, sky: { cloud: 'clear' } });
  });

  test('what cannot be left out is asked again, kindly', () => {
    const conversation = new Conversation().agreed();
    conversation.say('skip');
    expect(conversation.last.replies[0]).toMatch(/rough answer/);
    expect(fieldsOf(conversation)).toEqual(['date', 'times']);
  });
});

describe('queens', () => {
  test('none means a zero for each plant', () => {
    const conversation = beforeQueens();
    conversation.say('none');
    expect(conversation.thread.report?.tally).toMatchObject([
      { plant: 'Mertensia virginica', count: 0 },
      { plant: 'Taraxacum officinale', count: 0 },
    ]);
    expect(fieldsOf(conversation)).toEqual(['confirm']);
  });

  test('a bare number is asked for its bees until they are all told', () => {
    const conversation = beforeQueens();
    conversation.say('3');
    expect(fieldsOf(conversation)).toEqual(['tally']);
    conversation.say('2 bimaculatus on the bluebells');
    expect(fieldsOf(conversation)).toEqual(['tally']);
    conversation.say('1 impatiens on the dandelion');
    expect(fieldsOf(conversation)).toEqual(['confirm']);
    conversation.say('yes');
    expect(conversation.watch).toMatchObject({
      total: 3,
      queens: [
        { count: 2, plant: 1 },
        { count: 1, plant: 2 },
      ],
    });
  });

  test.each(["can't tell", 'not sure', 'no idea'])('"%s" is the answer for all that are left', (typed) => {
    const conversation = new Conversation().agreed();
    conversation.all(...WATCH.slice(0, 4), 'phlox 40', '3', '1 impatiens', typed, 'yes');
    expect(conversation.watch.queens.map(({ bee, count }) => [bee, count])).toEqual([
      ['Bombus impatiens', 1],
      ['Bombus', 2],
    ]);
  });

  test.each(["that's all", 'none'])('"%s" names none of the queens that were told', (typed) => {
    const conversation = new Conversation().agreed();
    conversation.all(...WATCH.slice(0, 4), 'phlox 40', '3', typed);
    expect(conversation.last.asking).toEqual({ fields: ['tally'], plant: null });
    expect(conversation.last.replies[0]).not.toContain('none.');
    conversation.all('all impatiens', 'yes');
    expect(conversation.watch.total).toBe(3);
  });

  test.each([
    ['impatiens', false],
    ['all impatiens', false],
    ['maybe impatiens', true],
    ['they were all impatiens', false],
  ])('"%s" without a number is what all of them were', (typed, doubt) => {
    const conversation = new Conversation().agreed();
    conversation.all(...WATCH.slice(0, 4), 'phlox 40', '3', typed, 'yes');
    expect(conversation.watch.queens).toMatchObject([{ bee: 'Bombus impatiens', count: 3, doubt }]);
  });

  test('a plant that was not named is asked about', () => {
    const conversation = beforeQueens();
    conversation.say('2 bimaculatus on the bluebells');
    expect(conversation.last.asking).toEqual({ fields: ['tally'], plant: 'Taraxacum officinale' });
    conversation.say('1 impatiens');
    expect(fieldsOf(conversation)).toEqual(['confirm']);
    conversation.say('yes');
    expect(conversation.watch.queens).toMatchObject([
      { bee: 'Bombus bimaculatus', plant: 1 },
      { bee: 'Bombus impatiens', plant: 2 },
    ]);
  });

  test.each(['none', 'no', 'that is all', 'nothing there', '0', 'nope'])(
    '"%s" settles the plants that were not named',
    (text) => {
      const conversation = beforeQueens();
      conversation.all('2 bimaculatus on the bluebells', text);
      expect(fieldsOf(conversation)).toEqual(['confirm']);
      expect(conversation.thread.report?.tally?.filter(({ count }) => count > 0)).toHaveLength(1);
    },
  );

  test('a plant that a line leaves out is asked for', () => {
    const conversation = beforeQueens();
    conversation.say('2 bimaculatus');
    expect(fieldsOf(conversation)).toEqual(['tally']);
    conversation.say('the bluebells');
    expect(conversation.thread.report?.tally).toMatchObject([
      { bee: 'Bombus bimaculatus', plant: 'Mertensia virginica', count: 2 },
    ]);
  });

  test('a queen seen on two plants is one queen', () => {
    const conversation = beforeQueens();
    conversation.all('1 bimaculatus on the bluebells, the same one on the dandelion', 'yes');
    expect(conversation.watch).toMatchObject({ total: 1, queens: [{ seenBefore: 0 }, { seenBefore: 1 }] });
  });
});

describe('answers beside the question', () => {
  test('"0" to where the queens were takes none of them away', () => {
    const conversation = beforeQueens();
    conversation.say('3 imp 1 bimac');
    conversation.all('0');
    expect(conversation.last.asking).toEqual({ fields: ['tally'], plant: null });
    conversation.all('all on the bluebells', 'none', 'yes');
    expect(conversation.watch.queens.map(({ count, plant }) => [count, plant])).toEqual([
      [3, 1],
      [1, 1],
    ]);
  });

  test('what is put right belongs to the answer before, not to the question that stands', () => {
    const conversation = new Conversation().agreed();
    conversation.all('today 2:10 to 2:25 pm', 'Otter Lane', 'no', '64 F, cloudy, calm');
    expect(conversation.say('actually make that 66').replies[0]).toContain('66 °F');
    expect(fieldsOf(conversation)).toEqual(['patch', 'habitat']);
  });

  test('a correction is no "no" to the garden question', () => {
    const conversation = new Conversation().agreed();
    conversation.all('today 2:10 to 2:25 pm', 'Otter Lane', 'actually it was 2:20 to 2:35 pm');
    expect(fieldsOf(conversation)).toEqual(['private']);
  });

  test('bees told where flowers are asked are not counted as flowers', () => {
    const conversation = new Conversation().agreed();
    conversation.all(...WATCH.slice(0, 4), 'lupines and hoary puccoon', '90');
    conversation.say('two American bumble bees came to the lupines');
    expect(conversation.last.asking).toEqual({ fields: ['flowers'], plant: 'Lithospermum canescens' });
    conversation.all('25', 'none', 'yes');
    expect(conversation.watch.plants.map(({ flowers }) => flowers.value)).toEqual([90, 25]);
    expect(conversation.watch.queens).toMatchObject([{ bee: 'Bombus pensylvanicus', count: 2, plant: 1 }]);
  });

  test.each(['8 x 4 feet, road verge', 'road verge, 8 x 4 feet'])('"%s" tells patch and habitat', (typed) => {
    const conversation = new Conversation().agreed();
    conversation.all(...WATCH.slice(0, 3), typed);
    expect(conversation.last.replies[0]).toContain('road verge');
    expect(fieldsOf(conversation)).toEqual(['plants']);
  });

  test.each(['Fen Boardwalk, by the second bench', 'by the canoe launch at Heron Bend Landing', 'Heron Bend'])(
    '"%s" is a site of the survey',
    (typed) => {
      const conversation = new Conversation().agreed();
      conversation.all('today 2:10 to 2:25 pm', typed);
      expect(fieldsOf(conversation)).toEqual(['temperature', 'sky', 'wind']);
    },
  );

  test.each(['kids need picking up. later', 'have to go, later', "got to go, I'll finish tomorrow", 'more later'])(
    '"%s" pauses',
    (typed) => {
      const conversation = beforeQueens();
      expect(conversation.say(typed).replies[0]).toMatch(/^Fine\. I keep what you told me/);
      expect(conversation.say("hi, I'm back").asking?.fields).toEqual(['tally']);
    },
  );

  test.each(['Three Oaks', 'maybe Three Oaks?'])('"%s" is offered as the place by its words', (typed) => {
    const conversation = new Conversation().agreed();
    conversation.all('today 2:10 to 2:25 pm', typed);
    expect(conversation.last.replies[0]).toMatch(/^Shall I take "Three Oaks" as the place\?/);
    expect(conversation.say('yes').asking?.fields).toEqual(['private']);
  });

  test('a photograph is welcome, and nobody is to catch a queen for it', () => {
    const conversation = beforeQueens();
    expect(conversation.say('should I send a photo?').replies[0]).toMatch(/^Yes please.*Never catch/);
    expect(fieldsOf(conversation)).toEqual(['tally']);
  });

  test('a name may come with what else there is to say', () => {
    const conversation = atSummary();
    conversation.all('yes', "It's Philippa, with one l and two p's");
    expect(conversation.person?.name).toBe('Philippa');
  });
});

describe('a live watch', () => {
  test('counts what each message adds, says little, and asks only for the rest', () => {
    const conversation = new Conversation(undefined, '2026-05-06T13:00').agreed();
    conversation.all('start', '1 imp on dandelion', 'same one on the bluebells', '+1', 'undo', '2 bimac');
    conversation.say('mumble mumble');
    expect(conversation.last.replies).toEqual(['Noted.']);
    conversation.say('pause');
    conversation.advance(300);
    conversation.say('go on');
    conversation.advance(599);
    expect(conversation.transcript.at(-2)).not.toMatch(/Five minutes left/);
    conversation.advance(1);
    expect(conversation.transcript.at(-1)).toBe('Five minutes left.');
    conversation.advance(300);
    expect(conversation.last.replies[0]).toMatch(/Time\. 15 minutes, 3 queens\.[^]*mumble/);
    conversation.say('skip');
    expect(fieldsOf(conversation)).toEqual(['place']);
    conversation.all('Fen Boardwalk', '71 F, sunny, calm', '3 m by 2 m');
    expect(conversation.last.replies[0]).toMatch(/other flowers/);
    conversation.all('wild geranium 20', '150', '40', 'none', 'yes');
    expect(conversation.watch).toMatchObject({
      times: { start: '13:00', end: '13:20' },
      minutes: 15,
      total: 3,
    });
    expect(conversation.watch.queens.map(({ count, seenBefore }) => [count, seenBefore])).toEqual([
      [1, 0],
      [1, 1],
      [2, 0],
    ]);
    expect(conversation.watch.plants).toHaveLength(3);
  });

  test('left paused it is asked about once, and stop ends it where it was paused', () => {
    const conversation = new Conversation(undefined, '2026-05-06T13:00').agreed();
    conversation.say('start');
    conversation.advance(360);
    conversation.say('pause');
    conversation.advance(3 * 3600);
    expect(conversation.transcript.filter((line) => /still paused/.test(line))).toHaveLength(1);
    conversation.say('stop');
    expect(conversation.thread.report).toMatchObject({
      liveMinutes: 6,
      fields: { times: { value: { start: '13:00', end: '13:06' } } },
    });
  });
});

describe('the summary', () => {
  test('has one numbered line a field, and only a yes stores', () => {
    const conversation = atSummary();
    const lines = conversation.last.replies[0]?.split('\n').filter((line) => /^\d+\. /.test(line));
    expect(lines?.map((line) => line.replace(/^\d+\. (.*?):.*/, '$1'))).toEqual([
      'Date',
      'Time',
      'Place',
      'Temperature',
      'Sky',
      'Wind',
      'Patch',
      'Habitat',
      'Flowers',
      'Queens',
    ]);
    conversation.say('hmm');
    expect(conversation.watches).toHaveLength(0);
    conversation.say('yes');
    expect(conversation.last.stored).toBe(1);
  });

  const corrections: [typed: string, path: string, value: unknown][] = [
    ['4 should be 75 F', 'temperature', { celsius: 23.9 }],
    ['4: 75', 'temperature', { celsius: 23.9 }],
    ['temp was 75', 'temperature', { celsius: 23.9 }],
    ['no, it was 75 F', 'temperature', { celsius: 23.9 }],
    ['change the temperature to 75', 'temperature', { celsius: 23.9 }],
    ['wind was calm', 'wind', { beaufort: 0 }],
    ['yes, but the wind was calm', 'wind', { beaufort: 0 }],
    ['it was yesterday', 'date', '2026-05-05'],
    ['time: 3 to 3:15 pm', 'times', { start: '15:00', end: '15:15' }],
    ['the habitat was a park', 'habitat', 'park'],
    ['note: a robin kept chasing them', 'remark', 'a robin kept chasing them'],
  ];
  test.each(corrections)('"%s" changes %s', (typed, field, value) => {
    const conversation = atSummary();
    conversation.say(typed);
    expect(fieldsOf(conversation)).toEqual(['confirm']);
    expect(conversation.thread.report?.fields[field]?.value).toEqual(value);
    conversation.say('yes');
    expect(conversation.watches).toHaveLength(1);
  });

  test('a field named alone is asked anew', () => {
    const conversation = atSummary();
    conversation.say('change wind');
    expect(fieldsOf(conversation)).toEqual(['wind']);
    conversation.say('calm');
    expect(fieldsOf(conversation)).toEqual(['confirm']);
    expect(conversation.thread.report?.fields['wind']?.value).toEqual({ beaufort: 0 });
  });

  test('plants and counts are corrected in plain words', () => {
    const conversation = atSummary();
    conversation.say('add wild geranium, about 40');
    expect(conversation.thread.report?.plants?.map(({ name }) => name)).toContain('Geranium maculatum');
    conversation.all('none', 'take out the dandelion');
    expect(conversation.thread.report?.plants?.map(({ name }) => name)).toEqual([
      'Mertensia virginica',
      'Geranium maculatum',
    ]);
    conversation.say('3 bimaculatus on the bluebells');
    conversation.say('yes');
    expect(conversation.watch).toMatchObject({ total: 3, queens: [{ count: 3, bee: 'Bombus bimaculatus' }] });
  });

  test('a bare number is not guessed at', () => {
    const conversation = atSummary();
    conversation.say('it was 75');
    expect(conversation.thread.report?.fields['temperature']?.value).toEqual({ celsius: 21.7 });
    expect(conversation.last.replies[0]).toMatch(/line/);
  });

  test('a no asks what to change', () => {
    const conversation = atSummary();
    conversation.say('no');
    expect(fieldsOf(conversation)).toEqual(['correct']);
    conversation.say('4 should be 75 F');
    expect(fieldsOf(conversation)).toEqual(['confirm']);
  });

  test('left without a yes it is asked about once, then kept unconfirmed for the coordinator', () => {
    const conversation = atSummary();
    conversation.advance(21 * 3600);
    expect(conversation.transcript.at(-1)).toMatch(/only needs your yes/);
    conversation.advance(21 * 3600);
    expect(conversation.watch).toMatchObject({ status: 'unconfirmed', number: 1 });
    conversation.say('yes');
    expect(conversation.watches).toHaveLength(1);
    expect(conversation.watch).toMatchObject({ status: 'confirmed', number: 1, statusReason: null });
  });
});

describe('at any time', () => {
  test('back asks the question before, with what is known', () => {
    const conversation = beforeQueens();
    conversation.say('back');
    expect(fieldsOf(conversation)).toEqual(['plants']);
    conversation.say('back');
    expect(fieldsOf(conversation)).toEqual(['patch', 'habitat']);
    conversation.say('6 by 4 feet');
    expect(fieldsOf(conversation)).toEqual(['tally']);
  });

  test('what have you got lists everything, and the question stays', () => {
    const conversation = new Conversation().agreed();
    conversation.all(...WATCH.slice(0, 2), 'what have you got');
    expect(conversation.last.replies[0]).toMatch(/Fen Boardwalk/);
    expect(fieldsOf(conversation)).toEqual(['temperature', 'sky', 'wind']);
  });

  test('help and example say what works here', () => {
    const conversation = new Conversation().agreed();
    expect(conversation.say('example').replies[0]).toMatch(/10:40/);
    expect(conversation.say('help').replies[0]).toMatch(/stings/);
    expect(fieldsOf(conversation)).toEqual(['date', 'times']);
  });

  test('pause keeps what was told, and days later it goes on', () => {
    const conversation = new Conversation().agreed();
    conversation.all(...WATCH.slice(0, 2), 'later');
    conversation.advance(3 * 86400);
    conversation.say('71 F, sunny, calm');
    expect(fieldsOf(conversation)).toEqual(['patch', 'habitat']);
  });

  test('throwing away takes a second yes', () => {
    const conversation = new Conversation().agreed();
    conversation.all(...WATCH.slice(0, 2), 'throw it away', 'no');
    expect(conversation.thread.report?.fields['place']).toBeDefined();
    conversation.all('throw it away', 'yes');
    expect(conversation.thread.report).toBeNull();
  });

  test('a new watch puts the open one aside, and go on brings it back', () => {
    const conversation = beforeQueens();
    conversation.all('new watch', ...WATCH, 'none', 'yes', 'Wren', 'skip');
    expect(conversation.watches).toHaveLength(1);
    conversation.say('go on');
    expect(fieldsOf(conversation)).toEqual(['tally']);
  });

  test('a practice watch is kept out of the count', () => {
    const conversation = beforeQueens();
    conversation.all('this is practice', 'none', 'yes');
    expect(conversation.watch.status).toBe('practice');
  });

  test('fix my last watch opens it again, and every change is kept', () => {
    const conversation = atSummary();
    conversation.all('yes', 'Wren', 'skip', 'fix my last watch', 'wind was calm', 'yes');
    expect(conversation.watches).toHaveLength(1);
    expect(conversation.watch).toMatchObject({ wind: { beaufort: 0 }, total: 2 });
    expect(conversation.watch.history).toMatchObject([{ path: '/wind', from: { beaufort: 2 }, to: { beaufort: 0 } }]);
  });

  test('an edited message is read again', () => {
    const conversation = new Conversation().agreed();
    conversation.all(...WATCH.slice(0, 2));
    conversation.say('71 F, sunny, calm', { id: 'weather' });
    conversation.say('75 F, sunny, calm', { id: 'weather-again', edits: 'weather' });
    expect(conversation.thread.report?.fields['temperature']?.value).toEqual({ celsius: 23.9 });
    expect(fieldsOf(conversation)).toEqual(['patch', 'habitat']);
  });

  test('a sent position fills the place with its accuracy', () => {
    const conversation = new Conversation().agreed();
    conversation.say('today 2:10 to 2:25 pm');
    conversation.send({ kind: 'place', latitude: 43.5122, longitude: -90.6403, uncertaintyMetres: 12 });
    expect(fieldsOf(conversation)).toEqual(['temperature', 'sky', 'wind']);
    expect(conversation.thread.report?.fields['place']?.value).toMatchObject({
      latitude: 43.5122,
      uncertaintyMetres: 12,
    });
  });

  test('a stale button changes nothing', () => {
    const conversation = beforeQueens();
    const report = conversation.thread.report;
    conversation.send({
      kind: 'pressed',
      report: report?.id ?? '',
      revision: (report?.revision ?? 0) - 1,
      words: 'none',
    });
    expect(conversation.thread.report?.tally).toBeNull();
    expect(conversation.last.replies[0]).toMatch(/earlier question/);
  });

  test('a photograph joins the report, and after it the watch of the day', () => {
    const photo = { kind: 'photo', sha256: 'a'.repeat(64), type: 'image/jpeg', takenAt: null } as const;
    const conversation = beforeQueens();
    conversation.send(photo);
    conversation.all('none', 'yes', 'skip', 'skip');
    expect(conversation.watch.photographs).toHaveLength(1);
    conversation.send({ ...photo, sha256: 'b'.repeat(64) });
    expect(fieldsOf(conversation)).toEqual(['photo']);
    conversation.say('yes');
    expect(conversation.watch.photographs).toHaveLength(2);
  });
});

describe('the manner of mail', () => {
  test('asks everything still open in one numbered list and takes numbered answers', () => {
    const conversation = new Conversation(undefined, '2026-05-06T18:30', 'all').agreed();
    expect(conversation.last.replies[0]).toMatch(/^1\. .*\n2\. /m);
    conversation.say(
      '1. today 2:10 to 2:25 pm\n2. Fen Boardwalk\n3. 71 F, sunny, calm\n4. 12 by 8 feet\n5. Virginia bluebells 120\n6. none',
    );
    expect(fieldsOf(conversation)).toEqual(['confirm']);
  });
});

test('where a check asks whether something is right, the summary does not ask the same again', () => {
  const conversation = new Conversation().agreed();
  conversation.all('today 2:10 to 2:40 pm', 'Fen Boardwalk', '71 F, sunny, calm', '12 by 8 feet, meadow');
  const { replies } = conversation.all('dandelion 15', 'none');
  const summary = replies.join('\n');
  expect(summary).toMatch(
    /That makes 30 minutes, and a watch here lasts 15\. Is that right\?\nYes stores it like this/,
  );
  expect(summary.match(/Is that right\?/g)).toHaveLength(1);
});

test('plants and queens told where a place was asked for are kept, and the place is still asked', () => {
  const conversation = new Conversation().agreed();
  conversation.all('today 2:10 to 2:25 pm', 'dandelion 20, redbud 400', '2 impatiens on the dandelion');
  expect(conversation.last.asking?.fields).toEqual(['place']);
  expect(conversation.thread.report?.plants?.map(({ name, flowers }) => [name, flowers?.value])).toEqual([
    ['Taraxacum officinale', 20],
    ['Cercis canadensis', 400],
  ]);
  expect(conversation.thread.report?.tally).toMatchObject([{ count: 2, bee: 'Bombus impatiens' }]);
});

test('a misspelled tally is no place', () => {
  const conversation = new Conversation().agreed();
  conversation.all('today 2:10 to 2:25 pm', '1 bimack on blubells');
  expect(conversation.last.asking?.fields).toEqual(['place']);
  expect(conversation.thread.report?.fields['place']).toBeUndefined();
  expect(conversation.thread.report?.tally).toMatchObject([{ count: 1, bee: 'Bombus bimaculatus' }]);
});

test('an answer that names no plant leaves a doubtful plant as it was told', () => {
  const conversation = new Conversation().agreed();
  conversation.all('today 2:10 to 2:25 pm', 'behind the old mill', 'no', '71 F, sunny, calm', '12 by 8 feet, meadow');
  conversation.all('bluebells 120 and 2 trout lily', 'fen bordwalk', 'the white one');
  expect(conversation.thread.report?.plants?.map(({ name, flowers }) => [name, flowers?.value])).toEqual([
    ['Mertensia virginica', 120],
    ['Erythronium albidum', 2],
  ]);
});
