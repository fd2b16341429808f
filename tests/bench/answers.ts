/**
 * `npm run bench:answers`: the readers beside general-purpose libraries, on the lines of the corpus's held half that have
 * one meaning or none. (Unsure lines are left out: the libraries have no way to say so.) Right, silent, wrong, and the
 * time of a line; each in turn on the same lines, the best of several rounds.
 */
import { printed } from '../../src/answers/index.js';
import { contextOf } from '../answers/corpus/context.js';
import { halfOf, labelOf, linesOf, type CorpusKind, type Line } from '../answers/corpus/lines.js';
import { sameValue, type Verdict } from '../answers/corpus/score.js';
import { others } from './answers/others.js';

const ROUNDS = 5;

const linesFor = (kind: CorpusKind): Line[] =>
  linesOf(kind).filter((line) => halfOf(line) === 'held' && labelOf(line).state !== 'unsure');

function verdict(kind: CorpusKind, value: unknown, line: Line): Verdict {
  const label = labelOf(line);
  if (value == null) return label.state === 'none' ? 'right' : 'asked';
  return label.state === 'sure' && sameValue(kind, value, withoutDoubt(label.gold)) ? 'right' : 'wrong';
}

/** Whether a name was hedged is more than a search for names can tell. */
function withoutDoubt(gold: unknown): unknown {
  if (gold === null || typeof gold !== 'object' || !('doubt' in gold)) return gold;
  return Object.fromEntries(Object.entries(gold).filter(([key]) => key !== 'doubt'));
}

function measured(kind: CorpusKind, read: (line: Line) => unknown) {
  const lines = linesFor(kind);
  const tally = { right: 0, asked: 0, wrong: 0 };
  for (const line of lines) tally[verdict(kind, read(line), line)] += 1;
  let best = Infinity;
  for (let round = 0; round < ROUNDS; round++) {
    const before = performance.now();
    for (const line of lines) read(line);
    best = Math.min(best, (performance.now() - before) / lines.length);
  }
  return { ...tally, lines: lines.length, milliseconds: best };
}

const percent = (part: number, whole: number): string => `${((100 * part) / whole).toFixed(1)} %`.padStart(8);

console.log(`${'kind'.padEnd(12)} ${'reader'.padEnd(34)} lines    right   silent    wrong   ms a line`);
function row(kind: CorpusKind, library: string, read: (line: Line) => unknown): void {
  const { lines, right, asked, wrong, milliseconds } = measured(kind, read);
  console.log(
    `${kind.padEnd(12)} ${library.padEnd(34)} ${String(lines).padStart(5)} ${percent(right, lines)} ${percent(asked, lines)} ${percent(wrong, lines)} ${milliseconds.toFixed(3).padStart(11)}`,
  );
}

const all = others();
for (const kind of new Set(all.map((other) => other.kind))) {
  row(kind, 'Queenpost', (line) => printed(kind, line.text, contextOf(line)).value);
  for (const other of all.filter((one) => one.kind === kind)) row(kind, other.library, (line) => other.read(line.text));
}
