/** Reads an update of the Bot API: who said what, in messages of ours. */
import { createHash } from 'node:crypto';
import type { Message as Sent, Update, UserFromGetMe } from 'grammy/types';
import type { Content, Message } from '../../../shared/message.js';
import { sentAt } from '../../exchange/index.js';
import { TELEGRAM } from './api.js';
import { pressedOf } from './buttons.js';
import type { SentFile } from './fetching.js';

/** Kinds of updates that are asked for. */
export const WANTED_UPDATES = ['message', 'edited_message', 'callback_query'] as const;

/** How far a position may be off where the phone does not say, such as a point chosen on the map. In metres. */
const USUAL_ACCURACY_METRES = 30;

/** A message whose content may still have to be fetched. */
export type Heard = Omit<Message, 'what'> & { readonly what: Content | SentFile };

/** What an update comes to. */
export type Reading =
  | { readonly kind: 'private'; readonly chat: number; readonly messages: readonly Heard[] }
  /** In a group somebody spoke to the bot. */
  | { readonly kind: 'group'; readonly chat: number; readonly message: number }
  | { readonly kind: 'nothing' };

interface ReadingParts {
  readonly survey: string;
  readonly me: UserFromGetMe;
  /** The present moment, a UTC instant. */
  readonly now: string;
}

/** Contents that we cannot take, but answer; others (somebody pinned a message) are no words of anybody. */
const OTHER_KINDS = [
  'animation',
  'audio',
  'contact',
  'dice',
  'document',
  'game',
  'paid_media',
  'poll',
  'sticker',
  'story',
  'video',
  'video_note',
  'voice',
] as const satisfies readonly (keyof Sent)[];

/** "/start" opens, with the survey that the link t.me/BOT?start=SURVEY names; another command is its word. */
function textOf(text: string): Content {
  const command = /^\/(?<name>[A-Za-z]\w*)(?:@\w+)?(?<rest>\s[^]*)?$/.exec(text)?.groups;
  if (command === undefined) return { kind: 'text', text };
  if (command['name']?.toLowerCase() === 'start') {
    const named = (command['rest'] ?? '').trim();
    return named === '' ? { kind: 'opened' } : { kind: 'opened', survey: named };
  }
  return { kind: 'text', text: `${(command['name'] ?? '').replaceAll('_', ' ')}${command['rest'] ?? ''}` };
}

function fileOf(message: Sent): SentFile | null {
  const picture = message.photo?.at(-1);
  if (picture) return { fileId: picture.file_id, name: 'photo', bytes: picture.file_size, compressed: true };
  const file = message.animation === undefined ? message.document : undefined;
  // what the sender's program says of it decides only whether it is worth fetching; its bytes decide the rest
  const mayBePhotograph =
    /^image\//.test(file?.mime_type ?? '') || /\.(jpe?g|png|webp|hei[cf])$/i.test(file?.file_name ?? '');
  if (!file || !mayBePhotograph) return null;
  return { fileId: file.file_id, name: file.file_name ?? 'document', bytes: file.file_size };
}

function contentOf(message: Sent): Content | SentFile | null {
  if (message.text !== undefined) return textOf(message.text);
  const { location } = message; // a venue has one too
  if (location) {
    const { latitude, longitude, horizontal_accuracy: accuracy } = location;
    const uncertaintyMetres = accuracy !== undefined && accuracy > 0 ? accuracy : USUAL_ACCURACY_METRES;
    const title = message.venue?.title.trim() ?? '';
    return { kind: 'place', latitude, longitude, uncertaintyMetres, ...(title === '' ? {} : { words: title }) };
  }
  const file = fileOf(message);
  if (file) return file;
  const other = OTHER_KINDS.find((kind) => message[kind] !== undefined);
  return other === undefined ? null : { kind: 'file', name: message.document?.file_name ?? other, problem: null };
}

/**
 * Ids name the message within its chat, and not the update that brought it: an edit must find the message that it
 * changes, and a message that is delivered again may come in another update but has the same `message_id`.
 */
const idOf = (message: Sent): string => `message:${message.chat.id}:${message.message_id}`;
/** The words under a picture are a message of their own. */
const captionIdOf = (message: Sent): string => `caption:${message.chat.id}:${message.message_id}`;

const instantOf = (seconds: number): string => new Date(seconds * 1000).toISOString();

/** One of ours goes by what our sending gave of it, one of theirs by the id it came under. */
function repliedTo({ reply_to_message: earlier }: Sent, me: UserFromGetMe): string | null {
  if (earlier === undefined) return null;
  return earlier.from?.id === me.id ? String(earlier.message_id) : idOf(earlier);
}

function messageOf(message: Sent, id: string, what: Content | SentFile, { survey, me, now }: ReadingParts): Heard {
  return {
    survey,
    channel: TELEGRAM,
    person: String(message.chat.id),
    id,
    at: sentAt(instantOf(message.date), now),
    replyTo: repliedTo(message, me),
    edits: null,
    manner: 'one',
    proven: true,
    what,
    ...(message.media_group_id === undefined ? {} : { album: message.media_group_id }),
  };
}

function readMessage(message: Sent, parts: ReadingParts): Heard[] {
  const what = contentOf(message);
  const caption = message.caption ?? '';
  return [
    // first, so that what it tells makes the report that the picture joins
    ...(caption === ''
      ? []
      : [messageOf(message, captionIdOf(message), { kind: 'text', text: caption, caption: true }, parts)]),
    ...(what === null ? [] : [messageOf(message, idOf(message), what, parts)]),
  ];
}

/** `edit_date` is in seconds, and two changes can fall into one: their words tell them apart. */
function editIdOf({ chat, message_id, edit_date }: Sent, text: string): string {
  const words = createHash('sha256').update(text).digest('hex').slice(0, 8);
  return `edit:${chat.id}:${message_id}:${edit_date ?? 0}:${words}`;
}

/** Only words can be changed; a place that moves is a phone on its way home. */
function readEdited(message: Sent, parts: ReadingParts): Heard[] {
  const text = message.text ?? message.caption;
  if (text === undefined) return [];
  const edits = message.text === undefined ? captionIdOf(message) : idOf(message);
  return [{ ...messageOf(message, editIdOf(message, text), { kind: 'text', text }, parts), edits }];
}

/** Somebody mentioned the bot, answered it or gave it a command. */
function isAddressed(message: Sent, me: UserFromGetMe): boolean {
  if (message.reply_to_message?.from?.id === me.id) return true;
  const text = message.text ?? message.caption ?? '';
  const name = `@${me.username}`.toLowerCase();
  return (message.entities ?? message.caption_entities ?? []).some((entity) => {
    const words = text.slice(entity.offset, entity.offset + entity.length).toLowerCase();
    if (entity.type === 'text_mention') return entity.user.id === me.id;
    return (entity.type === 'mention' && words === name) || (entity.type === 'bot_command' && words.endsWith(name));
  });
}

/** Only private chats are conversed with: what is said in a group is for all of it to read. */
export function readUpdate(update: Update, parts: ReadingParts): Reading {
  const message = update.message ?? update.edited_message;
  if (message) {
    const { chat } = message;
    if (chat.type === 'private') {
      const messages = update.message ? readMessage(message, parts) : readEdited(message, parts);
      return { kind: 'private', chat: chat.id, messages };
    }
    const isSpokenTo = update.message !== undefined && isAddressed(message, parts.me);
    return isSpokenTo ? { kind: 'group', chat: chat.id, message: message.message_id } : { kind: 'nothing' };
  }
  const press = update.callback_query;
  if (press?.message?.chat.type !== 'private') return { kind: 'nothing' };
  const what = pressedOf(press);
  const chat = press.message.chat.id;
  const heard: Heard = {
    survey: parts.survey,
    channel: TELEGRAM,
    person: String(chat),
    id: `press:${press.id}`,
    at: parts.now,
    replyTo: null,
    edits: null,
    manner: 'one',
    proven: true,
    what: what ?? { kind: 'text', text: '' },
  };
  return { kind: 'private', chat, messages: what === null ? [] : [heard] };
}
