/**
 * `npm run bench [-- --small]`: everything that is promised about speed and memory, measured in one run and printed as
 * one table; what is being done is said on standard error. Only ratios mean anything on another machine.
 */
import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PROGRAM } from '../commands/program.js';
import { measureMessages } from './measures/messages.js';
import { median } from './measures/numbers.js';
import { measureStored } from './measures/stored.js';

const WHOLE = {
  rounds: 9,
  sliceMilliseconds: 500,
  sizes: [1_000, 100_000, 1_000_000],
  conversations: 60,
  reports: 10_000,
  starts: 9,
};
/** Sizes at which it only shows that it runs. */
const SMALL: typeof WHOLE = {
  rounds: 1,
  sliceMilliseconds: 30,
  sizes: [50, 100, 200],
  conversations: 2,
  reports: 20,
  starts: 1,
};

const wish = process.argv.includes('--small') ? SMALL : WHOLE;
const folder = mkdtempSync(join(tmpdir(), 'queenpost-bench-'));
const began = performance.now();
const say = (text: string): void =>
  void process.stderr.write(`${((performance.now() - began) / 1000).toFixed(0).padStart(4)} s  ${text}\n`);

/** `goal` is empty where nothing is promised. */
interface Line {
  readonly what: string;
  readonly measured: string;
  readonly goal: string;
}

const perSecond = (value: number): string => `${Math.round(value)}/s`;
const megabytes = (bytes: number): string => `${Math.round(bytes / 1e6)} MB`;
const grouped = (value: number): string => value.toLocaleString('en-US');

async function messageLines(): Promise<Line[]> {
  say('messages a second');
  const { perSecond: of, ratio } = await measureMessages({ folder, ...wish });
  const line = (what: string, kind: string, other: string, goal: string): Line => ({
    what,
    measured: `${ratio(kind, other).toFixed(2)} (${perSecond(of(kind))} to ${perSecond(of(other))})`,
    goal,
  });
  return [
    line('exchange / bare better-sqlite3, one by one', 'thanks 1', 'bare thanks 1', 'at least 0.8'),
    line('exchange, fifty waiting / bare one by one', 'thanks 50', 'bare thanks 1', 'above 1'),
    line('exchange, fifty waiting / bare fifty a commit', 'thanks 50', 'bare thanks 50', ''),
    line('with the dialog / bare, one by one', 'dialog 1', 'bare dialog 1', 'at least 0.8'),
    line('with the dialog, fifty waiting / bare one by one', 'dialog 50', 'bare dialog 1', 'above 1'),
    line('with the dialog, fifty waiting / bare fifty a commit', 'dialog 50', 'bare dialog 50', ''),
    line('bare better-sqlite3 one by one / bare fsync of 4 KiB', 'bare thanks 1', 'fsync', ''),
    line('with the dialog, one by one / bare fsync of 4 KiB', 'dialog 1', 'fsync', ''),
  ];
}

async function storedLines(): Promise<Line[]> {
  const costs = await measureStored({ folder, ...wish }, say);
  const all = costs.map(({ milliseconds }) => milliseconds);
  return [
    ...costs.map(({ size, milliseconds }) => ({
      what: `a message beside ${grouped(size)} stored watches`,
      measured: `${milliseconds.toFixed(2)} ms`,
      goal: '',
    })),
    {
      what: 'the dearest of these / the cheapest',
      measured: (Math.max(...all) / Math.min(...all)).toFixed(2),
      goal: 'at most 1.1',
    },
  ];
}

function memoryLine(): Line {
  say(`${wish.reports} open reports`);
  const args = ['--import', './tests/run-typescript.mjs', join(import.meta.dirname, 'measures', 'open-reports.ts')];
  const ended = spawnSync(process.execPath, [...args, folder, String(wish.reports)], { encoding: 'utf8' });
  if (ended.status !== 0) throw new Error(`The open reports could not be measured: ${ended.stderr}`);
  const { before, most, open } = JSON.parse(ended.stdout) as Record<'before' | 'most' | 'open', number>;
  return {
    what: `memory with ${grouped(open)} open reports`,
    measured: `${megabytes(most)} at most; ${megabytes(before)} before the first`,
    goal: '',
  };
}

/** Milliseconds until `talk` has printed something, with an empty data folder. */
async function startOf(index: number): Promise<number> {
  const start = performance.now();
  const child = spawn(process.execPath, [PROGRAM, 'talk', '--data', join(folder, `talk-${index}`)], {
    stdio: ['pipe', 'pipe', 'inherit'],
  });
  const ended = once(child, 'exit');
  await Promise.race([once(child.stdout, 'data'), ended.then(() => Promise.reject(new Error('talk said nothing')))]);
  const took = performance.now() - start;
  child.stdin.end();
  child.stdout.resume();
  await ended;
  return took;
}

async function startLine(): Promise<Line> {
  say('the start of talk');
  const took: number[] = [];
  for (let index = 0; index < wish.starts; index++) took.push(await startOf(index));
  return {
    what: 'talk: from its start to its first reply',
    measured: `${(median(took) / 1000).toFixed(2)} s`,
    goal: 'below 1 s',
  };
}

try {
  const lines = [await startLine(), ...(await messageLines()), ...(await storedLines()), memoryLine()];
  say('done');
  const rows = [
    ['', 'measured', 'goal'],
    ['---', '---', '---'],
    ...lines.map((one) => [one.what, one.measured, one.goal]),
  ];
  console.log(rows.map((cells) => `| ${cells.join(' | ')} |`).join('\n'));
} finally {
  rmSync(folder, { recursive: true });
}
