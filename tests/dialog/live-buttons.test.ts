/** While the clock runs, one press counts a queen: which buttons there are, what they count, and which are stale. */
import { describe, expect, test } from 'vitest';
import type { Watch } from '../../shared/record.js';
import { labelOf } from '../../src/answers/index.js';
import { usualBees } from '../../src/dialog/live/buttons.js';
import { plantWatched, queensRow, watch } from '../a-watch.js';
import { demo, survey } from '../demo-survey.js';
import { Conversation } from './converse.js';

/** Somebody who has told such watches before, the newest last. */
function observer(...watches: readonly Watch[]): Conversation {
  const conversation = new Conversation().agreed();
  conversation.watches.push(...watches);
  return conversation;
}
const seen = (...bees: readonly string[]): Watch =>
  watch({
    plants: [plantWatched(1, 'Mertensia virginica', 80)],
    queens: bees.map((bee, at) => ({ ...queensRow(1, bee, 1), row: at + 1 })),
  });
const choices = ({ sent }: Conversation): readonly string[] => sent.at(-1)?.choices ?? [];
const tally = ({ thread }: Conversation) =>
  (thread.report?.tally ?? []).map(({ bee, plant, count, seenBefore }) => [bee, plant, count, seenBefore]);

const IMPATIENS = 'Bombus impatiens';
const BIMACULATUS = 'Bombus bimaculatus';
const GRISEOCOLLIS = 'Bombus griseocollis';

describe('which buttons there are', () => {
  test('of who never named a bee: only the clock, and an invitation to name the flowers, once', () => {
    const conversation = observer();
    conversation.say('start');
    expect(choices(conversation)).toEqual(['pause']);
    expect(conversation.last.replies[0]?.split('\n')[1]).toBe(
      'If you like, name the flowers in front of you first: “bluebells, phlox”.',
    );
    conversation.say('mumble mumble');
    expect(conversation.last.replies).toEqual(['Noted.']);
  });

  test('where the plants are known already they are not asked for', () => {
    const conversation = observer(seen(IMPATIENS));
    conversation.all('bluebells 40, phlox 20', 'start');
    expect(conversation.last.replies[0]).not.toContain('name the flowers');
    expect(choices(conversation)).toEqual(['common eastern on Virginia bluebells', 'common eastern on phlox', 'pause']);
  });

  test('bees named before, the most usual first, on the plants named so far, and never more than eight in all', () => {
    const bees = [IMPATIENS, BIMACULATUS, GRISEOCOLLIS, 'Bombus fervidus'];
    const conversation = observer(seen(...bees), seen(BIMACULATUS, IMPATIENS), seen(BIMACULATUS));
    conversation.all('start', 'bluebells, phlox, dandelion');
    expect(conversation.last.replies).toEqual(['Flowers: Virginia bluebells, phlox, dandelion.']);
    expect(choices(conversation)).toEqual([
      'two-spotted on Virginia bluebells',
      'two-spotted on phlox',
      'common eastern on Virginia bluebells',
      'two-spotted on dandelion',
      'common eastern on phlox',
      'pause',
    ]);
    for (const text of ['yellow on dandelion', 'imp on dandelion', 'not sure on phlox', 'bimac on violet']) {
      conversation.say(text);
      expect(choices(conversation).length).toBeLessThanOrEqual(8);
    }
    expect(choices(conversation).slice(-3)).toEqual(['same one', 'undo', 'pause']);
  });

  test('those counted in this watch have one, and none moves away under a thumb', () => {
    const conversation = observer(seen(IMPATIENS, BIMACULATUS, GRISEOCOLLIS));
    conversation.all('start', 'bluebells, phlox', 'fervidus on phlox');
    const before = choices(conversation).slice(0, 5);
    expect(before).toContain('yellow on phlox');
    for (const words of [...before].reverse()) {
      conversation.press(words);
      expect(choices(conversation).slice(0, 5)).toEqual(before);
    }
  });

  test('the clock stopped, only what starts or ends it', () => {
    const conversation = observer(seen(IMPATIENS));
    conversation.all('start', 'bluebells, phlox');
    conversation.press('pause');
    expect(choices(conversation)).toEqual(['go on', 'stop']);
    conversation.press('go on');
    expect(conversation.last.replies).toEqual(['The clock runs.']);
    expect(choices(conversation)).toContain('common eastern on phlox');
    conversation.press('pause');
    conversation.advance(3 * 3600);
    expect(conversation.last.replies[0]).toMatch(/still paused/);
    conversation.press('stop');
    expect(conversation.thread.report?.live).toBeNull();
  });

  test('none when five minutes are left: those of the last acknowledgement are right above', () => {
    const conversation = observer(seen(IMPATIENS));
    conversation.all('start', 'bluebells, phlox');
    conversation.advance(600);
    expect(conversation.last.replies).toEqual(['Five minutes left.']);
    expect(choices(conversation)).toEqual([]);
  });

  test('a bee that was only seen as workers is no queen to expect', () => {
    const workers = seen(IMPATIENS);
    expect(usualBees([{ ...workers, queens: workers.queens.map((row) => ({ ...row, caste: 'worker' })) }])).toEqual([]);
  });
});

describe('what they count', () => {
  test('as if typed: each press adds one, and the acknowledgement takes the place of the last, without a sound', () => {
    const pressed = observer(seen(IMPATIENS));
    pressed.all('start', 'bluebells, phlox');
    pressed.press('common eastern on phlox');
    expect(pressed.sent).toMatchObject([
      { text: '1 common eastern (B. impatiens) on phlox (1)', silent: true, slot: `live:${pressed.thread.report?.id}` },
    ]);
    pressed.press('common eastern on phlox');
    const typed = observer(seen(IMPATIENS));
    typed.all('start', 'bluebells, phlox', '1 imp on phlox', 'common eastern on phlox');
    expect(tally(pressed)).toEqual([[IMPATIENS, 'Phlox', 2, 0]]);
    expect(tally(typed)).toEqual(tally(pressed));
    expect(typed.last.replies).toEqual(pressed.last.replies);
  });

  test('each bee of the list by its own words, also those that are plain words: “yellow”, “confusing”', () => {
    const words = survey.names.bees.map(({ name }) => labelOf(name, demo).replace(/ bumble ?bee$/i, ''));
    expect(new Set(words.map((word) => word.toLowerCase())).size).toBe(words.length);
    for (const { name } of survey.names.bees.filter(({ regions }) => regions.includes('central'))) {
      const conversation = observer(seen(name));
      conversation.all('start', 'dandelion');
      conversation.press(choices(conversation)[0]!);
      expect(tally(conversation)).toEqual([[name, 'Taraxacum officinale', 1, 0]]);
    }
  });

  test('a queen of an unknown kind', () => {
    const conversation = observer(seen('Bombus'));
    conversation.all('start', 'dandelion');
    conversation.press('not sure on dandelion');
    expect(tally(conversation)).toEqual([['Bombus', 'Taraxacum officinale', 1, 0]]);
    conversation.say('not sure on dandelion');
    expect(tally(conversation)).toEqual([['Bombus', 'Taraxacum officinale', 2, 0]]);
  });

  test('two plants that people call the same have each its own', () => {
    const [one, other] = survey.names.plants.filter(({ name }) => labelOf(name, demo) === 'spring beauty');
    const conversation = observer(seen(IMPATIENS));
    conversation.all('start', `${one!.name}, ${other!.name}`);
    for (const words of choices(conversation).slice(0, 2)) conversation.press(words);
    expect(new Set(tally(conversation).map(([, plant]) => plant))).toEqual(new Set([one!.name, other!.name]));
  });

  test('“same one” with one other plant counts her there', () => {
    const conversation = observer(seen(IMPATIENS));
    conversation.all('start', 'bluebells, phlox');
    conversation.press('common eastern on phlox');
    conversation.press('same one on Virginia bluebells');
    expect(tally(conversation)).toEqual([
      [IMPATIENS, 'Phlox', 1, 0],
      [IMPATIENS, 'Mertensia virginica', 1, 1],
    ]);
    expect(conversation.last.replies).toEqual([
      '1 common eastern (B. impatiens) on Virginia bluebells (one counted before) (1)',
    ]);
  });

  test.each(['same one on dandelion', 'dandelion', 'on the dandelion', 'dandelions'])(
    '“same one” with more plants asks where she is, and “%s” says it',
    (where) => {
      const conversation = observer(seen(IMPATIENS));
      conversation.all('start', 'bluebells, phlox, dandelion');
      conversation.press('common eastern on phlox');
      conversation.press('same one');
      expect(conversation.sent).toMatchObject([
        { silent: true, text: expect.stringMatching(/^On which flowers/) as string },
      ]);
      expect(choices(conversation)).toEqual(['same one on Virginia bluebells', 'same one on dandelion', 'undo']);
      if (where.startsWith('same')) conversation.press(where);
      else conversation.say(where);
      expect(tally(conversation)).toEqual([
        [IMPATIENS, 'Phlox', 1, 0],
        [IMPATIENS, 'Taraxacum officinale', 1, 1],
      ]);
      expect(choices(conversation)).toContain('common eastern on phlox');
    },
  );

  test('“same one” that was not meant is taken back alone, and another queen ends the question', () => {
    const conversation = observer(seen(IMPATIENS));
    conversation.all('start', 'bluebells, phlox, dandelion');
    conversation.press('common eastern on phlox');
    conversation.press('same one');
    conversation.press('undo');
    expect(tally(conversation)).toEqual([[IMPATIENS, 'Phlox', 1, 0]]);
    conversation.press('same one');
    conversation.say('2 bimac on dandelion');
    expect(tally(conversation).at(-1)).toEqual([BIMACULATUS, 'Taraxacum officinale', 2, 0]);
  });

  test('“undo” takes the last press away', () => {
    const conversation = observer(seen(IMPATIENS));
    conversation.all('start', 'bluebells, phlox');
    conversation.press('common eastern on phlox');
    conversation.press('common eastern on Virginia bluebells');
    conversation.press('undo');
    expect(tally(conversation)).toEqual([[IMPATIENS, 'Phlox', 1, 0]]);
    expect(conversation.last.replies).toEqual(['Undone (1).']);
  });

  test('a press while it is asked whether to throw the watch away counts, and the watch goes on', () => {
    const conversation = observer(seen(IMPATIENS));
    conversation.all('start', 'bluebells, phlox');
    const buttons = conversation.sent.at(-1);
    conversation.say('throw it away');
    conversation.press('common eastern on phlox', buttons);
    expect(tally(conversation)).toEqual([[IMPATIENS, 'Phlox', 1, 0]]);
  });
});

describe('a stale button', () => {
  const started = (): Conversation => {
    const conversation = observer(seen(IMPATIENS));
    conversation.all('start', 'bluebells, phlox');
    return conversation;
  };

  test('of a bee on a plant there is none while the clock runs: each press is one queen', () => {
    const conversation = started();
    const first = conversation.sent.at(-1);
    conversation.press('common eastern on phlox', first);
    conversation.press('common eastern on phlox', first);
    expect(tally(conversation)).toEqual([[IMPATIENS, 'Phlox', 2, 0]]);
  });

  test.each(['undo', 'same one on Virginia bluebells'])('“%s” is about what was counted right before it', (words) => {
    const conversation = started();
    conversation.press('common eastern on phlox');
    const before = conversation.sent.at(-1);
    conversation.press('common eastern on Virginia bluebells');
    const kept = tally(conversation);
    conversation.press(words, before);
    expect(tally(conversation)).toEqual(kept);
    expect(conversation.sent).toMatchObject([
      {
        text: 'That button was for an earlier moment, so I changed nothing (2).',
        silent: true,
        slot: `live:${conversation.thread.report?.id}`,
      },
    ]);
    expect(choices(conversation)).toContain('undo'); // the buttons of now
  });

  test('once the watch is over', () => {
    const conversation = started();
    const buttons = conversation.sent.at(-1);
    conversation.say('stop');
    const { report } = conversation.thread;
    conversation.press('common eastern on phlox', buttons);
    expect(conversation.thread.report).toEqual(report);
    expect(conversation.last.replies.join()).toMatch(/earlier question/);
  });

  test('of the question before the start', () => {
    const conversation = observer(seen(IMPATIENS));
    conversation.all('today 2:10 to 2:25', 'skip');
    conversation.say('throw it away');
    const no = conversation.sent.at(-1);
    conversation.press('yes');
    conversation.all('start', 'phlox');
    conversation.press('no', no);
    expect(conversation.last.replies).toEqual(['That button was for an earlier moment, so I changed nothing (0).']);
    expect(tally(conversation)).toEqual([]);
  });

  test('a photograph in between makes none of them stale', () => {
    const conversation = started();
    conversation.press('common eastern on phlox');
    const buttons = conversation.sent.at(-1);
    conversation.send({ kind: 'photo', sha256: 'a'.repeat(64), type: 'image/jpeg', takenAt: null });
    conversation.press('undo', buttons);
    expect(tally(conversation)).toEqual([]);
    expect(conversation.thread.report?.photographs).toHaveLength(1);
  });
});

describe('flowers named while the clock runs', () => {
  const table: [typed: string, plants: readonly string[], tally: unknown[]][] = [
    ['bluebells, phlox', ['Mertensia virginica', 'Phlox'], []],
    ['phlox', ['Phlox'], []],
    ['bluebells 40, phlox 20', ['Mertensia virginica', 'Phlox'], []],
    ['phlox 10', ['Phlox'], []],
    // nine of one bee are the most that one message counts; which bee is asked for once time is up
    ['phlox 9', [], []],
    ['2 on phlox', [], []],
    ['none on phlox', [], [[null, 'Phlox', 0, 0]]],
    ['1 imp on phlox', [], [[IMPATIENS, 'Phlox', 1, 0]]],
  ];
  test.each(table)('"%s" before any queen', (typed, plants, counted) => {
    const conversation = observer();
    conversation.all('start', typed);
    expect((conversation.thread.report?.plants ?? []).map(({ name }) => name)).toEqual(plants);
    expect(tally(conversation)).toEqual(counted);
  });

  const after: typeof table = [
    // open flowers are never counted as queens
    ['bluebells 40, phlox 20', ['Mertensia virginica', 'Phlox'], [[IMPATIENS, 'Taraxacum officinale', 1, 0]]],
    ['flowers: phlox', ['Phlox'], [[IMPATIENS, 'Taraxacum officinale', 1, 0]]],
    ['bluebells, phlox', ['Mertensia virginica', 'Phlox'], [[IMPATIENS, 'Taraxacum officinale', 1, 0]]],
    [
      '2 on phlox',
      [],
      [
        [IMPATIENS, 'Taraxacum officinale', 1, 0],
        [IMPATIENS, 'Phlox', 2, 0],
      ],
    ],
  ];
  test.each(after)('"%s" after one', (typed, plants, counted) => {
    const conversation = observer();
    conversation.all('start', '1 imp on dandelion', typed);
    expect((conversation.thread.report?.plants ?? []).map(({ name }) => name)).toEqual(plants);
    expect(tally(conversation)).toEqual(counted);
  });

  test('are part of the watch, with a zero where no queen came', () => {
    const conversation = observer();
    conversation.all('start', 'bluebells, phlox', '1 imp on phlox', 'stop', 'Fen Boardwalk', '71 F, sunny, calm');
    conversation.say('3 m by 2 m');
    expect(conversation.last.replies[0]).toMatch(/^Got it.*\nBesides Virginia bluebells and phlox, were other/);
    conversation.all('none', '40', '20', 'none', 'yes');
    expect(conversation.watch.plants.map(({ name, flowers }) => [name, flowers.value])).toEqual([
      ['Mertensia virginica', 40],
      ['Phlox', 20],
    ]);
    expect(conversation.watch.total).toBe(1);
  });
});

describe('“undo” takes away what was said last', () => {
  test('also where that was only noted: what was counted before it stays', () => {
    const conversation = observer();
    conversation.all('start', 'bluebells, dandelion', 'imp on bluebell', 'brown one with a stripe', 'a fat one');
    expect(conversation.last.replies).toEqual(['Noted.']);
    expect(choices(conversation)).toContain('undo');
    conversation.say('undo');
    expect(conversation.last.replies).toEqual(['“a fat one” is gone (1).']);
    conversation.say('oops');
    expect(conversation.last.replies).toEqual(['“brown one with a stripe” is gone (1).']);
    expect(conversation.thread.report?.live).toMatchObject({ unread: [], entries: [[{ bee: IMPATIENS }]] });
    conversation.say('undo');
    expect(conversation.last.replies).toEqual(['Undone (0).']);
    expect(conversation.say('undo').replies).toEqual(['Nothing to undo.']);
  });

  test('what was noted before something was counted stays, to be asked about', () => {
    const conversation = observer();
    conversation.all('start', 'bluebells, dandelion', 'a fat one', 'imp on bluebell', 'undo');
    expect(conversation.last.replies).toEqual(['Undone (0).']);
    expect(conversation.thread.report?.live).toMatchObject({ unread: ['a fat one'], entries: [] });
    expect(conversation.say('undo').replies).toEqual(['Nothing to undo.']);
  });
});

describe('more of what was said last', () => {
  const table: [said: string, counts: number | 'noted'][] = [
    ['+1', 1],
    ['+ 3', 3],
    ['one more', 1],
    ['Another one!', 1],
    ['and another', 1],
    ['2', 2],
    ['two more', 2],
    ['2 more of them', 2],
    ['three again', 3],
    // words about another bee are no number
    ['a fat one', 'noted'],
    ['brown one with a stripe', 'noted'],
  ];
  test.each(table)('"%s"', (said, counts) => {
    const conversation = observer();
    conversation.all('start', 'bluebells, dandelion', 'imp on bluebell', said);
    const more = counts === 'noted' ? 0 : counts;
    expect(tally(conversation)).toEqual([[IMPATIENS, 'Mertensia virginica', 1 + more, 0]]);
    expect(conversation.thread.report?.live?.unread).toEqual(counts === 'noted' ? [said] : []);
  });

  test('before anything was counted it is noted', () => {
    const conversation = observer();
    conversation.all('start', 'another one');
    expect(conversation.thread.report?.live).toMatchObject({ unread: ['another one'], entries: [] });
  });
});

test('asked what something noted was, a yes is no answer, and does not drop it', () => {
  const conversation = observer();
  conversation.all('start', 'bluebells, dandelion', 'imp on bluebell', 'brown one with a stripe', 'stop');
  const asked = /you wrote “brown one with a stripe”/;
  expect(conversation.last.replies.join()).toMatch(asked);
  conversation.say('yes');
  expect(conversation.last.replies.join()).toMatch(asked);
  conversation.say('2 on the dandelion, brown-belted');
  expect(conversation.last.replies.join()).not.toMatch(asked);
  expect(conversation.thread.report?.tally).toContainEqual(
    expect.objectContaining({ bee: GRISEOCOLLIS, count: 2 }) as unknown,
  );
});

test('who has told nothing yet finds a button that starts the clock, and nobody later', () => {
  const conversation = new Conversation();
  conversation.all('hello', 'yes');
  expect(choices(conversation)).toEqual(['start a watch now']);
  const beside = new Conversation();
  beside.all('hello', 'yes', 'Fen Boardwalk, 65 F, sunny, calm');
  expect(choices(beside)).toEqual([]);
  conversation.say('start a watch now');
  expect(conversation.thread.report?.live).not.toBeNull();
});
