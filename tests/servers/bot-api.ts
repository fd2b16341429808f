/**
 * The Bot API on loopback, by hand after its published description (core.telegram.org/bots/api): what a bot can call
 * here answers as described there, and fails on order. It shows what we believe of Telegram, not what Telegram does.
 */
import { once } from 'node:events';
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { setTimeout as sleep } from 'node:timers/promises';
import type { Chat, InlineKeyboardMarkup, Message, Update, User } from 'grammy/types';

type Parameters = Record<string, unknown>;

/** What a call is answered with instead, or besides, where a test ordered it. */
export type Fault =
  | { readonly kind: '429'; readonly retryAfter: number }
  | { readonly kind: '403' }
  /** A proxy's page, or the API's own answer. */
  | { readonly kind: '502' | '500' }
  /** The connection is dropped before the call has any effect, or after it: the caller does not know which. */
  | { readonly kind: 'drop-before' | 'drop-after' }
  | { readonly kind: 'delay'; readonly milliseconds: number };

export interface Call {
  readonly method: string;
  readonly parameters: Parameters;
  /** Milliseconds since the server was started. */
  readonly at: number;
}

/** A message of a chat as its people see it. */
export interface Seen {
  readonly id: number;
  readonly fromBot: boolean;
  readonly text: string;
  readonly silent: boolean;
  readonly buttons: readonly (readonly string[])[];
  readonly edits: number;
}

interface Kept {
  message: Message;
  silent: boolean;
  edits: number;
}

interface StoredChat {
  readonly chat: Chat;
  readonly messages: Map<number, Kept>;
  blocked: boolean;
}

class Refusal extends Error {
  constructor(
    readonly code: number,
    readonly description: string,
    readonly parameters?: { readonly retry_after: number },
  ) {
    super(description);
  }
}

const bad = (what: string): Refusal => new Refusal(400, `Bad Request: ${what}`);
const BLOCKED = new Refusal(403, 'Forbidden: bot was blocked by the user');
const OTHER_POLL = 'Conflict: terminated by other getUpdates request; make sure that only one bot instance is running';
const LONGEST_TEXT = 4096;

const seconds = (): number => Math.floor(Date.now() / 1000);
const bodyOf = async (request: IncomingMessage): Promise<Buffer> => {
  const parts: Buffer[] = [];
  for await (const part of request as AsyncIterable<Buffer>) parts.push(part);
  return Buffer.concat(parts);
};

/** A file beside other parameters, as multipart/form-data; each letter of a value stands for a byte. */
function formIn(body: Buffer, boundary: string): Parameters {
  const parts = body
    .toString('latin1')
    .split(`--${boundary}`)
    .flatMap((part) => {
      const [head = '', ...rest] = part.split('\r\n\r\n');
      const name = /[; ]name="?(?<name>[^";\r\n]+)/i.exec(head)?.groups?.['name'];
      return name === undefined ? [] : [[name, rest.join('\r\n\r\n').replace(/\r\n$/, '')] as const];
    });
  return Object.fromEntries(parts);
}

/** grammY encodes calls without files as JSON. */
async function parametersOf(request: IncomingMessage, url: URL): Promise<Parameters> {
  const bytes = await bodyOf(request);
  const boundary = /^multipart\/form-data;.*boundary="?([^";]+)/.exec(request.headers['content-type'] ?? '')?.[1];
  if (boundary !== undefined) return formIn(bytes, boundary);
  const body = bytes.toString('utf8');
  const fromQuery: Parameters = Object.fromEntries(url.searchParams);
  return body === '' ? fromQuery : { ...fromQuery, ...(JSON.parse(body) as Parameters) };
}

const markupOf = (parameters: Parameters): InlineKeyboardMarkup | undefined => {
  const given = parameters['reply_markup'];
  return (typeof given === 'string' ? JSON.parse(given) : given) as InlineKeyboardMarkup | undefined;
};

/** A person in a private chat with the bot. */
export interface Person {
  readonly chat: number;
  say(text: string, more?: Partial<Message>): number;
  /** Anything else: `{ sticker: … }`, `{ location: … }`. */
  send(content: object): number;
  edit(message: number, text: string): void;
  photo(bytes: Buffer, caption?: string, more?: Partial<Message>): number;
  document(bytes: Buffer, name: string, mime: string, size?: number): number;
  /** Presses the button with these words under the newest message that has it, or under that message. */
  press(words: string, message?: number): void;
  block(): void;
  unblock(): void;
  deleteMessage(message: number): void;
}

export class BotApi {
  readonly #server = createServer((request, response) => void this.#answer(request, response));
  readonly #start = performance.now();
  readonly me: User & { username: string };
  readonly calls: Call[] = [];
  /** Files that the bot sent. */
  readonly documents: { readonly chat: number; readonly text: string; readonly bytes: Buffer }[] = [];
  /** Answers to presses, by their ids. */
  readonly pressesAnswered: string[] = [];
  webhook: { readonly url: string; readonly secret: string | undefined } | null = null;
  /** Told of each message of the bot, for measuring. */
  onSaid: (chat: number) => void = () => undefined;
  /** Status of each delivery to the webhook; 0 where the connection failed. */
  readonly deliveries: number[] = [];
  #updates: Update[] = [];
  #nextUpdate = 1000;
  #nextMessage = 1;
  #nextPress = 1;
  readonly #chats = new Map<number, StoredChat>();
  readonly #files = new Map<string, { readonly path: string; readonly bytes: Buffer }>();
  readonly #faults: { readonly method: string; readonly fault: Fault; times: number }[] = [];
  /** Ends the poll that waits now, if one does. */
  #waiting: ((why: 'news' | 'other-poll') => void) | null = null;
  readonly #presses = new Set<string>();
  readonly #watchers = new Set<() => void>();
  #pumping = false;
  #closed = false;

  constructor(
    readonly token = '123456:test-token',
    username = 'kestrel_fen_bot',
  ) {
    this.me = { id: 123456, is_bot: true, first_name: 'Kestrel Fen', username };
  }

  async listen(): Promise<this> {
    this.#server.listen(0, '127.0.0.1');
    await once(this.#server, 'listening');
    return this;
  }

  get url(): string {
    return `http://127.0.0.1:${(this.#server.address() as AddressInfo).port}`;
  }

  async close(): Promise<void> {
    this.#closed = true;
    this.#waiting?.('news');
    this.#server.closeAllConnections();
    this.#server.close();
    await once(this.#server, 'close');
  }

  /** The next `times` calls of the method fail in that way. */
  order(method: string, fault: Fault, times = 1): void {
    this.#faults.push({ method, fault, times });
  }

  /** Waits until it is so. Looked at after every call and update. */
  async until(isSo: () => boolean, what = 'what was waited for', patienceMilliseconds = 20_000): Promise<void> {
    const end = performance.now() + patienceMilliseconds;
    while (!isSo()) {
      if (performance.now() > end) throw new Error(`Waited too long for: ${what}`);
      await new Promise<void>((done) => {
        const timer = setTimeout(done, 250);
        this.#watchers.add(() => {
          clearTimeout(timer);
          done();
        });
      });
    }
  }

  #changed(): void {
    for (const look of this.#watchers) look();
    this.#watchers.clear();
  }

  /** Updates that the bot has not confirmed yet. */
  get pending(): number {
    return this.#updates.length;
  }

  /** Delivers an update, again or anew; the array order is the order of delivery. */
  push(content: Omit<Update, 'update_id'>, id = this.#nextUpdate++): number {
    this.#updates.push({ update_id: id, ...content });
    this.#waiting?.('news');
    void this.#pump();
    return id;
  }

  /** Makes several updates come in one answer. */
  async atOnce(work: () => void): Promise<void> {
    const waiting = this.#waiting;
    this.#waiting = null;
    work();
    waiting?.('news');
    await Promise.resolve();
  }

  /** What a reply to that message comes with. */
  replyTo(chat: number, id: number): Partial<Message> {
    const kept = this.#chats.get(chat)?.messages.get(id);
    return { reply_to_message: kept?.message as NonNullable<Message['reply_to_message']> };
  }

  seen(chat: number): Seen[] {
    return [...(this.#chats.get(chat)?.messages ?? [])].map(([id, { message, silent, edits }]) => ({
      id,
      fromBot: message.from?.is_bot === true,
      text: message.text ?? '',
      silent,
      buttons: (message.reply_markup?.inline_keyboard ?? []).map((row) => row.map(({ text }) => text)),
      edits,
    }));
  }

  /** Texts of the bot in a chat, oldest first. */
  said(chat: number): string[] {
    return this.seen(chat).flatMap(({ fromBot, text }) => (fromBot ? [text] : []));
  }

  person(id: number, name = `Person ${id}`): Person {
    const from: User = { id, is_bot: false, first_name: name };
    const chat: Chat.PrivateChat = { id, type: 'private', first_name: name };
    if (!this.#chats.has(id)) this.#chats.set(id, { chat, messages: new Map(), blocked: false });
    const stored = this.#chats.get(id)!;
    const sent = (content: object): number => {
      const message = { message_id: this.#nextMessage++, from, chat, date: seconds(), ...content } as Message;
      stored.messages.set(message.message_id, { message, silent: false, edits: 0 });
      this.push({ message } as Omit<Update, 'update_id'>);
      return message.message_id;
    };
    return {
      chat: id,
      say: (text, more = {}) => {
        const command = /^\/\S+/.exec(text)?.[0];
        const entities = command ? [{ type: 'bot_command', offset: 0, length: command.length }] : undefined;
        return sent({ text, ...(entities ? { entities } : {}), ...more });
      },
      send: sent,
      edit: (id, text) => {
        const kept = stored.messages.get(id)!;
        kept.message = { ...kept.message, text, edit_date: seconds() };
        kept.edits += 1;
        this.push({ edited_message: kept.message } as Omit<Update, 'update_id'>);
      },
      photo: (bytes, caption, more = {}) => {
        const large = this.#addFile(bytes, 'jpg');
        const small = this.#addFile(Buffer.from('thumbnail'), 'jpg');
        const photo = [
          { ...small, width: 90, height: 60 },
          { ...large, width: 1280, height: 853 },
        ];
        return sent({ photo, ...(caption === undefined ? {} : { caption }), ...more });
      },
      document: (bytes, name, mime, size = bytes.length) => {
        const file = { ...this.#addFile(bytes, 'bin'), file_size: size };
        return sent({ document: { ...file, file_name: name, mime_type: mime } });
      },
      press: (words, id) => {
        const all = [...stored.messages.values()].reverse();
        const buttonOf = ({ message }: Kept) =>
          message.reply_markup?.inline_keyboard.flat().find(({ text }) => text === words);
        const kept = id === undefined ? all.find((one) => buttonOf(one) !== undefined) : stored.messages.get(id);
        const button = kept && buttonOf(kept);
        if (!kept || !button || !('callback_data' in button)) throw new Error(`There is no button "${words}".`);
        const press = String(9000 + this.#nextPress++);
        this.#presses.add(press);
        const query = { id: press, from, chat_instance: 'c', message: kept.message, data: button.callback_data };
        this.push({ callback_query: query });
      },
      block: () => void (stored.blocked = true),
      unblock: () => void (stored.blocked = false),
      deleteMessage: (id) => void stored.messages.delete(id),
    };
  }

  /** Somebody writes in a group where the bot is. */
  sayInGroup(group: number, from: number, text: string, more: Partial<Message> = {}): number {
    const chat: Chat.GroupChat = { id: group, type: 'group', title: 'Fen walkers' };
    if (!this.#chats.has(group)) this.#chats.set(group, { chat, messages: new Map(), blocked: false });
    const mention = text.indexOf(`@${this.me.username}`);
    const entities =
      mention < 0 ? undefined : [{ type: 'mention', offset: mention, length: this.me.username.length + 1 }];
    const message = {
      message_id: this.#nextMessage++,
      from: { id: from, is_bot: false, first_name: `Person ${from}` },
      chat,
      date: seconds(),
      text,
      ...(entities ? { entities } : {}),
      ...more,
    } as Message;
    this.#chats.get(group)!.messages.set(message.message_id, { message, silent: false, edits: 0 });
    this.push({ message } as Omit<Update, 'update_id'>);
    return message.message_id;
  }

  #addFile(bytes: Buffer, ending: string) {
    const number = this.#files.size + 1;
    const file_id = `file-${number}`;
    this.#files.set(file_id, { path: `photos/file_${number}.${ending}`, bytes });
    return { file_id, file_unique_id: `unique-${number}`, file_size: bytes.length };
  }

  #fault(method: string): Fault | null {
    const at = this.#faults.findIndex((fault) => fault.method === method);
    const ordered = this.#faults[at];
    if (!ordered) return null;
    ordered.times -= 1;
    if (ordered.times === 0) this.#faults.splice(at, 1);
    return ordered.fault;
  }

  async #answer(request: IncomingMessage, response: ServerResponse): Promise<void> {
    const url = new URL(request.url ?? '/', this.url);
    const file = /^\/file\/bot([^/]+)\/(.+)$/.exec(url.pathname);
    if (file) return this.#download(file[1]!, file[2]!, response);
    const called = /^\/bot([^/]+)\/(\w+)$/.exec(url.pathname);
    const method = called?.[2] ?? '';
    try {
      const parameters = await parametersOf(request, url);
      if (!called) throw new Refusal(404, 'Not Found');
      if (called[1] !== this.token) throw new Refusal(401, 'Unauthorized');
      this.calls.push({ method, parameters, at: performance.now() - this.#start });
      const fault = this.#fault(method);
      if (fault?.kind === 'delay') await sleep(fault.milliseconds);
      if (fault?.kind === 'drop-before') return void request.socket.destroy();
      if (fault?.kind === '502') return void response.writeHead(502).end('<html>Bad Gateway</html>');
      if (fault?.kind === '500') throw new Refusal(500, 'Internal Server Error');
      if (fault?.kind === '403') throw BLOCKED;
      if (fault?.kind === '429') {
        const { retryAfter } = fault;
        throw new Refusal(429, `Too Many Requests: retry after ${retryAfter}`, { retry_after: retryAfter });
      }
      const result = await this.#call(method, parameters, request);
      if (fault?.kind === 'drop-after') return void request.socket.destroy();
      response.writeHead(200, { 'content-type': 'application/json' }).end(JSON.stringify({ ok: true, result }));
    } catch (error) {
      const refusal = error instanceof Refusal ? error : new Refusal(500, `Internal Server Error: ${String(error)}`);
      const { code, description, parameters } = refusal;
      const body = { ok: false, error_code: code, description, ...(parameters ? { parameters } : {}) };
      response.writeHead(code, { 'content-type': 'application/json' }).end(JSON.stringify(body));
    } finally {
      this.#changed();
    }
  }

  #download(token: string, path: string, response: ServerResponse): void {
    const fault = this.#fault('download');
    const file = [...this.#files.values()].find((one) => one.path === path);
    if (fault?.kind === '502' || fault?.kind === '500') return void response.writeHead(502).end();
    if (token !== this.token || !file) return void response.writeHead(404).end();
    response.writeHead(200, { 'content-type': 'application/octet-stream' }).end(file.bytes);
  }

  async #call(method: string, parameters: Parameters, request: IncomingMessage): Promise<unknown> {
    switch (method) {
      case 'getMe':
        return this.me;
      case 'getUpdates':
        return this.#getUpdates(parameters, request);
      case 'sendMessage':
        return this.#sendMessage(parameters);
      case 'sendDocument': {
        // the file's own part has a name that grammY chooses
        const file = Object.entries(parameters).find(([name]) => !['chat_id', 'document'].includes(name))?.[1];
        const bytes = Buffer.from(String(file), 'latin1');
        this.documents.push({ chat: this.#chatOf(parameters).chat.id, text: bytes.toString('utf8'), bytes });
        return this.#sendMessage({ ...parameters, text: '(a file)' });
      }
      case 'editMessageText':
        return this.#editMessageText(parameters);
      case 'answerCallbackQuery': {
        const id = String(parameters['callback_query_id']);
        if (!this.#presses.delete(id)) {
          throw bad('query is too old and response timeout expired or query ID is invalid');
        }
        this.pressesAnswered.push(id);
        return true;
      }
      case 'getFile': {
        const file = this.#files.get(String(parameters['file_id']));
        if (!file) throw bad('invalid file_id');
        return { file_id: parameters['file_id'], file_unique_id: 'unique', file_path: file.path };
      }
      case 'setWebhook': {
        const url = typeof parameters['url'] === 'string' ? parameters['url'] : '';
        this.webhook = url === '' ? null : { url, secret: parameters['secret_token'] as string | undefined };
        void this.#pump();
        return true;
      }
      case 'deleteWebhook':
        this.webhook = null;
        return true;
      default:
        throw new Refusal(404, 'Not Found: method not found');
    }
  }

  /** Updates from `offset` on; all before it are confirmed and gone. Waits up to `timeout` seconds for one. */
  async #getUpdates(parameters: Parameters, request: IncomingMessage): Promise<Update[]> {
    if (this.webhook) {
      const said = "can't use getUpdates method while webhook is active; use deleteWebhook to delete the webhook first";
      throw new Refusal(409, `Conflict: ${said}`);
    }
    this.#waiting?.('other-poll');
    const offset = Number(parameters['offset'] ?? 0);
    const limit = Number(parameters['limit'] ?? 100);
    if (offset > 0) this.#updates = this.#updates.filter(({ update_id }) => update_id >= offset);
    if (this.#updates.length === 0) {
      const why = await new Promise<string>((end) => {
        const timer = setTimeout(() => ended('timeout'), Number(parameters['timeout'] ?? 0) * 1000);
        const ended = (reason: 'timeout' | 'gone' | 'news' | 'other-poll'): void => {
          clearTimeout(timer);
          request.socket.off('close', gone);
          if (this.#waiting === ended) this.#waiting = null;
          end(reason);
        };
        this.#waiting = ended;
        const gone = (): void => ended('gone');
        request.socket.once('close', gone);
      });
      if (why === 'other-poll') throw new Refusal(409, OTHER_POLL);
    }
    return this.#updates.slice(0, limit);
  }

  #chatOf(parameters: Parameters): StoredChat {
    const stored = this.#chats.get(Number(parameters['chat_id']));
    if (!stored) throw bad('chat not found');
    if (stored.blocked) throw BLOCKED;
    return stored;
  }

  #textOf(parameters: Parameters): string {
    const text = typeof parameters['text'] === 'string' ? parameters['text'].trim() : '';
    if (text === '') throw bad('message text is empty');
    if (text.length > LONGEST_TEXT) throw bad('message is too long');
    return text;
  }

  #sendMessage(parameters: Parameters): Message {
    const stored = this.#chatOf(parameters);
    const text = this.#textOf(parameters);
    const markup = markupOf(parameters);
    for (const { callback_data: data } of (markup?.inline_keyboard.flat() ?? []) as { callback_data?: string }[]) {
      if (Buffer.byteLength(data ?? '') < 1 || Buffer.byteLength(data ?? '') > 64) throw bad('BUTTON_DATA_INVALID');
    }
    const message = {
      message_id: this.#nextMessage++,
      from: this.me,
      chat: stored.chat,
      date: seconds(),
      text,
      ...(markup ? { reply_markup: markup } : {}),
    } as Message;
    const silent = parameters['disable_notification'] === true;
    stored.messages.set(message.message_id, { message, silent, edits: 0 });
    this.onSaid(stored.chat.id);
    return message;
  }

  #editMessageText(parameters: Parameters): Message {
    const stored = this.#chatOf(parameters);
    const kept = stored.messages.get(Number(parameters['message_id']));
    if (!kept) throw bad('message to edit not found');
    if (kept.message.from?.is_bot !== true) throw bad("message can't be edited");
    const text = this.#textOf(parameters);
    const markup = markupOf(parameters);
    const same = JSON.stringify(markup) === JSON.stringify(kept.message.reply_markup);
    if (kept.message.text === text && same) {
      const said = 'specified new message content and reply markup are exactly the same as a current content';
      throw bad(`message is not modified: ${said} and reply markup of the message`);
    }
    const { reply_markup: _before, ...message } = kept.message;
    kept.message = { ...message, text, edit_date: seconds(), ...(markup ? { reply_markup: markup } : {}) };
    kept.edits += 1;
    return kept.message;
  }

  /** Brings updates to the webhook one after another, and again where they were not answered with 2xx. */
  async #pump(): Promise<void> {
    if (this.#pumping) return;
    this.#pumping = true;
    let waitMilliseconds = 50;
    while (this.webhook && this.#updates.length > 0 && !this.#closed) {
      const update = this.#updates[0]!;
      const status = await this.deliver(update);
      if (status >= 200 && status < 300) {
        this.#updates = this.#updates.filter((one) => one !== update);
        waitMilliseconds = 50;
      } else {
        await sleep(waitMilliseconds);
        waitMilliseconds = Math.min(1000, waitMilliseconds * 2);
      }
    }
    this.#pumping = false;
  }

  /** Brings one update to the webhook; its status, 0 where the connection failed. */
  async deliver(update: Update, secret = this.webhook?.secret): Promise<number> {
    const headers = {
      'content-type': 'application/json',
      ...(secret === undefined ? {} : { 'x-telegram-bot-api-secret-token': secret }),
    };
    const status = await fetch(this.webhook?.url ?? '', { method: 'POST', headers, body: JSON.stringify(update) }).then(
      async (response) => {
        await response.arrayBuffer();
        return response.status;
      },
      () => 0,
    );
    this.deliveries.push(status);
    this.#changed();
    return status;
  }
}
