/**
 * Makes a fresh checkout ready and then does what was asked: `start` holds a conversation, `run` passes its words to
 * `queenpost`, `build` only makes the program, `test` runs every check. Plain JavaScript and Node's own modules only: it must run before anything is
 * installed. What it does is said on standard error, so that a command's output stays its own.
 */
import { spawnSync } from 'node:child_process';
import { copyFileSync, existsSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const ROOT = dirname(dirname(fileURLToPath(import.meta.url)));
const [task = 'start', ...words] = process.argv.slice(2);

const say = (text) => process.stderr.write(`${text}\n`);

function fail(text) {
  say(text);
  process.exit(1);
}

/** Runs a program with its output on standard error; true where it ended well. */
function runs(program, args, options = {}) {
  const stdio = ['ignore', process.stderr, process.stderr];
  return spawnSync(program, args, { cwd: ROOT, stdio, ...options }).status === 0;
}

const has = (program) => spawnSync(program, ['--version'], { stdio: 'ignore' }).status === 0;

/** better-sqlite3 is compiled where no ready-made copy can be fetched: that takes a compiler, make and Python. */
function readyCompiler() {
  const missing = ['python3', 'make', 'g++'].filter((program) => !has(program));
  if (missing.length === 0) return;
  if (process.getuid?.() === 0 && has('apt-get')) {
    say(`Installing ${missing.join(', ')} (Debian packages) ...`);
    const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
    if (
      runs('apt-get', ['update'], { env }) &&
      runs('apt-get', ['install', '-y', '--no-install-recommends', ...missing], { env })
    )
      return;
  }
  say(
    `Not on this machine: ${missing.join(', ')}. If the next step fails, install them (on Debian: apt install ${missing.join(' ')}).`,
  );
}

function readyPackages() {
  const lock = join(ROOT, 'package-lock.json');
  const done = join(ROOT, 'node_modules', '.ready');
  if (existsSync(done) && statSync(done).mtimeMs >= statSync(lock).mtimeMs) return;
  readyCompiler();
  say('Installing packages; the database engine may be compiled, which takes about two minutes ...');
  if (!runs('npm', ['ci', '--no-audit', '--no-fund']))
    fail('The packages could not be installed; the lines above say why.');
  writeFileSync(done, '');
}

function newest(folder) {
  let time = 0;
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) time = Math.max(time, newest(path));
    else if (/\.(ts|mjs)$/.test(entry.name)) time = Math.max(time, statSync(path).mtimeMs);
  }
  return time;
}

/** Bundled into one file: to look for nine hundred files takes longer than to run what is in them. */
async function readyProgram() {
  const stamp = join(ROOT, 'dist', '.built');
  const sources = Math.max(
    newest(join(ROOT, 'src')),
    newest(join(ROOT, 'shared')),
    statSync(join(ROOT, 'package-lock.json')).mtimeMs,
  );
  if (existsSync(stamp) && statSync(stamp).mtimeMs >= sources) return;
  say('Building ...');
  // a source that was removed must not live on in the built program
  rmSync(join(ROOT, 'dist'), { recursive: true, force: true });
  const { build } = await import('rolldown');
  try {
    await build({
      cwd: ROOT,
      input: join('src', 'queenpost.ts'),
      platform: 'node',
      // the first two are compiled for this machine, the third reads a file beside itself; the last, only for spreadsheets,
      // warns of its own old parts in a bundle
      external: ['better-sqlite3', 'sharp', /^libheif-js/, 'exceljs'],
      output: { dir: join('dist', 'src'), format: 'esm' },
    });
    // a thread's program is a file of its own
    copyFileSync(join(ROOT, 'src', 'channels', 'heic-worker.mjs'), join(ROOT, 'dist', 'src', 'heic-worker.mjs'));
  } catch (error) {
    fail(`The program could not be built: ${error.message}`);
  }
  writeFileSync(stamp, '');
}

async function queenpost(args) {
  const program = join(ROOT, 'dist', 'src', 'queenpost.js');
  process.argv = [process.execPath, program, ...args];
  await import(pathToFileURL(program).href);
}

/** Each step must pass; the first that does not ends the run. Replaying the recorded conversations is a test of vitest's. */
function test(args) {
  const bin = (name, path) => [process.execPath, [join('node_modules', name, path)]];
  const [node, tsc] = bin('typescript', 'bin/tsc');
  const steps = [
    ['types', node, [...tsc, '-p', 'tests/tsconfig.json']],
    [
      'lint',
      node,
      [
        join('node_modules', 'eslint', 'bin', 'eslint.js'),
        '--config',
        'tests/tree/eslint.config.js',
        '--max-warnings',
        '0',
        'src',
        'shared',
        'tests',
      ],
    ],
    [
      'format',
      node,
      [
        join('node_modules', 'prettier', 'bin', 'prettier.cjs'),
        '--check',
        '--log-level',
        'warn',
        'src',
        'shared/**/*.ts',
        'tests/**/*.{ts,js,cjs}',
      ],
    ],
    [
      'import rules',
      node,
      [
        join('node_modules', 'dependency-cruiser', 'bin', 'dependency-cruise.mjs'),
        '--config',
        'tests/tree/dependency-rules.cjs',
        'src',
        'shared',
      ],
    ],
    [
      'tests',
      node,
      [join('node_modules', 'vitest', 'vitest.mjs'), 'run', '--config', 'tests/vitest.config.ts', ...args],
    ],
  ];
  for (const [name, program, args] of steps) {
    say(`-- ${name}`);
    const ended = spawnSync(program, args, {
      cwd: ROOT,
      stdio: 'inherit',
      env: { ...process.env, TZ: 'America/Chicago' },
    });
    if (ended.status !== 0) fail(`npm test failed at: ${name}`);
  }
}

const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
if (major < 20 || (major === 20 && minor < 11))
  fail(`Queenpost needs Node 20.11 or newer; this is ${process.versions.node}.`);

readyPackages();
await readyProgram();
if (task === 'start') await queenpost(['talk', ...words]);
else if (task === 'run') await queenpost(words);
else if (task === 'test') test(words);
else if (task !== 'build') fail(`No task "${task}". Known: start, run, build, test.`);
