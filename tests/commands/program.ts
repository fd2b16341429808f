/** Runs the built program as people do: in a process of its own. */
import { spawn, type ChildProcessWithoutNullStreams } from 'node:child_process';
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface, type Interface } from 'node:readline';
import { ROOT } from '../../src/settings/index.js';

export const PROGRAM = join(ROOT, 'dist', 'src', 'queenpost.js');

export const newFolder = (): string => mkdtempSync(join(tmpdir(), 'queenpost-'));

export interface Ended {
  readonly stdout: string;
  readonly stderr: string;
  readonly code: number | null;
}

export function run(args: readonly string[], input = ''): Promise<Ended> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [PROGRAM, ...args], { cwd: ROOT });
    let stdout = '';
    let stderr = '';
    child.stdout.on('data', (data: Buffer) => (stdout += data.toString('utf8')));
    child.stderr.on('data', (data: Buffer) => (stderr += data.toString('utf8')));
    child.on('error', reject);
    child.on('close', (code) => resolve({ stdout, stderr, code }));
    child.stdin.end(input);
  });
}

/** A line of `talk --jsonl`. */
export interface Said {
  readonly replies: readonly string[];
  readonly asking: { readonly fields: readonly string[]; readonly plant: string | null } | null;
  readonly offer: readonly unknown[] | null;
  readonly stored: number | null;
}

/** `talk --jsonl` in a process that can be killed between two lines. */
export class Talk {
  readonly #child: ChildProcessWithoutNullStreams;
  readonly #lines: AsyncIterator<string>;
  readonly #reader: Interface;
  constructor(args: readonly string[]) {
    this.#child = spawn(process.execPath, [PROGRAM, 'talk', '--jsonl', ...args], { cwd: ROOT });
    this.#reader = createInterface({ input: this.#child.stdout });
    this.#lines = this.#reader[Symbol.asyncIterator]();
  }
  async next(): Promise<Said> {
    const line = await this.#lines.next();
    if (line.done) throw new Error('The program ended instead of answering.');
    return JSON.parse(line.value) as Said;
  }
  send(input: unknown): Promise<Said> {
    this.#child.stdin.write(`${JSON.stringify(input)}\n`);
    return this.next();
  }
  /** As if the plug were pulled. */
  kill(): Promise<void> {
    return new Promise((resolve) => {
      this.#child.on('close', () => resolve());
      this.#child.kill('SIGKILL');
    });
  }
  end(): Promise<void> {
    return new Promise((resolve) => {
      this.#child.on('close', () => resolve());
      this.#child.stdin.end();
    });
  }
}
