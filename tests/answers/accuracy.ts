/**
 * `npm run accuracy`: how the readers do on the corpus, by kind and half. A line is read rightly, or asked back, or
 * wrong in silence: a sure reading of something that was not meant. `npm run accuracy -- date` shows which lines of the
 * tuned half are not right; the held half is only counted, so that nobody tunes to it.
 */
import { printed } from '../../src/answers/index.js';
import { contextOf } from './corpus/context.js';
import {
  CORPUS_KINDS,
  halfOf,
  HALVES,
  labelOf,
  linesOf,
  type CorpusKind,
  type Half,
  type Line,
} from './corpus/lines.js';
import { verdictOf, verdictsOfNote, type Verdict } from './corpus/score.js';

type Tally = Record<Verdict, number>;

/** One line: a whole answer is one verdict, a note has one a field. */
export function verdictsOf(kind: CorpusKind, line: Line): { readonly field: string; readonly verdict: Verdict }[] {
  const reading = printed(kind, line.text, contextOf(line));
  return kind === 'note'
    ? verdictsOfNote(reading, labelOf(line))
    : [{ field: kind, verdict: verdictOf(kind, reading, labelOf(line)) }];
}

export function accuracyOf(kind: CorpusKind, half: Half): Tally {
  const tally: Tally = { right: 0, asked: 0, wrong: 0 };
  for (const line of linesOf(kind)) {
    if (halfOf(line) !== half) continue;
    for (const { verdict } of verdictsOf(kind, line)) tally[verdict] += 1;
  }
  return tally;
}

const sum = ({ right, asked, wrong }: Tally): number => right + asked + wrong;
const percent = (part: number, whole: number): string =>
  `${((100 * part) / Math.max(1, whole)).toFixed(1)} %`.padStart(9);

function row(name: string, half: string, tally: Tally): string {
  const all = sum(tally);
  return `${name.padEnd(12)} ${half.padEnd(6)} ${String(all).padStart(6)} ${percent(tally.right, all)} ${percent(tally.asked, all)} ${percent(tally.wrong, all)}`;
}

function show(kind: CorpusKind): void {
  for (const line of linesOf(kind)) {
    if (halfOf(line) !== 'tuned') continue;
    const bad = verdictsOf(kind, line).filter(({ verdict }) => verdict !== 'right');
    if (bad.length === 0) continue;
    const label = labelOf(line);
    const reading = printed(kind, line.text, contextOf(line));
    console.log(bad.map(({ field, verdict }) => `${verdict}: ${field}`).join(', '));
    console.log(`  text  ${JSON.stringify(line.text)} ${line.ctx === undefined ? '' : JSON.stringify(line.ctx)}`);
    console.log(`  label ${label.state} ${JSON.stringify(label.gold)} ${JSON.stringify(label.offer ?? '')}`);
    console.log(
      `  read  ${reading.state} ${JSON.stringify(reading.value)} ${JSON.stringify(reading.offer)} ${reading.ask ?? ''}`,
    );
  }
}

function main(asked: readonly string[]): void {
  const chosen = CORPUS_KINDS.filter((kind) => asked.length === 0 || asked.includes(kind));
  if (asked.length > 0) chosen.forEach(show);
  console.log(`${'kind'.padEnd(12)} ${'half'.padEnd(6)}  lines     right     asked     wrong`);
  const totals = new Map<Half, Tally>(HALVES.map((half) => [half, { right: 0, asked: 0, wrong: 0 }]));
  for (const kind of chosen) {
    for (const half of HALVES) {
      const tally = accuracyOf(kind, half);
      console.log(row(kind, half, tally));
      if (kind === 'note') continue;
      const total = totals.get(half)!;
      for (const verdict of ['right', 'asked', 'wrong'] as const) total[verdict] += tally[verdict];
    }
  }
  for (const [half, total] of totals) console.log(row('all but note', half, total));
}

if (process.argv[1]?.endsWith('accuracy.ts') === true) main(process.argv.slice(2));
