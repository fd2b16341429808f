/**
 * How fast the phone thread answers, beside a plain grammY bot that keeps a row and echoes, over the Bot API emulated on
 * loopback: `npm run bench:thread [-- ROUNDS]`. So many people write at a time, each again as soon as they are answered.
 * The two take turns, since a busy machine changes its speed by itself: only ratios mean anything. Then the memory of a
 * run that has 100,000 stored threads.
 */
import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { DEMO_SURVEY, ROOT } from '../../src/settings/index.js';
import { BotApi } from '../servers/bot-api.js';

const rounds = Number(process.argv[2] ?? 3);
const AT_A_TIME = [1, 100, 1000] as const;
const SLICE_MILLISECONDS = 3000;
const STORED_THREADS = 100_000;
/** Enough for nobody to write so often that the helper slows them. */
const LEAST_PEOPLE = 300;
const BEGIN = ['hi', 'yes'];
/** A watch in seven answers, over and over. */
const WATCH = [
  '4/22/2026 11:30 to 11:45 am',
  'yes',
  'heron bend landing',
  '66f sunny calm, 10x10 ft, meadow',
  'dandelion 20, redbud 400',
  '2 impatiens on dandelion',
  'throw it away',
  'yes',
];

const folder = mkdtempSync(join(tmpdir(), 'queenpost-bench-'));
const children: ChildProcess[] = [];
process.on('exit', () => {
  for (const child of children) child.kill('SIGKILL');
  rmSync(folder, { recursive: true, force: true });
});

class Subject {
  readonly #turn = new Map<number, number>();
  readonly #idle: number[] = [];
  #people = 0;
  child!: ChildProcess;
  constructor(
    readonly name: string,
    readonly bot: BotApi,
    /** Of the first person; the others follow. */
    readonly firstChat = 1,
  ) {}

  async start(args: readonly string[]): Promise<void> {
    this.child = spawn(process.execPath, args, {
      cwd: ROOT,
      env: { ...process.env, QUEENPOST_TELEGRAM_TOKEN: this.bot.token },
      stdio: ['ignore', 'pipe', 'inherit'],
    });
    children.push(this.child);
    await once(this.child.stdout!, 'data');
  }

  #next(chat: number): string {
    const turn = this.#turn.get(chat) ?? 0;
    this.#turn.set(chat, turn + 1);
    return BEGIN[turn] ?? WATCH[(turn - BEGIN.length) % WATCH.length]!;
  }

  /** `atATime` people write at any moment, for that long or until all were answered so often. In milliseconds. */
  async write(atATime: number, until: (answered: number) => boolean): Promise<number[]> {
    const times: number[] = [];
    const begun = new Map<number, number>();
    await new Promise<void>((done) => {
      const say = (): void => {
        const chat = this.#idle.shift()!;
        begun.set(chat, performance.now());
        this.bot.person(chat).say(this.#next(chat));
      };
      this.bot.onSaid = (chat) => {
        const from = begun.get(chat);
        if (from === undefined) return;
        begun.delete(chat);
        times.push(performance.now() - from);
        this.#idle.push(chat);
        if (!until(times.length)) say();
        else if (begun.size === 0) done();
      };
      for (let count = 0; count < atATime; count += 1) say();
    });
    return times;
  }

  /** New people begin their conversations. */
  async welcome(people: number): Promise<void> {
    for (; this.#people < people; this.#people += 1) this.#idle.push(this.firstChat + this.#people);
    const waiting = this.#idle.filter((chat) => !this.#turn.has(chat));
    const others = this.#idle.filter((chat) => this.#turn.has(chat));
    this.#idle.splice(0, Infinity, ...waiting, ...others);
    const messages = waiting.length * BEGIN.length;
    if (messages > 0) await this.write(Math.min(waiting.length, 100), (answered) => answered >= messages - 99);
  }

  get megabytes(): number {
    const status = readFileSync(`/proc/${this.child.pid}/status`, 'utf8');
    return Math.round(Number(/VmRSS:\s+(\d+)/.exec(status)?.[1] ?? 0) / 1024);
  }
}

const surveyFor = (bot: BotApi, name: string): string => {
  const path = join(folder, `${name}.yaml`);
  const settings = readFileSync(DEMO_SURVEY, 'utf8');
  writeFileSync(path, settings.replace(/^telegram: .*/m, `telegram: {apiRoot: '${bot.url}'}`));
  return path;
};
const serveArgs = (bot: BotApi, name: string): string[] => [
  join('src', 'ready.mjs'),
  'run',
  'serve',
  '--survey',
  surveyFor(bot, name),
  '--data',
  join(folder, name),
];

const sorted = (numbers: readonly number[]): number[] => [...numbers].sort((a, b) => a - b);
const quantile = (numbers: readonly number[], at: number): number =>
  sorted(numbers)[Math.min(numbers.length - 1, Math.floor(numbers.length * at))] ?? NaN;

interface Slice {
  readonly perSecond: number;
  readonly median: number;
  readonly slowest: number;
}

async function slice(subject: Subject, atATime: number): Promise<Slice> {
  const start = performance.now();
  const times = await subject.write(atATime, () => performance.now() - start > SLICE_MILLISECONDS);
  const seconds = (performance.now() - start) / 1000;
  return { perSecond: times.length / seconds, median: quantile(times, 0.5), slowest: quantile(times, 0.99) };
}

const helper = new Subject('queenpost', await new BotApi().listen());
await helper.start(serveArgs(helper.bot, 'helper'));
const plain = new Subject('grammY, a row and an echo', await new BotApi().listen());
const runTypescript = join(ROOT, 'tests', 'run-typescript.mjs');
const plainBot = join('tests', 'bench', 'thread', 'plain-bot.ts');
await plain.start(['--import', runTypescript, plainBot, plain.bot.url, join(folder, 'plain.db')]);

console.log('| at a time | | replies a second | 50 % within | 99 % within |');
console.log('| --- | --- | --- | --- | --- |');
for (const atATime of AT_A_TIME) {
  const slices = new Map<Subject, Slice[]>([
    [helper, []],
    [plain, []],
  ]);
  for (const subject of [helper, plain]) await subject.welcome(Math.max(LEAST_PEOPLE, atATime));
  for (let round = 0; round < rounds; round += 1) {
    for (const subject of [helper, plain]) slices.get(subject)!.push(await slice(subject, atATime));
  }
  const middle = (subject: Subject, value: (one: Slice) => number): number =>
    quantile(slices.get(subject)!.map(value), 0.5);
  for (const subject of [helper, plain]) {
    const [perSecond, median, slowest] = [
      middle(subject, (one) => one.perSecond),
      middle(subject, (one) => one.median),
      middle(subject, (one) => one.slowest),
    ];
    console.log(
      `| ${atATime} | ${subject.name} | ${perSecond.toFixed(0)} | ${median.toFixed(1)} ms | ${slowest.toFixed(1)} ms |`,
    );
  }
  const ratios = slices.get(plain)!.map((one, at) => one.perSecond / slices.get(helper)![at]!.perSecond);
  console.log(`| ${atATime} | grammY / queenpost, replies a second | ${quantile(ratios, 0.5).toFixed(2)} | | |`);
}
console.log(`Memory after that: queenpost ${helper.megabytes} MB, grammY ${plain.megabytes} MB.`);
for (const { child, bot } of [helper, plain]) {
  child.kill('SIGTERM');
  await once(child, 'exit');
  await bot.close();
}

// One thread in the middle of a conversation, a hundred thousand times.
const data = join(folder, 'many');
mkdirSync(data);
const source = new Database(join(folder, 'helper', 'queenpost.sqlite'));
source.prepare('vacuum into ?').run(join(data, 'queenpost.sqlite'));
source.close();
const many = new Database(join(data, 'queenpost.sqlite'));
many.exec(`with recursive people (n) as (select 1000001 union all select n + 1 from people where n < ${1_000_000 + STORED_THREADS})
  insert into threads select survey, channel, n, state, manner, proven, changedAt
  from people, (select * from threads limit 1)`);
const { threads } = many.prepare('select count(*) as threads from threads').get() as { threads: number };
many.close();
// others than those of whom it has messages: it would take the same ids for copies
const stored = new Subject('queenpost', await new BotApi().listen(), 10_000_000);
await stored.start(serveArgs(stored.bot, 'many'));
await stored.welcome(LEAST_PEOPLE);
console.log(`Memory with ${threads.toLocaleString('en')} stored threads: ${stored.megabytes} MB.`);
stored.child.kill('SIGTERM');
await once(stored.child, 'exit');
await stored.bot.close();
