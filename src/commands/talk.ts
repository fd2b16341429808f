/**
 * `queenpost talk`: holds the conversation in this terminal. With `--jsonl` it is driven by objects, one a line, and
 * with `--now` its clock moves only by `{"advance": seconds}`: recorded conversations replay the same on any day.
 */
import { createInterface, type Interface } from 'node:readline';
import { Temporal } from 'temporal-polyfill';
import { v7 as newId } from 'uuid';
import { z } from 'zod';
import type { Content } from '../../shared/message.js';
import { TERMINAL, terminalMessage, type TerminalParts } from '../channels/terminal.js';
import { publicAsking, type Thread } from '../dialog/index.js';
import { notStored, SendLater, type Received, type Send } from '../exchange/index.js';
import { StoreError } from '../store/index.js';
import { CommandError, optionsOf, surveyFrom, type Command } from './command.js';
import { openConversation, type Running } from './conversation.js';
import { keepPhotograph } from './photograph.js';
import { harmless } from './plain-text.js';
import { write } from './write.js';

const inputSchema = z.union([
  z.strictObject({ text: z.string() }),
  z.strictObject({ photo: z.string() }),
  z.strictObject({
    place: z.strictObject({
      latitude: z.number().min(-90).max(90),
      longitude: z.number().min(-180).max(180),
      uncertaintyMetres: z.number().positive().nullable().default(null),
    }),
  }),
  z.strictObject({ advance: z.number().nonnegative() }),
]);
type Input = z.infer<typeof inputSchema>;

const INPUT_EXAMPLE = '{"text": "yesterday, 10:40 to 10:55"}';

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

/** The conversation at one terminal: messages in, texts out. */
class Terminal {
  #thread: Thread | null = null;
  #stored: number | null = null;

  private constructor(
    readonly running: Running,
    readonly parts: TerminalParts,
    readonly clock: Clock,
    /** What is said when the database fails. */
    readonly notStored: string,
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
      said.push(reply.text);
      return Promise.resolve();
    };
    const running = await openConversation({
      survey,
      data: values.data,
      now: clock.now,
      channels: new Map([[TERMINAL, send]]),
    });
    const parts = { survey: survey.settings.key, person: values.person, now: clock.now, newId: () => newId() };
    return new Terminal(running, parts, clock, notStored(survey).text, said);
  }

  #note(received: readonly Received<Thread>[]): void {
    for (const { channel, person, thread, stored } of received) {
      if (channel !== TERMINAL || person !== this.parts.person) continue;
      if (thread !== null) this.#thread = thread;
      if (stored !== null) this.#stored = stored;
    }
  }

  async #send(): Promise<void> {
    await this.running.sender.runDue(this.clock.now());
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

  close(): void {
    this.running.store.close();
  }
}

async function talkByLines(terminal: Terminal, lines: Interface, data: string): Promise<void> {
  await terminal.take({ kind: 'opened' });
  await write(`${JSON.stringify(terminal.taken())}\n`);
  for await (const line of lines) {
    await takeInput(terminal, line, data);
    await write(`${JSON.stringify(terminal.taken())}\n`);
  }
}

async function takeInput(terminal: Terminal, line: string, data: string): Promise<void> {
  let input: Input;
  try {
    input = inputSchema.parse(JSON.parse(line));
  } catch {
    terminal.said.push(`This line is not understood; write an object, for example ${INPUT_EXAMPLE}.`);
    return;
  }
  if ('text' in input) return terminal.take({ kind: 'text', text: input.text });
  if ('place' in input) return terminal.take({ kind: 'place', ...input.place });
  if ('photo' in input) return takePhotograph(terminal, input.photo, data);
  if (terminal.clock.runs) {
    terminal.said.push('The clock moves by itself; start with --now to move it.');
    return;
  }
  return terminal.advance(input.advance);
}

async function takePhotograph(terminal: Terminal, path: string, data: string): Promise<void> {
  try {
    await terminal.take(keepPhotograph(path, data));
  } catch (error) {
    if (!(error instanceof CommandError)) throw error;
    terminal.said.push(error.message);
  }
}

/** How often a live watch's timers are looked at while somebody sits at the terminal. */
const LOOK_MILLISECONDS = 1000;

async function talkToPerson(terminal: Terminal, lines: Interface): Promise<void> {
  const isTerminal = process.stdin.isTTY;
  const show = async (): Promise<void> => {
    for (const reply of terminal.taken().replies) await write(`${reply.split('\n').map(harmless).join('\n')}\n\n`);
    if (isTerminal) lines.prompt();
  };
  await terminal.take({ kind: 'opened' });
  await show();
  // one thing at a time: a timer must not speak in the middle of an answer
  let turn: Promise<void> = Promise.resolve();
  const next = (work: () => Promise<void>): Promise<void> => (turn = turn.then(work));
  const look = setInterval(() => {
    const due = terminal.running.timers.nextDue();
    if (due === null || Temporal.Instant.compare(due, terminal.clock.now()) > 0) return;
    void next(async () => {
      await terminal.runTimers();
      await show();
    });
  }, LOOK_MILLISECONDS);
  try {
    for await (const line of lines) {
      await next(async () => {
        await terminal.take({ kind: 'text', text: line });
        await show();
      });
    }
  } finally {
    clearInterval(look);
    await turn;
  }
}

export const talk: Command = {
  name: 'talk',
  does: 'holds the conversation in this terminal',
  usage: '[--jsonl] [--now 2026-05-06T18:30] [--person NAME] [--survey FILE] [--data DIR]',
  async run(args) {
    const { values } = optionsOf(this, args, {
      jsonl: { type: 'boolean', default: false },
      now: { type: 'string' },
      person: { type: 'string', default: 'terminal' },
    });
    const terminal = await Terminal.open(values);
    const lines = createInterface({
      input: process.stdin,
      ...(process.stdin.isTTY && !values.jsonl ? { output: process.stdout, prompt: '> ' } : {}),
      crlfDelay: Infinity,
    });
    try {
      if (values.jsonl) await talkByLines(terminal, lines, values.data);
      else await talkToPerson(terminal, lines);
    } finally {
      lines.close();
      terminal.close();
    }
  },
};
