/** Buttons under a message: a reply's choices out, a press in. */
import type { Content, Reply } from '../../../shared/message.js';
import type { CallbackQuery, InlineKeyboardMarkup } from 'grammy/types';

/** How many buttons of that many letters stand in a row; a phone shows about thirty letters. */
const ROWS: readonly (readonly [letters: number, buttons: number])[] = [
  [9, 3],
  [16, 2],
];

/** A report's id is 36 letters, so that with revision and index the data stay below Telegram's 64 bytes. */
const dataOf = ({ report, revision }: Reply, index: number): string => `${report ?? ''}:${revision}:${index}`;
const DATA = /^(?<report>[^:]*):(?<revision>\d+):\d+$/;

/** Two or three in a row, long ones alone; undefined where there is nothing to choose. */
export function keyboardOf(reply: Reply): InlineKeyboardMarkup | undefined {
  if (reply.choices.length === 0) return undefined;
  const longest = Math.max(...reply.choices.map((words) => words.length));
  const inRow = ROWS.find(([letters]) => longest <= letters)?.[1] ?? 1;
  const buttons = reply.choices.map((words, index) => ({ text: words, callback_data: dataOf(reply, index) }));
  const rows = Array.from({ length: Math.ceil(buttons.length / inRow) }, (_, row) =>
    buttons.slice(row * inRow, (row + 1) * inRow),
  );
  return { inline_keyboard: rows };
}

/** What a press says; the words are the button's own, so that nothing need be remembered. Null for a foreign button. */
export function pressedOf({ data, message }: CallbackQuery): Content | null {
  const told = DATA.exec(data ?? '')?.groups;
  if (told === undefined) return null;
  // a message of long ago comes without its buttons: its words are then empty, and the question is asked again
  const rows = message !== undefined && 'reply_markup' in message ? (message.reply_markup?.inline_keyboard ?? []) : [];
  const words = rows.flat().find((button) => 'callback_data' in button && button.callback_data === data)?.text ?? '';
  return { kind: 'pressed', report: told['report'] ?? '', revision: Number(told['revision']), words };
}
