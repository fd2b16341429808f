/**
 * `npm run bench:hostile`: how long each reader takes over ten thousand letters of anything, and how that grows with the
 * length. Every word that is understood, and every sign, is repeated in turn; printed are each reader's worst texts.
 */
import { printed, PRINTED_KINDS, readFields } from '../../src/answers/index.js';
import { demo, survey } from '../demo-survey.js';

const LETTERS = 10_000;

/** Every string in the words of the language, once. */
function wordsIn(value: unknown): string[] {
  if (typeof value === 'string') return [value];
  if (Array.isArray(value)) return value.flatMap(wordsIn);
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([key, inner]) => [key, ...wordsIn(inner)]);
}

const SIGNS = [
  '1',
  '1 ',
  '1/',
  '1:',
  '1.',
  '1,',
  '-',
  '- ',
  ' ',
  '\n',
  '\t',
  '(',
  '"',
  "'",
  'a',
  'a ',
  'á',
  '°',
  '%',
  '🐝',
  'x',
  '1x1 ',
  '1 to ',
  '10 am to ',
];
const pieces = [...new Set([...SIGNS, ...wordsIn(survey.words).map((word) => `${word} `)])];
// of some thousand words every so many: each takes a while
const every = Math.max(1, Math.floor(pieces.length / Number(process.argv[2] ?? 400)));
const texts = pieces.filter((_, at) => at < SIGNS.length || at % every === 0);

const repeated = (piece: string, letters: number): string =>
  piece.repeat(Math.ceil(letters / piece.length)).slice(0, letters);

function milliseconds(read: () => unknown): number {
  const before = performance.now();
  read();
  return performance.now() - before;
}

const readers: [name: string, read: (text: string) => unknown][] = [
  ...PRINTED_KINDS.map((kind): [string, (text: string) => unknown] => [kind, (text) => printed(kind, text, demo)]),
  ['message', (text) => readFields(text, demo, ['date', 'times'])],
];

console.log(`${'reader'.padEnd(12)}  worst ms at 10 kB   at 5 kB   text repeated`);
for (const [name, read] of readers) {
  read('warm up');
  const times = texts.map((piece) => ({ piece, time: milliseconds(() => read(repeated(piece, LETTERS))) }));
  const worst = times.sort((one, other) => other.time - one.time)[0]!;
  const again = milliseconds(() => read(repeated(worst.piece, LETTERS)));
  // the better of two, as above: the first one compiles what no longer text came to
  const halves = [0, 1].map(() => milliseconds(() => read(repeated(worst.piece, LETTERS / 2))));
  const half = Math.min(...halves);
  console.log(
    `${name.padEnd(12)} ${Math.min(worst.time, again).toFixed(1).padStart(18)} ${half.toFixed(1).padStart(9)}   ${JSON.stringify(worst.piece)}`,
  );
}
