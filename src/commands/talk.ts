/**
 * `queenpost talk`: holds the conversation in this terminal. With `--jsonl` it is driven by objects, one a line, and
 * with `--now` its clock moves only by `{"advance": seconds}`: recorded conversations replay the same on any day.
 */
import { createInterface, type Interface } from 'node:readline';
import { Temporal } from 'temporal-polyfill';
import { z } from 'zod';
import { CommandError, optionsOf, type Command } from './command.js';
import { photographFrom } from './photograph.js';
import { harmless } from './plain-text.js';
import { Terminal } from './terminal.js';
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

/** Begun before anything is waited for: lines that come before somebody listens are lost. */
const each = (lines: Interface): AsyncIterable<string> => {
  const input = lines[Symbol.asyncIterator]();
  return { [Symbol.asyncIterator]: () => input };
};

async function talkByLines(terminal: Terminal, lines: Interface, data: string): Promise<void> {
  const input = each(lines);
  await terminal.take({ kind: 'opened' });
  await write(`${JSON.stringify(terminal.taken())}\n`);
  for await (const line of input) {
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
    await terminal.take(await photographFrom(path, data, terminal.timeZone));
  } catch (error) {
    if (!(error instanceof CommandError)) throw error;
    terminal.said.push(error.message);
  }
}

/** How often a live watch's timers are looked at while somebody sits at the terminal. */
const LOOK_MILLISECONDS = 1000;

async function talkToPerson(terminal: Terminal, lines: Interface): Promise<void> {
  const isTerminal = process.stdin.isTTY;
  const input = each(lines);
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
    for await (const line of input) {
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
      await terminal.close();
    }
  },
};
