/** What an update is read as, how long texts are cut, what stands on buttons, who is slowed. */
import type { Message as Sent, Update, UserFromGetMe } from 'grammy/types';
import { describe, expect, test } from 'vitest';
import type { Reply } from '../../shared/message.js';
import { keyboardOf, pressedOf } from '../../src/channels/telegram/buttons.js';
import { Floods } from '../../src/channels/telegram/floods.js';
import { pieces } from '../../src/channels/telegram/pieces.js';
import { readUpdate } from '../../src/channels/telegram/updates.js';

const me = { id: 99, is_bot: true, first_name: 'Queenpost', username: 'kestrel_fen_bot' } as UserFromGetMe;
const parts = { survey: 'kestrel-fen', me, now: '2026-05-06T23:30:00.000Z' };
const from = { id: 7, is_bot: false, first_name: 'Wren' };
const chat = { id: 7, type: 'private', first_name: 'Wren' };
const group = { id: -5, type: 'group', title: 'Fen walkers' };
const SENT = Date.parse('2026-05-06T23:29:50Z') / 1000;

const sent = (more: object): Sent => ({ message_id: 12, from, chat, date: SENT, ...more }) as unknown as Sent;
const message = (more: object): Update => ({ update_id: 1, message: sent(more) }) as Update;
const edited = (more: object): Update =>
  ({ update_id: 1, edited_message: sent({ edit_date: SENT + 5, ...more }) }) as Update;

describe('a private message is read as', () => {
  const position = { latitude: 43.5, longitude: -90.6 };
  const file = (more: object) => ({ file_id: 'f', file_unique_id: 'u', ...more });
  const table: [what: string, update: Update, read: object[]][] = [
    [
      'a text',
      message({ text: '2 imp' }),
      [{ id: 'message:7:12', what: { kind: 'text', text: '2 imp' }, edits: null }],
    ],
    ['the opening', message({ text: '/start' }), [{ what: { kind: 'opened' } }]],
    [
      'the opening by a link',
      message({ text: '/start kestrel-fen' }),
      [{ what: { kind: 'opened', survey: 'kestrel-fen' } }],
    ],
    ['a command', message({ text: '/so_far@kestrel_fen_bot' }), [{ what: { kind: 'text', text: 'so far' } }]],
    ['a slash of their own', message({ text: '/ 2 imp' }), [{ what: { kind: 'text', text: '/ 2 imp' } }]],
    [
      'a changed text',
      edited({ text: '3 imp' }),
      [
        {
          id: expect.stringMatching(`^edit:7:12:${SENT + 5}:[0-9a-f]{8}$`) as string,
          edits: 'message:7:12',
          what: { kind: 'text', text: '3 imp' },
        },
      ],
    ],
    ['a place that moves on', edited({ location: position }), []],
    [
      'a place with its accuracy',
      message({ location: { ...position, horizontal_accuracy: 8.5 } }),
      [{ id: 'message:7:12', what: { kind: 'place', ...position, uncertaintyMetres: 8.5 } }],
    ],
    [
      'a point on the map',
      message({ location: position }),
      [{ what: { kind: 'place', ...position, uncertaintyMetres: 30 } }],
    ],
    [
      'a venue with its title, and not its address',
      message({ location: position, venue: { location: position, title: ' Fen ', address: 'Mill Road 3' } }),
      [{ what: { kind: 'place', ...position, uncertaintyMetres: 30, words: 'Fen' } }],
    ],
    [
      'the largest of a picture’s sizes',
      message({ photo: [file({ file_id: 'small' }), file({ file_id: 'large', file_size: 5 })] }),
      [{ what: { fileId: 'large', name: 'photo', bytes: 5, compressed: true } }],
    ],
    [
      'a picture with words: the words first',
      message({ photo: [file({})], caption: 'her face' }),
      [
        { id: 'caption:7:12', what: { kind: 'text', text: 'her face' } },
        { id: 'message:7:12', what: { fileId: 'f' } },
      ],
    ],
    [
      'pictures sent together',
      message({ photo: [file({})], caption: 'her face', media_group_id: '77' }),
      [
        { id: 'caption:7:12', what: { kind: 'text', text: 'her face', caption: true }, album: '77' },
        { id: 'message:7:12', what: { fileId: 'f' }, album: '77' },
      ],
    ],
    [
      'changed words under a picture',
      edited({ photo: [file({})], caption: 'her back' }),
      [{ edits: 'caption:7:12', what: { kind: 'text', text: 'her back' } }],
    ],
    [
      'a photograph sent as a file',
      message({ document: file({ mime_type: 'image/heic', file_name: 'q.heic' }) }),
      [{ what: { fileId: 'f', name: 'q.heic' } }],
    ],
    [
      'a photograph by its name alone',
      message({ document: file({ file_name: 'Q.JPG' }) }),
      [{ what: { fileId: 'f', name: 'Q.JPG' } }],
    ],
    [
      'another file',
      message({ document: file({ mime_type: 'text/csv', file_name: 'a.csv' }) }),
      [{ what: { kind: 'file', name: 'a.csv', problem: null } }],
    ],
    ['a sticker', message({ sticker: file({}) }), [{ what: { kind: 'file', name: 'sticker', problem: null } }]],
    ['a voice message', message({ voice: file({}) }), [{ what: { kind: 'file', name: 'voice', problem: null } }]],
    [
      'a moving picture',
      message({ animation: file({}), document: file({ mime_type: 'image/gif' }) }),
      [{ what: { kind: 'file', name: 'animation', problem: null } }],
    ],
    ['nobody’s words', message({ pinned_message: sent({ text: 'old' }) }), []],
    ['an answer', message({ text: 'yes', reply_to_message: sent({ message_id: 3 }) }), [{ replyTo: 'message:7:3' }]],
    [
      'an answer to one of ours',
      message({ text: 'yes', reply_to_message: sent({ message_id: 3, from: me }) }),
      [{ replyTo: '3' }],
    ],
    ['a message of today', message({ text: 'hi' }), [{ at: '2026-05-06T23:29:50.000Z', proven: true, person: '7' }]],
    ['one of long ago', message({ text: 'hi', date: SENT - 9 * 86_400 }), [{ at: parts.now }]],
  ];
  test.each(table)('%s', (_what, update, read) => {
    expect(readUpdate(update, parts)).toMatchObject({ kind: 'private', chat: 7, messages: read });
  });
});

describe('in a group', () => {
  const mention = (text: string) => [
    { type: 'mention', offset: text.indexOf('@'), length: text.length - text.indexOf('@') },
  ];
  const table: [text: string, more: object, kind: string][] = [
    ['who saw queens today?', {}, 'nothing'],
    ['hello @kestrel_fen_bot', { entities: mention('hello @kestrel_fen_bot') }, 'group'],
    ['hello @Kestrel_Fen_Bot', { entities: mention('hello @Kestrel_Fen_Bot') }, 'group'],
    ['hello @another_bot', { entities: mention('hello @another_bot') }, 'nothing'],
    ['hello @kestrel_fen_bot', {}, 'nothing'], // in a quotation, say
    ['thanks', { reply_to_message: { from: me } }, 'group'],
    ['thanks', { reply_to_message: { from } }, 'nothing'],
    ['/start@kestrel_fen_bot', { entities: [{ type: 'bot_command', offset: 0, length: 22 }] }, 'group'],
    ['/start', { entities: [{ type: 'bot_command', offset: 0, length: 6 }] }, 'nothing'],
  ];
  test.each(table)('"%s" %j: %s', (text, more, kind) => {
    expect(readUpdate(message({ chat: group, text, ...more }), parts).kind).toBe(kind);
  });
  test('a changed message is not answered again', () => {
    const text = 'hello @kestrel_fen_bot';
    expect(readUpdate(edited({ chat: group, text, entities: mention(text) }), parts).kind).toBe('nothing');
  });
});

const reply = (choices: string[], more: Partial<Reply> = {}): Reply => ({
  text: 'How was the sky?',
  choices,
  silent: false,
  report: '0190a3b2-0000-7000-8000-000000000007',
  revision: 123456,
  ...more,
});

describe('buttons', () => {
  const rows: [choices: string[], rows: string[][]][] = [
    [['yes', 'change'], [['yes', 'change']]],
    [
      ['10', '30', '100', '300'],
      [['10', '30', '100'], ['300']],
    ],
    [
      ['clear', 'mostly sunny', 'overcast'],
      [['clear', 'mostly sunny'], ['overcast']],
    ],
    [
      ['no', 'Heron Bend Landing'],
      [['no'], ['Heron Bend Landing']],
    ],
  ];
  test.each(rows)('%j in rows', (choices, expected) => {
    const keyboard = keyboardOf(reply(choices));
    expect(keyboard?.inline_keyboard.map((row) => row.map(({ text }) => text))).toEqual(expected);
  });
  test('a long choice is shortened, its data are not', () => {
    const buttonOf = (words: string) => keyboardOf(reply([words]))?.inline_keyboard[0]?.[0];
    const long = buttonOf(`Aunt Morwenna’s meadow ${'far '.repeat(75)}away`);
    expect(long).toEqual({ ...buttonOf('short'), text: 'Aunt Morwenna’s meadow f…ar far far away' });
  });
  test('none where there is nothing to choose', () => expect(keyboardOf(reply([]))).toBeUndefined());

  const press = (data: string, markup: unknown) =>
    pressedOf({ id: '1', from, chat_instance: 'c', data, message: { ...sent({}), reply_markup: markup } } as never);
  test.each([[reply(['clear', 'overcast'])], [reply(['yes', 'no'], { report: null, revision: 0 })]])(
    'a press says the words that stand on the button',
    (shown) => {
      const keyboard = keyboardOf(shown);
      const data = keyboard?.inline_keyboard[0]?.map((button) =>
        'callback_data' in button ? button.callback_data : '',
      );
      for (const one of data ?? []) expect(Buffer.byteLength(one)).toBeLessThanOrEqual(64);
      const { report, revision, choices } = shown;
      expect(press(data?.[1] ?? '', keyboard)).toEqual({
        kind: 'pressed',
        report: report ?? '',
        revision,
        words: choices[1],
      });
    },
  );
  test('a message of long ago has lost its buttons: no words', () => {
    expect(press('r:1:0', undefined)).toEqual({ kind: 'pressed', report: 'r', revision: 1, words: '' });
  });
  test.each(['', 'yes', 'a:b:c', 'a:1'])('"%s" is no button of ours', (data) => {
    expect(press(data, undefined)).toBeNull();
  });
});

describe('a long text is cut', () => {
  const table: [what: string, text: string, most: number, cut: string[]][] = [
    ['not at all where it fits', 'one two', 7, ['one two']],
    ['at a line end', 'one two\nthree four', 12, ['one two', 'three four']],
    ['after a sentence', 'One two. Three four.', 14, ['One two.', 'Three four.']],
    ['after a sentence in quotes', '“One two.” Three four.', 14, ['“One two.”', 'Three four.']],
    ['between words', 'one two three', 9, ['one two', 'three']],
    ['anywhere, where it is one word', 'abcdefgh', 3, ['abc', 'def', 'gh']],
    ['never inside a letter', 'a🐝🐝🐝', 4, ['a🐝', '🐝🐝']],
    ['not far too early', 'a\nbcd efg hij', 9, ['a\nbcd efg', 'hij']],
    ['into nothing where it is nothing', ' \n ', 9, []],
  ];
  test.each(table)('%s', (_what, text, most, cut) => {
    expect(pieces(text, most)).toEqual(cut);
  });
  test('at 4,096 and not before', () => {
    const lines = Array.from({ length: 400 }, (_, at) => `${at + 1}. ${'queen '.repeat(4)}`.trim());
    expect(pieces('x'.repeat(4096))).toHaveLength(1);
    expect(pieces('x'.repeat(4097))).toHaveLength(2);
    expect(pieces(lines.join('\n')).join('\n')).toBe(lines.join('\n'));
    expect(Math.max(...pieces(lines.join('\n')).map((piece) => piece.length))).toBeLessThanOrEqual(4096);
  });
});

describe('floods', () => {
  const paces = (floods: Floods, person: string, times: readonly number[]) =>
    times.map((at) => floods.paceOf(person, at * 1000));
  const times = (count: number, from: number, every: number) =>
    Array.from({ length: count }, (_, index) => from + index * every);

  test('sixty at once are fine, the next is slowed with one notice, and nobody else is', () => {
    const floods = new Floods();
    expect(paces(floods, 'wren', times(60, 0, 0)).every((pace) => pace === 'fine')).toBe(true);
    expect(paces(floods, 'wren', times(3, 0, 0))).toEqual(['slowed-now', 'slowed', 'slowed']);
    expect(paces(floods, 'lark', [0])).toEqual(['fine']);
  });
  test('one a second is fine for ever', () => {
    expect(paces(new Floods(), 'wren', times(500, 0, 1)).every((pace) => pace === 'fine')).toBe(true);
  });
  test('a flood that goes on stays slowed without another notice, until a quiet minute', () => {
    const floods = new Floods();
    const all = paces(floods, 'wren', times(3000, 0, 0.1));
    expect(all.filter((pace) => pace === 'slowed-now')).toHaveLength(1);
    expect(all.slice(all.indexOf('slowed-now')).includes('fine')).toBe(false);
    expect(paces(floods, 'wren', [330, 361, 362])).toEqual(['slowed', 'fine', 'fine']);
  });
});
