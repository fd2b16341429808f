/** A tally of which one row is doubtful: only that is asked, and the answer settles that row and keeps all others. */
import { describe, expect, test } from 'vitest';
import { Conversation } from './converse.js';

const SHORT: Record<string, string> = {
  'Bombus bimaculatus': 'two-spotted',
  'Bombus impatiens': 'eastern',
  'Bombus auricomus': 'gold',
  'Bombus vagans': 'half-black',
  Bombus: '?',
  Lupinus: 'lupine',
  'Lithospermum canescens': 'puccoon',
  'Primula meadia': 'star',
};

/** Asked about a tally on lupine, hoary puccoon and shooting star. */
function asked(tally: string): Conversation {
  const conversation = new Conversation().agreed();
  conversation.all('Monday 2:10 to 2:25 pm', 'Fen Boardwalk', '64 F, cloudy, light breeze', '12 by 8 feet, meadow');
  conversation.all('lupine 120, hoary puccoon 35, shooting star 30', tally);
  return conversation;
}
const tallyOf = ({ thread }: Conversation): string =>
  (thread.report?.tally ?? [])
    .map(({ count, bee, plant }) => `${count} ${SHORT[bee ?? ''] ?? 'none'} ${SHORT[plant ?? ''] ?? '-'}`)
    .join(', ');

const RANGES = '3 or 4 two-spotted on the lupine, 1 or 2 black and gold on the puccoon';
const EITHER = 'one two-spotted on the lupine and one on the shooting star, either common eastern or two-spotted';
const UNKNOWN = '2 two-spotted on the lupine, 1 black and gold on the puccoon, 1 wibble on the shooting star';

describe('only what is doubtful is asked', () => {
  const table: [tally: string, question: string][] = [
    [RANGES, 'How many two-spotted (B. bimaculatus) on lupine: 3 or 4?'],
    [EITHER, 'on shooting star: common eastern (B. impatiens), two-spotted (B. bimaculatus) or can’t tell?'],
    ['1 two-spotted maybe 2 on the lupine', 'How many two-spotted (B. bimaculatus) on lupine: 1 or 2?'],
  ];
  test.each(table)('"%s"', (tally, question) => {
    expect(asked(tally).last.replies.join('\n')).toContain(question);
  });
});

describe('the answers', () => {
  const table: [tally: string, answers: string[], after: string][] = [
    [RANGES, ['3', '2'], '3 two-spotted lupine, 2 gold puccoon'],
    [RANGES, ['4', 'the first one'], '4 two-spotted lupine, 1 gold puccoon'],
    [RANGES, ['5', '1'], '5 two-spotted lupine, 1 gold puccoon'],
    [RANGES, ['3 two-spotted for sure, and 1 black and gold'], '3 two-spotted lupine, 1 gold puccoon'],
    [RANGES, ['3 two-spotted for sure'], ''], // the black and gold are asked about next
    [RANGES, ['yes'], ''],
    [EITHER, ["can't tell"], '1 two-spotted lupine, 1 ? star'],
    [EITHER, ['I cannot tell which'], '1 two-spotted lupine, 1 ? star'],
    [EITHER, ['common eastern I think'], '1 two-spotted lupine, 1 eastern star'],
    [EITHER, ['the eastern one'], '1 two-spotted lupine, 1 eastern star'],
    [EITHER, ['2'], '1 two-spotted lupine, 1 two-spotted star'],
    [EITHER, ['the third one'], '1 two-spotted lupine, 1 ? star'],
    [EITHER, ['yes'], ''],
    [EITHER, ['yes', 'yes', 'the first'], '1 two-spotted lupine, 1 eastern star'],
    [UNKNOWN, ['yes'], '2 two-spotted lupine, 1 gold puccoon, 1 ? star'],
    [RANGES, ['nothing on the shooting star', '3', '2'], '0 none star, 3 two-spotted lupine, 2 gold puccoon'],
    [
      RANGES,
      ['1 half-black on the shooting star', '4', '1'],
      '1 half-black star, 4 two-spotted lupine, 1 gold puccoon',
    ],
    [UNKNOWN, ['half-black'], '2 two-spotted lupine, 1 gold puccoon, 1 half-black star'],
    [
      '2 wibbles on the shooting star, 1 black and gold on the puccoon',
      ['half-black'],
      '2 half-black star, 1 gold puccoon',
    ],
    [UNKNOWN, ['no, 1 half-black on the star'], '2 two-spotted lupine, 1 gold puccoon, 1 half-black star'],
    [UNKNOWN, ['1 half-black on the shooting star'], '2 two-spotted lupine, 1 gold puccoon, 1 half-black star'],
    ['1 two-spotted maybe 2 on the lupine', ['2'], '2 two-spotted lupine'],
    [
      'a few two-spotted on the lupine, 1 black and gold on the puccoon',
      ['2 two-spotted'],
      '2 two-spotted lupine, 1 gold puccoon',
    ],
  ];
  test.each(table)('"%s", then %j: %s', (tally, answers, after) => {
    const conversation = asked(tally);
    conversation.all(...answers);
    expect(tallyOf(conversation), conversation.transcript.slice(-1)[0]).toBe(after);
  });
});

test('a long offer has a row a line', () => {
  expect(asked(UNKNOWN).last.replies.join('\n').split('\n')).toContain(
    '1 black and gold (B. auricomus) on hoary puccoon',
  );
});

test('of three queens told, more than three are named: that is asked about', () => {
  const conversation = new Conversation().agreed();
  conversation.all('today 2:10 to 2:25 pm', 'Fen Boardwalk', 'skip', 'skip', 'wild plum 40, dandelion 40', '3');
  conversation.say('3 impatiens on the plum, 1 bimac on the dandelions');
  expect(conversation.last.replies.join()).toMatch(/do not add up to the total/);
  expect(conversation.thread.report?.tally ?? []).toEqual([]);
  conversation.say('yes');
  expect(conversation.thread.report?.tally?.map(({ count }) => count)).toEqual([3, 1]);
});
