/** Puts the parts of a running conversation together: database, dialog, timers, sender. */
import { randomInt } from 'node:crypto';
import { v7 as newId } from 'uuid';
import { join } from 'node:path';
import type { Survey } from '../../shared/survey.js';
import { MAIL } from '../../shared/receipt.js';
import { bareCopy } from '../channels/bare-photograph.js';
import { mailTo } from '../channels/mail/index.js';
import { codeSaid, dayAndPlaceOf, isTelling, newThread, step, type Thread } from '../dialog/index.js';
import {
  openBaring,
  openExchange,
  openSender,
  openTimers,
  type Baring,
  type Exchange,
  type Received,
  type Send,
  type Sender,
  type Timers,
} from '../exchange/index.js';
import { openStore, type Store } from '../store/index.js';
import { databaseIn } from './command.js';
import { MAILS, PHOTOGRAPHS, sweep } from './sweep.js';

/** The variable with the password for the mail server that the survey names. */
const MAIL_PASSWORD = 'QUEENPOST_MAIL_PASSWORD';

/** Six digits, each as likely as any other. */
const newCode = (): string => String(randomInt(1_000_000)).padStart(6, '0');

export interface Running {
  readonly store: Store;
  readonly exchange: Exchange<Thread>;
  readonly timers: Timers<Thread>;
  readonly sender: Sender;
  /** Mail has a sender of its own: a server far away must not hold up a conversation here. */
  readonly mailer: Sender;
  /** Takes the metadata from the photographs of who was forgotten; what a killed program left of that, too. */
  readonly baring: Baring;
}

export interface RunningParts {
  readonly survey: Survey;
  readonly data: string;
  readonly now: () => string;
  /** By channel, how a reply goes out. */
  readonly channels: ReadonlyMap<string, Send>;
  /** Given when nothing new shall be sent. */
  readonly stop?: AbortSignal;
}

/**
 * What lies beside the database goes as soon as its owner is forgotten. That is committed by then, so a folder that
 * cannot be written does not take it back: it is tried again with the next message, and at the next start.
 */
function forgetting(exchange: Exchange<Thread>, store: Store, data: string): Exchange<Thread> {
  let isDue = false;
  function follow(received: readonly Received<Thread>[]): void {
    isDue ||= received.some(({ forgotten }) => forgotten);
    if (!isDue) return;
    try {
      sweep(store, data);
      isDue = false;
    } catch {
      // still to be done
    }
  }
  return {
    async receive(message, now, how) {
      const received = await exchange.receive(message, now, how);
      follow([received]);
      return received;
    },
    fileCame(message, what) {
      const received = exchange.fileCame(message, what);
      follow([received]);
      return received;
    },
    receiveWaiting(mostOfEach) {
      const all = exchange.receiveWaiting(mostOfEach);
      follow(all.received);
      return all;
    },
  };
}

export async function openConversation({ survey, data, now, channels, stop }: RunningParts): Promise<Running> {
  const store = await openStore(databaseIn(data));
  const folder = join(data, MAILS);
  const mail = mailTo({ settings: survey.settings, folder, password: process.env[MAIL_PASSWORD] });
  const conversation = { newThread, step, codeSaid, dayAndPlaceOf, isTelling };
  const sending = { survey: survey.settings.key, ...(stop === undefined ? {} : { stop }) };
  sweep(store, data);
  const parts = { store, survey, conversation, now, newId: () => newId(), newCode };
  const exchange = forgetting(openExchange(parts), store, data);
  const baring = openBaring({
    store,
    survey,
    bare: (sha256) => bareCopy(join(data, PHOTOGRAPHS), sha256),
    newId: () => newId(),
  });
  return {
    store,
    exchange,
    baring: {
      ...baring,
      async runDue(at) {
        if (!baring.waits()) return;
        await baring.runDue(at);
        sweep(store, data); // the copies are named now, the others are not
      },
    },
    timers: openTimers({ store, survey: survey.settings.key, exchange }),
    sender: openSender({ store, channels, ...sending }),
    mailer: openSender({ store, channels: new Map([[MAIL, mail]]), ...sending }),
  };
}
