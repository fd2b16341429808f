/**
 * Runs a TypeScript file as a program of its own, for what one program cannot show: races for a lock, being killed.
 * None outlives the tests of its file, even where a test gave up waiting for it.
 */
import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { afterAll } from 'vitest';

/** For a test that starts one: to load the sources takes seconds, on a busy machine many. In milliseconds. */
export const CHILD_TIMEOUT = 180_000;

export interface ChildProgram {
  /** Each line it printed so far. */
  readonly lines: readonly string[];
  /** Waits until it has printed so many lines, or has ended. */
  printed(lines: number): Promise<void>;
  kill(signal: 'SIGKILL'): void;
  /** Its exit code, or the signal that ended it. */
  readonly ended: Promise<number | string | null>;
}

const started: ChildProcess[] = [];
afterAll(() => {
  for (const child of started.splice(0)) child.kill('SIGKILL'); // one that has ended is left alone
});

export function startChild(file: string, args: readonly string[]): ChildProgram {
  const register = join(import.meta.dirname, 'run-typescript.mjs');
  const child: ChildProcess = spawn(process.execPath, ['--import', register, file, ...args], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  started.push(child);
  const lines: string[] = [];
  const reader = createInterface({ input: child.stdout! });
  reader.on('line', (line) => lines.push(line));
  const closed = once(reader, 'close');
  const ended = once(child, 'exit').then(async ([code, signal]: (number | string | null)[]) => {
    await closed;
    return code ?? signal ?? null;
  });
  return {
    lines,
    async printed(count) {
      while (lines.length < count) {
        const more = await Promise.race([once(reader, 'line').then(() => true), ended.then(() => false)]);
        if (!more) return;
      }
    },
    kill: (signal) => void child.kill(signal),
    ended,
  };
}
