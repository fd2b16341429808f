/**
 * Asks Telegram for updates. To ask from an offset on tells Telegram that all before it are done with, so the offset
 * moves only when what came is on the disk. Nothing is remembered over a restart: what was not confirmed comes again, and
 * the inbox knows what it has.
 */
import type { Api } from 'grammy';
import type { Update } from 'grammy/types';
import { POLL_SECONDS, signalOf } from './api.js';
import { WANTED_UPDATES } from './updates.js';
import { Patience, untilDone, type Trying } from './waiting.js';

export interface Polling extends Trying {
  readonly api: Api;
  readonly take: (updates: readonly Update[]) => Promise<void>;
}

/** Runs until told to stop. Throws `TelegramRefused` for a wrong token, and where another program polls too. */
export async function poll({ api, take, ...trying }: Polling): Promise<void> {
  const { stop } = trying;
  // a webhook of an earlier run would get the updates instead
  await untilDone(() => api.deleteWebhook(undefined, signalOf(stop)), trying);
  const patience = new Patience(trying);
  let offset = 0;
  while (!stop.aborted) {
    try {
      const wanted = { offset, timeout: POLL_SECONDS, allowed_updates: WANTED_UPDATES };
      const updates = await api.getUpdates(wanted, signalOf(stop));
      await take(updates);
      offset = Math.max(offset, ...updates.map((update) => update.update_id + 1));
      patience.calm();
    } catch (error) {
      if (!stop.aborted) await patience.after(error);
    }
  }
}
