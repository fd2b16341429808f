/** The parts of a form: "Temp: 61 F", "Start - 1:05 pm; end - 1:20 pm", a label on one line and its value on the next. */
import type { Words } from '../../../shared/words.js';
import { anyOf } from '../any-of.js';
import type { Span } from '../reading.js';
import { madeOnce } from '../text.js';

export type Label = keyof Words['note']['labels'];

export interface Labelled {
  readonly label: Label;
  /** The label with its sign. */
  readonly labelSpan: Span;
  readonly value: Span;
  /** "mph" of "Wind (mph)"; null where none stands beside the label. */
  readonly unit: string | null;
}

/** A line longer than this is a sentence, though it may begin with "Wind". */
const MOST_LETTERS_BARE = 30;
/** From so many lines on that begin with a label it is a form. */
const LEAST_BARE_LABELS = 3;

const formOf = madeOnce((labels: Words['note']['labels']) => {
  const labelOf = new Map<string, Label>();
  for (const label of Object.keys(labels) as Label[]) for (const phrase of labels[label]) labelOf.set(phrase, label);
  // a label begins a line or follows a sign; "wind: light" and "wind - light", but "bluebells - 85" only as a label;
  // "plant 2:" is one too, "end 1:55" is not
  const pattern = new RegExp(
    `(?<=^|[\\n;|,.•]|\\t|\\s{2}|[*-]\\s?)[ \\t*•#-]{0,4}(?<label>${anyOf([...labelOf.keys()])})(?:[ \\t]*#?\\d{1,2}(?!:\\d))?[ \\t]*(?:\\((?<unit>[^()\\n]{0,30})\\))?[ \\t]*\\*{0,2}(?<sign>[:=]|[ \\t]-[ \\t]|\\t)\\*{0,2}`,
    'gu',
  );
  // "Wind 5" on a short line of its own, in a form that has no signs
  const bare = new RegExp(
    `(?<=^|\\n)[ \\t]*(?<label>${anyOf([...labelOf.keys()])})[ \\t]+(?=[^\\n]{1,${MOST_LETTERS_BARE}}(?:\\n|$))`,
    'gu',
  );
  return { labelOf, pattern, bare };
});

/** Without any of these no label has its sign. */
const SIGN = /[:=\t]|[ \t]-[ \t]/;

const BULLET = /^[ \t]*(?:[-*•–]|\d{1,2}[.)]|[ \t]{2})/;

/** Labels of what there may be several of, one a line. */
const LISTED: readonly Label[] = ['plants', 'tally'];

/** Where a value ends that stands on the lines below its label: one line, or all lines of a list. */
function listEnd(folded: string, from: number, label: Label): number {
  const lineEnd = (at: number): number => {
    const end = folded.indexOf('\n', at);
    return end === -1 ? folded.length : end;
  };
  let end = lineEnd(from);
  const isBulleted = BULLET.test(folded.slice(from, end));
  const goesOn = (line: string): boolean =>
    isBulleted ? BULLET.test(line) : LISTED.includes(label) && line.trim() !== '';
  while (end < folded.length && goesOn(folded.slice(end + 1, lineEnd(end + 1)))) end = lineEnd(end + 1);
  return end;
}

/** Labels with their values, left to right. `folded` is the writer's own text. */
export function labelledIn(folded: string, words: Words): Labelled[] {
  const { labelOf, pattern, bare } = formOf(words.note.labels);
  const signed = SIGN.test(folded) ? [...folded.matchAll(pattern)] : [];
  const unsigned = (folded.includes('\n') ? [...folded.matchAll(bare)] : []).filter(
    ({ index }) => !signed.some((match) => match.index === index),
  );
  const matches =
    unsigned.length < LEAST_BARE_LABELS ? signed : [...signed, ...unsigned].sort((a, b) => a.index - b.index);
  const found = matches.flatMap((match) => {
    const label = labelOf.get((match.groups?.['label'] ?? '').replace(/\s+/g, ' '));
    return label === undefined
      ? []
      : [{ label, from: match.index, to: match.index + match[0].length, unit: match.groups?.['unit'] ?? null }];
  });
  return found.map(({ label, from, to, unit }, at) => {
    const next = found[at + 1]?.from ?? folded.length;
    const line = folded.indexOf('\n', to);
    let end = Math.min(next, line === -1 ? folded.length : line);
    if (line !== -1 && line < next && folded.slice(to, line).trim() === '')
      end = Math.min(next, listEnd(folded, line + 1, label));
    return { label, labelSpan: [from, to] as const, value: [to, end] as const, unit };
  });
}
