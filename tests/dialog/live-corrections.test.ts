/** What is put right while the clock runs: never one queen more, and where it is not clear which is meant, a question. */
import { describe, expect, test } from 'vitest';
import { Conversation } from './converse.js';

const SHORT: Record<string, string> = {
  'Bombus impatiens': 'imp',
  'Bombus bimaculatus': 'bimac',
  'Bombus griseocollis': 'gris',
  'Mertensia virginica': 'bluebells',
  'Aquilegia canadensis': 'columbine',
  Phlox: 'phlox',
};

function watching(...told: readonly string[]): Conversation {
  const conversation = new Conversation().agreed();
  conversation.all('start', 'flowers: bluebells, columbine, phlox', ...told);
  return conversation;
}
const counted = ({ thread }: Conversation): string =>
  (thread.report?.tally ?? [])
    .map(
      ({ count, bee, plant, caste }) =>
        `${count} ${SHORT[bee ?? ''] ?? bee}${caste === 'worker' ? ' worker' : ''} ${SHORT[plant ?? ''] ?? plant}`,
    )
    .join(', ');

const IMP_BIMAC = ['imp on bluebells', 'bimac'];
const table: [told: readonly string[], typed: string, after: string][] = [
  // the last line told gets another name
  [IMP_BIMAC, 'no that was an imp', '2 imp bluebells'],
  [IMP_BIMAC, 'that was an imp', '2 imp bluebells'],
  [IMP_BIMAC, 'no, imp', '2 imp bluebells'],
  [IMP_BIMAC, 'imp not bimac', '2 imp bluebells'],
  [IMP_BIMAC, 'not a bimac, an imp', '2 imp bluebells'],
  [IMP_BIMAC, 'sorry, I meant gris', '1 imp bluebells, 1 gris bluebells'],
  [IMP_BIMAC, 'oops wrong bee, gris', '1 imp bluebells, 1 gris bluebells'],
  [IMP_BIMAC, 'change last to gris', '1 imp bluebells, 1 gris bluebells'],
  [['2 imp on bluebells'], 'no, those were bimacs', '2 bimac bluebells'],
  // or is a worker
  [IMP_BIMAC, 'actually that was a worker', '1 imp bluebells, 1 bimac worker bluebells'],
  // another number
  [['imp on bluebells'], 'sorry, 2 imp not 1', '2 imp bluebells'],
  [['2 imp on bluebells'], 'oops not 2, 1 imp', '1 imp bluebells'],
  [['2 imp on bluebells'], 'make that 3', '3 imp bluebells'],
  [['2 imp on bluebells'], 'I mean one imp', '1 imp bluebells'],
  [IMP_BIMAC, 'sorry, 2 imp', '2 imp bluebells, 1 bimac bluebells'],
  [IMP_BIMAC, 'sorry, 2 imp not 1', '2 imp bluebells, 1 bimac bluebells'],
  // another plant
  [['imp on bluebells'], 'oops wrong plant, columbine', '1 imp columbine'],
  [['imp on bluebells'], 'no, on the columbine', '1 imp columbine'],
  [['imp on bluebells'], 'sorry, that was on columbine', '1 imp columbine'],
  [['imp on bluebells'], 'columbine, not bluebells', '1 imp columbine'],
  [['2 imp and a bimac on bluebells'], 'oops, columbine', '2 imp columbine, 1 bimac columbine'],
  [['imp on bluebells', 'bimac on phlox'], 'sorry, the imp was on columbine', '1 imp columbine, 1 bimac phlox'],
  // taken out
  [IMP_BIMAC, 'remove the imp', '1 bimac bluebells'],
  [IMP_BIMAC, 'take out the bimac', '1 imp bluebells'],
  // what comes besides is no correction
  [IMP_BIMAC, 'oops, forgot an imp on phlox', '1 imp bluebells, 1 bimac bluebells, 1 imp phlox'],
  [IMP_BIMAC, 'wait, another imp', '2 imp bluebells, 1 bimac bluebells'],
  [IMP_BIMAC, 'sorry, also 2 gris', '1 imp bluebells, 1 bimac bluebells, 2 gris bluebells'],
  [IMP_BIMAC, '2 gris on phlox, not on columbine', '1 imp bluebells, 1 bimac bluebells, 2 gris phlox'],
  [[], 'sorry, imp on phlox', '1 imp phlox'],
];

test.each(table)('after %j, "%s": %s', (told, typed, after) => {
  const conversation = watching(...told);
  conversation.say(typed);
  expect(counted(conversation)).toBe(after);
});

describe('where it is not clear which is meant', () => {
  const unclear: [told: readonly string[], typed: string][] = [
    [['imp on bluebells', 'bimac on columbine'], 'no, gris on phlox'],
    [['2 imp on bluebells', '2 imp on phlox', 'bimac'], 'sorry, 1 imp'],
    [['2 imp and a bimac on bluebells'], 'make that 3'],
    [['imp on bluebells', 'imp on phlox', 'bimac on columbine'], 'take out the imp'],
    [['imp on bluebells'], 'no, bimac or gris'],
  ];
  test.each(unclear)('after %j, "%s" changes nothing, says so, and is asked about once time is up', (told, typed) => {
    const conversation = watching(...told);
    const before = counted(conversation);
    expect(conversation.say(typed).replies.join()).toMatch(/not sure which .* changed nothing/);
    expect(counted(conversation)).toBe(before);
    expect(conversation.say('stop').replies.join('\n')).toContain(`“${typed}”`);
  });
});

test('what was put right is said, silently, and "undo" takes it back alone', () => {
  const conversation = watching('2 imp on bluebells', 'bimac on phlox');
  conversation.say('no that was an imp');
  expect(conversation.last.replies).toEqual(['Put right: 1 common eastern (B. impatiens) on phlox (3)']);
  expect(conversation.sent[0]).toMatchObject({ silent: true });
  conversation.say('undo');
  expect(counted(conversation)).toBe('2 imp bluebells, 1 bimac phlox');
  conversation.say('undo');
  expect(counted(conversation)).toBe('2 imp bluebells');
});

test('one after the other, the queens never become more', () => {
  const conversation = watching('imp on bluebells', 'bimac');
  conversation.all('no that was an imp', 'actually that was a worker', 'oops wrong plant, columbine');
  expect(counted(conversation)).toBe('1 imp bluebells, 1 imp worker columbine');
  conversation.all('imp on phlox', 'sorry, 2 imp not 1', 'oops not 2, 1 imp');
  expect(counted(conversation)).toBe('1 imp bluebells, 1 imp worker columbine, 1 imp phlox');
});

test('times told after a live watch are its times, whatever the clock says', () => {
  const conversation = new Conversation().agreed();
  conversation.all('start', '1 imp on dandelion', 'stop', '4:00 to 4:15 pm today', 'Heron Bend', '66 F, sunny, calm');
  conversation.all('5 by 5 ft, lawn', 'dandelion 200');
  expect(conversation.last.replies.join('\n')).not.toMatch(/0 minutes/);
  conversation.say('yes');
  expect(conversation.watch).toMatchObject({ times: { start: '16:00', end: '16:15' }, minutes: 15 });
});
