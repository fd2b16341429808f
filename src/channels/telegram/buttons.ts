/** Buttons under a message: a reply's choices out, a press in. */
import { buttonTexts } from '../../../shared/button-text.js';
import type { Content, Reply } from '../../../shared/message.js';
import type { CallbackQuery, InlineKeyboardMarkup } from 'grammy/types';

/** How many letters the longest may have of three and of two in a row; a phone shows about thirty letters. */
const LETTERS_BESIDE: readonly (readonly [buttons: number, letters: number])[] = [
  [3, 9],
  [2, 16],
];

/** How many of these stand in the first row. */
function inFirstRow(words: readonly string[]): number {
  const fit = ([buttons, letters]: readonly [number, number]): boolean =>
    words.length >= buttons && words.slice(0, buttons).every((word) => word.length <= letters);
  return LETTERS_BESIDE.find(fit)?.[0] ?? 1;
}

/** A report's id is 36 letters, so that with revision and index the data stay below Telegram's 64 bytes. */
const dataOf = ({ report, revision }: Reply, index: number): string => `${report ?? ''}:${revision}:${index}`;
const DATA = /^(?<report>[^:]*):(?<revision>\d+):\d+$/;

/** Two or three in a row, long ones alone; undefined where there is nothing to choose. */
export function keyboardOf(reply: Reply): InlineKeyboardMarkup | undefined {
  if (reply.choices.length === 0) return undefined;
  const buttons = buttonTexts(reply.choices).map((text, index) => ({ text, callback_data: dataOf(reply, index) }));
  const rows: (typeof buttons)[] = [];
  for (let left = buttons; left.length > 0; left = left.slice(rows.at(-1)!.length)) {
    rows.push(left.slice(0, inFirstRow(left.map(({ text }) => text))));
  }
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
