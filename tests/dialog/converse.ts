/** Holds a conversation without a database: effects are kept in memory, the thread passes through JSON at each message. */
import { Temporal } from 'temporal-polyfill';
import type { History } from '../../shared/history.js';
import { licensed } from '../../shared/licence.js';
import { contentSchema, type Content, type Message, type Reply } from '../../shared/message.js';
import type { Person, SavedPlace } from '../../shared/person.js';
import { receiptSchema, type Receipt } from '../../shared/receipt.js';
import { watchSchema, type Watch } from '../../shared/record.js';
import type { Survey } from '../../shared/survey.js';
import { newThread, publicAsking, step, type Thread } from '../../src/dialog/index.js';
import { survey as demoSurvey } from '../demo-survey.js';

export interface Turn {
  readonly replies: string[];
  readonly asking: { fields: string[]; plant: string | null } | null;
  readonly offer: readonly unknown[] | null;
  readonly stored: number | null;
}

/** `to`: what was said earlier that this is a reply to. */
type More = Partial<Pick<Message, 'edits' | 'id' | 'album'>> & { readonly to?: Reply | undefined };

const uuid = (n: number): string => `00000000-0000-7000-8000-${String(n).padStart(12, '0')}`;

/** The answers of a whole watch without queens, up to the summary. */
export const WATCH = [
  'today 2:10 to 2:25 pm',
  'Fen Boardwalk',
  '71 F, sunny, calm',
  '12 by 8 feet, meadow',
  'dandelion 15',
  'none',
] as const;

export class Conversation {
  thread: Thread;
  person: Person | null = null;
  readonly places: SavedPlace[] = [];
  readonly watches: Watch[] = [];
  /** What was asked about their own data, and granted. */
  readonly rights: string[] = [];
  /** Photographs that may not be kept. */
  readonly removed: string[] = [];
  readonly receipts: { readonly to: string; readonly receipt: Receipt }[] = [];
  readonly timers = new Map<string, { report: string; due: string }>();
  /** Everything said so far, theirs after "> ". */
  readonly transcript: string[] = [];
  last: Turn = { replies: [], asking: null, offer: null, stored: null };
  /** The last replies whole, with their buttons. */
  sent: readonly Reply[] = [];
  #now: Temporal.Instant;
  #count = 0;

  constructor(
    readonly survey: Survey = demoSurvey,
    now = '2026-05-06T18:30',
    readonly manner: 'one' | 'all' = 'one',
  ) {
    this.thread = newThread(survey);
    this.#now = Temporal.PlainDateTime.from(now).toZonedDateTime(survey.settings.timeZone).toInstant();
  }

  #history(replyTo: Reply | null): History {
    const confirmed = this.watches.filter(({ status }) => status === 'confirmed').length;
    const n = (this.#count += 10);
    return {
      person: this.person,
      places: [...this.places],
      lastWatches: [...this.watches].reverse().slice(0, 20),
      ...(replyTo === null
        ? {}
        : {
            repliedTo: {
              report: replyTo.report,
              revision: replyTo.revision,
              watch: this.watches.find(({ id }) => id === (replyTo.watch ?? replyTo.report)) ?? null,
            },
          }),
      sameDayNearby: [],
      progress: { watches: confirmed, target: this.survey.settings.target },
      fresh: { observer: uuid(n + 1), report: uuid(n + 2), watchNumber: this.watches.length + 1 },
    };
  }

  send(what: Content, more: More = {}): Turn {
    const now = this.#now.toString();
    const message: Message = {
      survey: this.survey.settings.key,
      channel: 'terminal',
      person: 'tester',
      id: more.id ?? `m${this.#count}`,
      at: now,
      replyTo: more.to === undefined ? null : 'earlier',
      edits: more.edits ?? null,
      manner: this.manner,
      proven: true,
      what: contentSchema.parse(what),
      ...(more.album === undefined ? {} : { album: more.album }),
    };
    const before = JSON.parse(JSON.stringify(this.thread)) as Thread;
    const { thread, replies, effects } = step(before, message, this.#history(more.to ?? null), this.survey, now);
    this.thread = thread;
    let stored: number | null = null;
    for (const effect of effects) {
      switch (effect.do) {
        case 'keep-watch': {
          const watch = watchSchema.parse(effect.watch);
          const at = this.watches.findIndex(({ id }) => id === watch.id);
          if (at === -1) this.watches.push(watch);
          else this.watches[at] = watch;
          if (watch.status === 'confirmed' || watch.status === 'practice') stored = watch.number;
          break;
        }
        case 'keep-person':
          this.person = effect.person;
          break;
        case 'license-photographs':
          for (const [at, watch] of this.watches.entries())
            this.watches[at] = watchSchema.parse(
              licensed(watch, effect.licence, { at: now, through: message.channel }),
            );
          break;
        case 'keep-place': {
          const at = this.places.findIndex(({ key }) => key === effect.place.key);
          if (at === -1) this.places.push(effect.place);
          else this.places[at] = effect.place;
          break;
        }
        case 'send-receipt':
          this.receipts.push({ to: effect.to, receipt: receiptSchema.parse(effect.receipt) });
          break;
        case 'give-data':
          this.rights.push(effect.do);
          break;
        case 'forget-person':
          this.rights.push(effect.do);
          this.thread = newThread(this.survey);
          this.person = null;
          break;
        case 'remove-photograph':
          this.removed.push(effect.sha256);
          break;
        case 'mail-code':
        case 'join-observers':
          throw new Error(`Without mail there is no ${effect.do}.`);
        case 'set-timer':
          this.timers.set(effect.key, effect);
          break;
        case 'clear-timer':
          this.timers.delete(effect.key);
          break;
      }
    }
    this.sent = replies;
    const texts = replies.map(({ text }) => text);
    this.transcript.push(...texts);
    this.last = { replies: texts, ...publicAsking(thread), stored };
    return this.last;
  }

  say(text: string, more: More = {}): Turn {
    this.transcript.push(...text.split('\n').map((line) => `> ${line}`));
    return this.send({ kind: 'text', text }, more);
  }

  /** Says each in turn; the last answer comes back. */
  all(...texts: readonly string[]): Turn {
    for (const text of texts) this.say(text);
    return this.last;
  }

  open(): Turn {
    return this.send({ kind: 'opened' });
  }

  /** Presses a button of a reply, the last one unless told. */
  press(words: string, reply = this.sent.at(-1)): Turn {
    if (reply?.choices.includes(words) !== true) throw new Error(`There is no button "${words}".`);
    this.transcript.push(`> [${words}]`);
    return this.send({ kind: 'pressed', report: reply.report ?? '', revision: reply.revision, words });
  }

  /** Agrees, without a word about it. */
  agreed(): this {
    this.open();
    this.say('yes');
    return this;
  }

  advance(seconds: number): Turn {
    this.transcript.push(`> (${seconds} seconds pass)`);
    const end = this.#now.add({ milliseconds: Math.round(seconds * 1000) });
    for (;;) {
      const next = [...this.timers].sort((a, b) => a[1].due.localeCompare(b[1].due))[0];
      if (!next || Temporal.Instant.compare(next[1].due, end) > 0) break;
      const [key, { report, due }] = next;
      this.timers.delete(key);
      if (Temporal.Instant.compare(due, this.#now) > 0) this.#now = Temporal.Instant.from(due);
      this.send({ kind: 'time', key, report });
    }
    this.#now = end;
    return this.last;
  }

  /** The program stands still, and what came due meanwhile comes at its end. */
  outage(seconds: number): void {
    this.#now = this.#now.add({ seconds });
    this.advance(0);
  }

  get watch(): Watch {
    const watch = this.watches.at(-1);
    if (!watch) throw new Error(`Nothing was stored. What was said:\n${this.transcript.join('\n')}`);
    return watch;
  }
}
