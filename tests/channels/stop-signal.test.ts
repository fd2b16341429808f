/** Calls leave nothing on the signal that stops the program, which is one for all of them. */
import { getEventListeners } from 'node:events';
import { expect, test } from 'vitest';
import { openApi, signalOf } from '../../src/channels/telegram/api.js';
import { newBot } from './serving.js';

test('a call that is over listens no more; one in hand ends with the signal', async () => {
  const bot = await newBot();
  const api = openApi(bot.token, bot.url);
  const stop = new AbortController();
  for (let call = 0; call < 3; call += 1) await api.getMe(signalOf(stop.signal));
  expect(getEventListeners(stop.signal, 'abort')).toHaveLength(0);
  bot.order('getMe', { kind: 'delay', milliseconds: 3000 });
  const begun = performance.now();
  const waits = api.getMe(signalOf(stop.signal));
  setTimeout(() => stop.abort(), 50);
  await expect(waits).rejects.toThrow(/getMe/);
  expect(performance.now() - begun).toBeLessThan(2000);
});
