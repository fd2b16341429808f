/**
 * `npm run bench:season [-- --small]`: how long the season's figures take beside one SQLite query that sums the same
 * rows, and the most memory, from a thousand watches to a million; printed as one table. Each is measured in a program
 * of its own, in turns. Processor time is what is told: on a busy machine the clock says nothing.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'rolldown';
import { ROOT } from '../../src/settings/index.js';
import { median } from './measures/numbers.js';
import { SUBJECTS, type Measured, type Subject } from './measures/season-figures.js';
import { filled } from './measures/stored.js';

/** `made` watches are invented and then copied, each time with other observers. */
const WHOLE = [
  { watches: 1_000, made: 1_000, rounds: 3 },
  { watches: 10_000, made: 10_000, rounds: 3 },
  { watches: 100_000, made: 10_000, rounds: 3 },
  { watches: 1_000_000, made: 10_000, rounds: 1 },
];
/** Sizes at which it only shows that it runs. */
const SMALL: typeof WHOLE = [
  { watches: 100, made: 100, rounds: 1 },
  { watches: 400, made: 100, rounds: 1 },
];

const folder = mkdtempSync(join(tmpdir(), 'queenpost-bench-'));
const began = performance.now();
const say = (text: string): void =>
  void process.stderr.write(`${((performance.now() - began) / 1000).toFixed(0).padStart(4)} s  ${text}\n`);

/** Bundled, so that no TypeScript compiler is in the memory that is told. */
async function bundled(): Promise<string> {
  await build({
    cwd: ROOT,
    input: join('tests', 'bench', 'measures', 'season-program.ts'),
    platform: 'node',
    external: ['better-sqlite3'],
    output: { dir: join('dist', 'bench'), format: 'esm' },
    logLevel: 'silent',
  });
  return join(ROOT, 'dist', 'bench', 'season-program.js');
}

function measured(program: string, path: string, subject: Subject): Measured {
  const ended = spawnSync(process.execPath, [program, path, subject], { encoding: 'utf8' });
  if (ended.status !== 0) throw new Error(`"${subject}" could not be measured: ${ended.stderr}`);
  return JSON.parse(ended.stdout) as Measured;
}

async function row(program: string, { watches, made, rounds }: (typeof WHOLE)[number]): Promise<string[]> {
  say(`storing ${watches} watches`);
  const path = join(folder, `season-${watches}.sqlite`);
  const store = await filled(path, watches, made);
  const { observers } = store.prepared('select count(distinct observer) as observers from watches').get() as {
    observers: number;
  };
  store.close();
  const runs: Record<Subject, Measured[]> = { query: [], 'table and rates': [], 'all figures': [] };
  for (let round = 0; round < rounds; round++) {
    for (const subject of SUBJECTS) {
      say(subject);
      runs[subject].push(measured(program, path, subject));
    }
  }
  rmSync(path);
  const secondsOf = (subject: Subject): number => median(runs[subject].map(({ seconds }) => seconds));
  const megabytesOf = (subject: Subject): string =>
    `${Math.round(Math.max(...runs[subject].map(({ bytes }) => bytes)) / 1e6)} MB`;
  const seconds = (subject: Subject): string => `${secondsOf(subject).toFixed(2)} s`;
  return [
    watches.toLocaleString('en-US'),
    observers.toLocaleString('en-US'),
    seconds('query'),
    seconds('table and rates'),
    (secondsOf('table and rates') / secondsOf('query')).toFixed(1),
    megabytesOf('table and rates'),
    seconds('all figures'),
    megabytesOf('all figures'),
  ];
}

try {
  const program = await bundled();
  const rows = [
    ['watches', 'observers', 'query', 'table and rates', 'times the query', 'memory', 'all figures', 'memory'],
    new Array<string>(8).fill('---'),
  ];
  for (const size of process.argv.includes('--small') ? SMALL : WHOLE) rows.push(await row(program, size));
  say('done');
  console.log(rows.map((cells) => `| ${cells.join(' | ')} |`).join('\n'));
} finally {
  rmSync(folder, { recursive: true });
}
