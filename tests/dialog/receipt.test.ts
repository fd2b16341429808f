/** What receipts say, and when they are sent. */
import { expect, test } from 'vitest';
import { Conversation } from './converse.js';

const WATCH = ['today 2:10 to 2:25 pm', 'Otter Lane', 'no', '66 F, sunny, calm', '12 by 8 feet, meadow', 'phlox 40'];
const MAIL = 'wren@kestrelfen.example';

/** Has told a watch with these queens and stored it. */
function told(queens: string, ...before: string[]): Conversation {
  const conversation = new Conversation().agreed();
  conversation.all(...before, ...WATCH, queens, 'yes');
  return conversation;
}

test('the watch that was stored before the address was known has its receipt once it is', () => {
  const conversation = told('2 impatiens');
  expect(conversation.receipts).toEqual([]);
  conversation.all('Wren', MAIL);
  expect(conversation.receipts).toEqual([
    {
      to: MAIL,
      receipt: {
        locale: 'en-US',
        subject: 'Watch 1 (Wed, May 6) is stored: Kestrel Fen Spring Queen Survey',
        opening: ['Hello Wren,', 'Your watch is stored as watch 1. Thank you. This is what I understood:'],
        lines: [
          { label: 'Date', value: 'Wed, May 6' },
          { label: 'Time', value: '2:10 – 2:25 PM' },
          { label: 'Place', value: 'Otter Lane' },
          { label: 'Temperature', value: '66 °F' },
          { label: 'Sky', value: 'clear' },
          { label: 'Wind', value: 'calm' },
          { label: 'Patch', value: '12 × 8 ft' },
          { label: 'Habitat', value: 'meadow' },
          { label: 'Flowers', value: 'phlox, 40 flowers' },
          { label: 'Queens', value: '2 common eastern (B. impatiens) on phlox' },
        ],
        closing: [
          'Is something wrong? Write “fix watch 1” where you told me about it, then for example “temperature should be 68 F”. Or answer this mail, and Ines puts it right.',
          'This is your first watch of the season; the survey hopes for 3.',
          '2 queens in one watch! Thank you for keeping count so carefully.',
          'This mail is for you alone. Your name, your address and private places are never published.',
        ],
      },
    },
  ]);
});

test.each([
  ['of the first watch', []],
  ['at a new place', ['yesterday 1 to 1:15 pm', 'my garden', 'yes', ...WATCH.slice(3), '1 bimaculatus', 'yes']],
])('a receipt %s numbers its lines as a later summary does', (_which, further) => {
  const conversation = told('none');
  conversation.all('Wren', MAIL, ...further);
  const { receipt } = conversation.receipts.at(-1)!;
  const lines = receipt.lines.map(({ label, value }, at) => `${at + 1}. ${label}: ${value}`);
  const summary = conversation.say('fix my last watch').replies.join('\n');
  expect(summary).toContain(lines.join('\n'));
});

test('each further watch has a receipt of its own, with the progress it makes', () => {
  const conversation = told('none');
  conversation.all('Wren', MAIL);
  conversation.all('yesterday 1 to 1:15 pm', 'Otter Lane', '70 F, cloudy, calm', '12 by 8 feet, meadow');
  conversation.all('dandelion 20', '1 bimaculatus', 'yes');
  expect(conversation.receipts).toHaveLength(2);
  const [first, second] = conversation.receipts.map(({ receipt }) => receipt);
  expect(first?.closing[2]).toMatch(/without a queen tells the survey as much/);
  expect(second?.subject).toBe('Watch 2 (Tue, May 5) is stored: Kestrel Fen Spring Queen Survey');
  expect(second?.closing.slice(1, 3)).toEqual([
    'You have 2 watches this season; the survey hopes for 3.',
    'One queen seen, and written down with care: that is how a survey grows. Thank you for sitting still for her.',
  ]);
});

test('a corrected watch has a new receipt that says so', () => {
  const conversation = told('none');
  conversation.all('Wren', MAIL, 'fix my last watch', 'wind was a light breeze', 'yes');
  const { receipt } = conversation.receipts[1]!;
  expect(receipt.subject).toMatch(/^Watch 1 .* is corrected/);
  expect(receipt.opening[1]).toMatch(/^Watch 1 is corrected\./);
  expect(receipt.lines).toContainEqual({ label: 'Wind', value: 'light breeze' });
  expect(receipt.closing.join('\n')).toContain('This is your first watch of the season');
});

test('a practice watch is called one, and counts towards nothing', () => {
  const conversation = told('none', 'practice');
  conversation.all('Wren', MAIL);
  const { receipt } = conversation.receipts[0]!;
  expect(receipt.subject).toMatch(/^Practice watch 1/);
  expect(receipt.opening[1]).toBe('Your practice watch is stored as watch 1. It stays out of every count.');
  expect(receipt.closing.join('\n')).not.toContain('season; the survey hopes');
});

test('what the coordinator will look at is said', () => {
  const conversation = new Conversation().agreed();
  conversation.all(...WATCH.slice(0, -1), "Aunt Maud's ruffled mystery 12", 'none', 'yes', 'Wren', MAIL);
  expect(conversation.receipts[0]?.receipt.closing[0]).toBe(
    'One thing about it I could not settle by myself; Ines will look at it.',
  );
});

test('nobody is mailed who gave no address, and none about a summary left without a yes', () => {
  const declined = told('none');
  declined.all('Wren', 'skip', 'fix my last watch', 'wind was a light breeze', 'yes');
  expect(declined.receipts).toEqual([]);

  const conversation = told('none');
  conversation.all('Wren', MAIL, ...WATCH.slice(0, 2), '70 F, cloudy, calm', '12 by 8 feet, meadow', 'phlox 3', 'none');
  conversation.advance(60 * 3600);
  expect(conversation.watches.map(({ status }) => status)).toEqual(['confirmed', 'unconfirmed']);
  expect(conversation.receipts).toHaveLength(1);
});

test('somebody who gave no name is greeted without one', () => {
  const conversation = told('3 impatiens');
  conversation.all('skip', MAIL);
  expect(conversation.receipts[0]?.receipt.opening[0]).toBe('Hello,');
});
