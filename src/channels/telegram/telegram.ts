/** Puts the parts of the channel together. */
import type { Survey } from '../../../shared/survey.js';
import type { Message } from '../../../shared/message.js';
import type { Fetch, How, Send } from '../../exchange/index.js';
import { openApi, signalOf } from './api.js';
import { fetchBy } from './fetching.js';
import { poll } from './polling.js';
import { sendBy } from './sending.js';
import { taking } from './taking.js';
import { untilDone } from './waiting.js';
import { listen } from './webhook.js';

const TELEGRAMS_OWN = 'https://api.telegram.org';

export interface TelegramParts {
  readonly survey: Survey;
  readonly token: string;
  /** Where photographs are kept. */
  readonly photographs: string;
  readonly now: () => string;
  readonly stop: AbortSignal;
  /** A line for whoever runs the program. */
  readonly report: (line: string) => void;
}

export interface Telegram {
  readonly send: Send;
  readonly fetch: Fetch;
  /**
   * Takes messages until told to stop, and ends with what was in hand. `ready` is told the bot's name when it is known.
   * Throws `TelegramRefused` where Telegram will not serve it.
   */
  run(receive: (message: Message, how: How) => Promise<void>, ready: (name: string) => void): Promise<void>;
}

export function openTelegram({ survey, token, photographs: folder, now, stop, report }: TelegramParts): Telegram {
  const { telegram: settings, timeZone } = survey.settings;
  const api = openApi(token, settings?.apiRoot);
  const apiRoot = settings?.apiRoot ?? TELEGRAMS_OWN;
  const trying = { stop, report };
  return {
    send: sendBy({ api, photographs: folder }),
    fetch: fetchBy({ api, token, apiRoot, folder, timeZone }),
    async run(receive, ready) {
      const me = await untilDone(() => api.getMe(signalOf(stop)), trying);
      if (me === null) return;
      const { take, finish } = taking({ api, me, survey, now, receive, report });
      ready(me.username);
      const webhook = settings?.webhook;
      if (webhook) await listen({ api, token, ...webhook, take, ...trying });
      else await poll({ api, take, ...trying });
      await finish();
    },
  };
}
