/** A conversation held at this machine's terminal: a clock that runs or stands, messages in, texts out. */
import { copyFileSync, existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Temporal } from 'temporal-polyfill';
import { v7 as newId } from 'uuid';
import type { Content, Reply } from '../../shared/message.js';
import { TERMINAL, terminalMessage, type TerminalParts } from '../channels/terminal.js';
import { publicAsking, type Thread } from '../dialog/index.js';
import { notStored, SendLater, type Received, type Send } from '../exchange/index.js';
import { StoreError } from '../store/index.js';
import { CommandError, surveyFrom } from './command.js';
import { openConversation, type Running } from './conversation.js';
import { HANDED_OUT, PHOTOGRAPHS } from './sweep.js';

/** The present moment: the machine's clock, or one that stands at `--now` until it is moved. */
class Clock {
  #standsAt: Temporal.Instant | null;
  constructor(at: Temporal.Instant | null) {
    this.#standsAt = at;
  }
  readonly now = (): string => (this.#standsAt ?? Temporal.Now.instant()).round('millisecond').toString();
  /** Whether it moves by itself. */
  get runs(): boolean {
    return this.#standsAt === null;
  }
  moveTo(instant: string): void {
    this.#standsAt = Temporal.Instant.from(instant);
  }
  later(seconds: number): string {
    return Temporal.Instant.from(this.now())
      .add({ milliseconds: Math.round(seconds * 1000) })
      .toString();
  }
}

function clockAt(now: string | undefined, timeZone: string): Clock {
  if (now === undefined) return new Clock(null);
  try {
    return new Clock(Temporal.PlainDateTime.from(now).toZonedDateTime(timeZone).toInstant());
  } catch (cause) {
    throw new CommandError(`--now ${now} is not a local time; write it like 2026-05-06T18:30.`, { cause });
  }
}

/** How long replies to a person wait who sits at no terminal now. */
const LATER_SECONDS = 60;
/** A message whose step fails by a mistake of ours is tried again at once; then the exchange gives it up. */
const MOST_TRIES = 3;

/** Writes a file for the person at the terminal, and says where it is. */
function handOut({ name, text }: { readonly name: string; readonly text: string }, data: string): string {
  const folder = join(data, HANDED_OUT);
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const path = join(folder, name);
  writeFileSync(path, text, { mode: 0o600 });
  return path;
}

/** Gives a picture back to the person at the terminal, beside that file; null where it is not kept any more. */
function handOutPicture({ sha256, name, observer }: NonNullable<Reply['picture']>, data: string): string | null {
  const kept = join(data, PHOTOGRAPHS, sha256);
  if (!existsSync(kept)) return null;
  const folder = join(data, HANDED_OUT, observer);
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const path = join(folder, name);
  copyFileSync(kept, path);
  return path;
}

/** Messages in, texts out. */
export class Terminal {
  #thread: Thread | null = null;
  #stored: number | null = null;
  /** Mails on their way, while the conversation goes on. */
  #mailing: Promise<void> = Promise.resolve();

  private constructor(
    readonly running: Running,
    readonly parts: TerminalParts,
    readonly clock: Clock,
    /** What is said when the database fails. */
    readonly notStored: string,
    readonly timeZone: string,
    /** Texts that the sender handed over since they were last taken. */
    readonly said: string[],
  ) {}

  static async open(values: {
    survey: string;
    data: string;
    now?: string | undefined;
    person: string;
  }): Promise<Terminal> {
    const survey = surveyFrom(values.survey);
    const clock = clockAt(values.now, survey.settings.timeZone);
    const said: string[] = [];
    const send: Send = ({ person, reply }) => {
      // somebody else's, from a run that was broken off: it waits for them
      if (person !== values.person) return Promise.reject(new SendLater(LATER_SECONDS));
      const picture = reply.picture === undefined ? null : handOutPicture(reply.picture, values.data);
      if (reply.picture === undefined) said.push(reply.text);
      if (picture !== null) said.push(picture);
      if (reply.file !== undefined) said.push(handOut(reply.file, values.data));
      return Promise.resolve();
    };
    const running = await openConversation({
      survey,
      data: values.data,
      now: clock.now,
      channels: new Map([[TERMINAL, send]]),
    });
    const parts = { survey: survey.settings.key, person: values.person, now: clock.now, newId: () => newId() };
    const terminal = new Terminal(running, parts, clock, notStored(survey).text, survey.settings.timeZone, said);
    await terminal.#bare();
    return terminal;
  }

  #note(received: readonly Received<Thread>[]): void {
    for (const { channel, person, thread, stored } of received) {
      if (channel !== TERMINAL || person !== this.parts.person) continue;
      if (thread !== null) this.#thread = thread;
      if (stored !== null) this.#stored = stored;
    }
  }

  /** Photographs of who was forgotten. Where a file cannot be written it waits for the next message, or the next start. */
  async #bare(): Promise<void> {
    try {
      await this.running.baring.runDue(this.clock.now());
    } catch (error) {
      if (error instanceof StoreError) throw error;
    }
  }

  async #send(): Promise<void> {
    await this.#bare();
    const now = this.clock.now();
    await this.running.sender.runDue(now);
    this.#mailing = this.#mailing.then(async () => {
      await this.running.mailer.runDue(now);
    });
    // heard of when the terminal is closed, not in the middle of an answer
    this.#mailing.catch(() => undefined);
  }

  /** Takes a message. A database that fails is said, and nothing is kept. */
  async take(what: Content): Promise<void> {
    try {
      const received = await this.running.exchange.receive(terminalMessage(what, this.parts), this.clock.now());
      this.#note([received]);
      let waiting = received.waiting;
      for (let tries = 1; waiting && tries < MOST_TRIES; tries++) {
        const again = this.running.exchange.receiveWaiting();
        this.#note(again.received);
        waiting = again.waiting > 0;
      }
      await this.#send();
    } catch (error) {
      if (!(error instanceof StoreError)) throw error;
      this.said.push(this.notStored);
    }
  }

  /** Lets timers that are due speak. */
  async runTimers(): Promise<void> {
    this.#note(await this.running.timers.runDue(this.clock.now()));
    await this.#send();
  }

  /** Moves a standing clock, stopping at each timer on the way. */
  async advance(seconds: number): Promise<void> {
    const end = this.clock.later(seconds);
    for (;;) {
      const due = this.running.timers.nextDue();
      if (due === null || Temporal.Instant.compare(due, end) > 0) break;
      if (Temporal.Instant.compare(due, this.clock.now()) > 0) this.clock.moveTo(due);
      await this.runTimers();
    }
    this.clock.moveTo(end);
  }

  /** What was said and stored since this was last called, and what is being asked. */
  taken() {
    const asked = this.#thread === null ? { asking: null, offer: null } : publicAsking(this.#thread);
    const out = { replies: this.said.splice(0), asking: asked.asking, offer: asked.offer, stored: this.#stored };
    this.#stored = null;
    return out;
  }

  /** Waits for the mails on their way. Throws `StoreError` where the database could not say that one went out. */
  async close(): Promise<void> {
    try {
      await this.#mailing;
    } finally {
      this.running.store.close();
    }
  }
}
