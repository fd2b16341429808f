/** Sends a reply. Plain text without a parse mode: what people wrote is shown as they wrote it, whatever is in it. */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { GrammyError, InputFile, type Api } from 'grammy';
import { SendLater, SendNever, type Outgoing, type Send } from '../../exchange/index.js';
import { retryAfterSeconds } from './api.js';
import { keyboardOf } from './buttons.js';
import { pieces } from './pieces.js';

export interface SendingParts {
  readonly api: Api;
  /** Where photographs are kept. */
  readonly photographs: string;
}

/** Answers that will be the same at each try: blocked by the person, a chat that is gone, a message never taken. */
const FOR_GOOD = new Set([400, 403]);

function asSendError(error: unknown): unknown {
  const wait = retryAfterSeconds(error);
  if (wait !== null) return new SendLater(wait, { cause: error });
  if (error instanceof GrammyError && FOR_GOOD.has(error.error_code)) {
    return new SendNever(error.description, { cause: error });
  }
  return error;
}

/** Pieces of a long reply that went out before one failed; forgotten in a crash, when they go out again. */
type PartsSent = Map<string, number>;

async function sendAll(
  { api, photographs }: SendingParts,
  { id, person, reply }: Outgoing,
  partsSent: PartsSent,
): Promise<string | undefined> {
  const parts = pieces(reply.text);
  let handle: string | undefined;
  for (let at = partsSent.get(id) ?? 0; at < parts.length; at += 1) {
    const keyboard = at === parts.length - 1 ? keyboardOf(reply) : undefined;
    const { message_id } = await api.sendMessage(Number(person), parts[at]!, {
      disable_notification: reply.silent,
      link_preview_options: { is_disabled: true },
      ...(keyboard === undefined ? {} : { reply_markup: keyboard }),
    });
    handle = String(message_id);
    if (at < parts.length - 1 || reply.file !== undefined) partsSent.set(id, at + 1);
  }
  if (reply.file !== undefined) {
    const { name, text } = reply.file;
    await api.sendDocument(Number(person), new InputFile(Buffer.from(text, 'utf8'), name));
  }
  if (reply.picture !== undefined) {
    const { sha256, name } = reply.picture;
    const path = join(photographs, sha256);
    if (!existsSync(path)) throw new SendNever('the picture is not kept any more');
    // as a file: sent as a picture it would be made smaller and lose its data
    await api.sendDocument(Number(person), new InputFile(path, name));
  }
  partsSent.delete(id);
  return handle;
}

/** `false` where the message cannot be changed any more: deleted, too old, or the text is too long for one. */
async function change(api: Api, { person, reply }: Outgoing, handle: string): Promise<boolean> {
  const parts = pieces(reply.text);
  if (parts.length !== 1) return false;
  const keyboard = keyboardOf(reply);
  try {
    await api.editMessageText(Number(person), Number(handle), parts[0]!, {
      link_preview_options: { is_disabled: true },
      ...(keyboard === undefined ? {} : { reply_markup: keyboard }),
    });
    return true;
  } catch (error) {
    if (!(error instanceof GrammyError) || error.error_code !== 400) throw error;
    // it says already what it should: a copy that was sent before a crash
    return error.description.includes('message is not modified');
  }
}

/** The sending function. The handle it gives is the id of the message in its chat. */
export function sendBy(parts: SendingParts): Send {
  const { api } = parts;
  const partsSent: PartsSent = new Map();
  return async (outgoing) => {
    try {
      if (outgoing.handle !== null && (await change(api, outgoing, outgoing.handle))) return outgoing.handle;
      return await sendAll(parts, outgoing, partsSent);
    } catch (error) {
      throw asSendError(error);
    }
  };
}
